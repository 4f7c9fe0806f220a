//! The day of the work: what to load and what to do in which order, for the advised heater or the one decided on. Used
//! standing up, with wet hands: large targets, large type. What is ticked is kept with the job.

mod load;
mod steps;

use crate::core::candidates::CandidateId;
use crate::core::message::Message;
use crate::core::plan::{Plan, StepKind, plan};
use crate::job::complete::complete_with;
use crate::job::done::Done;
use crate::job::questions::Value;
use crate::text;
use crate::ui::browser::focus::HEADING;
use crate::ui::components::link::GoTo;
use crate::ui::components::parts::{button, pick, waiting};
use crate::ui::jobs;
use crate::ui::lazy::Part;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The code under which a job keeps the heater that was decided on.
const HEATER: &str = "heater";

/// The day of the work as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(work, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&text::WORK);
    Ok(work(page()))
}

/// The work as it is shown and ticked.
#[derive(Clone, Copy)]
struct Work {
    page: Page,
    /// What was done so far.
    done: Memo<Done>,
    /// The heater planned for.
    heater: Memo<Option<CandidateId>>,
    /// The plan; none before there is advice.
    plan: Memo<Option<Arc<Plan>>>,
}

impl Work {
    fn of(page: Page) -> Work {
        let done = Memo::new(move |_| page.job.with(|j| j.sheet.done.clone()));
        let heater = Memo::new(move |_| {
            let decided = done.with(|d| match d.get(HEATER) {
                Some(Value::Code(code)) => CandidateId::from_code(code),
                _ => None,
            });
            page.outcome.with(|o| {
                let outcome = &o.as_ref()?.0;
                Some(decided.filter(|id| outcome.of(*id).is_some()).unwrap_or(outcome.advice.best))
            })
        });
        let plan = Memo::new(move |_| {
            let id = heater.get()?;
            let case = page.answers.with(|a| page.offer.with(|o| complete_with(a, o)));
            page.outcome.with(|o| {
                let of = o.as_ref()?.0.of(id)?;
                Some(Arc::new(plan(&case, &of.candidate, &of.findings)))
            })
        });
        Work { page, done, heater, plan }
    }

    /// What stands under a code; empty where nothing does.
    fn state(self, what: &str) -> String {
        self.done.with(|d| match d.get(what) {
            Some(Value::Code(code)) => code.clone(),
            _ => String::new(),
        })
    }

    /// Writes what stands under a code; an empty text takes it back.
    fn set(self, what: &str, is: &str) {
        let (now, who) = (js_sys::Date::now(), jobs::who());
        self.page.alter(|job| {
            if is.is_empty() {
                job.done.take_back(what, now, &who);
            } else {
                job.done.note(what, Value::code(is), now, &who);
            }
        });
    }
}

/// The code of a step in the job.
fn step_code(kind: StepKind) -> String {
    format!("step.{}", kind.code())
}

fn work(page: Page) -> AnyView {
    let work = Work::of(page);
    // Whoever has confirmed something is past loading.
    let begun = work.done.with_untracked(|d| d.under("step.").next().is_some());
    let steps = RwSignal::new(begun);
    let body = move || match work.plan.get() {
        None => waiting(page.key("page-verdict-wait")),
        Some(plan) => {
            let plan_of_steps = Arc::clone(&plan);
            view! {
                <div class="work-view" hidden=move || steps.get() data-test="work-load">{load::view(work, plan)}</div>
                <div class="work-view" hidden=move || !steps.get() data-test="work-steps">{steps::view(work, plan_of_steps)}</div>
            }
            .into_any()
        }
    };
    let to = move |shows: bool, words: &'static str, test: &'static str| {
        view! {
            <button type="button" data-test=test aria-pressed=move || (steps.get() == shows).to_string() on:click=move |_| steps.set(shows)>
                {page.key(words)}
            </button>
        }
    };
    // Not shown before what stands above it, which would push it away from under a finger.
    let some = Memo::new(move |_| work.plan.with(Option::is_some));
    let switch = move || {
        some.get().then(|| {
            view! {
                <div class="switch" role="group" aria-label=page.key("plan-title")>
                    {to(false, "plan-load", "show-load")} {to(true, "plan-steps", "show-steps")}
                </div>
            }
        })
    };
    let print = move || {
        // A browser that cannot print says so itself.
        let _ = window().print();
    };
    view! {
        <div class="onsite" data-test="work">
            <h1 id=HEADING tabindex="-1">{page.key("plan-title")}</h1>
            {heaters(work)}
            {move || work.plan.get().map(|plan| head(page, &plan))}
            {switch}
            {body}
            <div class="ways">
                {button(page.key("plan-print"), "button", "print", print)}
                <GoTo route=Route::Job class="button" test="work-leave">{page.key("plan-leave")}</GoTo>
                <GoTo route=Route::Result class="button" test="work-result">{page.key("page-way-result")}</GoTo>
            </div>
        </div>
    }
    .into_any()
}

/// The heaters to choose from.
fn heaters(work: Work) -> impl IntoView {
    let page = work.page;
    let ids = Memo::new(move |_| {
        page.outcome.with(|o| {
            o.as_ref().map_or_else(Vec::new, |o| o.0.candidates.iter().map(|c| c.candidate.id).collect())
        })
    });
    move || {
        let options: Vec<(String, String)> = ids
            .get()
            .into_iter()
            .map(|id| (id.code().to_owned(), page.words_now().say(&page.heater(id))))
            .collect();
        let chosen = Signal::derive(move || work.heater.get().map_or("", CandidateId::code).to_owned());
        let choose = Callback::new(move |code: String| work.set(HEATER, &code));
        (!options.is_empty()).then(|| pick(page.key("plan-heater"), "work-heater", options, chosen, choose))
    }
}

/// What kind of job it is, how many people, how many hours of each trade.
fn head(page: Page, plan: &Plan) -> AnyView {
    let job = plan.job.clone();
    let people = Message::new("plan-people").with("people", i64::from(plan.people()));
    let hours = plan.hours().into_iter().map(|(trade, time)| {
        let hours = crate::core::message::Arg::Number(time.value / 60.0, 1);
        let says = Message::new("plan-hours").with("hours", hours).with("trade", Message::new(trade.key()));
        view! { <li>{page.say(&says)}</li> }
    });
    view! {
        <p>{page.say(&job)} ". " {page.say(&people)}</p>
        <ul class="quiet">{hours.collect_view()}</ul>
    }
    .into_any()
}
