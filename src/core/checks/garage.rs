//! In a garage: what may light petrol vapour stands above the floor, and where cars cannot hit it.

use super::Seen;
use super::judge::Could;
use crate::core::case::{Provenance, RoomKind};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// A stand and a post, dollars (from memory).
const STAND: f64 = 150.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let room = s.case.room.kind;
    if s.keeps() || !matches!(room.value, RoomKind::Garage) {
        return None;
    }
    let rule = s.rules.ignition_m;
    let height = rule.is / 0.0254;
    let says = Message::new("check-garage-stand").quantity("height", height, Unit::Inch);
    Some(
        Finding::new("garage", Could::only(Fit::FitsWithWork), says, rule.cites)
            .using("figure-asked", height, Unit::Inch, Provenance::Assumed)
            .with_work(Work::new(WorkKind::Stand, STAND).sized("height", height, Unit::Inch))
            .asking("room_kind"),
    )
}
