//! Energy month by month, for two heaters.

use super::axis::Axis;
use super::frame::{ChartFrame, Figures, Legend};
use super::plot;
use super::sheet::Sheet;
use crate::core::message::Message;
use crate::core::outcome::{CandidateOutcome, YearResult};
use crate::core::units::{Quantity, Unit};
use crate::ui::components::pair::pair;
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// Names of the months.
const LONG: [&str; 12] = [
    "page-month-january",
    "page-month-february",
    "page-month-march",
    "page-month-april",
    "page-month-may",
    "page-month-june",
    "page-month-july",
    "page-month-august",
    "page-month-september",
    "page-month-october",
    "page-month-november",
    "page-month-december",
];

/// A month's name.
pub fn month(page: Page, index: usize) -> String {
    LONG.get(index).map(|key| page.key(key)).unwrap_or_default()
}

/// A month's name in three letters or so.
pub fn short_month(page: Page, index: usize) -> String {
    LONG.get(index).map(|key| page.attr(key, "short")).unwrap_or_default()
}

/// The chart.
#[component]
pub fn MonthsChart() -> impl IntoView {
    let page = page();
    let pair = pair();
    let legend = Signal::derive(move || -> Legend {
        vec![
            ("bar", Signal::derive(move || pair.name(page, false))),
            ("hollow", Signal::derive(move || pair.name(page, true))),
        ]
    });
    view! {
        <ChartFrame
            code="months"
            heading="page-chart-months"
            reading=Signal::derive(move || pair.with(|a, b| say(page, a, b)).unwrap_or_default())
            legend
            figures=Signal::derive(move || pair.with(|a, b| figures(page, a, b)).unwrap_or_default())
            draw=Arc::new(move |sheet: &Sheet| {
                if let Some((a, b)) = pair.with(|a, b| (used(&a.year), used(&b.year))) {
                    draw(page, &a, &b, sheet);
                }
            })
        />
    }
}

/// Electricity and fuel by month, kWh.
fn used(year: &YearResult) -> [f64; 12] {
    std::array::from_fn(|m| year.electricity_kwh[m] + year.fuel_kwh[m])
}

fn draw(page: Page, a: &[f64; 12], b: &[f64; 12], sheet: &Sheet) {
    let y = Axis::round(a.iter().chain(b).copied().chain([0.0]), 4, |v| page.words().number(v, 0));
    let marks = (0..12).map(|m| (m as f64 + 0.5, short_month(page, m))).collect();
    let colours = sheet.colours;
    plot::whole(sheet, &Axis::with_marks(0.0, 12.0, marks), &y, "", &mut |plot| {
        for (m, (&of_a, &of_b)) in a.iter().zip(b).enumerate() {
            let at = m as f64;
            plot.bar(at + 0.14, at + 0.48, of_a, colours.copper, false);
            plot.bar(at + 0.52, at + 0.86, of_b, colours.rival, true);
        }
    });
}

fn say(page: Page, a: &CandidateOutcome, b: &CandidateOutcome) -> String {
    let months = used(&a.year);
    let most = (0..12).fold(0, |most, m| if months[m] > months[most] { m } else { most });
    page.say(
        &Message::new("page-months-reading")
            .with("heater", a.candidate.name())
            .quantity("energy", reading::energy_year_kwh(a), Unit::KilowattHour)
            .with("rival", b.candidate.name())
            .quantity("rival-energy", reading::energy_year_kwh(b), Unit::KilowattHour)
            .with("month", Message::new(LONG[most])),
    )
}

fn figures(page: Page, a: &CandidateOutcome, b: &CandidateOutcome) -> Figures {
    let kwh = |v: f64| page.quantity(Quantity::new(v, Unit::KilowattHour));
    let head = |words: &'static str, c: &CandidateOutcome| {
        page.say(&Message::new(words).with("heater", c.candidate.name()))
    };
    Figures {
        heads: vec![
            page.key("page-chart-month"),
            head("page-chart-months-electricity", a),
            head("page-chart-months-fuel", a),
            head("page-chart-months-electricity", b),
            head("page-chart-months-fuel", b),
        ],
        rows: (0..12)
            .map(|m| {
                vec![
                    month(page, m),
                    kwh(a.year.electricity_kwh[m]),
                    kwh(a.year.fuel_kwh[m]),
                    kwh(b.year.electricity_kwh[m]),
                    kwh(b.year.fuel_kwh[m]),
                ]
            })
            .collect(),
    }
}
