//! The whole way from a case to advice, one candidate at a time, so that a worker can yield between two
//! and drop work nobody waits for any more.
//!
//! Whoever cannot wait takes a first look ([`Run::look`], [`Run::first`]): the same way with a sample of the
//! year's days, at a sixth of the work, for a verdict that the whole year then confirms or corrects. How far it
//! is from the whole year, and how often it names another heater, is held in `tests/first_look.rs`.
//!
//! A [`Cache`] carries what stays true between cases: calibrated heaters by label, the draw year by
//! household, simulated years by everything that moves them. An answer that only moves prices costs no
//! simulation: where the tariff goes by the hour, the hours at which a year used its electricity are kept with it, not
//! what that cost.

mod cache;

pub use cache::Cache;
use cache::{Conditions, Lived, keep};

use super::advice;
use super::calendar::DayOfYear;
use super::candidates::{Candidate, CandidateId, offered};
use super::case::{Case, DoorKind};
use super::checks::{self, Opened, Seen, rules::us::US};
use super::climate::days::Days;
use super::draws::{DrawYear, HouseholdUse};
use super::heater::Model;
use super::label::calibration::Calibrated;
use super::money::cash;
use super::outcome::{CandidateOutcome, Morning, Outcome, YearResult};
use super::room::model::RoomModel;
use super::simulate::sample::Sample;
use super::simulate::{morning, year};
use super::site::Ducts;
use super::tariff::hours::Meter;
use super::units::{celsius, kelvins, to_celsius};
use std::cell::OnceCell;
use std::sync::Arc;

/// A case on its way to advice.
pub struct Run {
    case: Case,
    candidates: Vec<Candidate>,
    draws: Arc<DrawYear>,
    conditions: Conditions,
    coldest_day: DayOfYear,
    coldest_c: f64,
    /// What a first look simulates, once somebody takes one.
    sample: OnceCell<Sample>,
    looked: Vec<Simulated>,
    done: Vec<Simulated>,
}

/// A candidate simulated.
#[derive(Clone)]
struct Simulated {
    calibrated: Calibrated,
    lived: Lived,
    /// Years with more air, where the room may be too small: what a check sets beside the year.
    opened: Option<Opened>,
    /// Of the whole year, not of a sample of its days.
    whole: bool,
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
        let place = &case.place;
        let days =
            Days::of(place.outdoor_mean.value, place.outdoor_range.value, place.cold_water_shift.value);
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
        let mut room = RoomModel::of(&case.room, &case.place, 0.0);
        room.ducts = case.site.ducts.value;
        if let Some(keep) = candidates.first() {
            room.has_its_heater(&cache.heater(keep, &case, setpoint_c).0.model);
        }
        Self {
            conditions: Conditions {
                seed: case.seed,
                household: case.household.clone(),
                mains_c: days.mains_c,
                outdoor_c: days.outdoor_c,
                room,
                setpoint_c,
            },
            coldest_c: days.coldest_c,
            coldest_day: days.coldest,
            candidates,
            sample: OnceCell::new(),
            looked: Vec::new(),
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

    /// Takes a first look at the next candidate; `false` when all have been looked at.
    pub fn look(&mut self, cache: &mut Cache) -> bool {
        self.look_or_know(cache, true)
    }

    /// The same without asking whether the whole year is known: for those who compare first looks.
    pub fn look_anew(&mut self, cache: &mut Cache) -> bool {
        self.look_or_know(cache, false)
    }

    fn look_or_know(&mut self, cache: &mut Cache, know: bool) -> bool {
        let Some(candidate) = self.candidates.get(self.looked.len()) else { return false };
        let (calibrated, wear) = cache.heater(candidate, &self.case, self.conditions.setpoint_c);
        let known = if know { cache.simulated(candidate, wear, &self.conditions, &self.case) } else { None };
        let found = match known {
            Some(lived) => Simulated { calibrated, lived, opened: None, whole: true },
            None => {
                let house = self.house();
                let sample = self.sample.get_or_init(|| Sample::of(&house));
                let (year, meter) = year::first_look_watched(&calibrated.model, &house, sample, self.meter());
                let morning = self.morning(&calibrated);
                let lived = Lived { year, hours: meter.map(Meter::hours), morning };
                Simulated { calibrated, lived, opened: None, whole: false }
            }
        };
        self.looked.push(found);
        self.looked.len() < self.candidates.len()
    }

    /// The year and the morning of each candidate looked at so far.
    pub fn looked(&self) -> impl Iterator<Item = (&YearResult, &Morning)> {
        self.looked.iter().map(|s| (&s.lived.year, &s.lived.morning))
    }

    /// The days that a first look simulates.
    pub fn sample(&self) -> &Sample {
        self.sample.get_or_init(|| Sample::of(&self.house()))
    }

    /// The advice by a first look at every candidate, without the series that only pictures need. `None` while a
    /// candidate has not been looked at, and where the whole years were all known already.
    pub fn first(&self) -> Option<Outcome> {
        if self.looked.len() < self.candidates.len() || self.looked.iter().all(|s| s.whole) {
            return None;
        }
        let mut looked = self.looked.clone();
        for Simulated { lived, .. } in &mut looked {
            lived.morning = lived.morning.without_series();
        }
        let mut outcome = self.conclude(self.candidates.clone(), looked);
        for c in &mut outcome.candidates {
            c.year.forget_series();
        }
        Some(outcome)
    }

    /// Simulates the next candidate; `false` when all are done.
    pub fn step(&mut self, cache: &mut Cache) -> bool {
        let Some(candidate) = self.candidates.get(self.done.len()) else { return false };
        let (calibrated, wear) = cache.heater(candidate, &self.case, self.conditions.setpoint_c);
        let lived = match cache.simulated(candidate, wear, &self.conditions, &self.case) {
            Some(known) => known,
            None => {
                let (year, meter) = year::watched(&calibrated.model, &self.house(), self.meter());
                let morning = match self.looked.get(self.done.len()) {
                    Some(looked) => looked.lived.morning.clone(),
                    None => self.morning(&calibrated),
                };
                let lived = Lived { year, hours: meter.map(Meter::hours), morning };
                let key = (candidate.clone(), wear, self.conditions.clone());
                keep(&mut cache.simulated, (key, lived.clone()));
                lived
            }
        };
        let opened =
            checks::wants_opening(candidate, &self.case).then(|| self.opened(candidate, &calibrated, cache));
        self.done.push(Simulated { calibrated, lived, opened, whole: true });
        self.done.len() < self.candidates.len()
    }

    /// Every candidate as it stands in the house, in the order of the outcome.
    pub fn heaters(&self, cache: &mut Cache) -> Vec<(&Candidate, Model)> {
        let of = |c| (c, cache.heater(c, &self.case, self.conditions.setpoint_c).0.model);
        self.candidates.iter().map(of).collect()
    }

    /// The case.
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// The day of the coldest cold water, and that, °C.
    pub fn coldest(&self) -> (DayOfYear, f64) {
        (self.coldest_day, self.coldest_c)
    }

    /// The house that the years are simulated in.
    pub fn house(&self) -> year::House<'_> {
        let c = &self.conditions;
        year::House { draws: &self.draws, mains_c: &c.mains_c, outdoor_c: &c.outdoor_c, room: &c.room }
    }

    /// Years with more air, by a sample of their days.
    fn opened(&self, candidate: &Candidate, calibrated: &Calibrated, cache: &mut Cache) -> Opened {
        let is = |(c, of): &(Candidate, Conditions)| c == candidate && *of == self.conditions;
        if let Some((_, opened)) = cache.opened.iter().find(|(key, _)| is(key)) {
            return opened.clone();
        }
        let mut louvred = self.case.room.clone();
        louvred.door.value = DoorKind::Louvred;
        let door = RoomModel::of(&louvred, &self.case.place, self.conditions.room.reference_gain_w);
        let mut ducts = self.conditions.room.clone();
        ducts.ducts = Ducts::Indoors;
        let [door, ducts] = [door, ducts].map(|room| {
            let house = year::House { room: &room, ..self.house() };
            let sample = self.sample.get_or_init(|| Sample::of(&self.house()));
            let mut year = year::first_look(&calibrated.model, &house, sample);
            year.forget_series();
            year
        });
        let opened = Opened { door, ducts };
        keep(&mut cache.opened, ((candidate.clone(), self.conditions.clone()), opened.clone()));
        opened
    }

    /// Somebody to read the meter by the hour, where that matters.
    fn meter(&self) -> Option<Meter> {
        self.case.prices.tariff.is_by_hour().then(Meter::default)
    }

    fn morning(&self, calibrated: &Calibrated) -> Morning {
        let (c, day) = (&self.conditions, self.coldest_day.index());
        morning::simulate(&calibrated.model, &c.household, self.coldest_c, day, &c.room)
    }

    /// Checks, money and advice. Candidates not yet simulated are left out.
    pub fn finish(mut self) -> Outcome {
        let (candidates, done) = (std::mem::take(&mut self.candidates), std::mem::take(&mut self.done));
        self.conclude(candidates, done)
    }

    fn conclude(&self, candidates: Vec<Candidate>, mut simulated: Vec<Simulated>) -> Outcome {
        let case = &self.case;
        let tariff = &case.prices.tariff;
        if tariff.is_by_hour() {
            for Simulated { lived, .. } in &mut simulated {
                if let Some(hours) = &lived.hours {
                    lived.year.peak_share = tariff.shares(hours);
                }
            }
        }
        let findings: Vec<_> = candidates
            .iter()
            .zip(&simulated)
            .map(|(c, s)| {
                let (year, opened) = (&s.lived.year, s.opened.as_ref());
                let seen = Seen { candidate: c, case, year, opened, rules: &US };
                let mut found = checks::all(&seen);
                case.offer.price_work(&mut found);
                found
            })
            .collect();
        let running: Vec<cash::Running> = candidates
            .iter()
            .zip(&simulated)
            .zip(&findings)
            .map(|((c, s), found)| cash::running(c, case, &s.lived.year, found))
            .collect();
        let ids: Vec<CandidateId> = candidates.iter().map(|c| c.id).take(simulated.len()).collect();
        let years: Vec<&YearResult> = simulated.iter().map(|s| &s.lived.year).collect();
        let costs = cash::costs(case, &ids, &running, &years);
        let candidates: Vec<CandidateOutcome> = candidates
            .into_iter()
            .zip(simulated)
            .zip(findings)
            .zip(costs)
            .map(|(((candidate, s), findings), cost)| CandidateOutcome {
                candidate,
                label: s.calibrated.check,
                year: s.lived.year,
                morning: s.lived.morning,
                findings,
                cost,
            })
            .collect();
        let advice = advice::of(case, &candidates);
        let room_drop = candidates.iter().find(|c| c.candidate.id == advice.best).map_or(0.0, largest_drop_k);
        Outcome {
            advice,
            coldest_mains: celsius(self.coldest_c),
            mains_c: self.conditions.mains_c.clone(),
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
