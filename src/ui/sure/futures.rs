//! How sure it is: the futures as they are drawn, step by step, for as long as somebody looks and does not stop them.

use super::bands::bands_chart;
use super::changes::changes;
use crate::core::message::{Arg, Message};
use crate::text::report::futures as said;
use crate::ui::components::parts::button;
use crate::ui::errands::Came;
use crate::ui::model::Shared;
use crate::ui::state::{Page, page};
use crate::worker::drawing::{Seen, Step};
use crate::worker::errands;
use leptos::prelude::*;
use std::sync::Arc;

/// What was seen last, with the outcome that it belongs to.
#[derive(Clone)]
pub struct View {
    /// The outcome.
    pub of: Shared,
    /// The futures.
    pub seen: Arc<Seen>,
}

/// The steps of a drawing.
#[derive(Clone, Copy)]
struct Steps {
    at: RwSignal<u32>,
    /// Design points done, of how many.
    done: RwSignal<(u32, u32)>,
    stopped: RwSignal<bool>,
    last: RwSignal<Option<View>>,
}

/// Asks for one step after another, for the answers as they stand.
fn draw(page: Page) -> Steps {
    let steps = Steps {
        at: RwSignal::new(0),
        done: RwSignal::new((0, 1)),
        stopped: RwSignal::new(false),
        last: RwSignal::new(None),
    };
    let ask = Memo::new(move |_| {
        let at = steps.at.get();
        page.answers.with(|answers| page.offer.with(|offer| errands::to_draw(answers, offer, at)))
    });
    // Other answers: another drawing, from its beginning.
    Effect::new(move |before: Option<()>| {
        page.answers.track();
        page.offer.track();
        if before.is_some() {
            steps.at.set(0);
            steps.done.set((0, 1));
        }
    });
    Effect::new(move |_| {
        if page.outcome.with(Option::is_some) && !steps.stopped.get() {
            page.send_errand(ask.get());
        }
    });
    Effect::new(move |_| {
        let Came::Done(bytes) = page.errand(&ask.get()) else { return };
        let Some(Step { done, of, seen }) = errands::drawn(&bytes) else { return };
        steps.done.set((done, of));
        if let (Some(seen), Some(of)) = (seen, page.outcome.get_untracked()) {
            steps.last.set(Some(View { of, seen: Arc::new(seen) }));
        }
        if done < of {
            steps.at.update(|at| *at += 1);
        }
    });
    steps
}

/// How sure it is.
#[component]
pub fn HowSure() -> impl IntoView {
    let page = page();
    let steps = draw(page);
    let working = Memo::new(move |_| {
        let (done, of) = steps.done.get();
        done < of && !steps.stopped.get()
    });
    let progress = move || {
        let (done, of) = steps.done.get();
        (of.to_string(), done.to_string())
    };
    // Spoken at the beginning and the end, not at every step.
    let status = move || page.key(if working.get() { "sure-drawing" } else { "sure-drawn" });
    let stop = move || steps.stopped.set(true);
    let go_on = move || steps.stopped.set(false);
    let unfinished = move || {
        let (done, of) = steps.done.get();
        done < of
    };
    view! {
        <div data-test="futures" aria-busy=move || working.get().to_string()>
            <p class="quiet" role="status" data-test="futures-status">{status}</p>
            {move || unfinished().then(|| view! {
                <p class="waiting">
                    <progress aria-label=page.key("sure-drawing") max=move || progress().0 value=move || progress().1></progress>
                </p>
            })}
            {move || unfinished().then(|| if steps.stopped.get() {
                button(page.key("sure-go-on"), "button", "futures-go-on", go_on).into_any()
            } else {
                button(page.key("sure-stop"), "button", "futures-stop", stop).into_any()
            })}
            {move || steps.last.get().map(|view| shown(page, view))}
        </div>
    }
}

fn shown(page: Page, view: View) -> impl IntoView {
    let (futures, outcome) = (view.seen.futures.clone(), view.of.0.clone());
    let each = {
        let (futures, outcome) = (futures.clone(), outcome.clone());
        move || {
            let words = page.words();
            let all = said::candidates(&words, &futures, &outcome);
            all.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()
        }
    };
    let advised = futures.of(futures.advised).cloned();
    let sure = advised.map(|c| {
        let name = outcome.name_of(c.id);
        let percent = |share: f64| Arg::Number((100.0 * share).round(), 0);
        let says = [
            Message::new("sure-cheapest").with("heater", name.clone()).with("chance", percent(c.cheapest)),
            Message::new("sure-pays").with("chance", percent(c.pays_within_life)),
            Message::new("sure-worst").quantity(
                "amount",
                (c.worst_regret / 100.0).round() * 100.0,
                crate::core::units::Unit::Dollar,
            ),
        ];
        says.map(|m| view! { <li>{move || page.say(&m)}</li> }).collect_view()
    });
    view! {
        <section aria-labelledby="sure-futures-name" data-test="sure-futures">
            <h3 id="sure-futures-name">{page.key("sure-futures")}</h3>
            <ul data-test="sure-advised">{sure}</ul>
            {bands_chart(&view)}
            <details class="data">
                <summary>{page.key("sure-each")}</summary>
                <ul>{each}</ul>
            </details>
        </section>
        {changes(page, &view)}
    }
}
