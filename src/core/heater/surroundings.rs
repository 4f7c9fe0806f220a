//! What the heater stands in: the air it breathes and loses heat to, and that it changes.

use crate::core::heat_pump::coil::CoilInlet;

/// The air around a heater.
pub trait Surroundings {
    /// Temperature, °C.
    fn temperature_c(&self) -> f64;

    /// State of the air for the coil; worked out when asked for.
    fn inlet(&mut self) -> &CoilInlet;

    /// Temperature of the air that a heat pump breathes, °C: elsewhere's, where ducts bring it.
    fn breathed_c(&self) -> f64 {
        self.temperature_c()
    }

    /// Its moisture, kg/kg.
    fn breathed_w(&self) -> f64;

    /// Tells what a heat pump's coil and fan did to the air they moved: heat given to it (negative: taken), J, water
    /// taken from it, kg, in a volume of it, m³. Followed by [`Surroundings::pass`] for the time.
    fn breathe(&mut self, heat_j: f64, water_kg: f64, air_m3: f64);

    /// Tells what the heater did to the air around it in a time: heat given to it (negative: taken), J.
    /// The surroundings move on by that time.
    fn pass(&mut self, dt_s: f64, heat_j: f64);
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

    fn breathed_w(&self) -> f64 {
        self.inlet.w()
    }

    fn breathe(&mut self, _heat_j: f64, _water_kg: f64, _air_m3: f64) {}

    fn pass(&mut self, _dt_s: f64, _heat_j: f64) {}
}
