//! What comes out of the futures: plain data for the page, files and tests. Money in today's dollars.

use crate::core::candidates::CandidateId;
use crate::core::units::Quantity;
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// How many futures to draw, and from which seed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Wishes {
    /// Futures drawn, at least 1; more than [`Wishes::MOST`] are not.
    pub futures: u32,
    /// Seed of the draw.
    pub seed: u32,
}

impl Wishes {
    /// What the quasi-random points reach to.
    pub const MOST: u32 = 1 << 16;
}

impl Default for Wishes {
    fn default() -> Self {
        Self { futures: 1_000, seed: 1 }
    }
}

/// Where a figure lies in the futures: below `low` in one of ten, above `high` in one of ten.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// 10 % of the futures lie below.
    pub low: f64,
    /// As many lie above as below.
    pub middle: f64,
    /// 10 % of the futures lie above.
    pub high: f64,
}

/// A band of years until something happens; `None`: not within the years counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct YearsBand {
    /// 10 % of the futures get there sooner.
    pub low: Option<f64>,
    /// Half of them get there sooner.
    pub middle: Option<f64>,
    /// 90 % of them get there sooner.
    pub high: Option<f64>,
}

/// One candidate in all the futures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CandidateFutures {
    /// Which.
    pub id: CandidateId,
    /// Whether it may fit: those that do not are never the cheapest.
    pub fits: bool,
    /// Everything over the years counted, discounted.
    pub net_present_cost: Band,
    /// The same, less that of keeping the present heater in the same future.
    pub against_keeping: Band,
    /// Spent by the end of each year, not discounted; the first entry is the start.
    pub spent: Vec<Band>,
    /// Energy and what the house's heating and cooling pay, first year, dollars.
    pub energy_year: Band,
    /// Electricity and fuel of the first year, kWh.
    pub energy_kwh: Band,
    /// Years until it has cost no more than keeping the present heater.
    pub payback_years: YearsBand,
    /// Chance that nothing that fits costs less, 0 to 1.
    pub cheapest: f64,
    /// Chance that it has paid back before it wears out, 0 to 1.
    pub pays_within_life: f64,
    /// Chance that the busiest morning runs cold, 0 to 1.
    pub runs_cold: f64,
    /// Net present cost that only one future in twenty exceeds: the worst plausible case.
    pub worst: f64,
    /// What it costs more than the cheapest that fits, which only one future in twenty exceeds.
    pub worst_regret: f64,
}

/// How near the futures' years are, by the case as it stands: its years are known at both paces.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct FitError {
    /// What the brisk year's energy is off by, relative, of the candidate furthest off.
    pub energy: f64,
    /// Years lived by each candidate.
    pub years: u32,
}

/// The futures of a case.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Futures {
    /// How many were drawn, and from which seed.
    pub wishes: Wishes,
    /// Every candidate, in the order of the outcome.
    pub candidates: Vec<CandidateFutures>,
    /// The advised candidate.
    pub advised: CandidateId,
    /// Share of futures in which it is cheapest, or another one that comes to the same advice: another size of its kind, say.
    pub cheapest_alike: f64,
    /// Of those that fit, the one that is cheapest most often.
    pub likeliest: CandidateId,
    /// How near their years are.
    pub error: FitError,
    /// Whether this is the last word, and not a first view by fewer simulated years.
    pub settled: bool,
}

impl Futures {
    /// The futures of a candidate.
    pub fn of(&self, id: CandidateId) -> Option<&CandidateFutures> {
        self.candidates.iter().find(|c| c.id == id)
    }
}

/// What a question, or something nobody can know today, does to the choice between the advised candidate and
/// the next.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sensitivity {
    /// Code of the question, or of what cannot be known (`future_lives`, `future_prices`, `future_household`,
    /// `future_weather`).
    pub code: Cow<'static, str>,
    /// Whether somebody could answer it: it is a question that nobody has answered.
    pub open: bool,
    /// Share of the variance of the cost difference that it makes alone, 0 to 1 (first order).
    pub alone: f64,
    /// The same with all its interactions (total order).
    pub total: f64,
    /// The difference (next less advised) at its low and its high plausible value, all else as it stands, dollars; of a question
    /// that makes another house, the lowest and the highest met.
    pub difference: (f64, f64),
    /// Its low and high plausible value; `None` for what is no number.
    pub range: Option<(Quantity, Quantity)>,
    /// The candidate that is advised somewhere in its plausible range instead.
    pub flips_to: Option<CandidateId>,
    /// The option, or the place, with which it is advised; only of a question that makes another house, which is not drawn but
    /// tried option by option ([`super::otherwise`]): it has no share of the variance.
    pub alternative: Option<Cow<'static, str>>,
    /// Where the choice turns over, within reason: also beyond the plausible range.
    pub break_even: Option<BreakEven>,
}

/// The value of one quantity at which the advised candidate and another cost the same.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct BreakEven {
    /// Code of the question.
    pub code: Cow<'static, str>,
    /// The value, in the unit of the question's default.
    pub value: Quantity,
    /// What stands in the case.
    pub now: Quantity,
    /// Cheaper below it.
    pub below: CandidateId,
    /// Cheaper above it.
    pub above: CandidateId,
    /// Whether it lies in the plausible range.
    pub plausible: bool,
}

/// What would change the advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Changes {
    /// The advised candidate.
    pub advised: CandidateId,
    /// The one it is weighed against: of those that fit, the cheapest other.
    pub next: CandidateId,
    /// Those that can turn the advice first, then by how much they move it.
    pub sensitivities: Vec<Sensitivity>,
}

/// One axis of a map: a question's values in order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Axis {
    /// Code of the question.
    pub code: Cow<'static, str>,
    /// Its values, low to high.
    pub values: Vec<Quantity>,
    /// What stands in the case.
    pub now: Quantity,
}

/// Who is cheapest over two quantities.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct BreakEvenMap {
    /// Across.
    pub x: Axis,
    /// Up.
    pub y: Axis,
    /// The cheapest that fits at each pair: row by row from the lowest y, each from the lowest x.
    pub cheapest: Vec<CandidateId>,
}
