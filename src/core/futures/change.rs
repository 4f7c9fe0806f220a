//! What would change the advice: whether a question's plausible range turns the advice over, where the advised candidate and the
//! next cost the same, and who wins over two quantities. Which questions, and in which order, is [`super::weigh`]'s.

use super::study::{Fitted, Position, Study};
use super::summary::cheapest;
use super::types::{Axis, BreakEven, BreakEvenMap, Sensitivity};
use super::unknowns::PLAUSIBLE_Z;
use crate::core::advice;
use crate::core::candidates::{CandidateId, offered};
use crate::core::case::Case;
use crate::core::checks::{self, Seen, rules::us::US};
use crate::core::money::cash;
use crate::core::numeric::root_in_bracket;
use crate::core::outcome::{CandidateOutcome, Fit, Outcome, YearResult};
use std::borrow::Cow;

/// How far beyond the plausible a break-even is looked for, in standard deviations.
const FAR_Z: f64 = 5.0;
/// Steps of that search on either side.
const STEPS: i32 = 10;
/// Width of the final bracket, standard deviations, and evaluations at most.
const NARROW_Z: f64 = 1e-4;
const EVALUATIONS: u32 = 60;
/// Positions of options tried: enough to meet each of a list's.
const OPTION_PLACES: i32 = 16;

impl Study<'_> {
    /// What the second of a pair costs more than the first.
    pub(super) fn difference(
        &self,
        fitted: &Fitted,
        outcome: &Outcome,
        pair: (usize, usize),
        at: &Position,
    ) -> f64 {
        let cells = self.cells(fitted, outcome, at);
        match (cells.get(pair.0), cells.get(pair.1)) {
            (Some(a), Some(b)) => b.net_present_cost - a.net_present_cost,
            _ => 0.0,
        }
    }

    fn at(&self, coordinate: usize, z: f64) -> Position {
        let mut questions = vec![0.0; coordinate + 1];
        questions[coordinate] = z;
        Position { questions, ahead: None }
    }

    pub(super) fn one(
        &self,
        fitted: &Fitted,
        outcome: &Outcome,
        pair: (usize, usize),
        at: usize,
        ids: (CandidateId, CandidateId),
    ) -> Sensitivity {
        let coordinate = &self.unknowns.coordinates()[at];
        let mut at_z = |z: f64| self.difference(fitted, outcome, pair, &self.at(at, z));
        let (low, high) = (at_z(-PLAUSIBLE_Z), at_z(PLAUSIBLE_Z));
        let value = |z: f64| self.unknowns.value(at, z);
        let break_even = if coordinate.number && coordinate.drawn {
            turning(&mut at_z).and_then(|z| {
                let rising = at_z(z + 0.01) > at_z(z - 0.01);
                Some(BreakEven {
                    code: coordinate.code.clone(),
                    value: value(z)?,
                    now: value(0.0)?,
                    below: if rising { ids.1 } else { ids.0 },
                    above: if rising { ids.0 } else { ids.1 },
                    plausible: z.abs() <= PLAUSIBLE_Z,
                })
            })
        } else {
            None
        };
        let places: Vec<f64> = if coordinate.number {
            vec![-PLAUSIBLE_Z, -0.5 * PLAUSIBLE_Z, 0.5 * PLAUSIBLE_Z, PLAUSIBLE_Z]
        } else {
            (-OPTION_PLACES..=OPTION_PLACES).map(|k| 2.5 * f64::from(k) / f64::from(OPTION_PLACES)).collect()
        };
        let mut tried: Vec<Case> = Vec::new();
        let mut flips_to = None;
        if coordinate.open {
            for z in places {
                let case = self.unknowns.answered(at, z);
                if flips_to.is_some() || tried.contains(&case) {
                    continue;
                }
                let best = self.advised(fitted, outcome, &case);
                flips_to = best.filter(|best| *best != ids.0);
                tried.push(case);
            }
        }
        Sensitivity {
            code: coordinate.code.clone(),
            open: coordinate.open,
            alone: 0.0,
            total: 0.0,
            difference: (low, high),
            range: value(-PLAUSIBLE_Z).zip(value(PLAUSIBLE_Z)),
            flips_to,
            alternative: None,
            break_even,
        }
    }

    /// Who is advised in a case near the one that stands: the advice's own rules and checks, on years told by the response.
    fn advised(&self, fitted: &Fitted, outcome: &Outcome, case: &Case) -> Option<CandidateId> {
        let candidates = offered::candidates(case);
        let told = self.tell(fitted, case, &candidates);
        let mut all = Vec::with_capacity(candidates.len());
        for ((candidate, told), known) in candidates.into_iter().zip(told).zip(&outcome.candidates) {
            let mut morning = known.morning.without_series();
            morning.shortfall = told.short * morning.asked;
            let seen = Seen { candidate: &candidate, case, year: &told.year, opened: None, rules: &US };
            let mut findings = checks::all(&seen);
            case.offer.price_work(&mut findings);
            all.push(CandidateOutcome {
                label: known.label.clone(),
                cost: known.cost.clone(),
                year: told.year,
                candidate,
                morning,
                findings,
            });
        }
        let running: Vec<cash::Running> =
            all.iter().map(|c| cash::running(&c.candidate, case, &c.year, &c.findings)).collect();
        let ids: Vec<CandidateId> = all.iter().map(|c| c.candidate.id).collect();
        let years: Vec<&YearResult> = all.iter().map(|c| &c.year).collect();
        let costs = cash::costs(case, &ids, &running, &years);
        for (c, cost) in all.iter_mut().zip(costs) {
            c.cost = cost;
        }
        Some(advice::of(case, &all).best)
    }

    /// Who is cheapest over two numbers, named by code, from their far low to their far high value; `None` where a code is none
    /// of a number's.
    pub fn map(
        &self,
        fitted: &Fitted,
        outcome: &Outcome,
        (x, y): (&str, &str),
        steps: usize,
    ) -> Option<BreakEvenMap> {
        let coordinates = self.unknowns.coordinates();
        let find = |code: &str| coordinates.iter().position(|c| c.code == code && c.number && c.drawn);
        let (x, y) = (find(x)?, find(y)?);
        let steps = steps.clamp(2, 100);
        let z = |step: usize| 2.0 * PLAUSIBLE_Z * (2.0 * step as f64 / (steps - 1) as f64 - 1.0);
        let axis = |at: usize| {
            Some(Axis {
                code: coordinates[at].code.clone(),
                values: (0..steps).map(|step| self.unknowns.value(at, z(step))).collect::<Option<_>>()?,
                now: self.unknowns.value(at, 0.0)?,
            })
        };
        let fits: Vec<bool> = outcome.candidates.iter().map(|c| c.fit() != Fit::DoesNotFit).collect();
        let mut winners = Vec::with_capacity(steps * steps);
        for row in 0..steps {
            for column in 0..steps {
                let mut questions = vec![0.0; coordinates.len()];
                questions[x] = z(column);
                questions[y] = z(row);
                let cells = self.cells(fitted, outcome, &Position { questions, ahead: None });
                let best = cheapest(&cells, &fits).unwrap_or(0);
                winners.push(outcome.candidates.get(best).map_or(CandidateId::Keep, |c| c.candidate.id));
            }
        }
        Some(BreakEvenMap { x: axis(x)?, y: axis(y)?, cheapest: winners })
    }
}

/// The sign change nearest to 0, by steps outward and then a bracketed root.
fn turning(f: &mut dyn FnMut(f64) -> f64) -> Option<f64> {
    let here = f(0.0);
    let mut ends = [(0.0, here); 2];
    for step in 1..=STEPS {
        for (side, end) in ends.iter_mut().enumerate() {
            let z = FAR_Z * f64::from(step) / f64::from(STEPS) * if side == 0 { 1.0 } else { -1.0 };
            let there = f(z);
            if (there > 0.0) != (end.1 > 0.0) {
                let (low, high) = if z < end.0 { (z, end.0) } else { (end.0, z) };
                return root_in_bracket(f, low, high, NARROW_Z, EVALUATIONS).ok().map(|root| root.x);
            }
            *end = (z, there);
        }
    }
    None
}

impl Sensitivity {
    pub(super) fn unknowable(code: Cow<'static, str>) -> Sensitivity {
        Sensitivity {
            code,
            open: false,
            alone: 0.0,
            total: 0.0,
            difference: (0.0, 0.0),
            range: None,
            flips_to: None,
            alternative: None,
            break_even: None,
        }
    }
}
