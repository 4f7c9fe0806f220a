//! Headless command.
fn main() {}
