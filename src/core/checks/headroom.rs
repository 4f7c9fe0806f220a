//! Height: the tank, its pipes and what is pulled out upward.

use super::{Seen, short_of};
use crate::core::candidates::CandidateId;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::Unit;
use uom::si::length::inch;

/// Room above the tank for pipes and to lift out a filter, inches; common practice, no source: nameplate
/// instructions decide.
const ABOVE_IN: f64 = 6.0;
/// Within this of the limit somebody has to measure, inches.
const CLOSE_IN: f64 = 2.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.candidate.id == CandidateId::Keep {
        return None;
    }
    let has = s.case.room.headroom;
    let (has_in, tall_in) = (has.value.get::<inch>(), s.candidate.body.height.get::<inch>());
    let needs_in = tall_in + ABOVE_IN;
    let fit = match short_of(has, has_in < needs_in) {
        Fit::Fits if has.is_assumed() && has_in < needs_in + CLOSE_IN => Fit::MeasureFirst,
        other => other,
    };
    let id = match fit {
        Fit::Fits | Fit::FitsWithWork => "check-headroom-fits",
        Fit::MeasureFirst => "check-headroom-measure",
        Fit::DoesNotFit => "check-headroom-short",
    };
    let says = Message::new(id).quantity("has", has_in, Unit::Inch).quantity("needs", needs_in, Unit::Inch);
    Some(
        Finding::new("headroom", fit, says, "rule-nameplate")
            .using("figure-headroom", has_in, Unit::Inch, has.from)
            .using("figure-tank-height", tall_in, Unit::Inch, crate::core::case::Provenance::Assumed)
            .asking("headroom"),
    )
}
