//! The heat pump.
pub mod coil;
