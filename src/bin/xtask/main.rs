//! Task runner.
fn main() {}
