//! Legionella: water stored hot enough that the germs die. What most households use is cooler; nothing obliges a house
//! to more, so this never stops a job.

use super::Seen;
use super::judge::Could;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::burns;
use crate::core::message::Message;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let (setpoint, rule) = (s.case.heater.setpoint, s.rules.storage_c);
    let stored = to_celsius(setpoint.value);
    let id = if stored >= rule.is - 0.05 {
        "check-storage-hot"
    } else if burns::germs_grow(stored) {
        "check-storage-grows"
    } else {
        "check-storage-cool"
    };
    let could = Could::only(if burns::germs_grow(stored) { Fit::FitsWithWork } else { Fit::Fits });
    let says =
        Message::new(id).quantity("stored", stored, Unit::DegC).quantity("advised", rule.is, Unit::DegC);
    Some(
        Finding::new("storage", could, says, rule.cites)
            .with_work_if(
                could.worst >= Fit::FitsWithWork,
                Work::new(WorkKind::Setpoint, 0.0).sized("setting", s.rules.tap_c.is, Unit::DegC),
            )
            .using("figure-setpoint", stored, Unit::DegC, setpoint.from)
            .using("figure-advised", rule.is, Unit::DegC, Provenance::Assumed)
            .asking("setpoint")
            .cautioned("caution-legionella"),
    )
}
