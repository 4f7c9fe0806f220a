//! A loop of hot pipe that a pump keeps warm: what it loses, what that costs, and what a switch saves.

use super::Seen;
use super::judge::Could;
use crate::core::case::YesNo;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::pipework;
use crate::core::message::Message;
use crate::core::site::Recirculation;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};

use crate::core::money::energy_price;

/// Loss of a bare and of a covered 3/4 in pipe, W/(m·K); common practice, no source.
const LOSS_W_PER_M_K: [f64; 2] = [0.45, 0.15];
/// Hours a day of a loop that a timer or a button runs.
const TIMED_H: f64 = 3.0;
/// A pump's timer or button, and pipe covered, dollars (from memory).
const CONTROL: f64 = 180.0;
/// Temperature around the pipes, °C.
const AIR_C: f64 = 20.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let (site, way) = (&s.case.site, s.case.site.recirculation);
    if s.keeps() || matches!(way.value, Recirculation::None) {
        return None;
    }
    let water = to_celsius(s.case.heater.setpoint.value);
    let covered = usize::from(matches!(site.loop_covered.value, YesNo::Yes));
    let watts = pipework::loop_loss_w(site.loop_m.value, LOSS_W_PER_M_K[covered], water, AIR_C);
    let hours = if matches!(way.value, Recirculation::Always) { 24.0 } else { TIMED_H };
    let heat = watts * hours * 365.0 / 1e3;
    let price = if s.new_burner() {
        energy_price::fuel(s.candidate.label.kind, &s.case.prices).price
    } else {
        energy_price::of_heater(&s.case.prices, s.year).price
    };
    let made = s.year.efficiency().filter(|e| *e > 0.3).unwrap_or(0.9);
    let dollars = heat * price / made;
    let could =
        Could::only(if matches!(way.value, Recirculation::Always) { Fit::FitsWithWork } else { Fit::Fits });
    let id =
        if could.fit() == Fit::Fits { "check-recirculation-timed" } else { "check-recirculation-always" };
    let says =
        Message::new(id).quantity("heat", heat, Unit::KilowattHour).quantity("cost", dollars, Unit::Dollar);
    let control = Work::new(WorkKind::LoopControl, CONTROL).sized("length", site.loop_m.value, Unit::Metre);
    Some(
        Finding::new("recirculation", could, says, "rule-common-practice")
            .by("relation-loop")
            .given("figure-loop", site.loop_m, Unit::Metre)
            .chosen(
                "figure-covered",
                site.loop_covered,
                format!("q-loop-covered-{}", site.loop_covered.value.code()),
            )
            .using("figure-setpoint", water, Unit::DegC, s.case.heater.setpoint.from)
            .using("figure-loop-watts", watts, Unit::Watt, site.loop_m.from)
            .using("figure-loop-cost", dollars, Unit::Dollar, site.loop_m.from)
            .with_work_if(could.worst >= Fit::FitsWithWork, control)
            .asking("recirculation")
            .asking("loop_length"),
    )
}
