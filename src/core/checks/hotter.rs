//! Storing hotter behind a mixing valve: how much more hot water the same tank then gives.

use super::Seen;
use super::judge::Could;
use crate::core::case::{Provenance, YesNo};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::burns;
use crate::core::message::Message;
use crate::core::units::{Unit, to_celsius};
use uom::si::volume::cubic_meter;

/// The coldest water that comes in, °C (40 °F).
const COLD_C: f64 = 4.444;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let (setpoint, valve) = (s.case.heater.setpoint, s.case.site.mixing_valve);
    let (stored, hot, mixed) = (to_celsius(setpoint.value), s.rules.storage_c.is, s.rules.tap_c.is);
    let more = burns::mixed_share(hot, mixed, COLD_C) - 1.0;
    let litres = s.candidate.label.nominal_volume.get::<cubic_meter>() * 1e3 * more;
    let now = stored >= hot - 0.05 && matches!(valve.value, YesNo::Yes);
    let id = if now { "check-hotter-now" } else { "check-hotter-could" };
    let says = Message::new(id)
        .quantity("hot", hot, Unit::DegC)
        .quantity("mixed", mixed, Unit::DegC)
        .quantity("more", more * 100.0, Unit::Percent)
        .quantity("litres", litres, Unit::Litre);
    Some(
        Finding::new("hotter", Could::only(Fit::Fits), says, s.rules.storage_c.cites)
            .by("relation-mixing")
            .using("figure-setpoint", stored, Unit::DegC, setpoint.from)
            .using("figure-hotter", hot, Unit::DegC, Provenance::Assumed)
            .using("figure-mixed", mixed, Unit::DegC, Provenance::Assumed)
            .using("figure-gain", litres, Unit::Litre, Provenance::Assumed)
            .asking("setpoint")
            .asking("mixing_valve"),
    )
}
