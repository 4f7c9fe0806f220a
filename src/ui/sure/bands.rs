//! The bands over the years: what has been spent by the end of each, in eight of ten futures.

use super::futures::View;
use crate::core::candidates::CandidateId;
use crate::core::futures::{Band, CandidateFutures};
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit};
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::sheet::Sheet;
use crate::ui::charts::years::{self, Banded};
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The chart: the advised heater and the one beside it.
pub fn bands_chart(view: &View) -> Option<AnyView> {
    let page = page();
    let outcome = view.of.0.clone();
    let find = |id: CandidateId| view.futures.of(id).cloned();
    let (a, b) = (find(outcome.advice.best)?, find(reading::rival(&outcome))?);
    let names = [outcome.name_of(a.id), outcome.name_of(b.id)];
    let said = names.clone().map(|name| Signal::derive(move || page.say(&name)));
    let legend = Signal::derive(move || -> Legend {
        vec![("solid", said[0]), ("dashed", said[1]), ("band", Signal::stored(page.key("sure-band")))]
    });
    let pair = StoredValue::new((a, b));
    let reading = Signal::derive(move || {
        let end = |c: &CandidateFutures| c.spent.last().copied().unwrap_or_default();
        let (a, b, years) = pair.with_value(|(a, b)| (end(a), end(b), a.spent.len().saturating_sub(1)));
        let [of_a, of_b] = names.clone();
        page.say(
            &Message::new("sure-bands-reading")
                .with("years", years as i64)
                .with("heater", of_a)
                .quantity("low", a.low, Unit::Dollar)
                .quantity("high", a.high, Unit::Dollar)
                .with("rival", of_b)
                .quantity("rival-low", b.low, Unit::Dollar)
                .quantity("rival-high", b.high, Unit::Dollar),
        )
    });
    let figures = Signal::derive(move || pair.with_value(|(a, b)| figures(page, said, a, b)));
    let draw = Arc::new(move |sheet: &Sheet| {
        let (a, b) = pair.with_value(|(a, b)| (banded(a), banded(b)));
        years::draw(page, sheet, &a, &b, 5, &|v| money(page, v));
    });
    Some(view! { <ChartFrame code="bands" heading="sure-bands" reading legend figures draw/> }.into_any())
}

fn money(page: Page, dollars: f64) -> String {
    page.quantity(Quantity::new(dollars.round(), Unit::Dollar))
}

fn banded(c: &CandidateFutures) -> Banded {
    let edge = |pick: fn(&Band) -> f64| c.spent.iter().map(pick).collect();
    Banded::new(edge(|s| s.middle), edge(|s| s.low), edge(|s| s.high))
}

fn figures(page: Page, names: [Signal<String>; 2], a: &CandidateFutures, b: &CandidateFutures) -> Figures {
    let range = |s: &Band| {
        page.say(&Message::new("sure-money-range").quantity("low", s.low, Unit::Dollar).quantity(
            "high",
            s.high,
            Unit::Dollar,
        ))
    };
    let band = page.key("sure-band");
    Figures {
        heads: vec![page.key("sure-emissions-year"), names[0].get(), band.clone(), names[1].get(), band],
        rows: a
            .spent
            .iter()
            .zip(&b.spent)
            .enumerate()
            .map(|(y, (a, b))| {
                vec![y.to_string(), money(page, a.middle), range(a), money(page, b.middle), range(b)]
            })
            .collect(),
    }
}
