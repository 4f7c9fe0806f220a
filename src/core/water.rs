//! Liquid water at one atmosphere, 0.5 to 95 °C: cheap polynomials for the tank, and the constants the
//! yearly simulation uses instead.
//!
//! The polynomials are near-minimax fits of this project to CoolProp 8.0 (`PropsSI(…, 'P', 101325,
//! 'Water')`, the IAPWS-95 formulation). The errors stated are the largest against CoolProp over the
//! range; `tests/published/water.rs` holds them to it, and to IAPWS-IF97 by the `iapws` library. Pressure
//! to 10 bar moves density by 0.05 % and is left out.

/// Volumetric heat capacity of water used by the yearly simulation, J/(m³·K): mean of ρ·c over 10 to 55 °C.
///
/// One constant keeps a tank's energy balance exact, since a layer then never changes its heat by being
/// moved. Against ρ·c at a single temperature it errs by −0.9 % (10 °C) to +0.8 % (55 °C). Against the heat
/// that warms one cubic metre by 42 K, metered cold at 10 °C it is 0.6 % low, and metered hot at 52 °C
/// it is 0.7 % high: heat divided by metered litres differs by that much from a real meter's.
pub const MEAN_VOLUMETRIC_HEAT_J_PER_M3_K: f64 = 4.158e6;

/// Specific heat of liquid water used for condensate, J/(kg·K); the ASHRAE psychrometric relations' 4.186.
/// Within 0.7 % of [`specific_heat_j_per_kg_k`] from 0.5 to 80 °C.
pub const MEAN_SPECIFIC_HEAT_J_PER_KG_K: f64 = 4186.0;

/// Density, kg/m³, of water at `t_c` °C. Within 5e-6 of CoolProp (relative), 0.5 to 95 °C.
pub fn density_kg_per_m3(t_c: f64) -> f64 {
    polynomial(t_c, [999.849_31, 6.328_467_9, -84.537_246, 67.958_136, -43.722_464, 12.499_907])
}

/// Specific heat at constant pressure, J/(kg·K), of water at `t_c` °C. Within 4e-5 of CoolProp (relative),
/// 0.5 to 95 °C.
pub fn specific_heat_j_per_kg_k(t_c: f64) -> f64 {
    polynomial(t_c, [4219.2081, -327.792_71, 1024.1814, -1580.8421, 1286.315, -406.378_45])
}

/// Density times specific heat, J/(m³·K), of water at `t_c` °C. Within 4e-5 of CoolProp (relative),
/// 0.5 to 95 °C.
pub fn volumetric_heat_j_per_m3_k(t_c: f64) -> f64 {
    polynomial(t_c, [4_218_575.9, -301_347.65, 670_360.94, -1_293_594.5, 1_098_301.9, -353_065.4])
}

/// Thermal conductivity, W/(m·K), of water at `t_c` °C. Within 4e-5 of CoolProp (relative), 0.5 to 95 °C.
pub fn conductivity_w_per_m_k(t_c: f64) -> f64 {
    polynomial(t_c, [0.555_681_84, 0.253_915_67, -0.253_982_72, 0.251_452_6, -0.189_346_08, 0.059_630_142])
}

/// Horner's rule in hundreds of °C, which keeps the coefficients of like size.
#[inline]
fn polynomial(t_c: f64, c: [f64; 6]) -> f64 {
    let x = t_c * 0.01;
    c[0] + x * (c[1] + x * (c[2] + x * (c[3] + x * (c[4] + x * c[5]))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn water_is_densest_near_four_degrees() {
        let densest = (0..=1000).map(|i| f64::from(i) * 0.01).fold((0.0, 0.0), |best, t| {
            let d = density_kg_per_m3(t);
            if d > best.1 { (t, d) } else { best }
        });
        assert!((densest.0 - 3.98).abs() < 0.15, "{densest:?}");
    }

    #[test]
    fn the_mean_is_the_mean_and_the_product_the_product() {
        let n = 4500;
        let mut sum = 0.0;
        for i in 0..n {
            let t = 10.0 + 45.0 * (f64::from(i) + 0.5) / f64::from(n);
            sum += volumetric_heat_j_per_m3_k(t);
            let product = density_kg_per_m3(t) * specific_heat_j_per_kg_k(t);
            assert!((volumetric_heat_j_per_m3_k(t) / product - 1.0).abs() < 6e-5);
            assert!((MEAN_VOLUMETRIC_HEAT_J_PER_M3_K / product - 1.0).abs() < 0.009);
        }
        assert!((sum / f64::from(n) / MEAN_VOLUMETRIC_HEAT_J_PER_M3_K - 1.0).abs() < 1e-5);
    }

    #[test]
    fn a_kilowatt_hour_raises_4_1_gallons_by_100_fahrenheit() {
        // Follows from 3412 Btu/kWh and 8.33 lb/gal: 3412 / (8.33 × 100) = 4.096 gal.
        let rise_k = 100.0 / 1.8;
        let gallons = 3.6e6 / (MEAN_VOLUMETRIC_HEAT_J_PER_M3_K * rise_k) / crate::core::units::GALLON_M3;
        assert!((gallons - 3412.0 / 833.0).abs() < 0.05, "{gallons}");
    }
}
