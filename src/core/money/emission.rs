//! CO₂ by year: fuel burned, and electricity by what power plants emit as that changes.
//!
//! Fuel's part stays, the grid's falls or rises by a share a year. Burning factors are those of published tables
//! (`climate::prices`); the grid's is its region's mean over a year, which an hour's may differ from.

use super::cash;
use crate::core::candidates::CandidateId;
use crate::core::candidates::offered::same_again;
use crate::core::case::Case;
use crate::core::life::present;
use crate::core::outcome::{CandidateOutcome, Outcome};
use serde::{Deserialize, Serialize};

/// How far the grid's factor may be off its region's mean, as shares of it: plants that run when water is heated, and
/// borders of regions. From memory of published marginal and mean factors.
const FACTOR: (f64, f64) = (0.75, 1.25);
/// How far its yearly change may be off the stated one: the spread of that question.
const CHANGE: (f64, f64) = (-0.02, 0.02);

/// A candidate's CO₂ over the years.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Emission {
    /// Which.
    pub id: CandidateId,
    /// Of which the first year's electricity, kg.
    pub grid_kg: f64,
    /// The first year's fuel: the heater's, and what the house's heating burns for the heat it gives up, kg.
    pub fuel_kg: f64,
    /// By year, kg.
    pub by_year: Vec<f64>,
    /// The same with a low and a high factor and change of the grid.
    pub low_high: (Vec<f64>, Vec<f64>),
}

impl Emission {
    /// All years, kg, and with low and high factors.
    pub fn total(&self) -> [f64; 3] {
        [&self.by_year, &self.low_high.0, &self.low_high.1].map(|years| years.iter().sum())
    }
}

/// First year's CO₂ of electricity and of fuel, kg.
fn parts(case: &Case, c: &CandidateOutcome) -> [f64; 2] {
    // What is left without a grid is burned.
    let mut clean = case.clone();
    clean.prices.grid_emission.value = 0.0;
    let fuel = cash::running(&c.candidate, &clean, &c.year, &c.findings).emission_kg;
    [c.cost.emission_kg - fuel, fuel]
}

/// Every candidate's CO₂ over the years counted, in the order of the outcome. The present heater's goes on as the
/// same again's once it may be expected to have failed.
pub fn of(case: &Case, outcome: &Outcome) -> Vec<Emission> {
    let years = (case.prices.horizon_years.value.round() as usize).max(1);
    let change = case.prices.grid_change.value;
    let same = outcome.of(same_again(case)).map(|c| parts(case, c));
    let fails = present::expected_left(&case.heater);
    outcome
        .candidates
        .iter()
        .map(|c| {
            let own = parts(case, c);
            let after = if c.candidate.id == CandidateId::Keep { same } else { None };
            let path = |factor: f64, change: f64| -> Vec<f64> {
                let mut grid = factor;
                let mut path = Vec::with_capacity(years);
                for y in 0..years {
                    let of = |p: [f64; 2]| p[0] * grid + p[1];
                    let share = if after.is_some() { (fails - y as f64).clamp(0.0, 1.0) } else { 1.0 };
                    path.push(share * of(own) + after.map_or(0.0, |same| (1.0 - share) * of(same)));
                    grid *= 1.0 + change;
                }
                path
            };
            // Heat that a heat pump takes from a heated house may make its electricity's part negative, never the
            // sum: low stays below high year by year.
            let (a, b) = (path(FACTOR.0, change + CHANGE.0), path(FACTOR.1, change + CHANGE.1));
            let pick =
                |smaller: bool| a.iter().zip(&b).map(move |(a, b)| if (a < b) == smaller { *a } else { *b });
            Emission {
                id: c.candidate.id,
                grid_kg: own[0],
                fuel_kg: own[1],
                by_year: path(1.0, change),
                low_high: (pick(true).collect(), pick(false).collect()),
            }
        })
        .collect()
}
