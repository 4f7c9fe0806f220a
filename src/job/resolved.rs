//! Every question with a value: answers where there are any, defaults elsewhere.

use super::answers::Answers;
use super::questions::{self, Default, Id, Value};
use crate::core::case::{Known, Provenance};
use crate::core::units::Quantity;

/// A value for every question, with where it came from, in the order of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Resolved(Vec<(Id, Known<Value>)>);

impl Resolved {
    /// Goes through the list in order; a derived default sees the values before it. Never fails.
    pub fn of(answers: &Answers) -> Resolved {
        Resolved::varied(answers, &mut |_, value| value)
    }

    /// The same with every value passed through `vary`, in order: defaults that derive from a varied value follow it.
    pub(super) fn varied(
        answers: &Answers,
        vary: &mut dyn FnMut(&questions::Question, Value) -> Value,
    ) -> Resolved {
        let mut done = Resolved(Vec::with_capacity(Id::ALL.len()));
        for q in questions::all() {
            let known = match answers.get(q.id) {
                Some(a) if super::answers::check(q.id, &a.value).is_ok() => {
                    Known::new(vary(q, a.value.clone()), a.from)
                }
                // An answer outside the range cannot get in by `set`; one read from an older file might.
                _ => {
                    let value = match q.default {
                        Default::Number(v, unit) => Value::number(v, unit),
                        Default::Code(c) => Value::code(c),
                        Default::Derived(f) => f(&done),
                    };
                    Known::new(vary(q, value), Provenance::Assumed)
                }
            };
            done.0.push((q.id, known));
        }
        done
    }

    /// The value of a question. Asked for one that comes later in the list (a mistake that a test
    /// catches), it answers with that question's fixed default or nothing.
    pub fn get(&self, id: Id) -> Option<&Known<Value>> {
        self.0.iter().find(|(i, _)| *i == id).map(|(_, v)| v)
    }

    /// Every value in order.
    pub fn iter(&self) -> impl Iterator<Item = (Id, &Known<Value>)> {
        self.0.iter().map(|(id, v)| (*id, v))
    }

    /// A number in the base SI unit of its dimension.
    pub fn base(&self, id: Id) -> Known<f64> {
        match self.get(id) {
            Some(Known { value: Value::Number(q), from }) => Known::new(q.base(), *from),
            _ => Known::new(0.0, Provenance::Assumed),
        }
    }

    /// A number as it was written.
    pub fn quantity(&self, id: Id) -> Option<Known<Quantity>> {
        match self.get(id) {
            Some(Known { value: Value::Number(q), from }) => Some(Known::new(*q, *from)),
            _ => None,
        }
    }

    /// An option's or a place's code.
    pub fn code(&self, id: Id) -> Known<&str> {
        match self.get(id) {
            Some(Known { value: Value::Code(c), from }) => Known::new(c.as_str(), *from),
            _ => Known::new("", Provenance::Assumed),
        }
    }
}
