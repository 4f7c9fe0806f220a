//! A heater's year in a few strokes: the same heater, room and water as in [`crate::core::simulate`], some seven times
//! cheaper, for the thousands of years that futures ask for.
//!
//! What is cheaper: the tank is a stirred foot and a handful of slugs instead of a dozen layers ([`slugs`]); the heat
//! pump is read off a table that is made once for each machine ([`machine`]); small draws wait until they amount to
//! something or a larger one takes them along ([`demand`]); the room goes with the heater's steps ([`room`]). What stays
//! is what makes one year differ from another: every shower and bath comes when it comes, thermostats call where they sit,
//! the elements come in for what the heat pump cannot do, the room gets cold.
//!
//! It is no second truth: [`crate::core::futures`] learns how far it is from the whole simulation, and takes only what is
//! left of the difference. How far that is stands in `tests/futures/accuracy.rs`.

pub mod demand;
mod engine;
pub mod machine;
mod room;
mod slugs;
pub mod year;

pub use demand::Demand;
pub use year::{Climate, Strokes};
