//! CO₂ over the years of the advised heater and the one beside it, with the range of the grid.

use super::Ahead;
use crate::core::candidates::CandidateId;
use crate::core::message::{Arg, Message};
use crate::core::money::emission::Emission;
use crate::core::outlook::says;
use crate::ui::charts::axis::{Axis, round_step};
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::plot::{Plot, areas};
use crate::ui::charts::sheet::Sheet;
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// The chart.
pub fn emissions_chart(ahead: &Ahead) -> Option<AnyView> {
    let page = page();
    let outcome = ahead.of.0.clone();
    let find = |id: CandidateId| ahead.outlook.emissions.iter().find(|e| e.id == id).cloned();
    let pair = (find(outcome.advice.best)?, find(reading::rival(&outcome))?);
    let names = (outcome.name_of(pair.0.id), outcome.name_of(pair.1.id));
    let (a, b) = names.clone();
    let legend = Signal::derive(move || -> Legend {
        vec![
            ("solid", said(page, a.clone())),
            ("dashed", said(page, b.clone())),
            ("band", Signal::stored(page.key("sure-emissions-band"))),
        ]
    });
    let pair = StoredValue::new(pair);
    let reading = Signal::derive(move || {
        pair.with_value(|(a, b)| {
            let said = [a, b].map(|e| page.say(&says::emission(e, &outcome)));
            format!("{} {}", said[0], said[1])
        })
    });
    let figures = Signal::derive(move || {
        let heads = [&names.0, &names.1].map(|name| page.say(name));
        pair.with_value(|(a, b)| figures(page, heads, a, b))
    });
    let view = view! {
        <ChartFrame
            code="emissions"
            heading="sure-emissions-chart"
            reading
            legend
            figures
            draw=Callback::new(move |sheet: StoredValue<Sheet, LocalStorage>| {
                pair.with_value(|(a, b)| sheet.with_value(|sheet| draw(page, a, b, sheet)));
            })
        />
    };
    Some(view.into_any())
}

/// A message in words that follow the reader's units.
fn said(page: Page, message: Message) -> Signal<String> {
    Signal::derive(move || page.say(&message))
}

/// What has been emitted by the end of each year, from nothing, tonnes.
fn gathered(by_year: &[f64]) -> Vec<(f64, f64)> {
    let mut sum = 0.0;
    let mut line = vec![(0.0, 0.0)];
    for (y, kg) in by_year.iter().enumerate() {
        sum += kg / 1_000.0;
        line.push((y as f64 + 1.0, sum));
    }
    line
}

fn draw(page: Page, a: &Emission, b: &Emission, sheet: &Sheet) {
    let lines = |e: &Emission| [&e.by_year, &e.low_high.0, &e.low_high.1].map(|years| gathered(years));
    let ([a, low_a, high_a], [b, low_b, high_b]) = (lines(a), lines(b));
    let all = [&a, &b, &low_a, &high_a, &low_b, &high_b].into_iter().flatten().map(|(_, t)| *t);
    let y = Axis::round(all.collect::<Vec<_>>(), 4, |v| page.words().number(v, 0));
    let years = a.len().saturating_sub(1) as f64;
    let step = round_step((years / 8.0).max(1.0)).round().max(1.0);
    let marks = (0..=(years / step) as u32)
        .map(|i| f64::from(i) * step)
        .map(|year| (year, page.words().number(year, 0)))
        .collect();
    let parts = areas(sheet, 1);
    let Some(area) = parts.first() else { return };
    let Some(mut plot) = Plot::begin(sheet, area, &Axis::with_marks(0.0, years, marks), &y) else { return };
    let colours = sheet.colours;
    plot.band(&low_b, &high_b, colours.rival);
    plot.band(&low_a, &high_a, colours.copper);
    plot.line(&b, colours.rival, 2.5, true);
    plot.line(&a, colours.copper, 3.0, false);
}

fn figures(page: Page, heads: [String; 2], a: &Emission, b: &Emission) -> Figures {
    let range = page.key("sure-emissions-range");
    let kg = |v: f64| page.words().number(v, 0);
    let low_high = |e: &Emission, y: usize| match (e.low_high.0.get(y), e.low_high.1.get(y)) {
        (Some(low), Some(high)) => page.say(
            &Message::new("sure-range").with("low", Arg::Number(*low, 0)).with("high", Arg::Number(*high, 0)),
        ),
        _ => String::new(),
    };
    let [of_a, of_b] = heads;
    Figures {
        heads: vec![page.key("sure-emissions-year"), of_a, range.clone(), of_b, range],
        rows: a
            .by_year
            .iter()
            .zip(&b.by_year)
            .enumerate()
            .map(|(y, (of_a, of_b))| {
                vec![(y + 1).to_string(), kg(*of_a), low_high(a, y), kg(*of_b), low_high(b, y)]
            })
            .collect(),
    }
}
