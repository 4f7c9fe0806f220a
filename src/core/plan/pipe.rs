//! Water in pipes: inner diameters of the tubes that houses have, and the volume a length of them holds.

use crate::core::site::PipeMaterial;
use std::f64::consts::PI;

/// Inner diameter in m of the 3/4 in pipe of a material: outer diameter less two walls, in inches, from memory.
///
/// Copper: type L of ASTM B88, 0.875 and 0.045. Plastic: PEX of ASTM F876, SDR 9, 0.875 and 0.097. Steel: schedule
/// 40 of ASTM A53, 1.050 and 0.113.
pub const fn inner_diameter_m(pipes: PipeMaterial) -> f64 {
    let (outer_in, wall_in) = match pipes {
        PipeMaterial::Copper => (0.875, 0.045),
        PipeMaterial::Plastic => (0.875, 0.097),
        PipeMaterial::Steel => (1.050, 0.113),
    };
    (outer_in - 2.0 * wall_in) * 0.0254
}

/// Water in m³ that a run of 3/4 in pipe holds.
pub fn water_m3(pipes: PipeMaterial, run_m: f64) -> f64 {
    let d = inner_diameter_m(pipes);
    0.25 * PI * d * d * run_m
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::GALLON_M3;
    use proptest::prelude::*;

    /// Handbooks' tables of water in 3/4 in pipe, gallons in 100 ft (from memory): type L copper 2.51, PEX 1.89,
    /// schedule 40 steel 2.77; rounded there to a hundredth, so to half a percent.
    #[test]
    fn volumes_as_tabulated() {
        for (pipes, gal) in
            [(PipeMaterial::Copper, 2.51), (PipeMaterial::Plastic, 1.89), (PipeMaterial::Steel, 2.77)]
        {
            let has = water_m3(pipes, 100.0 * 0.3048) / GALLON_M3;
            assert!((has / gal - 1.0).abs() < 5e-3, "{pipes:?}: {has}");
        }
    }

    proptest! {
        /// Closed form: twice the run holds twice the water; none holds none.
        #[test]
        fn volume_follows_length(run in 0.0..300.0f64) {
            let once = water_m3(PipeMaterial::Copper, run);
            prop_assert!((water_m3(PipeMaterial::Copper, 2.0 * run) - 2.0 * once).abs() < 1e-12);
            prop_assert!(once >= 0.0);
        }
    }
}
