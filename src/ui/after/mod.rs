//! After the work: the start-up record, the page for the household with its dates, what the meter says, and all of it
//! for print. One part of the page, fetched when first shown. What is entered is noted in the job
//! ([`crate::job::done`]).

mod field;
mod household;
mod meter;
mod printed;
mod startup;

pub use printed::part as printed_part;

use super::browser::focus::HEADING;
use super::components::link::GoTo;
use super::components::parts::{Text, pick, waiting};
use super::lazy;
use super::model::Shared;
use super::route::Route;
use super::state::{Page, page};
use crate::core::after::start::{Start, calibrated};
use crate::core::after::{Date, Fitted};
use crate::core::candidates::CandidateId;
use crate::core::case::Case;
use crate::core::heater::Model;
use crate::core::outcome::CandidateOutcome;
use crate::job::LONGEST_WHO;
use crate::job::after as kept;
use crate::job::complete::complete_with;
use crate::job::done::Done;
use crate::job::questions::Value;
use crate::ui::jobs;
use leptos::prelude::*;
use std::sync::Arc;

/// After the work, as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(work, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> lazy::Part {
    for group in [&crate::text::ADVICE, &crate::text::AFTER] {
        page().learn(group);
    }
    Ok(after(page()))
}

/// The heater decided on, in its house, with what its simulation found; shared, told apart by being the same one.
#[derive(Clone)]
struct Site {
    shared: Shared,
    case: Arc<Case>,
    id: CandidateId,
    model: Arc<Model>,
}

impl PartialEq for Site {
    fn eq(&self, other: &Site) -> bool {
        self.shared == other.shared && self.id == other.id
    }
}

impl Site {
    fn chosen(&self) -> Option<&CandidateOutcome> {
        self.shared.0.of(self.id)
    }

    fn fitted(&self) -> Option<Fitted<'_>> {
        Some(Fitted::of(&self.case, &self.shared.0, self.chosen()?))
    }

    fn start(&self, date: Date) -> Option<Start<'_>> {
        Some(Start::with((*self.model).clone(), self.fitted()?, date))
    }
}

/// What every part of this page reads.
#[derive(Clone, Copy)]
struct After {
    page: Page,
    /// What was noted.
    done: Memo<Done>,
    /// The heater; `None` until the first outcome.
    site: Memo<Option<Site>>,
    /// The day it was installed, or today.
    installed: Memo<Date>,
}

impl After {
    fn new(page: Page) -> After {
        let done = Memo::new(move |_| page.job.with(|j| j.sheet.done.clone()));
        let decided = Memo::new(move |_| done.with(kept::heater));
        let site = Memo::new(move |_| {
            let shared = page.outcome.get()?;
            let there = decided.get().filter(|id| shared.0.of(*id).is_some());
            let id = there.unwrap_or(shared.0.advice.best);
            let case = page.job.with_untracked(|j| complete_with(&j.sheet.answers, &j.sheet.offer));
            let model = calibrated(&Fitted::of(&case, &shared.0, shared.0.of(id)?));
            Some(Site { shared: shared.clone(), case: Arc::new(case), id, model: Arc::new(model) })
        });
        let installed =
            Memo::new(move |_| done.with(|d| kept::date(d, kept::INSTALLED)).unwrap_or_else(today));
        After { page, done, site, installed }
    }

    /// Looks at the heater; `None` until there is one.
    fn with<R>(self, look: impl FnOnce(&Site) -> Option<R>) -> Option<R> {
        self.site.with(|s| s.as_ref().and_then(look))
    }

    /// Notes something in the job.
    fn note(self, what: &str, is: Value) {
        let (now, who) = (js_sys::Date::now(), jobs::who());
        self.page.alter(|job| job.done.note(what, is, now, &who));
    }

    /// Notes something, or takes it back.
    fn note_or_not(self, what: &str, is: Option<Value>) {
        match is {
            Some(is) => self.note(what, is),
            None => {
                let (now, who) = (js_sys::Date::now(), jobs::who());
                self.page.alter(|job| job.done.take_back(what, now, &who));
            }
        }
    }
}

/// Today, where the reader is.
fn today() -> Date {
    let now = js_sys::Date::new_0();
    let (month, day) = (now.get_month() as u8 + 1, now.get_date() as u8);
    Date::new(now.get_full_year() as i32, month, day).unwrap_or_else(|| Date::from_ms(js_sys::Date::now()))
}

/// What can be looked at here: code, key of its name, and how it is drawn.
type Tab = (&'static str, &'static str, fn(After) -> AnyView);

const TABS: [Tab; 3] = [
    ("startup", "after-startup", startup::form),
    ("household", "after-household", household::page),
    ("meter", "after-meter", meter::form),
];

fn after(page: Page) -> AnyView {
    let after = After::new(page);
    let open = RwSignal::new(0_usize);
    let some = Memo::new(move |_| after.site.with(Option::is_some));
    let body = move || {
        if !some.get() {
            return waiting(page.key("page-verdict-wait"));
        }
        TABS.get(open.get()).map_or_else(|| ().into_any(), |(.., draw)| draw(after))
    };
    view! {
        <div class="after" data-test="after">
            <h1 id=HEADING tabindex="-1">{page.key("after-heading")}</h1>
            <p class="lead">{page.key("after-lead")}</p>
            <div class="after-top">{move || some.get().then(|| decided(after))}</div>
            {move || some.get().then(|| tabs(page, open))}
            {body}
            <div class="ways">
                <GoTo route=Route::Report class="button main" test="to-report">{page.key("after-to-report")}</GoTo>
                <GoTo route=Route::Job class="button" test="to-job">{page.key("after-to-job")}</GoTo>
            </div>
        </div>
    }
    .into_any()
}

/// What to look at. Not shown before the heater is, which would push it away from under a finger.
fn tabs(page: Page, open: RwSignal<usize>) -> impl IntoView {
    let tabs = TABS.into_iter().enumerate().map(|(at, (code, words, _))| {
        view! {
            <button
                type="button"
                class="button"
                data-test=format!("tab-{code}")
                aria-pressed=move || (open.get() == at).to_string()
                on:click=move |_| open.set(at)
            >
                {page.key(words)}
            </button>
        }
    });
    view! {
        <div class="ways tabs" role="group" aria-label=page.key("after-heading")>{tabs.collect_view()}</div>
    }
}

/// Which heater, when, and who enters it.
fn decided(after: After) -> AnyView {
    let page = after.page;
    let options = after.with(|s| {
        let one = |c: &CandidateOutcome| (String::from(c.candidate.id.code()), page.say(&c.candidate.name()));
        Some(s.shared.0.candidates.iter().map(one).collect::<Vec<_>>())
    });
    let who = Text {
        words: "after-who",
        test: "after-who",
        most: LONGEST_WHO,
        lines: false,
        now: Signal::derive(jobs::who),
        write: Callback::new(|name: String| jobs::set_who(&name)),
    };
    view! {
        {pick(
            page.key("after-heater"),
            "after-heater",
            options.unwrap_or_default(),
            Signal::derive(move || after.with(|s| Some(String::from(s.id.code()))).unwrap_or_default()),
            Callback::new(move |code: String| after.note(kept::HEATER, Value::code(&code))),
        )}
        {field::date(after, kept::INSTALLED, "after-installed", Signal::derive(move || after.installed.get().iso()))}
        {who.field()}
    }
    .into_any()
}
