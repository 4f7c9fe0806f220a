//! Condensate: by gravity to a drain, or by a pump. Litres a day are the simulated year's worst.
//!
//! Condensate goes to a floor drain or sump, and where there is none, to a small pump with a float whose tube may run up
//! and over a door to a laundry drain: common practice, no source.

use super::Seen;
use super::judge::{Could, over};
use super::rules::practice;
use crate::core::case::{DrainKind, Provenance};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::condensate;
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// A condensate pump with its tube, dollars (from memory).
const PUMP_WORK: f64 = 250.0;
/// The least share of its free flow that a pump is asked to keep at its lift; common practice, no source.
const LEAST_FLOW: f64 = 0.05;

/// Up and over a door, where it is not known how high the drain lies, m (7 ft).
const OVER_A_DOOR_M: f64 = 7.0 * 0.3048;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_heat_pump() {
        return None;
    }
    let (kind, site, rule) = (s.case.drain.kind, &s.case.site, s.rules.condensate_slope);
    let day = s.year.condensate_worst_day_l;
    let year: f64 = s.year.condensate_l.iter().sum();
    let (run, rise) = (site.drain_run_m, site.drain_rise_m);
    let pump = practice::PUMP;
    let lifts = |rise: f64| pump.flow_m3_per_s(rise) >= LEAST_FLOW * pump.free_m3_per_s;
    let pumped = |rise: f64| if lifts(rise) { Fit::FitsWithWork } else { Fit::DoesNotFit };
    let there = over(&[run, rise], &|v| {
        if v[1] + condensate::fall_m(v[0], rule.is) <= 1e-9 { Fit::Fits } else { pumped(v[1]) }
    });
    let none = over(&[rise], &|v| pumped(v[0]));
    let could = if matches!(kind.value, DrainKind::None) {
        none
    } else {
        there.or(kind.is_assumed(), Could::only(Fit::FitsWithWork))
    };
    let gravity = could.likely == Fit::Fits;
    let id = match (could.fit(), kind.value) {
        (Fit::MeasureFirst, DrainKind::None) => "check-drain-lift",
        (Fit::FitsWithWork, DrainKind::None) => "check-drain-none",
        (fit, _) => match fit {
            Fit::Fits => "check-drain-gravity",
            Fit::FitsWithWork => "check-drain-pump",
            Fit::MeasureFirst => "check-drain-likely",
            Fit::DoesNotFit => "check-drain-too-high",
        },
    };
    let fall_cm = condensate::fall_m(run.value, rule.is) * 100.0;
    let says = Message::new(id)
        .quantity("day", day, Unit::Litre)
        .quantity("year", year, Unit::Litre)
        .quantity("run", run.value, Unit::Metre)
        .quantity("fall", fall_cm, Unit::Centimetre)
        .quantity("rise", rise.value, Unit::Metre);
    let pipe = Work::new(WorkKind::CondensatePipe, 0.0).sized("run", run.value, Unit::Metre).sized(
        "fall",
        fall_cm,
        Unit::Centimetre,
    );
    let with_pump = Work::new(WorkKind::CondensatePump, PUMP_WORK)
        .sized("lift", if rise.value > 0.0 { rise.value } else { OVER_A_DOOR_M }, Unit::Metre)
        .sized("run", run.value, Unit::Metre);
    let mut finding = Finding::new("drain", could, says, rule.cites)
        .by("relation-slope")
        .let_in_by(Message::new("need-nearer-drain").quantity(
            "most",
            pump.shut_off_m * (1.0 - LEAST_FLOW),
            Unit::Metre,
        ))
        .given("figure-drain-run", run, Unit::Metre)
        .given("figure-drain-rise", rise, Unit::Metre)
        .using("figure-fall", fall_cm, Unit::Centimetre, run.from)
        .using("figure-condensate-day", day, Unit::Litre, Provenance::Assumed)
        .using("figure-condensate-year", year, Unit::Litre, Provenance::Assumed)
        .with_work_if(gravity, pipe)
        .with_work_if(could.worst >= Fit::FitsWithWork, with_pump)
        .asking("drain_kind")
        .asking("drain_rise")
        .asking("drain_distance");
    if let (false, Some(duty)) = (gravity, pump.duty(day, rise.value)) {
        finding = finding.using("figure-pump-duty", duty * 100.0, Unit::Percent, rise.from);
    }
    Some(finding)
}
