//! The question list, as data: the one home of every question's range, default, spread and purpose.
//!
//! Words live in the locale files under `q-<code>` (label) with the attributes `.find` (how to find
//! out) and `.default` (how the default was derived); options under `q-<code>-<option>`.

mod access;
mod circuit;
mod drain;
mod heater;
mod household;
mod ids;
mod money;
mod place;
mod room;
mod water;
mod wiring;

pub use ids::Id;

use super::resolved::Resolved;
use crate::core::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

/// The sections, in the order they are asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Section {
    /// Who lives there and how they use hot water.
    Household,
    /// The heater that stands there now.
    Heater,
    /// The room it stands in.
    Room,
    /// Where condensate can go.
    Drain,
    /// The electrical supply.
    Circuit,
    /// The water pipes.
    Water,
    /// Climate and cold water.
    Place,
    /// Prices and how money is counted.
    Money,
}

impl Section {
    /// Every section, in order.
    pub const ALL: [Section; 8] = [
        Section::Household,
        Section::Heater,
        Section::Room,
        Section::Drain,
        Section::Circuit,
        Section::Water,
        Section::Place,
        Section::Money,
    ];

    /// The section's code in locale keys (`section-<code>`).
    pub const fn code(self) -> &'static str {
        match self {
            Section::Household => "household",
            Section::Heater => "heater",
            Section::Room => "room",
            Section::Drain => "drain",
            Section::Circuit => "circuit",
            Section::Water => "water",
            Section::Place => "place",
            Section::Money => "money",
        }
    }
}

/// What kind of answer a question takes.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A quantity within a range, asked in the unit of either system.
    Number {
        /// Smallest accepted.
        low: Quantity,
        /// Largest accepted.
        high: Quantity,
        /// Unit asked for in US customary mode.
        us: Unit,
        /// Unit asked for in SI mode.
        si: Unit,
        /// A convenient step of the input, in the shown unit (whole people: 1).
        step: f64,
    },
    /// One of these options.
    Choice(&'static [&'static str]),
    /// A listed place.
    Place,
}

/// A value before it is known who said it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Value {
    /// A number with its unit.
    Number(Quantity),
    /// The code of an option, or of a listed place.
    Code(String),
}

impl Value {
    /// A number in a unit.
    pub const fn number(value: f64, unit: Unit) -> Value {
        Value::Number(Quantity::new(value, unit))
    }

    /// An option's code.
    pub fn code(code: &str) -> Value {
        Value::Code(code.to_owned())
    }
}

/// How an unanswered question gets its value.
#[derive(Clone, Copy)]
pub enum Default {
    /// Always this number.
    Number(f64, Unit),
    /// Always this option.
    Code(&'static str),
    /// From the values of questions earlier in the list.
    Derived(fn(&Resolved) -> Value),
}

/// How far the truth may plausibly lie from the default (about 80 % of houses).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Down to and up to these multiples of the default.
    Factor(f64, f64),
    /// This much below and above the default, in the unit given.
    Plus(f64, f64, Unit),
    /// Any of the options may be true.
    AnyOption,
    /// Not uncertain: a matter of choice.
    None,
}

/// Who can usually answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Who {
    /// The household, from memory or a bill.
    Householder,
    /// Whoever stands in front of the heater with a tape or a thermometer.
    OnSite,
    /// The installer, from their price list.
    Installer,
}

/// What an answer moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Affects {
    /// Energy used and saved.
    Energy,
    /// Whether hot water lasts through the busiest hour.
    Comfort,
    /// Whether and how a heater fits.
    Fit,
    /// Money.
    Cost,
    /// When to act.
    Timing,
}

/// One question.
#[derive(Clone, Copy)]
pub struct Question {
    /// Identity.
    pub id: Id,
    /// Where it is asked.
    pub section: Section,
    /// What it takes.
    pub kind: Kind,
    /// What stands in when nobody answers.
    pub default: Default,
    /// How far that may be off.
    pub spread: Spread,
    /// Who can usually answer.
    pub who: Who,
    /// What it moves.
    pub affects: &'static [Affects],
    /// Asked at once (two minutes' worth), or only under "more detail".
    pub first: bool,
}

impl Question {
    /// The question with this identity.
    pub fn get(id: Id) -> &'static Question {
        // The list holds every identity exactly once (tested), so the first is never returned by mistake.
        all().find(|q| q.id == id).unwrap_or(&household::QUESTIONS[0])
    }
}

/// Every question, in the order asked.
pub fn all() -> impl Iterator<Item = &'static Question> {
    household::QUESTIONS
        .iter()
        .chain(heater::QUESTIONS)
        .chain(place::QUESTIONS)
        .chain(room::QUESTIONS)
        .chain(access::QUESTIONS)
        .chain(drain::QUESTIONS)
        .chain(circuit::QUESTIONS)
        .chain(wiring::QUESTIONS)
        .chain(water::QUESTIONS)
        .chain(money::QUESTIONS)
}

/// The question, asked at once.
const fn first(q: Question) -> Question {
    Question { first: true, ..q }
}

/// A number's kind, with its range written in one unit.
const fn number(low: f64, high: f64, unit: Unit, us: Unit, si: Unit, step: f64) -> Kind {
    Kind::Number { low: Quantity::new(low, unit), high: Quantity::new(high, unit), us, si, step }
}

/// A count or other number that both systems write alike.
const fn plain(low: f64, high: f64, unit: Unit, step: f64) -> Kind {
    number(low, high, unit, unit, unit, step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_identity_is_asked_exactly_once() {
        for &id in Id::ALL {
            assert_eq!(all().filter(|q| q.id == id).count(), 1, "{id:?}");
        }
        assert_eq!(all().count(), Id::ALL.len());
    }

    #[test]
    fn ranges_are_in_order_and_units_agree() {
        for q in all() {
            if let Kind::Number { low, high, us, si, step } = q.kind {
                assert!(low.base() < high.base(), "{:?}", q.id);
                assert_eq!(low.unit.dimension(), us.dimension(), "{:?}", q.id);
                assert_eq!(us.dimension(), si.dimension(), "{:?}", q.id);
                assert!(step > 0.0, "{:?}", q.id);
            }
        }
    }
}
