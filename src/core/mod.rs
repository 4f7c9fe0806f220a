//! The core: physics, equipment, simulation, money, advice. Pure: no clock, no browser, no hidden
//! randomness, no words for people (only message identities with figures, see [`message`]).

pub mod calendar;
pub mod case;
pub mod message;
pub mod units;
