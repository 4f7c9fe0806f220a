//! Making findings.

use super::judge::Could;
use crate::core::case::{Input, Known, Provenance};
use crate::core::finding::Finding;
use crate::core::message::{Arg, Message};
use crate::core::site::Ranged;
use crate::core::units::{Quantity, Unit};
use crate::core::work::Work;
use std::borrow::Cow;

impl Finding {
    /// A finding with its words; the rest by the methods below.
    pub(super) fn new(check: &'static str, could: Could, says: Message, rule: &'static str) -> Self {
        Finding {
            check: Cow::Borrowed(check),
            fit: could.fit(),
            likely: could.likely,
            worst: could.worst,
            says,
            work: Vec::new(),
            lets_in: None,
            rule: Cow::Borrowed(rule),
            relation: None,
            figures: Vec::new(),
            asks: Vec::new(),
            caution: None,
        }
    }

    /// The work it implies, or may need.
    pub(super) fn with_work(mut self, work: Work) -> Self {
        self.work.push(work);
        self
    }

    /// Work only where it is needed: not for what fits.
    pub(super) fn with_work_if(self, needed: bool, work: Work) -> Self {
        if needed { self.with_work(work) } else { self }
    }

    /// What would let the heater in, kept where it may not fit.
    pub(super) fn let_in_by(mut self, says: Message) -> Self {
        if self.worst == crate::core::finding::Fit::DoesNotFit {
            self.lets_in = Some(says);
        }
        self
    }

    /// How the figures hang together.
    pub(super) fn by(mut self, relation: &'static str) -> Self {
        self.relation = Some(Cow::Borrowed(relation));
        self
    }

    /// A question that would settle it.
    pub(super) fn asking(mut self, question: &'static str) -> Self {
        self.asks.push(Cow::Borrowed(question));
        self
    }

    /// The usual caution.
    pub(super) fn cautioned(mut self, id: &'static str) -> Self {
        self.caution = Some(Message::new(id));
        self
    }

    /// A figure used.
    pub(super) fn using(self, label: &'static str, value: f64, unit: Unit, from: Provenance) -> Self {
        self.noting(label, Arg::Quantity(Quantity::new(value, unit)), from)
    }

    /// A number used, with its provenance, in SI.
    pub(super) fn given(self, label: &'static str, number: Ranged, base: Unit) -> Self {
        self.using(label, number.value, base, number.from)
    }

    /// A choice used: the option's words.
    pub(super) fn chosen<T: Copy>(self, label: &'static str, known: Known<T>, words: String) -> Self {
        self.noting(label, Arg::Message(Box::new(Message::new(words))), known.from)
    }

    fn noting(mut self, label: &'static str, value: Arg, from: Provenance) -> Self {
        self.figures.push(Input { label: Cow::Borrowed(label), value, from });
        self
    }
}
