//! `measure-year`: simulates the example household's year with one heater, exactly once, for a profiler
//! to count. Not in the help.

use crate::{Stop, command, example};
use serde_json::json;
use std::hint::black_box;
use std::io::Write;
use std::time::Instant;
use tankful::core::candidates::{CandidateId, offered};
use tankful::core::climate::days::Days;
use tankful::core::draws::{DrawYear, HouseholdUse};
use tankful::core::heat_pump::table::Table;
use tankful::core::label::calibration::calibrate;
use tankful::core::message::{Arg, Message};
use tankful::core::outcome::YearResult;
use tankful::core::room::model::RoomModel;
use tankful::core::simulate::year::{House, brisk, simulate};
use tankful::core::units::to_celsius;
use tankful::job::complete::complete;
use tankful::text::Words;

/// Simulates the year and writes its electricity and fuel, kWh, and the wall time of the simulation
/// alone, ms. Calibrating the heater costs far more than its year: a profiler counts [`one_year`] only.
pub fn run(words: &Words, arguments: &clap::ArgMatches, out: &mut impl Write) -> Result<(), Stop> {
    let code = arguments.get_one::<String>(command::CANDIDATE).map_or("", String::as_str);
    let case = complete(&example::case(words, Default::default()).answers);
    let wanted = CandidateId::from_code(code);
    let Some(candidate) = offered::candidates(&case).into_iter().find(|c| Some(c.id) == wanted) else {
        return Err(Stop::Says(
            Message::new("cli-not-offered").with("heater", Arg::Verbatim(code.to_owned())),
        ));
    };
    let place = &case.place;
    let days = Days::of(place.outdoor_mean.value, place.outdoor_range.value, place.cold_water_shift.value);
    let draws = DrawYear::generate(&HouseholdUse::of(&case.household), case.seed);
    let room = RoomModel::of(&case.room, place, 0.0);
    let heater = calibrate(&candidate.label, to_celsius(case.heater.setpoint.value));
    let house = House { draws: &draws, mains_c: &days.mains_c, outdoor_c: &days.outdoor_c, room: &room };
    let begun = Instant::now();
    let year = one_year(|| simulate(black_box(&heater.model), black_box(&house), None));
    let wall_ms = begun.elapsed().as_secs_f64() * 1e3;
    let table = heater.model.pump().map(|pump| Table::of(pump, room.pressure_pa));
    let gathered = draws.gathered();
    let house = House { draws: &gathered, ..house };
    let begun = Instant::now();
    let brisk = one_brisk_year(|| brisk(black_box(&heater.model), table.as_ref(), black_box(&house)));
    let brisk_ms = begun.elapsed().as_secs_f64() * 1e3;
    let report = json!({
        "candidate": code,
        "brisk_kwh": brisk.electricity_year_kwh() + brisk.fuel_year_kwh(),
        "brisk_ms": brisk_ms,
        "electricity_kwh": year.electricity_year_kwh(),
        "fuel_kwh": year.fuel_year_kwh(),
        "wall_ms": wall_ms,
    });
    writeln!(out, "{report}")?;
    Ok(())
}

/// The year and nothing else, under a name of its own whatever is inlined into it: profilers are told
/// to count from its start to its end (`callgrind --toggle-collect='*one_year*'`).
#[inline(never)]
fn one_year(year: impl FnOnce() -> YearResult) -> YearResult {
    year()
}

/// The same for a year at a brisk pace.
#[inline(never)]
fn one_brisk_year(year: impl FnOnce() -> YearResult) -> YearResult {
    year()
}
