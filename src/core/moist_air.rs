//! Moist air: the properties that the wet coil, the room and the rating conditions need.
//!
//! Two layers. The free functions are the kernels: plain `f64` with the unit in the name, no checks,
//! meant for −60 to 95 °C and pressures well above that of saturated vapour. [`MoistAir`] is the same with
//! units in its types and a door that refuses bad input.
//!
//! Ideal-gas mixture after ASHRAE Handbook Fundamentals (2017), chapter 1, "Psychrometrics": equation
//! numbers are given from memory of that edition. Not modelled: the enhancement factor of a real mixture
//! (up to 0.5 % of humidity ratio near saturation), which `tests/published/moist_air.rs` measures.

mod state;
pub use state::{MoistAir, MoistAirError};

use crate::core::numeric::root_in_bracket;
use crate::core::units::ZERO_C_K;

/// Specific heat of dry air, J/(kg·K).
pub const DRY_AIR_HEAT_J_PER_KG_K: f64 = 1006.0;
/// Specific heat of water vapour, J/(kg·K).
pub const VAPOUR_HEAT_J_PER_KG_K: f64 = 1860.0;
/// Enthalpy of saturated vapour at 0 °C above liquid at 0 °C, J/kg.
pub const VAPOUR_ENTHALPY_AT_0_C_J_PER_KG: f64 = 2.501e6;
/// Ratio of the molar masses of water and dry air.
pub const MOLAR_MASS_RATIO: f64 = 0.621_945;
/// Gas constant of dry air, J/(kg·K).
pub const DRY_AIR_GAS_CONSTANT_J_PER_KG_K: f64 = 287.042;
/// Pressure of the standard atmosphere at sea level, Pa.
pub const STANDARD_PRESSURE_PA: f64 = 101_325.0;
/// Triple point of water, °C: saturation is over ice below, over liquid above.
const TRIPLE_POINT_C: f64 = 0.01;
/// Vapour pressure at the triple point by the Hyland-Wexler relations, Pa.
const TRIPLE_POINT_PA: f64 = 611.657;
/// Lowest temperature of the fits, °C, and the answer for the dew point of dry air.
const COLDEST_C: f64 = -60.0;

/// Natural logarithm of saturation pressure over that at the triple point, and its derivative by °C.
///
/// u·(a + b·u + …)/(c + u) with u in °C above the triple point (coefficients per hundred °C): near-minimax
/// fits of this project to the Hyland-Wexler relations (ASHRAE equations 5 and 6; R. W. Hyland and
/// A. Wexler 1983) within 4e-7 over ice (−60 to 0 °C) and over liquid (0 to 95 °C). Rational, so that
/// saturation costs one exponential in place of an exponential and a logarithm, and its inverse none.
#[inline]
fn log_saturation(t_c: f64) -> (f64, f64) {
    let u = t_c - TRIPLE_POINT_C;
    let x = u * 0.01;
    let (shift, top, slope) = if u < 0.0 {
        let [a, b, c] = [22.783_769_9, -0.189_536_293, -0.035_129_164];
        (276.701_957, a + x * (b + x * c), b + 2.0 * x * c)
    } else {
        let [a, b, c, d] = [20.218_815_6, -1.045_030_45, 0.171_878_89, -0.007_684_113_06];
        (278.345_315, a + x * (b + x * (c + x * d)), b + x * (2.0 * c + 3.0 * x * d))
    };
    let inverse = 1.0 / (shift + u);
    (u * top * inverse, inverse * (top * shift * inverse + x * slope))
}

/// Saturation pressure of water vapour, Pa, over ice below 0.01 °C and over liquid above; −60 to 95 °C.
///
/// Within 4e-7 (relative) of the Hyland-Wexler relations, which the `psychrolib` reference also uses;
/// continuous and strictly rising. One exponential.
#[inline]
pub fn saturation_pressure_pa(t_c: f64) -> f64 {
    TRIPLE_POINT_PA * libm::exp(log_saturation(t_c).0)
}

/// Saturation pressure, Pa, and its derivative, Pa/K, at the cost of the pressure alone.
#[inline]
pub fn saturation_pressure_and_slope(t_c: f64) -> (f64, f64) {
    let (log, slope) = log_saturation(t_c);
    let pressure = TRIPLE_POINT_PA * libm::exp(log);
    (pressure, pressure * slope)
}

/// Humidity ratio, kg/kg dry air, of air with the given vapour pressure (equation 20).
#[inline]
pub fn humidity_ratio_from_vapour_pressure(vapour_pa: f64, pressure_pa: f64) -> f64 {
    MOLAR_MASS_RATIO * vapour_pa / (pressure_pa - vapour_pa)
}

/// Vapour pressure, Pa, of air with humidity ratio `w` kg/kg (equation 20 turned round).
#[inline]
pub fn vapour_pressure_pa(w: f64, pressure_pa: f64) -> f64 {
    pressure_pa * w / (MOLAR_MASS_RATIO + w)
}

/// Humidity ratio of saturated air, kg/kg (equation 21).
#[inline]
pub fn saturation_humidity_ratio(t_c: f64, pressure_pa: f64) -> f64 {
    humidity_ratio_from_vapour_pressure(saturation_pressure_pa(t_c), pressure_pa)
}

/// Humidity ratio, kg/kg, at relative humidity `rh` (0 to 1; equations 12 and 20).
pub fn humidity_ratio_from_relative_humidity(t_c: f64, rh: f64, pressure_pa: f64) -> f64 {
    humidity_ratio_from_vapour_pressure(rh * saturation_pressure_pa(t_c), pressure_pa)
}

/// Relative humidity, 0 to 1 (equation 22): vapour pressure over that of saturation.
pub fn relative_humidity(t_c: f64, w: f64, pressure_pa: f64) -> f64 {
    vapour_pressure_pa(w, pressure_pa) / saturation_pressure_pa(t_c)
}

/// Dew point (frost point below 0 °C), °C: where saturation has this humidity. The inverse of
/// [`saturation_humidity_ratio`] to 1e-6 K, by Newton's method on the logarithm from a closed-form start,
/// two steps always. Air drier than at −60 °C gives −60.
pub fn dew_point_c(w: f64, pressure_pa: f64) -> f64 {
    let ratio = vapour_pressure_pa(w, pressure_pa) / TRIPLE_POINT_PA;
    if ratio.is_nan() || ratio <= 1.7e-3 {
        // Below the vapour pressure of ice at −60 °C (1.08 Pa); also keeps the logarithm finite.
        return COLDEST_C;
    }
    let log = libm::log(ratio);
    // Magnus form with the constants of log_saturation's leading terms: within 2.2 K, which two steps square
    // to 7e-7 K at 95 °C and less below.
    let mut t = if log < 0.0 { 276.7 * log / (22.8 - log) } else { 278.3 * log / (20.2 - 1.1 * log) };
    for _ in 0..2 {
        let (value, slope) = log_saturation(t);
        t -= (value - log) / slope;
    }
    if t < COLDEST_C { COLDEST_C } else { t }
}

/// Humidity ratio, kg/kg, of air at `t_c` with the (thermodynamic) wet bulb `wet_bulb_c` (equations 33 and
/// 35; over ice below 0 °C). Negative when no moist air has that wet bulb.
pub fn humidity_ratio_from_wet_bulb(t_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> f64 {
    let saturated = saturation_humidity_ratio(wet_bulb_c, pressure_pa);
    let drop = DRY_AIR_HEAT_J_PER_KG_K * (t_c - wet_bulb_c);
    let vapour = VAPOUR_HEAT_J_PER_KG_K * t_c;
    if wet_bulb_c >= 0.0 {
        ((VAPOUR_ENTHALPY_AT_0_C_J_PER_KG - 2326.0 * wet_bulb_c) * saturated - drop)
            / (VAPOUR_ENTHALPY_AT_0_C_J_PER_KG + vapour - 4186.0 * wet_bulb_c)
    } else {
        ((2.83e6 - 240.0 * wet_bulb_c) * saturated - drop) / (2.83e6 + vapour - 2100.0 * wet_bulb_c)
    }
}

/// Thermodynamic wet bulb, °C, to 1e-6 K: the root of [`humidity_ratio_from_wet_bulb`]. At and above saturation
/// it is the air's own temperature.
///
/// Some states have two: a wet bulb some tenths of a kelvin above 0 °C and an iced one just below. The wet one is given:
/// a bulb freezes only once it has passed 0 °C.
pub fn wet_bulb_c(t_c: f64, w: f64, pressure_pa: f64) -> f64 {
    let excess = |bulb: f64| humidity_ratio_from_wet_bulb(t_c, bulb, pressure_pa) - w;
    let (low, high) = if t_c > 0.0 && excess(0.0) <= 0.0 {
        (0.0, t_c)
    } else {
        // Just below 0 °C, where the relation for ice ends.
        (COLDEST_C, if t_c < 0.0 { t_c } else { -f64::MIN_POSITIVE })
    };
    // The only refusal for finite input is an unbracketed root: saturated air.
    root_in_bracket(excess, low, high, 1e-6, 100).map_or(t_c, |root| root.x)
}

/// Enthalpy, J per kg of dry air, above dry air and liquid water at 0 °C (equation 30).
#[inline]
pub fn enthalpy_j_per_kg(t_c: f64, w: f64) -> f64 {
    DRY_AIR_HEAT_J_PER_KG_K * t_c + w * (VAPOUR_ENTHALPY_AT_0_C_J_PER_KG + VAPOUR_HEAT_J_PER_KG_K * t_c)
}

/// Temperature, °C, of air with this enthalpy and humidity ratio: [`enthalpy_j_per_kg`] turned round.
#[inline]
pub fn temperature_from_enthalpy_c(enthalpy_j_per_kg: f64, w: f64) -> f64 {
    (enthalpy_j_per_kg - w * VAPOUR_ENTHALPY_AT_0_C_J_PER_KG)
        / (DRY_AIR_HEAT_J_PER_KG_K + w * VAPOUR_HEAT_J_PER_KG_K)
}

/// Volume, m³ per kg of dry air (equation 26).
#[inline]
pub fn specific_volume_m3_per_kg(t_c: f64, w: f64, pressure_pa: f64) -> f64 {
    DRY_AIR_GAS_CONSTANT_J_PER_KG_K * (t_c + ZERO_C_K) * (1.0 + w / MOLAR_MASS_RATIO) / pressure_pa
}

/// Density of the mixture, kg/m³ (equation 11).
#[inline]
pub fn density_kg_per_m3(t_c: f64, w: f64, pressure_pa: f64) -> f64 {
    (1.0 + w) / specific_volume_m3_per_kg(t_c, w, pressure_pa)
}

/// Pressure of the standard atmosphere, Pa, at an elevation in metres above the sea (equation 3; −5,000 to
/// 11,000 m).
pub fn pressure_at_elevation_pa(elevation_m: f64) -> f64 {
    STANDARD_PRESSURE_PA * libm::pow(1.0 - 2.255_77e-5 * elevation_m, 5.2559)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn saturation_meets_at_the_triple_point_and_its_slope_is_its_derivative() {
        let (below, above) = (saturation_pressure_pa(0.01 - 1e-9), saturation_pressure_pa(0.01 + 1e-9));
        assert!((above / below - 1.0).abs() < 1e-9);
        for i in -598..=948 {
            let t = f64::from(i) * 0.1 + 0.05;
            let (p, slope) = saturation_pressure_and_slope(t);
            let by_difference = (saturation_pressure_pa(t + 1e-3) - saturation_pressure_pa(t - 1e-3)) / 2e-3;
            assert!(p == saturation_pressure_pa(t) && slope > 0.0);
            assert!((slope / by_difference - 1.0).abs() < 1e-6, "{t}: {slope} {by_difference}");
        }
    }

    #[test]
    fn dry_air_has_the_coldest_dew_point_and_a_wet_bulb() {
        assert_eq!(dew_point_c(0.0, STANDARD_PRESSURE_PA), -60.0);
        assert_eq!(dew_point_c(f64::NAN, STANDARD_PRESSURE_PA), -60.0);
        let bulb = wet_bulb_c(54.0, 0.0, STANDARD_PRESSURE_PA);
        assert!((10.0..25.0).contains(&bulb), "{bulb}");
    }

    proptest! {
        #[test]
        fn relations_and_their_inverses_agree(
            t in -55.0..90.0f64, rh in 0.05..1.0f64, p in 85_000.0..105_000.0f64,
        ) {
            let w = humidity_ratio_from_relative_humidity(t, rh, p);
            prop_assert!((relative_humidity(t, w, p) - rh).abs() < 1e-12);
            let dew = dew_point_c(w, p);
            prop_assert!(dew <= t + 1e-9);
            if dew > -60.0 {
                prop_assert!((saturation_humidity_ratio(dew, p) / w - 1.0).abs() < 1e-6);
            }
            let bulb = wet_bulb_c(t, w, p);
            prop_assert!(bulb >= dew - 1e-3 && bulb <= t + 1e-6, "dew {dew} bulb {bulb} air {t}");
            if bulb.abs() > 1e-5 {
                prop_assert!((humidity_ratio_from_wet_bulb(t, bulb, p) - w).abs() < 1e-6 * (0.01 + w) * 10.0);
            }
            prop_assert!((temperature_from_enthalpy_c(enthalpy_j_per_kg(t, w), w) - t).abs() < 1e-10);
        }
    }
}
