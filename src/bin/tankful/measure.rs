//! `measure-year`: simulates the example household's year with one heater, exactly once, for a profiler
//! to count. Not in the help.

use crate::{Stop, command, example};
use serde_json::json;
use std::hint::black_box;
use std::io::Write;
use std::time::Instant;
use tankful::core::calendar::DayOfYear;
use tankful::core::candidates::{CandidateId, offered};
use tankful::core::climate::{mains::Mains, outdoor::OutdoorYear};
use tankful::core::draws::{DrawYear, HouseholdUse};
use tankful::core::label::calibration::calibrate;
use tankful::core::message::{Arg, Message};
use tankful::core::outcome::YearResult;
use tankful::core::room::model::RoomModel;
use tankful::core::simulate::year::{House, simulate};
use tankful::core::strokes::{Climate, Demand, Strokes, machine::Map};
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
    let outdoor = OutdoorYear::new(place.outdoor_mean.value, place.outdoor_range.value);
    let mains = Mains::from_outdoor(place.outdoor_mean.value, place.outdoor_range.value)
        .shifted(place.cold_water_shift.value);
    let mains_c: Vec<f32> = DayOfYear::all().map(|d| to_celsius(mains.on(d)) as f32).collect();
    let outdoor_c: Vec<f32> = DayOfYear::all().map(|d| to_celsius(outdoor.on(d)) as f32).collect();
    let draws = DrawYear::generate(&HouseholdUse::of(&case.household), case.seed);
    let room = RoomModel::of(&case.room, place, 0.0);
    let heater = calibrate(&candidate.label, to_celsius(case.heater.setpoint.value));
    let house = House { draws: &draws, mains_c: &mains_c, outdoor_c: &outdoor_c, room: &room };
    let begun = Instant::now();
    let year = one_year(|| simulate(black_box(&heater.model), black_box(&house), None));
    let wall_ms = begun.elapsed().as_secs_f64() * 1e3;
    let map = heater.model.pump().map(|pump| Map::of(pump, room.pressure_pa));
    let (demand, climate) = (Demand::of(&draws), Climate::of(&mains_c, &outdoor_c, &room));
    let begun = Instant::now();
    let strokes = one_year_in_strokes(|| {
        Strokes::year(black_box(&heater.model), map.as_ref(), black_box(&demand), &climate, &room)
    });
    let strokes_ms = begun.elapsed().as_secs_f64() * 1e3;
    let report = json!({
        "candidate": code,
        "strokes_kwh": strokes.energy_kwh(),
        "strokes_ms": strokes_ms,
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

/// The same for a year in strokes.
#[inline(never)]
fn one_year_in_strokes(year: impl FnOnce() -> Strokes) -> Strokes {
    year()
}
