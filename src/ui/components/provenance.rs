//! The mark that shows what a value rests on: assumed, answered or measured. Shape and word, not colour
//! alone: an empty, a half and a full drop.

use crate::core::case::Provenance;
use crate::ui::state::page;
use leptos::prelude::*;

/// The mark.
#[component]
pub fn ProvenanceMark(#[prop(into)] from: Signal<Provenance>) -> impl IntoView {
    let page = page();
    let code = move || match from.get() {
        Provenance::Assumed => "assumed",
        Provenance::Answered => "answered",
        Provenance::Measured => "measured",
    };
    view! {
        <span class="mark" data-from=code>
            <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
                <path class="drop" d="M8 1.5C10.5 5 13 7.6 13 10.2a5 5 0 0 1-10 0C3 7.6 5.500 5 8 1.500z"></path>
                <path class="level" d="M3 10.200a5 5 0 0 0 10 0z"></path>
            </svg>
            <span class="mark-word">{move || page.key(&format!("from-{}", code()))}</span>
        </span>
    }
}

/// The three marks and what each means.
#[component]
pub fn MarkLegend() -> impl IntoView {
    let page = page();
    let one = move |from: Provenance, key: &'static str| {
        view! {
            <li><ProvenanceMark from=Signal::stored(from)/> " " {page.attr(key, "about")}</li>
        }
    };
    view! {
        <ul class="mark-legend">
            {one(Provenance::Assumed, "from-assumed")}
            {one(Provenance::Answered, "from-answered")}
            {one(Provenance::Measured, "from-measured")}
        </ul>
    }
}
