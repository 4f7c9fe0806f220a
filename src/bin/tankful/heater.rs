//! `rate` and `calibrate`: one heater a record, by its label or by its model's parameters.

use serde_json::{Value as Json, json};
use tankful::core::case::HeaterKind;
use tankful::core::label::parameters::Parameters;
use tankful::core::label::patterns::Pattern;
use tankful::core::label::rated::{Standing, rate_at};
use tankful::core::label::rating_run::{RatingRun, Scored, rating_run};
use tankful::core::label::{calibration::calibrate_rated_at, rating_test};
use tankful::core::message::{Arg, Message};
use tankful::core::units::{GALLON_M3, KWH_J, Unit, ZERO_C_K, to_celsius};
use tankful::job::file::{GivenHeater, HeaterFile, VERSION, number};
use tankful::text::Words;

/// What is asked of a heater.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    /// What it scores.
    Rate,
    /// The model that scores its label.
    Calibrate,
}

/// The answer on one heater: a line of JSON, with the test's day in `series` when asked for; or text.
pub fn answer(
    words: &Words,
    ask: Ask,
    line: u64,
    file: &HeaterFile,
    text: bool,
    with_series: bool,
) -> String {
    let test_c = to_celsius(file.setpoint);
    if text {
        return said(words, ask, file);
    }
    let mut report = json!({ "tankful": VERSION, "line": line });
    let mut put = |name: &str, value: Json| {
        if let Some(all) = report.as_object_mut() {
            all.insert(name.to_owned(), value);
        }
    };
    if let Some(name) = &file.name {
        put("name", name.as_str().into());
    }
    match &file.heater {
        GivenHeater::Model(parameters) => {
            let heater = parameters.model().at_setpoint(test_c);
            let rating = rating_test::rate_at(&heater, test_c);
            let score = Scored::of(rating.first_hour_m3, &rating.simulated_use);
            put("rating", scored(&score));
            if with_series {
                put("series", series(&rating_run(&heater, score)));
            }
        }
        GivenHeater::Label { label, assumed, converted_from } => {
            let found = calibrate_rated_at(label, test_c, test_c);
            put("standing", standing(found.standing).into());
            put("says", found.says.iter().map(|m| message(words, m)).collect());
            put("assumed", assumed.as_slice().into());
            put("factor", number(label.uniform_energy_factor));
            if let Some(old) = converted_from {
                put("converted_from_energy_factor", number(*old));
            }
            if found.standing != Standing::Unusable {
                let score = Scored::of(found.rating.first_hour_m3, &found.rating.simulated_use);
                let off_m3 = score.first_hour_rating - label.first_hour_rating;
                put(
                    "residuals",
                    json!({
                        "factor": number(score.uniform_energy_factor - label.uniform_energy_factor),
                        "first_hour_gal": number(off_m3.value / GALLON_M3),
                    }),
                );
                match ask {
                    Ask::Rate => put("rating", scored(&score)),
                    Ask::Calibrate => put("model", model(&Parameters::of(label.kind, &found.model), test_c)),
                }
                if with_series {
                    put("series", series(&rating_run(&found.model, score)));
                }
            }
        }
    }
    report.to_string() + "\n"
}

fn standing(s: Standing) -> &'static str {
    match s {
        Standing::Met => "met",
        Standing::Contradiction => "contradiction",
        Standing::OutOfReach => "out_of_reach",
        Standing::Unusable => "unusable",
    }
}

fn message(words: &Words, m: &Message) -> Json {
    json!({ "id": m.id, "text": words.say(m) })
}

fn scored(s: &Scored) -> Json {
    let kwh = |e: uom::si::f64::Energy| number(e.value / KWH_J);
    let pattern = match s.pattern {
        Pattern::VerySmall => "very_small",
        Pattern::Low => "low",
        Pattern::Medium => "medium",
        Pattern::High => "high",
    };
    json!({
        "uniform_energy_factor": number(s.uniform_energy_factor),
        "first_hour_gal": number(s.first_hour_rating.value / GALLON_M3),
        "pattern": pattern,
        "recovery_efficiency": number(s.recovery_efficiency),
        "standby_w_per_k": number(s.standby.value),
        "electricity_kwh": kwh(s.electricity),
        "fuel_kwh": kwh(s.fuel),
        "stored_correction_kwh": kwh(s.stored_correction),
        "rise_correction_kwh": kwh(s.rise_correction),
        "year_electricity_kwh": kwh(s.year_electricity),
        "year_fuel_kwh": kwh(s.year_fuel),
    })
}

/// The test's day, step by step: `layers_c` has a list a step, from the bottom up. Flow and power are means over the time
/// since the step before, temperatures are of the step's moment.
fn series(run: &RatingRun) -> Json {
    let list = |values: &[f32]| -> Json { values.iter().map(|v| number(f64::from(*v))).collect() };
    json!({
        "minutes": list(&run.minutes),
        "flow_l_per_min": list(&run.flow_l_per_min),
        "outlet_c": list(&run.outlet_c),
        "electric_w": list(&run.electric_w),
        "fuel_w": list(&run.fuel_w),
        "layers_c": run.layers_c.chunks(run.layers).map(list).collect::<Json>(),
    })
}

/// The parameters in the form that `rate` reads.
fn model(p: &Parameters, test_c: f64) -> Json {
    let with = |value: f64, unit: &str| json!({ "value": number(value), "unit": unit });
    let mut all = json!({
        "kind": p.kind.code(),
        "volume": with(p.volume.value / GALLON_M3, "gal"),
        "standby": with(p.standby.value, "W/K"),
        "stirred": number(p.stirred),
        "upper_height": number(p.upper_height),
        "input": with(p.input.value, "W"),
        "recovery": number(p.recovery),
        "setpoint": with(Unit::DegF.from_base(test_c + ZERO_C_K), Unit::DegF.code()),
    });
    if let (HeaterKind::HeatPump, Some(all)) = (p.kind, all.as_object_mut()) {
        all.insert("effectiveness".to_owned(), number(p.effectiveness));
        all.insert("output".to_owned(), with(p.output.value, "W"));
    }
    all
}

/// The answer in words.
fn said(words: &Words, ask: Ask, file: &HeaterFile) -> String {
    let mut out = String::new();
    let mut line = |text: String| {
        out.push_str(&text);
        out.push('\n');
    };
    if let Some(name) = &file.name {
        line(name.clone());
    }
    let row = |name: &str, value: &str| format!("  {}: {value}", words.key(name));
    match &file.heater {
        GivenHeater::Model(parameters) => {
            let rating = rating_test::rate_at(&parameters.model(), to_celsius(file.setpoint));
            let s = Scored::of(rating.first_hour_m3, &rating.simulated_use);
            for r in tankful::core::label::rated::scored_rows(parameters.kind, &s) {
                line(row(&r.name, &words.arg(&r.model)));
            }
        }
        GivenHeater::Label { label, assumed, converted_from } => {
            let from = |name: &str| match name {
                "label-figure-factor" if converted_from.is_some() => "label-from-converted",
                "label-figure-factor" if !assumed.contains(&"factor") => "label-from-read",
                "label-figure-first-hour" if !assumed.contains(&"first_hour") => "label-from-read",
                "label-figure-factor" | "label-figure-first-hour" => "label-from-usual",
                _ => "label-from-worked-out",
            };
            let rated = rate_at(label, to_celsius(file.setpoint));
            for m in &rated.says {
                line(words.say(m));
            }
            if let Some(old) = converted_from {
                line(
                    words.say(
                        &Message::new("label-converted")
                            .with("old", Arg::Number(*old, 2))
                            .with("factor", Arg::Number(label.uniform_energy_factor, 2)),
                    ),
                );
            }
            let Some(heater) = rated.heater else { return out };
            if ask == Ask::Rate {
                for c in &heater.compared {
                    let model = words.arg(&c.model);
                    line(match &c.label {
                        Some(label) => words.say(
                            &Message::new("label-row")
                                .with("name", Message::new(c.name.clone()))
                                .with("label", label.clone())
                                .with("from", Message::new(from(&c.name)))
                                .with("model", c.model.clone()),
                        ),
                        None => row(&c.name, &model),
                    });
                }
            } else {
                for p in &heater.parameters {
                    line(row(&p.name, &words.arg(&p.value)));
                }
            }
        }
    }
    out
}
