//! Where another version of a job says something else: field by field, theirs beside ours, one of them taken.

use super::contents::{count, lines_of, name_of};
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::job::Job;
use crate::job::merge::{Difference, Side};
use crate::ui::components::provenance::ProvenanceMark;
use crate::ui::state::Page;
use leptos::prelude::*;

/// The differences with a choice at each. `takes` begins with what the merge proposes; `stem` is once on a page.
pub fn choose(page: Page, ours: &Job, theirs: &Job, takes: RwSignal<Vec<Difference>>, stem: &str) -> AnyView {
    let all = takes.get_untracked();
    let says = Message::new("merge-differences").with("count", count(all.len()));
    let none = all.is_empty();
    let (mut contested, mut new) = (Vec::new(), Vec::new());
    for (at, difference) in all.into_iter().enumerate() {
        let nothing_here = lines_of(page, ours, difference.field).0.is_empty();
        let row = row(page, ours, theirs, difference, takes, at, stem);
        if nothing_here { new.push(row) } else { contested.push(row) }
    }
    // What is only new needs no decision: it is folded away where something else does.
    let says_new = Message::new("merge-new").with("count", count(new.len()));
    let open = contested.is_empty();
    let new = (!new.is_empty()).then(|| {
        view! {
            <details class="data" open=open>
                <summary data-test="merge-new">{page.words_now().say(&says_new)}</summary>
                <div class="differences">{new}</div>
            </details>
        }
    });
    view! {
        <p data-test="merge-count">{page.words_now().say(&says)}</p>
        {(!none).then(|| view! { <p class="quiet">{page.key("merge-about")}</p> })}
        <div class="differences">{contested}</div>
        {new}
    }
    .into_any()
}

fn row(
    page: Page,
    ours: &Job,
    theirs: &Job,
    difference: Difference,
    takes: RwSignal<Vec<Difference>>,
    at: usize,
    stem: &str,
) -> AnyView {
    let Difference { field, .. } = difference;
    let group = format!("{stem}-{at}");
    let name = name_of(page, field);
    let one = |side: Side, job: &Job, words: &'static str, test: &'static str| {
        let (lines, from) = lines_of(page, job, field);
        let nothing = lines.is_empty().then(|| page.key("merge-nothing"));
        let lines = lines.into_iter().map(|line| view! { <span>{line}</span> }).collect_view();
        let mark = from
            .filter(|f| *f == Provenance::Measured)
            .map(|f| view! { <ProvenanceMark from=Signal::stored(f)/> });
        let taken = move || takes.with(|t| t.get(at).is_some_and(|d| d.take == side));
        let take = move |_| {
            takes.update(|t| {
                if let Some(d) = t.get_mut(at) {
                    d.take = side;
                }
            });
        };
        view! {
            <label class="option">
                <input type="radio" name=group.clone() data-test=test prop:checked=taken on:change=take/>
                <span class="side">
                    <span class="quiet">{page.key(words)}</span>
                    {lines} {nothing} {mark}
                </span>
            </label>
        }
        .into_any()
    };
    let ours = one(Side::Ours, ours, "merge-ours", "take-ours");
    let theirs = one(Side::Theirs, theirs, "merge-theirs", "take-theirs");
    view! {
        <fieldset class="difference" data-test="difference">
            <legend>{name}</legend>
            {theirs}
            {ours}
        </fieldset>
    }
    .into_any()
}
