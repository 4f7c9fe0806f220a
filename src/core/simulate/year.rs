//! A simulated year of one heater in one house, day by day or by a sample of its days.

use super::fixture::{Served, serve};
use super::sample::Sample;
use crate::core::calendar::{DayOfYear, SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::core::draws::DrawYear;
use crate::core::heat_pump::table::Table;
use crate::core::heater::{Model, Pace, Sim, Totals};
use crate::core::outcome::YearResult;
use crate::core::room::air::RoomAir;
use crate::core::room::model::RoomModel;
use crate::core::tariff::hours::Meter;
use crate::core::units::{KWH_J, celsius, cubic_metres, seconds};
use uom::si::energy::joule;
use uom::si::f64::Energy;

/// Outdoor daily mean below which a house is heated, and above which it is cooled, °C: balance points
/// of ordinary houses (60 and 70 °F); common practice, no source.
pub const HEATED_BELOW_C: f64 = 15.5;
/// See [`HEATED_BELOW_C`].
pub const COOLED_ABOVE_C: f64 = 21.0;

/// Everything a year needs besides the heater.
pub struct House<'a> {
    /// The year's draws.
    pub draws: &'a DrawYear,
    /// Cold water by day, °C.
    pub mains_c: &'a [f32],
    /// Outdoor daily mean by day, °C.
    pub outdoor_c: &'a [f32],
    /// The room.
    pub room: &'a RoomModel,
}

/// Sees a year as it goes by, hour by hour, and may change how the heater goes on. Nobody watches an ordinary year.
pub trait Watch<'m> {
    /// An hour of the year (from 0) has ended, of a day that stands for so many.
    fn hour_ended(&mut self, hour: u32, stands_for: f64, sim: &mut Sim<'m>);
}

/// Nobody: an ordinary year has room for somebody to read its meter, who is not there. So the program holds one simulated
/// year for both.
const NOBODY: Option<Meter> = None;

/// Somebody who is only there where they are asked for.
impl<'m, W: Watch<'m>> Watch<'m> for Option<W> {
    #[inline(always)]
    fn hour_ended(&mut self, hour: u32, stands_for: f64, sim: &mut Sim<'m>) {
        if let Some(watch) = self {
            watch.hour_ended(hour, stands_for, sim);
        }
    }
}

/// Simulates a year under the eyes of somebody; gives them back. The year is that of [`simulate`], to the bit, unless
/// they change how the heater goes on.
pub fn watched<'m, W: Watch<'m>>(model: &'m Model, house: &House<'m>, watch: W) -> (YearResult, W) {
    lived(Sim::new(model), house, None, watch)
}

/// Simulates a year. `pump_step_s` as in [`Sim::with_pump_step`]; `None` for the default.
pub fn simulate(model: &Model, house: &House, pump_step_s: Option<f64>) -> YearResult {
    let sim = Sim::new(model);
    let sim = if let Some(step) = pump_step_s { sim.with_pump_step(step) } else { sim };
    lived(sim, house, None, NOBODY).0
}

/// A first look at the year: only the days of a sample, one after another as if they were neighbours, each
/// counted for the days it stands for. What the error is and where it is tested: [`super::sample`].
///
/// The tank and the room go from a sampled day's midnight into the next sampled day's: at midnight one day is
/// much like another, so that no day has to be run in but the first. Months rest on about five days each, the
/// room's series hold the simulated days alone.
pub fn first_look(model: &Model, house: &House, sample: &Sample) -> YearResult {
    first_look_watched(model, house, sample, NOBODY).0
}

/// The same under the eyes of somebody; gives them back.
pub fn first_look_watched<'m, W: Watch<'m>>(
    model: &'m Model,
    house: &House<'m>,
    sample: &Sample,
    watch: W,
) -> (YearResult, W) {
    lived(Sim::new(model), house, Some(sample), watch)
}

/// A year at a brisk pace, for the thousands of years that futures ask for: longer steps, and the heat pump read off a
/// table. The house's draws are to be gathered ([`DrawYear::gathered`]). What it is off by: `tests/futures/brisk.rs`.
pub fn brisk(model: &Model, table: Option<&Table>, house: &House) -> YearResult {
    lived(Sim::at_pace(model, Pace::BRISK, table), house, None, NOBODY).0
}

/// The same under the eyes of somebody who reads its meter by the hour; gives them back.
pub fn brisk_watched<'m, W: Watch<'m>>(
    model: &'m Model,
    table: Option<&'m Table>,
    house: &House<'m>,
    watch: W,
) -> (YearResult, W) {
    lived(Sim::at_pace(model, Pace::BRISK_BY_HOUR, table), house, None, watch)
}

fn lived<'m, W: Watch<'m>>(
    sim: Sim<'m>,
    house: &House<'m>,
    sample: Option<&Sample>,
    watch: W,
) -> (YearResult, W) {
    let stored = sim.stored_j();
    let mut run = Run::new(sim, house, watch);
    match sample {
        None => {
            for day in DayOfYear::all() {
                run.day(day, house, 1.0);
            }
        }
        Some(sample) => {
            if let Some(&(first, _)) = sample.days().first() {
                run.jump(first);
                run.day(first, house, 0.0);
            }
            for &(day, stands_for) in sample.days() {
                run.jump(day);
                run.day(day, house, stands_for);
            }
        }
    }
    run.finish(stored)
}

/// The year's accounts as they fill.
#[derive(Default)]
struct Year {
    months: [Totals; 12],
    heating_makeup_j: [f64; 12],
    cooling_relief_j: [f64; 12],
    room_c: Vec<f32>,
    undisturbed_c: Vec<f32>,
    rh: Vec<f32>,
    worst_condensate_kg: f64,
    /// Water at the fixtures.
    served: Served,
}

struct Run<'m, W> {
    watch: W,
    pace: Pace,
    sim: Sim<'m>,
    room: RoomAir<'m>,
    now_s: f64,
    hour: u32,
    /// How many days the one that is lived through stands for.
    stands_for: f64,
    year: Year,
}

impl<'m, W: Watch<'m>> Run<'m, W> {
    fn new(sim: Sim<'m>, house: &House<'m>, watch: W) -> Self {
        Self {
            watch,
            pace: *sim.pace(),
            room: RoomAir::new(house.room, 0.0, 0.0),
            sim,
            now_s: 0.0,
            hour: 0,
            stands_for: 1.0,
            year: Year::default(),
        }
    }

    /// Goes on at the beginning of a day, whatever day it was.
    fn jump(&mut self, day: DayOfYear) {
        self.hour = day.index() as u32 * 24;
        self.now_s = day.index() as f64 * SECONDS_PER_DAY;
        self.room.at(day.index() as f64, 0.0);
    }

    /// Lives through a day, and enters it for as many days as it stands for.
    fn day(&mut self, day: DayOfYear, house: &House, stands_for: f64) {
        self.stands_for = stands_for;
        let index = day.index();
        let before = *self.sim.totals();
        let from_house = self.room.from_house_j;
        let outdoor = house.outdoor_c.get(index).copied().map_or(HEATED_BELOW_C, f64::from);
        self.room.outdoors(outdoor);
        let cold_c = f64::from(house.mains_c.get(index).copied().unwrap_or(10.0));
        for draw in house.draws.day(index) {
            self.until(draw.start_s);
            let served = serve(&mut self.sim, draw, cold_c, self.pace.draw_s, &mut self.room, |_, _| ());
            self.now_s = draw.start_s + draw.duration_s();
            self.year.served.add(&served.times(stands_for));
        }
        self.until((index + 1) as f64 * SECONDS_PER_DAY);

        let month = day.month().index();
        let y = &mut self.year;
        let lived = self.sim.totals().since(&before);
        if lived.condensate_kg > y.worst_condensate_kg {
            y.worst_condensate_kg = lived.condensate_kg;
        }
        y.months[month].add(&lived.times(stands_for));
        let from_house = stands_for * (self.room.from_house_j - from_house);
        if outdoor < HEATED_BELOW_C {
            y.heating_makeup_j[month] += from_house;
        } else if outdoor > COOLED_ABOVE_C {
            y.cooling_relief_j[month] += from_house;
        }
    }

    /// Lets the heater stand until a time, hour by hour.
    fn until(&mut self, time_s: f64) {
        loop {
            let next_hour = f64::from(self.hour + self.pace.hours) * SECONDS_PER_HOUR;
            if self.now_s >= next_hour {
                // A draw may have run past the hour.
                self.next_hour();
                continue;
            }
            if self.now_s >= time_s {
                return;
            }
            let to = if next_hour < time_s { next_hour } else { time_s };
            self.sim.advance(to - self.now_s, &mut self.room);
            self.now_s = to;
        }
    }

    fn next_hour(&mut self) {
        self.watch.hour_ended(self.hour, self.stands_for, &mut self.sim);
        self.hour += self.pace.hours;
        let (day, hour) = (self.hour / 24, self.hour % 24);
        // Noon stands for the day in the charts.
        if hour == 12 {
            use crate::core::heater::Surroundings;
            self.year.room_c.push(self.room.temperature_c() as f32);
            self.year.undisturbed_c.push(self.room.undisturbed_c() as f32);
            self.year.rh.push(self.room.relative_humidity() as f32);
        }
        self.room.at(f64::from(day), f64::from(hour + self.pace.hours / 2));
    }

    fn finish(self, stored_at_start_j: f64) -> (YearResult, W) {
        // The arithmetic is checked on what was simulated, not on what that stands for.
        let raw = *self.sim.totals();
        let stored = self.sim.stored_j() - stored_at_start_j;
        let mut t = Totals::default();
        for month in &self.year.months {
            t.add(month);
        }
        let served = self.year.served;
        let kwh = |f: fn(&Totals) -> f64| self.year.months.map(|m| f(&m) / KWH_J);
        let energy = |j: f64| Energy::new::<joule>(j);
        let year = YearResult {
            electricity_kwh: kwh(|m| m.electricity_j),
            elements_kwh: kwh(|m| m.elements_j),
            peak_share: [0.0; 12],
            fuel_kwh: kwh(|m| m.fuel_j),
            delivered_kwh: kwh(|m| m.delivered_j),
            drawn_m3: self.year.months.map(|m| m.drawn_m3),
            condensate_l: self.year.months.map(|m| m.condensate_kg),
            condensate_worst_day_l: self.year.worst_condensate_kg,
            heating_makeup_kwh: self.year.heating_makeup_j.map(|j| j / KWH_J),
            cooling_relief_kwh: self.year.cooling_relief_j.map(|j| j / KWH_J),
            locked_out: seconds(t.locked_out_s),
            heat_pump_time: seconds(t.pump_s),
            heat_pump_heat: energy(t.pump_heat_j),
            heat_pump_electricity: energy(t.pump_electricity_j),
            shortfall: cubic_metres(served.short_m3),
            shortfall_time: seconds(served.short_s),
            asked: cubic_metres(served.asked_m3),
            standby: energy(t.standby_j),
            room_coldest: celsius(self.room.coldest_c),
            residual: energy(raw.heat_in_j - raw.delivered_j - raw.standby_j - stored),
            throughput: energy(raw.heat_in_j + raw.delivered_j),
            room_c: self.year.room_c,
            room_undisturbed_c: self.year.undisturbed_c,
            room_rh: self.year.rh,
        };
        (year, self.watch)
    }
}
