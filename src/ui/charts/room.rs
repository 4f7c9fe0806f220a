//! The room through the year: its temperature with and without the heater's heat pump, and its humidity.

use super::axis::Axis;
use super::frame::{ChartFrame, Figures, Legend};
use super::months::{month, short_month};
use super::plot::{Plot, areas};
use super::sheet::Sheet;
use crate::core::calendar::{DAYS_PER_YEAR, Month};
use crate::core::message::Message;
use crate::core::outcome::{CandidateOutcome, YearResult};
use crate::core::units::{Dimension, Quantity, Unit, to_celsius};
use crate::ui::components::pair::pair;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The chart.
#[component]
pub fn RoomChart() -> impl IntoView {
    let page = page();
    let pair = pair();
    let legend = Signal::derive(move || -> Legend {
        vec![
            ("solid", Signal::derive(move || pair.name(page, false))),
            ("dashed", Signal::stored(page.key("page-chart-room-undisturbed"))),
        ]
    });
    view! {
        <ChartFrame
            code="room"
            heading="page-chart-room"
            reading=Signal::derive(move || pair.with(|a, _| say(page, a)).unwrap_or_default())
            legend
            figures=Signal::derive(move || pair.with(|a, _| figures(page, &a.year)).unwrap_or_default())
            draw=Arc::new(move |sheet: &Sheet| {
                if let Some(year) = pair.with(|a, _| a.year.clone()) {
                    draw(page, &year, sheet);
                }
            })
            tall=true
        />
    }
}

fn by_day(series: &[f32], shown: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
    series.iter().enumerate().map(|(day, &v)| (day as f64, shown(f64::from(v)))).collect()
}

fn draw(page: Page, year: &YearResult, sheet: &Sheet) {
    let unit = Dimension::Temperature.display_unit(page.units());
    let degrees = |celsius: f64| Quantity::new(celsius, Unit::DegC).to(unit).map_or(celsius, |q| q.value);
    let with = by_day(&year.room_c, degrees);
    let without = by_day(&year.room_undisturbed_c, degrees);
    let damp = by_day(&year.room_rh, |share| share * 100.0);
    let marks = Month::ALL
        .iter()
        .map(|m| (m.first_day().index() as f64 + f64::from(m.days()) / 2.0, short_month(page, m.index())))
        .collect();
    let x = Axis::with_marks(0.0, f64::from(DAYS_PER_YEAR), marks);
    let both = with.iter().chain(&without).map(|p| p.1);
    let warmth = Axis::round(both, 4, |v| page.words().quantity(Quantity::new(v, unit)));
    let marks =
        [0.0, 25.0, 50.0, 75.0, 100.0].map(|v| (v, page.words().quantity(Quantity::new(v, Unit::Percent))));
    let parts = areas(sheet, 2);
    let [above, below] = parts.as_slice() else { return };
    let colours = sheet.colours;
    if let Some(mut plot) = Plot::begin(sheet, above, &x, &warmth) {
        plot.line(&without, colours.rival, 2.0, true);
        plot.line(&with, colours.copper, 2.5, false);
    }
    if let Some(mut plot) = Plot::begin(sheet, below, &x, &Axis::with_marks(0.0, 100.0, marks.into())) {
        plot.line(&damp, colours.copper, 2.5, false);
        plot.words(&page.key("page-chart-room-humidity"), 0.0, 92.0);
    }
}

fn say(page: Page, c: &CandidateOutcome) -> String {
    let heater = c.candidate.name();
    if c.year.heat_pump_time.value <= 0.0 {
        return page.say(&Message::new("page-room-no-heat-pump").with("heater", heater));
    }
    let drop = c
        .year
        .room_undisturbed_c
        .iter()
        .zip(&c.year.room_c)
        .map(|(&without, &with)| f64::from(without - with))
        .fold(0.0, |most, d| if d > most { d } else { most });
    page.say(
        &Message::new("page-room-reading")
            .with("heater", heater)
            .quantity("drop", drop, Unit::Kelvin)
            .quantity("coldest", to_celsius(c.year.room_coldest), Unit::DegC)
            .quantity("condensate", c.year.condensate_l.iter().sum(), Unit::Litre),
    )
}

/// Means by month.
fn figures(page: Page, year: &YearResult) -> Figures {
    let mean = |series: &[f32], m: Month| {
        let from = m.first_day().index();
        let days = series.iter().skip(from).take(usize::from(m.days()));
        let (sum, count) = days.fold((0.0, 0.0), |(sum, count), &v| (sum + f64::from(v), count + 1.0));
        if count > 0.0 { sum / count } else { 0.0 }
    };
    let degrees = |celsius: f64| page.quantity(Quantity::new(celsius, Unit::DegC));
    let row = |m: &Month| {
        vec![
            month(page, m.index()),
            degrees(mean(&year.room_c, *m)),
            degrees(mean(&year.room_undisturbed_c, *m)),
            page.quantity(Quantity::new((mean(&year.room_rh, *m) * 100.0).round(), Unit::Percent)),
        ]
    };
    Figures {
        heads: [
            "page-chart-month",
            "page-chart-room-with",
            "page-chart-room-undisturbed",
            "page-chart-room-humidity",
        ]
        .map(|key| page.key(key))
        .to_vec(),
        rows: Month::ALL.iter().map(row).collect(),
    }
}
