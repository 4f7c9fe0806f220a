//! Labels: what a heater's figures say, the published test that they come from, and the model that meets
//! them.
//!
//! Forwards: [`rating_test`] puts a simulated heater through the test. Backwards: [`calibration`] finds the
//! heater that scores a label. [`rated::rate`] does both for show: label against model, the day in the test
//! room, a heat pump's map. [`present`] is for heaters without a readable label,
//! [`ageing`] for what their years have done to them.

pub mod ageing;
pub mod calibration;
pub mod class;
pub mod cop_map;
pub mod energy_factor;
pub mod first_hour;
mod fit;
pub mod parameters;
pub mod patterns;
pub mod present;
pub mod rated;
pub mod rating_run;
pub mod rating_test;
pub mod simulated_use;
mod usable;

pub use cop_map::CopMap;
pub use rated::{Rated, rate};
pub use rating_run::RatingRun;
