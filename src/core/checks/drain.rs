//! Condensate: gravity to a drain, or a pump.
//!
//! International Mechanical Code 307 (from memory): at least 3/4 in pipe, sloping 1/8 in a foot.

use super::Seen;
use crate::core::case::DrainKind;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::{FOOT_M, Unit};
use uom::si::length::meter;

/// Fall over run: 1/8 in a foot.
pub const SLOPE: f64 = 0.125 / 12.0;
/// A condensate pump with its tube, dollars (from memory).
const PUMP_WORK: f64 = 250.0;
/// What a small condensate pump lifts, m (15 ft); common practice, no source.
const PUMP_LIFT_M: f64 = 15.0 * FOOT_M;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_heat_pump() {
        return None;
    }
    let drain = &s.case.drain;
    let litres: f64 = s.year.condensate_l.iter().sum();
    let worst_day = s.year.condensate_l.iter().fold(0.0f64, |a, b| a.max(*b)) / 30.0;
    let (run_m, rise_m) = (drain.distance.value.get::<meter>(), drain.rise.value.get::<meter>());
    let fall_needed_m = run_m * SLOPE;
    let finding = |fit, id| {
        let says = Message::new(id)
            .quantity("day", worst_day, Unit::Litre)
            .quantity("year", litres, Unit::Litre)
            .quantity("run", run_m, Unit::Metre)
            .quantity("fall", fall_needed_m * 100.0, Unit::Centimetre)
            .quantity("rise", rise_m, Unit::Metre);
        Finding::new("drain", fit, says, "rule-imc-307")
            .using("figure-drain-run", run_m, Unit::Metre, drain.distance.from)
            .using("figure-drain-rise", rise_m, Unit::Metre, drain.rise.from)
    };
    let pump = || Message::new("work-condensate-pump");
    Some(match drain.kind.value {
        DrainKind::None if rise_m > PUMP_LIFT_M => {
            let fit = if drain.rise.is_assumed() { Fit::MeasureFirst } else { Fit::DoesNotFit };
            finding(fit, "check-drain-too-high").asking("drain_rise")
        }
        DrainKind::None => {
            finding(Fit::FitsWithWork, "check-drain-none").with_work(pump(), PUMP_WORK).asking("drain_kind")
        }
        _ if rise_m + fall_needed_m <= 0.0 => {
            let fit = if drain.kind.is_assumed() { Fit::MeasureFirst } else { Fit::Fits };
            let id = if fit == Fit::Fits { "check-drain-gravity" } else { "check-drain-likely" };
            finding(fit, id).asking("drain_kind")
        }
        _ => finding(Fit::FitsWithWork, "check-drain-pump").with_work(pump(), PUMP_WORK).asking("drain_rise"),
    })
}
