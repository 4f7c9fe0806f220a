//! A heater's state, its thermostats, and its way through time.

use super::control::Places;
use super::model::{Model, Source};
use super::pace::Pace;
use super::surroundings::Surroundings;
use super::totals::Totals;
use crate::core::heat_pump::machine::Running;
use crate::core::heat_pump::table::Table;
use crate::core::numeric::decay_factor;
use crate::core::tank::Layers;
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Thermostats cut out this close below the setpoint, K: the step that gets there loses a little heat
/// on the way, and chasing the last hundredths would cost steps.
pub(super) const CUT_OUT_SLACK_K: f64 = 0.02;

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
    /// Where the heat pump is read off, instead of worked out.
    pub(super) table: Option<&'m Table>,
    pub(super) pace: Pace,
    /// Share of its excess over the room that the tank loses in a second.
    pub(super) per_second: f64,
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
        Self::at_pace(model, Pace::ORDINARY, None)
    }

    /// The same at another pace; with a table, its heat pump is read off that.
    pub fn at_pace(model: &'m Model, pace: Pace, table: Option<&'m Table>) -> Self {
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
            table,
            pace,
            per_second: per_second(model),
            conduction_s: 0.0,
            owed_s: 0.0,
            owed_most_s: if model.pump().is_some() { pace.owed_with_pump_s } else { pace.owed_s },
        }
    }

    /// The same heater in finer steps: another longest heating step of the heat pump, s, and every draw gone
    /// through as it comes. For the picture of a morning, and the reference that the default is checked
    /// against.
    #[must_use]
    pub fn with_pump_step(mut self, step_s: f64) -> Self {
        self.pace.pump_s = step_s;
        self.pace.owed_heating_s = 0.0;
        self.owed_most_s = 0.0;
        self
    }

    /// Goes on with other figures of the same heater: another setpoint, say. Tank and layers stay.
    pub fn go_on_as(&mut self, model: &'m Model) {
        self.model = model;
        self.per_second = per_second(model);
        // Sensors may sit elsewhere.
        self.moved = true;
    }

    /// How finely it goes through time.
    pub fn pace(&self) -> &Pace {
        &self.pace
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
        let mut left = self.begin(dt_s);
        while left > 1e-6 {
            let air_c = around.breathed_c();
            self.switch(air_c);
            left -= self.step(left, air_c, around);
        }
    }

    /// Lets time pass until the top is satisfied ([`Self::top_is_satisfied`]), but no more than so much. Returns what passed, s.
    pub fn wait_for_top(&mut self, most_s: f64, around: &mut impl Surroundings) -> f64 {
        let all = self.begin(most_s);
        let mut left = all;
        while left > 1e-6 {
            let air_c = around.breathed_c();
            self.switch(air_c);
            if self.top_is_satisfied() {
                break;
            }
            left -= self.step(left, air_c, around);
        }
        all - left
    }

    /// Before time passes: what draws took of it counts, and has moved the layers.
    fn begin(&mut self, dt_s: f64) -> f64 {
        if self.moved {
            self.places = Places::of(self.model, &self.layers);
            self.moved = false;
        }
        let all_s = dt_s + self.owed_s;
        self.owed_s = 0.0;
        all_s
    }

    /// One step of what is on in air of a temperature, no longer than the time left. Returns its length, s.
    #[inline(always)]
    fn step(&mut self, left_s: f64, air_c: f64, around: &mut impl Surroundings) -> f64 {
        let most = self.until_it_looks(left_s, air_c);
        let step = match self.on {
            On::Nothing => self.idle_step(most, around),
            On::Pump => self.pump_step(most, around),
            On::Upper | On::Lower | On::Burner => self.direct_step(most, around),
        };
        self.conduction_s += step;
        if self.conduction_s >= self.pace.conduction_s {
            self.layers.conduct(self.conduction_s);
            self.conduction_s = 0.0;
        }
        step
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
        if self.owed_s > if slow { self.owed_most_s } else { self.pace.owed_heating_s } {
            self.advance(0.0, around);
        }
        (v, out_c)
    }

    /// Heat stored, J above 0 °C.
    pub fn stored_j(&self) -> f64 {
        self.layers.stored_j()
    }

    /// Standby loss and electronics for a time, told to the surroundings together with what else the
    /// heater did to the air (heat given to it, J; water taken, kg).
    #[inline(always)]
    pub(super) fn lose(&mut self, dt_s: f64, around: &mut impl Surroundings) {
        let factor = decay_factor(self.per_second * dt_s);
        let lost = self.layers.decay(around.temperature_c(), factor);
        self.totals.standby_j += lost;
        self.totals.electricity_j += self.model.idle_w * dt_s;
        around.pass(dt_s, lost + self.model.idle_w * dt_s);
    }
}

fn per_second(model: &Model) -> f64 {
    model.standby_w_per_k / (RHO_C * model.volume_m3)
}
