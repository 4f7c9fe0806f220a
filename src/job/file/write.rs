//! A case to JSON.

use super::{CaseFile, VERSION, units_of};
use crate::core::case::Provenance;
use crate::job::answers::{Answer, Answers};
use crate::job::questions::{Id, Question, Value};
use crate::job::{form, offer};
use serde_json::{Map, Value as Json};

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
    record.insert("answers".into(), answers(&case.answers));
    if !case.offer.is_empty() {
        record.insert("offer".into(), offer::to_json(&case.offer));
    }
    Json::Object(record)
}

/// Answers by question code.
pub(in crate::job) fn answers(answers: &Answers) -> Json {
    let all: Map<String, Json> =
        answers.iter().map(|(id, answer)| (id.code().to_owned(), value(id, answer))).collect();
    all.into()
}

/// An answer: bare where its unit and that it was answered go without saying.
pub(in crate::job) fn value(id: Id, answer: &Answer) -> Json {
    let bare = match &answer.value {
        Value::Code(code) => code.as_str().into(),
        Value::Number(q) => form::quantity(*q, &units_of(Question::get(id))),
    };
    if answer.from != Provenance::Measured {
        return bare;
    }
    let mut parts = match bare {
        Json::Object(parts) => parts,
        bare => Map::from_iter([(String::from("value"), bare)]),
    };
    if let (Value::Number(q), None) = (&answer.value, parts.get("unit")) {
        parts.insert("unit".into(), q.unit.code().into());
    }
    parts.insert("from".into(), "measured".into());
    parts.into()
}
