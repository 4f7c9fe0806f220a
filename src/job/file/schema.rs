//! The JSON Schema of the form, made from the question list.

use super::{LONGEST_NAME, VERSION, bare_unit, number, units_of};
use crate::core::climate::places;
use crate::core::units::{Quantity, Unit};
use crate::job::questions::{self, Kind, Question};
use serde_json::{Map, Value as Json, json};

/// The schema (draft 2020-12). `words` gives each question's own words, for the descriptions.
///
/// It accepts every record that [`super::to_json`] writes. Limits that are round in the question's
/// unit are given a hair wider in other units, where they are not round; reading decides.
pub fn schema(words: impl Fn(&Question) -> String) -> Json {
    let answers: Map<String, Json> = questions::all()
        .map(|q| {
            let mut one = answer(q);
            if let Json::Object(o) = &mut one {
                o.insert("description".into(), words(q).into());
            }
            (q.id.code().to_owned(), one)
        })
        .collect();
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "type": "object",
        "properties": {
            "tankful": { "const": VERSION },
            "name": { "type": "string", "maxLength": LONGEST_NAME },
            "seed": { "type": "integer", "minimum": 0, "maximum": u64::MAX },
            "answers": { "type": "object", "properties": answers, "additionalProperties": false },
        },
        "required": ["tankful"],
        "additionalProperties": false,
        "$defs": { "from": { "enum": ["answered", "measured"] } },
    })
}

fn answer(question: &Question) -> Json {
    match question.kind {
        Kind::Choice(options) => coded(&json!({ "enum": options })),
        Kind::Place => coded(&json!({ "enum": places::all().map(|p| p.id).collect::<Vec<_>>() })),
        Kind::Number { low, high, .. } => {
            let bare = bare_unit(question);
            let mut forms: Vec<Json> = bare.iter().map(|unit| range(low, high, *unit)).collect();
            forms.extend(units_of(question).into_iter().map(|unit| {
                let mut required = vec!["value"];
                if bare != Some(unit) {
                    required.push("unit");
                }
                object(range(low, high, unit), Some(unit), &required)
            }));
            json!({ "anyOf": forms })
        }
    }
}

fn coded(codes: &Json) -> Json {
    json!({ "anyOf": [codes, object(codes.clone(), None, &["value"])] })
}

fn object(value: Json, unit: Option<Unit>, required: &[&str]) -> Json {
    let mut properties = Map::new();
    properties.insert("value".into(), value);
    if let Some(unit) = unit {
        properties.insert("unit".into(), json!({ "const": unit.code() }));
    }
    properties.insert("from".into(), json!({ "$ref": "#/$defs/from" }));
    json!({ "type": "object", "properties": properties, "required": required, "additionalProperties": false })
}

fn range(low: Quantity, high: Quantity, unit: Unit) -> Json {
    let in_unit = |limit: Quantity| limit.to(unit).unwrap_or(limit).value;
    let (least, most) = if unit == low.unit {
        (low.value, high.value)
    } else {
        (outward(in_unit(low), -1.0), outward(in_unit(high), 1.0))
    };
    json!({ "type": "number", "minimum": number(least), "maximum": number(most) })
}

/// A limit rounded to about six figures, away from the range.
fn outward(value: f64, direction: f64) -> f64 {
    let mut grain = 1e-5;
    while grain * 1e5 < value.abs() {
        grain *= 10.0;
    }
    while grain * 1e5 > value.abs() && grain > 1e-12 {
        grain /= 10.0;
    }
    let steps = value / grain;
    // Written and read back, so that 37.7777 does not become 37.77770000000001.
    let rounded = if direction < 0.0 { steps.floor() } else { steps.ceil() } * grain;
    format!("{rounded:.12}").parse().unwrap_or(rounded)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_rounded_away_from_the_range() {
        for (value, low, high) in [(37.777_777_78, 37.7777, 37.7778), (-40.0, -40.0, -40.0), (0.0, 0.0, 0.0)]
        {
            assert!((outward(value, -1.0) - low).abs() < 1e-3 && outward(value, -1.0) <= value, "{value}");
            assert!((outward(value, 1.0) - high).abs() < 1e-3 && outward(value, 1.0) >= value, "{value}");
        }
    }
}
