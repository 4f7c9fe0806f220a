//! What is left of a flue when the burner goes: a furnace or boiler that keeps it to itself may find it too large;
//! whoever is licensed re-sizes it.

use super::Seen;
use super::judge::Could;
use crate::core::case::YesNo;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::work::{Work, WorkKind};

use super::burns as has_burner;

/// Relining a flue for one appliance, dollars (from memory); what is found decides.
const RELINING: f64 = 900.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let heater = &s.case.heater;
    if s.keeps() || !has_burner(heater.kind.value) || has_burner(s.candidate.label.kind) {
        return None;
    }
    let shared = heater.shares_flue;
    let at = |y| if matches!(y, YesNo::Yes) { Fit::FitsWithWork } else { Fit::Fits };
    let could = Could::only(at(shared.value))
        .or(shared.is_assumed(), Could::only(Fit::Fits))
        .or(shared.is_assumed(), Could::only(Fit::FitsWithWork));
    let id = could.say(["check-flue-alone", "check-flue-shared", "check-flue-maybe", "check-flue-shared"]);
    let finding = Finding::new("flue", could, Message::new(id), s.rules.flue)
        .chosen("figure-flue", shared, format!("q-shares-flue-{}", shared.value.code()))
        .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::ResizeFlue, RELINING))
        .asking("shares_flue")
        .cautioned("caution-fuel");
    Some(finding)
}
