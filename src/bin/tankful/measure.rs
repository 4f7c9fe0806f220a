//! `measure-year`: simulates one year of the example case once, for a profiler to count. Not in the
//! help; `cargo xtask` calls it.

use crate::Stop;
use std::io::Write;
use tankful::text::Words;

/// todo
pub fn run(_: &Words, _: &clap::ArgMatches, _: &mut impl Write) -> Result<(), Stop> {
    Ok(())
}
