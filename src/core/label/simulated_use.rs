//! The 24-hour simulated-use test: a day of draws, and the score with the procedure's corrections.
//!
//! Source: 10 CFR part 430, subpart B, appendix E, sections 5.4 and 6.3 (from memory).
//!
//! **The thermostat's phase** moves a single day's score by some 2 %. The procedure begins at a cut-out, and so
//! does this: [`Sim::new`] is a tank that has just been heated through and cut out. Where the day ends with
//! more or less heat stored than it began, the difference counts at the recovery efficiency. And in the last hour
//! burner, elements and compressor are switched off, so that no recovery begins that the day's end would cut;
//! one under way at hour 23 goes on to its cut-out (from memory: the switching off since the first edition, the
//! recovery under way as amended in 2023). What the procedure has besides and this has not: the correction for a
//! test room that strays from 67.5 °F, which a simulated one does not.

use super::patterns::{Pattern, Withdrawal};
use super::rating_test::{AIR_C, INLET_C, PUMP_STEP_S, RISE_K, test_air};
use crate::core::heater::{Constant, Model, Sim, Source, Totals};
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

const DAY_S: f64 = 86_400.0;
/// From here on nothing may begin to heat, s.
const LAST_HOUR_S: f64 = 23.0 * 3_600.0;
/// A thermostat set to this is switched off: no water is ever colder, °C.
const OFF_C: f64 = -50.0;
/// Draws with less than this between them are one cluster, s.
const CLUSTER_GAP_S: f64 = 7_200.0;
/// Recovery efficiency of elements in the water: the procedure's own figure.
const ELEMENTS_RECOVERY: f64 = 0.98;
/// How often the end of the first recovery is looked for, s.
const LOOK_S: f64 = 60.0;
/// How often the tank's temperature is read in the standby period, s.
const STANDBY_READ_S: f64 = 600.0;

/// Result of the 24-hour simulated-use test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SimulatedUse {
    /// Uniform energy factor.
    pub uniform_energy_factor: f64,
    /// Recovery efficiency: of the first recovery; 0.98 for elements alone, as the procedure has it.
    pub recovery_efficiency: f64,
    /// Standby loss coefficient, W/K: energy used a kelvin between tank and room, from the standby period
    /// between the first cluster of draws and the second.
    pub standby_w_per_k: f64,
    /// Electricity used in the day, J.
    pub electricity_j: f64,
    /// Fuel used in the day, J.
    pub fuel_j: f64,
    /// Energy for heat that the day began without or ended with, J; taken off what was used.
    pub stored_correction_j: f64,
    /// Energy for water delivered or coming in off the nominal rise, J; added to what was used.
    pub rise_correction_j: f64,
    /// Heat that the drawn water holds at the nominal rise, J.
    pub nominal_j: f64,
    /// Pattern drawn.
    pub pattern: Pattern,
}

impl SimulatedUse {
    /// Electricity and fuel used in the day with the corrections, J.
    pub fn corrected_j(&self) -> f64 {
        self.electricity_j + self.fuel_j - self.stored_correction_j + self.rise_correction_j
    }
}

/// Somebody who looks on while the day goes by.
pub(super) trait Watch {
    /// When it wants to look next, s.
    fn next_s(&self) -> f64;
    /// Looks: `flow_m3_per_s` was drawn up to now. `edge`: a draw begins or ends here.
    fn see(&mut self, now_s: f64, flow_m3_per_s: f64, sim: &Sim, edge: bool);
}

/// Nobody looks on.
struct Nobody;

impl Watch for Nobody {
    fn next_s(&self) -> f64 {
        f64::INFINITY
    }

    fn see(&mut self, _now_s: f64, _flow_m3_per_s: f64, _sim: &Sim, _edge: bool) {}
}

/// Scores a heater that is set to the test's delivery temperature.
pub fn simulated_use(model: &Model, pattern: Pattern) -> SimulatedUse {
    watched(model, pattern, &mut Nobody)
}

/// The same with somebody who looks on. Looking cuts the simulation's steps, which moves the score in the
/// fourth digit.
pub(super) fn watched(model: &Model, pattern: Pattern, watch: &mut dyn Watch) -> SimulatedUse {
    let off = model.at_setpoint(OFF_C);
    let mut day = Day::new(model, watch);
    let mut nominal_j = 0.0;
    let mut free_s = 0.0;
    for w in pattern.withdrawals() {
        if day.standby == Standby::Before && w.start_s - free_s > CLUSTER_GAP_S {
            day.standby = Standby::Waiting;
        }
        day.idle_until(w.start_s);
        day.end_standby();
        day.draw(w);
        free_s = day.now_s;
        nominal_j += RHO_C * w.volume_m3() * RISE_K;
    }
    day.idle_until(LAST_HOUR_S);
    while !day.sim.is_idle() && day.now_s < DAY_S {
        let next_s = day.now_s + LOOK_S;
        day.idle_until(if next_s < DAY_S { next_s } else { DAY_S });
    }
    day.sim.go_on_as(&off);
    day.idle_until(DAY_S);
    day.watch.see(DAY_S, 0.0, &day.sim, true);
    day.score(nominal_j, pattern)
}

/// The period in which nothing is drawn and standby is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Standby {
    /// Draws of the first cluster still come.
    Before,
    /// They are over; the recovery after them is not.
    Waiting,
    /// Under way: when it began, s; energy used and heat stored then, J; sum of temperature × time, °C·s.
    Open { since_s: f64, used_j: f64, stored_j: f64, sum_c_s: f64 },
    /// Over, with the coefficient, W/K.
    Done(f64),
}

struct Day<'m, 'w> {
    sim: Sim<'m>,
    air: Constant,
    now_s: f64,
    start_j: f64,
    recovery: Option<f64>,
    standby: Standby,
    watch: &'w mut dyn Watch,
}

impl<'m, 'w> Day<'m, 'w> {
    fn new(model: &'m Model, watch: &'w mut dyn Watch) -> Self {
        let sim = Sim::new(model).with_pump_step(PUMP_STEP_S);
        watch.see(0.0, 0.0, &sim, true);
        Self {
            start_j: sim.stored_j(),
            air: test_air(),
            now_s: 0.0,
            recovery: matches!(model.source, Source::Elements(_)).then_some(ELEMENTS_RECOVERY),
            standby: Standby::Before,
            sim,
            watch,
        }
    }

    fn idle_until(&mut self, to_s: f64) {
        while to_s - self.now_s > 1e-9 {
            let next_s = match self.standby {
                _ if self.recovery.is_none() => self.now_s + LOOK_S,
                Standby::Waiting => self.now_s + LOOK_S,
                Standby::Open { .. } => self.now_s + STANDBY_READ_S,
                Standby::Before | Standby::Done(_) => to_s,
            };
            let next_s = if next_s < to_s { next_s } else { to_s };
            let look_s = self.watch.next_s();
            let next_s = if look_s > self.now_s && look_s < next_s { look_s } else { next_s };
            let step_s = next_s - self.now_s;
            let before_c = self.sim.layers().mean_c();
            self.sim.advance(step_s, &mut self.air);
            self.now_s = next_s;
            if self.recovery.is_none() && self.sim.is_idle() && self.sim.totals().heat_in_j > 0.0 {
                self.recovery = Some(self.recovered());
            }
            match &mut self.standby {
                Standby::Waiting if self.sim.is_idle() => {
                    self.standby = Standby::Open {
                        since_s: self.now_s,
                        used_j: used_j(self.sim.totals()),
                        stored_j: self.sim.stored_j(),
                        sum_c_s: 0.0,
                    };
                }
                Standby::Open { sum_c_s, .. } => {
                    *sum_c_s += 0.5 * (before_c + self.sim.layers().mean_c()) * step_s;
                }
                _ => {}
            }
            self.watch.see(self.now_s, 0.0, &self.sim, false);
        }
    }

    /// The standby period ends with the first draw after it.
    fn end_standby(&mut self) {
        let Standby::Open { since_s, used_j: before_j, stored_j, sum_c_s } = self.standby else { return };
        let time_s = self.now_s - since_s;
        let used_j = used_j(self.sim.totals()) - before_j;
        let stored_j = self.sim.stored_j() - stored_j;
        let over_k = if time_s > 0.0 { sum_c_s / time_s - AIR_C } else { 0.0 };
        let coefficient =
            if over_k > 0.0 { (used_j - stored_j / self.efficiency()) / (time_s * over_k) } else { 0.0 };
        self.standby = Standby::Done(coefficient);
    }

    fn draw(&mut self, w: &Withdrawal) {
        let flow = w.flow_m3_per_s();
        let end_s = self.now_s + w.volume_m3() / flow;
        let mut left_m3 = w.volume_m3();
        self.watch.see(self.now_s, 0.0, &self.sim, true);
        while left_m3 > 1e-12 {
            let look_m3 = (self.watch.next_s() - self.now_s) * flow;
            let piece_m3 = if look_m3 > 1e-9 && look_m3 < left_m3 { look_m3 } else { left_m3 };
            let (v, _) = self.sim.draw_some(piece_m3, 1.0 / flow, INLET_C, &mut self.air);
            left_m3 -= v;
            self.now_s = end_s - left_m3 / flow;
            self.watch.see(self.now_s, flow, &self.sim, false);
        }
        self.now_s = end_s;
        self.watch.see(self.now_s, flow, &self.sim, true);
    }

    /// Heat drawn and stored for what was used.
    fn recovered(&self) -> f64 {
        let t = self.sim.totals();
        let used_j = used_j(t);
        if used_j > 0.0 { (t.delivered_j + self.sim.stored_j() - self.start_j) / used_j } else { 1.0 }
    }

    /// The recovery efficiency; of the whole day where no recovery has ended.
    fn efficiency(&self) -> f64 {
        let found = self.recovery.unwrap_or_else(|| self.recovered());
        if found > 0.01 { found } else { 0.01 }
    }

    fn score(&self, nominal_j: f64, pattern: Pattern) -> SimulatedUse {
        let efficiency = self.efficiency();
        let t = self.sim.totals();
        let mut use_ = SimulatedUse {
            uniform_energy_factor: 0.0,
            recovery_efficiency: efficiency,
            standby_w_per_k: if let Standby::Done(found) = self.standby { found } else { 0.0 },
            electricity_j: t.electricity_j,
            fuel_j: t.fuel_j,
            stored_correction_j: (self.sim.stored_j() - self.start_j) / efficiency,
            rise_correction_j: (nominal_j - t.delivered_j) / efficiency,
            nominal_j,
            pattern,
        };
        let corrected_j = use_.corrected_j();
        if corrected_j > 0.0 {
            use_.uniform_energy_factor = nominal_j / corrected_j;
        }
        use_
    }
}

fn used_j(t: &Totals) -> f64 {
    t.electricity_j + t.fuel_j
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::candidates::Label;
    use crate::core::case::HeaterKind;
    use crate::core::label::class::{self, Build};
    use crate::core::label::rating_test::DELIVERED_C;
    use crate::core::units::{gallons, watts};

    /// Energy used since nothing heated any more in the last hour, J, and the coldest that the sensor's water got.
    struct LastHour {
        idle_j: Option<f64>,
        since_j: f64,
        sensor_c: f64,
    }

    impl Watch for LastHour {
        fn next_s(&self) -> f64 {
            f64::INFINITY
        }

        fn see(&mut self, now_s: f64, _flow_m3_per_s: f64, sim: &Sim, _edge: bool) {
            if now_s >= LAST_HOUR_S && (sim.is_idle() || self.idle_j.is_some()) {
                let used = used_j(sim.totals());
                self.since_j = used - *self.idle_j.get_or_insert(used);
            }
            self.sensor_c = sim.layers().temperature_c(sim.layers().layer_at(0.25));
        }
    }

    /// Whatever the phase in which a leaky tank's thermostat stands at hour 23, no recovery begins after; and the score
    /// no longer jumps from tank to tank as one more recovery falls into the day.
    #[test]
    fn no_recovery_begins_in_the_last_hour() {
        let label = Label {
            kind: HeaterKind::Gas,
            nominal_volume: gallons(40.0),
            uniform_energy_factor: 0.58,
            first_hour_rating: gallons(68.0),
            input: watts(11_720.0),
            heat_pump_output: watts(0.0),
        };
        let (mut held_back, mut last) = (0, 1.0);
        for tenths in 40..=100 {
            let mut model = class::model(&label, &Build::usual(label.kind), DELIVERED_C);
            model.standby_w_per_k = 0.1 * f64::from(tenths);
            let mut seen = LastHour { idle_j: None, since_j: 0.0, sensor_c: 0.0 };
            let factor = watched(&model, Pattern::Medium, &mut seen).uniform_energy_factor;
            assert_eq!(seen.since_j, 0.0, "{} W/K", model.standby_w_per_k);
            held_back += u32::from(seen.sensor_c < DELIVERED_C - model.deadband_k - 0.1);
            assert!(factor < last + 0.002, "{} W/K: {factor} after {last}", model.standby_w_per_k);
            last = factor;
        }
        assert!(held_back > 0, "no thermostat called in the last hour: nothing was tested");
    }
}
