//! Heating steps: elements and burners in closed form, the heat pump by the heat of the step's middle.

use super::control::Place;
use super::model::{Elements, Source};
use super::sim::{CUT_OUT_SLACK_K, On, Sim};
use super::surroundings::Surroundings;
use crate::core::heat_pump::coil::Coil;
use crate::core::numeric::decay_factor;
use crate::core::tank::Layers;
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Shortest heating step, s: events closer than this are taken together.
const SHORTEST_S: f64 = 2.0;

/// A source whose heat enters at one height, all of it.
struct Direct {
    heat_w: f64,
    electricity_w: f64,
    fuel_w: f64,
    place: Place,
}

impl Sim<'_> {
    fn direct(&self) -> Option<Direct> {
        let element = |elements: &Elements, upper: bool| {
            let e = if upper { &elements.upper } else { &elements.lower };
            Direct {
                heat_w: e.power_w,
                electricity_w: e.power_w,
                fuel_w: 0.0,
                place: if upper { self.places.upper } else { self.places.lower },
            }
        };
        match (&self.model.source, self.on) {
            (Source::Elements(e) | Source::HeatPump { backup: Some(e), .. }, On::Upper) => {
                Some(element(e, true))
            }
            (Source::Elements(e) | Source::HeatPump { backup: Some(e), .. }, On::Lower) => {
                Some(element(e, false))
            }
            (Source::Burner(b), On::Burner) => Some(Direct {
                heat_w: b.input_w * b.recovery,
                electricity_w: b.auxiliary_w,
                fuel_w: b.input_w,
                place: self.places.own,
            }),
            _ => None,
        }
    }

    /// Warms the pool above the element, which grows by each layer that it comes to be as warm as, until the
    /// thermostat cuts out or the time is up. Returns the time taken, s.
    pub(super) fn direct_step(&mut self, left_s: f64, around: &mut impl Surroundings) -> f64 {
        let Some(d) = self.direct() else { return left_s };
        let most_s = if left_s < self.pace.direct_s { left_s } else { self.pace.direct_s };
        let mut gone_s = 0.0;
        loop {
            let pool = self.layers.pool(d.place.from);
            let seconds_per_k = Layers::capacity_j_per_k(pool.m3) / d.heat_w;
            let rest_s = most_s - gone_s;
            let mut step = rest_s;
            let mut grows = false;
            if let Some(next_c) = pool.next_c {
                let joins = (next_c - pool.t_c) * seconds_per_k;
                if joins < step {
                    (step, grows) = (joins, true);
                }
            }
            if d.place.sensor <= pool.top {
                let cuts_out = (self.model.setpoint_c - pool.t_c) * seconds_per_k;
                if cuts_out < step {
                    (step, grows) = (cuts_out, false);
                }
            }
            if step < SHORTEST_S {
                step = if rest_s < SHORTEST_S { rest_s } else { SHORTEST_S };
            }
            self.layers.warm(&pool, d.heat_w * step);
            self.layers.settle_above(pool.top);
            gone_s += step;
            if !grows || gone_s >= most_s {
                break;
            }
        }
        self.totals.heat_in_j += d.heat_w * gone_s;
        self.totals.electricity_j += d.electricity_w * gone_s;
        self.totals.fuel_j += d.fuel_w * gone_s;
        if d.fuel_w == 0.0 {
            self.totals.elements_j += d.electricity_w * gone_s;
        }
        if let Source::HeatPump { .. } = self.model.source {
            let air_c = around.breathed_c();
            if self.model.pump().is_some_and(|p| air_c < p.coldest_air_c || air_c > p.warmest_air_c) {
                self.totals.locked_out_s += gone_s;
            }
        }
        self.lose(gone_s, around);
        gone_s
    }

    /// One step of the heat pump. The condenser has one temperature and gives heat to each layer in
    /// proportion to volume and temperature difference: under constant heat the mean of the layers it
    /// reaches rises in a straight line and their differences decay exponentially, both in closed
    /// form. The heat is that of the step's middle (second order).
    pub(super) fn pump_step(&mut self, left_s: f64, around: &mut impl Surroundings) -> f64 {
        let Source::HeatPump { pump, .. } = &self.model.source else { return left_s };
        let sensor_layer = self.places.own.sensor;
        let step = self.pump_step_length(left_s, sensor_layer);

        let per_m3 = pump.condenser_w_per_k / (pump.condenser_top * self.model.volume_m3);
        let start = self.layers.reach(self.places.zone, self.running.heat_w / per_m3);
        let rise = self.running.heat_w * 0.5 * step / (RHO_C * start.m3);
        let condensing_c = start.condensing_c + rise;
        let run = if let Some(table) = self.table {
            table.run(around.breathed_c(), around.breathed_w(), condensing_c)
        } else {
            let inlet = *around.inlet();
            let coil = Coil::new(inlet.dry_air_kg_per_s(pump.air_m3_per_s), pump.bypass_factor);
            let Ok(coil) = coil else { return left_s };
            pump.run(&inlet, &coil, condensing_c, self.running.evaporating_c)
        };

        let heat = run.heat_w * step;
        let closer = decay_factor(per_m3 / RHO_C * step);
        let before = self.layers.temperature_c(sensor_layer);
        self.layers.relax(&start, heat, closer);
        self.layers.settle_above(start.below - 1);
        self.sensor_rate = (self.layers.temperature_c(sensor_layer) - before) / step;

        self.totals.heat_in_j += heat;
        self.totals.pump_heat_j += heat;
        let electricity = (run.compressor_w + pump.fan_w) * step;
        self.totals.electricity_j += electricity;
        self.totals.pump_electricity_j += electricity;
        self.totals.condensate_kg += run.condensate_kg_per_s * step;
        self.totals.pump_s += step;
        self.running = run;
        // The fan's work warms the air that it moves.
        let heat_j = (pump.fan_w - run.sensible_w) * step;
        around.breathe(heat_j, run.condensate_kg_per_s * step, pump.air_m3_per_s * step);
        self.lose(step, around);
        step
    }

    /// How long the next step of the heat pump may be: not much past the foreseen cut-out.
    fn pump_step_length(&self, left_s: f64, sensor_layer: usize) -> f64 {
        let mut step = if left_s < self.pace.pump_s { left_s } else { self.pace.pump_s };
        let to_go = self.model.setpoint_c - CUT_OUT_SLACK_K - self.layers.temperature_c(sensor_layer);
        if self.sensor_rate > 0.0 && to_go < self.sensor_rate * step {
            let cuts_out = to_go / self.sensor_rate + 1.0;
            if cuts_out < step {
                step = cuts_out;
            }
        }
        if step < SHORTEST_S && left_s > SHORTEST_S { SHORTEST_S } else { step }
    }
}
