//! `handover` and `calendar`.

use super::{case, run};
use serde_json::{Value, json};

fn house() -> String {
    case(&json!({ "heater_kind": "electric", "place": "us-ma-boston", "drain_kind": "none" }))
}

/// A reading of the start-up record.
fn reading<'a>(page: &'a Value, code: &str) -> &'a Value {
    let all = page["startup"].as_array().expect("readings");
    all.iter().find(|r| r["reading"] == code).expect("the reading")
}

#[test]
fn a_case_gets_its_page_and_its_calendar() {
    let with = ["handover", "-", "--heater", "heat_pump_50", "--date", "2026-11-25"];
    let ran = run(&with, house().as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    let page = &ran.json()[0];
    assert_eq!(
        (page["heater"].as_str(), page["installed"].as_str()),
        (Some("heat_pump_50"), Some("2026-11-25"))
    );
    assert_eq!(page["months"].as_array().map(Vec::len), Some(12));
    let air = reading(page, "air_out");
    assert!(
        air["low"].as_f64() < air["likely"].as_f64() && air["likely"].as_f64() < air["high"].as_f64(),
        "{air}"
    );
    assert_eq!((air["unit"].as_str(), air["standing"].as_str()), (Some("degC"), Some("open")));
    assert!(page["meter"].is_null());
    let text = run(&[&with[..], &["--text"]].concat(), house().as_bytes()).out;
    assert!(text.contains("2027-02-25") && !text.contains('\u{27e8}'), "{text}");
    let calendar = run(&["calendar", "-", "--date", "2026-11-25"], house().as_bytes()).out;
    assert!(calendar.starts_with("BEGIN:VCALENDAR\r\n") && calendar.contains("DTSTAMP:20261125T000000Z"));
    assert!(ical::IcalParser::new(calendar.as_bytes()).all(|c| c.is_ok_and(|c| c.events.len() > 5)));
}

/// A job brings its own heater, day, readings and meter, and they are judged.
#[test]
fn a_job_brings_what_was_noted() {
    let note = |what: &str, is: Value| json!({ "what": what, "is": is, "at": 5 });
    let job = json!({ "tankful_job": 3, "id": "00c0ffee1234", "revision": 1, "created": 1, "changed": 2,
        "answers": { "heater_kind": "electric" }, "done": [
            note("heater", json!("heat_pump_50")), note("installed", json!("2026-07-01")),
            note("start.volts", json!({ "value": 190, "unit": "V" })),
            note("start.not_known_yet", json!({ "value": 1, "unit": "V" })),
            note("meter.from", json!("2026-08-01")), note("meter.to", json!("2026-12-01")),
            note("meter.first", json!({ "value": 0, "unit": "kWh" })),
            note("meter.last", json!({ "value": 9000, "unit": "kWh" })) ] });
    let ran = run(&["handover", "-"], job.to_string().as_bytes());
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    let page = &ran.json()[0];
    assert_eq!(page["installed"], "2026-07-01");
    let volts = reading(page, "volts");
    assert_eq!((volts["standing"].as_str(), volts["measured"].as_f64()), (Some("off"), Some(190.0)));
    assert_eq!(volts["causes"][0]["id"], "cause-loose-terminal");
    assert_eq!(
        (page["meter"]["against"].as_str(), page["meter"]["days"].as_i64()),
        (Some("more"), Some(122))
    );
}

#[test]
fn what_is_missing_or_wrong_is_said() {
    let without = run(&["handover", "-"], house().as_bytes());
    assert_eq!(without.code, Some(2));
    assert!(without.err.contains("--date"), "{}", without.err);
    assert_eq!(run(&["calendar", "-", "--date", "2026-02-30"], house().as_bytes()).code, Some(2));
    let bad =
        run(&["handover", "-", "--date", "2026-11-25"], b"{\"tankful\":1,\"answers\":{\"adults\":\"many\"}}");
    assert_eq!(bad.code, Some(1));
    assert!(bad.err.contains("answers.adults"), "{}", bad.err);
    assert_eq!(run(&["handover", "-"], b"").code, Some(1));
    let other = ["handover", "-", "--heater", "oil_tank", "--date", "2026-11-25"];
    assert_eq!(run(&other, house().as_bytes()).code, Some(2));
}
