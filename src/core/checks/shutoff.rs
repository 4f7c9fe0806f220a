//! The shutoff valve at the heater, and unions: made new while the water is off (common practice, no source).

use super::Seen;
use super::judge::Could;
use crate::core::case::YesNo;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// A valve that no longer closes, dollars (from memory): the water is shut off at the street for it.
const STUCK: f64 = 120.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let works = s.case.site.shutoff_works;
    let at = |y| if matches!(y, YesNo::Yes) { Fit::Fits } else { Fit::FitsWithWork };
    let could = Could::only(at(works.value)).or(works.is_assumed(), Could::only(Fit::FitsWithWork));
    let id =
        could.say(["check-shutoff-fits", "check-shutoff-stuck", "check-shutoff-look", "check-shutoff-stuck"]);
    Some(
        Finding::new("shutoff", could, Message::new(id), s.rules.shutoff)
            .chosen("figure-shutoff", works, format!("q-shutoff-works-{}", works.value.code()))
            .with_work_if(
                could.worst >= Fit::FitsWithWork,
                Work::new(WorkKind::Shutoff, STUCK).sized("count", 1.0, Unit::One),
            )
            .asking("shutoff_works")
            .cautioned("caution-water-off"),
    )
}
