//! Vacuum relief: a tank above the taps can be sucked empty and boil dry or collapse when the main is shut.

use super::Seen;
use super::judge::Could;
use crate::core::case::{RoomKind, YesNo};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::work::{Work, WorkKind};

/// A vacuum relief valve, dollars (from memory).
const VALVE: f64 = 60.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let below = s.case.site.fixtures_below;
    let low = matches!(s.case.room.kind.value, RoomKind::Basement | RoomKind::Garage | RoomKind::Crawlspace);
    let at = |y| if matches!(y, YesNo::Yes) { Fit::FitsWithWork } else { Fit::Fits };
    let possible = below.is_assumed() && !low;
    let could = Could::only(at(below.value))
        .or(possible, Could::only(Fit::Fits))
        .or(possible, Could::only(Fit::FitsWithWork));
    let id =
        could.say(["check-vacuum-none", "check-vacuum-needed", "check-vacuum-look", "check-vacuum-needed"]);
    Some(
        Finding::new("vacuum", could, Message::new(id), s.rules.vacuum_relief)
            .chosen("figure-taps-below", below, format!("q-fixtures-below-{}", below.value.code()))
            .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::VacuumRelief, VALVE))
            .asking("fixtures_below"),
    )
}
