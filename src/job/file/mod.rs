//! The JSON form of a case: documented, versioned, the same for the headless command, for files a
//! household keeps, and for whoever writes a thousand of them.
//!
//! ```json
//! {
//!   "tankful": 1,
//!   "name": "12 Example Road",
//!   "seed": 7,
//!   "answers": {
//!     "adults": 2,
//!     "heater_kind": "gas",
//!     "room_volume": { "value": 1000, "unit": "ft3", "from": "measured" }
//!   }
//! }
//! ```
//!
//! - `tankful` is the version of this form ([`VERSION`]). `name` and `seed` may be left out; `seed`
//!   chooses the synthetic year of draws.
//! - `answers` holds answers by question code; what is left out is unknown and gets its default.
//! - An option or a listed place is its code. A number is an object with `value` and `unit`, or a bare
//!   number where the question has one unit only ([`bare_unit`]).
//! - `offer` may be left out: heaters by the figures of their labels with an installed price, prices of
//!   further work, labour; its form stands in [`super::offer`].
//! - `from` is `answered` (taken when left out) or `measured`. An option with `from` is an object with
//!   `value` and `from`.
//! - Nothing is passed over: an unknown name, a name given twice, a unit that does not fit, a value out
//!   of range are refused, all of them at once, each with its field.
//! - A record is at most [`MOST_BYTES`] long.

mod error;
mod heater;
mod near;
mod node;
mod read;
mod schema;
mod write;

pub use super::form::number;
pub use error::{CaseError, Trouble, Wanted};
pub use heater::{GivenHeater, HeaterFile, parse_heater};
pub use read::parse_case;
pub use schema::{schema, schema_of_jobs};
pub use write::to_json;
pub(in crate::job) use write::{answers, value};

use super::answers::Answers;
use super::offer::Offer;
use super::questions::{Kind, Question};
use crate::core::units::Unit;

/// Version of the form.
pub const VERSION: u64 = 1;
/// Longest record that is read, bytes.
pub const MOST_BYTES: usize = 1 << 20;
/// Longest name of a case, characters.
pub const LONGEST_NAME: usize = 200;

/// A case as it stands in a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CaseFile {
    /// What its owner calls it.
    pub name: Option<String>,
    /// Seed of the synthetic year of draws, if it is not to be the usual one.
    pub seed: Option<u64>,
    /// The answers.
    pub answers: Answers,
    /// The installer's offer; empty when there is none.
    pub offer: Offer,
}

/// Units a number of this question may be written in; empty when it takes no number.
pub fn units_of(question: &Question) -> Vec<Unit> {
    let Kind::Number { us, .. } = question.kind else { return Vec::new() };
    units_like(us)
}

/// Units a number of this kind may be written in, this one first.
pub fn units_like(us: Unit) -> Vec<Unit> {
    if us == Unit::One {
        // Two people are not 200 percent.
        return vec![Unit::One];
    }
    let others = Unit::ALL.iter().copied().filter(|u| u.dimension() == us.dimension() && *u != us);
    std::iter::once(us).chain(others).collect()
}

/// The unit of a bare number: the question's only one. `None` where a bare number would be a guess.
pub fn bare_unit(question: &Question) -> Option<Unit> {
    match units_of(question).as_slice() {
        [only] => Some(*only),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::questions::Id;

    #[test]
    fn bare_numbers_only_where_nothing_can_be_mistaken() {
        for (id, want) in [
            (Id::Adults, Some(Unit::One)),
            (Id::Horizon, Some(Unit::Year)),
            (Id::Breaker, Some(Unit::Ampere)),
            (Id::Rebate, Some(Unit::Dollar)),
            (Id::Setpoint, None),
            (Id::RoomVolume, None),
            (Id::DiscountRate, None),
            (Id::PriceElectricity, None),
            (Id::HeaterKind, None),
        ] {
            assert_eq!(bare_unit(Question::get(id)), want, "{id:?}");
        }
    }
}
