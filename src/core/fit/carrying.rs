//! A tank on its way in: a cylinder through doors, round turns, and up from lying to standing.

use crate::core::water::density_kg_per_m3;

/// Height of the ceiling that a cylinder of height and diameter needs to be stood up under, m: its diagonal.
pub fn stand_up_m(height_m: f64, diameter_m: f64) -> f64 {
    libm::hypot(height_m, diameter_m)
}

/// Height in m of a cylinder that leans by an angle from upright, rad.
pub fn leaning_height_m(height_m: f64, diameter_m: f64, lean_rad: f64) -> f64 {
    height_m * libm::cos(lean_rad) + diameter_m * libm::sin(lean_rad)
}

/// Mass in kg of a tank full of cold water.
pub fn full_mass_kg(empty_kg: f64, water_m3: f64) -> f64 {
    empty_kg + water_m3 * density_kg_per_m3(10.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Closed form: the 3-4-5 triangle; the most height a leaning cylinder takes is its diagonal, at the angle
    /// whose tangent is diameter over height.
    #[test]
    fn the_diagonal() {
        assert!((stand_up_m(4.0, 3.0) - 5.0).abs() < 1e-12);
        let lean = libm::atan2(3.0, 4.0);
        assert!((leaning_height_m(4.0, 3.0, lean) - 5.0).abs() < 1e-12);
    }

    /// 50 US gallons at 8.33 lb: 417 lb (common practice, no source), within half a percent.
    #[test]
    fn fifty_gallons_weigh() {
        let kg = full_mass_kg(0.0, 50.0 * crate::core::units::GALLON_M3);
        assert!((kg / 0.453_592_37 / 417.0 - 1.0).abs() < 5e-3, "{kg}");
    }

    proptest! {
        #[test]
        fn no_lean_needs_more_than_the_diagonal(h in 0.5..2.5f64, d in 0.3..1.0f64, lean in 0.0..1.57f64) {
            prop_assert!(leaning_height_m(h, d, lean) <= stand_up_m(h, d) + 1e-12);
        }
    }
}
