//! A field of a number or a day that is noted in the job. What is typed stays as typed until the field is left; what
//! is refused is not noted, and the reason stands under it.

use super::After;
use crate::core::after::Date;
use crate::core::message::Message;
use crate::core::numeric::number as parsed;
use crate::job::after as kept;
use crate::job::questions::Value;
use leptos::prelude::*;

/// A field of a number.
pub struct Number {
    /// Its name.
    pub name: String,
    /// Stem of its identities and its `data-test`.
    pub code: String,
    /// The unit's sign beside it.
    pub sign: Signal<String>,
    /// What is noted, as it stands in the field; empty for nothing.
    pub now: Signal<String>,
    /// Notes a number, or takes it back; says why it refuses.
    pub write: Callback<Option<f64>, Result<(), Message>>,
}

/// A number as people type it: a comma may stand for the decimal point, spaces for thousands.
fn typed_number(text: &str) -> Option<f64> {
    let plain: String =
        text.chars().filter(|c| !c.is_whitespace()).map(|c| if c == ',' { '.' } else { c }).collect();
    parsed(&plain)
}

/// A number to stand in a field: at most this many decimals, none that say nothing.
pub fn shown(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    parsed(&text).map_or(text, |v| v.to_string())
}

impl Number {
    /// The field with its name above it.
    pub fn field(self, after: After) -> AnyView {
        let page = after.page;
        let Number { name, code, sign, now, write } = self;
        let typed = RwSignal::new(None::<String>);
        let refusal = RwSignal::new(None::<Message>);
        let take = move |text: &str| -> Result<(), Message> {
            if text.trim().is_empty() {
                return write.run(None);
            }
            let number = typed_number(text).ok_or_else(|| Message::new("after-not-a-number"))?;
            write.run(Some(number))
        };
        // What was noted before the typing began: "9" on the way to a refused "99" must not stay.
        let before = StoredValue::new(None::<String>);
        let typing = move |event| {
            let text: String = event_target_value(&event);
            before.update_value(|b| {
                b.get_or_insert_with(|| now.get_untracked());
            });
            if take(&text).is_ok() {
                refusal.set(None);
            } else {
                // It was noted, so it is not refused.
                let _ = take(&before.get_value().unwrap_or_default());
            }
            typed.set(Some(text));
        };
        let left = move |_| {
            // A field that goes away is left too.
            let Some(Some(text)) = typed.try_get_untracked() else { return };
            refusal.set(take(&text).err());
            if refusal.with_untracked(Option::is_none) {
                typed.set(None);
                before.set_value(None);
            }
        };
        let id = format!("after-{code}");
        let says = format!("{id}-refusal");
        view! {
            <div class="reading-field">
                <label for=id.clone()>{name}</label>
                <span class="typed">
                    <input
                        id=id
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        data-test=code.clone()
                        aria-describedby=says.clone()
                        aria-invalid=move || refusal.with(Option::is_some).then_some("true")
                        prop:value=move || typed.get().unwrap_or_else(|| now.get())
                        on:input=typing
                        on:blur=left
                    />
                    <span class="unit">{sign}</span>
                </span>
                <p class="refusal" id=says role="status" data-test=format!("{code}-refusal")>
                    {move || refusal.get().map(|m| page.say(&m))}
                </p>
            </div>
        }
        .into_any()
    }
}

/// A field of a day.
pub fn date(after: After, what: &'static str, words: &'static str, now: Signal<String>) -> AnyView {
    let chosen = move |event| {
        let text: String = event_target_value(&event);
        let day = Date::parse(&text).map(|d| Value::code(&d.iso()));
        after.note_or_not(what, day);
    };
    let noted = Signal::derive(move || after.done.with(|d| kept::date(d, what)).map(Date::iso));
    view! {
        <label class="text">
            {after.page.key(words)}
            <input
                type="date"
                data-test=what.replace('.', "-")
                prop:value=move || noted.get().unwrap_or_else(|| now.get())
                on:change=chosen
            />
        </label>
    }
    .into_any()
}
