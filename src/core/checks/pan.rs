//! A drain pan, where a leak would do damage.

use super::Seen;
use super::judge::Could;
use crate::core::case::{RoomKind, YesNo};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::Pan;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::length::meter;

/// A pan with a drain or a switch that shuts the water, dollars (from memory).
const PAN: f64 = 140.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let (pan, below) = (s.case.site.pan, s.case.site.finished_below);
    let ground =
        matches!(s.case.room.kind.value, RoomKind::Basement | RoomKind::Garage | RoomKind::Crawlspace);
    let has = |p| if matches!(p, Pan::Drained) { Fit::Fits } else { Fit::FitsWithWork };
    let with = Could::only(has(pan.value))
        .or(pan.is_assumed(), Could::only(Fit::Fits))
        .or(pan.is_assumed(), Could::only(Fit::FitsWithWork));
    let none = Could::only(Fit::Fits);
    let could = match below.value {
        YesNo::Yes => with.or(below.is_assumed(), none),
        YesNo::No => none.or(below.is_assumed() && !ground, with),
    };
    let id = if could.fit() == Fit::Fits && matches!(below.value, YesNo::No) {
        "check-pan-none"
    } else {
        could.say(["check-pan-fits", "check-pan-missing", "check-pan-look", "check-pan-missing"])
    };
    let wide = (s.candidate.body.diameter.get::<meter>() + 2.0 * 0.0254) / 0.0254;
    let work = Work::new(WorkKind::Pan, PAN).sized("diameter", wide, Unit::Inch);
    Some(
        Finding::new("pan", could, Message::new(id), s.rules.pan)
            .chosen("figure-below", below, format!("q-finished-below-{}", below.value.code()))
            .chosen("figure-pan", pan, format!("q-pan-{}", pan.value.code()))
            .with_work_if(could.worst >= Fit::FitsWithWork, work)
            .asking("finished_below")
            .asking("pan"),
    )
}
