//! Where the reader is among the sections, and the way to any of them.

use super::link::GoTo;
use crate::core::message::Message;
use crate::job::questions::{self, Section};
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// The list of sections; on a small screen folded behind "step 2 of 7".
#[component]
pub fn Way() -> impl IntoView {
    let page = page();
    let open = RwSignal::new(false);
    // A page once reached, the list folds again.
    Effect::new(move |_| {
        page.route.track();
        open.set(false);
    });
    let step = move || page.route.get().step();
    let done = move || match page.route.get() {
        Route::Result => Section::ALL.len(),
        other => other.step().map_or(0, |i| i + 1),
    };
    let where_now = move || match step() {
        Some(i) => page
            .say(&Message::new("page-step").with("step", i as i64 + 1).with("of", Section::ALL.len() as i64)),
        None => page.key("page-way"),
    };
    view! {
        <nav class="way" class:open=move || open.get() aria-label=page.key("page-way")>
            <button
                type="button"
                class="where"
                data-test="way"
                aria-expanded=move || open.get().to_string()
                aria-controls="sections"
                on:click=move |_| open.update(|o| *o = !*o)
            >
                {where_now}
            </button>
            <progress aria-hidden="true" max=Section::ALL.len() value=done></progress>
            <ol id="sections">
                {Section::ALL.map(|section| view! { <Step section/> }).collect_view()}
                <li aria-current=move || (page.route.get() == Route::Result).then_some("page")>
                    <GoTo route=Route::Result test="way-result">{page.key("page-way-result")}</GoTo>
                </li>
            </ol>
        </nav>
    }
}

/// One section, with how many of its questions are answered.
#[component]
fn Step(section: Section) -> impl IntoView {
    let page = page();
    let here = move || page.route.get().step().is_some_and(|i| Section::ALL[i] == section);
    let all = questions::all().filter(|q| q.section == section).count();
    let answered = move || {
        page.answers
            .with(|a| questions::all().filter(|q| q.section == section && a.get(q.id).is_some()).count())
    };
    let tally = move || {
        page.say(&Message::new("page-way-tally").with("answered", answered() as i64).with("all", all as i64))
    };
    view! {
        <li aria-current=move || here().then_some("step")>
            <GoTo route=Route::Section(section, None) test=format!("way-{}", section.code())>
                <span>{page.key(&format!("section-{}", section.code()))}</span>
                <span class="tally">{tally}</span>
            </GoTo>
        </li>
    }
}
