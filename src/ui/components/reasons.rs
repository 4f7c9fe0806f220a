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
use crate::ui::sure::{Weighed, changes};
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

/// Questions listed at once where it is known what they change.
const WEIGHTY_AT_ONCE: usize = 8;

/// What the advice takes for granted. Once it is known what would change the advice, what may turn it comes first,
/// then what moves it most, each with how much; until then, the questions that are asked first.
#[component]
pub fn Assumed() -> impl IntoView {
    let page = page();
    let weighed = use_context::<Weighed>();
    let open = move || {
        page.resolved.with(|r| {
            let assumed = |q: &&Question| r.get(q.id).is_some_and(|k| k.from == Provenance::Assumed);
            questions::all().filter(assumed).collect::<Vec<&'static Question>>()
        })
    };
    // Questions at once with what they change, and the others.
    let parts = Memo::new(move |_| -> Parts {
        let mut rest = open();
        let known = weighed.and_then(|Weighed(weighed)| weighed.get());
        let Some((of, changes)) = known else {
            let (first, rest): (Vec<&Question>, Vec<&Question>) = rest.into_iter().partition(|q| q.first);
            let first = first.into_iter().map(|q| (q.id, Vec::new())).collect();
            return (first, rest.iter().map(|q| q.id).collect());
        };
        let mut first = Vec::new();
        for s in &changes.sensitivities {
            let at = rest.iter().position(|q| q.id.code() == s.code);
            let says = changes::weight(s, &of.0);
            if let Some(at) = at.filter(|_| first.len() < WEIGHTY_AT_ONCE && !says.is_empty()) {
                first.push((rest.remove(at).id, says));
            }
        }
        (first, rest.iter().map(|q| q.id).collect::<Vec<Id>>())
    });
    let list = move || {
        let (first, _) = parts.get();
        first.into_iter().map(|(id, says)| view! { <OneAssumed id says/> }).collect_view()
    };
    let others = move || {
        let (_, rest) = parts.get();
        rest.into_iter().map(|id| view! { <OneAssumed id says=Vec::new()/> }).collect_view()
    };
    let count = move || {
        page.say(&Message::new("page-assumed-others").with("count", parts.with(|p| p.1.len()) as i64))
    };
    let about = move || match parts
        .with(|(first, _): &Parts| (first.is_empty(), first.iter().any(|f| !f.1.is_empty())))
    {
        (true, _) => page.key("page-assumed-none"),
        (_, true) => page.key("sure-assumed-about"),
        (_, false) => page.key("page-assumed-about"),
    };
    view! {
        <section aria-labelledby="assumed-name" data-test="assumed">
            <h2 id="assumed-name">{page.key("page-assumed")}</h2>
            <p class="quiet">{about}</p>
            <ul class="assumed" data-test="assumed-first">{list}</ul>
            <details class="data">
                <summary>{count}</summary>
                <ul class="assumed">{others}</ul>
            </details>
        </section>
    }
}

/// Questions at once with what they change, and the others.
type Parts = (Vec<(Id, Vec<Message>)>, Vec<Id>);

#[component]
fn OneAssumed(id: Id, says: Vec<Message>) -> impl IntoView {
    let page = page();
    let value =
        move || page.resolved.with(|r| r.get(id).map(|k| k.value.clone())).map(|v| value_words(page, id, &v));
    let says = (!says.is_empty()).then(|| {
        let says = move || says.iter().map(|m| page.say(m)).collect::<Vec<_>>().join(" ");
        view! { <span class="quiet weight">{says}</span> }
    });
    view! {
        <li>
            <GoTo route=Route::question(id) test=format!("assumed-{}", id.code())>{page.key(&id.key())}</GoTo>
            <span>{value}</span>
            {says}
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
