//! Money: prices of energy, life of heaters, and what each candidate costs over the horizon.

pub mod cash;
pub mod energy_price;
pub mod life;
pub mod present_value;
