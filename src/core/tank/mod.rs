//! The stratified tank: layers that move with the water. Knows water and nothing of heaters.

mod layers;
mod mixing;

pub use layers::{Layers, MAX_SLOTS};
