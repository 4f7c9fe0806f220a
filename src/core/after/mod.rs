//! After the heater stands: what readings at the start should be, what the household must know, when care is due,
//! and whether the meter says what the simulation said.
//!
//! All of it follows from the case, the heater and its simulated year. Uses every room of the core; nothing of the
//! core uses it, so that the page fetches it only when somebody looks. Dates come from whoever calls: the core has no
//! clock.

pub mod care;
pub mod date;
pub mod handover;
pub mod icalendar;
pub mod meter;
pub mod start;

pub use date::Date;

use super::candidates::Candidate;
use super::case::Case;
use super::finding::Finding;
use super::outcome::{CandidateOutcome, Outcome, YearResult};
use super::work::{Work, WorkKind};

/// A heater that was decided on, in its house.
#[derive(Clone, Copy, Debug)]
pub struct Fitted<'a> {
    /// The house.
    pub case: &'a Case,
    /// The heater.
    pub candidate: &'a Candidate,
    /// Its simulated year.
    pub year: &'a YearResult,
    /// What was checked.
    pub findings: &'a [Finding],
    /// Cold water by day, °C.
    pub mains_c: &'a [f32],
}

impl<'a> Fitted<'a> {
    /// A candidate of an outcome.
    pub fn of(case: &'a Case, outcome: &'a Outcome, chosen: &'a CandidateOutcome) -> Fitted<'a> {
        Fitted {
            case,
            candidate: &chosen.candidate,
            year: &chosen.year,
            findings: &chosen.findings,
            mains_c: &outcome.mains_c,
        }
    }

    /// The work of a kind that the findings ask for, if they do.
    pub fn work(&self, kind: WorkKind) -> Option<&'a Work> {
        self.findings.iter().flat_map(|f| &f.work).find(|w| w.kind == kind)
    }
}
