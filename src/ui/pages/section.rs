//! One section of questions: the first ones, the rest on request, and the way on and back.

use crate::job::questions::{self, Section};
use crate::ui::browser::focus::HEADING;
use crate::ui::components::link::GoTo;
use crate::ui::components::question::QuestionField;
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// One section of questions.
#[component]
pub fn SectionPage(section: Section) -> impl IntoView {
    let page = page();
    let words = format!("section-{}", section.code());
    let asked = move |first| questions::all().filter(move |q| q.section == section && q.first == first);
    view! {
        <div class="section" data-test=format!("section-{}", section.code())>
            <h1 id=HEADING tabindex="-1">{page.key(&words)}</h1>
            <p class="lead">{page.attr(&words, "about")}</p>
            {asked(true).map(|question| view! { <QuestionField question/> }).collect_view()}
            <Further section/>
            <Steps section/>
        </div>
    }
}

/// The questions that most people skip. They are drawn only once unfolded.
#[component]
fn Further(section: Section) -> impl IntoView {
    let page = page();
    let further = move || questions::all().filter(move |q| q.section == section && !q.first);
    let count = further().count();
    let open = Memo::new(move |_| page.job.with(|j| j.unfolded.contains(&section)));
    let fold = move |_| {
        let open = open.get_untracked();
        page.job.update(|j| j.unfold(section, !open));
    };
    let list = move || {
        open.get().then(|| further().map(|question| view! { <QuestionField question/> }).collect_view())
    };
    (count > 0).then(|| {
        let label = move || {
            page.say(
                &crate::core::message::Message::new(if open.get() {
                    "page-less-detail"
                } else {
                    "page-more-detail"
                })
                .with("count", count as i64),
            )
        };
        view! {
            <button
                type="button"
                class="unfold"
                aria-expanded=move || open.get().to_string()
                aria-controls="further"
                data-test="more-detail"
                on:click=fold
            >
                {label}
            </button>
            <div id="further">{list}</div>
        }
    })
}

/// On and back.
#[component]
fn Steps(section: Section) -> impl IntoView {
    let page = page();
    let here = Route::Section(section, None);
    let on = if here.next() == Route::Result { "page-next-result" } else { "page-next" };
    view! {
        <nav class="steps" aria-label=page.key("page-steps")>
            <GoTo route=here.back() class="button" test="back">{page.key("page-back")}</GoTo>
            <GoTo route=here.next() class="button main" test="next">{page.key(on)}</GoTo>
        </nav>
    }
}
