//! `tankful::core::life` against scipy 1.17: Weibull lives, and the best moment to replace.
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::life::Weibull;
use tankful::core::life::replace::{Choice, Moment};

/// Survival and conditional failure: another library's exp and pow.
const CHANCE: f64 = 1e-12;
/// Mean life of a new heater, years: another gamma function.
const MEAN_LIFE_YEARS: f64 = 1e-10;
/// Mean years left: trapezoids of a quarter year against adaptive quadrature, years. Worst for an old tank of a
/// short life, which fails within a step or two: 0.18 in place of 0.15.
const YEARS_LEFT: f64 = 0.035;
/// Quantiles of the years left: the age is taken off a life many times as long as what is left, years.
const QUANTILE_YEARS: f64 = 1e-9;
/// Best moment: a closed form against a minimiser whose target is flat there, years.
const MOMENT_YEARS: f64 = 1e-3;
/// Cost of waiting: trapezoids of a month against adaptive quadrature, dollars of some thousands.
const WAITING_DOLLARS: f64 = 0.3;

#[test]
fn lives_meet_scipy() {
    let mut survival = Worst::of("survival");
    let mut within =
        ["failure within one year", "failure within three years", "failure within five years"].map(Worst::of);
    let mut left = Worst::of("mean years left");
    let mut quantile = Worst::of("years left of a share, years");
    let mut mean = Worst::of("mean life of a new heater, years");
    let columns = [
        "shape",
        "scale_years",
        "age_years",
        "survival",
        "failure_within_1_year",
        "failure_within_3_years",
        "failure_within_5_years",
        "mean_years_left",
        "years_left_of_a_tenth",
        "years_left_of_half",
        "years_left_of_nine_tenths",
        "mean_life_years",
    ];
    for [shape, scale, age, alive, in_1, in_3, in_5, years, tenth, half, nine, life_years] in
        Fixture::load("weibull").table("life").rows(columns)
    {
        let at = (shape, scale, age);
        let life = Weibull::new(shape, scale).expect("a distribution");
        survival.see(life.survival(age), alive, at);
        for ((worst, years), truth) in within.iter_mut().zip([1.0, 3.0, 5.0]).zip([in_1, in_3, in_5]) {
            worst.see(life.fails_within(years, age), truth, at);
        }
        for (chance, truth) in [(0.1, tenth), (0.5, half), (0.9, nine)] {
            quantile.see(life.left_at(chance, age), truth, at);
        }
        // A constant hazard reaches beyond the 60 years that are counted.
        if shape > 1.0 {
            left.see(life.expected_left(age), years, at);
        }
        mean.see(life.mean(), life_years, at);
    }
    hold(within.map(|w| (w, CHANCE)));
    hold([(survival, CHANCE), (left, YEARS_LEFT), (quantile, QUANTILE_YEARS), (mean, MEAN_LIFE_YEARS)]);
}

#[test]
fn best_moments_meet_scipy() {
    let mut moment = Worst::of("best moment, years from now");
    let mut waiting = Worst::of("cost of waiting five years, dollars");
    let (mut now, mut later) = (0, 0);
    let columns = [
        "shape",
        "scale_years",
        "age_years",
        "keep",
        "planned",
        "emergency",
        "rate",
        "best_years",
        "waiting_5_years",
    ];
    for [shape, scale, age, keep, planned, emergency, rate, best, five] in
        Fixture::load("replacement").table("choices").rows(columns)
    {
        let life = Weibull::new(shape, scale).expect("a distribution");
        let choice = Choice { keep, planned, emergency, rate };
        let at = (shape, scale, age, keep, planned, emergency, rate);
        match choice.best(life, age) {
            Moment::Now => {
                // The minimiser stays a hair inside its bounds.
                moment.see(0.0, best, at);
                now += 1;
            }
            Moment::InYears(years) => {
                moment.see(years, best, at);
                later += 1;
            }
            // Too far to plan for: the minimiser went to the end of what it was given.
            Moment::WhenItFails => assert!(best > 15.0 - MOMENT_YEARS, "{at:?}: {best}"),
        }
        waiting.see(choice.waiting(life, age, 5)[5], five, at);
    }
    assert!(now > 5 && later > 5, "both kinds of moment are there: {now}, {later}");
    hold([(moment, MOMENT_YEARS), (waiting, WAITING_DOLLARS)]);
}
