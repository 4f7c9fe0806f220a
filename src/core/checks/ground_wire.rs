//! The wires that are there: two hots and a ground serve; a neutral is spare at 240 V; without a ground the cable is
//! replaced.

use super::Seen;
use super::judge::Could;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::Wires;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

use super::circuit::reused;

/// A new cable over an ordinary run, dollars (from memory).
const NEW_CABLE: f64 = 500.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.two_pole() || !reused(s).0 {
        return None;
    }
    let wires = s.case.site.wires;
    let at = |w| if matches!(w, Wires::NoGround) { Fit::FitsWithWork } else { Fit::Fits };
    let could = Could::only(at(wires.value)).or(wires.is_assumed(), Could::only(Fit::FitsWithWork));
    let id = match (could.fit(), wires.value) {
        (Fit::Fits, Wires::Neutral) => "check-ground-wire-neutral",
        (Fit::Fits, _) => "check-ground-wire-fits",
        (Fit::MeasureFirst, _) => "check-ground-wire-look",
        _ => "check-ground-wire-missing",
    };
    let cable = Work::new(WorkKind::Wires, NEW_CABLE).sized("wire", 10.0, Unit::One).sized(
        "run",
        s.case.site.run_m.value,
        Unit::Metre,
    );
    Some(
        Finding::new("ground-wire", could, Message::new(id), s.rules.ground_wire)
            .chosen("figure-wires", wires, format!("q-wires-{}", wires.value.code().replace('_', "-")))
            .with_work_if(could.worst >= Fit::FitsWithWork, cable)
            .asking("wires")
            .cautioned("caution-mains"),
    )
}
