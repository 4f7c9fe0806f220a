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

/// The advised heater and the one beside it, and the first as it was with older answers.
#[derive(Clone, PartialEq)]
struct Shown {
    pair: [CandidateFutures; 2],
    names: [Message; 2],
    before: Option<Vec<Band>>,
}

impl Shown {
    fn of(view: &View) -> Option<Shown> {
        let (outcome, find) = (&view.of.0, |id: CandidateId| view.futures.of(id).cloned());
        let pair = [find(outcome.advice.best)?, find(reading::rival(outcome))?];
        let names = [outcome.name_of(pair[0].id), outcome.name_of(pair[1].id)];
        let before = view.before.as_ref().and_then(|futures| Some(futures.of(pair[0].id)?.spent.clone()));
        Some(Shown { pair, names, before })
    }
}

/// The chart. It stays while what it shows is refined.
pub fn bands_chart(view: RwSignal<Option<View>>) -> AnyView {
    let page = page();
    let shown = Memo::new(move |_| view.with(|view| Shown::of(view.as_ref()?)));
    let name = move |n: usize| {
        Signal::derive(move || shown.with(|s| s.as_ref().map(|s| page.say(&s.names[n])).unwrap_or_default()))
    };
    let names = [name(0), name(1)];
    let legend = Signal::derive(move || -> Legend {
        let band = ("band", Signal::stored(page.key("sure-band")));
        let before = shown.with(|s| s.as_ref().is_some_and(|s| s.before.is_some()));
        let before = before.then(|| ("thin", Signal::stored(page.key("sure-band-before"))));
        [("solid", names[0]), ("dashed", names[1]), band].into_iter().chain(before).collect()
    });
    let reading =
        Signal::derive(move || shown.with(|s| s.as_ref().map(|s| reading(page, s)).unwrap_or_default()));
    let figures = Signal::derive(move || {
        shown.with(|s| s.as_ref().map(|s| figures(page, names, &s.pair[0], &s.pair[1])).unwrap_or_default())
    });
    let draw = Arc::new(move |sheet: &Sheet| {
        shown.with(|s| {
            let Some(Shown { pair: [a, b], before, .. }) = s else { return };
            let edge = |of: &[Band], pick: fn(&Band) -> f64| of.iter().map(pick).collect();
            let chosen = match before {
                Some(before) => banded(a).after(edge(before, |s| s.low), edge(before, |s| s.high)),
                None => banded(a),
            };
            years::draw(page, sheet, &chosen, &banded(b), 5, &|v| money(page, v));
        });
    });
    view! { <ChartFrame code="bands" heading="sure-bands" reading legend figures draw/> }.into_any()
}

fn reading(page: Page, shown: &Shown) -> String {
    let end = |c: &CandidateFutures| c.spent.last().copied().unwrap_or_default();
    let ([a, b], [of_a, of_b]) = (&shown.pair, shown.names.clone());
    let (years, a, b) = (a.spent.len().saturating_sub(1), end(a), end(b));
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
