//! Draw patterns of the federal rating test (10 CFR 430 subpart B appendix E, section 5.5, tables III.1
//! to III.4; from memory), and the label's yearly energy (10 CFR 430.23(e), from memory).

use crate::core::units::{BTU_J, GALLON_M3, KWH_J};
use serde::{Deserialize, Serialize};

/// A draw pattern, chosen by the first-hour rating.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Pattern {
    /// 10 gal a day.
    VerySmall,
    /// 38 gal a day.
    Low,
    /// 55 gal a day.
    Medium,
    /// 84 gal a day.
    High,
}

/// One withdrawal of a pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Withdrawal {
    /// Start, s.
    pub start_s: f64,
    volume_gal: f64,
    flow_gpm: f64,
}

impl Withdrawal {
    /// Volume, m³.
    pub fn volume_m3(&self) -> f64 {
        self.volume_gal * GALLON_M3
    }

    /// Flow, m³/s.
    pub fn flow_m3_per_s(&self) -> f64 {
        self.flow_gpm * GALLON_M3 / 60.0
    }
}

const fn w(hours: u32, minutes: u32, volume_gal: f64, flow_gpm: f64) -> Withdrawal {
    Withdrawal { start_s: (hours * 3600 + minutes * 60) as f64, volume_gal, flow_gpm }
}

const VERY_SMALL: &[Withdrawal] = &[
    w(0, 0, 2.0, 1.0),
    w(1, 0, 1.0, 1.0),
    w(1, 5, 0.5, 1.0),
    w(1, 10, 0.5, 1.0),
    w(1, 15, 0.5, 1.0),
    w(8, 0, 1.0, 1.0),
    w(8, 15, 2.0, 1.0),
    w(9, 0, 1.5, 1.0),
    w(9, 15, 1.0, 1.0),
];
const LOW: &[Withdrawal] = &[
    w(0, 0, 15.0, 1.7),
    w(0, 30, 2.0, 1.0),
    w(1, 0, 1.0, 1.0),
    w(10, 30, 6.0, 1.7),
    w(11, 30, 4.0, 1.7),
    w(12, 0, 1.0, 1.0),
    w(12, 45, 1.0, 1.0),
    w(12, 50, 1.0, 1.0),
    w(16, 15, 2.0, 1.0),
    w(16, 45, 2.0, 1.7),
    w(17, 0, 3.0, 1.7),
];
const MEDIUM: &[Withdrawal] = &[
    w(0, 0, 15.0, 1.7),
    w(0, 30, 2.0, 1.0),
    w(1, 40, 9.0, 1.7),
    w(10, 30, 9.0, 1.7),
    w(11, 30, 5.0, 1.7),
    w(12, 0, 1.0, 1.0),
    w(12, 45, 1.0, 1.0),
    w(12, 50, 1.0, 1.0),
    w(16, 0, 1.0, 1.0),
    w(16, 15, 2.0, 1.0),
    w(16, 45, 2.0, 1.7),
    w(17, 0, 7.0, 1.7),
];
const HIGH: &[Withdrawal] = &[
    w(0, 0, 27.0, 3.0),
    w(0, 30, 2.0, 1.0),
    w(0, 40, 1.0, 1.0),
    w(1, 40, 9.0, 1.7),
    w(10, 30, 15.0, 3.0),
    w(11, 30, 5.0, 1.7),
    w(12, 0, 1.0, 1.0),
    w(12, 45, 1.0, 1.0),
    w(12, 50, 1.0, 1.0),
    w(16, 0, 2.0, 1.0),
    w(16, 15, 2.0, 1.0),
    w(16, 30, 2.0, 1.7),
    w(16, 45, 2.0, 1.7),
    w(17, 0, 14.0, 3.0),
];

impl Pattern {
    /// Every pattern.
    pub const ALL: [Pattern; 4] = [Pattern::VerySmall, Pattern::Low, Pattern::Medium, Pattern::High];

    /// The pattern for a first-hour rating, m³. Ratings are stated in whole US gallons (10 CFR 429.17, from
    /// memory), and the stated one chooses: a model that misses 51 gal by a cup is drawn as its label is.
    pub fn for_first_hour(first_hour_m3: f64) -> Pattern {
        let gal = first_hour_m3 / GALLON_M3 + 0.5;
        if gal < 18.0 {
            Pattern::VerySmall
        } else if gal < 51.0 {
            Pattern::Low
        } else if gal < 75.0 {
            Pattern::Medium
        } else {
            Pattern::High
        }
    }

    /// The key of its name in the locale files.
    pub const fn key(self) -> &'static str {
        match self {
            Pattern::VerySmall => "label-pattern-very-small",
            Pattern::Low => "label-pattern-low",
            Pattern::Medium => "label-pattern-medium",
            Pattern::High => "label-pattern-high",
        }
    }

    /// Its withdrawals in order.
    pub const fn withdrawals(self) -> &'static [Withdrawal] {
        match self {
            Pattern::VerySmall => VERY_SMALL,
            Pattern::Low => LOW,
            Pattern::Medium => MEDIUM,
            Pattern::High => HIGH,
        }
    }

    /// Volume a day, US gallons.
    pub fn daily_gal(self) -> f64 {
        self.withdrawals().iter().map(|w| w.volume_gal).sum()
    }

    /// Energy a year on the label, kWh, of an electric heater with this uniform energy factor:
    /// 365 · volume · 8.24 lb/gal · 1 Btu/(lb·°F) · 67 °F / factor.
    pub fn label_kwh_per_year(self, uniform_energy_factor: f64) -> f64 {
        365.0 * self.daily_gal() * 8.24 * 67.0 / uniform_energy_factor * BTU_J / KWH_J
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Daily volumes of 10 CFR 430 subpart B appendix E (from memory).
    #[test]
    fn daily_volumes() {
        let daily: Vec<f64> = Pattern::ALL.iter().map(|p| p.daily_gal()).collect();
        assert_eq!(daily, [10.0, 38.0, 55.0, 84.0]);
    }

    #[test]
    fn withdrawals_are_in_order_and_do_not_overlap() {
        for p in Pattern::ALL {
            let mut free = 0.0;
            for w in p.withdrawals() {
                assert!(w.start_s >= free, "{p:?}");
                free = w.start_s + w.volume_m3() / w.flow_m3_per_s();
            }
        }
    }

    /// The rule's own arithmetic with 3,412 Btu a kWh for a medium pattern and a factor of 0.93: the
    /// yellow label of a common 50 gal tank shows about 3,490 kWh.
    #[test]
    fn label_energy() {
        let by_rule = 365.0 * 55.0 * 8.24 * 1.0 * 67.0 / 0.93 / 3412.0;
        assert!((Pattern::Medium.label_kwh_per_year(0.93) - by_rule).abs() < 0.0005 * by_rule);
        assert!((by_rule - 3_492.0).abs() < 1.0, "{by_rule}");
    }
}
