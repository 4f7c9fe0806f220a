//! `tankful::core::heat_pump::coil` against balances over states by psychrolib 2.5 and CoolProp 8.0.
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::heat_pump::coil::{Coil, CoilInlet};

/// Same relations: the saturation fit's 4e-7 of a humidity ratio up to 0.06 kg/kg, kg/kg.
const HUMIDITY_RATIO: f64 = 2.5e-8;
/// That times 0.12 kg/s of air, kg/s.
const CONDENSATE_KG_PER_S: f64 = 3e-9;
/// That times 2.5 MJ/kg, rounded up, W (of heats up to 6 kW).
const HEAT_W: f64 = 8e-3;
/// The outlet temperature follows from enthalpy and humidity, whose errors cancel in it, K.
const TEMPERATURE_K: f64 = 1e-6;
/// Real mixture: humidity ratios differ by up to 0.7 % (enhancement factor), and heat with them (relative).
const REAL_HEAT: f64 = 0.006;
/// Real mixture, condensate: a difference of two such humidities, of 0.1 g/s.
const REAL_CONDENSATE: f64 = 0.012;

#[test]
fn outlet_heat_and_condensate_meet_psychrolib() {
    let fixture = Fixture::load("wet_coil");
    let flow = fixture.number(&["dry_air_kg_per_s"]);
    let mut temperature = Worst::of("coil outlet temperature, K");
    let mut humidity = Worst::of("coil outlet humidity ratio, kg/kg");
    let mut condensate = Worst::of("coil condensate, kg/s");
    let mut heat = Worst::of("coil heat, W");
    let mut parts = Worst::of("coil sensible plus latent heat, W");
    let mut wet = 0;
    let rows = fixture.table("psychrolib").rows([
        "pressure_pa",
        "t_c",
        "relative_humidity",
        "apparatus_c",
        "bypass_factor",
        "humidity_ratio",
        "t_out_c",
        "w_out",
        "condensate_kg_per_s",
        "heat_w",
    ]);
    let all = rows.len();
    for [p, t, rh, adp, bypass, w, t_out, w_out, water, total] in rows {
        let out = Coil::new(flow, bypass).unwrap().outlet(&CoilInlet::new(t, w, p), adp);
        let at = (p, t, rh, adp, bypass);
        temperature.see(out.t_c, t_out, at);
        humidity.see(out.w, w_out, at);
        condensate.see(out.condensate_kg_per_s, water, at);
        heat.see(out.total_w, total, at);
        parts.see(out.sensible_w + out.latent_w, total, at);
        wet += usize::from(water > 0.0);
    }
    assert!(wet > all / 4 && wet < all, "both wet and dry coils are compared: {wet} of {all} wet");
    hold([
        (temperature, TEMPERATURE_K),
        (humidity, HUMIDITY_RATIO),
        (condensate, CONDENSATE_KG_PER_S),
        (heat, HEAT_W),
        (parts, HEAT_W),
    ]);
}

#[test]
fn heat_and_condensate_are_near_the_real_mixture() {
    let fixture = Fixture::load("wet_coil");
    let flow = fixture.number(&["dry_air_kg_per_s"]);
    let mut condensate = Worst::of("coil condensate against the real mixture, of 0.1 g/s + its size");
    let mut heat = Worst::of("coil heat against the real mixture, relative");
    let rows = fixture.table("coolprop").rows([
        "pressure_pa",
        "t_c",
        "apparatus_c",
        "bypass_factor",
        "relative_humidity",
        "condensate_kg_per_s",
        "heat_w",
    ]);
    for [p, t, adp, bypass, rh, water, total] in rows {
        let w = tankful::core::moist_air::humidity_ratio_from_relative_humidity(t, rh, p);
        let out = Coil::new(flow, bypass).unwrap().outlet(&CoilInlet::new(t, w, p), adp);
        let at = (p, t, rh, adp);
        let scale = 1e-4 + water;
        condensate.see(out.condensate_kg_per_s / scale, water / scale, at);
        heat.see_relative(out.total_w, total, at);
    }
    hold([(heat, REAL_HEAT), (condensate, REAL_CONDENSATE)]);
}
