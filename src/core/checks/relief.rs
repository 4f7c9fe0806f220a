//! The relief valve's discharge pipe: full size, downhill, open and in sight, its end near the floor.

use super::Seen;
use super::judge::Could;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::ReliefPipe;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::length::meter;

/// A new discharge pipe, dollars (from memory).
const PIPE: f64 = 90.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let (pipe, rule) = (s.case.site.relief_pipe, s.rules.relief_end_m);
    let at = |p| if matches!(p, ReliefPipe::Good) { Fit::Fits } else { Fit::FitsWithWork };
    let could = Could::only(at(pipe.value)).or(pipe.is_assumed(), Could::only(Fit::FitsWithWork));
    if s.keeps() && could.fit() != Fit::FitsWithWork {
        return None;
    }
    let id = match (could.fit(), pipe.value) {
        (Fit::Fits, _) => "check-relief-fits",
        (Fit::MeasureFirst, _) => "check-relief-look",
        (_, ReliefPipe::Missing) => "check-relief-missing",
        _ => "check-relief-wrong",
    };
    let end = rule.is / 0.0254;
    let says = Message::new(id).quantity("end", end, Unit::Inch);
    // The valve sits at or near the tank's top.
    let length = s.candidate.body.height.get::<meter>() - rule.is;
    let work = Work::new(WorkKind::ReliefPipe, PIPE).sized("length", length, Unit::Metre).sized(
        "end",
        end,
        Unit::Inch,
    );
    Some(
        Finding::new("relief", could, says, rule.cites)
            .chosen("figure-relief", pipe, format!("q-relief-pipe-{}", pipe.value.code()))
            .using("figure-relief-end", end, Unit::Inch, Provenance::Assumed)
            .using("figure-relief-length", length, Unit::Metre, Provenance::Assumed)
            .with_work_if(could.worst >= Fit::FitsWithWork, work)
            .asking("relief_pipe")
            .cautioned("caution-relief"),
    )
}
