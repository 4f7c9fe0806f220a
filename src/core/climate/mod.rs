//! Climate and prices of a place: what a household can be assumed to have until somebody says better.
//!
//! Listed places with their outdoor climate ([`Place`]), the outdoor temperature of a day ([`OutdoorYear`]), the
//! cold water of a day ([`Mains`]), and default energy prices and emission factors of a state or province
//! ([`EnergyPrices`]). All of it is default: every figure can be replaced by the household's own, and the
//! relations take any figures within [`outdoor::MEAN_BOUNDS_C`] and [`outdoor::RANGE_BOUNDS_K`].
//!
//! Names of cities, states and provinces are data here, not text for the locale files: they are proper names,
//! and a search has to find them. This room uses the calendar and the units and nothing else.

pub mod days;
pub mod mains;
pub mod outdoor;
pub mod places;
mod places_ca;
mod places_us;
pub mod prices;
pub mod region;
mod search;

pub use mains::Mains;
pub use outdoor::OutdoorYear;
pub use places::Place;
pub use prices::EnergyPrices;
pub use region::{Country, Region};
pub use search::search;
