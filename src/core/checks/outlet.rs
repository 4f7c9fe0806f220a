//! A heater for 120 V: an outlet of its own, or one whose circuit it may share.

use super::Seen;
use super::judge::{Could, at_least};
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::electrical;
use crate::core::message::Message;
use crate::core::site::Outlet;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::power::watt;

/// A new 120 V circuit, dollars (from memory).
const NEW_OUTLET: f64 = 350.0;
/// Heat pumped for one of electricity at the worst that such a heater meets, and its fan, W; common practice, no
/// source: nameplates decide.
const WORST_COP: f64 = 2.2;
const FAN_W: f64 = 60.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_plug_in() {
        return None;
    }
    let (own, rule) = (s.case.circuit.own_120v, s.rules.shared_circuit);
    let (share, breaker) = rule.is;
    let element = s.candidate.label.input.get::<watt>();
    let pump = s.candidate.label.heat_pump_output.get::<watt>() / WORST_COP + FAN_W;
    let amps = electrical::current_a(if element > pump { element } else { pump }, s.candidate.body.volts);
    let at = |o| match o {
        Outlet::Yes => Could::only(Fit::Fits),
        Outlet::Shared => Could::only(at_least(share * breaker, amps, Fit::FitsWithWork)),
        Outlet::No => Could::only(Fit::FitsWithWork),
    };
    let assumed = own.is_assumed();
    let could = at(own.value).or(assumed, at(Outlet::Yes)).or(assumed, at(Outlet::No));
    let id = match (could.fit(), own.value) {
        (Fit::MeasureFirst, _) => "check-outlet-look",
        (Fit::Fits, Outlet::Shared) => "check-outlet-shared",
        (Fit::Fits, _) => "check-outlet-fits",
        (_, Outlet::Shared) => "check-outlet-too-much",
        _ => "check-outlet-missing",
    };
    let says =
        Message::new(id).quantity("amps", amps, Unit::Ampere).quantity("most", share * breaker, Unit::Ampere);
    Some(
        Finding::new("outlet", could, says, rule.cites)
            .by("relation-shared")
            .using("figure-amps", amps, Unit::Ampere, Provenance::Assumed)
            .using("figure-shared-most", share * breaker, Unit::Ampere, Provenance::Assumed)
            .chosen("figure-outlet", own, format!("q-own-120-{}", own.value.code()))
            .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::NewOutlet, NEW_OUTLET))
            .asking("own_120")
            .cautioned("caution-mains"),
    )
}
