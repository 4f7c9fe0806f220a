//! What each candidate pays by the hour, and what a schedule saves: the figures.
//!
//! What a candidate pays without a schedule is what the verdict counts with; what a schedule saves stands beside it.

use super::hours::{Hours, Meter};
use super::schedule::{ByClock, Schedule};
use crate::core::candidates::CandidateId;
use crate::core::case::Case;
use crate::core::heater::Model;
use crate::core::money::energy_price::of_heater;
use crate::core::outcome::YearResult;
use crate::core::pipeline::{Cache, Run};
use crate::core::simulate::{morning, year};

use serde::{Deserialize, Serialize};
use uom::si::time::second;

/// A schedule that saves less a year is not worth its settings, dollars.
const WORTH_IT: f64 = 10.0;
/// Time below use temperature that a schedule may add for each person and day, s: less than anybody notices.
const UNNOTICED_S: f64 = 2.0;
/// A morning is warm when no more than this share of the water asked for falls short: as [`crate::core::outcome::Morning::carries`].
const SHORT_SHARE: f64 = 0.05;

/// What a schedule does for a candidate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Scheduled {
    /// Saved a year against running as ever, by the same tariff, dollars; negative: it costs more.
    pub saves: f64,
    /// Electricity used more, kWh a year.
    pub more_kwh: f64,
    /// Share of the year's electricity used at peak hours.
    pub peak_share: f64,
    /// The mean day's use by hour, kWh.
    pub mean_day_kwh: Vec<f64>,
    /// What the setpoint is raised to before the peak, °C; `None`: it stays.
    pub raised_c: Option<f64>,
    /// Whether the busiest morning stays as warm as it was.
    pub morning_warm: bool,
    /// Time below use temperature that it adds, seconds a day.
    pub colder_s_a_day: f64,
    /// Whether it is worth advising: it saves, and nobody runs colder for it.
    pub advised: bool,
}

/// A candidate's electricity by the hour.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ByHour {
    /// Which.
    pub id: CandidateId,
    /// Electricity of the year, kWh.
    pub electricity_kwh: f64,
    /// What it costs at the flat price, dollars.
    pub flat_cost: f64,
    /// What it costs by the case's tariff, flat or by the hour, dollars: the verdict's figure.
    pub tariff_cost: f64,
    /// Share of it used at peak hours.
    pub peak_share: f64,
    /// The mean day's use by hour, kWh.
    pub mean_day_kwh: Vec<f64>,
    /// Heating when it is cheap; `None` for heaters that burn fuel, and without a peak to avoid.
    pub schedule: Option<Scheduled>,
}

/// Electricity by the hour, of every candidate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TimeOfUse {
    /// Whether the tariff has hours; else all costs are at the flat price.
    pub by_hour: bool,
    /// Every candidate, in the order of the outcome.
    pub candidates: Vec<ByHour>,
}

/// Electricity by the hour in a case: simulates two years for each electric candidate.
pub fn of(case: &Case, cache: &mut Cache) -> TimeOfUse {
    let run = Run::new(case.clone(), cache);
    let heaters = run.heaters(cache);
    TimeOfUse {
        by_hour: case.prices.tariff.is_by_hour(),
        candidates: heaters.iter().map(|(c, model)| one(&run, c.id, model)).collect(),
    }
}

fn one(run: &Run, id: CandidateId, model: &Model) -> ByHour {
    let (case, house) = (run.case(), run.house());
    let (tariff, flat) = (&case.prices.tariff, case.prices.electricity.value);
    let cost_by = |year: &mut YearResult, hours: &Hours| {
        if tariff.is_by_hour() {
            year.peak_share = tariff.shares(hours);
        }
        year.electricity_year_kwh() * of_heater(&case.prices, year).price
    };
    let (mut usual, meter) = year::watched(model, &house, Some(Meter::default()));
    let hours = meter.map(Meter::hours).unwrap_or_default();
    let kwh = usual.electricity_year_kwh();
    let cost = cost_by(&mut usual, &hours);
    let schedule = Schedule::of(model, case).map(|schedule| {
        let (mut year, clock) = year::watched(model, &house, ByClock::new(&schedule, tariff));
        let hours = clock.hours();
        let saves = cost - cost_by(&mut year, &hours);
        let colder_s_a_day = (year.shortfall_time - usual.shortfall_time).get::<second>() / 365.0;
        let morning_warm = warm(run, model, &schedule);
        Scheduled {
            saves,
            more_kwh: year.electricity_year_kwh() - kwh,
            peak_share: year.peak_share_year(),
            mean_day_kwh: hours.mean_day(),
            raised_c: schedule.raised_c,
            morning_warm,
            colder_s_a_day,
            advised: saves >= WORTH_IT
                && morning_warm
                && colder_s_a_day <= UNNOTICED_S * people(case)
                && meets_as_before(&year, &usual),
        }
    });
    ByHour {
        id,
        electricity_kwh: kwh,
        flat_cost: kwh * flat,
        tariff_cost: cost,
        peak_share: usual.peak_share_year(),
        mean_day_kwh: hours.mean_day(),
        schedule,
    }
}

fn people(case: &Case) -> f64 {
    let people = case.household.people();
    if people > 1.0 { people } else { 1.0 }
}

/// Whether about as much heat reaches the taps as before: a hundredth may be missing.
fn meets_as_before(with: &YearResult, without: &YearResult) -> bool {
    let sum = |y: &YearResult| y.delivered_kwh.iter().sum::<f64>();
    sum(with) >= 0.99 * sum(without)
}

/// Whether the busiest morning by the schedule is warm, or as warm as without.
fn warm(run: &Run, model: &Model, schedule: &Schedule) -> bool {
    let (case, house) = (run.case(), run.house());
    let (day, cold_c) = run.coldest();
    let by_clock = schedule.morning(&case.prices.tariff, &case.household, cold_c, day, house.room);
    let before = morning::simulate(model, &case.household, cold_c, day.index(), house.room);
    let short = before.shortfall.value + SHORT_SHARE * 0.2 * by_clock.asked_m3;
    by_clock.short_m3 <= SHORT_SHARE * by_clock.asked_m3 || by_clock.short_m3 <= short
}
