//! A heater's state, its thermostats, and its way through time.

use super::control::Places;
use super::model::{Model, Source};
use super::surroundings::Surroundings;
use super::totals::Totals;
use crate::core::heat_pump::machine::Running;
use crate::core::numeric::decay_factor;
use crate::core::tank::Layers;
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Thermostats cut out this close below the setpoint, K: the step that gets there loses a little heat
/// on the way, and chasing the last hundredths would cost steps.
pub(super) const CUT_OUT_SLACK_K: f64 = 0.02;
/// Conduction is done in batches of this time, s.
const CONDUCTION_S: f64 = 1_800.0;
/// Time of draws that may pass before the heater goes through it, s: a call is late by so much at most. A
/// heat pump's backup is the more sensitive to that.
const OWED_S: f64 = 180.0;
const OWED_WITH_PUMP_S: f64 = 30.0;

/// What heats at the moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum On {
    Nothing,
    Upper,
    Lower,
    Pump,
    Burner,
}

/// A heater with its state.
#[derive(Clone)]
pub struct Sim<'m> {
    pub(super) model: &'m Model,
    pub(super) layers: Layers,
    pub(super) on: On,
    pub(super) totals: Totals,
    /// How the heat pump last ran: the start of the next search.
    pub(super) running: Running,
    /// Rate of the heat pump's sensor, K/s, to foresee the cut-out.
    pub(super) sensor_rate: f64,
    /// Longest heating step of the heat pump, s.
    pub(super) pump_step_s: f64,
    conduction_s: f64,
    /// Time of short draws that the heater has still to go through, s, and the most it may owe.
    owed_s: f64,
    owed_most_s: f64,
    /// Which layers matter to elements and thermostats, until the next draw moves them.
    pub(super) places: Places,
    /// A draw has moved the layers since the places were looked up.
    moved: bool,
}

impl<'m> Sim<'m> {
    /// A heater full of water at its setpoint, everything off.
    pub fn new(model: &'m Model) -> Self {
        let layers =
            Layers::uniform(model.slots, model.volume_m3, model.height_m, model.k_area(), model.setpoint_c);
        Self {
            model,
            places: Places::of(model, &layers),
            moved: false,
            layers,
            on: On::Nothing,
            totals: Totals::default(),
            running: Running { heat_w: 1_000.0, evaporating_c: 5.0, ..Running::default() },
            sensor_rate: 0.0,
            pump_step_s: 600.0,
            conduction_s: 0.0,
            owed_s: 0.0,
            owed_most_s: if model.pump().is_some() { OWED_WITH_PUMP_S } else { OWED_S },
        }
    }

    /// The same heater in finer steps: another longest heating step of the heat pump, s, and every draw gone
    /// through as it comes. For the picture of a morning, and the reference that the default is checked
    /// against.
    #[must_use]
    pub fn with_pump_step(mut self, step_s: f64) -> Self {
        self.pump_step_s = step_s;
        self.owed_most_s = 0.0;
        self
    }

    /// Goes on with other figures of the same heater: another setpoint, say. Tank and layers stay.
    pub fn go_on_as(&mut self, model: &'m Model) {
        self.model = model;
        // Sensors may sit elsewhere.
        self.moved = true;
    }

    /// The layers.
    pub fn layers(&self) -> &Layers {
        &self.layers
    }

    /// Totals since the start.
    pub fn totals(&self) -> &Totals {
        &self.totals
    }

    /// The heater's figures.
    pub fn model(&self) -> &'m Model {
        self.model
    }

    /// Temperature at the outlet, °C.
    pub fn outlet_c(&self) -> f64 {
        self.layers.outlet_c()
    }

    /// Power drawn at the moment (electricity and fuel), W.
    pub fn power_w(&self) -> f64 {
        let own = match (&self.model.source, self.on) {
            (Source::Elements(e), On::Upper) => e.upper.power_w,
            (Source::Elements(e), On::Lower) => e.lower.power_w,
            (Source::HeatPump { backup: Some(e), .. }, On::Upper) => e.upper.power_w,
            (Source::HeatPump { backup: Some(e), .. }, On::Lower) => e.lower.power_w,
            (Source::HeatPump { pump, .. }, On::Pump) => self.running.compressor_w + pump.fan_w,
            (Source::Burner(b), On::Burner) => b.input_w + b.auxiliary_w,
            _ => 0.0,
        };
        own + self.model.idle_w
    }

    /// True when nothing heats.
    pub fn is_idle(&self) -> bool {
        self.on == On::Nothing
    }

    /// True when the top of the tank is not being heated: the moment the rating test's next draw waits
    /// for.
    pub fn top_is_satisfied(&self) -> bool {
        match self.model.source {
            Source::Elements(_) | Source::HeatPump { backup: Some(_), .. } => self.on != On::Upper,
            _ => self.on == On::Nothing,
        }
    }

    /// Lets a time pass without a draw.
    pub fn advance(&mut self, dt_s: f64, around: &mut impl Surroundings) {
        let mut left = dt_s + self.owed_s;
        self.owed_s = 0.0;
        if self.moved {
            self.places = Places::of(self.model, &self.layers);
            self.moved = false;
        }
        while left > 1e-6 {
            self.switch(around.breathed_c());
            let step = match self.on {
                On::Nothing => self.idle_step(left, around),
                On::Pump => self.pump_step(left, around),
                On::Upper | On::Lower | On::Burner => self.direct_step(left, around),
            };
            left -= step;
            self.conduction_s += step;
            if self.conduction_s >= CONDUCTION_S {
                self.layers.conduct(self.conduction_s);
                self.conduction_s = 0.0;
            }
        }
    }

    /// Draws up to `volume_m3` at one outlet temperature while `seconds_per_m3` pass for each m³.
    /// Returns the volume drawn, m³, and its temperature, °C; the caller goes on until done.
    pub fn draw_some(
        &mut self,
        volume_m3: f64,
        seconds_per_m3: f64,
        cold_c: f64,
        around: &mut impl Surroundings,
    ) -> (f64, f64) {
        let top = self.layers.top_m3();
        let v = if volume_m3 < top { volume_m3 } else { top };
        let out_c = self.layers.outlet_c();
        self.layers.draw(v, cold_c);
        self.layers.stir_bottom(self.model.inlet_stir * self.model.volume_m3);
        if cold_c > out_c || cold_c > self.layers.temperature_c(1) {
            // Water from the main that is warmer than a cold room's tank rises.
            self.layers.settle();
        }
        self.totals.drawn_m3 += v;
        self.totals.delivered_j += RHO_C * v * (out_c - cold_c);
        self.moved = true;
        // Most draws last half a minute: while nothing heats, or only the slow heat pump, the tank goes through
        // several of them at once.
        self.owed_s += v * seconds_per_m3;
        let slow = matches!(self.on, On::Nothing | On::Pump);
        if !slow || self.owed_s > self.owed_most_s {
            self.advance(0.0, around);
        }
        (v, out_c)
    }

    /// Heat stored, J above 0 °C.
    pub fn stored_j(&self) -> f64 {
        self.layers.stored_j()
    }

    /// Share of its excess over the room that the tank loses in a second.
    pub(super) fn decay_rate(&self) -> f64 {
        self.model.standby_w_per_k / (RHO_C * self.model.volume_m3)
    }

    /// Standby loss and electronics for a time, told to the surroundings together with what else the
    /// heater did to the air (heat given to it, J; water taken, kg).
    #[inline(always)]
    pub(super) fn lose(&mut self, dt_s: f64, around: &mut impl Surroundings) {
        let factor = decay_factor(self.decay_rate() * dt_s);
        let lost = self.layers.decay(around.temperature_c(), factor);
        self.totals.standby_j += lost;
        self.totals.electricity_j += self.model.idle_w * dt_s;
        around.pass(dt_s, lost + self.model.idle_w * dt_s);
    }
}
