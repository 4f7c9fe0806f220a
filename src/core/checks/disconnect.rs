//! A means to switch the heater off in sight of it, or a breaker that can be locked.

use super::Seen;
use super::judge::Could;
use crate::core::case::YesNo;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::work::{Work, WorkKind};

/// A switch beside the heater, dollars (from memory).
const SWITCH: f64 = 150.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.two_pole() {
        return None;
    }
    let there = s.case.site.disconnect;
    let at = |y| if matches!(y, YesNo::Yes) { Fit::Fits } else { Fit::FitsWithWork };
    let could = Could::only(at(there.value)).or(there.is_assumed(), Could::only(Fit::FitsWithWork));
    let id = could.say([
        "check-disconnect-fits",
        "check-disconnect-missing",
        "check-disconnect-look",
        "check-disconnect-missing",
    ]);
    Some(
        Finding::new("disconnect", could, Message::new(id), s.rules.disconnect)
            .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::Disconnect, SWITCH))
            .asking("disconnect")
            .cautioned("caution-mains"),
    )
}
