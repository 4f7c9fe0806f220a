//! What to load: parts by shelf, each marked as there or to be bought, and tools.

use super::Work;
use crate::core::message::Message;
use crate::core::plan::{Part, PartKind, Plan, Shelf, ToolNeed};
use crate::text::csv;
use crate::ui::browser::download;
use crate::ui::components::parts::{button, tick};
use leptos::prelude::*;
use std::sync::Arc;

/// What a part may be marked with, and the words.
const MARKS: [(&str, &str); 2] = [("have", "plan-have"), ("buy", "plan-buy")];

fn part_code(kind: PartKind) -> String {
    format!("part.{}", kind.code())
}

/// The list with what may be done with it.
pub(super) fn view(work: Work, plan: Arc<Plan>) -> AnyView {
    let page = work.page;
    let sure = |maybe: bool| plan.parts.iter().filter(move |p| p.maybe == maybe);
    let shelves = Shelf::ALL.map(|shelf| {
        let on: Vec<&Part> = sure(false).filter(|p| p.kind.shelf() == shelf).collect();
        (!on.is_empty()).then(|| section(page.key(shelf.key()), on.into_iter().map(|p| line(work, p))))
    });
    let perhaps: Vec<&Part> = sure(true).collect();
    let perhaps = (!perhaps.is_empty())
        .then(|| section(page.key("plan-perhaps"), perhaps.into_iter().map(|p| line(work, p))));
    let tools = section(page.key("plan-tools"), plan.tools.iter().map(|t| tool(work, t)));
    let (kinds, listed): (Vec<PartKind>, Arc<Plan>) =
        (sure(false).map(|p| p.kind).collect(), Arc::clone(&plan));
    let tally = move || {
        let marked = kinds.iter().filter(|k| !work.state(&part_code(**k)).is_empty()).count();
        page.say(&Message::new("plan-tally").with("done", marked as i64).with("all", kinds.len() as i64))
    };
    let save = move || {
        let words = page.words_now();
        let state = |kind: PartKind| {
            let mark = untrack(|| work.state(&part_code(kind)));
            MARKS.iter().find(|(code, _)| *code == mark).map_or_else(String::new, |(_, key)| words.key(key))
        };
        // The mark by which spreadsheets know that it is Unicode.
        let table = format!("\u{feff}{}", csv::parts(&words, &listed, &state));
        download::offer_as("tankful-parts.csv", &table, "text/csv");
    };
    view! {
        <p role="status" data-test="parts-tally">{tally}</p>
        {shelves.into_iter().collect_view()}
        {perhaps}
        {tools}
        <div class="ways">{button(page.key("plan-csv"), "button", "parts-csv", save)}</div>
    }
    .into_any()
}

fn section(name: String, lines: impl Iterator<Item = AnyView>) -> AnyView {
    view! { <h2>{name}</h2> <ul class="measures">{lines.collect_view()}</ul> }.into_any()
}

/// A part: how much, what, why, and its marks.
fn line(work: Work, part: &Part) -> AnyView {
    let page = work.page;
    let words = page.words();
    let (name, why) = (words.say(&part.says), csv::why(&words, part));
    let code = part_code(part.kind);
    let mark = |(mark, key): (&'static str, &'static str)| {
        let (code, set, test) = (code.clone(), code.clone(), format!("{mark}-{}", part.kind.code()));
        let pressed = Memo::new(move |_| work.state(&code) == mark);
        let label = format!("{}: {name}", page.key(key));
        let press = move |_| work.set(&set, if pressed.get_untracked() { "" } else { mark });
        view! {
            <button type="button" aria-label=label aria-pressed=move || pressed.get().to_string() data-test=test on:click=press>
                {page.key(key)}
            </button>
        }
    };
    view! {
        <li class="load">
            <span><strong>{words.quantity(part.bring)} " × " {name.clone()}</strong> <small class="quiet">{why}</small></span>
            <span class="switch">{MARKS.map(mark).into_iter().collect_view()}</span>
        </li>
    }
    .into_any()
}

/// A tool: on the truck or not.
fn tool(work: Work, need: &ToolNeed) -> AnyView {
    let code = format!("tool.{}", need.tool.code());
    let test = format!("tool-{}", need.tool.code());
    let set = code.clone();
    let ticked = Signal::derive(move || !work.state(&code).is_empty());
    let set = Callback::new(move |on: bool| work.set(&set, if on { "have" } else { "" }));
    view! { <li>{tick(work.page.say(&need.says), test, ticked, set)}</li> }.into_any()
}
