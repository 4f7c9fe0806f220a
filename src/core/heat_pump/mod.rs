//! The heat pump.
pub mod coil;
pub mod machine;
pub mod table;
