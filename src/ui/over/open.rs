//! A link that was opened: what it holds, and what to do with it. Nothing of the jobs here changes before somebody
//! says so; a link that cannot be read is explained.

use super::contents::{all_of, says};
use super::differences;
use crate::core::message::{Arg, Message};
use crate::job::index::{Order, Summary};
use crate::job::link::{self, Dropped, LinkError, Opened, With};
use crate::job::merge::{self, Difference};
use crate::job::{Job, JobId};
use crate::ui::browser::{device, jobs};
use crate::ui::components::parts::{button, pick};
use crate::ui::route::Route;
use crate::ui::state::Page;
use leptos::prelude::*;

/// Most jobs to choose from: those changed last.
const MOST_CHOSEN_FROM: usize = 200;
/// Everything that a link can hold.
const ALL: With = With { name: true, place: true, notes: true, offer: true, back: false };

/// The sheet for a link.
pub fn dialog(page: Page, text: String) -> AnyView {
    match link::decode(&text) {
        Ok(opened) => offered(page, opened),
        Err(error) => refused(page, error),
    }
}

fn refused(page: Page, error: LinkError) -> AnyView {
    view! {
        <h2 id="over-name">{page.key("open-refused")}</h2>
        <p class="refusal" data-test="open-refused">{page.words_now().say(&error.message())}</p>
        <p>{page.key("open-untouched")}</p>
    }
    .into_any()
}

/// What is done with it.
#[derive(Clone, Copy)]
struct Choice {
    page: Page,
    theirs: StoredValue<Job>,
    back: bool,
    /// The job it goes into; `None`: it becomes a job of its own.
    into: RwSignal<Option<JobId>>,
    takes: RwSignal<Vec<Difference>>,
}

fn offered(page: Page, opened: Opened) -> AnyView {
    let Opened { job, back, dropped } = opened;
    let same = Some(job.id).filter(|id| jobs::look(*id).is_some());
    let choice = Choice {
        page,
        theirs: StoredValue::new(job.clone()),
        back,
        into: RwSignal::new(same),
        takes: RwSignal::default(),
    };
    let sent = Message::new("open-sent").with("when", Arg::Verbatim(device::when(job.changed_ms)));
    let lost = dropped.into_iter().map(Dropped::message).collect::<Vec<_>>();
    let lost = (!lost.is_empty()).then(|| says(page, lost, "open-dropped"));
    view! {
        <h2 id="over-name" data-test="open-name">{page.key(if back { "open-back" } else { "open-heading" })}</h2>
        <p class="quiet">{page.words_now().say(&sent)}</p>
        {says(page, link::contents(&job, ALL), "open-contents")}
        {all_of(page, &job)}
        {lost}
        {where_to(choice)}
        {move || choice.merging()}
        {move || choice.act()}
    }
    .into_any()
}

/// A job of its own, or into which: asked only of somebody who has jobs.
fn where_to(choice: Choice) -> AnyView {
    let page = choice.page;
    let index = jobs::list();
    let lines: Vec<&Summary> = index.search("", false, Order::Changed);
    if lines.is_empty() {
        return ().into_any();
    }
    let theirs = choice.theirs.with_value(|job| job.id);
    let called = |s: &Summary| {
        let name = if s.name.is_empty() { page.key("jobs-nameless") } else { s.name.clone() };
        let of = [name.as_str(), &s.place].into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>();
        (s.id.code(), format!("{} ({})", of.join(", "), device::when(s.changed_ms)))
    };
    let mut options = vec![(String::new(), page.key("open-as-new"))];
    // The job it came from first.
    for same in [true, false] {
        options.extend(
            lines.iter().filter(|s| (s.id == theirs) == same).take(MOST_CHOSEN_FROM).map(|s| called(s)),
        );
    }
    let chosen = Signal::derive(move || choice.into.get().map(JobId::code).unwrap_or_default());
    let choose = Callback::new(move |code: String| choice.into.set(JobId::from_code(&code)));
    view! {
        {pick(page.key("open-where"), "open-where", options, chosen, choose)}
        <p class="quiet">{page.key("open-untouched-yet")}</p>
    }
    .into_any()
}

impl Choice {
    fn merging(self) -> Option<AnyView> {
        let into = self.into.get()?;
        let ours = self.page.kept(into)?;
        Some(self.theirs.with_value(|theirs| {
            self.takes.set(merge::differences(&ours, theirs));
            differences::choose(self.page, &ours, theirs, self.takes, "difference")
        }))
    }

    fn act(self) -> AnyView {
        let page = self.page;
        let into = self.into.get();
        let words = if into.is_some() { "open-merge" } else { "open-new" };
        let go = button(page.key(words), "button main", "open-go", move || match into {
            Some(id) => self.merge(id),
            None => self.begin(),
        });
        let not = button(page.key("open-not"), "button", "open-not", move || page.over.set(None));
        view! { <div class="ways">{go} {not}</div> }.into_any()
    }

    fn begin(self) {
        let mut job = self.theirs.get_value();
        if jobs::is_there(job.id) {
            job.id = jobs::new_id();
        }
        job.touch(js_sys::Date::now());
        self.page.add(job, true);
        self.done();
    }

    fn merge(self, into: JobId) {
        let page = self.page;
        if into != page.open.get_untracked() && !page.load(into) {
            return;
        }
        let takes = self.takes.get_untracked();
        let now_ms = js_sys::Date::now();
        page.alter(|job| self.theirs.with_value(|theirs| merge::apply(job, theirs, &takes, now_ms)));
        page.say_notice("merged", "merge-done", None);
        self.done();
    }

    /// On to what the reader is wanted for.
    fn done(self) {
        let page = self.page;
        page.over.set(None);
        let asked = page.job.with_untracked(|j| j.sheet.open_questions().next().is_some());
        page.go(if self.back || !asked { Route::Result } else { Route::Asked });
    }
}
