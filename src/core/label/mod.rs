//! Labels: what a heater's figures say, and the model that meets them.

pub mod calibration;
pub mod class;
pub mod patterns;
pub mod present;
pub mod rating_test;
