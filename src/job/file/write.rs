//! A case to JSON.

use super::{CaseFile, VERSION, bare_unit};
use crate::core::case::Provenance;
use crate::job::answers::Answer;
use crate::job::questions::{Id, Question, Value};
use serde_json::{Map, Number, Value as Json, json};

/// The JSON form of a case; [`super::parse_case`] reads it back to the same case.
pub fn to_json(case: &CaseFile) -> Json {
    let mut record = Map::new();
    record.insert("tankful".into(), VERSION.into());
    if let Some(name) = &case.name {
        record.insert("name".into(), name.as_str().into());
    }
    if let Some(seed) = case.seed {
        record.insert("seed".into(), seed.into());
    }
    let answers: Map<String, Json> =
        case.answers.iter().map(|(id, answer)| (id.code().to_owned(), value(id, answer))).collect();
    record.insert("answers".into(), answers.into());
    Json::Object(record)
}

fn value(id: Id, answer: &Answer) -> Json {
    let measured = answer.from == Provenance::Measured;
    let mut object = match &answer.value {
        Value::Code(code) if !measured => return code.as_str().into(),
        Value::Code(code) => json!({ "value": code }),
        Value::Number(q) if bare_unit(Question::get(id)) == Some(q.unit) && !measured => {
            return number(q.value);
        }
        Value::Number(q) => json!({ "value": number(q.value), "unit": q.unit.code() }),
    };
    if let (true, Json::Object(parts)) = (measured, &mut object) {
        parts.insert("from".into(), "measured".into());
    }
    object
}

/// A number as people write it: 2, not 2.0. Null for what is not finite.
pub fn number(value: f64) -> Json {
    let whole = value as i64;
    // Exact both ways below 2^53; a minus zero would lose its sign.
    if whole as f64 == value && whole.unsigned_abs() < 1 << 53 && !(whole == 0 && value.is_sign_negative()) {
        return whole.into();
    }
    // Answers are finite: what is not cannot be set.
    Number::from_f64(value).map_or(Json::Null, Json::Number)
}
