//! A heater in a house through time: a year of it, and its busiest morning.

pub mod fixture;
pub mod morning;
pub mod year;
