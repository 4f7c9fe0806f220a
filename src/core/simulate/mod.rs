//! A heater in a house through time: a year of it, a first look at that year, and its busiest
//! morning.

pub mod fixture;
pub mod morning;
pub mod sample;
pub mod year;
