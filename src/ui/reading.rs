//! Figures drawn from an outcome: what is compared with what, and what that comes to.

use crate::core::candidates::CandidateId;
use crate::core::message::{Arg, Message};
use crate::core::outcome::{CandidateOutcome, Cost, Outcome};
use crate::core::units::Unit;

/// Names of the figures that have a working.
pub const ENERGY: &str = "figure-energy";
/// See [`ENERGY`].
pub const RUNNING: &str = "figure-running";
/// See [`ENERGY`].
pub const SAVED: &str = "figure-saved";
/// See [`ENERGY`].
pub const PAYBACK: &str = "figure-payback";
/// See [`ENERGY`].
pub const UPFRONT: &str = "figure-upfront";
/// See [`ENERGY`].
pub const NET_PRESENT_COST: &str = "figure-net-present-cost";
/// See [`ENERGY`].
pub const FIRST_HOUR: &str = "figure-first-hour";
/// See [`ENERGY`].
pub const MORNING: &str = "figure-morning";
/// See [`ENERGY`].
pub const EMISSION: &str = "figure-emission";

/// How a heater does in the rating test: shown in the place of a working.
pub const TEST: &str = "rating-test";

/// What a year costs to run: energy, what the house's heating and cooling make of it, maintenance.
pub fn running_year(cost: &Cost) -> f64 {
    cost.energy_year + cost.interaction_year + cost.maintenance_year
}

/// The heater that the recommended one is shown beside: the present one, or when that is recommended
/// the first runner-up.
pub fn rival(outcome: &Outcome) -> CandidateId {
    let best = outcome.advice.best;
    if best != CandidateId::Keep && outcome.of(CandidateId::Keep).is_some() {
        return CandidateId::Keep;
    }
    outcome
        .advice
        .runners_up
        .iter()
        .map(|r| r.id)
        .find(|&id| id != best && outcome.of(id).is_some())
        .unwrap_or(best)
}

/// Dollars a year that the recommended heater saves over its rival (negative: costs).
pub fn saved_a_year(outcome: &Outcome) -> Option<f64> {
    let best = outcome.of(outcome.advice.best)?;
    let rival = outcome.of(rival(outcome))?;
    Some(running_year(&rival.cost) - running_year(&best.cost))
}

/// The key figures beside the verdict: what it saves or costs a year, and when it is paid back.
pub fn key_figures(outcome: &Outcome) -> Vec<Message> {
    let Some(best) = outcome.of(outcome.advice.best) else { return Vec::new() };
    if outcome.advice.best == CandidateId::Keep {
        return vec![Message::new("page-figure-runs").quantity(
            "amount",
            running_year(&best.cost),
            Unit::Dollar,
        )];
    }
    let mut figures = Vec::new();
    if let Some(saved) = saved_a_year(outcome) {
        let (words, amount) =
            if saved >= 0.0 { ("page-figure-saves", saved) } else { ("page-figure-costs-more", -saved) };
        figures.push(Message::new(words).quantity("amount", amount, Unit::Dollar));
    }
    figures.push(payback(&best.cost));
    figures
}

/// When it is paid back.
pub fn payback(cost: &Cost) -> Message {
    match cost.payback_years {
        Some(years) if years <= 0.0 => Message::new("page-figure-payback-at-once"),
        Some(years) => Message::new("page-figure-payback").with("years", Arg::Number(years, 1)),
        None => Message::new("page-figure-payback-never"),
    }
}

/// When it is paid back, short enough for a table's cell.
pub fn payback_cell(cost: &Cost) -> Message {
    match cost.payback_years {
        Some(years) if years <= 0.0 => Message::new("page-table-payback-at-once"),
        Some(years) => Message::new("page-table-payback-years").with("years", Arg::Number(years, 1)),
        None => Message::new("page-table-payback-never"),
    }
}

/// Energy used a year, electricity and fuel, kWh.
pub fn energy_year_kwh(c: &CandidateOutcome) -> f64 {
    c.year.electricity_year_kwh() + c.year.fuel_year_kwh()
}
