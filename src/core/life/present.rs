//! The life of the heater that stands there, by what is known of it, and of a new one.

use super::parameters::{
    ANODE_CHANGED, LEAKING, LIME_A_STEP, LIME_MOST, OF_HEAT_PUMP, OVER_GAS, OVER_OIL, RUMBLING, RUSTY,
    SCALE_YEARS, SHAPE, Spread,
};
use super::weibull::Weibull;
use crate::core::case::{HeaterKind, PresentHeater, TankSigns, YesNo};

/// Hardness from which lime over a burner counts, kg/m³ as calcium carbonate: the lower end of "very hard" less one
/// step of the usual scale.
const HARD_KG_PER_M3: f64 = 0.120;
/// A step of that scale, kg/m³.
const STEP_KG_PER_M3: f64 = 0.060;
/// Shares that make no difference.
const ONE: Spread = Spread { low: 1.0, middle: 1.0, high: 1.0 };

/// Lives of new heaters: the middle of the parameters.
pub const NEW: Weibull = Weibull { shape: SHAPE.middle, scale_years: SCALE_YEARS.middle };

/// What kind, signs and anode make of the usual scale of life, each a share of it.
fn shares(h: &PresentHeater) -> [Spread; 3] {
    let kind = match h.kind.value {
        HeaterKind::Electric => ONE,
        HeaterKind::Gas | HeaterKind::Propane => OVER_GAS,
        HeaterKind::Oil => OVER_OIL,
        HeaterKind::HeatPump => OF_HEAT_PUMP,
    };
    let signs = match h.signs.value {
        TankSigns::Leaking => LEAKING,
        TankSigns::Rust => RUSTY,
        TankSigns::Rumbling => RUMBLING,
        TankSigns::None => ONE,
    };
    [kind, signs, if matches!(h.anode_changed.value, YesNo::Yes) { ANODE_CHANGED } else { ONE }]
}

/// Hard water drops its lime where it is heated. On an element that costs no energy (the heat still ends in the
/// water) and no tank, only elements. Over a burner it covers the tank's bottom, which then runs hotter than its
/// glass lining stands: a tenth less life in very hard water (10.5 gr/gal, 180 mg/L, on the usual scale),
/// a quarter less in extreme. Common practice, no source.
fn limed(h: &PresentHeater, a_step: f64, most: f64) -> f64 {
    if matches!(h.kind.value, HeaterKind::Electric | HeaterKind::HeatPump) {
        return 1.0;
    }
    let worn = a_step * (h.hardness_kg_per_m3.value - HARD_KG_PER_M3) / STEP_KG_PER_M3;
    match worn {
        w if w >= most => 1.0 - most,
        w if w > 0.0 => 1.0 - w,
        _ => 1.0,
    }
}

/// The distribution that the present heater's life comes from.
pub fn of(h: &PresentHeater) -> Weibull {
    let shares = shares(h);
    let scale = SCALE_YEARS.middle * limed(h, LIME_A_STEP.middle, LIME_MOST.middle);
    Weibull { shape: SHAPE.middle, scale_years: shares.iter().fold(scale, |s, share| s * share.middle) }
}

/// The same with the shortest and the longest scale of life that the parameters' ranges give: not all of them at
/// their ends at once, but their distances (of logarithms) as the root of the sum of squares, as for causes that
/// know nothing of each other.
pub fn range(h: &PresentHeater) -> [Weibull; 2] {
    let middle = of(h);
    let lime = Spread {
        low: limed(h, LIME_A_STEP.high, LIME_MOST.high),
        middle: limed(h, LIME_A_STEP.middle, LIME_MOST.middle),
        high: limed(h, LIME_A_STEP.low, LIME_MOST.low),
    };
    let (mut shorter, mut longer) = (0.0, 0.0);
    for s in shares(h).into_iter().chain([lime, SCALE_YEARS]) {
        let (down, up) = (libm::log(s.low / s.middle), libm::log(s.high / s.middle));
        shorter += down * down;
        longer += up * up;
    }
    [-shorter.sqrt(), longer.sqrt()]
        .map(|by| Weibull { scale_years: middle.scale_years * libm::exp(by), ..middle })
}

/// Whether the present heater has failed: a leaking tank is at its end.
pub fn is_at_its_end(h: &PresentHeater) -> bool {
    matches!(h.signs.value, TankSigns::Leaking)
}

/// Years the present heater may be expected to go on; none where it is at its end.
pub fn expected_left(h: &PresentHeater) -> f64 {
    if is_at_its_end(h) { 0.0 } else { of(h).expected_left(h.age_years.value) }
}

/// Chance that the present heater fails within some years; certain where it is at its end.
pub fn fails_within(h: &PresentHeater, years: f64) -> f64 {
    if is_at_its_end(h) { 1.0 } else { of(h).fails_within(years, h.age_years.value) }
}

/// Life of a new heater, years: the mean of the distribution.
pub fn new_heater_years() -> f64 {
    NEW.mean()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::case::{Known, Provenance::Answered};
    use crate::core::units::{celsius, cubic_metres, watts};
    use proptest::prelude::*;

    /// An electric tank of twelve years, invented.
    fn heater() -> PresentHeater {
        PresentHeater {
            kind: Known::new(HeaterKind::Electric, Answered),
            age_years: Known::new(12.0, Answered),
            nominal_volume: Known::new(cubic_metres(0.19), Answered),
            uniform_energy_factor: Known::new(0.92, Answered),
            first_hour_rating: Known::new(cubic_metres(0.23), Answered),
            input: Known::new(watts(4_500.0), Answered),
            setpoint: Known::new(celsius(51.7), Answered),
            anode_changed: Known::new(YesNo::No, Answered),
            signs: Known::new(TankSigns::None, Answered),
            hardness_kg_per_m3: Known::new(0.1, Answered),
            shares_flue: Known::new(YesNo::No, Answered),
        }
    }

    /// Common practice, no source: about 12 years, and "17 years is a long life for a glass-lined tank": fewer than one
    /// in five gets there.
    #[test]
    fn lives_are_those_of_the_trade() {
        assert!((11.0..14.0).contains(&new_heater_years()));
        assert!((0.05..0.2).contains(&NEW.survival(17.0)));
    }

    #[test]
    fn a_leaking_tank_is_at_its_end() {
        let mut h = heater();
        h.signs.value = TankSigns::Leaking;
        assert_eq!((expected_left(&h), fails_within(&h, 1.0)), (0.0, 1.0));
    }

    fn kinds() -> impl Strategy<Value = HeaterKind> {
        use HeaterKind::{Electric, Gas, HeatPump, Oil, Propane};
        prop::sample::select(vec![Electric, Gas, Propane, Oil, HeatPump])
    }

    proptest! {
        /// Older, harder water, worse signs and an anode never changed: never less likely to fail, nor longer to
        /// live. A longer time ahead is never safer.
        #[test]
        fn worse_is_never_better(
            kind in kinds(), age in 0.0..50.0f64, older in 0.0..10.0f64, hardness in 0.0..0.6f64,
            harder in 0.0..0.4f64, years in 0.0..10.0f64, changed in any::<bool>(),
        ) {
            let mut h = heater();
            h.kind.value = kind;
            h.age_years.value = age;
            h.hardness_kg_per_m3.value = hardness;
            h.anode_changed.value = if changed { YesNo::Yes } else { YesNo::No };
            for [worse_signs, signs] in [
                [TankSigns::Leaking, TankSigns::Rust],
                [TankSigns::Rust, TankSigns::Rumbling],
                [TankSigns::Rumbling, TankSigns::None],
            ] {
                h.signs.value = signs;
                let here = fails_within(&h, years);
                prop_assert!((0.0..=1.0).contains(&here) && fails_within(&h, years + 1.0) >= here);
                let mut worse = [h.clone(), h.clone(), h.clone(), h.clone()];
                worse[0].age_years.value += older;
                worse[1].hardness_kg_per_m3.value += harder;
                worse[2].signs.value = worse_signs;
                worse[3].anode_changed.value = YesNo::No;
                for w in &worse {
                    // Rounding of the exponent's difference.
                    prop_assert!(fails_within(w, years) >= here - 1e-12);
                    prop_assert!(expected_left(w) <= expected_left(&h) + 1e-9);
                }
                let [short, long] = range(&h);
                let middle = of(&h).scale_years;
                prop_assert!(short.scale_years < middle && middle < long.scale_years);
            }
        }

        #[test]
        fn nonsense_makes_no_nonsense(bad in prop::sample::select(vec![f64::NAN, -1.0, f64::INFINITY])) {
            let mut h = heater();
            h.kind.value = HeaterKind::Gas;
            h.hardness_kg_per_m3.value = bad;
            prop_assert!(of(&h).scale_years > 0.0);
        }
    }
}
