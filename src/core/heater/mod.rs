//! A heater at work: the tank with its source of heat, its thermostats and the air around it.
//!
//! Steps follow events. While nothing heats, the tank decays in closed form to the next draw or
//! thermostat call; an element's pool warms linearly, so its merges and its cut-out are solved for; a
//! heat pump takes steps of some minutes with the heat of their middle. How long steps may be is a
//! [`Pace`]. Knows the tank and the heat pump; knows no calendar, household or money.

mod control;
mod heating;
mod model;
mod pace;
mod sim;
mod surroundings;
mod totals;

pub use model::{Burner, Element, Elements, Model, Source};
pub use pace::Pace;
pub use sim::Sim;
pub use surroundings::{Constant, Surroundings};
pub use totals::Totals;
