//! Where the values of a case came from.

use crate::core::message::Arg;
use serde::{Deserialize, Serialize};

/// Where a value came from, weakest first: a measured value beats an answer, an answer beats a default.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Provenance {
    /// Nobody said: a documented default.
    Assumed,
    /// Somebody answered.
    Answered,
    /// Somebody measured it or read it off the thing itself.
    Measured,
}

/// A value and where it came from.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Known<T> {
    /// The value.
    pub value: T,
    /// Where it came from.
    pub from: Provenance,
}

impl<T> Known<T> {
    /// A value with its provenance.
    pub const fn new(value: T, from: Provenance) -> Self {
        Self { value, from }
    }

    /// True when nobody answered.
    pub fn is_assumed(&self) -> bool {
        self.from == Provenance::Assumed
    }

    /// The same provenance with another value.
    pub fn map<U>(self, f: impl FnOnce(T) -> U) -> Known<U> {
        Known { value: f(self.value), from: self.from }
    }
}

/// A named input of a figure, as shown in its working.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Input {
    /// Locale identity of its name.
    pub label: std::borrow::Cow<'static, str>,
    /// The value put in.
    pub value: Arg,
    /// Where it came from.
    pub from: Provenance,
}
