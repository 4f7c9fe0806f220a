//! The room where the heater stands: what it is like, and how a heat pump in it changes it.

pub mod air;
pub mod model;
pub mod typical;
