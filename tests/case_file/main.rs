//! The JSON form of a case: what is written is read back, the schema agrees, and what is wrong is said.

use proptest::prelude::*;
use serde_json::{Value as Json, json};
use tankful::core::case::Provenance;
use tankful::core::climate::places;
use tankful::core::units::{Quantity, Unit};
use tankful::job::answers::Answers;
use tankful::job::file::{CaseFile, MOST_BYTES, Trouble, parse_case, schema, to_json, units_of};
use tankful::job::questions::{self, Id, Kind, Question, Value};

/// Any value the question takes, in any unit it may be written in.
fn any_value(question: &'static Question) -> BoxedStrategy<Value> {
    match question.kind {
        Kind::Number { low, high, .. } => (0.0..=1.0f64, proptest::sample::select(units_of(question)))
            .prop_map(move |(share, unit)| {
                let (least, most) =
                    (low.to(unit).expect("same dimension"), high.to(unit).expect("same dimension"));
                Value::number(least.value + share * (most.value - least.value), unit)
            })
            .boxed(),
        Kind::Choice(options) => proptest::sample::select(options).prop_map(Value::code).boxed(),
        Kind::Place => {
            let ids: Vec<&'static str> = places::all().map(|p| p.id).collect();
            proptest::sample::select(ids).prop_map(Value::code).boxed()
        }
    }
}

fn any_answers() -> impl Strategy<Value = Answers> {
    let each: Vec<_> =
        questions::all().map(|q| (Just(q.id), proptest::option::of((any_value(q), any::<bool>())))).collect();
    each.prop_map(|given| {
        let mut answers = Answers::new();
        for (id, answer) in given {
            if let Some((value, measured)) = answer {
                let from = if measured { Provenance::Measured } else { Provenance::Answered };
                answers.set(id, value, from).expect("within the range");
            }
        }
        answers
    })
}

fn the_schema() -> Json {
    schema(&|q| q.id.key())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn what_is_written_is_read_back(
        answers in any_answers(),
        name in proptest::option::of("\\PC{0,200}"),
        seed in any::<Option<u64>>(),
    ) {
        let case = CaseFile { name, seed, answers, ..CaseFile::default() };
        let text = to_json(&case).to_string();
        prop_assert_eq!(parse_case(&text), Ok(case), "{}", text);
    }

    #[test]
    fn the_schema_takes_what_is_written(answers in any_answers(), seed in any::<Option<u64>>()) {
        let validator = jsonschema::draft202012::new(&the_schema()).expect("a schema");
        let written = to_json(&CaseFile { seed, answers, ..CaseFile::default() });
        let errors: Vec<String> = validator.iter_errors(&written).map(|e| format!("{}: {e}", e.instance_path)).collect();
        prop_assert!(errors.is_empty(), "{:?}", errors);
    }

    /// Nothing anybody sends makes it fall over.
    #[test]
    fn no_text_makes_it_panic(text in "\\PC*", json in r#"[{}\[\]",:0-9a-z. -]{0,200}"#) {
        let _ = parse_case(&text);
        let _ = parse_case(&json);
    }
}

#[test]
fn the_schema_is_itself_valid_and_refuses_what_reading_refuses() {
    assert!(jsonschema::meta::is_valid(&the_schema()));
    let validator = jsonschema::draft202012::new(&the_schema()).expect("a schema");
    for (record, good) in [
        (json!({ "tankful": 1 }), true),
        (
            json!({ "tankful": 1, "answers": { "adults": 2, "setpoint": { "value": 49, "unit": "degC" } } }),
            true,
        ),
        (json!({ "tankful": 1, "answers": { "adults": { "value": 2, "from": "measured" } } }), true),
        (json!({ "tankful": 1, "answers": { "heater_kind": { "value": "gas", "from": "measured" } } }), true),
        (json!({}), false),
        (json!([]), false),
        (json!({ "tankful": 2 }), false),
        (json!({ "tankful": 1, "answer": {} }), false),
        (json!({ "tankful": 1, "seed": -1 }), false),
        (json!({ "tankful": 1, "answers": { "adults": 13 } }), false),
        (json!({ "tankful": 1, "answers": { "adults": "2" } }), false),
        (json!({ "tankful": 1, "answers": { "adults": { "value": 200, "unit": "percent" } } }), false),
        (json!({ "tankful": 1, "answers": { "setpoint": 120 } }), false),
        (json!({ "tankful": 1, "answers": { "setpoint": { "value": 49, "unit": "degF" } } }), false),
        (json!({ "tankful": 1, "answers": { "setpoint": { "value": 120, "unit": "gal" } } }), false),
        (json!({ "tankful": 1, "answers": { "heater_kind": "steam" } }), false),
        (json!({ "tankful": 1, "answers": { "place": "us-zz-nowhere" } }), false),
        (json!({ "tankful": 1, "answers": { "adults": { "value": 2, "from": "assumed" } } }), false),
    ] {
        assert_eq!(parse_case(&record.to_string()).is_ok(), good, "reading {record}");
        assert_eq!(validator.is_valid(&record), good, "schema for {record}");
    }
}

/// `(field, code)` of everything wrong with a record.
fn wrong(text: &str) -> Vec<(String, &'static str)> {
    parse_case(text).expect_err(text).into_iter().map(|e| (e.field, e.trouble.code())).collect()
}

#[test]
fn everything_wrong_is_said_at_once_with_its_field() {
    let text = r#"{
        "tankful": 1, "seed": 1.5, "answrs": {},
        "answers": {
            "setpoint": {"value": 300, "unit": "degF"},
            "set_point": 120,
            "room_volume": 1000,
            "headroom": {"value": 80, "unit": "gal"},
            "adults": "two",
            "children": null,
            "teenagers": {"value": 1, "from": "guessed"},
            "heater_kind": "steam",
            "signs": 3,
            "rebate": {"unit": "$"},
            "horizon": {"value": 15, "unit": "year", "form": "measured"},
            "place": "us-ma-bostin",
            "supply": {"value": "240", "unit": "V"},
            "breaker": 30, "breaker": 40
        }
    }"#;
    let mut got = wrong(text);
    got.sort();
    let mut want: Vec<(String, &str)> = [
        ("seed", "wrong_kind"),
        ("answrs", "unknown_name"),
        ("answers.setpoint", "out_of_range"),
        ("answers.set_point", "unknown_name"),
        ("answers.room_volume", "needs_unit"),
        ("answers.headroom.unit", "wrong_unit"),
        ("answers.adults", "wrong_kind"),
        ("answers.children", "wrong_kind"),
        ("answers.teenagers.from", "not_an_option"),
        ("answers.heater_kind", "not_an_option"),
        ("answers.signs", "wrong_kind"),
        ("answers.rebate.value", "missing"),
        ("answers.horizon.form", "unknown_name"),
        ("answers.place", "unknown_name"),
        ("answers.supply.unit", "unknown_name"),
        ("answers.breaker", "given_twice"),
    ]
    .map(|(field, code)| (field.to_owned(), code))
    .to_vec();
    want.sort();
    assert_eq!(got, want);
}

#[test]
fn slips_of_the_finger_get_a_suggestion() {
    for (text, meant) in [
        (r#"{"tankful":1,"answers":{"setpont":1}}"#, "setpoint"),
        (r#"{"tankful":1,"answers":{"place":"us-ma-bostn"}}"#, "us-ma-boston"),
        (r#"{"tankful":1,"answer":{}}"#, "answers"),
    ] {
        let errors = parse_case(text).expect_err(text);
        assert!(
            matches!(&errors[0].trouble, Trouble::Unknown { near: Some(near), .. } if near == meant),
            "{text}: {errors:?}"
        );
    }
}

#[test]
fn the_range_is_said_in_the_unit_given() {
    let text = r#"{"tankful":1,"answers":{"setpoint":{"value":90,"unit":"degC"}}}"#;
    let errors = parse_case(text).expect_err("too hot");
    let Trouble::OutOfRange { given, low, high } = &errors[0].trouble else { panic!("{errors:?}") };
    assert_eq!(*given, Quantity::new(90.0, Unit::DegC));
    assert!((low.value - 37.78).abs() < 0.01 && (high.value - 71.11).abs() < 0.01, "{low:?} {high:?}");
    assert_eq!((low.unit, high.unit), (Unit::DegC, Unit::DegC));
}

#[test]
fn what_is_no_record_is_refused_whole() {
    for (text, code) in [
        ("", "not_json"),
        ("   ", "not_json"),
        ("{", "not_json"),
        ("nonsense", "not_json"),
        ("NaN", "not_json"),
        (r#"{"tankful":1,"answers":{"adults":NaN}}"#, "not_json"),
        (r#"{"tankful":1,"answers":{"adults":1e999}}"#, "not_json"),
        (r#"{"tankful":1} {"tankful":1}"#, "not_json"),
        ("[]", "wrong_kind"),
        ("3", "wrong_kind"),
        ("null", "wrong_kind"),
        ("{}", "missing"),
        (r#"{"tankful":"1"}"#, "unknown_version"),
        (r#"{"tankful":1,"answers":{"adults":1e300}}"#, "out_of_range"),
        (r#"{"tankful":1,"answers":{"adults":-1}}"#, "out_of_range"),
    ] {
        assert_eq!(wrong(text).iter().map(|(_, c)| *c).collect::<Vec<_>>(), [code], "{text}");
    }
    let long = format!(r#"{{"tankful":1,"name":"{}"}}"#, "x".repeat(MOST_BYTES));
    assert_eq!(wrong(&long), [(String::new(), "too_long")]);
    let deep = "[".repeat(100_000);
    assert_eq!(wrong(&deep), [(String::new(), "not_json")]);
}

#[test]
fn limits_themselves_are_taken_in_every_unit() {
    for q in questions::all() {
        let Kind::Number { low, high, .. } = q.kind else { continue };
        for limit in [low, high] {
            for unit in units_of(q) {
                let shown = limit.to(unit).expect("same dimension");
                let record = json!({ "tankful": 1, "answers": { q.id.code(): { "value": shown.value, "unit": unit.code() } } });
                assert!(parse_case(&record.to_string()).is_ok(), "{record}");
            }
        }
    }
    assert!(
        parse_case(r#"{"tankful":1,"answers":{"adults":{"value":2}}}"#).is_ok_and(|c| c.answers.len() == 1)
    );
    assert_eq!(
        parse_case(r#"{"tankful":1,"answers":{"adults":2}}"#)
            .expect("good")
            .answers
            .get(Id::Adults)
            .map(|a| a.from),
        Some(Provenance::Answered)
    );
}
