//! The bands over the years: what has been spent by the end of each, in eight of ten futures.

use super::futures::View;
use crate::core::candidates::CandidateId;
use crate::core::futures::{Band, CandidateFutures};
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit};
use crate::ui::charts::axis::{Axis, round_step};
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::plot::{Plot, areas};
use crate::ui::charts::sheet::Sheet;
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// The chart: the advised heater and the one beside it.
pub fn bands_chart(view: &View) -> Option<AnyView> {
    let page = page();
    let outcome = view.of.0.clone();
    let find = |id: CandidateId| view.seen.futures.of(id).cloned();
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
    let view = view! {
        <ChartFrame
            code="bands"
            heading="sure-bands"
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

fn money(page: Page, dollars: f64) -> String {
    page.quantity(Quantity::new(dollars.round(), Unit::Dollar))
}

fn line(bands: &[Band], pick: fn(&Band) -> f64) -> Vec<(f64, f64)> {
    bands.iter().enumerate().map(|(year, band)| (year as f64, pick(band))).collect()
}

fn draw(page: Page, a: &CandidateFutures, b: &CandidateFutures, sheet: &Sheet) {
    let all: Vec<f64> = a.spent.iter().chain(&b.spent).flat_map(|s| [s.low, s.high]).chain([0.0]).collect();
    let y = Axis::round(all, 5, |v| money(page, v));
    let years = a.spent.len().saturating_sub(1) as f64;
    let step = round_step((years / 8.0).max(1.0)).round().max(1.0);
    let marks = (0..=(years / step) as u32)
        .map(|i| f64::from(i) * step)
        .map(|year| (year, page.words().number(year, 0)))
        .collect();
    let parts = areas(sheet, 1);
    let Some(area) = parts.first() else { return };
    let Some(mut plot) = Plot::begin(sheet, area, &Axis::with_marks(0.0, years, marks), &y) else { return };
    let colours = sheet.colours;
    for (c, colour) in [(b, colours.rival), (a, colours.copper)] {
        plot.band(&line(&c.spent, |s| s.low), &line(&c.spent, |s| s.high), colour);
    }
    plot.line(&line(&b.spent, |s| s.middle), colours.rival, 2.5, true);
    plot.line(&line(&a.spent, |s| s.middle), colours.copper, 3.0, false);
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
