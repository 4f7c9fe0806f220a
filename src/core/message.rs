//! What the core has to say, without words: the identity of a message in the locale files, with figures.

use super::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// A message: its identity in the locale files and the figures that go into it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Message {
    /// The identity in `src/locales/*/*.ftl`.
    pub id: Cow<'static, str>,
    /// Named figures, in the order they were given.
    pub args: Vec<(Cow<'static, str>, Arg)>,
}

/// A figure or a part of a message.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Arg {
    /// A whole number; plural forms follow it.
    Count(i64),
    /// A number with this many decimals.
    Number(f64, u8),
    /// A quantity, shown in the reader's units with a sensible number of decimals.
    Quantity(Quantity),
    /// Another message.
    Message(Box<Message>),
    /// Words that are not translated: a place's name.
    Verbatim(String),
}

impl Message {
    /// A message without figures.
    pub fn new(id: impl Into<Cow<'static, str>>) -> Self {
        Self { id: id.into(), args: Vec::new() }
    }

    /// The message with one more figure.
    #[must_use]
    pub fn with(mut self, name: &'static str, arg: impl Into<Arg>) -> Self {
        self.args.push((Cow::Borrowed(name), arg.into()));
        self
    }

    /// The message with one more quantity.
    #[must_use]
    pub fn quantity(self, name: &'static str, value: f64, unit: Unit) -> Self {
        self.with(name, Arg::Quantity(Quantity::new(value, unit)))
    }
}

impl From<Message> for Arg {
    fn from(m: Message) -> Self {
        Arg::Message(Box::new(m))
    }
}
impl From<Quantity> for Arg {
    fn from(q: Quantity) -> Self {
        Arg::Quantity(q)
    }
}
impl From<i64> for Arg {
    fn from(n: i64) -> Self {
        Arg::Count(n)
    }
}
