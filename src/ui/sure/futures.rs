//! How sure it is: the futures as they are drawn, for as long as somebody looks and does not stop them.

use super::Weighed;
use super::bands::bands_chart;
use super::changes::changes;
use super::drawing::Drawing;
use super::map::Map;
use super::steps::YEARS;
use crate::core::futures::{BreakEvenMap, Changes, Futures};
use crate::core::message::{Arg, Message};
use crate::core::units::Unit;
use crate::text::report::futures as said;
use crate::ui::components::parts::button;
use crate::ui::lazy;
use crate::ui::model::Shared;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// Changes of a range's width below this are none, for a reader.
const ALIKE: f64 = 0.01;

/// What was seen last, with the outcome that it belongs to.
#[derive(Clone, PartialEq)]
pub struct View {
    /// The outcome.
    pub of: Shared,
    /// The futures.
    pub futures: Arc<Futures>,
    /// What would change the advice, once that is found; where something else fits.
    pub changes: Option<Arc<Changes>>,
    /// Who is cheapest over the two numbers that matter most: last.
    pub map: Option<Arc<BreakEvenMap>>,
    /// Of the same job with older answers.
    pub before: Option<Arc<Futures>>,
}

/// How sure it is.
#[component]
pub fn HowSure(drawing: Drawing) -> impl IntoView {
    let page = page();
    let working = Memo::new(move |_| !drawing.whole.get() && !drawing.stopped.get());
    // Spoken at the beginning and the end, not at every step.
    let status = move || {
        if working.get() {
            return page.key("sure-drawing");
        }
        let tried = drawing.view.with(|view| view.as_ref().map_or(0, |view| view.futures.wishes.futures));
        page.say(&Message::new("sure-drawn").with("count", i64::from(tried)))
    };
    let years = move || drawing.view.with(|view| view.as_ref().map_or(0, |view| view.futures.error.years));
    let some = Memo::new(move |_| drawing.view.with(Option::is_some));
    let unfinished = move || !drawing.whole.get();
    // What is found last stays as it is while the bands change.
    let of = move || drawing.view.with_untracked(|view| view.as_ref().map(|view| view.of.clone()));
    let found = Memo::new(move |_| drawing.view.with(|view| view.as_ref()?.changes.clone()));
    let map = Memo::new(move |_| drawing.view.with(|view| view.as_ref()?.map.clone()));
    if let Some(Weighed(weighed)) = use_context() {
        Effect::new(move |_| weighed.set(of().zip(found.get())));
    }
    view! {
        <div class="futures" data-test="futures" data-years=move || years().to_string() aria-busy=move || working.get().to_string()>
            <p class="quiet" role="status" data-test="futures-status">{status}</p>
            {move || unfinished().then(|| view! {
                <p class="waiting">
                    <progress aria-label=page.key("sure-drawing") max=YEARS.to_string() value=move || drawing.done.get().to_string()></progress>
                </p>
            })}
            {move || unfinished().then(|| if drawing.stopped.get() {
                button(page.key("sure-go-on"), "button", "futures-go-on", move || drawing.stopped.set(false)).into_any()
            } else {
                button(page.key("sure-stop"), "button", "futures-stop", move || drawing.stopped.set(true)).into_any()
            })}
            {move || drawing.missing.get().then(|| lazy::missing(move || drawing.again()))}
            {move || some.get().then(|| shown(page, drawing.view))}
            {move || of().zip(found.get()).map(|(of, found)| changes(page, &of, &found))}
            {move || of().zip(map.get()).map(|(of, map)| view! { <Map of map/> })}
        </div>
    }
}

/// By how much the range of what the advised heater costs has become narrower, or wider, since older answers.
fn narrowed(view: &View) -> Option<Message> {
    let range = |futures: &Futures| Some(*futures.of(view.futures.advised)?.spent.last()?);
    let (was, is) = (range(view.before.as_deref()?)?, range(&view.futures)?);
    let (wide, now) = (was.high - was.low, is.high - is.low);
    if wide <= 0.0 {
        return None;
    }
    let less = 1.0 - now / wide;
    let key = match less {
        less if less > ALIKE => "sure-narrower",
        less if less < -ALIKE => "sure-wider",
        _ => "sure-as-wide",
    };
    let message = Message::new(key)
        .quantity("low", was.low, Unit::Dollar)
        .quantity("high", was.high, Unit::Dollar)
        .quantity("share", (100.0 * less.abs()).round(), Unit::Percent);
    Some(message)
}

/// The bands, and what they say: in place while they are refined.
fn shown(page: Page, view: RwSignal<Option<View>>) -> AnyView {
    let listed =
        move |lines: Vec<String>| lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
    let each = move || {
        view.with(|view| {
            let words = page.words();
            listed(
                view.as_ref()
                    .map(|view| said::candidates(&words, &view.futures, &view.of.0))
                    .unwrap_or_default(),
            )
        })
    };
    let advised =
        move || listed(view.with(|view| view.as_ref().map(|view| sure(page, view)).unwrap_or_default()));
    let narrower = move || {
        let message = view.with(|view| narrowed(view.as_ref()?))?;
        Some(view! { <p data-test="sure-narrowed">{page.say(&message)}</p> })
    };
    view! {
        <section aria-labelledby="sure-futures-name" data-test="sure-futures">
            <h3 id="sure-futures-name">{page.key("sure-futures")}</h3>
            <ul data-test="sure-advised">{advised}</ul>
            {bands_chart(view)}
            {narrower}
            <details class="data">
                <summary>{page.key("sure-each")}</summary>
                <ul data-test="sure-each">{each}</ul>
            </details>
        </section>
    }
    .into_any()
}

/// How sure the advised heater is.
fn sure(page: Page, view: &View) -> Vec<String> {
    let Some(c) = view.futures.of(view.futures.advised) else { return Vec::new() };
    let percent = |share: f64| Arg::Number((100.0 * share).round(), 0);
    let cheapest = said::advised(&view.futures, &view.of.0);
    let all = [
        Message::new("sure-pays").with("chance", percent(c.pays_within_life)),
        Message::new("sure-worst").quantity("amount", (c.worst_regret / 100.0).round() * 100.0, Unit::Dollar),
    ];
    cheapest.iter().chain(&all).map(|m| page.say(m)).collect()
}
