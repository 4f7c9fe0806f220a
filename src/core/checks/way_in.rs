//! The way in: the narrowest door, hatch or turn against the tank's diameter.

use super::{Seen, short_of};
use crate::core::candidates::CandidateId;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::Unit;
use uom::si::length::inch;
use uom::si::mass::pound;

/// Room for hands on both sides, inches; common practice, no source.
const HANDS_IN: f64 = 2.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.candidate.id == CandidateId::Keep {
        return None;
    }
    let way = s.case.room.way_in;
    let (wide_in, needs_in) = (way.value.get::<inch>(), s.candidate.body.diameter.get::<inch>() + HANDS_IN);
    let fit = short_of(way, wide_in < needs_in);
    let id = match fit {
        Fit::Fits | Fit::FitsWithWork => "check-way-in-fits",
        Fit::MeasureFirst => "check-way-in-measure",
        Fit::DoesNotFit => "check-way-in-narrow",
    };
    let says = Message::new(id)
        .quantity("has", wide_in, Unit::Inch)
        .quantity("needs", needs_in, Unit::Inch)
        .quantity("weight", s.candidate.body.empty_mass.get::<pound>(), Unit::Pound);
    Some(
        Finding::new("way-in", fit, says, "rule-common-practice")
            .using("figure-way-in", wide_in, Unit::Inch, way.from)
            .using("figure-tank-diameter", needs_in - HANDS_IN, Unit::Inch, Provenance::Assumed)
            .asking("way_in")
            .cautioned("caution-lifting"),
    )
}
