//! A heater's way through the strokes: its thermostats and what heats.

use super::machine::Map;
use super::room::Air;
use super::slugs::{Slugs, decay, small_decay};
use crate::core::draws::daily_use::USE_C;
use crate::core::heater::{Element, Elements, Model, Source};
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Longest strokes, s: idle, of a heat pump, of an element or burner.
const IDLE_S: f64 = 14_400.0;
const PUMP_S: f64 = 3_600.0;
const DIRECT_S: f64 = 3_600.0;
/// Shortest stroke, s.
const SHORTEST_S: f64 = 5.0;
/// Shortest stroke of a heat pump, s; it overshoots its setpoint by half of what that warms, and falls short by the
/// other half.
const PUMP_SHORTEST_S: f64 = 240.0;
const PUMP_SLACK_K: f64 = 0.25;
/// A thermostat cuts out this close below its setpoint, K.
const SLACK_K: f64 = 0.05;

/// What heats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum On {
    Nothing,
    Upper,
    Lower,
    /// The heat pump or the burner.
    Own,
}

/// What has been used and given, J and kg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Sums {
    pub electricity_j: f64,
    pub elements_j: f64,
    pub fuel_j: f64,
    pub delivered_j: f64,
    pub standby_j: f64,
    pub heat_in_j: f64,
    pub condensate_kg: f64,
    pub locked_s: f64,
}

/// A source whose heat enters at one height, and its sensor, as volumes below.
#[derive(Clone, Copy, Debug, Default)]
struct Direct {
    from_m3: f64,
    sensor_m3: f64,
    heat_w: f64,
    electricity_w: f64,
    fuel_w: f64,
    is_element: bool,
}

/// A heat pump's.
#[derive(Clone, Copy, Debug)]
struct Pump<'a> {
    map: &'a Map,
    sensor_m3: f64,
    zone_m3: f64,
    w_per_k_m3: f64,
    fan_w: f64,
    air_m3_per_s: f64,
    coldest_c: f64,
    warmest_c: f64,
}

/// A heater in its room.
#[derive(Clone, Debug)]
pub(super) struct Engine<'a> {
    pub slugs: Slugs,
    pub sums: Sums,
    pub air: Air<'a>,
    on: On,
    /// Of the room, °C.
    room_c: f64,
    pump: Option<Pump<'a>>,
    upper: Option<Direct>,
    lower: Option<Direct>,
    own: Option<Direct>,
    /// Sensors of what heats from below and of the upper element, as volumes below.
    low_m3: f64,
    high_m3: f64,
    /// Heat of the pump's last stroke, W.
    last_w: f64,
    set_c: f64,
    call_c: f64,
    upper_call_c: f64,
    per_second: f64,
    idle_w: f64,
}

impl<'a> Engine<'a> {
    pub fn new(model: &Model, map: Option<&'a Map>, air: Air<'a>) -> Engine<'a> {
        let volume = model.volume_m3;
        let slugs = Slugs::new(volume, model.inlet_stir, model.setpoint_c);
        let foot = slugs.foot_m3;
        let element = |e: &Element| Direct {
            from_m3: e.height * volume,
            // No lower than the water that its own element heats.
            sensor_m3: if e.height * volume > 0.5 * foot && e.sensor * volume < foot {
                1.001 * foot
            } else {
                e.sensor * volume
            },
            heat_w: e.power_w,
            electricity_w: e.power_w,
            fuel_w: 0.0,
            is_element: true,
        };
        let both = |e: &Elements| (Some(element(&e.upper)), Some(element(&e.lower)));
        let (mut pump, mut upper, mut lower, mut own) = (None, None, None, None);
        let mut drop_k = model.deadband_k;
        match (&model.source, map) {
            (Source::Elements(e), _) => (upper, lower) = both(e),
            (Source::Burner(b), _) => {
                own = Some(Direct {
                    from_m3: 0.0,
                    sensor_m3: b.sensor * volume,
                    heat_w: b.input_w * b.recovery,
                    electricity_w: b.auxiliary_w,
                    fuel_w: b.input_w,
                    is_element: false,
                });
            }
            (Source::HeatPump { pump: p, sensor, backup, backup_drop_k }, Some(map)) => {
                if let Some(e) = backup {
                    (upper, lower) = both(e);
                }
                drop_k = *backup_drop_k;
                pump = Some(Pump {
                    map,
                    sensor_m3: sensor * volume,
                    zone_m3: p.condenser_top * volume,
                    w_per_k_m3: p.condenser_w_per_k / (p.condenser_top * volume),
                    fan_w: p.fan_w,
                    air_m3_per_s: p.air_m3_per_s,
                    coldest_c: p.coldest_air_c,
                    warmest_c: p.warmest_air_c,
                });
            }
            (Source::HeatPump { .. }, None) => {}
        }
        let low_m3 = match (&pump, &lower, &own) {
            (Some(p), ..) => p.sensor_m3,
            (None, Some(d), _) | (None, None, Some(d)) => d.sensor_m3,
            (None, None, None) => 0.0,
        };
        Engine {
            slugs,
            sums: Sums::default(),
            air,
            on: On::Nothing,
            room_c: 0.0,
            low_m3,
            // At least as high, or the search for both would stop short.
            high_m3: upper.map_or(low_m3, |d: Direct| d.sensor_m3),
            pump,
            upper,
            lower,
            own,
            last_w: 1_000.0,
            set_c: model.setpoint_c,
            call_c: model.setpoint_c - model.deadband_k,
            upper_call_c: model.setpoint_c - drop_k,
            per_second: model.standby_w_per_k / (RHO_C * volume),
            idle_w: model.idle_w,
        }
    }

    /// Draws mixed and hot water, in a time.
    #[inline(always)]
    pub fn draw(&mut self, mixed_m3: f64, hot_m3: f64, cold_c: f64) {
        let mut mixed = mixed_m3;
        let mut hot = hot_m3;
        // A litre's thousandth is rounding.
        while mixed + hot > 1e-6 {
            let out_c = self.slugs.outlet_c();
            let share = if out_c <= USE_C {
                1.0
            } else if cold_c >= USE_C {
                0.0
            } else {
                (USE_C - cold_c) / (out_c - cold_c)
            };
            let wanted = mixed * share + hot;
            if wanted <= 0.0 {
                return;
            }
            let top = self.slugs.top_m3();
            let drawn = if wanted < top { wanted } else { top };
            self.slugs.draw(drawn, cold_c);
            self.sums.delivered_j += RHO_C * drawn * (out_c - cold_c);
            let left = 1.0 - drawn / wanted;
            (mixed, hot) = (mixed * left, hot * left);
        }
    }

    /// Lets a time pass, that begins at a time of the day.
    #[inline(always)]
    pub fn advance(&mut self, from_s: f64, dt_s: f64) {
        let (mut left, mut at_s) = (dt_s, from_s);
        while left > 1.0 {
            self.room_c = self.air.temperature_c((at_s * (1.0 / 3_600.0)) as i32 as usize);
            let (low, high) = self.slugs.at_both(self.low_m3, self.high_m3);
            let (low_c, high_c) = (self.slugs.t_c(low), self.slugs.t_c(high));
            self.switch(low_c, high_c);
            let source = match self.on {
                On::Nothing => None,
                On::Upper => self.upper.as_ref(),
                On::Lower => self.lower.as_ref(),
                On::Own => self.own.as_ref(),
            };
            let step = match (self.on, source) {
                (_, Some(d)) => {
                    let d = *d;
                    self.direct(&d, left)
                }
                (On::Own, None) => self.pump(left, low, low_c),
                _ => self.idle(left, low_c),
            };
            left -= step;
            at_s += step;
        }
    }

    /// Whether a thermostat wants heat at a temperature.
    #[inline(always)]
    fn wants(&self, source: On, t_c: f64, call_c: f64, slack_k: f64) -> bool {
        t_c < if self.on == source { self.set_c - slack_k } else { call_c }
    }

    #[inline(always)]
    fn switch(&mut self, low_c: f64, high_c: f64) {
        self.on = match (&self.pump, &self.lower) {
            (Some(p), lower) => {
                let air_c = self.air.breathed_c(self.room_c);
                let breathes = air_c >= p.coldest_c && air_c <= p.warmest_c;
                match lower {
                    Some(l) if !breathes => self.elements(self.slugs.t_c(self.slugs.at(l.sensor_m3)), high_c),
                    Some(_) if self.wants(On::Upper, high_c, self.upper_call_c, SLACK_K) => On::Upper,
                    _ if breathes && self.wants(On::Own, low_c, self.call_c, PUMP_SLACK_K) => On::Own,
                    _ => On::Nothing,
                }
            }
            (None, Some(_)) => self.elements(low_c, high_c),
            (None, None) if self.wants(On::Own, low_c, self.call_c, SLACK_K) => On::Own,
            _ => On::Nothing,
        };
    }

    #[inline(always)]
    fn elements(&self, low_c: f64, high_c: f64) -> On {
        if self.on == On::Nothing && low_c >= self.call_c {
            On::Nothing
        } else if self.wants(On::Upper, high_c, self.call_c, SLACK_K) {
            On::Upper
        } else if self.wants(On::Lower, low_c, self.call_c, SLACK_K) {
            On::Lower
        } else {
            On::Nothing
        }
    }

    /// Loses heat for a time; gives back what the room gets of it, J.
    #[inline(always)]
    fn lose(&mut self, dt_s: f64) -> f64 {
        let lost = self.slugs.cool(self.room_c, small_decay(self.per_second * dt_s));
        self.sums.standby_j += lost;
        let idle_j = self.idle_w * dt_s;
        self.sums.electricity_j += idle_j;
        lost + idle_j
    }

    #[inline(always)]
    fn idle(&mut self, left_s: f64, low_c: f64) -> f64 {
        let mut step = if left_s < IDLE_S { left_s } else { IDLE_S };
        let falls = self.per_second * (low_c - self.room_c);
        let over = low_c - self.call_c;
        if falls * step > over {
            let at = over / falls + 1.0;
            let at = if at > SHORTEST_S { at } else { SHORTEST_S };
            step = if at < step { at } else { step };
        }
        if let Some(p) = &self.pump {
            let air_c = self.air.breathed_c(self.room_c);
            if air_c < p.coldest_c || air_c > p.warmest_c {
                self.sums.locked_s += step;
            }
        }
        let given = self.lose(step);
        self.air.pass(step, given);
        step
    }

    /// Warms from a height up, the coldest first: what lies there fills like a vessel, until the sensor is warm or the
    /// time is up.
    #[inline(always)]
    fn direct(&mut self, d: &Direct, left_s: f64) -> f64 {
        let s = &mut self.slugs;
        let from = if d.from_m3 > 0.0 { s.cut(d.from_m3) } else { 0 };
        let sensor = s.at(d.sensor_m3);
        let most_s = if left_s < DIRECT_S { left_s } else { DIRECT_S };
        let (mut top, mut m3, mut t_c, mut gone_s) = (from, s.m3(from), s.t_c(from), 0.0);
        loop {
            let seconds_per_k = RHO_C * m3 / d.heat_w;
            let next_c = if top + 1 < s.n { s.t_c(top + 1) } else { f64::MAX };
            let cut_c = if sensor <= top { self.set_c } else { f64::MAX };
            let to_c = if next_c < cut_c { next_c } else { cut_c };
            let takes = (to_c - t_c) * seconds_per_k;
            if takes > most_s - gone_s {
                t_c += (most_s - gone_s) / seconds_per_k;
                gone_s = most_s;
                break;
            }
            if takes > 0.0 {
                t_c = to_c;
                gone_s += takes;
            }
            if next_c > cut_c || top + 1 >= s.n {
                break;
            }
            let more = s.m3(top + 1);
            t_c = (m3 * t_c + more * next_c) / (m3 + more);
            m3 += more;
            top += 1;
        }
        // What is due already takes a moment all the same.
        if gone_s < SHORTEST_S {
            let step = if left_s < SHORTEST_S { left_s } else { SHORTEST_S };
            t_c += (step - gone_s) * d.heat_w / (RHO_C * m3);
            gone_s = step;
        }
        s.level(from, top, t_c);
        s.settle();
        self.sums.heat_in_j += d.heat_w * gone_s;
        self.sums.electricity_j += d.electricity_w * gone_s;
        self.sums.fuel_j += d.fuel_w * gone_s;
        if d.is_element {
            self.sums.elements_j += d.electricity_w * gone_s;
        }
        let given = self.lose(gone_s);
        self.air.pass(gone_s, given);
        gone_s
    }

    /// As [`crate::core::heater::Sim`]'s step of a heat pump, on slugs.
    #[inline(always)]
    fn pump(&mut self, left_s: f64, sensor: usize, sensor_c: f64) -> f64 {
        let Some(p) = &self.pump else { return left_s };
        let s = &mut self.slugs;
        let excess = self.last_w / p.w_per_k_m3;
        let (mut m3, mut sum, mut below, mut reached) = (0.0, 0.0, 0.0, 0);
        while reached < s.n {
            let room = p.zone_m3 - below;
            let t_c = s.t_c(reached);
            if room <= 0.0 || t_c * m3 >= excess + sum {
                break;
            }
            let own = s.m3(reached);
            let within = if own < room { own } else { room };
            m3 += within;
            sum += within * t_c;
            below += own;
            reached += 1;
        }
        let per_m3 = 1.0 / m3;
        let mean_c = sum * per_m3;
        let mut step = if left_s < PUMP_S { left_s } else { PUMP_S };
        let rate = self.last_w * per_m3 * (1.0 / RHO_C);
        if sensor < reached {
            let cuts_out = (self.set_c - sensor_c) / rate;
            step = if cuts_out < step { cuts_out } else { step };
        }
        if step < PUMP_SHORTEST_S {
            step = if left_s < PUMP_SHORTEST_S { left_s } else { PUMP_SHORTEST_S };
        }
        let (air_c, w) = (self.air.breathed_c(self.room_c), self.air.breathed_w());
        let gives = p.map.in_air(air_c, w).gives((excess + sum) * per_m3 + 0.5 * rate * step);
        let heat_j = gives.heat_w * step;
        let closer = decay(p.w_per_k_m3 * (1.0 / RHO_C) * step);
        let base = mean_c * (1.0 - closer) + heat_j * (1.0 / RHO_C) * per_m3;
        s.relax(reached, p.zone_m3, closer, base);
        self.last_w = gives.heat_w;
        self.sums.heat_in_j += heat_j;
        self.sums.electricity_j += (gives.compressor_w + p.fan_w) * step;
        let water_kg = gives.condensate_kg_per_s * step;
        self.sums.condensate_kg += water_kg;
        let breathed_j = (p.fan_w - gives.sensible_w) * step;
        let air_m3 = p.air_m3_per_s * step;
        let given = self.lose(step);
        self.air.pass_breathed(step, given, breathed_j, water_kg, air_m3);
        step
    }
}
