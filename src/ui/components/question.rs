//! One question: its words, its field, what it rests on, and how to find out.

use super::bound::Bound;
use super::choice::ChoiceField;
use super::find::HowToFind;
use super::number::NumberField;
use super::place::PlaceField;
use super::provenance::ProvenanceMark;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::job::asking;
use crate::job::questions::{Id, Kind, Question, Value};
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// A value in words: a quantity, an option's words, or a place's name.
pub fn value_words(page: Page, id: Id, value: &Value) -> String {
    match (value, Question::get(id).kind) {
        (Value::Number(q), _) => page.quantity(*q),
        (Value::Code(code), Kind::Place) => super::place::name_of(code),
        (Value::Code(code), _) => page.key(&option_key(id, code)),
    }
}

/// The key of an option's words.
pub fn option_key(id: Id, option: &str) -> String {
    format!("{}-{}", id.key(), option.replace('_', "-"))
}

/// The level of the headings of questions that stand inside something else, from context.
#[derive(Clone, Copy)]
pub struct HeadingLevel(pub &'static str);

/// One question.
#[component]
pub fn QuestionField(question: &'static Question) -> impl IntoView {
    let page = page();
    let id = question.id;
    let code = id.code();
    let from = Memo::new(move |_| page.provenance(id));
    let level = use_context::<HeadingLevel>().map(|level| level.0);
    let field = match question.kind {
        Kind::Number { .. } => {
            view! { <NumberField bound=Bound::question(page, question) steps=true/> }.into_any()
        }
        Kind::Choice(options) => view! { <ChoiceField id options/> }.into_any(),
        Kind::Place => view! { <PlaceField id/> }.into_any(),
    };
    view! {
        <div class="question" role="group" data-test=format!("q-{code}") aria-labelledby=format!("{code}-name")>
            <div class="question-head">
                <h2 id=format!("{code}-name") attr:aria-level=level>{page.key(&id.key())}</h2>
                <ProvenanceMark from/>
            </div>
            {field}
            <Standing question from/>
            <HowToFind question/>
        </div>
    }
}

/// What the value rests on: the default and how it was derived, or whether it was measured.
#[component]
fn Standing(question: &'static Question, from: Memo<Provenance>) -> impl IntoView {
    let page = page();
    let id = question.id;
    let assumed = move || {
        let value = page.resolved.with(|r| r.get(id).map(|k| k.value.clone()));
        let value = value.map(|v| value_words(page, id, &v)).unwrap_or_default();
        page.say(&Message::new("page-taken").with("value", crate::core::message::Arg::Verbatim(value)))
    };
    let measure = move |event| {
        let from = if event_target_checked(&event) { Provenance::Measured } else { Provenance::Answered };
        let value = page.answers.with_untracked(|a| a.get(id).map(|a| a.value.clone()));
        if let Some(value) = value {
            // The value is in force already, so it is within its range.
            let _ = page.answer(id, value, from);
        }
    };
    move || {
        match from.get() {
        Provenance::Assumed => view! {
            <p class="standing" id=format!("{}-standing", id.code()) data-test=format!("q-{}-taken", id.code())>
                {assumed} " " <span>{page.attr(&id.key(), "default")}</span>
            </p>
        }
        .into_any(),
        from if asking::measurable(question) => view! {
            <label class="measured">
                <input
                    type="checkbox"
                    data-test=format!("q-{}-measured", id.code())
                    prop:checked=from == Provenance::Measured
                    on:change=measure
                />
                <span>{page.key("page-measured")}</span>
            </label>
        }
        .into_any(),
        _ => ().into_any(),
    }
    }
}
