//! What lies ahead, in a report: life left, electricity by the hour, CO₂ over the years.

use super::super::words::Words;
use super::{Said, figure};
use crate::core::life::replace::{LifeLeft, Moment};
use crate::core::outcome::Outcome;
use crate::core::outlook::{Outlook, says};
use crate::core::tariff::report::{ByHour, Scheduled};
use serde::Serialize;

/// What lies ahead of a case.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OutlookReport {
    /// Life left of the present heater; absent where nothing could replace it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub life_left: Option<LifeReport>,
    /// Whether electricity costs more at some hours.
    pub by_hour: bool,
    /// Electricity of each candidate by the hour.
    pub tariff: Vec<TariffReport>,
    /// CO₂ of each candidate over the years counted.
    pub emissions: Vec<EmissionReport>,
    /// The same in sentences.
    pub says: Vec<Said>,
}

/// Life left, what a failure costs and when to act.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LifeReport {
    /// Chances of failing: years ahead, the chance, and the same with the longest and shortest plausible lives.
    pub chances: Vec<[f64; 4]>,
    /// Years it may be expected to go on.
    pub expected_years: f64,
    /// Years that nine of ten reach, and one of ten does.
    pub years_low_high: [f64; 2],
    /// What a failure costs beside the heater, dollars; and at low and high plausible figures.
    pub emergency_usd: f64,
    /// See `emergency_usd`.
    pub emergency_low_high_usd: [f64; 2],
    /// What would be bought in time (code).
    pub planned: &'static str,
    /// What is bought in an emergency (code).
    pub same: &'static str,
    /// Expected cost of waiting 0, 1, 2 … years against replacing now, dollars.
    pub waiting_usd: Vec<f64>,
    /// `now`, `in_years` or `when_it_fails`.
    pub best: &'static str,
    /// The years, where `best` is `in_years`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best_years: Option<f64>,
}

/// A candidate's electricity by the hour.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TariffReport {
    /// Its code.
    pub id: &'static str,
    /// At one price, dollars a year.
    pub flat_usd: f64,
    /// By the tariff, dollars a year: the electricity of the candidate's `energy_year_usd`.
    pub tariff_usd: f64,
    /// Share used at peak hours.
    pub peak_share: f64,
    /// The mean day by hour, kWh.
    pub mean_day_kwh: Vec<f64>,
    /// Heating before the peak and resting during it; absent where there is no peak to avoid.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub schedule: Option<ScheduleReport>,
}

/// What a schedule does.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ScheduleReport {
    /// Saved a year, dollars. The verdict does not count with it.
    pub saves_usd: f64,
    /// Electricity used more, kWh a year.
    pub more_kwh: f64,
    /// Share used at peak hours.
    pub peak_share: f64,
    /// Raised to before the peak, °C; absent where it stays.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub raised_c: Option<f64>,
    /// Whether the busiest morning stays as warm as it was.
    pub morning_warm: bool,
    /// Time below use temperature that it adds, seconds a day.
    pub colder_s_a_day: f64,
    /// Whether it is advised.
    pub advised: bool,
}

/// A candidate's CO₂.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EmissionReport {
    /// Its code.
    pub id: &'static str,
    /// The first year's electricity, kg.
    pub grid_kg: f64,
    /// The first year's fuel, kg.
    pub fuel_kg: f64,
    /// By year, kg.
    pub by_year_kg: Vec<f64>,
    /// Over the years, kg: low, middle, high.
    pub total_kg: [f64; 3],
}

impl OutlookReport {
    /// The report of an outlook.
    pub fn new(words: &Words, outlook: &Outlook, outcome: &Outcome) -> OutlookReport {
        let said = says::all(outlook, outcome).into_iter().flat_map(|(_, says)| says);
        OutlookReport {
            life_left: outlook.life.as_ref().map(life),
            by_hour: outlook.time_of_use.by_hour,
            tariff: outlook.time_of_use.candidates.iter().map(tariff).collect(),
            emissions: outlook
                .emissions
                .iter()
                .map(|e| {
                    let [all, low, high] = e.total();
                    EmissionReport {
                        id: e.id.code(),
                        grid_kg: figure(e.grid_kg),
                        fuel_kg: figure(e.fuel_kg),
                        by_year_kg: figures(&e.by_year),
                        total_kg: [low, all, high].map(figure),
                    }
                })
                .collect(),
            says: said.map(|m| Said::new(words, &m)).collect(),
        }
    }
}

fn figures(all: &[f64]) -> Vec<f64> {
    all.iter().copied().map(figure).collect()
}

fn life(l: &LifeLeft) -> LifeReport {
    let (best, best_years) = match l.best {
        Moment::Now => ("now", None),
        Moment::InYears(years) => ("in_years", Some(figure(years))),
        Moment::WhenItFails => ("when_it_fails", None),
    };
    let (low, high) = l.emergency.low_high;
    LifeReport {
        chances: l
            .chances
            .iter()
            .map(|c| [c.years, c.chance, c.low_high.0, c.low_high.1].map(figure))
            .collect(),
        expected_years: figure(l.expected_years),
        years_low_high: [l.years_low_high.0, l.years_low_high.1].map(figure),
        emergency_usd: figure(l.emergency.total()),
        emergency_low_high_usd: [low, high].map(figure),
        planned: l.planned.code(),
        same: l.same.code(),
        waiting_usd: figures(&l.waiting),
        best,
        best_years,
    }
}

fn tariff(c: &ByHour) -> TariffReport {
    TariffReport {
        id: c.id.code(),
        flat_usd: figure(c.flat_cost),
        tariff_usd: figure(c.tariff_cost),
        peak_share: figure(c.peak_share),
        mean_day_kwh: figures(&c.mean_day_kwh),
        schedule: c.schedule.as_ref().map(schedule),
    }
}

fn schedule(s: &Scheduled) -> ScheduleReport {
    ScheduleReport {
        saves_usd: figure(s.saves),
        more_kwh: figure(s.more_kwh),
        peak_share: figure(s.peak_share),
        raised_c: s.raised_c,
        morning_warm: s.morning_warm,
        colder_s_a_day: figure(s.colder_s_a_day),
        advised: s.advised,
    }
}
