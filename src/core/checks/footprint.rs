//! Floor: the tank's diameter against the free floor.

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
    let has = s.case.site.footprint_m;
    let wide = s.candidate.body.diameter.get::<meter>();
    let needs = wide + practice::AROUND_M;
    let could = over(&[has], &|v| at_least(v[0], needs, Fit::DoesNotFit));
    let id = could.say([
        "check-footprint-fits",
        "check-footprint-fits",
        "check-footprint-measure",
        "check-footprint-short",
    ]);
    let says = Message::new(id).quantity("has", has.value / 0.0254, Unit::Inch).quantity(
        "needs",
        needs / 0.0254,
        Unit::Inch,
    );
    let most = (has.value - practice::AROUND_M) / 0.0254;
    Some(
        Finding::new("footprint", could, says, "rule-nameplate")
            .let_in_by(Message::new("need-narrower-heater").quantity("most", most, Unit::Inch))
            .using("figure-footprint", has.value / 0.0254, Unit::Inch, has.from)
            .using("figure-tank-diameter", wide / 0.0254, Unit::Inch, Provenance::Assumed)
            .asking("footprint"),
    )
}
