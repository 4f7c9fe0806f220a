//! A 208 V supply: elements made for 240 V give three quarters of their heat, so they recover more slowly.

use super::Seen;
use super::judge::Could;
use crate::core::case::{Provenance, Supply};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use uom::si::power::watt;

use super::circuit::{load_w, volts};

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let supply = s.case.circuit.supply;
    if !s.two_pole() || !matches!(supply.value, Supply::V208) {
        return None;
    }
    let (rated, gives) = (s.candidate.label.input.get::<watt>(), load_w(s));
    let says = Message::new("check-supply-208").quantity("gives", gives, Unit::Watt).quantity(
        "rated",
        rated,
        Unit::Watt,
    );
    Some(
        Finding::new("supply", Could::only(Fit::Fits), says, "rule-nameplate")
            .by("relation-resistance")
            .using("figure-element", rated, Unit::Watt, Provenance::Assumed)
            .using("figure-volts", volts(s), Unit::Volt, supply.from)
            .using("figure-element-gives", gives, Unit::Watt, supply.from)
            .asking("supply"),
    )
}
