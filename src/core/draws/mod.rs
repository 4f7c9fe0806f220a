//! Draws of hot water: how much, when, at which fixture.

pub mod daily_use;
