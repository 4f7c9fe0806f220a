//! A tank that leaks cannot be kept.

use super::Seen;
use crate::core::candidates::CandidateId;
use crate::core::case::TankSigns;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let leaks = matches!(s.case.heater.signs.value, TankSigns::Leaking);
    (s.candidate.id == CandidateId::Keep && leaks).then(|| {
        Finding::new(
            "tank-state",
            Fit::DoesNotFit,
            Message::new("check-tank-state-leaks"),
            "rule-common-practice",
        )
        .asking("signs")
        .cautioned("caution-leak")
    })
}
