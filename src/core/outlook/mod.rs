//! What lies ahead of a case, besides the verdict: life left, electricity by the hour, CO₂ over the years. The page's
//! part and the headless command show the same.

pub mod says;

use super::case::Case;
use super::life::replace::{self, LifeLeft};
use super::money::emission::{self, Emission};
use super::outcome::Outcome;
use super::pipeline::Cache;
use super::tariff::report::{self, TimeOfUse};
use serde::{Deserialize, Serialize};

/// What lies ahead.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Outlook {
    /// Life left of the present heater, and when to act; `None` where nothing could replace it.
    pub life: Option<LifeLeft>,
    /// Electricity by the hour.
    pub time_of_use: TimeOfUse,
    /// CO₂ over the years, in the order of the outcome.
    pub emissions: Vec<Emission>,
}

/// The outlook of a case and its outcome. Simulates years by the hour; what is calibrated stays in the cache.
pub fn of(case: &Case, outcome: &Outcome, cache: &mut Cache) -> Outlook {
    Outlook {
        life: replace::of(case, outcome),
        time_of_use: report::of(case, cache),
        emissions: emission::of(case, outcome),
    }
}
