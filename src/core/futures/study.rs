//! A case with its open questions on the way to its futures: what to simulate, and what that teaches.
//!
//! - **Households** of futures live through their year in strokes ([`super::estimate`]): every candidate, with the draws of
//!   that household.
//! - **Design points** are simulated both ways, by the first look of the pipeline and in strokes, on the same days. What
//!   the strokes are off by, a response learns ([`super::response`]) in the coordinates of the case and of the strokes
//!   themselves (how much the elements do, what is lost standing, how long the air is too cold): the *correction*.
//! - **What would change the advice** asks for thousands of years: a second response, of the corrected households, tells them
//!   from the coordinates of the case alone.
//!
//! Each piece is named by its number ([`super::stages`]): whoever simulates it, in whatever order, gives the same.

use super::ahead::{self, Ahead};
use super::estimate::{Heaters, Lived};
use super::features::{COUNT, House, Seen};
use super::points::normals;
use super::response::{OUTPUTS, Response, Sample};
use super::stages::{Piece, Task, task};
use super::told::{Base, Comes, Told, used};
use super::types::{FitError, Wishes};
use super::unknowns::Unknowns;
use crate::core::candidates::{Candidate, CandidateId, offered};
use crate::core::case::Case;
use crate::core::outcome::{Outcome, YearResult};
use crate::core::pipeline::{Cache, Run};
use crate::core::strokes::Strokes;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// What sets the design's points apart from the futures'.
const DESIGN: u32 = 0x5eed_1e55;
/// Place of the weather among what nobody can know ([`ahead::CODES`]), and of who moves out or in.
const WEATHER: usize = 7;
const WAY: usize = 6;

/// Coordinates of the correction: those of the case, drawn together, and shares of the strokes.
const SHARES: usize = 4;
const CORRECTED: usize = COUNT + SHARES;
/// Weights of the two: a share counts for much more than a place.
const OF_PLACE: f64 = 0.6;
const OF_SHARES: f64 = 12.0;
/// How far around the case as it stands its own year's luck is carried, in those coordinates.
const LUCK_REACH: f64 = 2.0;
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

/// A design point: of each candidate, where, and what the strokes are off by.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DesignYears {
    /// Which point.
    pub index: u32,
    off: Vec<(Vec<f64>, [f64; OUTPUTS])>,
}

/// A household of futures: each candidate's year in strokes.
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
    strokes: Strokes,
    /// Share of the busiest morning's water that falls short.
    short: f64,
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
    responses: Vec<Response<COUNT>>,
    corrections: Vec<Response<CORRECTED>>,
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

    /// The case to simulate for a design point: every second one has seen somebody move.
    fn design_case(&self, index: u32) -> Case {
        let position = self.position(index, self.wishes.seed ^ DESIGN);
        let (case, _) = self.case_at(&position);
        let way = position.ahead.map_or(1.0, |z| if z[WAY] < 0.0 { -1.0 } else { 1.0 });
        if index.is_multiple_of(2) { case } else { ahead::with_people(&case, way) }
    }

    /// Simulates a piece.
    pub fn piece(&self, index: u32, cache: &mut Cache) -> Piece {
        match task(index) {
            Task::Design(index) => Piece::Design(self.design(index, cache)),
            Task::Household(index) => Piece::Household(self.household(index)),
        }
    }

    fn design(&self, index: u32, cache: &mut Cache) -> DesignYears {
        let case = self.design_case(index);
        let house = House::of(&case);
        let lived = Lived::of(&case, &self.heaters);
        let candidates = offered::candidates(&case);
        let mut run = Run::new(case.clone(), cache);
        while run.look_anew(cache) {}
        let days = run.sample().days();
        let off = candidates
            .iter()
            .zip(run.looked())
            .map(|(candidate, (year, _))| {
                let seen = house.with(&case, candidate, candidate.id == CandidateId::Keep);
                let strokes = lived.year(&lived.heater(&case, candidate, &self.heaters), Some(days));
                (place(&seen, &strokes).to_vec(), off(year, &strokes, &seen))
            })
            .collect();
        DesignYears { index, off }
    }

    fn household(&self, index: u32) -> Lives {
        let (case, _) = self.case_at(&self.future(index));
        Lives { index, years: self.lives(&case) }
    }

    fn lives(&self, case: &Case) -> Vec<Life> {
        let house = House::of(case);
        let lived = Lived::of(case, &self.heaters);
        offered::candidates(case)
            .iter()
            .map(|candidate| {
                let standing = lived.heater(case, candidate, &self.heaters);
                Life {
                    seen: house.with(case, candidate, candidate.id == CandidateId::Keep),
                    strokes: lived.year(&standing, None),
                    short: lived.short(case, &standing),
                }
            })
            .collect()
    }

    /// Learns from pieces, in whatever order; `outcome` is the whole advice on the case as it stands. `None` without
    /// a household.
    pub fn fit<'p>(&self, pieces: impl IntoIterator<Item = &'p Piece>, outcome: &Outcome) -> Option<Fitted> {
        let mut designs: Vec<&DesignYears> = Vec::new();
        let mut lives: Vec<&Lives> = Vec::new();
        for piece in pieces {
            match piece {
                Piece::Design(years) => designs.push(years),
                Piece::Household(years) => lives.push(years),
            }
        }
        designs.sort_unstable_by_key(|d| d.index);
        lives.sort_unstable_by_key(|l| l.index);
        if lives.is_empty() {
            return None;
        }
        let as_it_stands = self.lives(&self.base);
        let mut fitted = Fitted {
            responses: Vec::new(),
            corrections: Vec::new(),
            bases: Vec::new(),
            lives: Vec::new(),
            error: FitError::default(),
        };
        let mut errors = Vec::new();
        for (n, (here, whole)) in as_it_stands.iter().zip(&outcome.candidates).enumerate() {
            // The whole year of the case as it stands is known, and the first of them.
            let truth = off(&whole.year, &here.strokes, &here.seen);
            let first = Sample { at: place(&here.seen, &here.strokes), gave: truth };
            let looked = designs.iter().filter_map(|d| {
                let (at, gave) = d.off.get(n)?;
                Some(Sample { at: at.as_slice().try_into().ok()?, gave: *gave })
            });
            let samples: Vec<Sample<CORRECTED>> = std::iter::once(first).chain(looked).collect();
            let correction = Response::fit(&samples, &truth, LUCK_REACH)?;
            errors.extend(correction.left_out().iter().map(|e| e.abs()));
            let mut year = whole.year.clone();
            year.forget_series();
            let comes = Comes::of(&year, here.seen.heat_kwh, whole.morning.short_share());
            let base = Base { truth: comes.beside(&here.seen), year, seen: here.seen.clone() };
            let first = Sample { at: here.seen.at, gave: base.truth };
            let taught = lives.iter().take(TAUGHT_BY).filter_map(|l| {
                let life = l.years.get(n)?;
                Some(Sample { at: life.seen.at, gave: life.comes(&correction).beside(&life.seen) })
            });
            let samples: Vec<Sample<COUNT>> = std::iter::once(first).chain(taught).collect();
            fitted.responses.push(Response::fit(&samples, &base.truth, f64::INFINITY)?);
            fitted.corrections.push(correction);
            fitted.bases.push(base);
        }
        errors.sort_unstable_by(f64::total_cmp);
        fitted.error =
            FitError { energy: super::summary::quantile(&errors, 0.95), years: lives.len() as u32 };
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

    /// Every candidate's year of a case by its strokes, corrected.
    pub fn live(&self, fitted: &Fitted, case: &Case) -> Vec<Told> {
        fitted.told(&self.lives(case))
    }

    /// A future, from 0: its position, and every candidate's year there.
    pub(super) fn drawn(&self, fitted: &Fitted, index: u32) -> (Position, Vec<Told>) {
        let households = fitted.lives.len() as u32;
        let lives = fitted.lives.get((index % households) as usize);
        (self.future_of(index, households), lives.map(|l| fitted.told(&l.years)).unwrap_or_default())
    }
}

impl Fitted {
    fn told(&self, lives: &[Life]) -> Vec<Told> {
        let learned = self.corrections.iter().zip(&self.bases);
        lives.iter().zip(learned).map(|(life, (of, base))| base.told(&life.comes(of))).collect()
    }
}

impl Life {
    /// What the year comes to, corrected.
    fn comes(&self, correction: &Response<CORRECTED>) -> Comes {
        let (s, heat_kwh) = (&self.strokes, self.seen.heat_kwh);
        let off = correction.at(&place(&self.seen, s));
        Comes {
            energy_kwh: libm::exp(off[0]) * used(s.energy_kwh()),
            makeup_kwh: s.heating_makeup_kwh + off[1] * heat_kwh,
            relief_kwh: s.cooling_relief_kwh + off[2] * heat_kwh,
            damp_l: s.condensate_l + off[3] * heat_kwh,
            heat_kwh,
            short: self.short,
        }
    }
}

/// Where the strokes' error is looked up: the coordinates of the case, and what of the energy the elements do, of the heat is
/// lost standing, of the year the air is too cold, and heat delivered over energy.
fn place(seen: &Seen, strokes: &Strokes) -> [f64; CORRECTED] {
    let energy = used(strokes.energy_kwh());
    let heat = used(strokes.delivered_kwh + strokes.standby_kwh);
    let shares = [
        strokes.elements_kwh / energy,
        strokes.standby_kwh / heat,
        strokes.locked_h / 8_760.0,
        strokes.delivered_kwh / energy / 3.0,
    ];
    std::array::from_fn(|k| match seen.at.get(k) {
        Some(at) => OF_PLACE * at,
        None => OF_SHARES * shares[k - COUNT],
    })
}

/// What strokes are off by: the logarithm of the energies' ratio, and what the house's heating makes up, its cooling is
/// spared and condenses, over the heat.
fn off(year: &YearResult, strokes: &Strokes, seen: &Seen) -> [f64; OUTPUTS] {
    let comes = Comes::of(year, seen.heat_kwh, 0.0);
    [
        libm::log(comes.energy_kwh / used(strokes.energy_kwh())),
        (comes.makeup_kwh - strokes.heating_makeup_kwh) / seen.heat_kwh,
        (comes.relief_kwh - strokes.cooling_relief_kwh) / seen.heat_kwh,
        (comes.damp_l - strokes.condensate_l) / seen.heat_kwh,
        0.0,
    ]
}
