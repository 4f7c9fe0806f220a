//! What the page keeps in the browser: the answers, with a version and what tells newer work from older.
//! Reading never fails and never guesses: what is no record of ours, or only partly one, is reported so
//! that the page can set it aside.

use super::answers::{Answer, Answers};
use super::questions::Id;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value as Json};

/// The version written. A record of another version is not read: it is set aside.
pub const VERSION: u64 = 1;

/// A household's answers as kept.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Record {
    /// [`VERSION`].
    version: u64,
    /// Counts changes; the higher one is the newer work.
    pub revision: u64,
    /// When it was kept, ms since 1970; decides between equal revisions.
    pub kept_at_ms: f64,
    /// The answers.
    pub answers: Answers,
}

/// What a kept text turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Reading {
    /// A record, whole.
    Whole(Record),
    /// A record of which some answers cannot be read or lie outside their range: the rest.
    Part(Record),
    /// No record of this version.
    Foreign,
}

impl Record {
    /// A record of these answers.
    pub fn new(answers: Answers, revision: u64, kept_at_ms: f64) -> Record {
        Record { version: VERSION, revision, kept_at_ms, answers }
    }

    /// As text.
    pub fn to_text(&self) -> String {
        // Plain data with string keys always has a JSON form.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Whether this is newer work than that of another revision and time.
    pub fn is_newer_than(&self, revision: u64, kept_at_ms: f64) -> bool {
        self.revision > revision || (self.revision == revision && self.kept_at_ms > kept_at_ms)
    }

    /// Reads a kept text.
    pub fn read(text: &str) -> Reading {
        let Ok(Json::Object(mut fields)) = serde_json::from_str::<Json>(text) else {
            return Reading::Foreign;
        };
        let number = |fields: &Map<String, Json>, name: &str| fields.get(name).and_then(Json::as_u64);
        let (Some(VERSION), Some(revision)) = (number(&fields, "version"), number(&fields, "revision"))
        else {
            return Reading::Foreign;
        };
        let Some(Json::Object(entries)) = fields.remove("answers") else { return Reading::Foreign };
        let kept_at_ms = fields.get("kept_at_ms").and_then(Json::as_f64).unwrap_or(0.0);
        let asked = entries.len();
        let mut answers = Answers::new();
        // By way of text once more: a second kind of reader would only make the page larger.
        for (code, entry) in entries {
            let (Some(id), Ok(answer)) =
                (Id::from_code(&code), serde_json::from_str::<Answer>(&entry.to_string()))
            else {
                continue;
            };
            // A refused answer is missing from the count below, which is how it is noticed.
            let _ = answers.set(id, answer.value, answer.from);
        }
        let record = Record::new(answers, revision, kept_at_ms);
        if record.answers.len() == asked { Reading::Whole(record) } else { Reading::Part(record) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::case::Provenance;
    use crate::core::units::Unit;
    use crate::job::questions::Value;

    fn record() -> Record {
        let mut answers = Answers::new();
        answers.set(Id::Setpoint, Value::number(125.0, Unit::DegF), Provenance::Measured).expect("in range");
        answers.set(Id::HeaterKind, Value::code("gas"), Provenance::Answered).expect("an option");
        Record::new(answers, 7, 1_000.0)
    }

    #[test]
    fn what_is_kept_comes_back() {
        assert_eq!(Record::read(&record().to_text()), Reading::Whole(record()));
        let empty = Record::new(Answers::new(), 0, 0.0);
        assert_eq!(Record::read(&empty.to_text()), Reading::Whole(empty));
    }

    #[test]
    fn junk_and_other_versions_are_foreign() {
        let newer = record().to_text().replace("\"version\":1", "\"version\":2");
        for text in ["", "{", "null", "[]", "42", "\"x\"", "{\"version\":1}", "{\"a\":1}", newer.as_str()] {
            assert_eq!(Record::read(text), Reading::Foreign, "{text}");
        }
    }

    #[test]
    fn a_damaged_answer_is_left_out_and_noticed() {
        for (from, to) in
            [("125.0", "9000.0"), ("\"gas\"", "\"steam\""), ("setpoint", "set_point"), ("degF", "gal")]
        {
            let text = record().to_text().replace(from, to);
            assert_ne!(text, record().to_text(), "nothing was damaged by {from}");
            match Record::read(&text) {
                Reading::Part(rest) => assert_eq!((rest.answers.len(), rest.revision), (1, 7)),
                other => panic!("{to}: {other:?}"),
            }
        }
    }

    #[test]
    fn revisions_then_times_tell_newer_work() {
        let r = record();
        assert!(r.is_newer_than(6, 2_000.0) && r.is_newer_than(7, 999.0));
        assert!(!r.is_newer_than(7, 1_000.0) && !r.is_newer_than(8, 0.0));
    }
}
