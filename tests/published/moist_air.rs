//! `tankful::core::moist_air` against psychrolib 2.5 (the same relations) and CoolProp 8.0's HAPropsSI (a
//! real mixture).
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::moist_air as air;

/// Saturation pressure: the rational fit against the Hyland-Wexler relations it stands for (relative).
const SATURATION_FIT: f64 = 4e-7;
/// Humidity, enthalpy, volume, density: the same relations but for that fit; psychrolib's molar mass
/// ratio (0.621945) and the reciprocal it uses for volume (1.607858) are rounded to six figures.
const SAME_RELATIONS: f64 = 5e-7;
/// Dew point, K: the fit's 4e-7 over d(ln p)/dT ≈ 0.08 per K.
const DEW_POINT_K: f64 = 6e-6;
/// Wet bulb, K: as the dew point, plus its own root's 1e-6.
const WET_BULB_K: f64 = 6e-6;
/// Real mixture: the enhancement factor (up to 1.005 near sea level) that ideal gases lack (relative).
const REAL_HUMIDITY: f64 = 0.007;
/// Real mixture, dew point, K: what 0.6 % of humidity moves it at 50 °C (0.05 of pressure per K).
const REAL_DEW_POINT_K: f64 = 0.13;
/// Real mixture, wet bulb, K: the ASHRAE heat balance with constant specific heats against real ones.
const REAL_WET_BULB_K: f64 = 0.12;
/// Wet bulbs this near 0 °C are left out against the real mixture, K.
const FREEZING_K: f64 = 1.0;
/// Real mixture, enthalpy at the same humidity ratio: constant specific heats against real ones (of 10 kJ/kg + size).
const REAL_ENTHALPY: f64 = 0.0012;
/// Real mixture, volume at the same humidity ratio: compressibility (relative).
const REAL_VOLUME: f64 = 0.001;

#[test]
fn saturation_meets_hyland_and_wexler() {
    let mut worst = Worst::of("saturation pressure, relative");
    for [t, p] in Fixture::load("moist_air").table("saturation").rows(["t_c", "pressure_pa"]) {
        worst.see_relative(air::saturation_pressure_pa(t), p, t);
    }
    worst.within(SATURATION_FIT);
}

const STATE: [&str; 9] = [
    "elevation_m",
    "pressure_pa",
    "t_c",
    "relative_humidity",
    "humidity_ratio",
    "dew_point_c",
    "wet_bulb_c",
    "enthalpy_j_per_kg",
    "volume_m3_per_kg",
];

#[test]
fn states_meet_psychrolib() {
    let mut pressure = Worst::of("pressure at elevation, relative");
    let mut humidity = Worst::of("humidity ratio, relative");
    let mut relative = Worst::of("relative humidity");
    let mut dew = Worst::of("dew point, K");
    let mut bulb = Worst::of("wet bulb, K");
    let mut enthalpy = Worst::of("enthalpy, of 10 kJ/kg + its size");
    let mut volume = Worst::of("specific volume, relative");
    let mut density = Worst::of("density, relative");
    let table = Fixture::load("moist_air").table("psychrolib");
    let densities = table.rows(["density_kg_per_m3"]);
    for (row, [rho]) in table.rows(STATE).into_iter().zip(densities) {
        let [z, p, t, rh, w, dew_c, bulb_c, h, v] = row;
        let at = (z, t, rh);
        pressure.see_relative(air::pressure_at_elevation_pa(z), p, z);
        humidity.see_relative(air::humidity_ratio_from_relative_humidity(t, rh, p), w, at);
        relative.see(air::relative_humidity(t, w, p), rh, at);
        dew.see(air::dew_point_c(w, p), dew_c, at);
        bulb.see(air::wet_bulb_c(t, w, p), bulb_c, at);
        let scale = 1e4 + h.abs();
        enthalpy.see(air::enthalpy_j_per_kg(t, w) / scale, h / scale, at);
        volume.see_relative(air::specific_volume_m3_per_kg(t, w, p), v, at);
        density.see_relative(air::density_kg_per_m3(t, w, p), rho, at);
    }
    hold([pressure, humidity, relative, enthalpy, volume, density].map(|worst| (worst, SAME_RELATIONS)));
    hold([(dew, DEW_POINT_K), (bulb, WET_BULB_K)]);
}

#[test]
fn states_are_near_the_real_mixture() {
    let mut humidity = Worst::of("humidity ratio against the real mixture, relative");
    let mut dew = Worst::of("dew point against the real mixture, K");
    let mut bulb = Worst::of("wet bulb against the real mixture, K");
    let mut enthalpy = Worst::of("enthalpy against the real mixture, of 10 kJ/kg + its size");
    let mut volume = Worst::of("specific volume against the real mixture, relative");
    for row in Fixture::load("moist_air").table("coolprop").rows(STATE) {
        let [z, p, t, rh, w, dew_c, bulb_c, h, v] = row;
        let at = (z, t, rh);
        humidity.see_relative(air::humidity_ratio_from_relative_humidity(t, rh, p), w, at);
        dew.see(air::dew_point_c(w, p), dew_c, at);
        // Near 0 °C a state has a wet and an iced bulb; HAPropsSI gives the iced one where ours is wet.
        if bulb_c.abs() > FREEZING_K {
            bulb.see(air::wet_bulb_c(t, w, p), bulb_c, at);
        }
        let scale = 1e4 + h.abs();
        enthalpy.see(air::enthalpy_j_per_kg(t, w) / scale, h / scale, at);
        volume.see_relative(air::specific_volume_m3_per_kg(t, w, p), v, at);
    }
    hold([
        (humidity, REAL_HUMIDITY),
        (dew, REAL_DEW_POINT_K),
        (bulb, REAL_WET_BULB_K),
        (enthalpy, REAL_ENTHALPY),
        (volume, REAL_VOLUME),
    ]);
}
