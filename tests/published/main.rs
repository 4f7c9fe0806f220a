//! Outside truth: the core against fixtures that reference libraries computed (`tests/reference/`, whose
//! README gives origin, omissions and tolerances of the fixtures themselves).
//!
//! Tolerances here are named constants with their reason. Each comparison prints the largest difference
//! it saw: `cargo test --test published -- --nocapture`.
mod cold_water;
mod cycle;
mod daily_use;
mod field;
mod fixture;
mod futures;
mod label;
mod label_grid;
mod lives;
mod machine;
mod moist_air;
mod money;
mod tank;
mod tank_draws;
mod water;
mod wet_coil;
mod year;
