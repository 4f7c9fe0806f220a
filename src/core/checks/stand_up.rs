//! Standing the tank up: from lying to standing it sweeps its diagonal. Where the ceiling is lower than that, it can
//! still walk in upright. A compressor travels upright anyway, so that its oil stays where it belongs (common practice,
//! no source).

use super::Seen;
use super::judge::{at_least, over};
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::carrying;
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::length::meter;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let has = s.case.site.stand_up_m;
    let body = &s.candidate.body;
    let (tall, wide) = (body.height.get::<meter>(), body.diameter.get::<meter>());
    let needs = carrying::stand_up_m(tall, wide);
    let could = over(&[has], &|v| {
        if v[0] >= needs - 1e-9 {
            Fit::Fits
        } else {
            at_least(v[0], tall, Fit::DoesNotFit).max(Fit::FitsWithWork)
        }
    });
    let id = could.say([
        "check-stand-up-fits",
        "check-stand-up-upright",
        "check-stand-up-measure",
        "check-stand-up-short",
    ]);
    let says = Message::new(id).quantity("has", has.value / 0.0254, Unit::Inch).quantity(
        "needs",
        needs / 0.0254,
        Unit::Inch,
    );
    let upright = Work::new(WorkKind::CarryUpright, 0.0).sized("needs", needs / 0.0254, Unit::Inch);
    Some(
        Finding::new("stand-up", could, says, "rule-common-practice")
            .by("relation-diagonal")
            .let_in_by(Message::new("need-lower-heater").quantity("most", has.value / 0.0254, Unit::Inch))
            .using("figure-stand-up", has.value / 0.0254, Unit::Inch, has.from)
            .using("figure-tank-height", tall / 0.0254, Unit::Inch, Provenance::Assumed)
            .using("figure-tank-diameter", wide / 0.0254, Unit::Inch, Provenance::Assumed)
            .using("figure-diagonal", needs / 0.0254, Unit::Inch, Provenance::Assumed)
            .with_work_if(could.worst >= Fit::FitsWithWork, upright)
            .asking("stand_up")
            .cautioned("caution-lifting"),
    )
}
