//! From a label to a heater that scores it.
//!
//! Which figure sets which parameter:
//!
//! | heater | uniform energy factor sets | first-hour rating sets |
//! | --- | --- | --- |
//! | electric elements | standby conductance | share stirred by the inlet |
//! | burner | standby conductance (jacket, flue and pilot together) | the same |
//! | heat pump | effectiveness (standby is its class's) | the same |
//!
//! Standby comes before effectiveness: fitting a heat pump at the wrong standby moves its saving by
//! several per cent. The two searches are repeated once, since each moves the other's result a little.
//! Both are bracketed and bounded; a label out of reach leaves the parameter at its bound and a named
//! residual.

use super::class;
use super::first_hour::first_hour_rating_m3;
use super::patterns::Pattern;
use super::rated::Standing;
use super::rating_test::{self, Rating};
use super::simulated_use::simulated_use;
use crate::core::candidates::Label;
use crate::core::heater::{Model, Source};
use crate::core::message::Message;
use crate::core::numeric::root_in_bracket;
use crate::core::outcome::LabelCheck;
use crate::core::units::{GALLON_M3, Unit, cubic_metres, watts};
use uom::si::volume::cubic_meter;

/// Standby conductance looked for, W/K.
const STANDBY_W_PER_K: (f64, f64) = (0.05, 30.0);
/// Effectiveness looked for: what no machine undercuts or passes.
const EFFECTIVENESS: (f64, f64) = (0.15, 0.95);
/// Share stirred looked for.
const STIR: (f64, f64) = (0.08, 0.40);
/// How far the model may stay from the label without a word: the round trip the project promises.
const FACTOR_SLACK: f64 = 0.01;
const FIRST_HOUR_SLACK_GAL: f64 = 1.0;

/// A calibrated heater with how well it meets its label.
#[derive(Clone, Debug, PartialEq)]
pub struct Calibrated {
    /// The heater, at the setpoint asked for.
    pub model: Model,
    /// Label against model.
    pub check: LabelCheck,
    /// How the label stands.
    pub standing: Standing,
    /// What to say about it, the gravest first.
    pub says: Vec<Message>,
    /// What the model scores, drawn by the label's pattern.
    pub rating: Rating,
}

/// Calibrates a heater to its label and sets its thermostat.
pub fn calibrate(label: &Label, setpoint_c: f64) -> Calibrated {
    let mut model = class::model(label, rating_test::DELIVERED_C);
    let first_hour_m3 = label.first_hour_rating.get::<cubic_meter>();
    let pattern = Pattern::for_first_hour(first_hour_m3);
    for _ in 0..2 {
        fit_factor(&mut model, label.uniform_energy_factor, pattern);
        fit_first_hour(&mut model, first_hour_m3);
    }
    fit_factor(&mut model, label.uniform_energy_factor, pattern);

    let rating =
        Rating { first_hour_m3: first_hour_rating_m3(&model), simulated_use: simulated_use(&model, pattern) };
    let (model_factor, model_first_hour) = (rating.simulated_use.uniform_energy_factor, rating.first_hour_m3);
    let check = LabelCheck {
        factor: label.uniform_energy_factor,
        model_factor,
        first_hour: label.first_hour_rating,
        model_first_hour: cubic_metres(model_first_hour),
        standby_w_per_k: model.standby_w_per_k,
        heat_pump_output: watts(model.pump().map_or(0.0, |p| p.output_w)),
        residual: residual(label.uniform_energy_factor, model_factor, first_hour_m3, model_first_hour),
    };
    model.setpoint_c = setpoint_c;
    let says: Vec<Message> = check.residual.iter().cloned().collect();
    let standing = if says.is_empty() { Standing::Met } else { Standing::OutOfReach };
    Calibrated { model, check, standing, says, rating }
}

/// What to say when a figure is out of reach.
fn residual(factor: f64, model_factor: f64, first_hour_m3: f64, model_first_hour_m3: f64) -> Option<Message> {
    if (factor - model_factor).abs() > FACTOR_SLACK {
        return Some(
            Message::new("label-factor-out-of-reach")
                .with("label", crate::core::message::Arg::Number(factor, 2))
                .with("model", crate::core::message::Arg::Number(model_factor, 2)),
        );
    }
    let gal = (first_hour_m3 - model_first_hour_m3) / GALLON_M3;
    (gal.abs() > FIRST_HOUR_SLACK_GAL).then(|| {
        Message::new("label-first-hour-out-of-reach")
            .quantity("label", first_hour_m3 / GALLON_M3, Unit::Gallon)
            .quantity("model", model_first_hour_m3 / GALLON_M3, Unit::Gallon)
    })
}

fn fit_factor(model: &mut Model, factor: f64, pattern: Pattern) {
    let (low, high) = if model.pump().is_some() { EFFECTIVENESS } else { STANDBY_W_PER_K };
    let tolerance = 1e-4 * (high - low);
    let best = search(low, high, tolerance, |x| {
        let mut tried = model.clone();
        set_factor_parameter(&mut tried, x);
        simulated_use(&tried, pattern).uniform_energy_factor - factor
    });
    set_factor_parameter(model, best);
}

fn set_factor_parameter(model: &mut Model, x: f64) {
    match &mut model.source {
        Source::HeatPump { pump, .. } => pump.effectiveness = x,
        Source::Elements(_) | Source::Burner(_) => model.standby_w_per_k = x,
    }
}

/// The first-hour rating is a sum of whole draws: it may jump where one more draw fits into the hour.
/// So a grid finds the neighbourhood and a finer one the place; no bracket could be trusted.
fn fit_first_hour(model: &mut Model, first_hour_m3: f64) {
    let off = |stir: f64| {
        let tried = Model { inlet_stir: stir, ..model.clone() };
        (first_hour_rating_m3(&tried) - first_hour_m3).abs()
    };
    let mut best = (off(STIR.0), STIR.0);
    let mut around = |centre: f64, width: f64, steps: u32| {
        for i in 0..=steps {
            let stir = (centre - width + 2.0 * width * f64::from(i) / f64::from(steps)).clamp(STIR.0, STIR.1);
            let error = off(stir);
            if error < best.0 {
                best = (error, stir);
            }
        }
        best.1
    };
    let middle = 0.5 * (STIR.0 + STIR.1);
    let coarse = around(middle, 0.5 * (STIR.1 - STIR.0), 12);
    model.inlet_stir = around(coarse, 0.02, 8);
}

/// The root between two bounds, or the bound that comes closer when there is none.
fn search(low: f64, high: f64, tolerance: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    match root_in_bracket(&mut f, low, high, tolerance, 40) {
        Ok(root) => root.x,
        Err(_) if f(low).abs() <= f(high).abs() => low,
        Err(_) => high,
    }
}
