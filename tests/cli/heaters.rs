//! `rate` and `calibrate`.

use super::{codes, run};
use serde_json::{Value as Json, json};

fn line(record: &Json) -> String {
    record.to_string() + "\n"
}

fn electric() -> Json {
    json!({ "tankful": 1, "name": "Invented", "label": {
        "kind": "electric", "volume": { "value": 50, "unit": "gal" }, "factor": 0.93,
        "first_hour": { "value": 62, "unit": "gal" }, "input": { "value": 4500, "unit": "W" } } })
}

/// A label becomes a model, and the model, rated, scores the label.
#[test]
fn calibrated_models_score_their_labels() {
    let gas = json!({ "tankful": 1, "label": { "kind": "gas", "volume": { "value": 151.4, "unit": "L" },
        "factor": 0.60, "first_hour": { "value": 68, "unit": "gal" },
        "input": { "value": 40000, "unit": "Btu/h" } } });
    let pump = json!({ "tankful": 1, "label": { "kind": "heat_pump", "volume": { "value": 50, "unit": "gal" },
        "factor": 3.45, "first_hour": { "value": 65, "unit": "gal" } } });
    let labels = [(electric(), 0.93, 62.0), (gas, 0.60, 68.0), (pump, 3.45, 65.0)];
    let input: String = labels.iter().map(|(l, ..)| line(l)).collect();
    let ran = run(&["calibrate", "-"], input.as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    let found = ran.json();
    assert_eq!(found[0]["name"], "Invented");
    assert_eq!(found[2]["assumed"], json!(["input", "output"]));
    let models: String = found.iter().map(|f| line(&json!({ "tankful": 1, "model": f["model"] }))).collect();
    let rated = run(&["rate", "-"], models.as_bytes());
    assert_eq!((rated.code, rated.err.as_str()), (Some(0), ""));
    for ((r, f), (_, factor, first_hour)) in rated.json().iter().zip(&found).zip(labels) {
        assert_eq!(f["standing"], "met");
        let of = |name: &str| r["rating"][name].as_f64().expect("a number");
        assert!((of("uniform_energy_factor") - factor).abs() <= 0.01, "{r}");
        assert!((of("first_hour_gal") - first_hour).abs() <= 1.0, "{r}");
        assert_eq!(r["rating"]["pattern"], "medium");
        // Medium draws on the label: 365 · 55 gal · 8.24 · 67 °F over the factor (10 CFR 430.23(e), from memory).
        let year_kwh = 365.0 * 55.0 * 8.24 * 67.0 / of("uniform_energy_factor") / 3_412.0;
        let year = of("year_electricity_kwh") + of("year_fuel_kwh");
        assert!((year / year_kwh - 1.0).abs() < 1e-3, "{r}");
    }
    // A label is rated as well, in one go.
    let at_once = run(&["rate", "-"], line(&electric()).as_bytes()).json();
    assert_eq!(at_once[0]["standing"], "met");
    assert!(at_once[0]["rating"]["recovery_efficiency"].as_f64() == Some(0.98));
}

#[test]
fn what_cannot_be_is_said() {
    let impossible = json!({ "tankful": 1, "label": { "kind": "heat_pump",
        "volume": { "value": 50, "unit": "gal" }, "factor": 6.5 } });
    let ran = run(&["calibrate", "-"], line(&impossible).as_bytes());
    let found = &ran.json()[0];
    assert_eq!((ran.code, found["standing"].as_str()), (Some(0), Some("out_of_reach")));
    let text = found["says"][0]["text"].as_str().expect("words");
    assert!(text.contains("6.50") && text.contains("50\u{a0}gal") && !text.contains('\u{27e8}'), "{text}");
    let old = json!({ "tankful": 1, "label": { "kind": "gas", "factor": 0.62, "scale": "ef" } });
    let found = &run(&["calibrate", "-"], line(&old).as_bytes()).json()[0];
    assert_eq!(found["converted_from_energy_factor"], 0.62);
    assert!(found["factor"].as_f64().is_some_and(|f| (0.55..0.62).contains(&f)), "{found}");
}

#[test]
fn bad_records_are_refused_with_their_fields() {
    for (record, field, code) in [
        (json!({ "label": { "kind": "gas" } }), "tankful", "missing"),
        (json!({ "tankful": 2, "label": { "kind": "gas" } }), "tankful", "unknown_version"),
        (json!({ "tankful": 1 }), "label", "missing"),
        (json!({ "tankful": 1, "label": {} }), "label.kind", "missing"),
        (json!({ "tankful": 1, "label": { "kind": "steam" } }), "label.kind", "not_an_option"),
        (json!({ "tankful": 1, "label": { "kind": "gas", "factor": -1 } }), "label.factor", "out_of_range"),
        (json!({ "tankful": 1, "label": { "kind": "gas", "volume": 50 } }), "label.volume", "needs_unit"),
        (json!({ "tankful": 1, "label": { "kind": "gas", "colour": 1 } }), "label.colour", "unknown_name"),
        (json!({ "tankful": 1, "model": { "kind": "gas" } }), "model.volume", "missing"),
    ] {
        let ran = run(&["rate", "-"], line(&record).as_bytes());
        assert_eq!(ran.code, Some(1), "{record}");
        let bad = &ran.json()[0];
        assert_eq!(
            (bad["error"][0]["field"].as_str(), codes(bad)),
            (Some(field), vec![code]),
            "{record}: {bad}"
        );
    }
    // Only labels can be calibrated.
    let model = json!({ "tankful": 1, "model": { "kind": "gas", "volume": { "value": 40, "unit": "gal" } } });
    assert_eq!(run(&["calibrate", "-"], line(&model).as_bytes()).code, Some(1));
    // A bad record stops nothing.
    let ran = run(&["calibrate", "-"], ("nonsense\n".to_owned() + &line(&electric())).as_bytes());
    assert_eq!((ran.code, ran.json().len()), (Some(1), 2));
    assert_eq!(codes(&ran.json()[0]), ["not_json"]);
}

#[test]
fn text_is_for_people() {
    for (command, has) in [
        ("rate", "Uniform energy factor: label 0.93 (as read), model 0.93"),
        ("calibrate", "Power of each element"),
    ] {
        let ran = run(&[command, "--text", "-"], line(&electric()).as_bytes());
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
        assert!(
            ran.out.contains(has) && !ran.out.contains('\u{27e8}') && !ran.out.contains("{$"),
            "{}",
            ran.out
        );
    }
    let model = json!({ "tankful": 1, "model": { "kind": "gas", "volume": { "value": 38, "unit": "gal" } } });
    let si = run(&["rate", "--text", "--units", "si", "-"], line(&model).as_bytes());
    assert!(si.out.contains("First-hour rating") && si.out.contains("\u{a0}L"), "{}", si.out);
}

/// What a label left out, and what follows from the others, is marked as such.
#[test]
fn each_figure_says_where_it_is_from() {
    let bare = json!({ "tankful": 1, "label": { "kind": "electric", "factor": 0.92 } });
    let ran = run(&["rate", "--text", "-"], line(&bare).as_bytes());
    for has in ["label 0.92 (as read)", "(usual for its kind)", "(worked out)"] {
        assert!(ran.out.contains(has), "{}", ran.out);
    }
    let old = json!({ "tankful": 1, "label": { "kind": "gas", "factor": 0.62, "scale": "ef" } });
    let ran = run(&["rate", "--text", "-"], line(&old).as_bytes());
    assert!(ran.out.contains("(from the old scale)"), "{}", ran.out);
}

/// The test's day adds up to what it scored: water by the pattern, energy as used.
#[test]
fn the_series_is_the_day_that_was_rated() {
    let pump = json!({ "tankful": 1, "label": { "kind": "heat_pump", "factor": 3.45 } });
    let ran = run(&["rate", "--series", "-"], (line(&electric()) + &line(&pump)).as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    for rated in ran.json() {
        let all = |name: &str| -> Vec<f64> {
            let list = rated["series"][name].as_array().unwrap_or_else(|| panic!("no {name}"));
            list.iter().map(|v| v.as_f64().expect("a number")).collect()
        };
        let minutes = all("minutes");
        assert!(minutes.is_sorted() && minutes.first() == Some(&0.0) && minutes.last() == Some(&1_440.0));
        let sum = |values: &[f64]| -> f64 {
            minutes.windows(2).zip(&values[1..]).map(|(w, v)| (w[1] - w[0]) * v).sum()
        };
        let drawn_gal = sum(&all("flow_l_per_min")) / 3.785_411_784;
        assert!((drawn_gal - 55.0).abs() < 0.05, "{drawn_gal} gal of a medium pattern");
        let used_kwh = sum(&all("electric_w")) / 60e3;
        let said_kwh = rated["rating"]["electricity_kwh"].as_f64().expect("a number");
        // Looking on cuts the simulation's steps, and a heat pump's last recovery may end on the day's other side; the
        // score corrects for heat stored, the series shows it.
        let close = if rated["rating"]["uniform_energy_factor"].as_f64() > Some(1.0) { 0.03 } else { 0.01 };
        assert!((used_kwh / said_kwh - 1.0).abs() < close, "{used_kwh} of {said_kwh} kWh");
        assert!(all("outlet_c").iter().all(|t| (45.0..60.0).contains(t)));
        let layers = rated["series"]["layers_c"].as_array().expect("a list");
        assert_eq!((layers.len(), layers[0].as_array().map(Vec::len)), (minutes.len(), Some(12)));
    }
    let without = run(&["rate", "-"], line(&electric()).as_bytes()).json();
    assert!(without[0].get("series").is_none());
    assert_eq!(run(&["calibrate", "--series", "-"], b"").code, Some(2));
}

/// The thermostat's place in the rating test: within what the procedure allows, and carried on to the model.
#[test]
fn a_rated_setpoint_is_kept_and_bounded() {
    let with = |value: f64, unit: &str| {
        let mut label = electric();
        label["label"]["setpoint"] = json!({ "value": value, "unit": unit });
        line(&label)
    };
    let usual = run(&["calibrate", "-"], line(&electric()).as_bytes()).json();
    let hotter = run(&["calibrate", "-"], with(130.0, "degF").as_bytes()).json();
    assert!((usual[0]["model"]["setpoint"]["value"].as_f64().expect("a number") - 125.0).abs() < 1e-9);
    assert_eq!(hotter[0]["standing"], "met");
    // The same score at a hotter tank is that of a better jacket.
    let standby = |of: &Json| of["model"]["standby"]["value"].as_f64().expect("a number");
    assert!(standby(&hotter[0]) < standby(&usual[0]) - 0.01, "{hotter:?} {usual:?}");
    let model = json!({ "tankful": 1, "model": hotter[0]["model"] });
    let rated = run(&["rate", "-"], line(&model).as_bytes()).json();
    let factor = rated[0]["rating"]["uniform_energy_factor"].as_f64().expect("a number");
    assert!((factor - 0.93).abs() < 0.001, "{factor}");
    for (value, unit) in [(119.0, "degF"), (140.0, "degF"), (60.0, "degC")] {
        let bad = &run(&["rate", "-"], with(value, unit).as_bytes()).json()[0];
        assert_eq!(
            (bad["error"][0]["field"].as_str(), codes(bad)),
            (Some("label.setpoint"), vec!["out_of_range"])
        );
    }
}
