//! The edges of what may be answered: computed, not judged; finite everywhere.

use super::{case, run};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use serde_json::{Map, Value as Json, json};
use tankful::job::questions::{self, Kind, Question};

/// Every figure of a report is finite (a null would be one that is not) and no words are missing.
fn sound(record: &Json, what: &Json) {
    assert!(record["error"].is_null(), "{what}: {record}");
    assert!(record["best"].is_string(), "{what}: {record}");
    for c in record["candidates"].as_array().expect("a list") {
        let number = |part: &str, name: &str| {
            c[part][name].as_f64().unwrap_or_else(|| panic!("{what}: {part}.{name} of {c}"))
        };
        for part in ["label", "year", "morning", "cost"] {
            for (name, value) in c[part].as_object().expect("an object") {
                assert!(!value.is_null(), "{what}: {part}.{name} of {}", c["id"]);
            }
        }
        assert!(number("year", "electricity_kwh") >= 0.0 && number("year", "fuel_kwh") >= 0.0, "{what}");
        assert!(number("year", "residual").abs() < 1e-6, "{what}: {}", number("year", "residual"));
    }
    let text = record.to_string();
    assert!(!text.contains('\u{27e8}') && !text.contains("{$"), "{what}: {text}");
}

#[test]
fn the_edges_are_computed() {
    let q = |value: f64, unit: &str| json!({ "value": value, "unit": unit });
    let edges = [
        json!({ "adults": 0, "teenagers": 0, "children": 0 }),
        json!({ "adults": 12, "teenagers": 12, "children": 12, "showers_in_a_row": 8 }),
        json!({ "room_kind": "closet", "room_volume": q(0.1, "ft3") }),
        json!({ "room_volume": q(100_000.0, "ft3") }),
        json!({ "room_winter": q(-40.0, "degF"), "room_summer": q(-40.0, "degF") }),
        json!({ "room_winter": q(130.0, "degF"), "room_summer": q(130.0, "degF") }),
        json!({ "price_electricity": q(0.0, "$/kWh"), "price_gas": q(0.0, "$/therm"),
                "price_oil": q(0.0, "$/gal"), "price_propane": q(0.0, "$/gal"),
                "installed_same": 0, "installed_heat_pump": 0 }),
        json!({ "horizon": 1 }),
        json!({ "horizon": 40, "price_growth": q(15.0, "percent"), "discount_rate": q(0.0, "percent") }),
        json!({ "setpoint": q(100.0, "degF"), "cold_tap": q(32.0, "degC"),
                "outdoor_mean": q(30.0, "degC"), "outdoor_range": q(50.0, "K") }),
        json!({ "heater_kind": "oil", "heater_volume": q(15.0, "gal"), "heater_factor": 6,
                "heater_first_hour": q(10.0, "gal") }),
        json!({ "heater_kind": "heat_pump", "heater_factor": 0.3, "heater_first_hour": q(200.0, "gal"),
                "heater_input": q(0.5, "kW") }),
        json!({ "heater_kind": "gas", "heater_volume": q(120.0, "gal"), "heater_input": q(60.0, "kW"),
                "heater_age": 60 }),
        json!({ "heater_kind": "propane", "supply": "120", "breaker": 0, "drain_kind": "none",
                "headroom": q(30.0, "in") }),
    ];
    let input: String = edges.iter().map(case).collect();
    let ran = run(&["advise", "-"], input.as_bytes());
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let records = ran.json();
    assert_eq!(records.len(), edges.len());
    for (record, edge) in records.iter().zip(&edges) {
        sound(record, edge);
    }
    // Nobody at home draws nothing.
    assert_eq!(records[0]["candidates"][0]["year"]["drawn_l"], 0.0);
}

#[test]
fn beyond_the_edges_is_refused_at_the_field() {
    for (answers, field) in [
        (json!({ "adults": -1 }), "answers.adults"),
        (json!({ "adults": 13 }), "answers.adults"),
        (json!({ "room_volume": { "value": 0.05, "unit": "ft3" } }), "answers.room_volume"),
        (json!({ "room_winter": { "value": -41, "unit": "degF" } }), "answers.room_winter"),
        (json!({ "horizon": 0 }), "answers.horizon"),
        (json!({ "horizon": 41 }), "answers.horizon"),
        (json!({ "setpoint": { "value": "NaN", "unit": "degF" } }), "answers.setpoint"),
        (json!({ "setpoint": { "value": 120, "unit": "parsec" } }), "answers.setpoint.unit"),
    ] {
        let ran = run(&["advise", "-"], case(&answers).as_bytes());
        let record = &ran.json()[0];
        assert_eq!((ran.code, record["error"][0]["field"].as_str()), (Some(1), Some(field)), "{record}");
    }
}

/// Any value a question takes, the limits often among them.
fn any_value(question: &'static Question) -> BoxedStrategy<Json> {
    match question.kind {
        Kind::Number { low, high, .. } => prop_oneof![Just(0.0), Just(1.0), 0.0..=1.0f64]
            .prop_map(move |share| {
                let value = low.value + share * (high.value - low.value);
                json!({ "value": value, "unit": low.unit.code() })
            })
            .boxed(),
        Kind::Choice(options) => proptest::sample::select(options).prop_map(|code| json!(code)).boxed(),
        Kind::Place => {
            let ids: Vec<&str> = tankful::core::climate::places::all().map(|p| p.id).collect();
            proptest::sample::select(ids).prop_map(|id| json!(id)).boxed()
        }
    }
}

/// Answers drawn at random from all that may be answered, the same ones every time.
#[test]
fn whatever_is_answered_is_computed() {
    let mut runner =
        TestRunner::new_with_rng(Config::default(), TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let mut draw = || {
        let answers: Map<String, Json> = questions::all()
            .filter_map(|q| {
                let one =
                    proptest::option::of(any_value(q)).new_tree(&mut runner).expect("a value").current();
                one.map(|value| (q.id.code().to_owned(), value))
            })
            .collect();
        Json::Object(answers)
    };
    let drawn: Vec<Json> = (0..16).map(|_| draw()).collect();
    let input: String = drawn.iter().map(case).collect();
    let ran = run(&["advise", "-"], input.as_bytes());
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    for (record, answers) in ran.json().iter().zip(&drawn) {
        sound(record, answers);
    }
}
