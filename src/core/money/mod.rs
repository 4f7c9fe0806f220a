//! Money: prices of energy, and what each candidate costs over the horizon.

pub mod cash;
pub mod emission;
pub mod energy_price;
pub mod present_value;
