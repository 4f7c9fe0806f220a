//! A heater's state, its thermostats, and its way through time.

use super::model::{Elements, Model, Source};
use super::surroundings::Surroundings;
use super::totals::Totals;
use crate::core::heat_pump::machine::Running;
use crate::core::tank::Layers;
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Thermostats cut out this close below the setpoint, K: the step that gets there loses a little heat
/// on the way, and chasing the last hundredths would cost steps.
pub(super) const CUT_OUT_SLACK_K: f64 = 0.02;
/// Conduction is done in batches of this time, s.
const CONDUCTION_S: f64 = 1_800.0;
/// Longest idle step, s: conduction is only seen at a step's end, and what it does to the water at a sensor
/// decides when that calls. A night in one step cost 0.2 % of a week's heat.
const IDLE_S: f64 = 3_600.0;

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
}

impl<'m> Sim<'m> {
    /// A heater full of water at its setpoint, everything off.
    pub fn new(model: &'m Model) -> Self {
        Self {
            model,
            layers: Layers::uniform(
                model.slots,
                model.volume_m3,
                model.height_m,
                model.k_area(),
                model.setpoint_c,
            ),
            on: On::Nothing,
            totals: Totals::default(),
            running: Running { heat_w: 1_000.0, evaporating_c: 5.0, ..Running::default() },
            sensor_rate: 0.0,
            pump_step_s: 400.0,
            conduction_s: 0.0,
        }
    }

    /// The same heater with another longest heating step of the heat pump, s: shorter for the
    /// reference runs that the default is checked against.
    #[must_use]
    pub fn with_pump_step(mut self, step_s: f64) -> Self {
        self.pump_step_s = step_s;
        self
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
        let mut left = dt_s;
        while left > 1e-6 {
            self.switch(around.temperature_c());
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

    /// Draws up to `volume_m3` at one outlet temperature while `dt_per_m3` seconds pass for each m³.
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
        self.totals.drawn_m3 += v;
        self.totals.delivered_j += RHO_C * v * (out_c - cold_c);
        self.advance(v * seconds_per_m3, around);
        (v, out_c)
    }

    /// Heat stored, J above 0 °C.
    pub fn stored_j(&self) -> f64 {
        self.layers.stored_j()
    }

    /// Sets what heats by the thermostats. One source at a time; the upper element first.
    fn switch(&mut self, air_c: f64) {
        let set = self.model.setpoint_c;
        let call = set - self.model.deadband_k;
        self.on = match &self.model.source {
            Source::Elements(e) => self.elements_wanted(e, call),
            Source::Burner(b) => {
                if self.wanted(self.on == On::Burner, b.sensor, 0.0, call) {
                    On::Burner
                } else {
                    On::Nothing
                }
            }
            Source::HeatPump { pump, sensor, backup, backup_drop_k } => {
                let breathes = air_c >= pump.coldest_air_c && air_c <= pump.warmest_air_c;
                match backup {
                    Some(e) if !breathes => self.elements_wanted(e, call),
                    Some(e)
                        if self.wanted(
                            self.on == On::Upper,
                            e.upper.sensor,
                            e.upper.height,
                            set - backup_drop_k,
                        ) =>
                    {
                        On::Upper
                    }
                    _ if breathes && self.wanted(self.on == On::Pump, *sensor, 0.0, call) => On::Pump,
                    _ => On::Nothing,
                }
            }
        };
    }

    fn elements_wanted(&self, e: &Elements, call_c: f64) -> On {
        if self.wanted(self.on == On::Upper, e.upper.sensor, e.upper.height, call_c) {
            On::Upper
        } else if self.wanted(self.on == On::Lower, e.lower.sensor, e.lower.height, call_c) {
            On::Lower
        } else {
            On::Nothing
        }
    }

    /// Whether a thermostat wants heat: below the call, or on and not yet at the setpoint. The sensor
    /// reads no lower than the water its own source heats, or it would never cut out.
    fn wanted(&self, is_on: bool, sensor: f64, heated_from: f64, call_c: f64) -> bool {
        let t = self.layers.temperature_c(self.sensor_layer(sensor, heated_from));
        if is_on { t < self.model.setpoint_c - CUT_OUT_SLACK_K } else { t < call_c }
    }

    pub(super) fn sensor_layer(&self, sensor: f64, heated_from: f64) -> usize {
        let own = self.layers.layer_at(sensor);
        let heated = self.layers.heated_from(heated_from);
        if own < heated { heated } else { own }
    }

    /// Nothing heats: closed-form decay until the time is up or a thermostat calls.
    fn idle_step(&mut self, left_s: f64, around: &mut impl Surroundings) -> f64 {
        let room_c = around.temperature_c();
        let left_s = if left_s < IDLE_S { left_s } else { IDLE_S };
        let mut step = left_s;
        let rate = self.decay_rate();
        let call = self.model.setpoint_c - self.model.deadband_k;
        let mut limit = |t_c: f64, call_c: f64| {
            // The straight line lies below the exponential: never late, and at most a little early.
            let falls = rate * (t_c - room_c);
            if falls * step > t_c - call_c {
                let at = (t_c - call_c) / falls;
                // A second keeps a call that is due from being missed by rounding.
                step = if at > 1.0 { at } else { 1.0 };
            }
        };
        match &self.model.source {
            Source::Elements(e) => {
                limit(self.layers.temperature_c(self.sensor_layer(e.upper.sensor, e.upper.height)), call);
                limit(self.layers.temperature_c(self.sensor_layer(e.lower.sensor, e.lower.height)), call);
            }
            Source::Burner(b) => limit(self.layers.temperature_c(self.sensor_layer(b.sensor, 0.0)), call),
            Source::HeatPump { pump, sensor, .. } => {
                limit(self.layers.temperature_c(self.sensor_layer(*sensor, 0.0)), call);
                if room_c < pump.coldest_air_c || room_c > pump.warmest_air_c {
                    self.totals.locked_out_s += step;
                }
            }
        }
        let step = if step < left_s { step } else { left_s };
        self.lose(step, 0.0, 0.0, around);
        step
    }

    /// Share of its excess over the room that the tank loses in a second.
    fn decay_rate(&self) -> f64 {
        self.model.standby_w_per_k / (RHO_C * self.model.volume_m3)
    }

    /// Standby loss and electronics for a time, told to the surroundings together with what else the
    /// heater did to the air (heat given to it, W; water taken, kg/s).
    pub(super) fn lose(
        &mut self,
        dt_s: f64,
        heat_to_air_w: f64,
        water_kg_per_s: f64,
        around: &mut impl Surroundings,
    ) {
        let factor = decay_factor(self.decay_rate() * dt_s);
        let lost = self.layers.decay(around.temperature_c(), factor);
        self.totals.standby_j += lost;
        self.totals.electricity_j += self.model.idle_w * dt_s;
        if dt_s > 0.0 {
            around.pass(dt_s, heat_to_air_w + lost / dt_s + self.model.idle_w, water_kg_per_s);
        }
    }
}

/// exp(−x): a Taylor series where it is exact to rounding, the portable library elsewhere. x is a few
/// thousandths nearly always.
#[inline]
pub(super) fn decay_factor(x: f64) -> f64 {
    if x < 0.01 {
        1.0 - x * (1.0 - x / 2.0 * (1.0 - x / 3.0 * (1.0 - x / 4.0 * (1.0 - x / 5.0 * (1.0 - x / 6.0)))))
    } else {
        libm::exp(-x)
    }
}
