//! Frost on the condensate's way: a plug of ice stops it, and the water goes on the floor.

use super::Seen;
use super::judge::Could;
use crate::core::case::{RoomKind, YesNo};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};

/// Heat tape or covered pipe, dollars (from memory).
const GUARD: f64 = 120.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_heat_pump() {
        return None;
    }
    let (freezes, run) = (s.case.site.drain_freezes, s.case.site.drain_run_m);
    // Inside a heated house nothing on the way freezes.
    let cold = matches!(s.case.room.kind.value, RoomKind::Garage | RoomKind::Crawlspace | RoomKind::Attic);
    let at = |y| if matches!(y, YesNo::Yes) { Fit::FitsWithWork } else { Fit::Fits };
    let possible = freezes.is_assumed() && cold;
    let could = Could::only(at(freezes.value))
        .or(possible, Could::only(Fit::Fits))
        .or(possible, Could::only(Fit::FitsWithWork));
    let id = could.say([
        "check-drain-frost-fits",
        "check-drain-frost-guard",
        "check-drain-frost-look",
        "check-drain-frost-guard",
    ]);
    let guard = Work::new(WorkKind::FrostGuard, GUARD).sized("run", run.value, Unit::Metre);
    Some(
        Finding::new("drain-frost", could, Message::new(id), "rule-common-practice")
            .using(
                "figure-room-winter",
                to_celsius(s.case.room.winter.value),
                Unit::DegC,
                s.case.room.winter.from,
            )
            .given("figure-drain-run", run, Unit::Metre)
            .with_work_if(could.worst >= Fit::FitsWithWork, guard)
            .asking("drain_freezes"),
    )
}
