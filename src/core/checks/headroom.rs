//! Height: the tank, its pipes and what is pulled out upward.

use super::Seen;
use super::judge::{at_least, over};
use super::rules::practice;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use uom::si::length::meter;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let has = s.case.site.headroom_m;
    let tall = s.candidate.body.height.get::<meter>();
    let needs = tall + practice::ABOVE_TANK_M;
    let could = over(&[has], &|v| at_least(v[0], needs, Fit::DoesNotFit));
    let id = could.say([
        "check-headroom-fits",
        "check-headroom-fits",
        "check-headroom-measure",
        "check-headroom-short",
    ]);
    let says = Message::new(id).quantity("has", has.value / 0.0254, Unit::Inch).quantity(
        "needs",
        needs / 0.0254,
        Unit::Inch,
    );
    let most = (has.value - practice::ABOVE_TANK_M) / 0.0254;
    Some(
        Finding::new("headroom", could, says, "rule-nameplate")
            .by("relation-headroom")
            .let_in_by(Message::new("need-lower-heater").quantity("most", most, Unit::Inch))
            .using("figure-headroom", has.value / 0.0254, Unit::Inch, has.from)
            .using("figure-tank-height", tall / 0.0254, Unit::Inch, Provenance::Assumed)
            .using("figure-above-tank", practice::ABOVE_TANK_M / 0.0254, Unit::Inch, Provenance::Assumed)
            .asking("headroom"),
    )
}
