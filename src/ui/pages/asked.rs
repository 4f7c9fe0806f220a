//! The short path: only the questions that somebody asked in a link, one after another, with their offer's prices
//! already in; at the end the verdict, and the way back to them.

use crate::core::message::Message;
use crate::job::questions::{Id, Question};
use crate::ui::browser::focus::{self, HEADING};
use crate::ui::components::link::GoTo;
use crate::ui::components::parts::button;
use crate::ui::components::question::QuestionField;
use crate::ui::lazy::Part;
use crate::ui::over::{contents, send};
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// The short path as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&crate::text::JOBS);
    Ok(short_path(page()))
}

fn short_path(page: Page) -> AnyView {
    let asked = Memo::new(move |_| page.job.with(|j| j.sheet.asked.clone()));
    // Begins at the first that is still open; someone who comes back goes on where they were.
    let open = page.job.with_untracked(|j| j.sheet.open_questions().next());
    let first = asked.with_untracked(|a| a.iter().position(|id| Some(*id) == open).unwrap_or(a.len()));
    let at = RwSignal::new(first);
    let to = move |place: usize| {
        at.set(place);
        focus::to_heading();
    };
    view! {
        <div class="asked" data-test="asked">
            {move || {
                let place = at.get();
                match asked.with(|a| (a.get(place).copied(), a.len())) {
                    (Some(id), all) => one(page, id, place, all, to).into_any(),
                    (None, 0) => nobody(page),
                    (None, all) => done(page, move || to(all - 1)),
                }
            }}
        </div>
    }
    .into_any()
}

fn one(page: Page, id: Id, place: usize, all: usize, to: impl Fn(usize) + Copy + 'static) -> AnyView {
    let count = contents::count;
    let step = Message::new("asked-step").with("step", count(place + 1)).with("of", count(all));
    let back =
        (place > 0).then(|| button(page.key("page-back"), "button", "asked-back", move || to(place - 1)));
    let question = Question::get(id);
    view! {
        <h1 id=HEADING tabindex="-1" class="quiet" data-test="asked-step">{page.words_now().say(&step)}</h1>
        <progress aria-hidden="true" max=all value=place></progress>
        {(place == 0).then(|| offered(page))}
        <QuestionField question/>
        <nav class="steps" aria-label=page.key("page-steps")>
            {back}
            {button(page.key("page-next"), "button main", "asked-next", move || to(place + 1))}
        </nav>
    }
    .into_any()
}

/// The offer that came along.
fn offered(page: Page) -> Option<AnyView> {
    let lines = page.offer.with_untracked(|offer| contents::prices(page, offer));
    (!lines.is_empty()).then(|| {
        let lines = lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
        view! {
            <section class="offered" data-test="asked-offer">
                <p>{page.key("asked-offer")}</p>
                <ul>{lines}</ul>
            </section>
        }
        .into_any()
    })
}

fn nobody(page: Page) -> AnyView {
    view! {
        <h1 id=HEADING tabindex="-1">{page.key("asked-nobody")}</h1>
        <div class="ways"><GoTo route=Route::Start.next() class="button main" test="asked-all">{page.key("job-questions")}</GoTo></div>
    }
    .into_any()
}

/// The verdict, and the way back.
fn done(page: Page, back: impl Fn() + 'static) -> AnyView {
    let verdict = move || match page.outcome.get() {
        Some(shared) => page.say(&shared.0.advice.verdict),
        None => page.key("page-verdict-wait"),
    };
    view! {
        <h1 id=HEADING tabindex="-1">{page.key("asked-done")}</h1>
        <p class="lead" role="status" data-test="asked-verdict">{verdict}</p>
        <div class="ways">
            {button(page.key("page-back"), "button", "asked-back", back)}
            <GoTo route=Route::Result class="button" test="asked-result">{page.key("page-verdict-more")}</GoTo>
            <GoTo route=Route::Start.next() class="button" test="asked-all">{page.key("asked-all")}</GoTo>
        </div>
        <section class="send-back" aria-labelledby="send-back-name">
            <h2 id="send-back-name">{page.key("send-back-heading")}</h2>
            <p>{page.key("asked-send-about")}</p>
            {send::panel(page, true)}
        </section>
    }
    .into_any()
}
