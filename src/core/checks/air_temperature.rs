//! Cold air: how cold the simulated room gets with the heat pump in it, and how long that locks it out.

use super::Seen;
use super::judge::Could;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};
use uom::si::time::hour;

/// Locked out for more than this share of the year it mostly heats with its elements: not what it is bought for.
const TOO_LONG_H: f64 = 0.5 * 8_760.0;
/// A day in all: not worth a word.
const SOME_H: f64 = 24.0;
/// Pipes in a room this cold may freeze somewhere, °C.
const PIPES_C: f64 = 3.0;
/// How far the room's winter may be off where nobody measured it, K: the question's spread.
const OFF_K: f64 = 3.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_heat_pump() {
        return None;
    }
    let coldest = to_celsius(s.year.room_coldest);
    let out_h = s.year.locked_out.get::<hour>();
    let winter = s.case.room.winter;
    let off = if winter.is_assumed() { OFF_K } else { 0.0 };
    let (could, id) = if out_h > TOO_LONG_H {
        (
            Could::only(Fit::DoesNotFit).or(winter.is_assumed(), Could::only(Fit::Fits)),
            "check-air-temperature-too-cold",
        )
    } else if out_h > SOME_H {
        (Could::only(Fit::Fits), "check-air-temperature-locked-out")
    } else if coldest - off < PIPES_C {
        // The pipes are the house's matter, with any heater; a measured room is as it is.
        let cold = if coldest < PIPES_C { Fit::FitsWithWork } else { Fit::Fits };
        (
            Could::only(cold).or(winter.is_assumed(), Could::only(Fit::FitsWithWork)),
            "check-air-temperature-pipes",
        )
    } else {
        (Could::only(Fit::Fits), "check-air-temperature-fits")
    };
    let says = Message::new(id).quantity("coldest", coldest, Unit::DegC).with("hours", out_h.round() as i64);
    let lagging = Work::new(WorkKind::FrostGuard, 100.0).sized("run", 3.0, Unit::Metre);
    Some(
        Finding::new("air-temperature", could, says, "rule-simulated-room")
            .let_in_by(Message::new("need-warmer-room"))
            .using("figure-room-winter", to_celsius(winter.value), Unit::DegC, winter.from)
            .using("figure-coldest", coldest, Unit::DegC, winter.from)
            .with_work_if(could.worst == Fit::FitsWithWork, lagging)
            .asking("room_winter"),
    )
}
