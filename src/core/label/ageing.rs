//! What years do to the heater that stands there, by the physics of heat passing through dirt.
//!
//! **Burner tanks.** The flue's gases give their heat through the tank's bottom and the flue pipe; the resistance is
//! nearly all on the gas side. The share of the heat that gets through is that of an exchanger whose water stays at one
//! temperature: 1 − exp(−NTU), of the share that could be had down to the water's temperature. Lime lying on the bottom
//! and soot in the flue add resistance in series, so that the flue gets hotter and less reaches the water: about a
//! point in 12 years of moderately hard water, four or five at the worst, and never the tens of per cent of folklore.
//! Jacket and pilot lose what they lost.
//!
//! **Electric elements** under scale run hotter inside, by some hundred kelvins a millimetre at 150 W/in², and burn out
//! sooner; their heat still ends in the water, all of it. Nothing of the energy changes. So nobody is asked whether
//! elements were changed: the answer would move no figure, as a burnt-out element costs a repair and no tank.
//!
//! **Heat pumps** gather dust on filter and coil, which is cleaned; **scale** does not reach a condenser outside the tank.
//!
//! **Insulation** keeps what it kept while it is dry. Under a leaking tank its foot is wet.
//!
//! Conductivities: textbook orders of magnitude, from memory. Growth of lime and soot: common practice, no source.

use crate::core::case::{HeaterKind, PresentHeater, TankSigns};
use crate::core::heater::{Model, Source};

/// What may reach the water at most, of the fuel's higher heating value, where the flue's vapour does not condense.
const DRY_LIMIT: f64 = 0.90;
/// Gas side of bottom and flue, m²·K/W: 15 to 20 W/(m²·K).
const GAS_SIDE: f64 = 0.060;
/// Share of the exchanger that is the tank's bottom, under the lime.
const BOTTOM_SHARE: f64 = 0.30;
/// Loose lime with water between, W/(m·K).
const LIME_W_PER_M_K: f64 = 0.8;
/// Lime a year for each 60 mg/L of hardness above 60 mg/L, m; and what lies there before it is as high as the drain, m.
const LIME_M_PER_YEAR: f64 = 0.001;
const MOST_LIME_M: f64 = 0.050;
/// A deposit that rumbles is at least so thick, m: steam forms below it.
const RUMBLING_LIME_M: f64 = 0.015;
/// Resistance of soot and rust scale in the flue a year and at most, m²·K/W: gas burns clean (a design value for flue
/// gases of 0.0009, reached in a dozen years); oil's soot of 0.1 W/(m·K) grows to a millimetre between cleanings.
const GAS_SOOT: (f64, f64) = (0.000_075, 0.001);
const OIL_SOOT: (f64, f64) = (0.001, 0.010);
/// Dry jacket of a tank, as multiples of an electric one's whole loss, that a wet foot adds: a tenth of the surface, where
/// wet insulation of 25 mm (0.6 W/(m·K)) and still air let through six times as much as dry.
const WET_FOOT: f64 = 0.5;

/// What age has changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wear {
    /// Share of the burner's heat into the water that is left: 1 for a new heater, and for all without a burner.
    pub recovery: f64,
    /// Jacket's loss over the dry one's.
    pub jacket: f64,
}

impl Wear {
    /// A new heater's.
    pub const NONE: Wear = Wear { recovery: 1.0, jacket: 1.0 };

    /// Of the present heater, as a model when it was new.
    pub fn since_new(h: &PresentHeater, new: &Model) -> Wear {
        Wear::of(h, if let Source::Burner(b) = &new.source { b.recovery } else { 1.0 })
    }

    /// Of the present heater: by age, hardness of the water, and signs. `recovery` is what its burner got into the water
    /// when it was new.
    pub fn of(h: &PresentHeater, recovery: f64) -> Wear {
        let leaking = matches!(h.signs.value, TankSigns::Leaking);
        let jacket = if leaking { 1.0 + WET_FOOT } else { 1.0 };
        let soot = match h.kind.value {
            HeaterKind::Electric | HeaterKind::HeatPump => return Wear { jacket, ..Wear::NONE },
            HeaterKind::Gas | HeaterKind::Propane => GAS_SOOT,
            HeaterKind::Oil => OIL_SOOT,
        };
        let years = at_least(h.age_years.value, 0.0);
        let soot = at_most(soot.0 * years, soot.1);
        let hardness = at_least((h.hardness_kg_per_m3.value - 0.060) / 0.060, 0.0);
        let grown = LIME_M_PER_YEAR * hardness * years;
        let rumbles = matches!(h.signs.value, TankSigns::Rumbling);
        let lime = at_most(if rumbles { at_least(grown, RUMBLING_LIME_M) } else { grown }, MOST_LIME_M);
        Wear { recovery: left(recovery, lime / LIME_W_PER_M_K, soot), jacket }
    }

    /// The heater as it is now, from the one it was.
    #[must_use]
    pub fn on(&self, new: &Model, kind: HeaterKind) -> Model {
        let mut model = new.clone();
        if let Source::Burner(b) = &mut model.source {
            b.recovery *= self.recovery;
        }
        // Of a burner's loss most goes up the flue: the jacket's part is that of an electric tank.
        let jacket = super::class::standby_w_per_k(HeaterKind::Electric, model.volume_m3);
        let jacket = if matches!(kind, HeaterKind::Electric | HeaterKind::HeatPump) {
            model.standby_w_per_k
        } else {
            at_most(jacket, model.standby_w_per_k)
        };
        model.standby_w_per_k += (self.jacket - 1.0) * jacket;
        model
    }
}

/// Share of the burner's heat into the water that resistances of lime on the bottom and soot on all, m²·K/W, leave.
fn left(recovery: f64, lime: f64, soot: f64) -> f64 {
    // A burner that condenses has cooled its gases to the water already: another kind of exchanger, with surface to spare.
    let share = at_most(recovery / DRY_LIMIT, 0.97);
    let new_units = -libm::log(1.0 - share);
    let bottom = BOTTOM_SHARE * GAS_SIDE / (GAS_SIDE + lime + soot);
    let flue = (1.0 - BOTTOM_SHARE) * GAS_SIDE / (GAS_SIDE + soot);
    let units = new_units * (bottom + flue);
    (1.0 - libm::exp(-units)) / share
}

fn at_least(value: f64, least: f64) -> f64 {
    if value > least { value } else { least }
}

fn at_most(value: f64, most: f64) -> f64 {
    if value < most { value } else { most }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Two resistances in series, by hand: 10 mm of lime over three tenths of an exchanger of 2.10 units.
    #[test]
    fn ten_millimetres_by_hand() {
        let units = 2.1 * (0.7 + 0.3 * 0.060 / (0.060 + 0.010 / 0.8));
        let share = 1.0 - libm::exp(-2.1);
        let by_hand = (1.0 - libm::exp(-units)) / share;
        let ours = left(DRY_LIMIT * share, 0.010 / LIME_W_PER_M_K, 0.0);
        assert!((ours - by_hand).abs() < 1e-12);
        // About a point of 79.
        assert!((0.975..0.99).contains(&ours), "{ours}");
        assert_eq!(left(0.79, 0.0, 0.0), 1.0);
    }

    proptest! {
        /// More dirt never helps, and the worst of both together leaves 0.86 (the closed form at 50 mm, a millimetre of soot and the
        /// poorest burner).
        #[test]
        fn dirt_costs_a_little(
            recovery in 0.70..0.98f64, lime in 0.0..MOST_LIME_M, soot in 0.0..OIL_SOOT.1, more in 0.0001..0.002f64,
        ) {
            let by = |m: f64| left(recovery, m / LIME_W_PER_M_K, soot);
            prop_assert!(by(lime + more) < by(lime));
            prop_assert!((0.855..=1.0 + 1e-12).contains(&by(lime)), "{}", by(lime));
            prop_assert!(left(recovery, lime, soot + more) < left(recovery, lime, soot));
        }
    }
}
