//! The JSON Schema of the form, made from the question list.

use super::{LONGEST_NAME, VERSION, bare_unit, number, units_like, units_of};
use crate::core::case::HeaterKind;
use crate::core::climate::places;
use crate::core::numeric::number as parsed;
use crate::core::units::{Quantity, Unit};
use crate::job::offer::{
    AdderKind, Figure, LONGEST_NAME as LONGEST_OFFER_NAME, MOST_ADDERS, MOST_DOLLARS, MOST_HEATERS,
};
use crate::job::questions::{self, Id, Kind, Question};
use crate::job::{Part, Why, done, exchange, kept, sheet};
use serde_json::{Map, Value as Json, json};

/// The schema (draft 2020-12). `words` gives each question's own words, for the descriptions.
///
/// It accepts every record that [`super::to_json`] writes. Limits that are round in the question's
/// unit are given a hair wider in other units, where they are not round; reading decides.
pub fn schema(words: &dyn Fn(&Question) -> String) -> Json {
    json!({
        "$schema": DRAFT,
        "type": "object",
        "properties": {
            "tankful": { "const": VERSION },
            "name": { "type": "string", "maxLength": LONGEST_NAME },
            "seed": { "type": "integer", "minimum": 0, "maximum": u64::MAX },
            "answers": answers(words),
            "offer": { "$ref": "#/$defs/offer" },
        },
        "required": ["tankful"],
        "additionalProperties": false,
        "$defs": { "from": from(), "offer": offer(true) },
    })
}

/// The schema of a file of jobs ([`crate::job::exchange`]), as it is written.
pub fn schema_of_jobs(words: &dyn Fn(&Question) -> String) -> Json {
    let ids: Vec<&str> = Id::ALL.iter().map(|id| id.code()).collect();
    let mut job = json!({
        "type": "object",
        "properties": {
            "tankful_job": { "enum": [kept::BEFORE_DONE, kept::VERSION] },
            "id": { "type": "string", "pattern": "^[0-9a-f]{12}$" },
            "revision": { "type": "integer", "minimum": 0 },
            "created": { "type": "number" },
            "changed": { "type": "number" },
            "archived": { "type": "boolean" },
            "answers": answers(words),
            "offer": { "$ref": "#/$defs/offer" },
            "asked": { "type": "array", "items": { "enum": ids } },
            "log": { "type": "array", "maxItems": sheet::MOST_MEASURED, "items": {
                "type": "object",
                "properties": {
                    "question": { "enum": ids },
                    "value": true,
                    "at": { "type": "number" },
                    "who": { "type": "string", "maxLength": sheet::LONGEST_WHO },
                },
                "required": ["question", "value"],
                "additionalProperties": false,
            } },
            "done": { "type": "array", "maxItems": done::MOST, "items": {
                "type": "object",
                "properties": {
                    "what": { "type": "string", "minLength": 1, "maxLength": done::LONGEST_WHAT },
                    "is": { "anyOf": [
                        { "type": "string", "maxLength": done::LONGEST_IS },
                        {
                            "type": "object",
                            "properties": {
                                "value": { "type": "number" },
                                "unit": { "enum": Unit::ALL.iter().map(|u| u.code()).collect::<Vec<_>>() },
                            },
                            "required": ["value", "unit"],
                            "additionalProperties": false,
                        },
                    ] },
                    "at": { "type": "number" },
                    "who": { "type": "string", "maxLength": sheet::LONGEST_WHO },
                },
                "required": ["what", "is"],
                "additionalProperties": false,
            } },
            "aside": { "type": "array", "maxItems": sheet::MOST_ASIDE, "items": {
                "type": "object",
                "properties": {
                    "field": { "type": "string" },
                    "text": { "type": "string" },
                    "why": { "enum": Why::ALL.map(Why::code) },
                    "at": { "type": "number" },
                },
            } },
        },
        "required": ["tankful_job", "revision", "answers"],
        "additionalProperties": false,
    });
    for part in Part::ALL {
        job["properties"][part.code()] = json!({ "type": "string", "maxLength": part.longest() });
    }
    json!({
        "$schema": DRAFT,
        "type": "object",
        "properties": {
            "tankful_jobs": { "const": exchange::VERSION },
            "jobs": { "type": "array", "maxItems": exchange::MOST_JOBS, "items": job },
        },
        "required": ["tankful_jobs", "jobs"],
        "$defs": { "from": from(), "offer": offer(false) },
    })
}

const DRAFT: &str = "https://json-schema.org/draft/2020-12/schema";

fn from() -> Json {
    json!({ "enum": ["answered", "measured"] })
}

fn answers(words: &dyn Fn(&Question) -> String) -> Json {
    let all: Map<String, Json> = questions::all()
        .map(|q| {
            let mut one = answer(q);
            one["description"] = words(q).into();
            (q.id.code().to_owned(), one)
        })
        .collect();
    json!({ "type": "object", "properties": all, "additionalProperties": false })
}

/// An offer. `whole`: its heaters have what a computation needs.
fn offer(whole: bool) -> Json {
    let name = json!({ "type": "string", "maxLength": LONGEST_OFFER_NAME });
    let price = json!({ "type": "number", "minimum": 0, "maximum": MOST_DOLLARS });
    let mut heater = Map::from_iter([
        (String::from("name"), name.clone()),
        (String::from("kind"), json!({ "enum": HeaterKind::CODES })),
    ]);
    let mut required = vec!["kind"];
    for figure in Figure::ALL {
        let (low, high) = figure.range();
        let units = units_like(figure.units().0);
        let forms: Vec<Json> = match units.as_slice() {
            [only] => vec![range(low, high, *only)],
            many => many
                .iter()
                .map(|unit| {
                    json!({
                        "type": "object",
                        "properties": { "value": range(low, high, *unit), "unit": { "const": unit.code() } },
                        "required": ["value", "unit"],
                    })
                })
                .collect(),
        };
        heater.insert(figure.code().to_owned(), json!({ "anyOf": forms }));
        if whole && figure.is_required() {
            required.push(figure.code());
        }
    }
    json!({
        "type": "object",
        "properties": {
            "name": name,
            "labour": price,
            "heaters": { "type": "array", "maxItems": MOST_HEATERS, "items": {
                "type": "object", "properties": heater, "required": required, "additionalProperties": false,
            } },
            "adders": { "type": "array", "maxItems": MOST_ADDERS, "items": {
                "type": "object",
                "properties": {
                    "kind": { "enum": AdderKind::ALL.map(AdderKind::code) },
                    "name": name,
                    "price": price,
                    "always": { "type": "boolean" },
                },
                "required": ["kind"],
                "additionalProperties": false,
            } },
        },
        "additionalProperties": false,
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
    parsed(&format!("{rounded:.12}")).unwrap_or(rounded)
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
