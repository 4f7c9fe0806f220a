//! Free floor in front, to reach the controls, the filter and the coil.

use super::Seen;
use super::judge::{at_least, over};
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let (has, rule) = (s.case.site.service_m, s.rules.service_m);
    let could = over(&[has], &|v| at_least(v[0], rule.is, Fit::FitsWithWork));
    let id = could.say([
        "check-service-space-fits",
        "check-service-space-short",
        "check-service-space-measure",
        "check-service-space-short",
    ]);
    let needs = rule.is / 0.0254;
    let says =
        Message::new(id).quantity("has", has.value / 0.0254, Unit::Inch).quantity("needs", needs, Unit::Inch);
    let clear = Work::new(WorkKind::MakeWay, 0.0).sized("needs", needs, Unit::Inch);
    Some(
        Finding::new("service-space", could, says, rule.cites)
            .using("figure-service-space", has.value / 0.0254, Unit::Inch, has.from)
            .using("figure-asked", needs, Unit::Inch, Provenance::Assumed)
            .with_work_if(could.fit() == Fit::FitsWithWork, clear)
            .asking("service_space"),
    )
}
