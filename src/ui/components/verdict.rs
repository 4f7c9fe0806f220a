//! The verdict, always in sight: below on a phone, at the side on a wide screen.

use super::link::GoTo;
use crate::core::message::Message;
use crate::core::outcome::Outcome;
use crate::job::answers::Answers;
use crate::job::questions::Section;
use crate::ui::model::Shared;
use crate::ui::reading;
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;
use std::sync::Arc;

/// The verdict in one sentence, its key figures, and the way to the rest of it.
#[component]
pub fn VerdictBar() -> impl IntoView {
    let page = page();
    let busy = Memo::new(move |_| page.computed.with(|c| c.progress.is_some()));
    // A first look stands in the sentence's place until the whole outcome comes; the rest of the page waits.
    let refining = Memo::new(move |_| page.computed.with(|c| c.first.is_some()));
    let newest =
        Memo::new(move |_| page.computed.with(|c| c.first.clone().or_else(|| c.outcome.clone()).map(Shared)));
    let basis = move || match page.answers.with(Answers::len) {
        _ if refining.get() => page.key("page-verdict-first"),
        0 => page.key("page-verdict-typical"),
        count => page.say(&Message::new("page-verdict-basis").with("count", count as i64)),
    };
    let on_result = Memo::new(move |_| page.route.get() == Route::Result);
    let way = move || {
        if on_result.get() {
            let route = Route::Section(Section::ALL[0], None);
            view! { <GoTo route class="button" test="change-answers">{page.key("page-verdict-change")}</GoTo> }
        } else {
            view! { <GoTo route=Route::Result class="button main" test="result">{page.key("page-verdict-more")}</GoTo> }
        }
    };
    view! {
        <aside class="verdict" data-test="verdict" aria-label=page.key("page-verdict") aria-busy=move || busy.get().to_string()
            data-stage=move || if refining.get() { "first" } else { "full" }>
            <Working/>
            <p class="basis" data-test="verdict-basis">{basis}</p>
            <div class="says" role="status" data-test="verdict-says">
                {move || match newest.get() {
                    Some(shared) => view! { <Says outcome=shared.0/> }.into_any(),
                    None => view! { <p class="sentence">{page.key("page-verdict-wait")}</p> }.into_any(),
                }}
            </div>
            {way}
        </aside>
    }
}

#[component]
fn Says(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let figures = reading::key_figures(&outcome);
    view! {
        <p class="sentence">{move || page.say(&outcome.advice.verdict)}</p>
        <ul class="key-figures">
            {figures.into_iter().map(|f| view! { <li>{move || page.say(&f)}</li> }).collect_view()}
        </ul>
    }
}

/// A thin line that fills while a newer verdict is computed.
#[component]
fn Working() -> impl IntoView {
    let page = page();
    let share = move || {
        page.computed.with(|c| c.progress.map_or(1.0, |(done, of)| f64::from(done) / f64::from(of.max(1))))
    };
    let shown = move || page.computed.with(|c| c.progress.is_some());
    view! {
        <progress class="computing" class:shown=shown max="1" value=move || share().to_string() aria-label=page.key("page-computing")>
        </progress>
    }
}
