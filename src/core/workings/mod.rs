//! How each figure on screen came about: the relation, what was put in with where each came from, the
//! source. Built from the case and the outcome on request, so that nothing is computed twice for show.

mod money;
mod water;

use super::candidates::CandidateId;
use super::case::{Case, Input, Known, Provenance};
use super::message::Arg;
use super::outcome::{CandidateOutcome, Outcome, Working};
use super::units::{Quantity, Unit};
use std::borrow::Cow;

/// Every working about a candidate; none for a candidate that is not in the outcome.
pub fn of(case: &Case, outcome: &Outcome, id: CandidateId) -> Vec<Working> {
    let (Some(c), Some(keep)) = (outcome.of(id), outcome.candidates.first()) else { return Vec::new() };
    let mut all = vec![
        water::energy(case, c),
        money::running(case, c),
        money::upfront(case, c),
        money::net_present_cost(case, c),
        water::first_hour(c, label_provenance(case, c)),
        water::busiest_morning(case, c),
        money::emission(case, c),
    ];
    if id != CandidateId::Keep {
        all.push(money::saved(case, c, keep));
        all.push(money::payback(c, keep));
    }
    all
}

/// Where a candidate's label figures come from: the present heater's from the answers, the classes' are
/// assumed.
fn label_provenance(case: &Case, c: &CandidateOutcome) -> Provenance {
    if c.candidate.id == CandidateId::Keep {
        case.heater.uniform_energy_factor.from
    } else {
        Provenance::Assumed
    }
}

/// A working as it is put together.
struct Draft(Working);

impl Draft {
    fn new(name: &'static str, relation: &'static str, source: &'static str) -> Self {
        Draft(Working {
            name: Cow::Borrowed(name),
            result: Arg::Count(0),
            from: Provenance::Measured,
            relation: Cow::Borrowed(relation),
            inputs: Vec::new(),
            source: Cow::Borrowed(source),
        })
    }

    /// Puts in a figure; the weakest provenance of what goes in is the result's.
    fn put(mut self, label: &'static str, value: Arg, from: Provenance) -> Self {
        self.0.from = self.0.from.min(from);
        self.0.inputs.push(Input { label: Cow::Borrowed(label), value, from });
        self
    }

    fn quantity(self, label: &'static str, value: f64, unit: Unit, from: Provenance) -> Self {
        self.put(label, Arg::Quantity(Quantity::new(value, unit)), from)
    }

    fn known(self, label: &'static str, known: Known<f64>, unit: Unit) -> Self {
        self.quantity(label, known.value, unit, known.from)
    }

    fn gives(mut self, value: f64, unit: Unit) -> Working {
        self.0.result = Arg::Quantity(Quantity::new(value, unit));
        self.0
    }
}
