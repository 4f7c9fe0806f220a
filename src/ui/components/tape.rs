//! A length as a tape says it: feet, inches, quarters of an inch by a press.

use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit};
use crate::job::questions::{Id, Value};
use crate::job::tape;
use crate::ui::state::Page;
use leptos::prelude::*;

/// Whether a question's unit is one that a tape shows.
pub fn fits(unit: Unit) -> bool {
    matches!(unit, Unit::Inch | Unit::Foot)
}

/// The two fields. What is typed counts as measured as soon as it is a length.
pub fn field(page: Page, id: Id, unit: Unit) -> AnyView {
    let given = page.answers.with_untracked(|a| match a.get(id).map(|a| &a.value) {
        Some(Value::Number(q)) => q.to(Unit::Inch).map(|q| q.value),
        _ => None,
    });
    let (feet, rest) = given.map(tape::feet_and_inches).unwrap_or_default();
    let (feet, rest) = (RwSignal::new(feet), RwSignal::new(rest));
    let refused = RwSignal::new(None::<Message>);
    let take = move || {
        let Some(inches) = tape::inches(&feet.get_untracked(), &rest.get_untracked()) else {
            let nothing =
                feet.with_untracked(|f| f.trim().is_empty()) && rest.with_untracked(|r| r.trim().is_empty());
            return refused.set((!nothing).then(|| Message::new("tape-refused")));
        };
        let there = Quantity::new(inches, Unit::Inch).to(unit).map_or(inches, |q| q.value);
        let said = page.answer(id, Value::number(there, unit), Provenance::Measured);
        refused.set(said.err().map(|refusal| refusal.message()));
    };
    let one = move |part: RwSignal<String>, key: &'static str, mode: &'static str| {
        let typed = move |event| {
            part.set(event_target_value(&event));
            take();
        };
        view! {
            <label class="text">
                {page.key(key)}
                <input type="text" inputmode=mode autocomplete="off" data-test=key prop:value=part on:input=typed
                    aria-describedby="tape-why" aria-invalid=move || refused.with(Option::is_some).then_some("true")/>
            </label>
        }
        .into_any()
    };
    let quarter = move |fraction: &'static str, test: &'static str, words: &'static str| {
        let press = move |_| {
            rest.update(|r| {
                let whole = r.split(|c: char| !c.is_ascii_digit()).next().unwrap_or("").to_owned();
                *r = if whole.is_empty() { fraction.to_owned() } else { format!("{whole} {fraction}") };
            });
            take();
        };
        view! { <button type="button" class="button" data-test=test aria-label=page.key(words) on:click=press>{fraction}</button> }
            .into_any()
    };
    view! {
        <div class="tape">
            {one(feet, "tape-feet", "numeric")}
            {one(rest, "tape-inches", "decimal")}
        </div>
        <div class="ways quarters">
            {quarter("1/4", "tape-1", "tape-quarter")}
            {quarter("1/2", "tape-2", "tape-half")}
            {quarter("3/4", "tape-3", "tape-three-quarters")}
        </div>
        <p class="refusal" id="tape-why" role="alert" data-test="tape-refusal">{move || refused.get().map(|r| page.say(&r))}</p>
    }
    .into_any()
}
