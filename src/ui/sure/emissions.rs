//! CO₂ over the years of the advised heater and the one beside it, with the range of the grid.

use super::Ahead;
use crate::core::candidates::CandidateId;
use crate::core::message::{Arg, Message};
use crate::core::money::emission::Emission;
use crate::core::outlook::says;
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::sheet::Sheet;
use crate::ui::charts::years::{self, Banded};
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

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
    let draw = Arc::new(move |sheet: &Sheet| {
        let (a, b) = pair.with_value(|(a, b)| (banded(a), banded(b)));
        years::draw(page, sheet, &a, &b, 4, &|v| page.words().number(v, 0));
    });
    let view =
        view! { <ChartFrame code="emissions" heading="sure-emissions-chart" reading legend figures draw/> };
    Some(view.into_any())
}

/// A message in words that follow the reader's units.
fn said(page: Page, message: Message) -> Signal<String> {
    Signal::derive(move || page.say(&message))
}

/// What has been emitted by the end of each year, from nothing, tonnes.
fn gathered(by_year: &[f64]) -> Vec<f64> {
    let mut sum = 0.0;
    let mut line = vec![0.0];
    for kg in by_year {
        sum += kg / 1_000.0;
        line.push(sum);
    }
    line
}

fn banded(e: &Emission) -> Banded {
    let (low, high) = &e.low_high;
    Banded::new(gathered(&e.by_year), gathered(low), gathered(high))
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
