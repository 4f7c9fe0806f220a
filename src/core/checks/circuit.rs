//! The circuit: voltage, breaker, and a space in the panel for a new one.
//!
//! National Electrical Code (from memory, 2023): 422.13, a storage water heater of 120 gal or less is a
//! continuous load and its branch circuit carries at least 125 % of its current; 240.6(A), standard
//! breaker sizes; 210.23, what a circuit with other outlets may carry.

use super::Seen;
use crate::core::candidates::CandidateId;
use crate::core::case::{HeaterKind, Provenance, Supply, YesNo};
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::Unit;
use uom::si::power::watt;

/// Share of its current that a continuous load's circuit must carry (422.13).
const CONTINUOUS: f64 = 1.25;
/// A new two-pole circuit over an ordinary run, dollars (from memory).
const NEW_CIRCUIT: f64 = 700.0;
/// A new 120 V circuit, dollars (from memory).
const NEW_OUTLET: f64 = 350.0;

/// Standard breakers up to 60 A (240.6(A)).
pub const STANDARD_A: [f64; 10] = [15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0];

/// The smallest standard breaker that carries a continuous load, A.
pub fn breaker_for_a(watts: f64, volts: f64) -> Option<f64> {
    let needs = CONTINUOUS * watts / volts;
    STANDARD_A.into_iter().find(|a| *a >= needs)
}

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.candidate.id == CandidateId::Keep {
        return None;
    }
    match s.candidate.label.kind {
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => None,
        _ if s.candidate.is_plug_in() => Some(outlet(s)),
        HeaterKind::Electric | HeaterKind::HeatPump => Some(two_pole(s)),
    }
}

fn outlet(s: &Seen) -> Finding {
    let own = s.case.circuit.own_120v;
    let finding = |fit, id| {
        Finding::new("circuit", fit, Message::new(id), "rule-nec-210-23")
            .asking("own_120")
            .cautioned("caution-mains")
    };
    if matches!(own.value, YesNo::Yes) {
        return finding(Fit::Fits, "check-circuit-outlet-fits");
    }
    let work = Message::new("work-new-outlet");
    finding(Fit::FitsWithWork, "check-circuit-outlet-missing").with_work(work, NEW_OUTLET)
}

fn two_pole(s: &Seen) -> Finding {
    let circuit = &s.case.circuit;
    // The elements are what counts: the compressor draws a seventh of them and does not run with them.
    let load_w = s.candidate.label.input.get::<watt>();
    let volts = if matches!(circuit.supply.value, Supply::V208) { 208.0 } else { 240.0 };
    // An element is a resistance: at 208 V a 240 V element gives (208/240)², about three quarters.
    let load_w = load_w * (volts / s.candidate.body.volts) * (volts / s.candidate.body.volts);
    let needs_a = breaker_for_a(load_w, volts).unwrap_or(STANDARD_A[STANDARD_A.len() - 1]);
    let has = circuit.breaker_a;
    let finding = |fit, id| {
        let says = Message::new(id).quantity("needs", needs_a, Unit::Ampere).quantity(
            "has",
            has.value,
            Unit::Ampere,
        );
        Finding::new("circuit", fit, says, "rule-nec-422-13")
            .using("figure-element", load_w, Unit::Watt, Provenance::Assumed)
            .using("figure-volts", volts, Unit::Volt, circuit.supply.from)
            .using("figure-breaker", has.value, Unit::Ampere, has.from)
            .cautioned("caution-mains")
    };
    // A new circuit gets what the nameplate asks: 30 A for 4,500 W elements; common practice, no source.
    let asks_a = s.candidate.body.breaker_a;
    let new_a = if asks_a > needs_a { asks_a } else { needs_a };
    if matches!(circuit.supply.value, Supply::V120) {
        let work = Message::new("work-new-circuit").quantity("breaker", new_a, Unit::Ampere);
        return finding(Fit::FitsWithWork, "check-circuit-only-120")
            .with_work(work, NEW_CIRCUIT)
            .asking("supply");
    }
    if has.value >= needs_a {
        let fit = if has.is_assumed() { Fit::MeasureFirst } else { Fit::Fits };
        let id = if has.is_assumed() { "check-circuit-likely" } else { "check-circuit-fits" };
        return finding(fit, id).asking("breaker");
    }
    if circuit.free_spaces.value < 1.0 && has.value == 0.0 && !circuit.free_spaces.is_assumed() {
        let work = Message::new("work-panel-space");
        return finding(Fit::FitsWithWork, "check-circuit-no-space")
            .with_work(work, NEW_CIRCUIT + 500.0)
            .asking("free_spaces");
    }
    let work = Message::new("work-new-circuit").quantity("breaker", new_a, Unit::Ampere);
    finding(Fit::FitsWithWork, "check-circuit-small").with_work(work, NEW_CIRCUIT).asking("breaker")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The code's worked case (published-values, from memory): 4,500 W at 240 V is 18.75 A; by 1.25 is
    /// 23.4 A; the next common size with 10 AWG copper is 30 A, and 25 A is the next standard one.
    #[test]
    fn the_usual_element() {
        assert!((CONTINUOUS * 4_500.0 / 240.0 - 23.437_5).abs() < 1e-9);
        assert_eq!(breaker_for_a(4_500.0, 240.0), Some(25.0));
        assert_eq!(breaker_for_a(5_500.0, 240.0), Some(30.0));
        assert_eq!(breaker_for_a(1e6, 240.0), None);
    }

    #[test]
    fn more_power_never_needs_less() {
        let mut last = 0.0;
        for w in (500..12_000).step_by(100) {
            let a = breaker_for_a(f64::from(w), 240.0).expect("within the table");
            assert!(a >= last);
            last = a;
        }
    }
}
