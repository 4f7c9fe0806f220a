//! How long tanks last: Weibull survival.
//!
//! Shape 3 and a scale of 14 years: a mean of 12.5 years, one in six reaching 17. "About 10 to 15 years;
//! 17 is a long life for a glass-lined tank": common practice, no source. Signs and the anode change the
//! scale (time passes faster or slower for that tank).

use crate::core::case::{HeaterKind, PresentHeater, TankSigns, YesNo};

/// Shape of the lives of tanks.
pub const SHAPE: f64 = 3.0;
/// Scale of the lives of tanks, years.
pub const SCALE_YEARS: f64 = 14.0;
/// Longest remaining life counted, years.
const LONGEST: u32 = 60;

/// Share of tanks that live past an age: `exp(−(age/scale)^shape)`.
pub fn survival(age_years: f64, shape: f64, scale_years: f64) -> f64 {
    if age_years <= 0.0 { 1.0 } else { libm::exp(-libm::pow(age_years / scale_years, shape)) }
}

/// Chance that a tank that has reached an age fails within some years more.
pub fn fails_within(years: f64, age_years: f64, shape: f64, scale_years: f64) -> f64 {
    // The difference of exponents, so that very old tanks do not divide zero by zero.
    let hazard =
        libm::pow((age_years + years) / scale_years, shape) - libm::pow(age_years / scale_years, shape);
    1.0 - libm::exp(-hazard)
}

/// Years a tank of this age may be expected to go on: the integral of its survival (trapezoids of a
/// quarter year).
pub fn expected_remaining_years(age_years: f64, shape: f64, scale_years: f64) -> f64 {
    let step = 0.25;
    let alive = |t: f64| 1.0 - fails_within(t, age_years, shape, scale_years);
    let n = LONGEST * 4;
    let inner: f64 = (1..n).map(|i| alive(f64::from(i) * step)).sum();
    step * (0.5 * (alive(0.0) + alive(f64::from(LONGEST))) + inner)
}

/// Scale of life of the present heater, years, by its signs and anode.
pub fn scale_years(h: &PresentHeater) -> f64 {
    let signs = match h.signs.value {
        TankSigns::Leaking => 0.25,
        TankSigns::Rust => 0.75,
        TankSigns::Rumbling => 0.9,
        TankSigns::None => 1.0,
    };
    let anode = if matches!(h.anode_changed.value, YesNo::Yes) { 1.3 } else { 1.0 };
    SCALE_YEARS * signs * anode * sediment(h)
}

/// Hard water drops its lime where it is heated. On an element that costs no energy (the heat still ends in the
/// water) and no tank, only elements. Over a burner it covers the tank's bottom, which then runs hotter than its
/// glass lining stands: a tenth less life in very hard water (10.5 gr/gal, 180 mg/L, on the usual scale),
/// a quarter less in extreme. Common practice, no source.
fn sediment(h: &PresentHeater) -> f64 {
    match h.kind.value {
        HeaterKind::Electric | HeaterKind::HeatPump => 1.0,
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => {
            let over = (h.hardness_kg_per_m3.value - 0.120) / 0.060;
            let worn = 0.1 * over;
            if worn < 0.0 {
                1.0
            } else if worn < 0.25 {
                1.0 - worn
            } else {
                0.75
            }
        }
    }
}

/// Years the present heater may be expected to go on. A leaking tank is at its end.
pub fn remaining_years(h: &PresentHeater) -> f64 {
    if matches!(h.signs.value, TankSigns::Leaking) {
        return 0.0;
    }
    expected_remaining_years(h.age_years.value, SHAPE, scale_years(h))
}

/// Chance that the present heater fails within a year.
pub fn fails_within_a_year(h: &PresentHeater) -> f64 {
    if matches!(h.signs.value, TankSigns::Leaking) {
        return 1.0;
    }
    fails_within(1.0, h.age_years.value, SHAPE, scale_years(h))
}

/// Life of a new heater, years: the mean of the distribution, `scale · Γ(1 + 1/shape)`.
pub fn new_heater_years() -> f64 {
    SCALE_YEARS * libm::tgamma(1.0 + 1.0 / SHAPE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn expected_life_of_a_new_tank_is_the_closed_form() {
        let closed = SCALE_YEARS * libm::tgamma(1.0 + 1.0 / SHAPE);
        assert!((expected_remaining_years(0.0, SHAPE, SCALE_YEARS) - closed).abs() < 0.01);
        // Common practice, no source: about 12 years.
        assert!((11.0..14.0).contains(&closed), "{closed}");
    }

    /// "17 years is a long life for a glass-lined tank": common practice, no source. Fewer than one in
    /// five gets there.
    #[test]
    fn seventeen_is_a_long_life() {
        assert!((0.05..0.2).contains(&survival(17.0, SHAPE, SCALE_YEARS)));
    }

    proptest! {
        #[test]
        fn older_tanks_fail_sooner(age in 0.0..50.0f64, years in 0.1..10.0f64) {
            let a = fails_within(years, age, SHAPE, SCALE_YEARS);
            let b = fails_within(years, age + 1.0, SHAPE, SCALE_YEARS);
            prop_assert!(b >= a && (0.0..=1.0).contains(&a));
            prop_assert!(expected_remaining_years(age + 1.0, SHAPE, SCALE_YEARS)
                <= expected_remaining_years(age, SHAPE, SCALE_YEARS));
        }
    }
}
