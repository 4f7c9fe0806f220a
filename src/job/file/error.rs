//! What can be wrong with a record: each with its field, what was given and what would do.

use super::units_of;
use crate::core::message::{Arg, Message};
use crate::core::units::{Quantity, Unit};
use crate::job::answers::Refusal;
use crate::job::questions::Question;

/// One thing that is wrong with a record.
#[derive(Clone, Debug, PartialEq)]
pub struct CaseError {
    /// The field: `answers.setpoint`, `seed`; empty when the whole record is meant.
    pub field: String,
    /// What is wrong with it.
    pub trouble: Trouble,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// Longer than is read.
    TooLong {
        /// Most bytes read.
        most: usize,
    },
    /// Not JSON.
    NotJson {
        /// Line within the record, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// Not text in UTF-8.
    NotText,
    /// Something else stands where this belongs.
    Wanted {
        /// What was given.
        given: String,
        /// What belongs there.
        wanted: Wanted,
    },
    /// A part that must be there is not.
    Missing,
    /// A version this program does not know.
    Version {
        /// The version given.
        given: String,
        /// The version known.
        known: u64,
    },
    /// A name nobody knows.
    Unknown {
        /// The name given.
        given: String,
        /// The name that may have been meant.
        near: Option<String>,
    },
    /// The same name twice.
    Twice,
    /// A text longer than is kept.
    LongText {
        /// Most letters kept.
        most: usize,
    },
    /// A list of more entries than are read.
    TooMany {
        /// Most entries read.
        most: usize,
    },
    /// A bare number where the unit must be said.
    NeedsUnit {
        /// What was given.
        given: String,
        /// Units that would do.
        units: Vec<Unit>,
    },
    /// A unit that is unknown or measures something else.
    WrongUnit {
        /// What was given.
        given: String,
        /// Units that would do.
        units: Vec<Unit>,
    },
    /// A number outside the range.
    OutOfRange {
        /// What was given.
        given: Quantity,
        /// Smallest accepted, in the unit given.
        low: Quantity,
        /// Largest accepted, in the unit given.
        high: Quantity,
    },
    /// An option that is not on the list.
    NotAnOption {
        /// What was given.
        given: String,
        /// What would do.
        options: Vec<String>,
    },
}

/// What belongs in a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// An object in braces.
    Object,
    /// Short text.
    Name,
    /// A whole number from 0.
    Seed,
    /// A number.
    Number,
    /// A number, bare or with its unit.
    Quantity,
    /// Text: the code of an option or a place.
    Code,
    /// Text: the code of a unit.
    Unit,
    /// A list in brackets.
    List,
    /// True or false.
    TrueFalse,
    /// Text of at most 60 letters.
    ShortText,
    /// Text.
    Text,
}

impl Wanted {
    const fn key(self) -> &'static str {
        match self {
            Wanted::Object => "refusal-wanted-object",
            Wanted::Name => "refusal-wanted-name",
            Wanted::Seed => "refusal-wanted-seed",
            Wanted::Number => "refusal-wanted-number",
            Wanted::Quantity => "refusal-wanted-quantity",
            Wanted::Code => "refusal-wanted-code",
            Wanted::Unit => "refusal-wanted-unit",
            Wanted::List => "refusal-wanted-list",
            Wanted::TrueFalse => "refusal-wanted-true-false",
            Wanted::Text => "refusal-wanted-text",
            Wanted::ShortText => "refusal-wanted-short-text",
        }
    }
}

impl Trouble {
    /// A short name that programs can act on.
    pub const fn code(&self) -> &'static str {
        match self {
            Trouble::TooLong { .. } => "too_long",
            Trouble::NotJson { .. } => "not_json",
            Trouble::NotText => "not_text",
            Trouble::Wanted { .. } => "wrong_kind",
            Trouble::Missing => "missing",
            Trouble::Version { .. } => "unknown_version",
            Trouble::Unknown { .. } => "unknown_name",
            Trouble::Twice => "given_twice",
            Trouble::TooMany { .. } => "too_many",
            Trouble::LongText { .. } => "long_text",
            Trouble::NeedsUnit { .. } => "needs_unit",
            Trouble::WrongUnit { .. } => "wrong_unit",
            Trouble::OutOfRange { .. } => "out_of_range",
            Trouble::NotAnOption { .. } => "not_an_option",
        }
    }
}

/// A refused answer in the terms of a file.
impl From<Refusal> for Trouble {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::OutOfRange { given, low, high, .. } => Trouble::OutOfRange { given, low, high },
            Refusal::NotAnOption { given, options, .. } => {
                Trouble::NotAnOption { given, options: options.into_iter().map(str::to_owned).collect() }
            }
            Refusal::WrongUnit { id, given, .. } => {
                Trouble::WrongUnit { given: given.code().to_owned(), units: units_of(Question::get(id)) }
            }
            Refusal::NotANumber { text, .. } => Trouble::Wanted { given: text, wanted: Wanted::Number },
            Refusal::WrongKind { wanted, .. } => {
                Trouble::Wanted { given: wanted.to_owned(), wanted: Wanted::Code }
            }
        }
    }
}

fn verbatim(text: impl Into<String>) -> Arg {
    Arg::Verbatim(text.into())
}

fn codes(units: &[Unit]) -> Arg {
    verbatim(units.iter().map(|u| u.code()).collect::<Vec<_>>().join(", "))
}

fn count(n: usize) -> Arg {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

impl CaseError {
    /// Something wrong with a field.
    pub(in crate::job) fn new(field: impl Into<String>, trouble: Trouble) -> Self {
        Self { field: field.into(), trouble }
    }

    /// A record longer than is read.
    pub fn too_long(most: usize) -> Self {
        Self::new("", Trouble::TooLong { most })
    }

    /// A record that is not UTF-8.
    pub fn not_text() -> Self {
        Self::new("", Trouble::NotText)
    }

    /// What to tell a person, without the field's name.
    pub fn message(&self) -> Message {
        match &self.trouble {
            // Said in KiB: the exact number of bytes helps nobody.
            Trouble::TooLong { most } => Message::new("refusal-too-long").with("most", count(most >> 10)),
            Trouble::NotJson { line, column } => {
                Message::new("refusal-not-json").with("line", count(*line)).with("column", count(*column))
            }
            Trouble::NotText => Message::new("refusal-not-text"),
            Trouble::Wanted { given, wanted } => Message::new("refusal-wanted")
                .with("given", verbatim(given.as_str()))
                .with("wanted", Message::new(wanted.key())),
            Trouble::Missing => Message::new("refusal-missing"),
            Trouble::Version { given, known } => Message::new("refusal-version")
                .with("given", verbatim(given.as_str()))
                .with("known", verbatim(known.to_string())),
            Trouble::Unknown { given, near: Some(near) } => Message::new("refusal-unknown-near")
                .with("given", verbatim(given.as_str()))
                .with("near", verbatim(near.as_str())),
            Trouble::Unknown { given, near: None } => {
                Message::new("refusal-unknown").with("given", verbatim(given.as_str()))
            }
            Trouble::Twice => Message::new("refusal-twice"),
            Trouble::LongText { most } => Message::new("refusal-long-text").with("most", count(*most)),
            Trouble::TooMany { most } => Message::new("refusal-too-many").with("most", count(*most)),
            Trouble::NeedsUnit { given, units } => Message::new("refusal-needs-unit")
                .with("given", verbatim(given.as_str()))
                .with("units", codes(units)),
            Trouble::WrongUnit { given, units } => Message::new("refusal-wrong-unit")
                .with("given", verbatim(given.as_str()))
                .with("units", codes(units)),
            Trouble::OutOfRange { given, low, high } => Message::new("refusal-out-of-range")
                .with("given", *given)
                .with("low", *low)
                .with("high", *high),
            Trouble::NotAnOption { given, options } => Message::new("refusal-none-of")
                .with("given", verbatim(given.as_str()))
                .with("options", verbatim(options.join(", "))),
        }
    }
}
