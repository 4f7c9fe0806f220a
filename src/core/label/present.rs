//! The present heater when no label can be read: figures typical of its kind, size and age.
//!
//! Guide: the federal minimum energy factors in force when it was made (10 CFR 430.32(d) and its
//! predecessors of 1990, 2004 and 2015; from memory), with a usual excess over the minimum for heat
//! pumps. Energy factors before 2017 are taken as uniform energy factors: for storage tanks near the
//! medium draw pattern the two lie within about 0.02 of each other (the conversion factors of 81 FR
//! 96204, 2016, from memory). The labels of their time hold
//! for the heater as new; what its years have changed: [`super::ageing`].

use crate::core::case::HeaterKind;

/// The year that "now" stands for when an age is turned into a year of making.
const REFERENCE_YEAR: f64 = 2026.0;

/// Uniform energy factor typical of a heater of this kind, nominal volume and age.
pub fn typical_uniform_energy_factor(kind: HeaterKind, nominal_gal: f64, age_years: f64) -> f64 {
    let made = REFERENCE_YEAR - age_years;
    let v = nominal_gal;
    let ef = match kind {
        HeaterKind::Electric if made < 2004.0 => 0.93 - 0.00132 * v,
        HeaterKind::Electric if made < 2015.0 => 0.97 - 0.00132 * v,
        // Above 55 gal the standard of 2015 asks for a heat pump; larger plain tanks were still sold
        // for other uses: the same relation, carried on.
        HeaterKind::Electric => 0.9307 - 0.0002 * v,
        HeaterKind::Gas | HeaterKind::Propane if made < 2004.0 => 0.62 - 0.0019 * v,
        HeaterKind::Gas | HeaterKind::Propane if made < 2015.0 => 0.67 - 0.0019 * v,
        HeaterKind::Gas | HeaterKind::Propane => 0.6483 - 0.0017 * v,
        HeaterKind::Oil if made < 2015.0 => 0.59 - 0.0019 * v,
        HeaterKind::Oil => 0.68 - 0.0019 * v,
        HeaterKind::HeatPump if made < 2015.0 => 2.2,
        HeaterKind::HeatPump => 3.2,
    };
    if ef < 0.35 { 0.35 } else { ef }
}

/// First-hour rating typical of a heater of this kind and nominal volume, US gallons: volume drawn
/// before the outlet cools, and what the usual input recovers in the hour. Common practice, no source; for oil a
/// judgement of our own, from what its burner recovers.
pub fn typical_first_hour_rating_gal(kind: HeaterKind, nominal_gal: f64) -> f64 {
    let (share, recovery) = match kind {
        HeaterKind::Electric => (0.84, 20.0),
        HeaterKind::Gas | HeaterKind::Propane => (0.75, 38.0),
        HeaterKind::Oil => (0.75, 125.0),
        HeaterKind::HeatPump => (0.85, 20.0),
    };
    share * nominal_gal + recovery
}

/// Typical input: each electric element, or the burner, W. Common practice, no source: 4,500 W
/// elements; 40,000 Btu/h gas and propane; 0.75 gal/h of oil, about 105,000 Btu/h.
pub const fn typical_input_w(kind: HeaterKind) -> f64 {
    match kind {
        HeaterKind::Electric | HeaterKind::HeatPump => 4_500.0,
        HeaterKind::Gas | HeaterKind::Propane => 11_720.0,
        HeaterKind::Oil => 30_770.0,
    }
}

/// Heat that a heat pump of this tank size gives at rating conditions, W: no label says. 1.0 to 2.0 kW, more for
/// larger tanks; common practice, no source.
pub fn typical_heat_pump_output_w(nominal_gal: f64) -> f64 {
    let w = 1_300.0 + 8.0 * nominal_gal;
    if w < 2_000.0 { w } else { 2_000.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn newer_heaters_are_not_worse_and_figures_stay_in_range() {
        for kind in [
            HeaterKind::Electric,
            HeaterKind::Gas,
            HeaterKind::Propane,
            HeaterKind::Oil,
            HeaterKind::HeatPump,
        ] {
            for gal in [15.0, 30.0, 50.0, 80.0, 120.0] {
                let old = typical_uniform_energy_factor(kind, gal, 30.0);
                let new = typical_uniform_energy_factor(kind, gal, 1.0);
                assert!(new >= old - 0.01, "{kind:?} {gal}: {old} then {new}");
                assert!((0.35..=3.5).contains(&old) && (0.35..=3.5).contains(&new));
            }
        }
    }
}
