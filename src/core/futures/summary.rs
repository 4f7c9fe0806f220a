//! Futures one by one, and what they come to together.

use super::ahead::{self, Ahead};
use super::cost::{Account, Flows, Prices, Yearly, account, horizon};
use super::otherwise::Part;
use super::study::{Fitted, Position, Study};
use super::told::Told;
use super::types::{Band, CandidateFutures, Futures, YearsBand};
use crate::core::candidates::{Candidate, CandidateId, offered};
use crate::core::case::Case;
use crate::core::money::cash;
use crate::core::money::present_value::payback_years;
use crate::core::outcome::{Finding, Fit, Outcome};

/// Share of the busiest morning's water from which on it runs cold, as [`crate::core::outcome::Morning::carries`] has it.
const RUNS_COLD: f64 = 0.05;

/// One candidate in one future.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// Everything over the years, discounted.
    pub net_present_cost: f64,
    /// Spent by the end of each year.
    pub spent: Vec<f64>,
    /// Energy and interaction of the first year, dollars.
    pub energy_year: f64,
    /// Electricity and fuel of the first year, kWh.
    pub energy_kwh: f64,
    /// Years until it has cost no more than keeping.
    pub payback_years: Option<f64>,
    /// Life of the heater bought, years.
    pub life_years: f64,
    /// Share of the busiest morning that falls short.
    pub short: f64,
}

impl Study<'_> {
    /// Every candidate in one position. What the findings ask for is that of the case as it stands.
    pub fn cells(&self, fitted: &Fitted, outcome: &Outcome, position: &Position) -> Vec<Cell> {
        self.cells_by(&mut |case, candidates| self.tell(fitted, case, candidates), outcome, position)
    }

    /// The same with years from elsewhere: whole simulations, for those who compare.
    pub fn cells_by(
        &self,
        tell: &mut dyn FnMut(&Case, &[Candidate]) -> Vec<Told>,
        outcome: &Outcome,
        position: &Position,
    ) -> Vec<Cell> {
        let (case, ahead) = self.case_at(position);
        let candidates = offered::candidates(&case);
        let now = tell(&case, &candidates);
        let moved = ahead.moves.map(|(_, way)| {
            let moved = ahead::with_people(&case, way);
            tell(&moved, &candidates)
        });
        self.accounts(outcome, &case, &candidates, &ahead, now, moved)
    }

    /// The futures' own way: the year as a household lives it; once somebody has moved, as much more or less as the response
    /// says.
    pub fn cells_lived(&self, fitted: &Fitted, outcome: &Outcome, position: &Position) -> Vec<Cell> {
        let now = self.live(fitted, &self.case_at(position).0);
        self.cells_of(fitted, outcome, position, now)
    }

    fn cells_of(&self, fitted: &Fitted, outcome: &Outcome, position: &Position, now: Vec<Told>) -> Vec<Cell> {
        let (case, ahead) = self.case_at(position);
        let candidates = offered::candidates(&case);
        let moved = ahead.moves.map(|(_, way)| {
            let before = self.tell(fitted, &case, &candidates);
            let after = self.tell(fitted, &ahead::with_people(&case, way), &candidates);
            now.iter().zip(before.iter().zip(&after)).map(|(now, (b, a))| now.moved(b, a)).collect()
        });
        self.accounts(outcome, &case, &candidates, &ahead, now, moved)
    }

    /// The money of every candidate's year.
    fn accounts(
        &self,
        outcome: &Outcome,
        case: &Case,
        candidates: &[Candidate],
        ahead: &Ahead,
        now: Vec<Told>,
        moved: Option<Vec<Told>>,
    ) -> Vec<Cell> {
        let prices = Prices::of(case, ahead);
        let flows: Vec<Flows> = candidates
            .iter()
            .zip(&now)
            .zip(&outcome.candidates)
            .enumerate()
            .map(|(n, ((candidate, told), known))| {
                let later = moved.as_ref().and_then(|m| m.get(n));
                flows(candidate, case, &known.findings, told, later)
            })
            .collect();
        let same = offered::same_again(case);
        let same = candidates.iter().position(|c| c.id == same).and_then(|n| flows.get(n));
        let accounts: Vec<Account> = candidates
            .iter()
            .zip(&flows)
            .map(|(c, own)| {
                let after = if c.id == CandidateId::Keep { same } else { None };
                account(own, after, case, ahead, &prices)
            })
            .collect();
        let keep_spent = accounts.first().map(Account::spent).unwrap_or_default();
        let keep_cost = accounts.first().map_or(0.0, |a| a.net_present_cost);
        candidates
            .iter()
            .zip(accounts)
            .zip(flows.iter().zip(now))
            .map(|((c, account), (flows, told))| {
                let spent = account.spent();
                let pays = c.id != CandidateId::Keep && account.net_present_cost < keep_cost;
                Cell {
                    net_present_cost: account.net_present_cost,
                    payback_years: if pays { payback_years(&spent, &keep_spent) } else { None },
                    spent,
                    energy_year: flows.now.sum(),
                    energy_kwh: told.year.electricity_year_kwh() + told.year.fuel_year_kwh(),
                    life_years: ahead.lives[0],
                    short: told.short,
                }
            })
            .collect()
    }

    /// The futures from one index to before another: each on its own, in order.
    pub fn draw(&self, fitted: &Fitted, outcome: &Outcome, from: u32, to: u32) -> Vec<Vec<Cell>> {
        (from..to)
            .map(|index| {
                let (position, now) = self.drawn(fitted, index);
                self.cells_of(fitted, outcome, &position, now)
            })
            .collect()
    }

    /// What drawn futures come to. `settled`: nothing better follows.
    pub fn summary(&self, fitted: &Fitted, outcome: &Outcome, drawn: &[Vec<Cell>], settled: bool) -> Futures {
        let fits: Vec<bool> = outcome.candidates.iter().map(|c| c.fit() != Fit::DoesNotFit).collect();
        let cheapest: Vec<Option<usize>> = drawn.iter().map(|future| cheapest(future, &fits)).collect();
        let chance = |n: usize| n as f64 / drawn.len().max(1) as f64;
        let years = horizon(&self.base);
        let candidates: Vec<CandidateFutures> = outcome
            .candidates
            .iter()
            .enumerate()
            .map(|(n, known)| {
                let cells: Vec<&Cell> = drawn.iter().filter_map(|future| future.get(n)).collect();
                let sorted = |of: &dyn Fn(&Cell) -> f64| {
                    let mut all: Vec<f64> = cells.iter().map(|c| of(c)).collect();
                    all.sort_unstable_by(f64::total_cmp);
                    all
                };
                let band = |of: &dyn Fn(&Cell) -> f64| Band::of(&sorted(of));
                let against = |from: &dyn Fn(usize) -> Option<usize>| {
                    let mut all: Vec<f64> = drawn
                        .iter()
                        .enumerate()
                        .filter_map(|(i, f)| {
                            Some(f.get(n)?.net_present_cost - f.get(from(i)?)?.net_present_cost)
                        })
                        .collect();
                    all.sort_unstable_by(f64::total_cmp);
                    all
                };
                let costs = sorted(&|c| c.net_present_cost);
                let in_life = cells
                    .iter()
                    .filter(|c| c.payback_years.is_some_and(|years| years <= c.life_years))
                    .count();
                CandidateFutures {
                    id: known.candidate.id,
                    fits: fits[n],
                    worst: quantile(&costs, 0.95),
                    net_present_cost: Band::of(&costs),
                    against_keeping: Band::of(&against(&|_| Some(0))),
                    spent: (0..=years)
                        .map(|y| band(&|c| c.spent.get(y).or(c.spent.last()).copied().unwrap_or_default()))
                        .collect(),
                    energy_year: band(&|c| c.energy_year),
                    energy_kwh: band(&|c| c.energy_kwh),
                    payback_years: YearsBand::of(cells.iter().map(|c| c.payback_years)),
                    cheapest: chance(cheapest.iter().filter(|best| **best == Some(n)).count()),
                    pays_within_life: chance(in_life),
                    runs_cold: chance(cells.iter().filter(|c| c.short > RUNS_COLD).count()),
                    worst_regret: quantile(&against(&|i| cheapest[i]), 0.95),
                }
            })
            .collect();
        let advised = outcome.advice.best;
        let mut likeliest = (advised, -1.0);
        for c in candidates.iter().filter(|c| c.fits) {
            if c.cheapest > likeliest.1 {
                likeliest = (c.id, c.cheapest);
            }
        }
        let alike = |n: &&usize| candidates.get(**n).is_some_and(|c| Part::are_alike(outcome, c.id, advised));
        let best_alike = cheapest.iter().flatten().filter(alike).count();
        Futures {
            wishes: super::types::Wishes { futures: drawn.len() as u32, ..self.wishes },
            cheapest_alike: chance(best_alike),
            candidates,
            advised,
            likeliest: likeliest.0,
            error: fitted.error,
            settled,
        }
    }
}

/// The cheapest that fits; the first of equals.
pub(super) fn cheapest(future: &[Cell], fits: &[bool]) -> Option<usize> {
    let mut best: Option<(usize, f64)> = None;
    for (n, (cell, fits)) in future.iter().zip(fits).enumerate() {
        if *fits && best.is_none_or(|(_, least)| cell.net_present_cost < least) {
            best = Some((n, cell.net_present_cost));
        }
    }
    best.map(|(n, _)| n)
}

fn flows(
    candidate: &Candidate,
    case: &Case,
    findings: &[Finding],
    now: &Told,
    moved: Option<&Told>,
) -> Flows {
    let running = cash::running(candidate, case, &now.year, findings);
    let mut unburned = case.clone();
    let p = &mut unburned.prices;
    for price in [&mut p.gas, &mut p.propane, &mut p.oil] {
        price.value = 0.0;
    }
    let yearly = |told: &Told| {
        let both = cash::running(candidate, case, &told.year, findings);
        let electric = cash::running(candidate, &unburned, &told.year, findings);
        let electric = electric.energy + electric.interaction;
        Yearly { electric, burned: both.energy + both.interaction - electric }
    };
    let now = yearly(now);
    Flows { now, moved: moved.map_or(now, yearly), running }
}

impl Band {
    /// Of figures in order.
    pub fn of(sorted: &[f64]) -> Band {
        Band { low: quantile(sorted, 0.1), middle: quantile(sorted, 0.5), high: quantile(sorted, 0.9) }
    }
}

impl YearsBand {
    /// Of years in any order; what never happens comes last.
    fn of(years: impl Iterator<Item = Option<f64>>) -> YearsBand {
        let mut all: Vec<f64> = years.map(|y| y.unwrap_or(f64::INFINITY)).collect();
        all.sort_unstable_by(f64::total_cmp);
        let at = |share: f64| {
            let place = libm::ceil(share * all.len() as f64) as usize;
            all.get(place.saturating_sub(1)).copied().filter(|y| y.is_finite())
        };
        YearsBand { low: at(0.1), middle: at(0.5), high: at(0.9) }
    }
}

/// The value that a share of the figures lies below, with a straight line between two of them (Hyndman and Fan 1996, type 7);
/// 0 for none.
pub fn quantile(sorted: &[f64], share: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return 0.0 };
    let place = share.clamp(0.0, 1.0) * last as f64;
    let below = place as usize;
    let low = sorted[below];
    match sorted.get(below + 1) {
        Some(high) => low + (place - below as f64) * (high - low),
        None => low,
    }
}
