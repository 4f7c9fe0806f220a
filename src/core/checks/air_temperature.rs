//! Cold air: how cold the simulated room gets with the heat pump in it, and how long that locks it out.

use super::Seen;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::{Unit, to_celsius};
use uom::si::time::hour;

/// Locked out for more than this share of the year it mostly heats with its elements: not what it is
/// bought for.
const TOO_LONG: f64 = 0.5;
/// Pipes in a room this cold may freeze somewhere, °C.
const PIPES_C: f64 = 3.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_heat_pump() {
        return None;
    }
    let coldest_c = to_celsius(s.year.room_coldest);
    let out_h = s.year.locked_out.get::<hour>();
    let winter = s.case.room.winter;
    let (fit, id) = if out_h > TOO_LONG * 8_760.0 {
        (
            if winter.is_assumed() { Fit::MeasureFirst } else { Fit::DoesNotFit },
            "check-air-temperature-too-cold",
        )
    } else if out_h > 24.0 {
        (if winter.is_assumed() { Fit::MeasureFirst } else { Fit::Fits }, "check-air-temperature-locked-out")
    } else if coldest_c < PIPES_C {
        (Fit::MeasureFirst, "check-air-temperature-pipes")
    } else {
        (Fit::Fits, "check-air-temperature-fits")
    };
    let says =
        Message::new(id).quantity("coldest", coldest_c, Unit::DegC).with("hours", out_h.round() as i64);
    Some(
        Finding::new("air-temperature", fit, says, "rule-simulated-room")
            .using("figure-room-winter", to_celsius(winter.value), Unit::DegC, winter.from)
            .using("figure-coldest", coldest_c, Unit::DegC, Provenance::Assumed)
            .asking("room_winter"),
    )
}
