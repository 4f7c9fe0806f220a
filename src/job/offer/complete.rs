//! An offer to what the core computes with: silent figures get those typical of the class.

use super::{Adder, Figure, Heater, Offer};
use crate::core::candidates::offer::{self, CaseOffer, Offered, typical};
use crate::core::candidates::{Candidate, CandidateId};
use crate::core::case::HeaterKind;
use crate::core::units::{Quantity, cubic_metres, metres, watts};
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

impl Offer {
    /// The offer for a case. Heaters whose volume or factor is still wanting are left out; the others
    /// keep their places, so that a candidate's identity is its place in the offer.
    pub fn complete(&self) -> CaseOffer {
        CaseOffer {
            heaters: self
                .heaters
                .iter()
                .zip(CandidateId::OFFERS)
                .filter_map(|(h, id)| h.offered(id))
                .collect(),
            adders: self.adders.iter().map(Adder::complete).collect(),
            labour: self.labour,
        }
    }
}

impl Adder {
    fn complete(&self) -> offer::Adder {
        offer::Adder { kind: self.kind, name: self.name.clone(), price: self.price, always: self.always }
    }
}

impl Heater {
    fn base(&self, figure: Figure) -> Option<f64> {
        self.get(figure).map(|q| q.base())
    }

    /// What stands in for a figure that is not given: the one typical of its class. `None` while volume or factor are
    /// wanting, and for these two and the price.
    pub fn taken(&self, figure: Figure) -> Option<Quantity> {
        let Candidate { label, body, .. } = self.offered(CandidateId::Offer1)?.candidate;
        let base = match figure {
            Figure::Volume | Figure::Factor | Figure::Price => return None,
            Figure::FirstHour => label.first_hour_rating.value,
            Figure::Input => label.input.value,
            Figure::Volts => body.volts,
            Figure::Breaker => body.breaker_a,
            Figure::Height => body.height.value,
            Figure::Diameter => body.diameter.value,
            Figure::Weight => body.empty_mass.value,
        };
        let unit = figure.units().0;
        Some(Quantity::new(unit.from_base(base), unit))
    }

    fn offered(&self, id: CandidateId) -> Option<Offered> {
        let volume = cubic_metres(self.base(Figure::Volume)?);
        let volts = self.base(Figure::Volts).unwrap_or(0.0);
        let Candidate { mut label, mut body, .. } = typical(id, self.kind, volume, volts);
        label.uniform_energy_factor = self.base(Figure::Factor)?;
        if let Some(v) = self.base(Figure::FirstHour) {
            label.first_hour_rating = cubic_metres(v);
        }
        if let Some(w) = self.base(Figure::Input) {
            label.input = watts(w);
        }
        if let Some(m) = self.base(Figure::Height) {
            body.height = metres(m);
        }
        if let Some(m) = self.base(Figure::Diameter) {
            body.diameter = metres(m);
        }
        if let Some(kg) = self.base(Figure::Weight) {
            body.empty_mass = Mass::new::<kilogram>(kg);
        }
        // A burner's own 120 V supply is no circuit for elements.
        if matches!(self.kind, HeaterKind::Electric | HeaterKind::HeatPump) {
            body.volts = self.base(Figure::Volts).unwrap_or(body.volts);
            body.breaker_a = self.base(Figure::Breaker).unwrap_or(body.breaker_a);
        }
        let candidate = Candidate { id, called: self.name.clone(), label, body };
        Some(Offered { candidate, price: self.base(Figure::Price) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::{GALLON_M3, Unit};

    #[test]
    fn silent_figures_are_typical_and_given_ones_are_kept() {
        let mut h = Heater::new(HeaterKind::HeatPump);
        h.set(Figure::Volume, Some(Quantity::new(66.0, Unit::Gallon))).expect("in range");
        assert!(h.offered(CandidateId::Offer1).is_none(), "no factor yet");
        h.set(Figure::Factor, Some(Quantity::new(3.7, Unit::One))).expect("in range");
        let plain = h.offered(CandidateId::Offer2).expect("enough is known");
        assert_eq!((plain.candidate.id, plain.price), (CandidateId::Offer2, None));
        assert_eq!(plain.candidate.body.volts, 240.0);
        assert_eq!(h.taken(Figure::Volts), Some(Quantity::new(240.0, Unit::Volt)));
        assert_eq!(h.taken(Figure::Price), None);
        for figure in Figure::ALL {
            assert!(h.taken(figure).is_none_or(|q| figure.check(q).is_ok()), "{figure:?}");
        }
        assert!((plain.candidate.label.nominal_volume.value - 66.0 * GALLON_M3).abs() < 1e-12);
        let hour_gal = plain.candidate.label.first_hour_rating.value / GALLON_M3;
        assert!((hour_gal - 72.0 * 66.0 / 65.0).abs() < 1e-9, "in proportion to the class: {hour_gal}");
        h.set(Figure::Volts, Some(Quantity::new(120.0, Unit::Volt))).expect("in range");
        let plug = h.offered(CandidateId::Offer2).expect("enough is known").candidate;
        assert!(plug.is_plug_in() && plug.label.input.value == 0.0, "{plug:?}");
    }
}
