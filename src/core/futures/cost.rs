//! Money of one candidate in one future: the same account as [`crate::core::money::cash`]'s, with lives, prices and a
//! household of that future. Where all is as expected, the two give the same (tested).

use super::ahead::Ahead;
use crate::core::case::Case;
use crate::core::money::cash::Running;
use crate::core::money::present_value::{cumulated, present_value};

/// What a candidate costs in a year, by what its price hangs on, dollars.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Yearly {
    /// By the price of electricity.
    pub electric: f64,
    /// By the prices of fuels.
    pub burned: f64,
}

impl Yearly {
    /// Both, first year.
    pub fn sum(&self) -> f64 {
        self.electric + self.burned
    }
}

/// A candidate's flows: a year's with the household as it is, and once somebody has moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Flows {
    /// What to buy and keep up.
    pub running: Running,
    /// As the household is.
    pub now: Yearly,
    /// Once somebody has moved.
    pub moved: Yearly,
}

/// A candidate's account.
#[derive(Clone, Debug, PartialEq)]
pub struct Account {
    /// Paid at the start and at the end of each year.
    pub payments: Vec<f64>,
    /// Everything, discounted, less what is left of the last heater's life.
    pub net_present_cost: f64,
}

impl Account {
    /// Spent by the end of each year, not discounted.
    pub fn spent(&self) -> Vec<f64> {
        cumulated(&self.payments, 0.0)
    }
}

/// Prices of each year over those of the first: electricity's and fuels'.
pub struct Prices(Vec<[f64; 2]>);

impl Prices {
    /// In one future of a case.
    pub fn of(case: &Case, ahead: &Ahead) -> Prices {
        let mut grown = 1.0;
        let years = (0..horizon(case)).map(|year| {
            let far = libm::sqrt(year as f64);
            let now = ahead.wanders.map(|w| if w == 0.0 { grown } else { grown * libm::exp(w * far) });
            grown *= 1.0 + case.prices.price_growth.value;
            now
        });
        Prices(years.collect())
    }
}

/// Years counted.
pub fn horizon(case: &Case) -> usize {
    let years = case.prices.horizon_years.value.round();
    if years > 1.0 { years as usize } else { 1 }
}

/// The account of a candidate. `after` is what runs once it has failed, where it is the present heater.
pub fn account(own: &Flows, after: Option<&Flows>, case: &Case, ahead: &Ahead, prices: &Prices) -> Account {
    let years = prices.0.len();
    let end = years as f64;
    let mut payments = vec![0.0; years + 1];
    payments[0] += own.running.upfront;
    let [first_life, later_life] = ahead.lives.map(|l| if l > 0.25 { l } else { 0.25 });
    let fails = ahead.present_fails;
    let (mut bought, mut life, again, mut next) = match after {
        Some(same) => (fails, first_life, same.running.again, fails),
        None => (0.0, first_life, own.running.again, first_life),
    };
    let mut first = after.is_some();
    while next < end {
        payments[libm::ceil(next) as usize] += again;
        bought = next;
        life = if first { first_life } else { later_life };
        first = false;
        next += life;
    }
    let unused = ((bought + life - end) / life).clamp(0.0, 1.0);
    let left_over = if bought < end { again * unused } else { 0.0 };
    for (y, (paid, price)) in payments.iter_mut().skip(1).zip(&prices.0).enumerate() {
        let share_before = |when: f64| (when - y as f64).clamp(0.0, 1.0);
        let still = ahead.moves.map_or(1.0, |(when, _)| share_before(when));
        let cost = |f: &Flows| {
            let energy = |of: &Yearly| of.electric * price[0] + of.burned * price[1];
            let year = if still < 1.0 {
                still * energy(&f.now) + (1.0 - still) * energy(&f.moved)
            } else {
                energy(&f.now)
            };
            year + f.running.maintenance
        };
        *paid += match after {
            Some(same) => {
                let share = share_before(fails);
                share * cost(own) + (1.0 - share) * cost(same)
            }
            None => cost(own),
        };
    }
    let rate = case.prices.discount_rate.value;
    let net_present_cost = present_value(&payments, rate) - left_over / libm::pow(1.0 + rate, end);
    Account { payments, net_present_cost }
}
