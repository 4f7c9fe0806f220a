//! What is left of gas, oil and flue when the burner goes.
//!
//! A furnace or boiler that keeps a flue to itself may find it too large: whoever is licensed re-sizes it
//! (International Fuel Gas Code chapter 5, from memory).

use super::Seen;
use crate::core::candidates::CandidateId;
use crate::core::case::{HeaterKind, YesNo};
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};

/// Capping a fuel line and a flue opening, dollars (from memory).
const CAPPING: f64 = 200.0;
/// Relining a flue for one appliance, dollars (from memory); what is found decides.
const RELINING: f64 = 900.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let burns = |k| matches!(k, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil);
    let heater = &s.case.heater;
    if s.candidate.id == CandidateId::Keep || !burns(heater.kind.value) || burns(s.candidate.label.kind) {
        return None;
    }
    let shared = heater.shares_flue;
    let finding = |fit, id| {
        Finding::new("flue", fit, Message::new(id), "rule-ifgc-5")
            .asking("shares_flue")
            .cautioned("caution-fuel")
    };
    Some(match (shared.value, shared.is_assumed()) {
        (YesNo::Yes, true) => {
            finding(Fit::MeasureFirst, "check-flue-maybe").with_work(Message::new("work-cap-fuel"), CAPPING)
        }
        (YesNo::Yes, false) => finding(Fit::FitsWithWork, "check-flue-shared")
            .with_work(Message::new("work-resize-flue"), CAPPING + RELINING),
        (YesNo::No, _) => {
            finding(Fit::FitsWithWork, "check-flue-alone").with_work(Message::new("work-cap-fuel"), CAPPING)
        }
    })
}
