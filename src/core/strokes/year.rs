//! The year: all its days, or some that stand for it.

use super::demand::Demand;
use super::engine::{Engine, Sums};
use super::machine::Map;
use super::room::Air;
use crate::core::calendar::DayOfYear;
use crate::core::heater::Model;
use crate::core::money::cash::DAMP_MONTHS;
use crate::core::room::model::RoomModel;
use crate::core::simulate::year::{COOLED_ABOVE_C, HEATED_BELOW_C};
use crate::core::units::KWH_J;
use serde::{Deserialize, Serialize};

/// Longest piece of a draw, s.
const PIECE_S: f64 = 300.0;

/// What the days of a year are like around any heater of a house.
#[derive(Clone, Debug)]
pub struct Climate {
    days: Vec<Day>,
}

#[derive(Clone, Copy, Debug)]
struct Day {
    cold_c: f64,
    outdoor_c: f64,
    mean_c: f64,
    w: f64,
    house: (f64, f64),
}

/// A year in strokes. kWh, but for the water.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Strokes {
    /// Electricity.
    pub electricity_kwh: f64,
    /// Of which elements.
    pub elements_kwh: f64,
    /// Fuel.
    pub fuel_kwh: f64,
    /// Heat carried out by draws.
    pub delivered_kwh: f64,
    /// Heat lost by the tank.
    pub standby_kwh: f64,
    /// Heat that the house's heating makes up.
    pub heating_makeup_kwh: f64,
    /// Heat that the house's cooling is spared.
    pub cooling_relief_kwh: f64,
    /// Condensate in the months of a dehumidifier, l.
    pub condensate_l: f64,
    /// Time in which air kept a heat pump from running, h.
    pub locked_h: f64,
    /// What the heat account is off by.
    pub residual_kwh: f64,
}

impl Climate {
    /// Of cold water and outdoors by day, °C, and a room.
    pub fn of(mains_c: &[f32], outdoor_c: &[f32], room: &RoomModel) -> Climate {
        let days = mains_c.iter().zip(outdoor_c).enumerate().map(|(day, (cold, outdoor))| {
            let day = day as f64;
            Day {
                cold_c: f64::from(*cold),
                outdoor_c: f64::from(*outdoor),
                mean_c: room.undisturbed_mean_c(day),
                w: room.undisturbed_w(day),
                house: room.house(day),
            }
        });
        Climate { days: days.collect() }
    }
}

impl Strokes {
    /// A whole year.
    pub fn year(
        model: &Model,
        map: Option<&Map>,
        demand: &Demand,
        climate: &Climate,
        room: &RoomModel,
    ) -> Strokes {
        Strokes::of(model, map, demand, climate, room, DayOfYear::all().map(|day| (day, 1.0)))
    }

    /// Some days one after another as if they were neighbours, each counted for as many as it stands for.
    pub fn of(
        model: &Model,
        map: Option<&Map>,
        demand: &Demand,
        climate: &Climate,
        room: &RoomModel,
        days: impl Iterator<Item = (DayOfYear, f64)>,
    ) -> Strokes {
        let mut engine = Engine::new(model, map, Air::of(room));
        let held = engine.slugs.held_m3_k();
        let mut sum = Strokes::default();
        let mut late_s = 0.0;
        for (day, stands_for) in days {
            let Some(d) = climate.days.get(day.index()) else { continue };
            let before = engine.sums;
            let from_house_j = engine.air.from_house_j;
            engine.air.day(d.mean_c, d.w, d.house, d.outdoor_c);
            let mut now = late_s;
            for e in demand.day(day.index()) {
                if e.at_s > now {
                    engine.advance(now, e.at_s - now);
                    now = e.at_s;
                }
                // What heats meanwhile is part of a long draw.
                let mut pieces = (e.lasts_s * (1.0 / PIECE_S)) as i32 + 1;
                let share = 1.0 / f64::from(pieces);
                let piece_s = e.lasts_s * share;
                while pieces > 1 {
                    pieces -= 1;
                    engine.draw(e.mixed_m3 * share, e.hot_m3 * share, d.cold_c);
                    engine.advance(now, piece_s);
                    now += piece_s;
                }
                // The time of the last piece passes with what follows.
                engine.draw(e.mixed_m3 * share, e.hot_m3 * share, d.cold_c);
            }
            late_s = 0.0;
            if now < 86_400.0 {
                engine.advance(now, 86_400.0 - now);
            } else {
                late_s = now - 86_400.0;
            }
            let from_house = stands_for * (engine.air.from_house_j - from_house_j) / KWH_J;
            sum.add(&engine.sums, &before, stands_for);
            if d.outdoor_c < HEATED_BELOW_C {
                sum.heating_makeup_kwh += from_house;
            } else if d.outdoor_c > COOLED_ABOVE_C {
                sum.cooling_relief_kwh += from_house;
            }
            if DAMP_MONTHS.contains(&day.month().index()) {
                sum.condensate_l += stands_for * (engine.sums.condensate_kg - before.condensate_kg);
            }
        }
        let s = &engine.sums;
        let stored_j =
            (engine.slugs.held_m3_k() - held) * crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K;
        sum.residual_kwh = (s.heat_in_j - s.delivered_j - s.standby_j - stored_j) / KWH_J;
        sum
    }

    fn add(&mut self, now: &Sums, before: &Sums, stands_for: f64) {
        let share = stands_for / KWH_J;
        self.electricity_kwh += share * (now.electricity_j - before.electricity_j);
        self.elements_kwh += share * (now.elements_j - before.elements_j);
        self.fuel_kwh += share * (now.fuel_j - before.fuel_j);
        self.delivered_kwh += share * (now.delivered_j - before.delivered_j);
        self.standby_kwh += share * (now.standby_j - before.standby_j);
        self.locked_h += stands_for / 3_600.0 * (now.locked_s - before.locked_s);
    }

    /// Electricity and fuel, kWh.
    pub fn energy_kwh(&self) -> f64 {
        self.electricity_kwh + self.fuel_kwh
    }
}
