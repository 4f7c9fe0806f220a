//! The federal rating test for storage water heaters, run on a simulated heater.
//!
//! Source: 10 CFR part 430, subpart B, appendix E (as amended 2023; conditions, draw patterns and
//! relations from memory). Draws are taken as volumes; the volumetric heat is the simulation's constant.

use super::first_hour::first_hour_rating_m3;
use super::patterns::Pattern;
use super::simulated_use::{SimulatedUse, simulated_use};
use crate::core::heater::{Constant, Model};
use crate::core::moist_air::{STANDARD_PRESSURE_PA, humidity_ratio_from_relative_humidity};

/// Inlet water, °C (58 °F).
pub const INLET_C: f64 = (58.0 - 32.0) * 5.0 / 9.0;
/// Delivered water and setpoint, °C (125 °F).
pub const DELIVERED_C: f64 = (125.0 - 32.0) * 5.0 / 9.0;
/// Nominal rise, K (67 °F).
pub const RISE_K: f64 = 67.0 * 5.0 / 9.0;
/// Air, °C (67.5 °F).
pub const AIR_C: f64 = (67.5 - 32.0) * 5.0 / 9.0;
/// Relative humidity of the air for heat pumps.
pub const AIR_RH: f64 = 0.5;
/// Longest heating step of a heat pump under test, s.
pub(super) const PUMP_STEP_S: f64 = 300.0;

/// Air of the test room.
pub fn test_air() -> Constant {
    let w = humidity_ratio_from_relative_humidity(AIR_C, AIR_RH, STANDARD_PRESSURE_PA);
    Constant::new(AIR_C, w, STANDARD_PRESSURE_PA)
}

/// A heater's ratings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rating {
    /// First-hour rating, m³.
    pub first_hour_m3: f64,
    /// The simulated-use test with the pattern that the first-hour rating chooses.
    pub simulated_use: SimulatedUse,
}

/// Rates a heater: first-hour test, pattern by its result, simulated use. The heater is run at the
/// test's setpoint whatever its own.
pub fn rate(model: &Model) -> Rating {
    rate_at(model, DELIVERED_C)
}

/// The same with the thermostat at another setpoint, °C: the procedure leaves ± 5 °F for it.
pub fn rate_at(model: &Model, test_c: f64) -> Rating {
    let at_test = model.at_setpoint(test_c);
    let first_hour_m3 = first_hour_rating_m3(&at_test);
    Rating { first_hour_m3, simulated_use: simulated_use(&at_test, Pattern::for_first_hour(first_hour_m3)) }
}
