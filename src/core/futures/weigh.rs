//! What would change the advice, found a step at a time: first the shares of the doubt, a point each, then what each question
//! does by itself. Whoever takes the steps, few or many at once, comes to the same to the bit.

use super::ahead;
use super::otherwise::Part;
use super::shares::{Share, Sums};
use super::study::{Fitted, Position, Study};
use super::types::{Changes, Sensitivity};
use super::unknowns::Coordinate;
use crate::core::candidates::CandidateId;
use crate::core::outcome::{Fit, Outcome};
use std::borrow::Cow;

/// Points that shares of variance are estimated from.
const POINTS: u32 = 64;

/// What would change the advice, as far as it is found.
#[derive(Clone, Debug)]
pub struct Weighing {
    /// The advised candidate and the next.
    ids: (CandidateId, CandidateId),
    /// Their places in the outcome.
    pair: (usize, usize),
    sums: Sums,
    /// What the groups of inputs are called.
    codes: Vec<Cow<'static, str>>,
    /// Coordinates that have no share, looked at after those that do.
    others: Vec<usize>,
    found: Vec<Sensitivity>,
}

impl Weighing {
    /// Steps taken.
    pub fn done(&self) -> u32 {
        self.sums.points() + self.found.len() as u32
    }

    /// Steps in all.
    pub fn steps(&self) -> u32 {
        POINTS + (self.codes.len() + self.others.len()) as u32
    }

    /// What was found.
    pub fn changes(self) -> Changes {
        let mut found = self.found;
        found.retain(|s| s.total > 0.0 || s.flips_to.is_some() || s.break_even.is_some());
        found.sort_by(|a, b| {
            let flips = |s: &Sensitivity| s.open && s.flips_to.is_some();
            flips(b).cmp(&flips(a)).then(b.total.total_cmp(&a.total))
        });
        Changes { advised: self.ids.0, next: self.ids.1, sensitivities: found }
    }
}

impl Study<'_> {
    /// The advised candidate's rival: of those that fit, the first in the advice's order that would be other advice, not
    /// another size of the same; where there is none, the first. `None` where nothing else fits.
    fn rival(outcome: &Outcome) -> Option<CandidateId> {
        let fits = |id: &CandidateId| outcome.of(*id).is_some_and(|c| c.fit() != Fit::DoesNotFit);
        let is_other = |id: &CandidateId| !Part::are_alike(outcome, *id, outcome.advice.best);
        let others: Vec<CandidateId> = outcome.advice.runners_up.iter().map(|r| r.id).filter(fits).collect();
        others.iter().copied().find(is_other).or(others.first().copied())
    }

    /// What would change the advice; `None` where there is nothing else to choose.
    pub fn changes(&self, fitted: &Fitted, outcome: &Outcome) -> Option<Changes> {
        let mut weighing = self.weighing(outcome)?;
        while self.weigh(&mut weighing, fitted, outcome) {}
        Some(weighing.changes())
    }

    /// Begins to find what would change the advice; `None` where there is nothing else to choose.
    pub fn weighing(&self, outcome: &Outcome) -> Option<Weighing> {
        let ids = (outcome.advice.best, Self::rival(outcome)?);
        let place = |id| outcome.candidates.iter().position(|c| c.candidate.id == id);
        let pair = (place(ids.0)?, place(ids.1)?);
        let coordinates = self.unknowns.coordinates();
        let (groups, codes) = self.groups(coordinates);
        // Answered prices and the like have a break-even too; what only decides the fit may turn the advice.
        let others = |c: &Coordinate| !codes.contains(&c.code) && (c.open || c.number && c.drawn);
        let others = (0..coordinates.len()).filter(|at| others(&coordinates[*at])).collect();
        let sums = Sums::of(&groups, self.wishes.seed ^ 0x7a3e_11ed);
        Some(Weighing { ids, pair, sums, codes, others, found: Vec::new() })
    }

    /// Takes the next step; whether another follows.
    pub fn weigh(&self, weighing: &mut Weighing, fitted: &Fitted, outcome: &Outcome) -> bool {
        let coordinates = self.unknowns.coordinates();
        let (ids, pair) = (weighing.ids, weighing.pair);
        if weighing.sums.points() < POINTS {
            weighing.sums.add(&mut |z: &[f64]| {
                let (questions, years) = z.split_at(coordinates.len());
                let questions =
                    questions.iter().zip(&self.drawn).map(|(z, d)| if *d { *z } else { 0.0 }).collect();
                let position = Position { questions, ahead: years.try_into().ok() };
                self.difference(fitted, outcome, pair, &position)
            });
            return weighing.done() < weighing.steps();
        }
        let next = weighing.found.len();
        let found = match weighing.codes.get(next) {
            Some(code) => {
                let share = weighing.sums.shares().get(next).copied().unwrap_or_default();
                let Share { alone, total } = share;
                let one = match coordinates.iter().position(|c| c.code == *code) {
                    Some(at) => self.one(fitted, outcome, pair, at, ids),
                    None => Sensitivity::unknowable(code.clone()),
                };
                Some(Sensitivity { alone, total, ..one })
            }
            None => {
                let other = weighing.others.get(next - weighing.codes.len());
                other.map(|at| self.one(fitted, outcome, pair, *at, ids))
            }
        };
        weighing.found.extend(found);
        weighing.done() < weighing.steps()
    }

    /// Groups of inputs for the shares of variance, and what each is called.
    fn groups(&self, coordinates: &[Coordinate]) -> (Vec<Option<usize>>, Vec<Cow<'static, str>>) {
        let mut codes: Vec<Cow<'static, str>> = Vec::new();
        let mut groups = Vec::new();
        let years = ahead::CODES.into_iter().map(|code| (Cow::Borrowed(code), true));
        let questions = coordinates.iter().zip(&self.drawn).map(|(c, drawn)| (c.code.clone(), *drawn));
        for (code, drawn) in questions.chain(years) {
            groups.push(drawn.then(|| {
                codes.iter().position(|known| *known == code).unwrap_or_else(|| {
                    codes.push(code);
                    codes.len() - 1
                })
            }));
        }
        (groups, codes)
    }
}
