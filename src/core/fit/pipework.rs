//! Water that grows when it is heated, the cushion that takes it up, and what a loop of hot pipe loses.

use crate::core::water::density_kg_per_m3;

/// One standard atmosphere, Pa.
const ATMOSPHERE_PA: f64 = 101_325.0;

/// Volume in m³ by which water grows from cold to hot (°C).
pub fn growth_m3(water_m3: f64, cold_c: f64, hot_c: f64) -> f64 {
    let grown = density_kg_per_m3(cold_c) / density_kg_per_m3(hot_c) - 1.0;
    if grown > 0.0 { water_m3 * grown } else { 0.0 }
}

/// Water in m³ that an expansion tank takes up between fill and highest pressure (gauge, Pa), by Boyle's law at
/// constant temperature: with a precharge below the fill pressure part of the cushion is lost before the water
/// grows; above it, water enters only once the precharge is reached.
pub fn takes_up_m3(tank_m3: f64, precharge_pa: f64, fill_pa: f64, highest_pa: f64) -> f64 {
    let (charge, fill, highest) =
        (precharge_pa + ATMOSPHERE_PA, fill_pa + ATMOSPHERE_PA, highest_pa + ATMOSPHERE_PA);
    let start = if charge > fill { charge } else { fill };
    let taken = tank_m3 * (charge / start - charge / highest);
    if taken > 0.0 { taken } else { 0.0 }
}

/// Volume in m³ of an expansion tank, charged to the fill pressure, that takes up this growth; `None` where the
/// highest pressure is not above the fill.
pub fn expansion_tank_m3(growth_m3: f64, fill_pa: f64, highest_pa: f64) -> Option<f64> {
    let per_m3 = takes_up_m3(1.0, fill_pa, fill_pa, highest_pa);
    (per_m3 > 0.0).then(|| growth_m3 / per_m3)
}

/// Heat in W that a loop of hot pipe loses: length, loss a metre and kelvin, water over air.
pub fn loop_loss_w(length_m: f64, w_per_m_k: f64, water_c: f64, air_c: f64) -> f64 {
    let over = water_c - air_c;
    if over > 0.0 { length_m * w_per_m_k * over } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::{GALLON_M3, PSI_PA};
    use proptest::prelude::*;

    /// Published (from memory): water from 40 to 140 °F grows about 1.7 %; to a twentieth of that.
    #[test]
    fn water_grows() {
        let g = growth_m3(1.0, 4.444, 60.0);
        assert!((g - 0.017).abs() < 0.000_85, "{g}");
        assert_eq!(growth_m3(1.0, 60.0, 4.0), 0.0);
    }

    /// The sizing rule of handbooks (ASHRAE Systems and Equipment, chapter on hydronic heating, closed diaphragm
    /// tank; from memory), worked by hand: 50 gal growing 1.7 % is 0.85 gal; from 60 to 150 psi gauge the factor is
    /// 1 − 74.7/164.7 = 0.546; 1.56 gal, so the smallest tank on sale, 2 gal, serves.
    #[test]
    fn expansion_tank_by_the_handbook() {
        let size =
            expansion_tank_m3(0.85 * GALLON_M3, 60.0 * PSI_PA, 150.0 * PSI_PA).expect("above the fill");
        assert!((size / GALLON_M3 - 1.5556).abs() < 1e-3, "{}", size / GALLON_M3);
        assert_eq!(expansion_tank_m3(0.85 * GALLON_M3, 80.0 * PSI_PA, 80.0 * PSI_PA), None);
    }

    /// Boyle in closed form: at twice the absolute pressure the cushion is half as large.
    #[test]
    fn boyle() {
        let up = takes_up_m3(1.0, 0.0, 0.0, ATMOSPHERE_PA);
        assert!((up - 0.5).abs() < 1e-12);
        // A flat cushion that the fill has halved takes up a quarter more until the pressure has doubled again.
        assert!((takes_up_m3(1.0, 0.0, ATMOSPHERE_PA, 3.0 * ATMOSPHERE_PA) - 0.25).abs() < 1e-12);
    }

    /// By hand: 30 m at 0.4 W/(m·K), water 30 K over the air: 360 W.
    #[test]
    fn a_loop_loses() {
        assert!((loop_loss_w(30.0, 0.4, 50.0, 20.0) - 360.0).abs() < 1e-9);
        assert_eq!(loop_loss_w(30.0, 0.4, 15.0, 20.0), 0.0);
    }

    proptest! {
        /// A right precharge takes up the most.
        #[test]
        fn no_other_precharge_takes_up_more(fill in 1e5..6e5f64, over in 1e4..5e5f64, charge in 0.0..9e5f64) {
            let best = takes_up_m3(1.0, fill, fill, fill + over);
            prop_assert!(takes_up_m3(1.0, charge, fill, fill + over) <= best + 1e-12);
        }
    }
}
