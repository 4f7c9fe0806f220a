//! The busiest morning: the household's showers one after another on the day of the coldest cold water,
//! followed step by step for each candidate.

use super::fixture::{Piece, Served, serve};
use crate::core::case::Household;
use crate::core::draws::{Draw, Fixture, daily_use};
use crate::core::heat_pump::table::Table;
use crate::core::heater::{Model, Pace, Sim, Surroundings};
use crate::core::outcome::Morning;
use crate::core::room::air::RoomAir;
use crate::core::room::model::RoomModel;
use crate::core::units::{GALLON_M3, cubic_metres};
use std::borrow::Cow;
use uom::si::{time::second, volume_rate::cubic_meter_per_second};

/// Time between two entries of the series, s.
pub const STEP_S: f64 = 20.0;
/// The series runs from 6 to 9 in the morning.
const FROM_S: f64 = 6.0 * 3600.0;
const TO_S: f64 = 9.0 * 3600.0;
/// The first shower.
const FIRST_SHOWER_S: f64 = 6.5 * 3600.0;
/// Between two showers, s.
const CHANGE_OVER_S: f64 = 120.0;
/// A basin's draw between showers: two gallons of mixed water, as the peak-hour worksheet's shave.
const BASIN_M3: f64 = 2.0 * GALLON_M3;
const BASIN_FLOW: f64 = 1.1 * GALLON_M3 / 60.0;
/// Loads a week from which a dishwasher counts as running that morning.
const DISHWASHER_DAILY: f64 = 3.5;
/// Longest heating step of the heat pump, s.
const PUMP_STEP_S: f64 = 60.0;
/// Equal layers in the picture.
const PICTURE_LAYERS: usize = 12;

/// Water above use temperature is taken at this temperature at the shower head, °C.
pub const WANTED_C: f64 = daily_use::USE_C;

/// The morning's draws, in seconds after midnight.
pub fn draws(h: &Household) -> Vec<Draw> {
    let flow = h.shower_flow.value.get::<cubic_meter_per_second>();
    let length = h.shower_time.value.get::<second>();
    let mut at = FIRST_SHOWER_S;
    let mut draws = Vec::new();
    for _ in 0..h.showers_in_a_row.value as u32 {
        draws.push(Draw {
            start_s: at,
            fixture: Fixture::Shower,
            volume_m3: flow * length,
            flow_m3_per_s: flow,
        });
        at += length;
        draws.push(Draw {
            start_s: at,
            fixture: Fixture::Sink,
            volume_m3: BASIN_M3,
            flow_m3_per_s: BASIN_FLOW,
        });
        at += CHANGE_OVER_S.max(BASIN_M3 / BASIN_FLOW);
    }
    if h.dishwasher_loads_per_week.value >= DISHWASHER_DAILY {
        draws.push(Draw {
            start_s: at,
            fixture: Fixture::Dishwasher,
            volume_m3: daily_use::DISHWASHER_GAL * GALLON_M3,
            flow_m3_per_s: 1.4 * GALLON_M3 / 60.0,
        });
    }
    // Very long showers of many people run past nine; the series stops there and so do the draws.
    draws.retain(|d| d.start_s < TO_S);
    draws
}

/// Simulates the morning: a tank that has had the night to recover, the coldest cold water, the room as
/// on that day.
pub fn simulate(model: &Model, h: &Household, cold_c: f64, coldest_day: usize, room: &RoomModel) -> Morning {
    let mut air = RoomAir::new(room, coldest_day as f64, 6.0);
    let mut sim = Sim::new(model).with_pump_step(PUMP_STEP_S);
    let mut film = Film::default();
    let mut now = FROM_S;
    let mut served = Served::default();
    let draws = draws(h);
    for d in &draws {
        film.idle(&mut sim, &mut air, &mut now, d.start_s);
        let got = serve(&mut sim, d, cold_c, STEP_S / 2.0, &mut air, |sim, piece| {
            now += piece.seconds;
            film.until(now, sim, d.fixture.is_mixed().then_some(piece));
        });
        served.add(&got);
    }
    film.idle(&mut sim, &mut air, &mut now, TO_S);
    Morning {
        step_s: STEP_S,
        start_s: FROM_S,
        cold_at_s: film.cold_at_s,
        wanted_c: film.wanted_c,
        tap_c: film.tap_c,
        outlet_c: film.outlet_c,
        power_w: film.power_w,
        layers_c: film.layers_c,
        layers: PICTURE_LAYERS,
        uses: draws.iter().map(|d| (d.start_s, d.start_s + d.duration_s(), use_key(d.fixture))).collect(),
        shortfall: cubic_metres(served.short_m3),
        asked: cubic_metres(served.asked_m3),
    }
}

/// Share of the morning's water that falls short, without the picture: the heat pump is read off a table, and nothing is
/// looked at between draws or after the last.
pub fn short_share(
    model: &Model,
    table: Option<&Table>,
    h: &Household,
    cold_c: f64,
    coldest_day: usize,
    room: &RoomModel,
) -> f64 {
    let mut air = RoomAir::new(room, coldest_day as f64, 6.0);
    let mut sim = Sim::at_pace(model, Pace::ORDINARY, table).with_pump_step(PUMP_STEP_S);
    let mut now = FROM_S;
    let mut served = Served::default();
    for d in &draws(h) {
        if d.start_s > now {
            sim.advance(d.start_s - now, &mut air);
            now = d.start_s;
        }
        served.add(&serve(&mut sim, d, cold_c, STEP_S / 2.0, &mut air, |_, piece| now += piece.seconds));
    }
    if served.asked_m3 > 0.0 { served.short_m3 / served.asked_m3 } else { 0.0 }
}

fn use_key(f: Fixture) -> Cow<'static, str> {
    Cow::Borrowed(match f {
        Fixture::Shower => "use-shower",
        Fixture::Bath => "use-bath",
        Fixture::Sink => "use-sink",
        Fixture::Dishwasher => "use-dishwasher",
        Fixture::ClothesWasher => "use-clothes-washer",
    })
}

/// The series as they are recorded.
#[derive(Default)]
struct Film {
    wanted_c: Vec<f32>,
    tap_c: Vec<f32>,
    outlet_c: Vec<f32>,
    power_w: Vec<f32>,
    layers_c: Vec<f32>,
    cold_at_s: Option<f64>,
}

impl Film {
    fn next_s(&self) -> f64 {
        FROM_S + STEP_S * self.tap_c.len() as f64
    }

    /// Fills the entries that fall before `now`.
    fn until(&mut self, now: f64, sim: &Sim, piece: Option<&Piece>) {
        if let Some(p) = piece
            && self.cold_at_s.is_none()
            && p.tap_c < WANTED_C - super::fixture::UNNOTICED_K
        {
            self.cold_at_s = Some(now - p.seconds);
        }
        while self.next_s() <= now && self.next_s() <= TO_S {
            self.wanted_c.push(if piece.is_some() { WANTED_C as f32 } else { 0.0 });
            self.tap_c.push(piece.map_or(0.0, |p| p.tap_c as f32));
            self.outlet_c.push(sim.outlet_c() as f32);
            self.power_w.push(sim.power_w() as f32);
            for i in 0..PICTURE_LAYERS {
                let height = (i as f64 + 0.5) / PICTURE_LAYERS as f64;
                self.layers_c.push(sim.layers().temperature_c(sim.layers().layer_at(height)) as f32);
            }
        }
    }

    fn idle(&mut self, sim: &mut Sim, air: &mut impl Surroundings, now: &mut f64, to_s: f64) {
        while *now < to_s - 1e-9 {
            let next = self.next_s();
            let to = if next > *now && next < to_s { next } else { to_s };
            sim.advance(to - *now, air);
            *now = to;
            self.until(*now, sim, None);
        }
    }
}
