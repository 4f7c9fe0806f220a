//! The money over the years: what has been spent by the end of each, with the band between low and high
//! prices.

use super::axis::Axis;
use super::frame::{ChartFrame, Figures, Legend};
use super::plot::{Plot, areas};
use super::sheet::Sheet;
use crate::core::message::{Arg, Message};
use crate::core::outcome::{CandidateOutcome, Cost};
use crate::core::units::{Quantity, Unit};
use crate::ui::components::pair::pair;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

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
            draw=Callback::new(move |sheet: StoredValue<Sheet, LocalStorage>| {
                let costs = pair.with(|a, b| (a.cost.clone(), b.cost.clone()));
                if let Some((a, b)) = costs {
                    sheet.with_value(|sheet| draw(page, &a, &b, sheet));
                }
            })
        />
    }
}

fn money(page: Page, dollars: f64) -> String {
    page.quantity(Quantity::new(dollars, Unit::Dollar))
}

fn by_year(spent: &[f64]) -> Vec<(f64, f64)> {
    spent.iter().enumerate().map(|(year, &v)| (year as f64, v)).collect()
}

fn draw(page: Page, a: &Cost, b: &Cost, sheet: &Sheet) {
    let (low_a, high_a) = &a.spent_low_high;
    let (low_b, high_b) = &b.spent_low_high;
    let all = [&a.spent, &b.spent, low_a, high_a, low_b, high_b].into_iter().flatten().copied().chain([0.0]);
    let y = Axis::round(all, 5, |v| money(page, v));
    let years = a.spent.len().saturating_sub(1) as f64;
    let step = super::axis::round_step((years / 8.0).max(1.0)).round().max(1.0);
    let marks = (0..=(years / step) as u32)
        .map(|i| f64::from(i) * step)
        .map(|year| (year, page.words().number(year, 0)))
        .collect();
    let parts = areas(sheet, 1);
    let Some(area) = parts.first() else { return };
    let Some(mut plot) = Plot::begin(sheet, area, &Axis::with_marks(0.0, years, marks), &y) else { return };
    let colours = sheet.colours;
    plot.band(&by_year(low_b), &by_year(high_b), colours.rival);
    plot.band(&by_year(low_a), &by_year(high_a), colours.copper);
    plot.line(&by_year(&b.spent), colours.rival, 2.5, true);
    plot.line(&by_year(&a.spent), colours.copper, 3.0, false);
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
