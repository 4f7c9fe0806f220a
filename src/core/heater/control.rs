//! Thermostats: what heats now, and when the next one calls.

use super::model::{Element, Model, Source};
use super::sim::{CUT_OUT_SLACK_K, On, Sim};
use super::surroundings::Surroundings;
use crate::core::tank::Layers;

/// How often a heat pump looks at its air where that may keep it from running, s, and how near to that, K; common
/// practice, no source.
const LOOK_S: f64 = 600.0;
const NEAR_K: f64 = 4.0;

/// The layers at the heights of elements, condenser and sensors. They stay the same until a draw moves the
/// layers on.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Places {
    pub upper: Place,
    pub lower: Place,
    /// The heat pump's or the burner's: heat from the bottom.
    pub own: Place,
    /// First layer above the condenser.
    pub zone: usize,
}

/// Where a source warms from, and where its sensor reads.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Place {
    /// Lowest layer warmed.
    pub from: usize,
    /// Layer of the sensor: no lower than the water its own source heats, or it would never cut out.
    pub sensor: usize,
}

impl Place {
    #[inline(always)]
    fn of(layers: &Layers, height: f64, sensor: f64) -> Self {
        let (from, own) = (layers.heated_from(height), layers.layer_at(sensor));
        Self { from, sensor: if own < from { from } else { own } }
    }

    #[inline(always)]
    fn of_element(layers: &Layers, e: &Element) -> Self {
        Self::of(layers, e.height, e.sensor)
    }
}

impl Places {
    pub(super) fn of(model: &Model, layers: &Layers) -> Self {
        let mut places = Self::default();
        match &model.source {
            Source::Elements(e) => {
                places.upper = Place::of_element(layers, &e.upper);
                places.lower = Place::of_element(layers, &e.lower);
            }
            Source::Burner(b) => places.own = Place::of(layers, 0.0, b.sensor),
            Source::HeatPump { pump, sensor, backup, .. } => {
                // The lower element only serves where air locks the pump out: looked up by then.
                if let Some(e) = backup {
                    places.upper = Place::of_element(layers, &e.upper);
                }
                places.own = Place::of(layers, 0.0, *sensor);
                let zone = layers.heated_from(pump.condenser_top);
                places.zone = if zone < 1 { 1 } else { zone };
            }
        }
        places
    }
}

impl Sim<'_> {
    /// How much of a time may pass before a heat pump, or what heats in its place, has to look at its air again, s.
    #[inline(always)]
    pub(super) fn until_it_looks(&self, left_s: f64, air_c: f64) -> f64 {
        match &self.model.source {
            Source::HeatPump { pump, .. }
                if left_s > LOOK_S
                    && self.on != On::Nothing
                    && (air_c < pump.coldest_air_c + NEAR_K || air_c > pump.warmest_air_c - NEAR_K) =>
            {
                LOOK_S
            }
            _ => left_s,
        }
    }

    /// Sets what heats by the thermostats. One source at a time; the upper element first.
    pub(super) fn switch(&mut self, air_c: f64) {
        let set = self.model.setpoint_c;
        let call = set - self.model.deadband_k;
        self.on = match &self.model.source {
            Source::Elements(_) => self.elements_wanted(call),
            Source::Burner(_) if self.wanted(On::Burner, self.places.own, call) => On::Burner,
            Source::Burner(_) => On::Nothing,
            Source::HeatPump { pump, backup, backup_drop_k, .. } => {
                let breathes = air_c >= pump.coldest_air_c && air_c <= pump.warmest_air_c;
                match backup {
                    Some(e) if !breathes => {
                        self.places.lower = Place::of_element(&self.layers, &e.lower);
                        self.elements_wanted(call)
                    }
                    Some(_) if self.wanted(On::Upper, self.places.upper, set - backup_drop_k) => On::Upper,
                    _ if breathes && self.wanted(On::Pump, self.places.own, call) => On::Pump,
                    _ => On::Nothing,
                }
            }
        };
    }

    fn elements_wanted(&self, call_c: f64) -> On {
        // Water is never colder above: while the lower sensor does not call, the upper does not.
        if self.on == On::Nothing && !self.wanted(On::Lower, self.places.lower, call_c) {
            On::Nothing
        } else if self.wanted(On::Upper, self.places.upper, call_c) {
            On::Upper
        } else if self.wanted(On::Lower, self.places.lower, call_c) {
            On::Lower
        } else {
            On::Nothing
        }
    }

    /// Whether a thermostat wants heat: below the call, or on and not yet at the setpoint.
    #[inline(always)]
    fn wanted(&self, source: On, place: Place, call_c: f64) -> bool {
        let t = self.layers.temperature_c(place.sensor);
        if self.on == source { t < self.model.setpoint_c - CUT_OUT_SLACK_K } else { t < call_c }
    }

    /// Nothing heats: closed-form decay until the time is up or a thermostat calls.
    pub(super) fn idle_step(&mut self, left_s: f64, around: &mut impl Surroundings) -> f64 {
        let room_c = around.temperature_c();
        let mut step = if left_s < self.pace.idle_s { left_s } else { self.pace.idle_s };
        let rate = self.per_second;
        let call = self.model.setpoint_c - self.model.deadband_k;
        let mut limit = |place: Place| {
            let t_c = self.layers.temperature_c(place.sensor);
            if t_c < call {
                // It calls already, in vain: the air keeps a heat pump without elements from running.
                step = if step < LOOK_S { step } else { LOOK_S };
                return;
            }
            // The straight line lies below the exponential: never late, and at most a little early.
            let falls = rate * (t_c - room_c);
            if falls * step > t_c - call {
                let at = (t_c - call) / falls;
                // A second keeps a call that is due from being missed by rounding.
                let at = if at > 1.0 { at } else { 1.0 };
                step = if at < step { at } else { step };
            }
        };
        match &self.model.source {
            // The upper sensor is never colder, and both call at the same temperature.
            Source::Elements(_) => limit(self.places.lower),
            Source::Burner(_) => limit(self.places.own),
            Source::HeatPump { pump, .. } => {
                limit(self.places.own);
                if room_c < pump.coldest_air_c || room_c > pump.warmest_air_c {
                    self.totals.locked_out_s += step;
                }
            }
        }
        self.lose(step, around);
        step
    }
}
