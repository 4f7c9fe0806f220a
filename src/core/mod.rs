//! The core: physics, equipment, simulation, money, advice. Pure: no clock, no browser, no hidden
//! randomness, no words for people (only message identities with figures, see [`message`]).
//!
//! Answers become a [`case::Case`] (in the `job` room); a case gets its [`candidates`]; each is
//! simulated, checked and priced; [`outcome`] holds what comes out.

pub mod advice;
pub mod after;
pub mod calendar;
pub mod candidates;
pub mod case;
pub mod checks;
pub mod climate;
pub mod draws;
pub mod finding;
pub mod fit;
pub mod futures;
pub mod heat_pump;
pub mod heater;
pub mod label;
pub mod letters;
pub mod life;
pub mod message;
pub mod moist_air;
pub mod money;
pub mod numeric;
pub mod outcome;
pub mod outlook;
pub mod pipeline;
pub mod plan;
pub mod room;
pub mod simulate;
pub mod site;
pub mod tank;
pub mod tariff;
pub mod units;
pub mod water;
pub mod work;
pub mod workings;
