//! One section of questions: the first ones, the rest on request, and the way on and back.

use crate::job::questions::{self, Question, Section};
use crate::text::SITE;
use crate::ui::browser::focus::HEADING;
use crate::ui::components::link::GoTo;
use crate::ui::components::present_label::{self, PresentLabel};
use crate::ui::components::question::QuestionField;
use crate::ui::lazy::{Part, shown};
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// One section of questions.
#[component]
pub fn SectionPage(section: Section) -> impl IntoView {
    let page = page();
    let words = format!("section-{}", section.code());
    let on_label = section == Section::Heater;
    view! {
        <div class="section" data-test=format!("section-{}", section.code())>
            <h1 id=HEADING tabindex="-1">{page.key(&words)}</h1>
            <p class="lead">{page.attr(&words, "about")}</p>
            {on_label.then(|| view! { <PresentLabel/> })}
            <Questions section first=true/>
            <Further section/>
            <Steps section/>
        </div>
    }
}

/// The questions asked at once, or the further ones; those on an unfolded label are asked there.
fn asked(section: Section, first: bool, label: bool) -> impl Iterator<Item = &'static Question> {
    questions::all()
        .filter(move |q| q.section == section && q.first == first && !(label && present_label::asks(q.id)))
}

#[component]
fn Questions(section: Section, first: bool) -> impl IntoView {
    let page = page();
    let label = Memo::new(move |_| page.job.with(|j| j.label));
    move || {
        asked(section, first, label.get()).map(|question| view! { <QuestionField question/> }).collect_view()
    }
}

/// The further questions of the section shown, with their words, which are fetched when first shown.
#[leptos::wasm_split::wasm_split(further, wasm_split_path = leptos::wasm_split, fallible)]
fn further() -> Part {
    let page = page();
    page.learn(&SITE);
    let section = match page.route.get_untracked() {
        Route::Section(section, _) => Some(section),
        _ => None,
    };
    Ok(section.map(|section| view! { <Questions section first=false/> }).into_any())
}

/// The questions that most people skip. They are drawn only once unfolded.
#[component]
fn Further(section: Section) -> impl IntoView {
    let page = page();
    let count = Memo::new(move |_| asked(section, false, page.job.with(|j| j.label)).count());
    let open = Memo::new(move |_| page.job.with(|j| j.unfolded.contains(&section)));
    let fold = move |_| {
        let open = open.get_untracked();
        page.job.update(|j| j.unfold(section, !open));
    };
    let list = move || open.get().then(|| shown(|| Box::pin(further())));
    (count.get_untracked() > 0).then(|| {
        let label = move || {
            page.say(
                &crate::core::message::Message::new(if open.get() {
                    "page-less-detail"
                } else {
                    "page-more-detail"
                })
                .with("count", count.get() as i64),
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
