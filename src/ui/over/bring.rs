//! A file of jobs: what it would change here, said before it does. Each job that is new is added, each that says
//! something else is merged field by field; nothing is taken before somebody says so.

use super::contents::{all_of, count, says};
use super::differences;
use crate::core::message::{Arg, Message};
use crate::job::Job;
use crate::job::exchange::{self, Change, Found};
use crate::job::merge::{self, Difference};
use crate::ui::browser::{device, jobs};
use crate::ui::components::parts::{button, tick};
use crate::ui::state::Page;
use leptos::prelude::*;
use std::sync::Arc;

/// Most jobs shown one by one; the others are counted, and taken alike.
const MOST_SHOWN: usize = 100;
/// Most faults shown.
const MOST_FAULTS: usize = 20;

/// A job of the file, and what it would do.
struct One {
    job: Job,
    /// What the merge takes, where a job of the same identity is here.
    differences: Option<RwSignal<Vec<Difference>>>,
    taken: RwSignal<bool>,
}

/// The sheet for a file.
pub fn dialog(page: Page, text: Option<String>) -> AnyView {
    let read = text.map(|text| exchange::import(&text, || jobs::new_id().number()));
    match read {
        Some(Ok(found)) => preview(page, found),
        Some(Err(error)) => {
            refused(page, format!("{} {}", error.field, page.words_now().say(&error.message())))
        }
        None => refused(page, page.key("bring-unreadable")),
    }
}

fn refused(page: Page, why: String) -> AnyView {
    view! {
        <h2 id="over-name">{page.key("bring-refused")}</h2>
        <p class="refusal" data-test="bring-refused">{why}</p>
        <p>{page.key("bring-untouched")}</p>
    }
    .into_any()
}

fn preview(page: Page, found: Found) -> AnyView {
    let (mut new, mut same) = (0, 0);
    let mut all: Vec<One> = Vec::new();
    for job in found.jobs {
        let differences = match exchange::preview(&job, page.kept(job.id).as_ref()) {
            Change::Same => {
                same += 1;
                continue;
            }
            Change::New => {
                new += 1;
                None
            }
            Change::Differs(differences) => Some(RwSignal::new(differences)),
        };
        all.push(One { job, differences, taken: RwSignal::new(true) });
    }
    let told = Message::new("bring-found")
        .with("new", count(new))
        .with("other", count(all.len() - new))
        .with("same", count(same));
    let faults: Vec<Message> = found
        .refused
        .iter()
        .take(MOST_FAULTS)
        .map(|e| {
            Message::new("bring-fault").with("field", Arg::Verbatim(e.field.clone())).with("why", e.message())
        })
        .collect();
    let faults = (!faults.is_empty()).then(|| {
        view! {
            <p>{page.key("bring-faults")}</p>
            {says(page, faults, "bring-faults")}
        }
    });
    let over = all.len().saturating_sub(MOST_SHOWN);
    let more =
        (over > 0).then(|| page.words_now().say(&Message::new("bring-more").with("count", count(over))));
    let rows: Vec<AnyView> =
        all.iter().enumerate().take(MOST_SHOWN).map(|(at, one)| row(page, at, one)).collect();
    let nothing = all.is_empty();
    let all = Arc::new(all);
    let go = button(page.key("bring-take"), "button main", "bring-take", move || take(page, &all));
    let not = button(page.key("open-not"), "button", "bring-not", move || page.over.set(None));
    view! {
        <h2 id="over-name">{page.key("bring-heading")}</h2>
        <p data-test="bring-found">{page.words_now().say(&told)}</p>
        {faults}
        <div class="differences">{rows}</div>
        <p>{more}</p>
        <div class="ways">{(!nothing).then_some(go)} {not}</div>
    }
    .into_any()
}

fn row(page: Page, at: usize, one: &One) -> AnyView {
    let job = &one.job;
    let name = if job.name.is_empty() { page.key("jobs-nameless") } else { job.name.clone() };
    let key = if one.differences.is_some() { "bring-one-other" } else { "bring-one-new" };
    let says = Message::new(key)
        .with("name", Arg::Verbatim(name))
        .with("when", Arg::Verbatim(device::when(job.changed_ms)));
    let taken = one.taken;
    let set = Callback::new(move |on| taken.set(on));
    let inside = match (one.differences, page.kept(job.id)) {
        (Some(takes), Some(ours)) => differences::choose(page, &ours, job, takes, &format!("bring-{at}")),
        _ => all_of(page, job),
    };
    view! {
        <section class="brought" data-test="brought">
            {tick(page.words_now().say(&says), format!("bring-{at}"), taken.into(), set)}
            {inside}
        </section>
    }
    .into_any()
}

/// Takes what is ticked; stops where there is no room, and says how far it came.
fn take(page: Page, all: &[One]) {
    let mut done = 0;
    let mut full = false;
    let now_ms = js_sys::Date::now();
    for one in all.iter().filter(|one| one.taken.get_untracked()) {
        let kept = match one.differences {
            None => jobs::put(&one.job),
            Some(takes) => merge_in(page, &one.job, &takes.get_untracked(), now_ms),
        };
        if !kept {
            full = true;
            break;
        }
        done += 1;
    }
    page.listed.update(|n| *n += 1);
    page.over.set(None);
    let says = Message::new(if full { "bring-no-room" } else { "bring-done" }).with("count", count(done));
    page.tell(crate::ui::model::Notice { code: "brought", says, remedy: None });
}

fn merge_in(page: Page, theirs: &Job, takes: &[Difference], now_ms: f64) -> bool {
    if theirs.id == page.open.get_untracked() {
        page.alter(|job| merge::apply(job, theirs, takes, now_ms));
        return page.is_kept();
    }
    let Some(mut ours) = jobs::look(theirs.id) else { return jobs::put(theirs) };
    merge::apply(&mut ours, theirs, takes, now_ms);
    jobs::put(&ours)
}
