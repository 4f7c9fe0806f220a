//! The wires of a circuit that is used again: what their size, metal and cable may carry, against the breaker before
//! them and the continuous load.

use super::Seen;
use super::judge::Could;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::electrical;
use crate::core::message::Message;
use crate::core::site::{CableKind, WireMetal};
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

use super::circuit::{load_w, needs_a, reused, volts};

/// New wires over an ordinary run, dollars (from memory).
const NEW_WIRES: f64 = 500.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.two_pole() || !reused(s).0 {
        return None;
    }
    let (site, rule) = (&s.case.site, s.rules.conductors);
    let load = s.rules.continuous.is * electrical::current_a(load_w(s), volts(s));
    let column = usize::from(matches!(site.cable_kind.value, CableKind::Conduit));
    let at = |awg: u8, metal: WireMetal| {
        let Some(wire) = rule.is.iter().find(|w| w.awg == awg) else { return (0.0, Fit::FitsWithWork) };
        let (carries, cap) = match metal {
            WireMetal::Copper => (wire.copper_a[column], wire.breaker_a[0]),
            WireMetal::Aluminium => (wire.aluminium_a[column], wire.breaker_a[1]),
        };
        // The breaker must trip before the wire is too hot; wires between standard sizes take the next one.
        let next = electrical::next_size(s.rules.breakers_a, carries).unwrap_or(carries);
        let largest = if cap < next { cap } else { next };
        let serves = carries >= load - 1e-9 && largest >= site.breaker_a.value;
        (carries, if serves { Fit::Fits } else { Fit::FitsWithWork })
    };
    let (size, metal) = (site.wire_size, site.wire_metal);
    let (awg, carries) = (size.value.awg(), at(size.value.awg(), metal.value).0);
    let could = Could::only(at(awg, metal.value).1)
        // Nobody looked: a size smaller and the other metal are what goes wrong.
        .or(size.is_assumed(), Could::only(at(awg + 2, metal.value).1))
        .or(metal.is_assumed(), Could::only(at(awg, WireMetal::Aluminium).1));
    let id = could.say([
        "check-conductor-fits",
        "check-conductor-small",
        "check-conductor-measure",
        "check-conductor-small",
    ]);
    let says = Message::new(id)
        .quantity("wire", f64::from(awg), Unit::One)
        .quantity("carries", carries, Unit::Ampere)
        .quantity("load", load, Unit::Ampere)
        .quantity("breaker", site.breaker_a.value, Unit::Ampere);
    let enough = rule.is.iter().find(|w| w.copper_a[0] >= needs_a(s)).map_or(6.0, |w| f64::from(w.awg));
    let wires = Work::new(WorkKind::Wires, NEW_WIRES).sized("wire", enough, Unit::One).sized(
        "run",
        site.run_m.value,
        Unit::Metre,
    );
    Some(
        Finding::new("conductor", could, says, rule.cites)
            .by("relation-ampacity")
            .using("figure-wire", f64::from(awg), Unit::One, size.from)
            .chosen("figure-metal", metal, format!("q-wire-metal-{}", metal.value.code()))
            .chosen("figure-cable", site.cable_kind, format!("q-cable-kind-{}", site.cable_kind.value.code()))
            .using("figure-carries", carries, Unit::Ampere, size.from)
            .using("figure-needed-amps", load, Unit::Ampere, Provenance::Assumed)
            .given("figure-breaker", site.breaker_a, Unit::Ampere)
            .with_work_if(could.worst >= Fit::FitsWithWork, wires)
            .asking("wire_size")
            .asking("wire_metal")
            .asking("cable_kind")
            .cautioned("caution-mains"),
    )
}
