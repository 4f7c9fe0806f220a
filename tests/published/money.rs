//! `tankful::core::money` against numpy-financial 1.0 (present value, payback).
use crate::fixture::{Fixture, Table, Worst, hold};
use tankful::core::money::present_value::{cumulated, payback_years, present_value};

/// Sums of the same numbers in another order, of amounts to a few thousand dollars: dollars.
const DOLLARS: f64 = 1e-8;
/// Worth of a dollar's payments: factors multiplied up year by year against powers.
const WORTH: f64 = 1e-12;
/// Payback, years: straight within the year in both.
const YEARS: f64 = 1e-9;
/// At the rate of return nothing is left; its own iteration stops at about 1e-10 of rate: dollars.
const AT_RATE_OF_RETURN: f64 = 1e-6;

#[test]
fn present_value_and_payback_meet_numpy_financial() {
    let fixture = Fixture::load("money");
    let mut value = Worst::of("present value, dollars");
    let mut back = Worst::of("discounted payback, years");
    let mut at_return = Worst::of("present value at the rate of return, dollars");
    let mut never = 0;
    for case in fixture.0["cases"].as_array().expect("cases") {
        let flows: Vec<f64> = serde_json::from_value(case["flows"].clone()).expect("flows");
        let nothing = vec![0.0; flows.len()];
        let costs: Vec<f64> = flows.iter().map(|f| -f).collect();
        let rate_of_return = case["rate_of_return"].as_f64().expect("a rate");
        at_return.see(present_value(&flows, rate_of_return), 0.0, &case["name"]);
        for at in case["at"].as_array().expect("rates") {
            let rate = at["rate"].as_f64().expect("a rate");
            let place = (&case["name"], rate);
            value.see(present_value(&flows, rate), at["present_value"].as_f64().expect("a value"), place);
            let ours = payback_years(&cumulated(&costs, rate), &nothing);
            match at["payback_years"].as_f64() {
                Some(years) => back.see(ours.unwrap_or(f64::NAN), years, place),
                None => {
                    assert_eq!(ours, None, "{place:?} never pays back");
                    never += 1;
                }
            }
        }
    }
    assert!(never > 0, "some case never pays back");
    hold([(value, DOLLARS), (back, YEARS), (at_return, AT_RATE_OF_RETURN)]);
}

#[test]
fn level_and_growing_payments_meet_numpy_financial() {
    let fixture = Fixture::load("money");
    let mut level = Worst::of("worth of a level payment that repays 1");
    for [rate, years, payment] in Table::new(&fixture.0["annuity"]).rows(["rate", "years", "yearly_payment"])
    {
        let mut payments = vec![payment; years as usize + 1];
        payments[0] = 0.0;
        level.see(present_value(&payments, rate), 1.0, (rate, years));
    }
    let mut growing = Worst::of("worth of growing payments, relative");
    let columns = ["rate", "growth", "years", "present_value_of_growth_to_the_power_of_the_year"];
    for [rate, growth, years, worth] in Table::new(&fixture.0["growing"]).rows(columns) {
        let mut payments = vec![0.0];
        payments.extend((1..=years as u32).map(|y| libm::pow(1.0 + growth, f64::from(y))));
        growing.see_relative(present_value(&payments, rate), worth, (rate, growth, years));
    }
    hold([(level, WORTH), (growing, WORTH)]);
}
