//! The whole way from a case to advice, one candidate at a time, so that a worker can yield between two
//! and drop work nobody waits for any more.
//!
//! A [`Cache`] carries what stays true between cases: calibrated heaters by label, the draw year by
//! household, simulated years by everything that moves them. An answer that only moves prices costs no
//! simulation.

use super::advice;
use super::calendar::DayOfYear;
use super::candidates::{Candidate, CandidateId, offered};
use super::case::Case;
use super::checks;
use super::climate::{mains::Mains, outdoor::OutdoorYear};
use super::draws::{DrawYear, HouseholdUse};
use super::label::calibration::{Calibrated, calibrate};
use super::money::cash;
use super::outcome::{CandidateOutcome, Morning, Outcome, YearResult};
use super::room::model::RoomModel;
use super::simulate::{morning, year};
use super::units::{celsius, kelvins, to_celsius};
use std::sync::Arc;

/// Most heaters and years kept; a page's worth of changes of mind.
const KEPT: usize = 64;

/// What stays true from one case to the next.
#[derive(Default)]
pub struct Cache {
    calibrated: Vec<(Candidate, f64, Calibrated)>,
    draws: Option<(HouseholdUse, u64, Arc<DrawYear>)>,
    simulated: Vec<(Key, YearResult, Morning)>,
}

/// Everything that moves a simulated year and morning, besides the heater.
#[derive(Clone, Debug, PartialEq)]
struct Conditions {
    seed: u64,
    household: super::case::Household,
    mains_c: Vec<f32>,
    outdoor_c: Vec<f32>,
    room: RoomModel,
    setpoint_c: f64,
}

type Key = (Candidate, Conditions);

/// A case on its way to advice.
pub struct Run {
    case: Case,
    candidates: Vec<Candidate>,
    draws: Arc<DrawYear>,
    conditions: Conditions,
    coldest_day: DayOfYear,
    coldest_c: f64,
    done: Vec<(Calibrated, YearResult, Morning)>,
}

/// Advice on a case, in one go.
pub fn advise(case: &Case) -> Outcome {
    let mut cache = Cache::default();
    let mut run = Run::new(case.clone(), &mut cache);
    while run.step(&mut cache) {}
    run.finish()
}

impl Run {
    /// Prepares a case: its candidates, its year's weather and draws, its room.
    pub fn new(case: Case, cache: &mut Cache) -> Self {
        let outdoor = OutdoorYear::new(case.place.outdoor_mean.value, case.place.outdoor_range.value);
        let mains = Mains::from_outdoor(case.place.outdoor_mean.value, case.place.outdoor_range.value)
            .shifted(case.place.cold_water_shift.value);
        let use_ = HouseholdUse::of(&case.household);
        let draws = match &cache.draws {
            Some((u, seed, year)) if *u == use_ && *seed == case.seed => Arc::clone(year),
            _ => {
                let year = Arc::new(DrawYear::generate(&use_, case.seed));
                cache.draws = Some((use_, case.seed, Arc::clone(&year)));
                year
            }
        };
        let candidates = offered::candidates(&case);
        let setpoint_c = to_celsius(case.heater.setpoint.value);
        // The room's answered temperature is with the present heater in it: its loss belongs to it.
        let mut room = RoomModel::of(&case.room, &case.place, 0.0);
        let keep = candidates.first().map(|c| cache.calibrated(c, setpoint_c));
        let mean_c = 0.5 * (room.undisturbed_c(30.0, 10.0) + room.undisturbed_c(212.0, 10.0));
        let gain = keep.map_or(0.0, |k| k.model.standby_w_per_k * (setpoint_c - mean_c));
        room.reference_gain_w = if gain > 0.0 { gain } else { 0.0 };
        let coldest_day = mains.coldest_day();
        Self {
            conditions: Conditions {
                seed: case.seed,
                household: case.household.clone(),
                mains_c: DayOfYear::all().map(|d| to_celsius(mains.on(d)) as f32).collect(),
                outdoor_c: DayOfYear::all().map(|d| to_celsius(outdoor.on(d)) as f32).collect(),
                room,
                setpoint_c,
            },
            coldest_c: to_celsius(mains.on(coldest_day)),
            coldest_day,
            candidates,
            done: Vec::new(),
            draws,
            case,
        }
    }

    /// How many candidates there are.
    pub fn len(&self) -> usize {
        self.candidates.len()
    }

    /// True when there is nothing to simulate; there always is the present heater.
    pub fn is_empty(&self) -> bool {
        self.candidates.is_empty()
    }

    /// How many are done.
    pub fn done(&self) -> usize {
        self.done.len()
    }

    /// Simulates the next candidate; `false` when all are done.
    pub fn step(&mut self, cache: &mut Cache) -> bool {
        let Some(candidate) = self.candidates.get(self.done.len()) else { return false };
        let calibrated = cache.calibrated(candidate, self.conditions.setpoint_c);
        let key = (candidate.clone(), self.conditions.clone());
        let (year, morning) = match cache.simulated.iter().find(|(k, ..)| *k == key) {
            Some((_, year, morning)) => (year.clone(), morning.clone()),
            None => {
                let (year, morning) = self.simulate(&calibrated);
                keep(&mut cache.simulated, (key, year.clone(), morning.clone()));
                (year, morning)
            }
        };
        self.done.push((calibrated, year, morning));
        self.done.len() < self.candidates.len()
    }

    fn simulate(&self, calibrated: &Calibrated) -> (YearResult, Morning) {
        let c = &self.conditions;
        let house =
            year::House { draws: &self.draws, mains_c: &c.mains_c, outdoor_c: &c.outdoor_c, room: &c.room };
        let result = year::simulate(&calibrated.model, &house, None);
        let day = self.coldest_day.index();
        let morning = morning::simulate(&calibrated.model, &c.household, self.coldest_c, day, &c.room);
        (result, morning)
    }

    /// Checks, money and advice. Candidates not yet simulated are left out.
    pub fn finish(self) -> Outcome {
        let case = &self.case;
        let findings: Vec<_> = self
            .candidates
            .iter()
            .zip(&self.done)
            .map(|(c, (_, year, _))| {
                let mut found = checks::all(c, case, year);
                case.offer.price_work(&mut found);
                found
            })
            .collect();
        let running: Vec<cash::Running> = self
            .candidates
            .iter()
            .zip(&self.done)
            .zip(&findings)
            .map(|((c, (_, year, _)), found)| cash::running(c, case, year, found))
            .collect();
        let ids: Vec<CandidateId> = self.candidates.iter().map(|c| c.id).take(self.done.len()).collect();
        let years: Vec<&YearResult> = self.done.iter().map(|(_, year, _)| year).collect();
        let costs = cash::costs(case, &ids, &running, &years);
        let candidates: Vec<CandidateOutcome> = self
            .candidates
            .into_iter()
            .zip(self.done)
            .zip(findings)
            .zip(costs)
            .map(|(((candidate, (calibrated, year, morning)), findings), cost)| CandidateOutcome {
                candidate,
                label: calibrated.check,
                year,
                morning,
                findings,
                cost,
            })
            .collect();
        let advice = advice::of(case, &candidates);
        let room_drop = candidates.iter().find(|c| c.candidate.id == advice.best).map_or(0.0, largest_drop_k);
        Outcome {
            advice,
            coldest_mains: celsius(self.coldest_c),
            mains_c: self.conditions.mains_c,
            room_drop: kelvins(room_drop),
            candidates,
        }
    }
}

/// How far a heater pulls its room down at most, by day, K.
fn largest_drop_k(c: &CandidateOutcome) -> f64 {
    c.year
        .room_undisturbed_c
        .iter()
        .zip(&c.year.room_c)
        .map(|(undisturbed, with)| f64::from(undisturbed - with))
        .fold(0.0, |a, b| if b > a { b } else { a })
}

impl Cache {
    fn calibrated(&mut self, candidate: &Candidate, setpoint_c: f64) -> Calibrated {
        if let Some((_, _, found)) =
            self.calibrated.iter().find(|(c, t, _)| c.label == candidate.label && *t == setpoint_c)
        {
            return found.clone();
        }
        let made = calibrate(&candidate.label, setpoint_c);
        keep(&mut self.calibrated, (candidate.clone(), setpoint_c, made.clone()));
        made
    }
}

/// Puts an entry in, the oldest out when full.
fn keep<T>(list: &mut Vec<T>, entry: T) {
    if list.len() >= KEPT {
        list.remove(0);
    }
    list.push(entry);
}
