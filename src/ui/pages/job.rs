//! The open job: what it is called, where it is, notes, what was measured there, what was set aside.

use crate::core::message::{Arg, Message};
use crate::job::{Aside, LONGEST_WHO, Measured, Part, Why};
use crate::text;
use crate::ui::browser::device;
use crate::ui::browser::focus::HEADING;
use crate::ui::components::link::GoTo;
use crate::ui::components::parts::{Text, button};
use crate::ui::components::question::value_words;
use crate::ui::jobs;
use crate::ui::lazy;
use crate::ui::over::Over;
use crate::ui::over::contents::count;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// The open job as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> lazy::Part {
    page().learn(&text::JOBS);
    Ok(view! { <JobPage/> }.into_any())
}

/// The open job.
#[component]
fn JobPage() -> impl IntoView {
    let page = page();
    let first = Route::Start.next();
    view! {
        <div class="job-page" data-test="job">
            <h1 id=HEADING tabindex="-1">{page.key("job-heading")}</h1>
            <p class="lead">{page.key("job-lead")}</p>
            {text(page, Part::Name, "job-name", "job-name")}
            {text(page, Part::Place, "job-place", "job-place")}
            {text(page, Part::Notes, "job-notes", "job-notes")}
            <div class="ways">
                <GoTo route=first class="button main" test="job-questions">{page.key("job-questions")}</GoTo>
                <GoTo route=Route::Onsite class="button" test="job-onsite">{page.key("onsite-button")}</GoTo>
                <GoTo route=Route::Work class="button" test="to-work">{page.key("work-link")}</GoTo>
                <GoTo route=Route::Offer class="button" test="job-offer">{page.key("offer-heading")}</GoTo>
                {button(page.key("send-button"), "button", "send", move || page.over.set(Some(Over::Send { back: false })))}
                <GoTo route=Route::After class="button" test="job-after">{page.key("job-after")}</GoTo>
                <GoTo route=Route::Jobs class="button" test="job-list">{page.key("jobs-link")}</GoTo>
            </div>
            {move || asked(page)}
            <Log/>
            <SetAside/>
        </div>
    }
}

/// How far the questions are that were asked of somebody.
fn asked(page: Page) -> Option<AnyView> {
    let (all, open) = page.job.with(|j| (j.sheet.asked.len(), j.sheet.open_questions().count()));
    (all > 0).then(|| {
        let says = Message::new("job-asked").with("count", count(all)).with("open", count(open));
        view! {
            <p data-test="job-asked">
                {page.say(&says)} " "
                <GoTo route=Route::Asked test="job-to-asked">{page.key("job-to-asked")}</GoTo>
            </p>
        }
        .into_any()
    })
}

/// A text of the job.
fn text(page: Page, part: Part, words: &'static str, test: &'static str) -> AnyView {
    Text {
        words,
        test,
        most: part.longest(),
        lines: part == Part::Notes,
        now: Signal::derive(move || page.job.with(|j| j.sheet.text(part).to_owned())),
        write: Callback::new(move |text: String| page.alter(|job| job.write(part, &text))),
    }
    .field()
}

/// What was measured, newest first.
#[component]
fn Log() -> impl IntoView {
    let page = page();
    let log = Memo::new(move |_| page.job.with(|j| j.sheet.log.clone()));
    let one = move |m: Measured| {
        let who = (!m.who.is_empty()).then(|| format!(", {}", m.who));
        view! {
            <li>
                <span>{page.key(&m.id.key())}</span>
                " "
                <strong>{move || value_words(page, m.id, &m.value)}</strong>
                <p class="quiet">{device::when(m.at_ms)} {who}</p>
            </li>
        }
    };
    let list = move || log.get().into_iter().rev().map(one).collect_view();
    let who = Text {
        words: "job-who",
        test: "job-who",
        most: LONGEST_WHO,
        lines: false,
        now: Signal::derive(jobs::who),
        write: Callback::new(|name: String| jobs::set_who(&name)),
    };
    view! {
        <section aria-labelledby="log-name">
            <h2 id="log-name">{page.key("job-log")}</h2>
            <p class="quiet">{page.key("job-log-about")}</p>
            {who.field()}
            {move || log.with(Vec::is_empty).then(|| view! { <p>{page.key("job-log-empty")}</p> })}
            <ol class="log" data-test="job-log">{list}</ol>
        </section>
    }
}

/// What found no place in the job and is kept beside it.
#[component]
fn SetAside() -> impl IntoView {
    let page = page();
    let aside = Memo::new(move |_| page.job.with(|j| j.sheet.aside.clone()));
    let one = move |a: Aside| {
        let why = match a.why {
            Why::Unreadable => "job-aside-unreadable",
            Why::OtherTab => "job-aside-other-tab",
            Why::Merged => "job-aside-merged",
        };
        let says = Message::new(why).with("when", Arg::Verbatim(device::when(a.at_ms)));
        view! {
            <li>
                <p class="quiet">{page.say(&says)}</p>
                <code>{a.field} ": " {a.text}</code>
            </li>
        }
    };
    let list = move || aside.get().into_iter().rev().map(one).collect_view();
    move || {
        (!aside.with(Vec::is_empty)).then(|| {
            view! {
                <details class="data">
                    <summary>{page.key("job-aside")}</summary>
                    <ul class="log" data-test="job-aside">{list}</ul>
                </details>
            }
        })
    }
}
