//! A question with a number: typed, or stepped up and down with large buttons; "I don't know" beside it.
//!
//! What is typed stays as typed until the reader leaves the field; what is refused stays until it is put
//! right, with the reason under it, while the former answer stays in force.

use super::bound::Bound;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::numeric::number as parsed;
use crate::core::units::{Quantity, Unit};
use crate::job::answers::{Answer, parse_number};
use crate::job::questions::{Kind, Value};
use crate::ui::model::Draft;
use crate::ui::state::page;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

/// A number as it stands in a field, to this many figures: plain, without marks between thousands.
fn in_field(value: f64, figures: usize) -> String {
    let (mut before, mut limit) = (0, 1.0);
    while value.abs() >= limit && before < figures {
        before += 1;
        limit *= 10.0;
    }
    rounded(value, figures - before).to_string()
}

/// Rounded to this many decimals.
fn rounded(value: f64, decimals: usize) -> f64 {
    parsed(&format!("{value:.decimals$}")).unwrap_or(value)
}

/// A step that suits the unit shown: the question's own in its first unit, a round number near it in
/// another.
fn step_in(kind: Kind, unit: Unit) -> f64 {
    let Kind::Number { us, step, .. } = kind else { return 1.0 };
    if unit == us {
        return step;
    }
    let wanted = step * (us.to_base(1.0) - us.to_base(0.0)) / (unit.to_base(1.0) - unit.to_base(0.0));
    let mut decade = 1e-6;
    while decade * 10.0 <= wanted {
        decade *= 10.0;
    }
    let near = [1.0, 2.0, 5.0].into_iter().rev().find(|m| m * decade <= wanted * 1.01).unwrap_or(1.0);
    near * decade
}

/// The next number on the grid of steps, within the range.
fn stepped(kind: Kind, now: Quantity, up: bool) -> f64 {
    let Kind::Number { low, high, .. } = kind else { return now.value };
    let step = step_in(kind, now.unit);
    let at = now.value / step;
    let next = if up { (at + 1e-6).floor() + 1.0 } else { (at - 1e-6).ceil() - 1.0 };
    let limit = |q: Quantity| q.to(now.unit).map_or(q.value, |q| q.value);
    // Takes off what binary fractions leave behind (0.30000000000000004).
    rounded(next * step, 6).clamp(limit(low), limit(high))
}

#[derive(Clone, Copy)]
struct Field(Bound);

impl Field {
    /// The value in force, in the unit shown.
    fn now(self) -> Quantity {
        let unit = self.0.unit.get();
        self.0.now.get().and_then(|q| q.to(unit)).unwrap_or(Quantity::new(0.0, unit))
    }

    /// What stands in the field.
    fn text(self) -> String {
        if let Some(draft) = self.0.draft.get() {
            return draft.text;
        }
        let unit = self.0.unit.get();
        match self.0.answer.get().map(|a| a.value) {
            Some(Value::Number(q)) if q.unit == unit => q.value.to_string(),
            Some(Value::Number(q)) => q.to(unit).map(|q| in_field(q.value, 4)).unwrap_or_default(),
            _ => String::new(),
        }
    }

    fn refusal(self) -> Option<Message> {
        self.0.draft.get().and_then(|d| d.refusal)
    }

    fn draft(self) -> Option<Draft> {
        self.0.draft.get_untracked()
    }

    fn set_draft(self, draft: Option<Draft>) {
        self.0.keep.run(draft);
    }

    fn answer(self) -> Option<Answer> {
        self.0.answer.get_untracked()
    }

    fn accept(self, value: Value) -> Result<(), Message> {
        let before = self.answer().map_or(Provenance::Answered, |a| a.from);
        self.0.write.run(Some(Answer { value, from: self.0.from.unwrap_or(before) }))
    }

    /// Takes back what was given: "I don't know".
    fn forget(self) {
        self.set_draft(None);
        // Nothing given is never refused.
        let _ = self.0.write.run(None);
    }

    /// Takes the text as the answer, or puts the answer back that was there before the typing: "9" on
    /// the way to a refused "99" must not stay.
    fn try_text(self, text: &str, before: Option<&Answer>) -> Option<Message> {
        let unit = self.0.unit.get_untracked();
        let refusal = match parse_number(self.0.id, text, unit) {
            Ok(value) => self.accept(value).err()?,
            Err(refusal) => refusal.message(),
        };
        if self.answer().as_ref() != before {
            // It was in force, so it is within its range.
            let _ = self.0.write.run(before.cloned());
        }
        Some(refusal)
    }

    /// While typing: a good number counts at once; a bad one waits, unless it was refused before.
    fn typing(self, text: String) {
        let draft = self.draft();
        let was_refused = draft.as_ref().is_some_and(|d| d.refusal.is_some());
        let before = draft.map_or_else(|| self.answer(), |d| d.before);
        let refusal = self.try_text(&text, before.as_ref()).filter(|_| was_refused);
        self.set_draft(Some(Draft { text, refusal, before }));
    }

    /// Leaving the field: an empty one means "I don't know", a bad number is refused and stays.
    fn left(self) {
        let Some(Draft { text, before, .. }) = self.draft() else { return };
        if text.trim().is_empty() {
            self.forget();
            return;
        }
        let refusal = self.try_text(&text, before.as_ref());
        self.set_draft(refusal.map(|refusal| Draft { text, refusal: Some(refusal), before }));
    }

    /// Arrow keys step, as in any field with a number.
    fn key(self, event: &KeyboardEvent) {
        let up = match event.key().as_str() {
            "ArrowUp" => true,
            "ArrowDown" => false,
            _ => return,
        };
        event.prevent_default();
        self.step(up);
    }

    fn step(self, up: bool) {
        let now = untrack(|| self.now());
        let value = Value::number(stepped(self.0.kind, now, up), now.unit);
        self.set_draft(None);
        // Kept within the range above, so it is not refused.
        let _ = self.accept(value);
    }
}

/// The number field.
#[component]
pub fn NumberField(
    bound: Bound,
    /// With buttons that step the number up and down.
    #[prop(optional)]
    steps: bool,
) -> impl IntoView {
    let page = page();
    let field = Field(bound);
    let code = bound.code.get_value();
    let refusal = Memo::new(move |_| field.refusal());
    let unknown = move || bound.answer.with(Option::is_none);
    let sign = format!("{code}-unit");
    let (why, standing) = (format!("{code}-why"), format!("{code}-standing"));
    let described = move || {
        if refusal.with(Option::is_some) {
            return Some(why.clone());
        }
        unknown().then(|| standing.clone())
    };
    let named = format!("{code}-name {sign}");
    view! {
        <div class="number">
            {steps.then(|| view! { <Stepper field up=false/> })}
            <span class="typed">
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    id=format!("{code}-field")
                    data-test=format!("q-{code}-input")
                    aria-labelledby=named
                    aria-invalid=move || refusal.with(Option::is_some).then_some("true")
                    aria-describedby=described
                    placeholder=move || in_field(field.now().value, 3)
                    prop:value=move || field.text()
                    on:keydown=move |event| field.key(&event)
                    on:input=move |event| field.typing(event_target_value(&event))
                    on:change=move |_| field.left()
                    on:blur=move |_| field.left()
                />
                <span class="unit" id=sign>{move || page.words().unit_sign(bound.unit.get())}</span>
            </span>
            {steps.then(|| view! { <Stepper field up=true/> })}
            <button
                type="button"
                class="unknown"
                data-test=format!("q-{code}-unknown")
                aria-pressed=move || unknown().to_string()
                on:click=move |_| field.forget()
            >
                {page.key(bound.unknown)}
            </button>
        </div>
        <p class="refusal" id=format!("{code}-why") role="alert" data-test=format!("q-{code}-refusal")>
            {move || refusal.get().map(|r| page.say(&r))}
        </p>
    }
}

/// A button that steps the number down or up.
#[component]
fn Stepper(field: Field, up: bool) -> impl IntoView {
    let page = page();
    let name = field.0.name.get_value();
    let label = page.key(if up { "page-step-up" } else { "page-step-down" });
    let test = format!("q-{}-{}", field.0.code.get_value(), if up { "more" } else { "less" });
    view! {
        <button
            type="button"
            class="stepper"
            data-test=test
            aria-label=format!("{label}: {name}")
            on:click=move |_| field.step(up)
        >
            <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
                <path d=if up { "M12 5v14M5 12h14" } else { "M5 12h14" } stroke="currentColor" stroke-width="2.5" fill="none"></path>
            </svg>
        </button>
    }
}
