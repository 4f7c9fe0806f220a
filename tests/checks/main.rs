//! The checks from outside: published values through whole cases, what must hold for any house, three invented houses.

mod any;
mod circuits;
mod houses;
mod places;
mod plan;
mod table;
mod water;

use std::sync::OnceLock;
use tankful::core::candidates::{Candidate, CandidateId, offered};
use tankful::core::case::{Case, Provenance};
use tankful::core::checks::rules::us::US;
use tankful::core::checks::{self, Opened, Seen};
use tankful::core::finding::{Finding, Fit};
use tankful::core::outcome::YearResult;
use tankful::core::pipeline;
use tankful::core::units::Unit;
use tankful::core::work::{Work, WorkKind};
use tankful::job::answers::Answers;
use tankful::job::complete::complete;
use tankful::job::questions::{Id, Value};

/// A measured number.
pub fn n(value: f64, unit: Unit) -> Value {
    Value::number(value, unit)
}

/// An option.
pub fn c(code: &str) -> Value {
    Value::code(code)
}

/// A case in which all of this was measured.
pub fn case(list: &[(Id, Value)]) -> Case {
    let mut answers = Answers::new();
    for (id, value) in list {
        answers.set(*id, value.clone(), Provenance::Measured).expect("in range");
    }
    complete(&answers)
}

/// A year like that of the default case's 50 gal heat pump: checks that read it are tested with years of their own.
pub fn year() -> &'static YearResult {
    static YEAR: OnceLock<YearResult> = OnceLock::new();
    YEAR.get_or_init(|| {
        let outcome = pipeline::advise(&complete(&Answers::new()));
        outcome.of(CandidateId::HeatPump50).expect("a candidate").year.clone()
    })
}

/// A candidate of a case.
pub fn heater(case: &Case, id: CandidateId) -> Candidate {
    offered::candidates(case).into_iter().find(|c| c.id == id).expect("a candidate of this case")
}

/// All findings on a candidate in a case, with a year.
pub fn with_year(case: &Case, id: CandidateId, year: &YearResult) -> Vec<Finding> {
    let candidate = heater(case, id);
    checks::all(&Seen { candidate: &candidate, case, year, opened: None, rules: &US })
}

/// The finding of one check; `None` where it does not apply.
pub fn maybe(case: &Case, id: CandidateId, check: &str) -> Option<Finding> {
    with_year(case, id, year()).into_iter().find(|f| f.check == check)
}

/// The finding of one check on the 50 gal heat pump, all of this measured.
pub fn found(check: &str, list: &[(Id, Value)]) -> Finding {
    maybe(&case(list), CandidateId::HeatPump50, check).expect("the check applies")
}

/// How it came out.
pub fn fit(check: &str, list: &[(Id, Value)]) -> Fit {
    found(check, list).fit
}

/// A piece of work of a finding.
pub fn work(finding: &Finding, kind: WorkKind) -> &Work {
    finding.work.iter().find(|w| w.kind == kind).unwrap_or_else(|| panic!("{kind:?} in {:?}", finding.work))
}

/// A size of a piece of work, in a unit.
pub fn size(finding: &Finding, kind: WorkKind, name: &str, unit: Unit) -> f64 {
    let size = work(finding, kind).size(name).expect("the size");
    size.to(unit).expect("the unit").value
}

/// A figure used, in a unit.
pub fn figure(finding: &Finding, label: &str, unit: Unit) -> f64 {
    use tankful::core::message::Arg;
    match finding.figures.iter().find(|f| f.label == label).map(|f| &f.value) {
        Some(Arg::Quantity(q)) => q.to(unit).expect("the unit").value,
        other => panic!("{label}: {other:?}"),
    }
}
