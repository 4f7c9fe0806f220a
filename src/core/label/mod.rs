//! Labels: what a heater's figures say, and the model that meets them.

pub mod present;
