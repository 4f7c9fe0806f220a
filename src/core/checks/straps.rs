//! Straps in the upper and the lower third, where earthquakes are likely.

use super::Seen;
use super::judge::Could;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::Seismic;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// Two straps, put in, dollars (from memory).
const STRAPS: f64 = 90.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let seismic = s.case.site.seismic;
    if s.keeps() {
        return None;
    }
    let could = match seismic.value {
        Seismic::Low => Could::only(Fit::Fits),
        // A house of its own needs none there, a townhouse does.
        Seismic::Moderate => Could::only(Fit::Fits).or(seismic.is_assumed(), Could::only(Fit::FitsWithWork)),
        Seismic::ModerateTownhouse | Seismic::High => Could::only(Fit::FitsWithWork),
    };
    let id =
        could.say(["check-straps-none", "check-straps-needed", "check-straps-look", "check-straps-needed"]);
    let code = seismic.value.code().replace('_', "-");
    Some(
        Finding::new("straps", could, Message::new(id), s.rules.straps)
            .chosen("figure-seismic", seismic, format!("q-seismic-{code}"))
            .with_work_if(
                could.worst >= Fit::FitsWithWork,
                Work::new(WorkKind::Straps, STRAPS).sized("count", 2.0, Unit::One),
            )
            .asking("seismic"),
    )
}
