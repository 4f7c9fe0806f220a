//! What the heater stands in: the air it breathes and loses heat to, and that it changes.

use crate::core::heat_pump::coil::CoilInlet;

/// The air around a heater.
pub trait Surroundings {
    /// Temperature, °C.
    fn temperature_c(&self) -> f64;

    /// State of the air for the coil; worked out when asked for.
    fn inlet(&mut self) -> &CoilInlet;

    /// Tells what the heater did to the air in a time: heat given to it (negative: taken), J, and
    /// water taken from it, kg. The surroundings move on by that time.
    fn pass(&mut self, dt_s: f64, heat_j: f64, water_kg: f64);
}

/// A test chamber: air that stays as it is.
#[derive(Clone, Debug)]
pub struct Constant {
    t_c: f64,
    inlet: CoilInlet,
}

impl Constant {
    /// Air of `t_c` °C, `w` kg/kg and `pressure_pa` for ever.
    pub fn new(t_c: f64, w: f64, pressure_pa: f64) -> Self {
        Self { t_c, inlet: CoilInlet::new(t_c, w, pressure_pa) }
    }
}

impl Surroundings for Constant {
    fn temperature_c(&self) -> f64 {
        self.t_c
    }

    fn inlet(&mut self) -> &CoilInlet {
        &self.inlet
    }

    fn pass(&mut self, _dt_s: f64, _heat_j: f64, _water_kg: f64) {}
}
