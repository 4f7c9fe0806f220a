//! `tankful::core::heat_pump::machine` against the same relations solved by scipy's bracketed root over
//! psychrolib's states of the coil (`tests/reference/heat_pump.py`).
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::heat_pump::coil::{Coil, CoilInlet};
use tankful::core::heat_pump::machine::{
    COIL_APPROACH_K, HeatPump, INTERNAL_LIFT_K, LEAST_LIFT_K, THROTTLING_PER_K,
};

/// Heat and power (relative): our iteration ends with a step below 2 mK, whose error is of its square; 3 % of
/// output a kelvin; and the fit of saturation.
const POWER: f64 = 1e-6;
/// Evaporating temperature, K: likewise.
const EVAPORATING_K: f64 = 1e-5;
/// Condensate, of 0.1 g/s, and sensible heat, of 1 kW: likewise.
const CONDENSATE: f64 = 1e-5;

/// The heat pump of a fixture, whose figures stand under `part`.
pub fn heat_pump(fixture: &Fixture, part: &str) -> HeatPump {
    let q = |name: &str| fixture.number(&[part, name]);
    assert_eq!(q("internal_lift_k"), INTERNAL_LIFT_K, "the fixture is for another machine");
    assert_eq!(q("throttling_per_k"), THROTTLING_PER_K, "the fixture is for another machine");
    assert_eq!(q("coil_approach_k"), COIL_APPROACH_K, "the fixture is for another machine");
    assert_eq!(q("least_lift_k"), LEAST_LIFT_K, "the fixture is for another machine");
    HeatPump {
        output_w: q("output_w"),
        effectiveness: q("effectiveness"),
        air_m3_per_s: q("air_m3_per_s"),
        bypass_factor: q("bypass_factor"),
        fan_w: q("fan_w"),
        condenser_w_per_k: q("condenser_w_per_k"),
        condenser_top: q("condenser_top"),
        coldest_air_c: q("coldest_air_c"),
        warmest_air_c: q("warmest_air_c"),
    }
}

#[test]
fn coil_and_compressor_agree_where_scipy_finds_it() {
    let fixture = Fixture::load("heat_pump");
    let pump = heat_pump(&fixture, "parameters");
    let pressure = fixture.number(&["parameters", "air_pressure_pa"]);
    let mut heat = Worst::of("heat of the machine, relative");
    let mut power = Worst::of("compressor power, relative");
    let mut evaporating = Worst::of("evaporating temperature, K");
    let mut condensate = Worst::of("condensate, of 0.1 g/s");
    let mut sensible = Worst::of("sensible heat, of 1 kW");
    let columns = [
        "air_c",
        "humidity_ratio",
        "condensing_c",
        "heat_w",
        "compressor_w",
        "evaporating_c",
        "condensate_kg_per_s",
        "sensible_w",
    ];
    for [t, w, condensing, heat_w, compressor_w, evaporating_c, water, sensible_w] in
        fixture.table("map").rows(columns)
    {
        let inlet = CoilInlet::new(t, w, pressure);
        let coil = Coil::new(inlet.dry_air_kg_per_s(pump.air_m3_per_s), pump.bypass_factor).unwrap();
        // From a guess as far off as a start in the cold gives.
        let run = pump.run(&inlet, &coil, condensing, -10.0);
        let at = (t, w, condensing);
        heat.see_relative(run.heat_w, heat_w, at);
        power.see_relative(run.compressor_w, compressor_w, at);
        evaporating.see(run.evaporating_c, evaporating_c, at);
        condensate.see(run.condensate_kg_per_s / 1e-4, water / 1e-4, at);
        sensible.see(run.sensible_w / 1e3, sensible_w / 1e3, at);
    }
    hold([
        (heat, POWER),
        (power, POWER),
        (evaporating, EVAPORATING_K),
        (condensate, CONDENSATE),
        (sensible, CONDENSATE),
    ]);
}
