//! How to find out: folded away under each question, with who can usually tell and what it moves.

use crate::core::message::{Arg, Message};
use crate::job::questions::{Affects, Question, Who};
use crate::ui::state::page;
use leptos::prelude::*;

/// How to find out.
#[component]
pub fn HowToFind(question: &'static Question) -> impl IntoView {
    let page = page();
    let find = page.attr(&question.id.key(), "find");
    let moves = question.affects.iter().map(|&a| page.key(affects(a))).collect::<Vec<_>>().join(", ");
    view! {
        <details class="find" data-test=format!("q-{}-find", question.id.code())>
            <summary>{page.key("page-find")}</summary>
            <p>{find}</p>
            <p class="quiet">{page.key(who(question.who))}</p>
            <p class="quiet">{page.words_now().say(&Message::new("page-find-moves").with("what", Arg::Verbatim(moves)))}</p>
        </details>
    }
}

const fn who(who: Who) -> &'static str {
    match who {
        Who::Householder => "who-householder",
        Who::OnSite => "who-on-site",
        Who::Installer => "who-installer",
    }
}

const fn affects(affects: Affects) -> &'static str {
    match affects {
        Affects::Energy => "affects-energy",
        Affects::Comfort => "affects-comfort",
        Affects::Fit => "affects-fit",
        Affects::Cost => "affects-cost",
        Affects::Timing => "affects-timing",
    }
}
