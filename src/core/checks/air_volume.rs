//! Air to breathe: the free volume a heat pump asks for, or openings to more.

use super::{Seen, short_of};
use crate::core::case::{DoorKind, Provenance};
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::Unit;
use uom::si::volume::{cubic_foot, cubic_meter};

/// A louvred door or two grilles, dollars (from memory).
const LOUVRED_DOOR: f64 = 350.0;
/// An assumed room must exceed the need by this much to count without a tape.
const MARGIN: f64 = 1.5;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let needs = s.candidate.body.free_air.get::<cubic_foot>();
    if needs <= 0.0 {
        return None;
    }
    let room = &s.case.room;
    let has = room.volume.value.get::<cubic_foot>();
    let open = matches!(room.door.value, DoorKind::Louvred | DoorKind::Open);
    let finding = |fit, id| {
        let says =
            Message::new(id).quantity("has", has, Unit::CubicFoot).quantity("needs", needs, Unit::CubicFoot);
        Finding::new("air-volume", fit, says, "rule-nameplate-air")
            .using(
                "figure-room-volume",
                room.volume.value.get::<cubic_meter>(),
                Unit::CubicMetre,
                room.volume.from,
            )
            .using("figure-free-air", needs, Unit::CubicFoot, Provenance::Assumed)
            .asking("room_volume")
    };
    Some(if has >= needs * if room.volume.is_assumed() { MARGIN } else { 1.0 } {
        finding(Fit::Fits, "check-air-volume-fits")
    } else if open {
        finding(Fit::Fits, "check-air-volume-open").asking("door")
    } else if short_of(room.volume, has < needs) == Fit::MeasureFirst || has >= needs {
        finding(Fit::MeasureFirst, "check-air-volume-measure")
    } else {
        finding(Fit::FitsWithWork, "check-air-volume-small")
            .with_work(Message::new("work-louvred-door"), LOUVRED_DOOR)
    })
}
