//! The money over the years: what has been spent by the end of each, with the band between low and high
//! prices.

use super::frame::{ChartFrame, Figures, Legend};
use super::sheet::Sheet;
use super::years::{self, Banded};
use crate::core::message::{Arg, Message};
use crate::core::outcome::CandidateOutcome;
use crate::core::units::{Quantity, Unit};
use crate::ui::components::pair::pair;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The chart.
#[component]
pub fn MoneyChart() -> impl IntoView {
    let page = page();
    let pair = pair();
    let legend = Signal::derive(move || -> Legend {
        vec![
            ("solid", Signal::derive(move || pair.name(page, false))),
            ("dashed", Signal::derive(move || pair.name(page, true))),
            ("band", Signal::stored(page.key("page-chart-money-band"))),
        ]
    });
    view! {
        <ChartFrame
            code="money"
            heading="page-chart-money"
            reading=Signal::derive(move || pair.with(|a, b| say(page, a, b)).unwrap_or_default())
            legend
            figures=Signal::derive(move || pair.with(|a, b| figures(page, a, b)).unwrap_or_default())
            draw=Arc::new(move |sheet: &Sheet| {
                if let Some((a, b)) = pair.with(|a, b| (banded(a), banded(b))) {
                    years::draw(page, sheet, &a, &b, 5, &|v| money(page, v));
                }
            })
        />
    }
}

fn money(page: Page, dollars: f64) -> String {
    page.quantity(Quantity::new(dollars, Unit::Dollar))
}

fn banded(c: &CandidateOutcome) -> Banded {
    let (low, high) = &c.cost.spent_low_high;
    Banded::new(c.cost.spent.clone(), low.clone(), high.clone())
}

/// What both have come to in the end, and when they are level.
fn say(page: Page, a: &CandidateOutcome, b: &CandidateOutcome) -> String {
    let years = a.cost.spent.len().saturating_sub(1);
    let (Some(&end_a), Some(&end_b)) = (a.cost.spent.last(), b.cost.spent.last()) else {
        return String::new();
    };
    let ends = Message::new("page-money-ends")
        .with("years", years as i64)
        .with("heater", a.candidate.name())
        .quantity("amount", end_a, Unit::Dollar)
        .with("rival", b.candidate.name())
        .quantity("rival-amount", end_b, Unit::Dollar);
    let level = match level(&a.cost.spent, &b.cost.spent) {
        Some(year) => Message::new("page-money-level").with("year", Arg::Number(year, 1)),
        None => Message::new("page-money-never-level"),
    };
    format!("{} {}", page.say(&ends), page.say(&level))
}

/// The first year at which the two lines meet after the start.
fn level(a: &[f64], b: &[f64]) -> Option<f64> {
    let gap: Vec<f64> = a.iter().zip(b).map(|(a, b)| a - b).collect();
    gap.windows(2).enumerate().find_map(|(i, w)| {
        let (now, next) = (w[0], w[1]);
        (now * next <= 0.0 && now != next).then(|| i as f64 + now / (now - next))
    })
}

fn figures(page: Page, a: &CandidateOutcome, b: &CandidateOutcome) -> Figures {
    let name = |c: &CandidateOutcome| page.say(&c.candidate.name());
    let low_high = |c: &CandidateOutcome, year: usize| {
        let (low, high) = &c.cost.spent_low_high;
        match (low.get(year), high.get(year)) {
            (Some(&low), Some(&high)) => {
                page.say(&Message::new("page-range").quantity("low", low, Unit::Dollar).quantity(
                    "high",
                    high,
                    Unit::Dollar,
                ))
            }
            _ => page.key("page-nothing"),
        }
    };
    let row = |(year, (&of_a, &of_b)): (usize, (&f64, &f64))| {
        vec![year.to_string(), money(page, of_a), low_high(a, year), money(page, of_b), low_high(b, year)]
    };
    let band = page.key("page-chart-money-band");
    Figures {
        heads: vec![page.key("page-chart-money-year"), name(a), band.clone(), name(b), band],
        rows: a.cost.spent.iter().zip(&b.cost.spent).enumerate().map(row).collect(),
    }
}
