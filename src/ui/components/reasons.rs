//! Why this advice, what to settle before the work, what it takes for granted, and the usual cautions.

use super::findings::Jump;
use super::link::GoTo;
use super::question::value_words;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::outcome::{Outcome, Settle};
use crate::job::questions::{self, Id, Question};
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;
use std::sync::Arc;

/// The three reasons.
#[component]
pub fn Reasons(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let reasons = outcome.advice.reasons.clone();
    view! {
        <section aria-labelledby="reasons-name">
            <h2 id="reasons-name">{page.key("page-reasons")}</h2>
            <ol class="reasons" data-test="reasons">
                {reasons.into_iter().map(|r| view! { <li>{move || page.say(&r)}</li> }).collect_view()}
            </ol>
        </section>
    }
}

/// How much to settle is shown at once.
const SETTLE_AT_ONCE: usize = 5;

/// What to settle first, each with the way to its question.
#[component]
pub fn SettleFirst(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let mut all = outcome.advice.settle_first.clone();
    // The rest would bury the answer; what stops the job comes first.
    let rest = all.split_off(all.len().min(SETTLE_AT_ONCE));
    let nothing = all.is_empty().then(|| view! { <p>{page.key("page-settle-nothing")}</p> });
    let one = move |Settle { says, ask }: Settle| {
        let jump = ask.and_then(|code| Id::from_code(&code)).map(|id| view! { <Jump id/> });
        view! {
            <li>
                <p>{move || page.say(&says)}</p>
                {jump}
            </li>
        }
    };
    let start = SETTLE_AT_ONCE + 1;
    let more = (!rest.is_empty()).then(|| {
        let says = Message::new("page-settle-more").with("count", rest.len() as i64);
        view! {
            <details class="find">
                <summary data-test="settle-more">{move || page.say(&says)}</summary>
                <ol class="settle" start=start>{rest.into_iter().map(one).collect_view()}</ol>
            </details>
        }
    });
    view! {
        <section aria-labelledby="settle-name">
            <h2 id="settle-name">{page.key("page-settle")}</h2>
            {nothing}
            <ol class="settle" data-test="settle-first">{all.into_iter().map(one).collect_view()}</ol>
            {more}
        </section>
    }
}

/// What the advice takes for granted: the first questions that nobody answered, then the others.
#[component]
pub fn Assumed() -> impl IntoView {
    let page = page();
    let open = move |first: bool| {
        page.resolved.with(|r| {
            questions::all()
                .filter(|q| q.first == first && r.get(q.id).is_some_and(|k| k.from == Provenance::Assumed))
                .collect::<Vec<_>>()
        })
    };
    let list =
        move |first| open(first).into_iter().map(|question| view! { <OneAssumed question/> }).collect_view();
    let others =
        move || page.say(&Message::new("page-assumed-others").with("count", open(false).len() as i64));
    view! {
        <section aria-labelledby="assumed-name" data-test="assumed">
            <h2 id="assumed-name">{page.key("page-assumed")}</h2>
            <p class="quiet">
                {move || page.key(if open(true).is_empty() { "page-assumed-none" } else { "page-assumed-about" })}
            </p>
            <ul class="assumed">{move || list(true)}</ul>
            <details class="data">
                <summary>{others}</summary>
                <ul class="assumed">{move || list(false)}</ul>
            </details>
        </section>
    }
}

#[component]
fn OneAssumed(question: &'static Question) -> impl IntoView {
    let page = page();
    let id = question.id;
    let value =
        move || page.resolved.with(|r| r.get(id).map(|k| k.value.clone())).map(|v| value_words(page, id, &v));
    view! {
        <li>
            <GoTo route=Route::question(id) test=format!("assumed-{}", id.code())>{page.key(&id.key())}</GoTo>
            <span>{value}</span>
        </li>
    }
}

/// The usual cautions, and who decides.
#[component]
pub fn Cautions(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let cautions = outcome.advice.cautions.clone();
    view! {
        <section aria-labelledby="cautions-name">
            <h2 id="cautions-name">{page.key("page-cautions")}</h2>
            <ul class="cautions" data-test="cautions">
                {cautions.into_iter().map(|c| view! { <li class="caution">{move || page.say(&c)}</li> }).collect_view()}
                <li class="caution">{page.key("page-caution-local")}</li>
            </ul>
        </section>
    }
}
