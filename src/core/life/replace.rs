//! When to replace: what a failure costs against replacing in time, and the moment with the lowest cost.
//!
//! While the present heater lives it costs its running cost; its successor, bought in time, costs its price spread
//! over its own life and its running. A failure adds the cost of an emergency. Over a wait of `T` years, against
//! replacing now, that costs
//!
//! `W(T) = ∫₀ᵀ S(t)·(keep − planned + E·h(t))·e^(−δt) dt`
//!
//! with `S` the survival from today on and `h` the hazard. The hazard of a Weibull life with a shape above 1 only
//! rises, so there is one best moment: when `keep + E·h` reaches `planned` (the marginal cost of one more year against the
//! cost a year of the successor: age replacement, R. E. Barlow and L. C. Hunter, *Optimum preventive maintenance
//! policies*, Operations Research 8, 1960, 90–100, from memory). Held to scipy in `tests/published/lives.rs`.

use super::parameters::{DAMAGE_BARE, DAMAGE_FINISHED, DAMAGE_INSIDE, LEAKS, LEFT_BY_PAN, RUSH, Spread};
use super::present;
use super::weibull::Weibull;
use crate::core::candidates::CandidateId;
use crate::core::candidates::offered::same_again;
use crate::core::case::{Case, RoomKind, TankSigns, YesNo};
use crate::core::outcome::{CandidateOutcome, Fit, Outcome};
use crate::core::site::Pan;
use serde::{Deserialize, Serialize};

/// Years ahead for which a chance is given.
pub const AHEAD: [f64; 3] = [1.0, 3.0, 5.0];
/// Years of waiting that are looked at.
pub const WAITS: usize = 10;
/// Steps a year of the integral (trapezoids): a month.
const STEPS: usize = 12;
/// Years from which a best moment is no plan any more: it lasts until it fails.
const TOO_FAR_YEARS: f64 = 15.0;

/// When replacing costs least.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Moment {
    /// Now: each year of waiting costs more than it saves.
    Now,
    /// In so many years, if it lives.
    InYears(f64),
    /// Not before it fails: a failure costs less than what waiting saves.
    WhenItFails,
}

/// Yearly costs to choose the moment by, dollars.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// Running the present heater for a year.
    pub keep: f64,
    /// Its successor, a year: price over its life, and running.
    pub planned: f64,
    /// What a failure costs once.
    pub emergency: f64,
    /// Discount rate a year.
    pub rate: f64,
}

impl Choice {
    /// The best moment for a heater of an age. Discounting does not move it: it weighs both sides alike.
    pub fn best(&self, life: Weibull, age_years: f64) -> Moment {
        let saved = self.planned - self.keep;
        if saved <= 0.0 || saved.is_nan() {
            return Moment::Now;
        }
        let (k, scale) = (life.shape, life.scale_years);
        if self.emergency <= 0.0 || k <= 1.0 {
            // Nothing to fear, or a hazard that does not rise: today decides for good.
            let hazard = k / scale * libm::pow(age_years / scale, k - 1.0);
            return if self.emergency * hazard > saved { Moment::Now } else { Moment::WhenItFails };
        }
        let age_then = scale * libm::pow(saved * scale / (k * self.emergency), 1.0 / (k - 1.0));
        match age_then - age_years {
            wait if wait <= 0.0 => Moment::Now,
            wait if wait > TOO_FAR_YEARS => Moment::WhenItFails,
            wait => Moment::InYears(wait),
        }
    }

    /// What waiting up to a number of years costs against replacing now, for 0, 1, 2 … years: `W(T)` above.
    pub fn waiting(&self, life: Weibull, age_years: f64, years: usize) -> Vec<f64> {
        let step = 1.0 / STEPS as f64;
        let discount = libm::log(1.0 + self.rate);
        let (mut sum, mut alive, mut worth) = (0.0, 1.0, 1.0);
        let mut costs = vec![0.0];
        for i in 1..=years * STEPS {
            let t = i as f64 * step;
            let alive_then = 1.0 - life.fails_within(t, age_years);
            let worth_then = libm::exp(-discount * t);
            let lived = 0.5 * step * (alive * worth + alive_then * worth_then);
            // Failures of the month, by what survives: exact, where the hazard's own trapezoid is not.
            let failed = (alive - alive_then) * 0.5 * (worth + worth_then);
            sum += (self.keep - self.planned) * lived + self.emergency * failed;
            (alive, worth) = (alive_then, worth_then);
            if i % STEPS == 0 {
                costs.push(sum);
            }
        }
        costs
    }
}

/// What a failure costs beside the heater itself, dollars.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Emergency {
    /// More for a swap that cannot wait.
    pub rush: f64,
    /// Water damage, by how likely the failure is a leak and what lies around.
    pub damage: f64,
    /// What the same again costs more over its life than what would be bought in time.
    pub worse_choice: f64,
    /// All of it, with the parameters at their low and high ends.
    pub low_high: (f64, f64),
}

impl Emergency {
    /// All of it.
    pub fn total(&self) -> f64 {
        self.rush + self.damage + self.worse_choice
    }
}

/// The chance of failing within a time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Chance {
    /// Years ahead.
    pub years: f64,
    /// The chance, 0 to 1.
    pub chance: f64,
    /// The same with the longest and with the shortest life that the parameters allow.
    pub low_high: (f64, f64),
}

/// Life left, what a failure costs and when to act.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LifeLeft {
    /// Chances of failing.
    pub chances: Vec<Chance>,
    /// Years it may be expected to go on.
    pub expected_years: f64,
    /// Years that nine of ten such heaters reach, and that one of ten does.
    pub years_low_high: (f64, f64),
    /// What a failure costs.
    pub emergency: Emergency,
    /// What would be bought in time.
    pub planned: CandidateId,
    /// What is bought in an emergency.
    pub same: CandidateId,
    /// Running the present heater, a year.
    pub keep_year: f64,
    /// The one bought in time, a year, with its price over its life.
    pub planned_year: f64,
    /// Expected cost of waiting 0, 1, 2 … years against replacing now (negative: waiting saves).
    pub waiting: Vec<f64>,
    /// The best moment.
    pub best: Moment,
    /// The best moment with the shortest and the longest life that the parameters allow.
    pub best_early_late: (Moment, Moment),
}

/// Life left of a case's present heater. `None` where nothing but keeping it was looked at.
pub fn of(case: &Case, outcome: &Outcome) -> Option<LifeLeft> {
    let keep = outcome.of(CandidateId::Keep)?;
    let planned = planned(outcome)?;
    let same = outcome.of(same_again(case)).unwrap_or(planned);
    let (heater, rate) = (&case.heater, case.prices.discount_rate.value);
    let years = present::new_heater_years();
    let worth = annuity(rate, years);
    let a_year = |c: &CandidateOutcome| running(c) + c.cost.upfront / worth;
    let lost = a_year(same) - a_year(planned);
    let worse_choice = if lost > 0.0 { lost * worth } else { 0.0 };
    let (leak, left) = (damage(case), left_by_pan(case));
    let cost = |rush: f64, leaks: f64, leak: f64, left: f64| Emergency {
        rush: rush * same.cost.upfront,
        damage: leaks * leak * left,
        worse_choice,
        low_high: (0.0, 0.0),
    };
    let mut emergency = cost(RUSH.middle, LEAKS.middle, leak.middle, left.middle);
    emergency.low_high = (
        cost(RUSH.low, LEAKS.low, leak.low, left.low).total(),
        cost(RUSH.high, LEAKS.high, leak.high, left.high).total(),
    );
    let choice = Choice { keep: running(keep), planned: a_year(planned), emergency: emergency.total(), rate };
    let leaks = matches!(heater.signs.value, TankSigns::Leaking);
    let age = heater.age_years.value;
    let (life, [short, long]) = (present::of(heater), present::range(heater));
    let within = |w: Weibull, years: f64| if leaks { 1.0 } else { w.fails_within(years, age) };
    let best = |w: Weibull| if leaks { Moment::Now } else { choice.best(w, age) };
    Some(LifeLeft {
        chances: AHEAD
            .iter()
            .map(|&years| Chance {
                years,
                chance: within(life, years),
                low_high: (within(long, years), within(short, years)),
            })
            .collect(),
        expected_years: present::expected_left(heater),
        years_low_high: if leaks { (0.0, 0.0) } else { (life.left_at(0.1, age), life.left_at(0.9, age)) },
        emergency,
        planned: planned.candidate.id,
        same: same.candidate.id,
        keep_year: choice.keep,
        planned_year: choice.planned,
        waiting: if leaks { vec![0.0] } else { choice.waiting(life, age, WAITS) },
        best: best(life),
        best_early_late: (best(short), best(long)),
    })
}

/// What would be bought in time: the advice's choice, or the next one that is not keeping and fits.
fn planned(outcome: &Outcome) -> Option<&CandidateOutcome> {
    let next = outcome.advice.runners_up.iter().map(|r| r.id);
    std::iter::once(outcome.advice.best)
        .chain(next)
        .filter(|id| *id != CandidateId::Keep)
        .filter_map(|id| outcome.of(id))
        .find(|c| c.fit() != Fit::DoesNotFit)
}

/// Running cost of the first year.
fn running(c: &CandidateOutcome) -> f64 {
    c.cost.energy_year + c.cost.interaction_year + c.cost.maintenance_year
}

/// What a dollar a year is worth over a time: `(1 − (1+r)^−n)/r`.
fn annuity(rate: f64, years: f64) -> f64 {
    if rate > 1e-6 { (1.0 - libm::pow(1.0 + rate, -years)) / rate } else { years }
}

/// What a leak does, by what lies below and around.
fn damage(case: &Case) -> Spread {
    let below = matches!(case.site.finished_below.value, YesNo::Yes);
    match case.room.kind.value {
        _ if below => DAMAGE_FINISHED,
        RoomKind::Attic => DAMAGE_FINISHED,
        RoomKind::Utility | RoomKind::Closet => DAMAGE_INSIDE,
        RoomKind::Basement | RoomKind::Garage | RoomKind::Crawlspace => DAMAGE_BARE,
    }
}

fn left_by_pan(case: &Case) -> Spread {
    match case.site.pan.value {
        Pan::Drained => LEFT_BY_PAN,
        _ => Spread { low: 1.0, middle: 1.0, high: 1.0 },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const LIFE: Weibull = Weibull { shape: 3.0, scale_years: 14.0 };

    #[test]
    fn nothing_saved_by_waiting_means_now() {
        let c = Choice { keep: 900.0, planned: 500.0, emergency: 1_000.0, rate: 0.02 };
        assert_eq!(c.best(LIFE, 2.0), Moment::Now);
        let harmless = Choice { keep: 300.0, emergency: 0.0, ..c };
        assert_eq!(harmless.best(LIFE, 2.0), Moment::WhenItFails);
        let unknown = Choice { planned: f64::NAN, ..c };
        assert_eq!(unknown.best(LIFE, 2.0), Moment::Now);
    }

    #[test]
    fn a_level_payment_repays_its_worth() {
        // 1/1.05 + 1/1.05².
        assert!((annuity(0.05, 2.0) - 1.859_410_430_839_002).abs() < 1e-12);
        assert_eq!(annuity(0.0, 7.0), 7.0);
    }

    fn wait(m: Moment) -> f64 {
        match m {
            Moment::Now => 0.0,
            Moment::InYears(y) => y,
            Moment::WhenItFails => f64::INFINITY,
        }
    }

    proptest! {
        /// The closed form is where the cost of waiting is lowest, among whole years.
        #[test]
        fn best_moment_costs_least(
            keep in 100.0..900.0f64, planned in 100.0..900.0f64, emergency in 1.0..8_000.0f64,
            age in 0.0..25.0f64, rate in 0.0..0.08f64,
        ) {
            let c = Choice { keep, planned, emergency, rate };
            let costs = c.waiting(LIFE, age, 15);
            let at = wait(c.best(LIFE, age));
            for pair in costs.windows(2).enumerate() {
                let (y, [a, b]) = (pair.0 as f64, [pair.1[0], pair.1[1]]);
                // Falls before the best moment, rises after; trapezoids of a month.
                if y + 1.0 <= at { prop_assert!(b <= a + 0.05, "{y} {at} {a} {b}"); }
                if y >= at { prop_assert!(b >= a - 0.05, "{y} {at} {a} {b}"); }
            }
        }

        /// Older, or a dearer emergency: never later.
        #[test]
        fn more_danger_is_never_later(
            saved in 1.0..500.0f64, emergency in 1.0..8_000.0f64, more in 0.0..3_000.0f64,
            age in 0.0..25.0f64, older in 0.0..5.0f64,
        ) {
            let c = Choice { keep: 400.0, planned: 400.0 + saved, emergency, rate: 0.02 };
            let here = wait(c.best(LIFE, age));
            prop_assert!(wait(c.best(LIFE, age + older)) <= here);
            let dearer = Choice { emergency: emergency + more, ..c };
            prop_assert!(wait(dearer.best(LIFE, age)) <= here);
        }
    }
}
