//! Scalding: how long skin stands the water as it is stored, where nothing mixes it.

use super::Seen;
use super::judge::{Could, at_least};
use crate::core::case::YesNo;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::burns;
use crate::core::message::Message;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};

/// A mixing valve at the tank, dollars (from memory).
const VALVE: f64 = 280.0;

/// Burns within so many seconds come before anyone draws back, s.
const SOON_S: f64 = 30.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let (setpoint, valve, rule) = (s.case.heater.setpoint, s.case.site.mixing_valve, s.rules.tap_c);
    let stored = to_celsius(setpoint.value);
    let unmixed = at_least(rule.is + 0.05, stored, Fit::FitsWithWork);
    let could = match valve.value {
        YesNo::Yes => Could::only(Fit::Fits),
        YesNo::No => Could::only(unmixed).or(valve.is_assumed(), Could::only(Fit::Fits)),
    };
    if s.keeps() && could.fit() == Fit::MeasureFirst {
        return None;
    }
    let id = match valve.value {
        YesNo::Yes => "check-scald-mixed",
        YesNo::No => {
            could.say(["check-scald-fits", "check-scald-hot", "check-scald-look", "check-scald-hot"])
        }
    };
    let seconds = burns::burn_time_s(stored);
    let says = Message::new(id)
        .quantity("stored", stored, Unit::DegC)
        .quantity("safe", rule.is, Unit::DegC)
        .with("seconds", seconds.round() as i64);
    let mixing = Work::new(WorkKind::MixingValve, VALVE).sized("mixed", rule.is, Unit::DegC);
    Some(
        Finding::new("scald", could, says, rule.cites)
            .by("relation-burn")
            .using("figure-setpoint", stored, Unit::DegC, setpoint.from)
            .using("figure-burn-time", seconds / 60.0, Unit::Minute, setpoint.from)
            .with_work_if(could.worst >= Fit::FitsWithWork, mixing)
            .asking("setpoint")
            .asking("mixing_valve")
            .cautioned(if seconds < SOON_S { "caution-scald-fast" } else { "caution-scald" }),
    )
}
