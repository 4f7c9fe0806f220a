//! Good cases, and the lists.

use super::{case, run};
use serde_json::{Value as Json, json};
use tankful::core::candidates::CandidateId;
use tankful::job::questions::{Id, Section};

#[test]
fn the_example_is_advised_and_twice_the_same() {
    let example = run(&["example"], b"");
    assert_eq!(example.code, Some(0), "{}", example.err);
    assert!(example.out.contains("nvented"), "an invented case says so");
    let advice = run(&["advise", "-"], example.out.as_bytes());
    assert_eq!((advice.code, advice.err.as_str()), (Some(0), ""));
    let [report]: [Json; 1] = advice.json().try_into().expect("one record");
    assert!(CandidateId::from_code(report["best"].as_str().expect("a code")).is_some());
    assert_eq!((report["line"].as_u64(), report["tankful"].as_u64()), (Some(1), Some(1)));
    let candidates = report["candidates"].as_array().expect("a list");
    assert!(candidates.len() >= 7, "{}", candidates.len());
    for c in candidates {
        assert!(c["cost"]["net_present_cost_usd"].as_f64().expect("a number") > 0.0, "{c}");
        assert!(c["year"]["delivered_kwh"].as_f64().expect("a number") > 100.0, "{c}");
        assert!(c["year"]["residual"].as_f64().expect("a number").abs() < 1e-6, "{c}");
        assert!(c.get("series").is_none());
    }
    // Words: none missing, no figure left out.
    assert!(!advice.out.contains('\u{27e8}') && !advice.out.contains("{$"), "{}", advice.out);
    assert_eq!(advice.out, run(&["advise", "-"], example.out.as_bytes()).out, "not deterministic");
}

#[test]
fn the_example_as_a_file_and_as_one_line_gives_the_same() {
    let example = run(&["example"], b"").out;
    let line = serde_json::from_str::<Json>(&example).expect("JSON").to_string();
    let file = std::env::temp_dir().join(format!("tankful-example-{}.json", std::process::id()));
    std::fs::write(&file, &example).expect("a file");
    let from_file = run(&["advise", file.to_str().expect("a plain path")], b"");
    std::fs::remove_file(&file).expect("the file is there");
    assert_eq!((from_file.code, from_file.err.as_str()), (Some(0), ""));
    assert_eq!(from_file.out, run(&["advise", "-"], line.as_bytes()).out);
}

#[test]
fn text_is_for_people_in_their_units() {
    let example = run(&["example"], b"").out;
    let us = run(&["advise", "--text", "-"], example.as_bytes());
    let si = run(&["advise", "--text", "--units", "si", "-"], example.as_bytes());
    assert_eq!((us.code, si.code), (Some(0), Some(0)), "{} {}", us.err, si.err);
    let summer = |out: &str| {
        let line = out.lines().find(|l| l.contains("room in summer?")).expect("it was not answered");
        line.rsplit('\u{a0}').next().map(str::to_owned)
    };
    assert_eq!(summer(&us.out).as_deref(), Some("°F"));
    assert_eq!(summer(&si.out).as_deref(), Some("°C"));
    for said in [&us.out, &si.out] {
        assert!(said.contains("Heat pump tank, 50\u{a0}gal") && said.contains("$"), "{said}");
        assert!(!said.contains('\u{27e8}') && !said.contains("{$"), "{said}");
    }
}

#[test]
fn answered_questions_are_not_among_the_assumed() {
    let ran = run(&["advise", "-"], case(&json!({ "adults": 3 })).as_bytes());
    let report = &ran.json()[0];
    let assumed: Vec<&str> =
        report["assumed"].as_array().expect("a list").iter().filter_map(|a| a["question"].as_str()).collect();
    assert_eq!(assumed.len(), Id::ALL.len() - 1);
    assert!(!assumed.contains(&"adults"));
}

#[test]
fn series_come_when_asked_for() {
    let ran = run(&["advise", "--series", "-"], case(&json!({})).as_bytes());
    let report = &ran.json()[0];
    let series = &report["candidates"][0]["series"];
    assert_eq!(series["year"]["room_c"].as_array().map(Vec::len), Some(365));
    assert!(series["morning"]["tap_c"].as_array().is_some_and(|s| s.len() > 10));
}

#[test]
fn the_seed_chooses_the_year() {
    let lines = "{\"tankful\":1}\n{\"tankful\":1,\"seed\":20260101}\n{\"tankful\":1,\"seed\":5}\n";
    let [usual, same, other]: [Json; 3] =
        run(&["advise", "-"], lines.as_bytes()).json().try_into().expect("three records");
    assert_eq!(usual["candidates"], same["candidates"]);
    assert_ne!(usual["candidates"], other["candidates"]);
}

#[test]
fn the_schema_takes_the_example() {
    let schema: Json = serde_json::from_str(&run(&["schema"], b"").out).expect("JSON");
    let example = serde_json::from_str(&run(&["example"], b"").out).expect("JSON");
    let validator = jsonschema::draft202012::new(&schema).expect("a schema");
    assert!(validator.is_valid(&example));
    assert!(!validator.is_valid(&json!({ "tankful": 1, "answers": { "nobody": 1 } })));
}

#[test]
fn the_question_list_has_everything() {
    let list: Vec<Json> = serde_json::from_str(&run(&["questions"], b"").out).expect("JSON");
    assert_eq!(list.len(), Id::ALL.len());
    for q in &list {
        let text = |name: &str| q[name].as_str().is_some_and(|t| !t.is_empty() && !t.contains('\u{27e8}'));
        assert!(text("id") && text("text") && text("find") && text("default_from"), "{q}");
        assert!(!q["default"].is_null(), "{q}");
        assert!(q["low"].is_object() || q["options"].as_array().is_some_and(|o| o.len() >= 2), "{q}");
    }
    let text = run(&["questions", "--text", "--units", "si"], b"");
    let titles = text.out.lines().filter(|l| l.starts_with(|c: char| c.is_alphabetic()));
    assert_eq!(titles.count(), Section::ALL.len());
    for id in Id::ALL {
        assert!(text.out.contains(&format!("[{}]", id.code())), "{id:?}");
    }
}

#[test]
fn wrong_usage_is_told_by_the_exit_code() {
    for arguments in [
        &["advise"][..],
        &["advise", "-", "--units", "furlongs"],
        &["nonsense"],
        &[],
        &["advise", "/no/such/file.json"],
        &["advise", "/"],
        &["measure-year", "steam"],
    ] {
        let ran = run(arguments, b"");
        assert_eq!(ran.code, Some(2), "{arguments:?}: {}", ran.err);
        assert!(ran.out.is_empty() && !ran.err.is_empty(), "{arguments:?}");
    }
    let help = run(&["advise", "--help"], b"");
    assert_eq!(help.code, Some(0));
    assert!(help.out.contains("Exit code"), "{}", help.out);
}

#[test]
fn one_year_can_be_measured() {
    let ran = run(&["measure-year", "heat_pump_50"], b"");
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(!run(&["--help"], b"").out.contains("measure-year"), "hidden");
}

#[test]
fn company_changes_nothing() {
    let lines: Vec<String> = ["electric", "gas", "electric", "oil"]
        .iter()
        .zip(1..)
        .map(|(kind, adults)| case(&json!({ "heater_kind": kind, "adults": adults })))
        .collect();
    let together = run(&["advise", "-"], lines.concat().as_bytes()).json();
    for (line, mut record) in lines.iter().zip(together) {
        let mut alone = run(&["advise", "-"], line.as_bytes()).json().remove(0);
        for r in [&mut alone, &mut record] {
            r.as_object_mut().expect("an object").remove("line");
        }
        assert_eq!(alone, record);
    }
}

/// A record by the hour: the verdict's energy is the tariff's cost, with its share at peak hours; one of one price has no
/// such hours.
#[test]
fn a_record_by_the_hour_says_what_it_counts_with() {
    let price = |dollars: f64| json!({ "value": dollars, "unit": "$/kWh" });
    let paid = json!({ "tariff": "time", "price_peak": price(0.6), "price_low": price(0.12) });
    let report = run(&["advise", "-"], case(&paid).as_bytes()).json().remove(0);
    let figure = |of: &Json, name: &str| of[name].as_f64().expect("a figure");
    assert_eq!(report["outlook"]["by_hour"], json!(true));
    let tariff = report["outlook"]["tariff"].as_array().expect("a list");
    let candidates = report["candidates"].as_array().expect("a list");
    assert_eq!(tariff.len(), candidates.len());
    for (c, t) in candidates.iter().zip(tariff) {
        let (kwh, share) = (figure(&c["year"], "electricity_kwh"), figure(&c["year"], "peak_share"));
        let mut cost = kwh * (0.12 + share * (0.6 - 0.12));
        assert!((figure(t, "tariff_usd") - cost).abs() < 0.02, "{t}");
        assert_eq!(c["id"], t["id"]);
        if figure(&c["year"], "fuel_kwh") > 0.0 {
            cost = figure(&c["cost"], "energy_year_usd");
        }
        assert!((figure(&c["cost"], "energy_year_usd") - cost).abs() < 0.02, "{c}");
    }
    let said = run(&["advise", "--text", "-"], case(&paid).as_bytes()).out;
    assert!(said.contains("The verdict counts with your prices by the hour"), "{said}");
    let flat = run(&["advise", "-"], case(&json!({})).as_bytes()).json().remove(0);
    assert_eq!(flat["candidates"][0]["year"]["peak_share"].as_f64(), Some(0.0));
    let said = run(&["advise", "--text", "-"], case(&json!({})).as_bytes()).out;
    assert!(!said.contains("The verdict counts"), "{said}");
}

/// Futures come with the advice where they are asked for, the same for a seed, others for another.
#[test]
fn futures_are_drawn_on_request() {
    let example = run(&["example"], b"").out;
    let drawn = |seed: &str, more: &[&str]| {
        let words = [&["advise", "--futures", "40", "--seed", seed], more, &["-"]].concat();
        let ran = run(&words, example.as_bytes());
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
        ran
    };
    let first = drawn("3", &[]);
    assert_eq!(first.out, drawn("3", &[]).out, "not deterministic");
    let [report]: [Json; 1] = first.json().try_into().expect("one record");
    let futures = &report["futures"];
    assert_eq!((&futures["wishes"]["futures"], &futures["wishes"]["seed"]), (&json!(40), &json!(3)));
    assert_eq!(futures["advised"], report["best"]);
    let candidates = futures["candidates"].as_array().expect("a list");
    let chances: f64 = candidates.iter().map(|c| c["cheapest"].as_f64().expect("a chance")).sum();
    assert!((chances - 1.0).abs() < 1e-9, "{chances}");
    // The advised one's chance is part of its kind's.
    let own = candidates.iter().find(|c| c["id"] == futures["advised"]).and_then(|c| c["cheapest"].as_f64());
    let alike = futures["cheapest_alike"].as_f64().expect("a chance");
    assert!(own.is_some_and(|own| own <= alike) && alike <= 1.0, "{own:?} {alike}");
    for c in candidates {
        let band = ["low", "middle", "high"].map(|k| c["net_present_cost"][k].as_f64().expect("a number"));
        assert!(band[0] < band[1] && band[1] < band[2], "{c}");
    }
    assert!(report["changes"]["sensitivities"].as_array().is_some_and(|s| s.len() > 5));
    assert_ne!(first.out, drawn("4", &[]).out);
    let text = drawn("3", &["--text"]).out;
    assert!(text.contains("by 40 futures") && !text.contains('\u{27e8}') && !text.contains("{$"), "{text}");
    // Nobody has said which house it is: another one would turn the advice, by words; where it is said, none does.
    let otherwise = |case: &[u8]| {
        let text = run(&["advise", "--futures", "40", "--text", "-"], case).out;
        assert!(!text.contains('\u{27e8}') && !text.contains("{$"), "{text}");
        text.lines()
            .filter(|line| line.contains("this would be the better choice: "))
            .map(str::to_owned)
            .collect()
    };
    let lines: Vec<String> = otherwise(br#"{"tankful": 1, "answers": {"place": "us-pa-philadelphia"}}"#);
    let begin = [
        "What heats your water now?: If the answer is \"",
        "Where does the heater stand?: If the answer is \"",
    ];
    assert!(lines.len() == 2 && lines.iter().zip(begin).all(|(line, b)| line.contains(b)), "{lines:?}");
    assert_eq!(otherwise(example.lines().collect::<String>().as_bytes()), Vec::<String>::new());
    assert_eq!(run(&["advise", "--futures", "0", "-"], b"").code, Some(2));
    assert_eq!(run(&["advise", "--seed", "1", "-"], b"").code, Some(2));
}
