//! What a heater is, to the simulation: plain SI figures, calibrated to a label elsewhere.

use crate::core::heat_pump::machine::HeatPump;

/// Effective vertical conductivity of a tank, W/(m·K): water 0.63, and a steel wall of 2.5 mm around
/// 0.46 m that adds 4·t/D·50 = 1.1.
pub const CONDUCTIVITY_W_PER_M_K: f64 = 1.7;

/// An element or sensor height is a share of the tank's height from the bottom.
#[derive(Clone, Debug, PartialEq)]
pub struct Element {
    /// Power, W.
    pub power_w: f64,
    /// Height from which it warms the water upward.
    pub height: f64,
    /// Height of its thermostat.
    pub sensor: f64,
}

/// Upper and lower element with interlock: the upper has priority, never both.
#[derive(Clone, Debug, PartialEq)]
pub struct Elements {
    /// Upper element.
    pub upper: Element,
    /// Lower element.
    pub lower: Element,
}

/// A burner under the tank.
#[derive(Clone, Debug, PartialEq)]
pub struct Burner {
    /// Fuel burned, W (higher heating value).
    pub input_w: f64,
    /// Share of it that reaches the water while it burns.
    pub recovery: f64,
    /// Electricity while it burns (an oil burner's motor), W.
    pub auxiliary_w: f64,
    /// Height of its thermostat.
    pub sensor: f64,
}

/// What heats the water.
#[derive(Clone, Debug, PartialEq)]
pub enum Source {
    /// Two elements.
    Elements(Elements),
    /// A heat pump first, elements as backup: one source at a time.
    HeatPump {
        /// The machine.
        pump: HeatPump,
        /// Height of its thermostat.
        sensor: f64,
        /// Backup elements; the upper one serves high demand, both serve when air locks the pump out.
        /// `None`: the 120 V kind without large elements.
        backup: Option<Elements>,
        /// The upper element starts when its sensor falls this far below the setpoint, K.
        backup_drop_k: f64,
    },
    /// A burner.
    Burner(Burner),
}

/// A heater as simulated.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    /// Water it holds, m³.
    pub volume_m3: f64,
    /// Height of the water, m.
    pub height_m: f64,
    /// Heat lost per kelvin above the room, W/K (jacket, fittings, and the flue of a fuel-fired tank).
    pub standby_w_per_k: f64,
    /// Share of the tank that the inlet's jet stirs, from the bottom up.
    pub inlet_stir: f64,
    /// Setpoint, °C.
    pub setpoint_c: f64,
    /// How far a sensor falls below the setpoint before it calls, K.
    pub deadband_k: f64,
    /// Electronics, always on, W.
    pub idle_w: f64,
    /// What heats the water.
    pub source: Source,
    /// Layers of the simulation.
    pub slots: usize,
}

impl Model {
    /// Conductivity times cross section, W·m/K.
    pub fn k_area(&self) -> f64 {
        CONDUCTIVITY_W_PER_M_K * self.volume_m3 / self.height_m
    }

    /// The machine, if there is one.
    pub fn pump(&self) -> Option<&HeatPump> {
        match &self.source {
            Source::HeatPump { pump, .. } => Some(pump),
            _ => None,
        }
    }

    /// The same heater at another setpoint.
    #[must_use]
    pub fn at_setpoint(&self, setpoint_c: f64) -> Model {
        Model { setpoint_c, ..self.clone() }
    }
}
