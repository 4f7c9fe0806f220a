//! Answers: optional, each with who said it. Out-of-range input is refused here, at the door.

use super::questions::{Id, Kind, Question, Value};
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::numeric::number;
use crate::core::units::{Quantity, Unit};
use litemap::LiteMap;
use serde::de::{MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Answer {
    /// What was said, in the unit it was said in.
    pub value: Value,
    /// Answered or measured; never assumed.
    pub from: Provenance,
}

/// Why an answer is refused.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// The number lies outside the question's range.
    #[error("{}: {} {} is outside {} to {} {}", .id.code(), .given.value, .given.unit.code(), .low.value, .high.value, .low.unit.code())]
    OutOfRange {
        /// The question.
        id: Id,
        /// What was given.
        given: Quantity,
        /// Smallest accepted, in the unit given.
        low: Quantity,
        /// Largest accepted, in the unit given.
        high: Quantity,
    },
    /// The text is no number.
    #[error("{}: \"{text}\" is not a number", .id.code())]
    NotANumber {
        /// The question.
        id: Id,
        /// What was given.
        text: String,
    },
    /// The unit measures something else.
    #[error("{}: the unit {} does not measure this; use {}", .id.code(), .given.code(), .wanted.code())]
    WrongUnit {
        /// The question.
        id: Id,
        /// What was given.
        given: Unit,
        /// A unit that would do.
        wanted: Unit,
    },
    /// The option is not on the list.
    #[error("{}: \"{given}\" is not one of: {}", .id.code(), .options.join(", "))]
    NotAnOption {
        /// The question.
        id: Id,
        /// What was given.
        given: String,
        /// What may be given.
        options: Vec<&'static str>,
    },
    /// A number where an option belongs, or the other way round.
    #[error("{}: {wanted} is wanted here", .id.code())]
    WrongKind {
        /// The question.
        id: Id,
        /// "a number with a unit", "one of the options" or "a listed place".
        wanted: &'static str,
    },
}

impl Refusal {
    /// The question concerned.
    pub fn id(&self) -> Id {
        match self {
            Refusal::OutOfRange { id, .. }
            | Refusal::NotANumber { id, .. }
            | Refusal::WrongUnit { id, .. }
            | Refusal::NotAnOption { id, .. }
            | Refusal::WrongKind { id, .. } => *id,
        }
    }

    /// What to tell a person at the field.
    pub fn message(&self) -> Message {
        let about = Message::new(self.id().key());
        match self {
            Refusal::OutOfRange { given, low, high, .. } => Message::new("refusal-out-of-range")
                .with("question", about)
                .with("given", *given)
                .with("low", *low)
                .with("high", *high),
            Refusal::NotANumber { .. } => Message::new("refusal-not-a-number").with("question", about),
            Refusal::WrongUnit { .. } | Refusal::WrongKind { .. } | Refusal::NotAnOption { .. } => {
                Message::new("refusal-not-an-option").with("question", about)
            }
        }
    }
}

/// Everything answered so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answers(LiteMap<Id, Answer>);

impl Answers {
    /// No answers.
    pub fn new() -> Self {
        Self::default()
    }

    /// The answer to a question, if there is one.
    pub fn get(&self, id: Id) -> Option<&Answer> {
        self.0.get(&id)
    }

    /// Puts in an answer.
    ///
    /// # Errors
    /// Refuses a value outside the question's range or options; the former answer stays.
    pub fn set(&mut self, id: Id, value: Value, from: Provenance) -> Result<(), Refusal> {
        check(id, &value)?;
        // "Assumed" is the absence of an answer, not a kind of answer.
        let from = if from == Provenance::Measured { from } else { Provenance::Answered };
        self.0.insert(id, Answer { value, from });
        Ok(())
    }

    /// Takes an answer back: "I don't know".
    pub fn clear(&mut self, id: Id) {
        self.0.remove(&id);
    }

    /// Every answer, in the order of the list of identities.
    pub fn iter(&self) -> impl Iterator<Item = (Id, &Answer)> {
        self.0.iter().map(|(id, a)| (*id, a))
    }

    /// How many are answered.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// True when nothing is answered.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

// A map by code, as kept and exchanged; the list's own form would be one of pairs, since it takes only text for
// names.
impl Serialize for Answers {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter())
    }
}

impl<'de> Deserialize<'de> for Answers {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Entries;
        impl<'de> Visitor<'de> for Entries {
            type Value = Answers;

            fn expecting(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
                f.write_str("answers by the codes of their questions")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Answers, A::Error> {
                let mut answers = Answers::new();
                while let Some((id, answer)) = entries.next_entry()? {
                    answers.0.insert(id, answer);
                }
                Ok(answers)
            }
        }
        deserializer.deserialize_map(Entries)
    }
}

/// Parses what a person typed into a number field, in the unit shown there. A comma may stand for the
/// decimal point when no point is present; thousands commas and spaces are ignored.
///
/// # Errors
/// Refuses text that is not a finite number.
pub fn parse_number(id: Id, text: &str, unit: Unit) -> Result<Value, Refusal> {
    let refuse = || Refusal::NotANumber { id, text: text.chars().take(40).collect() };
    let compact: String =
        text.chars().filter(|c| !c.is_whitespace() && *c != '$' && *c != '\u{a0}').collect();
    let plain = match (compact.find(','), compact.contains('.')) {
        // "1,000" is a thousand; "0,15" and "7,5" are decimals.
        (Some(at), false) if compact.len() - at == 4 && !compact.starts_with("0,") => {
            compact.replace(',', "")
        }
        (Some(_), false) => compact.replace(',', "."),
        (Some(_), true) => compact.replace(',', ""),
        (None, _) => compact,
    };
    number(&plain).map(|value| Value::number(value, unit)).ok_or_else(refuse)
}

/// Whether a value answers a question.
///
/// # Errors
/// Says why not.
pub fn check(id: Id, value: &Value) -> Result<(), Refusal> {
    match (Question::get(id).kind, value) {
        (Kind::Number { low, high, us, .. }, Value::Number(q)) => {
            if q.unit.dimension() != us.dimension() {
                return Err(Refusal::WrongUnit { id, given: q.unit, wanted: us });
            }
            if !q.value.is_finite() {
                return Err(Refusal::NotANumber { id, text: q.value.to_string() });
            }
            // A hair of slack: a limit typed in the other system's unit must not be refused for rounding.
            let slack = 1e-9 * (high.base() - low.base());
            if q.base() < low.base() - slack || q.base() > high.base() + slack {
                let in_given = |limit: Quantity| limit.to(q.unit).unwrap_or(limit);
                return Err(Refusal::OutOfRange { id, given: *q, low: in_given(low), high: in_given(high) });
            }
            Ok(())
        }
        (Kind::Choice(options), Value::Code(code)) => {
            if options.contains(&code.as_str()) {
                Ok(())
            } else {
                Err(Refusal::NotAnOption {
                    id,
                    given: code.chars().take(40).collect(),
                    options: options.to_vec(),
                })
            }
        }
        (Kind::Place, Value::Code(code)) => {
            if crate::core::climate::places::by_id(code).is_some() {
                Ok(())
            } else {
                let wanted = "the id of a listed place";
                Err(Refusal::WrongKind { id, wanted })
            }
        }
        (Kind::Number { .. }, Value::Code(_)) => {
            Err(Refusal::WrongKind { id, wanted: "a number with a unit" })
        }
        (Kind::Choice(_), Value::Number(_)) => Err(Refusal::WrongKind { id, wanted: "one of the options" }),
        (Kind::Place, Value::Number(_)) => Err(Refusal::WrongKind { id, wanted: "the id of a listed place" }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typed_numbers_are_read_as_people_write_them() {
        for (text, want) in [
            ("120", 120.0),
            (" 1,000 ", 1000.0),
            ("0,15", 0.15),
            ("7,5", 7.5),
            ("1,234.5", 1234.5),
            ("$2", 2.0),
        ] {
            assert_eq!(
                parse_number(Id::Setpoint, text, Unit::DegF),
                Ok(Value::number(want, Unit::DegF)),
                "{text}"
            );
        }
        for text in ["", "abc", "NaN", "inf", "-inf", "1e999", "12 ft", "--3", "1.2.3"] {
            assert!(parse_number(Id::Setpoint, text, Unit::DegF).is_err(), "{text}");
        }
    }

    #[test]
    fn out_of_range_is_refused_and_the_former_answer_stays() {
        let mut a = Answers::new();
        a.set(Id::Setpoint, Value::number(125.0, Unit::DegF), Provenance::Answered).expect("in range");
        let refusal = a.set(Id::Setpoint, Value::number(300.0, Unit::DegF), Provenance::Answered);
        let text = refusal.expect_err("too hot").to_string();
        assert!(text.contains("setpoint") && text.contains("300"), "{text}");
        assert_eq!(a.get(Id::Setpoint).map(|x| x.value.clone()), Some(Value::number(125.0, Unit::DegF)));
    }

    #[test]
    fn other_kinds_and_units_are_refused() {
        assert!(check(Id::Setpoint, &Value::number(50.0, Unit::Litre)).is_err());
        assert!(check(Id::Setpoint, &Value::number(f64::NAN, Unit::DegF)).is_err());
        assert!(check(Id::HeaterKind, &Value::code("steam")).is_err());
        assert!(check(Id::HeaterKind, &Value::number(1.0, Unit::One)).is_err());
        assert!(check(Id::Place, &Value::code("us-zz-nowhere")).is_err());
    }
}
