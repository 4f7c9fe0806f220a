//! Water pressure, at rest.

use super::Seen;
use super::judge::{at_least, over};
use super::rules::practice;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// A pressure-reducing valve, dollars (from memory).
const VALVE: f64 = 350.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let (has, rule) = (s.case.site.pressure_pa, s.rules.pressure_pa);
    let could = over(&[has], &|v| at_least(rule.is, v[0], Fit::FitsWithWork));
    if s.keeps() && could.fit() != Fit::FitsWithWork {
        return None;
    }
    let id = could.say([
        "check-pressure-fits",
        "check-pressure-high",
        "check-pressure-measure",
        "check-pressure-high",
    ]);
    let kpa = |pa: f64| pa / 1e3;
    let says = Message::new(id).quantity("has", kpa(has.value), Unit::Kilopascal).quantity(
        "most",
        kpa(rule.is),
        Unit::Kilopascal,
    );
    let valve = Work::new(WorkKind::PressureValve, VALVE).sized(
        "pressure",
        kpa(practice::REDUCED_PA),
        Unit::Kilopascal,
    );
    Some(
        Finding::new("pressure", could, says, rule.cites)
            .using("figure-pressure", kpa(has.value), Unit::Kilopascal, has.from)
            .using("figure-pressure-most", kpa(rule.is), Unit::Kilopascal, Provenance::Assumed)
            .with_work_if(could.worst >= Fit::FitsWithWork, valve)
            .asking("pressure")
            .cautioned("caution-pressure"),
    )
}
