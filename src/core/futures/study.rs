//! A case with its open questions on the way to its futures: what to simulate, and what that teaches.
//!
//! **Households** of futures live through their year at a brisk pace ([`super::estimate`]): every candidate, with the draws
//! of that household. Near the case as it stands, whose whole year is known, what the brisk one is off by there is taken off.
//!
//! **What would change the advice** asks for thousands of years: a response ([`super::response`]) to the households tells
//! them from the coordinates of the case alone ([`super::features`]).
//!
//! A household is known by its number ([`super::stages`]): whoever simulates it, in whatever order, gives the same.

use super::ahead::{self, Ahead};
use super::estimate::{Heaters, Lived};
use super::features::{House, Seen};
use super::points::normals;
use super::response::{ENERGY, Response, Sample};
use super::stages::TOO_FEW;
use super::told::{Base, Comes, Told};
use super::types::{FitError, Wishes};
use super::unknowns::Unknowns;
use crate::core::candidates::{Candidate, CandidateId, offered};
use crate::core::case::Case;
use crate::core::outcome::Outcome;
use crate::core::pipeline::Cache;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Place of the weather among what nobody can know ([`ahead::CODES`]).
const WEATHER: usize = 7;
/// How far around the case as it stands what its own brisk year is off by is taken off the others, in coordinates.
const REACH: f64 = 1.5;
/// Households that the response of what would change the advice is fitted to, at most.
const TAUGHT_BY: usize = 192;

/// One position of everything that is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// Of the questions.
    pub questions: Vec<f64>,
    /// Of what nobody can know; `None`: as expected.
    pub ahead: Option<[f64; ahead::COUNT]>,
}

/// A household of futures: each candidate's year at a brisk pace.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lives {
    /// Which household.
    pub index: u32,
    years: Vec<Life>,
}

/// A candidate's year there.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Life {
    seen: Seen,
    comes: Comes,
}

/// A case whose futures are asked for.
pub struct Study<'a> {
    pub(super) unknowns: &'a dyn Unknowns,
    pub(super) wishes: Wishes,
    pub(super) drawn: Vec<bool>,
    pub(super) base: Case,
    heaters: Arc<Heaters>,
}

/// What was learned of every candidate.
#[derive(Clone, Debug)]
pub struct Fitted {
    responses: Vec<Response>,
    bases: Vec<Base>,
    lives: Vec<Lives>,
    /// How far off.
    pub error: FitError,
}

impl<'a> Study<'a> {
    /// Of a case and what is open about it.
    pub fn new(unknowns: &'a dyn Unknowns, wishes: Wishes) -> Study<'a> {
        let heaters = Arc::new(Heaters::of(&unknowns.case(&[]), &mut Cache::default()));
        Study::with_heaters(unknowns, wishes, heaters)
    }

    /// The same where the heaters of the case are known already: they are most of what a study costs to begin.
    pub fn with_heaters(unknowns: &'a dyn Unknowns, wishes: Wishes, heaters: Arc<Heaters>) -> Study<'a> {
        let base = unknowns.case(&[]);
        let wishes = Wishes { futures: wishes.futures.clamp(1, Wishes::MOST), ..wishes };
        let drawn = unknowns.coordinates().iter().map(|c| c.open && c.drawn).collect();
        Study { drawn, heaters, base, unknowns, wishes }
    }

    /// The case as it stands.
    pub fn base(&self) -> &Case {
        &self.base
    }

    /// What was asked for, within bounds.
    pub fn wishes(&self) -> Wishes {
        self.wishes
    }

    fn position(&self, index: u32, seed: u32) -> Position {
        let z = normals(index, self.drawn.len() + ahead::COUNT, seed);
        let (questions, years) = z.split_at(self.drawn.len());
        Position {
            questions: questions
                .iter()
                .zip(&self.drawn)
                .map(|(z, drawn)| if *drawn { *z } else { 0.0 })
                .collect(),
            ahead: years.try_into().ok(),
        }
    }

    /// The position of a future, from 0, on a household of its own.
    pub fn future(&self, index: u32) -> Position {
        self.position(index, self.wishes.seed)
    }

    /// The position of a future on one of so many households: what moves the year itself is the household's, prices,
    /// lives and moves are its own.
    fn future_of(&self, index: u32, households: u32) -> Position {
        let mut own = self.future(index);
        if index < households {
            return own;
        }
        let household = self.future(index % households);
        let lived = self.unknowns.coordinates().iter().map(|c| c.lived);
        for ((own, theirs), lived) in own.questions.iter_mut().zip(&household.questions).zip(lived) {
            if lived {
                *own = *theirs;
            }
        }
        if let (Some(own), Some(theirs)) = (&mut own.ahead, &household.ahead) {
            own[WEATHER] = theirs[WEATHER];
        }
        own
    }

    /// The case that a position's year is lived in.
    pub fn case_at(&self, position: &Position) -> (Case, Ahead) {
        let mut case = self.unknowns.case(&position.questions);
        let ahead = match &position.ahead {
            Some(z) => Ahead::of(z, &case),
            None => Ahead::expected(&case),
        };
        ahead::warmer(&mut case, ahead.warmer_k);
        (case, ahead)
    }

    /// The household of the case as it stands.
    pub fn as_it_stands(&self) -> Lives {
        Lives { index: 0, years: self.lived(&self.base) }
    }

    /// The household of a number.
    pub fn lives(&self, index: u32) -> Lives {
        let (case, _) = self.case_at(&self.future(index));
        Lives { index, years: self.lived(&case) }
    }

    fn lived(&self, case: &Case) -> Vec<Life> {
        let house = House::of(case);
        let lived = Lived::of(case, &self.heaters);
        offered::candidates(case)
            .iter()
            .map(|candidate| {
                let standing = lived.heater(case, candidate, &self.heaters);
                let seen = house.with(case, candidate, candidate.id == CandidateId::Keep);
                let short = lived.short(case, &standing);
                Life { comes: Comes::of(&lived.year(&standing), seen.heat_kwh, short), seen }
            })
            .collect()
    }

    /// Learns from households, in whatever order; `outcome` is the whole advice on the case as it stands, `here` the
    /// household of that. `None` without a household.
    pub fn fit<'p>(
        &self,
        here: &Lives,
        lives: impl IntoIterator<Item = &'p Lives>,
        outcome: &Outcome,
    ) -> Option<Fitted> {
        let mut lives: Vec<&Lives> = lives.into_iter().collect();
        lives.sort_unstable_by_key(|l| l.index);
        if lives.is_empty() {
            return None;
        }
        let mut fitted = Fitted {
            responses: Vec::new(),
            bases: Vec::new(),
            lives: Vec::new(),
            error: FitError { energy: 0.0, years: lives.len() as u32 },
        };
        for (n, (here, whole)) in here.years.iter().zip(&outcome.candidates).enumerate() {
            let mut year = whole.year.clone();
            year.forget_series();
            let comes = Comes::of(&year, here.seen.heat_kwh, whole.morning.short_share());
            let base = Base {
                off: comes.off(&here.comes),
                truth: comes.beside(&here.seen),
                year,
                seen: here.seen.clone(),
            };
            let error = base.off[ENERGY].abs();
            if error > fitted.error.energy {
                fitted.error.energy = error;
            }
            let first = Sample { at: base.seen.at, gave: base.truth };
            let taught = lives.iter().take(TAUGHT_BY).filter_map(|l| {
                let life = l.years.get(n)?;
                Some(Sample { at: life.seen.at, gave: base.corrected(life).beside(&life.seen) })
            });
            let samples: Vec<Sample> = std::iter::once(first).chain(taught).collect();
            fitted.responses.push(Response::fit(&samples, &base.truth)?);
            fitted.bases.push(base);
        }
        fitted.lives = lives.into_iter().cloned().collect();
        Some(fitted)
    }

    /// Every candidate's year of a case near the one that stands, by the response.
    pub fn tell(&self, fitted: &Fitted, case: &Case, candidates: &[Candidate]) -> Vec<Told> {
        let house = House::of(case);
        candidates
            .iter()
            .zip(fitted.responses.iter().zip(&fitted.bases))
            .map(|(candidate, (response, base))| {
                let seen = house.with(case, candidate, candidate.id == CandidateId::Keep);
                base.told(&Comes::from(&response.at(&seen.at), &seen))
            })
            .collect()
    }

    /// Every candidate's year of a case at a brisk pace, corrected.
    pub fn live(&self, fitted: &Fitted, case: &Case) -> Vec<Told> {
        fitted.told(&self.lived(case))
    }

    /// A future, from 0: its position, and every candidate's year there.
    pub(super) fn drawn(&self, fitted: &Fitted, index: u32) -> (Position, Vec<Told>) {
        let households = fitted.lives.len() as u32;
        if households < TOO_FEW {
            let position = self.future(index);
            let (case, _) = self.case_at(&position);
            let told = self.tell(fitted, &case, &offered::candidates(&case));
            return (position, told);
        }
        let lives = fitted.lives.get((index % households) as usize);
        (self.future_of(index, households), lives.map(|l| fitted.told(&l.years)).unwrap_or_default())
    }
}

impl Fitted {
    fn told(&self, lives: &[Life]) -> Vec<Told> {
        lives.iter().zip(&self.bases).map(|(life, base)| base.told(&base.corrected(life))).collect()
    }
}

impl Base {
    /// What a household's year comes to, less what the brisk year of the case as it stands is off by; all of that there,
    /// less of it further away.
    fn corrected(&self, life: &Life) -> Comes {
        let apart: f64 = life.seen.at.iter().zip(&self.seen.at).map(|(a, b)| (a - b) * (a - b)).sum();
        let near = libm::exp(-0.5 * apart / (REACH * REACH));
        life.comes.less(&self.off.map(|off| near * off))
    }
}
