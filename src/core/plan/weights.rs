//! What tanks weigh on the day, and how long they take to empty and to fill.

use crate::core::candidates::Candidate;
use crate::core::fit::carrying::full_mass_kg;
use crate::core::units::GALLON_M3;
use uom::si::mass::kilogram;
use uom::si::volume::cubic_meter;

/// Share of a tank's water that stays in it below the drain valve; common practice, no source.
const LEFT: f64 = 0.05;
/// Flow out of a drain valve and in through an inlet, m³/s: 2 and 4 gal/min; common practice, no source.
const OUT_M3_PER_S: f64 = 2.0 * GALLON_M3 / 60.0;
const IN_M3_PER_S: f64 = 4.0 * GALLON_M3 / 60.0;

/// A tank's water by its label, m³: a little more than it really holds, so never too light.
pub(super) fn water_m3(tank: &Candidate) -> f64 {
    tank.label.nominal_volume.get::<cubic_meter>()
}

/// An empty tank, kg.
pub(super) fn empty_kg(tank: &Candidate) -> f64 {
    tank.body.empty_mass.get::<kilogram>()
}

/// A full tank, kg.
pub(super) fn full_kg(tank: &Candidate) -> f64 {
    full_mass_kg(empty_kg(tank), water_m3(tank))
}

/// Water that stays in a drained tank, kg.
pub(super) fn left_kg(tank: &Candidate) -> f64 {
    full_mass_kg(0.0, LEFT * water_m3(tank))
}

/// Minutes to drain so much water through a drain valve.
pub(super) fn drain_minutes(water_m3: f64) -> f64 {
    water_m3 / OUT_M3_PER_S / 60.0
}

/// Minutes to let so much water in.
pub(super) fn fill_minutes(water_m3: f64) -> f64 {
    water_m3 / IN_M3_PER_S / 60.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::candidates::{CandidateId, offered};
    use crate::core::case::HeaterKind;
    use crate::core::water::density_kg_per_m3;

    /// Closed form: water's volume times its density, and the empty tank. 50 gal at 8.34 lb are 417 lb, with a
    /// tank of 125 lb 542 lb; drained, a twentieth of the water stays.
    #[test]
    fn a_fifty_gallon_tank() {
        let tank = offered::plain(CandidateId::ElectricTank, HeaterKind::Electric, 50.0);
        let pound = 0.453_592_37;
        let water = 50.0 * GALLON_M3;
        // The library of units has seven figures of a pound.
        assert!((full_kg(&tank) - (125.0 * pound + water * density_kg_per_m3(10.0))).abs() < 1e-4);
        assert!((full_kg(&tank) / pound - 542.0).abs() < 1.0, "{}", full_kg(&tank) / pound);
        assert!((left_kg(&tank) / pound - 20.9).abs() < 0.1);
        assert!((drain_minutes(water) - 25.0).abs() < 1e-9);
        assert!((fill_minutes(water) - 12.5).abs() < 1e-9);
    }
}
