//! A case with its open questions on the way to its futures: which years to simulate, and what they teach.
//!
//! The years of the design are named by an index, each on its own: whoever simulates them, in whatever order, gives the same.

use super::ahead::{self, Ahead};
use super::demand::Luck;
use super::features::{House, Seen};
use super::points::normals;
use super::response::{OUTPUTS, Response, Sample};
use super::types::{FitError, Wishes};
use super::unknowns::Unknowns;
use crate::core::candidates::{Candidate, CandidateId, offered};
use crate::core::case::Case;
use crate::core::outcome::{Morning, Outcome, YearResult};
use crate::core::pipeline::{Cache, Run};
use serde::{Deserialize, Serialize};

/// Months in which a dehumidifier runs: May to September, as in [`crate::core::money::cash`].
const DAMP_MONTHS: std::ops::Range<usize> = 4..9;
/// What sets the design's points apart from the futures'.
const DESIGN: u32 = 0x5eed_1e55;

/// Years of the design after which bands are shown: first ones soon, the last the last word.
pub const STAGES: [u32; 4] = [12, 40, 128, 256];

/// One position of everything that is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// Of the questions.
    pub questions: Vec<f64>,
    /// Of what nobody can know; `None`: as expected.
    pub ahead: Option<[f64; ahead::COUNT]>,
}

/// The simulated years of one design point: of each candidate, where and what.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DesignYears {
    /// Which point.
    pub index: u32,
    years: Vec<(Vec<f64>, [f64; OUTPUTS])>,
}

/// A case whose futures are asked for.
pub struct Study<'a> {
    pub(super) unknowns: &'a dyn Unknowns,
    pub(super) wishes: Wishes,
    pub(super) drawn: Vec<bool>,
    pub(super) base: Case,
    luck: Luck,
}

/// What was learned of every candidate.
#[derive(Clone, Debug)]
pub struct Fitted {
    responses: Vec<Response>,
    bases: Vec<Base>,
    /// How far off.
    pub error: FitError,
}

/// A candidate as it stands.
#[derive(Clone, Debug)]
struct Base {
    year: YearResult,
    truth: [f64; OUTPUTS],
    seen: Seen,
}

/// A candidate's year, told by the response.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// The year: that of the case as it stands, brought to what it comes to. Its shares at peak hours stay.
    pub year: YearResult,
    /// Share of the busiest morning's water that falls short.
    pub short: f64,
}

impl<'a> Study<'a> {
    /// Of a case and what is open about it.
    pub fn new(unknowns: &'a dyn Unknowns, wishes: Wishes) -> Study<'a> {
        let luck = Luck::of(unknowns.case(&[]).seed);
        Study::with_luck(unknowns, wishes, luck)
    }

    /// The same where the luck of the case's seed is known already: it is most of what a study costs to begin.
    pub fn with_luck(unknowns: &'a dyn Unknowns, wishes: Wishes, luck: Luck) -> Study<'a> {
        let base = unknowns.case(&[]);
        let wishes = Wishes { futures: wishes.futures.clamp(1, Wishes::MOST), ..wishes };
        let drawn = unknowns.coordinates().iter().map(|c| c.open && c.drawn).collect();
        Study { drawn, luck, base, unknowns, wishes }
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

    /// The position of a future, from 0.
    pub fn future(&self, index: u32) -> Position {
        self.position(index, self.wishes.seed)
    }

    /// The case to simulate for a design point: the first is the case as it stands, of the others every second one has
    /// seen somebody move.
    fn design_case(&self, index: u32) -> Case {
        if index == 0 {
            return self.base.clone();
        }
        let position = self.position(index - 1, self.wishes.seed ^ DESIGN);
        let mut case = self.unknowns.case(&position.questions);
        let Some(z) = &position.ahead else { return case };
        let ahead = Ahead::of(z, &case);
        ahead::warmer(&mut case, ahead.warmer_k);
        let way = if z[6] < 0.0 { -1.0 } else { 1.0 };
        if index.is_multiple_of(2) { ahead::with_people(&case, way) } else { case }
    }

    /// Simulates a design point: a first look at every candidate's year.
    pub fn design(&self, index: u32, cache: &mut Cache) -> DesignYears {
        let case = self.design_case(index);
        let house = House::of(&case, &self.luck);
        let candidates = offered::candidates(&case);
        let mut run = Run::new(case.clone(), cache);
        while run.look_anew(cache) {}
        let years = candidates
            .iter()
            .zip(run.looked())
            .map(|(candidate, (year, morning))| {
                let seen = house.with(&case, candidate, candidate.id == CandidateId::Keep);
                (seen.at.to_vec(), outputs(year, morning, &seen))
            })
            .collect();
        DesignYears { index, years }
    }

    /// Learns from simulated years, in the order of their index; `outcome` is the whole advice on the case as it stands.
    pub fn fit(&self, designs: &[DesignYears], outcome: &Outcome) -> Option<Fitted> {
        let house = House::of(&self.base, &self.luck);
        let candidates = offered::candidates(&self.base);
        let (mut responses, mut bases, mut off) = (Vec::new(), Vec::new(), Vec::new());
        for (n, (candidate, whole)) in candidates.iter().zip(&outcome.candidates).enumerate() {
            let seen = house.with(&self.base, candidate, candidate.id == CandidateId::Keep);
            let truth = outputs(&whole.year, &whole.morning, &seen);
            let samples: Vec<Sample> = designs
                .iter()
                .filter_map(|d| {
                    let (at, gave) = d.years.get(n)?;
                    Some(Sample { at: at.as_slice().try_into().ok()?, gave: *gave })
                })
                .collect();
            let response = Response::fit(&samples, &truth)?;
            off.extend(response.left_out().iter().map(|e| e.abs()));
            responses.push(response);
            let mut year = whole.year.clone();
            year.forget_series();
            bases.push(Base { year, truth, seen });
        }
        off.sort_unstable_by(f64::total_cmp);
        let error = FitError { energy: super::summary::quantile(&off, 0.95), years: designs.len() as u32 };
        Some(Fitted { responses, bases, error })
    }

    /// Every candidate's year of a case near the one that stands.
    pub fn tell(&self, fitted: &Fitted, case: &Case, candidates: &[Candidate]) -> Vec<Told> {
        let house = House::of(case, &self.luck);
        candidates
            .iter()
            .zip(fitted.responses.iter().zip(&fitted.bases))
            .map(|(candidate, (response, base))| {
                let seen = house.with(case, candidate, candidate.id == CandidateId::Keep);
                base.told(&response.at(&seen.at), &seen)
            })
            .collect()
    }
}

impl Base {
    fn told(&self, gave: &[f64; OUTPUTS], seen: &Seen) -> Told {
        let mut year = self.year.clone();
        let share = libm::exp(gave[0] - self.truth[0]) * (seen.estimate_kwh / self.seen.estimate_kwh);
        for months in [&mut year.electricity_kwh, &mut year.elements_kwh, &mut year.fuel_kwh] {
            for m in months.iter_mut() {
                *m *= share;
            }
        }
        let (heat_kwh, was_kwh) = (seen.heat_kwh, self.seen.heat_kwh);
        let more = |k: usize| gave[k] * heat_kwh - self.truth[k] * was_kwh;
        let house = |n: usize| seen.house_kwh[n] - self.seen.house_kwh[n];
        for (months, more) in [
            (&mut year.heating_makeup_kwh, house(0) + more(1)),
            (&mut year.cooling_relief_kwh, house(1) + more(2)),
        ] {
            for m in months.iter_mut() {
                *m += more / 12.0;
            }
        }
        let damp: f64 = self.year.condensate_l[DAMP_MONTHS].iter().sum();
        if damp > 0.0 {
            let share = (damp + more(3)) / damp;
            for m in &mut year.condensate_l {
                *m *= if share > 0.0 { share } else { 0.0 };
            }
        }
        for m in &mut year.drawn_m3 {
            *m *= heat_kwh / was_kwh;
        }
        Told { year, short: gave[4] }
    }
}

/// What the response learns of a year.
fn outputs(year: &YearResult, morning: &Morning, seen: &Seen) -> [f64; OUTPUTS] {
    let used = year.electricity_year_kwh() + year.fuel_year_kwh();
    let used = if used > 1e-3 { used } else { 1e-3 };
    let asked = morning.asked.value;
    [
        libm::log(used / seen.estimate_kwh),
        (year.heating_makeup_kwh.iter().sum::<f64>() - seen.house_kwh[0]) / seen.heat_kwh,
        (year.cooling_relief_kwh.iter().sum::<f64>() - seen.house_kwh[1]) / seen.heat_kwh,
        year.condensate_l[DAMP_MONTHS].iter().sum::<f64>() / seen.heat_kwh,
        if asked > 0.0 { morning.shortfall.value / asked } else { 0.0 },
    ]
}
