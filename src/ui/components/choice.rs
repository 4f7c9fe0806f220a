//! A question with options: each a large target, and "I don't know" among them as their equal.

use super::question::option_key;
use crate::core::case::Provenance;
use crate::job::questions::{Id, Value};
use crate::ui::state::page;
use leptos::prelude::*;

/// The options.
#[component]
pub fn ChoiceField(id: Id, options: &'static [&'static str]) -> impl IntoView {
    let page = page();
    let code = id.code();
    let chosen = Memo::new(move |_| {
        page.answers.with(|a| match a.get(id).map(|a| &a.value) {
            Some(Value::Code(code)) => Some(code.clone()),
            _ => None,
        })
    });
    let option = move |option: &'static str| {
        let choose = move |_| {
            let from = page.answers.with_untracked(|a| a.get(id).map_or(Provenance::Answered, |a| a.from));
            // An option of the list is never refused.
            let _ = page.answer(id, Value::code(option), from);
        };
        view! {
            <label class="option">
                <input
                    type="radio"
                    name=code
                    data-test=format!("q-{code}-{option}")
                    prop:checked=move || chosen.get().as_deref() == Some(option)
                    on:change=choose
                />
                <span>{page.key(&option_key(id, option))}</span>
            </label>
        }
    };
    view! {
        <div class="options" role="radiogroup" id=format!("{code}-field") tabindex="-1" aria-labelledby=format!("{code}-name")>
            {options.iter().map(|&o| option(o)).collect_view()}
            <label class="option unknown">
                <input
                    type="radio"
                    name=code
                    data-test=format!("q-{code}-unknown")
                    prop:checked=move || chosen.get().is_none()
                    on:change=move |_| page.forget(id)
                />
                <span>{page.key("page-unknown")}</span>
            </label>
        </div>
    }
}
