//! Does it fit: one file a check, each a function from candidate, case and simulated year to a finding.
//!
//! A check says what the published rule asks and what was entered; never that something is permitted.
//! To add one: a file here, a line in [`all`], its words in the locale files (`check-<code>` and what it
//! says).

mod air_temperature;
mod air_volume;
mod circuit;
mod drain;
mod flue;
mod headroom;
mod tank_state;
mod way_in;

use super::candidates::Candidate;
use super::case::{Case, Input, Known, Provenance};
use super::message::{Arg, Message};
use super::outcome::{Finding, Fit, YearResult};
use super::units::{Quantity, Unit};
use std::borrow::Cow;

/// What a check sees.
pub struct Seen<'a> {
    /// The heater.
    pub candidate: &'a Candidate,
    /// The house.
    pub case: &'a Case,
    /// The heater's year in it.
    pub year: &'a YearResult,
}

/// A check: `None` where it does not apply.
pub type Check = fn(&Seen) -> Option<Finding>;

/// Every check, in the order in which they stop a job.
const ALL: [Check; 8] = [
    tank_state::check,
    headroom::check,
    way_in::check,
    circuit::check,
    air_volume::check,
    air_temperature::check,
    drain::check,
    flue::check,
];

/// Every finding about a candidate, worst first.
pub fn all(candidate: &Candidate, case: &Case, year: &YearResult) -> Vec<Finding> {
    let seen = Seen { candidate, case, year };
    let mut findings: Vec<Finding> = Vec::with_capacity(ALL.len());
    for finding in ALL.iter().filter_map(|check| check(&seen)) {
        // A sorted place by hand: the library's sorting is 4 kB of the page for each kind of list.
        let at = findings.partition_point(|f| f.fit >= finding.fit);
        findings.insert(at, finding);
    }
    findings
}

impl Finding {
    /// A finding with its words; the rest by the methods below.
    fn new(check: &'static str, fit: Fit, says: Message, rule: &'static str) -> Self {
        Finding {
            check: Cow::Borrowed(check),
            fit,
            says,
            work: None,
            work_cost: 0.0,
            rule: Cow::Borrowed(rule),
            figures: Vec::new(),
            ask: None,
            caution: None,
        }
    }

    /// The work it implies and a rough price, dollars (from memory).
    fn with_work(mut self, work: Message, dollars: f64) -> Self {
        self.work = Some(work);
        self.work_cost = dollars;
        self
    }

    /// The question that would settle it.
    fn asking(mut self, question: &'static str) -> Self {
        self.ask = Some(Cow::Borrowed(question));
        self
    }

    /// The usual caution.
    fn cautioned(mut self, id: &'static str) -> Self {
        self.caution = Some(Message::new(id));
        self
    }

    /// A figure used.
    fn using(mut self, label: &'static str, value: f64, unit: Unit, from: Provenance) -> Self {
        self.figures.push(Input {
            label: Cow::Borrowed(label),
            value: Arg::Quantity(Quantity::new(value, unit)),
            from,
        });
        self
    }
}

/// A limit against a value that may only have been assumed: an assumed value never rules a heater out;
/// it asks to be measured.
fn short_of<T: Copy>(known: Known<T>, fails: bool) -> Fit {
    match (fails, known.is_assumed()) {
        (false, _) => Fit::Fits,
        (true, true) => Fit::MeasureFirst,
        (true, false) => Fit::DoesNotFit,
    }
}
