//! The room where the heater stands.

pub mod typical;
