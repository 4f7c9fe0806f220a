//! The fuel line: capped where the burner goes, connected anew where one comes.

use super::Seen;
use super::judge::Could;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::work::{Work, WorkKind};

use super::burns as has_burner;

/// Capping a fuel line and closing the flue's opening, dollars (from memory).
const CAPPING: f64 = 200.0;
/// A valve, a drip leg and a test, dollars (from memory), beyond a like-for-like job.
const CONNECTING: f64 = 600.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let present = s.case.heater.kind.value;
    let (goes, comes) = (has_burner(present), has_burner(s.candidate.label.kind));
    let same = present == s.candidate.label.kind;
    let (id, work) = match (goes, comes) {
        (false, false) => return None,
        (true, false) => ("check-fuel-line-cap", Work::new(WorkKind::CapFuel, CAPPING)),
        (_, true) => {
            let cost = if same { 0.0 } else { CONNECTING };
            ("check-fuel-line-connect", Work::new(WorkKind::FuelConnection, cost))
        }
    };
    let could = Could::only(Fit::FitsWithWork);
    Some(
        Finding::new("fuel-line", could, Message::new(id), s.rules.fuel_line)
            .with_work(work)
            .cautioned("caution-fuel"),
    )
}
