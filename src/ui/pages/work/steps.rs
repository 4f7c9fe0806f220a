//! The work, step by step: one under another, hold points as large confirmations. A step cannot be ticked before the
//! hold points that guard it; a hold point taken back takes back what waited for it.

use super::{Work, step_code};
use crate::core::message::{Arg, Message};
use crate::core::plan::{Phase, Plan, Step, StepKind};
use crate::ui::browser::{device, focus};
use crate::ui::components::link::GoTo;
use crate::ui::components::parts::button;
use crate::ui::jobs;
use crate::ui::route::Route;
use crate::ui::state::Page;
use leptos::prelude::*;
use std::sync::Arc;

/// What stands under a step that was done, and under one that was not needed.
const DONE: &str = "done";
const SPARED: &str = "not_needed";

impl Work {
    /// Whether a step is settled: done, or not needed.
    fn settled(self, kind: StepKind) -> bool {
        !self.state(&step_code(kind)).is_empty()
    }

    /// The first hold point that is open and guards a step.
    fn held_by(self, step: &Step) -> Option<StepKind> {
        step.waits_for.iter().copied().find(|hold| !self.settled(*hold))
    }

    /// Settles a step, or takes it back together with all that was settled after it on its strength.
    fn settle(self, plan: &Plan, kind: StepKind, is: &str) {
        if !is.is_empty() {
            return self.set(&step_code(kind), is);
        }
        let (now, who) = (js_sys::Date::now(), jobs::who());
        self.page.alter(|job| {
            let waiting = plan.steps.iter().filter(|s| s.kind == kind || s.waits_for.contains(&kind));
            for step in waiting {
                job.done.take_back(&step_code(step.kind), now, &who);
            }
        });
    }
}

/// The steps, and where to go on.
pub(super) fn view(work: Work, plan: Arc<Plan>) -> AnyView {
    let page = work.page;
    let mut phase: Option<Phase> = None;
    let mut items: Vec<AnyView> = Vec::new();
    for (i, step) in plan.steps.iter().enumerate() {
        let of = step.kind.rule().phase;
        if phase != Some(of) {
            phase = Some(of);
            items.push(view! { <h2>{page.key(of.key())}</h2> }.into_any());
        }
        items.push(one(work, &plan, i, step));
    }
    let (listed, counted) = (Arc::clone(&plan), Arc::clone(&plan));
    let first = Memo::new(move |_| listed.steps.iter().position(|s| !work.settled(s.kind)));
    let says = move || {
        let all = Arg::Count(counted.steps.len() as i64);
        page.say(&match first.get() {
            Some(i) => Message::new("plan-next").with("step", i as i64 + 1).with("all", all),
            None => Message::new("plan-all-done").with("all", all),
        })
    };
    let go = move || {
        if let Some(step) = first.get_untracked().and_then(|i| plan.steps.get(i)) {
            focus::to(element_id(step.kind));
        }
    };
    view! {
        <p role="status" data-test="steps-tally">{says}</p>
        {button(page.key("plan-go-on"), "button main", "go-on", go)}
        {items}
    }
    .into_any()
}

fn element_id(kind: StepKind) -> String {
    format!("step-{}", kind.code())
}

/// A step.
fn one(work: Work, plan: &Arc<Plan>, at: usize, step: &Step) -> AnyView {
    let (page, kind) = (work.page, step.kind);
    let words = page.words();
    let facts = Message::new("plan-facts")
        .with("time", step.time)
        .with("people", i64::from(step.people))
        .with("trade", Message::new(step.trade.key()));
    let cautions = step.cautions().into_iter().map(|key| view! { <p class="caution">{page.key(key)}</p> });
    let why = words.say_attr(&step.says, "why").unwrap_or_default();
    let maybe = step.maybe.then(|| view! { <p><em>{page.key("plan-if-measured")}</em></p> });
    view! {
        <section class="step" class:hold=step.holds() id=element_id(kind) tabindex="-1" data-test=format!("step-{}", kind.code())>
            <h3>{at + 1} ". " {words.say(&step.says)}</h3>
            {maybe}
            <p class="quiet">{why} " " {words.say(&facts)}</p>
            {cautions.collect_view()}
            {with(work, plan, step)}
            {(kind == StepKind::Record).then(|| to_record(page))}
            {confirm(work, plan, step)}
        </section>
    }
    .into_any()
}

/// Where the start-up figures are written down.
fn to_record(page: Page) -> AnyView {
    view! { <p><GoTo route=Route::After class="button" test="to-after">{page.key("plan-to-record")}</GoTo></p> }
        .into_any()
}

/// Tools and parts of a step, to unfold.
fn with(work: Work, plan: &Plan, step: &Step) -> Option<AnyView> {
    let (page, words) = (work.page, work.page.words());
    let mut names: Vec<String> = Vec::new();
    for tool in &step.tools {
        names.extend(plan.tools.iter().find(|t| t.tool == *tool).map(|t| words.say(&t.says)));
    }
    names.extend(step.parts(plan).map(|p| words.say(&p.says)));
    (!names.is_empty()).then(|| {
        view! {
            <details class="data">
                <summary>{page.key("plan-with")}</summary>
                <ul>{names.into_iter().map(|n| view! { <li>{n}</li> }).collect_view()}</ul>
            </details>
        }
        .into_any()
    })
}

/// The button that ticks or confirms, what it waits for, and who pressed it when.
fn confirm(work: Work, plan: &Arc<Plan>, step: &Step) -> AnyView {
    let (page, kind) = (work.page, step.kind);
    let (guarded, pressed) = (step.clone(), Arc::clone(plan));
    let words = page.words().say_attr(&step.says, "confirm").unwrap_or_else(|| page.key("plan-done"));
    let settled = Memo::new(move |_| work.state(&step_code(kind)));
    let held = Memo::new(move |_| work.held_by(&guarded));
    let numbered = Arc::clone(plan);
    let waits = move || {
        // What is settled waits for nothing any more.
        let hold = held.get().filter(|_| settled.with(String::is_empty))?;
        let at = numbered.steps.iter().position(|s| s.kind == hold)?;
        let what = numbered.steps.get(at)?.says.clone();
        Some(page.say(&Message::new("plan-waits").with("step", at as i64 + 1).with("what", what)))
    };
    let settle = move |is: &'static str| {
        let stands = settled.get_untracked();
        if !stands.is_empty() {
            work.settle(&pressed, kind, "");
        } else if held.get_untracked().is_none() {
            work.settle(&pressed, kind, is);
        } else if let Some(hold) = held.get_untracked() {
            // Nothing is ticked: the reader is taken to what must come first.
            focus::to(element_id(hold));
        }
    };
    let spare = settle.clone();
    let when = move || {
        work.done.with(|d| d.entry(&step_code(kind)).map(|e| format!("{} {}", device::when(e.at_ms), e.who)))
    };
    let id = format!("waits-{}", kind.code());
    let spared = step.maybe.then(|| {
        let stands = move || settled.with(|s| s == SPARED);
        view! {
            <button
                type="button"
                class="unknown"
                data-test=format!("spare-{}", kind.code())
                aria-pressed=move || stands().to_string()
                aria-disabled=move || held.get().is_some().to_string()
                on:click=move |_| spare(SPARED)
            >
                {page.key("plan-not-needed")}
            </button>
        }
    });
    view! {
        <div class="hand">
            <button
                type="button"
                class="unknown confirm"
                data-test=format!("confirm-{}", kind.code())
                aria-pressed=move || settled.with(|s| s == DONE).to_string()
                aria-disabled=move || (held.get().is_some() && settled.with(String::is_empty)).to_string()
                aria-describedby=id.clone()
                on:click=move |_| settle(DONE)
            >
                {words}
            </button>
            {spared}
            <p class="quiet" id=id>{waits} {when}</p>
        </div>
    }
    .into_any()
}
