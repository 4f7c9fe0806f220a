//! What a candidate's year comes to in a future, and the year of the case as it stands brought to that.

use super::features::Seen;
use super::response::OUTPUTS;
use crate::core::money::cash::DAMP_MONTHS;
use crate::core::outcome::YearResult;
use serde::{Deserialize, Serialize};

/// What a brisk year is corrected in: energy, heating made up, cooling spared, condensate, electricity at peak hours.
const CORRECTED: usize = 5;

/// A candidate as it stands.
#[derive(Clone, Debug)]
pub(super) struct Base {
    pub year: YearResult,
    /// Whole simulation, beside its estimate.
    pub truth: [f64; OUTPUTS],
    pub seen: Seen,
    /// What its brisk year is off by ([`Comes::off`]).
    pub off: [f64; CORRECTED],
}

/// A candidate's year in one future.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// The year: that of the case as it stands, brought to what it comes to.
    pub year: YearResult,
    /// Share of the busiest morning's water that falls short.
    pub short: f64,
}

/// What a candidate's year comes to, kWh and l.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Comes {
    pub energy_kwh: f64,
    pub makeup_kwh: f64,
    pub relief_kwh: f64,
    pub damp_l: f64,
    pub heat_kwh: f64,
    pub short: f64,
    /// Share of the electricity that is used at peak hours; 0 where the price does not go by the hour.
    pub peak: f64,
}

impl Told {
    /// The year once somebody has moved: as much more or less as another pair of years says.
    pub(super) fn moved(&self, before: &Told, after: &Told) -> Told {
        let mut told = self.clone();
        let year = &mut told.year;
        let ratio = |a: f64, b: f64| if b > 0.0 { a / b } else { 1.0 };
        let energy = |t: &Told| t.year.electricity_year_kwh() + t.year.fuel_year_kwh();
        let share = ratio(energy(after), energy(before));
        for months in [&mut year.electricity_kwh, &mut year.elements_kwh, &mut year.fuel_kwh] {
            for m in months.iter_mut() {
                *m *= share;
            }
        }
        let both = before.year.heating_makeup_kwh.iter().zip(&after.year.heating_makeup_kwh);
        for (m, (b, a)) in year.heating_makeup_kwh.iter_mut().zip(both) {
            *m += a - b;
        }
        let both = before.year.cooling_relief_kwh.iter().zip(&after.year.cooling_relief_kwh);
        for (m, (b, a)) in year.cooling_relief_kwh.iter_mut().zip(both) {
            *m += a - b;
        }
        let both = before.year.condensate_l.iter().zip(&after.year.condensate_l);
        for (m, (b, a)) in year.condensate_l.iter_mut().zip(both) {
            *m *= ratio(*a, *b);
        }
        told
    }
}

impl Comes {
    pub fn of(year: &YearResult, heat_kwh: f64, short: f64) -> Comes {
        Comes {
            energy_kwh: used(year.electricity_year_kwh() + year.fuel_year_kwh()),
            makeup_kwh: year.heating_makeup_kwh.iter().sum(),
            relief_kwh: year.cooling_relief_kwh.iter().sum(),
            damp_l: year.condensate_l[DAMP_MONTHS].iter().sum(),
            heat_kwh,
            short,
            peak: year.peak_share_year(),
        }
    }

    /// Beside the estimates of the coordinates: what a response learns.
    pub fn beside(&self, seen: &Seen) -> [f64; OUTPUTS] {
        [
            libm::log(self.energy_kwh / seen.estimate_kwh),
            (self.makeup_kwh - seen.house_kwh[0]) / seen.heat_kwh,
            (self.relief_kwh - seen.house_kwh[1]) / seen.heat_kwh,
            self.damp_l / seen.heat_kwh,
            self.short,
            self.peak,
        ]
    }

    pub fn from(gave: &[f64; OUTPUTS], seen: &Seen) -> Comes {
        Comes {
            energy_kwh: libm::exp(gave[0]) * seen.estimate_kwh,
            makeup_kwh: gave[1] * seen.heat_kwh + seen.house_kwh[0],
            relief_kwh: gave[2] * seen.heat_kwh + seen.house_kwh[1],
            damp_l: gave[3] * seen.heat_kwh,
            heat_kwh: seen.heat_kwh,
            short: gave[4],
            peak: share(gave[5]),
        }
    }

    /// How far another account of the same year is off: the logarithm of the energies' ratio, the others over the heat.
    pub fn off(&self, other: &Comes) -> [f64; CORRECTED] {
        [
            libm::log(self.energy_kwh / other.energy_kwh),
            (self.makeup_kwh - other.makeup_kwh) / self.heat_kwh,
            (self.relief_kwh - other.relief_kwh) / self.heat_kwh,
            (self.damp_l - other.damp_l) / self.heat_kwh,
            self.peak - other.peak,
        ]
    }

    /// An account with that taken off. The morning stays.
    pub fn less(&self, off: &[f64; CORRECTED]) -> Comes {
        Comes {
            energy_kwh: libm::exp(off[0]) * self.energy_kwh,
            makeup_kwh: self.makeup_kwh + off[1] * self.heat_kwh,
            relief_kwh: self.relief_kwh + off[2] * self.heat_kwh,
            damp_l: self.damp_l + off[3] * self.heat_kwh,
            heat_kwh: self.heat_kwh,
            short: self.short,
            peak: share(self.peak + off[4]),
        }
    }
}

impl Base {
    /// The year as it stands, brought to what it comes to.
    pub fn told(&self, comes: &Comes) -> Told {
        let was = Comes::from(&self.truth, &self.seen);
        let (short, mut year) = (comes.short, self.year.clone());
        if *comes == was {
            return Told { year, short };
        }
        let ratio = comes.energy_kwh / was.energy_kwh;
        for months in [&mut year.electricity_kwh, &mut year.elements_kwh, &mut year.fuel_kwh] {
            for m in months.iter_mut() {
                *m *= ratio;
            }
        }
        for (months, more) in [
            (&mut year.heating_makeup_kwh, comes.makeup_kwh - was.makeup_kwh),
            (&mut year.cooling_relief_kwh, comes.relief_kwh - was.relief_kwh),
        ] {
            for m in months.iter_mut() {
                *m += more / 12.0;
            }
        }
        if was.damp_l > 0.0 {
            let ratio = comes.damp_l / was.damp_l;
            for m in &mut year.condensate_l {
                *m *= if ratio > 0.0 { ratio } else { 0.0 };
            }
        }
        if was.peak > 0.0 {
            for m in &mut year.peak_share {
                *m = share(*m * comes.peak / was.peak);
            }
        }
        for m in &mut year.drawn_m3 {
            *m *= comes.heat_kwh / was.heat_kwh;
        }
        Told { year, short }
    }
}

/// What may be a share.
fn share(of: f64) -> f64 {
    of.clamp(0.0, 1.0)
}

fn used(kwh: f64) -> f64 {
    if kwh > 1e-3 { kwh } else { 1e-3 }
}
