//! The circuit: voltage and a breaker that is large enough, for a continuous load.

use super::Seen;
use super::judge::{Could, at_least, over};
use crate::core::case::{Provenance, Supply};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::electrical;
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::power::watt;

/// A new two-pole circuit over an ordinary run, dollars (from memory).
const NEW_CIRCUIT: f64 = 700.0;

/// Voltage of the supply, V.
pub(super) fn volts(s: &Seen) -> f64 {
    if matches!(s.case.circuit.supply.value, Supply::V208) { 208.0 } else { 240.0 }
}

/// Load of a two-pole heater, W. The elements are what counts: the compressor draws a seventh of them and does not
/// run with them.
pub(super) fn load_w(s: &Seen) -> f64 {
    electrical::output_w(s.candidate.label.input.get::<watt>(), s.candidate.body.volts, volts(s))
}

/// The least breaker, A: the load as a continuous one, in the next standard size.
pub(super) fn needs_a(s: &Seen) -> f64 {
    let sizes = s.rules.breakers_a;
    let least = s.rules.continuous.is * electrical::current_a(load_w(s), volts(s));
    electrical::next_size(sizes, least).or(sizes.last().copied()).unwrap_or(least)
}

/// The breaker of a new circuit, A: what the nameplate asks, 30 A for 4,500 W elements; common practice, no source.
fn new_a(s: &Seen) -> f64 {
    let (asks, needs) = (s.candidate.body.breaker_a, needs_a(s));
    if asks > needs { asks } else { needs }
}

/// Whether the heater's own two-pole circuit can be used again, with the values taken, and whether it might.
pub(super) fn reused(s: &Seen) -> (bool, bool) {
    let (site, needs) = (&s.case.site, needs_a(s));
    let two_pole = !matches!(s.case.circuit.supply.value, Supply::V120);
    (two_pole && site.breaker_a.value >= needs, two_pole && site.breaker_a.high >= needs)
}

/// The work of a new circuit: breaker, copper wire that carries it and loses no more than advised, run.
pub(super) fn new_circuit(s: &Seen) -> Work {
    let (breaker, run) = (new_a(s), s.case.site.run_m.value);
    let amps = electrical::current_a(load_w(s), volts(s));
    let (wires, most) = (s.rules.conductors.is, s.rules.voltage_drop.is * volts(s));
    let serves = wires.iter().find(|w| {
        w.copper_a[0] >= breaker
            && w.breaker_a[0] >= breaker
            && electrical::voltage_drop_v(amps, w.ohm_per_m[0], run) <= most
    });
    let awg = serves.or(wires.last()).map_or(0.0, |w| f64::from(w.awg));
    Work::new(WorkKind::NewCircuit, NEW_CIRCUIT)
        .sized("breaker", breaker, Unit::Ampere)
        .sized("wire", awg, Unit::One)
        .sized("run", run, Unit::Metre)
}

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.two_pole() {
        return None;
    }
    let circuit = &s.case.circuit;
    let (has, needs) = (s.case.site.breaker_a, needs_a(s));
    let only_120 = matches!(circuit.supply.value, Supply::V120);
    let could = if only_120 {
        Could::only(Fit::FitsWithWork)
    } else {
        over(&[has], &|v| at_least(v[0], needs, Fit::FitsWithWork))
    };
    let id = if only_120 {
        "check-circuit-only-120"
    } else if has.value <= 0.0 && could.fit() != Fit::Fits {
        could.say(["check-circuit-fits", "check-circuit-none", "check-circuit-find", "check-circuit-none"])
    } else {
        could.say([
            "check-circuit-fits",
            "check-circuit-small",
            "check-circuit-likely",
            "check-circuit-small",
        ])
    };
    let says =
        Message::new(id).quantity("needs", needs, Unit::Ampere).quantity("has", has.value, Unit::Ampere);
    let amps = electrical::current_a(load_w(s), volts(s));
    Some(
        Finding::new("circuit", could, says, s.rules.continuous.cites)
            .by("relation-continuous")
            .using("figure-element", load_w(s), Unit::Watt, Provenance::Assumed)
            .using("figure-volts", volts(s), Unit::Volt, circuit.supply.from)
            .using("figure-amps", amps, Unit::Ampere, circuit.supply.from)
            .using("figure-needed-amps", s.rules.continuous.is * amps, Unit::Ampere, circuit.supply.from)
            .using("figure-breaker", has.value, Unit::Ampere, has.from)
            .with_work_if(could.worst >= Fit::FitsWithWork, new_circuit(s))
            .asking("breaker")
            .asking("supply")
            .cautioned("caution-mains"),
    )
}
