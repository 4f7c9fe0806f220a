//! The question for the place: a list that narrows as one types (the combobox pattern of the ARIA
//! Authoring Practices), with "I don't know" beside it.

use crate::core::case::Provenance;
use crate::core::climate::{places, search};
use crate::core::message::Message;
use crate::job::questions::{Id, Value};
use crate::ui::state::{Page, page};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

/// Most places shown at once.
const MOST: usize = 12;

/// A place's name with its state or province; empty for an unlisted one.
pub fn name_of(id: &str) -> String {
    places::by_id(id).map(full_name).unwrap_or_default()
}

fn full_name(place: &places::Place) -> String {
    format!("{}, {}", place.name, place.region.name())
}

#[derive(Clone, Copy)]
struct Picker {
    page: Page,
    id: Id,
    /// What is being typed; `None` when nobody is typing.
    typed: RwSignal<Option<String>>,
    /// The place the arrow keys have reached.
    at: RwSignal<Option<usize>>,
}

impl Picker {
    fn found(self) -> Vec<&'static places::Place> {
        let typed = self.typed.get().unwrap_or_default();
        let mut found = search(&typed);
        found.truncate(MOST);
        found
    }

    fn open(self) -> bool {
        self.typed.with(Option::is_some)
    }

    fn answered(self) -> String {
        self.page.answers.with(|a| match a.get(self.id).map(|a| &a.value) {
            Some(Value::Code(code)) => name_of(code),
            _ => String::new(),
        })
    }

    fn pick(self, place: &places::Place) {
        // A listed place is never refused.
        let _ = self.page.answer(self.id, Value::code(place.id), Provenance::Answered);
        self.close();
    }

    fn close(self) {
        self.typed.set(None);
        self.at.set(None);
    }

    fn key(self, event: &KeyboardEvent) {
        let found = untrack(|| self.found());
        let at = self.at.get_untracked();
        match event.key().as_str() {
            "ArrowDown" | "ArrowUp" if found.is_empty() => {}
            "ArrowDown" => {
                if !untrack(|| self.open()) {
                    self.typed.set(Some(String::new()));
                }
                self.at.set(Some(at.map_or(0, |i| (i + 1) % found.len())));
                event.prevent_default();
            }
            "ArrowUp" => {
                self.at.set(Some(at.map_or(found.len() - 1, |i| (i + found.len() - 1) % found.len())));
                event.prevent_default();
            }
            "Enter" if untrack(|| self.open()) => {
                if let Some(place) = at.or(Some(0)).and_then(|i| found.get(i)) {
                    self.pick(place);
                }
                event.prevent_default();
            }
            "Escape" => self.close(),
            _ => {}
        }
    }
}

/// The picker of places.
#[component]
pub fn PlaceField(id: Id) -> impl IntoView {
    let page = page();
    let picker = Picker { page, id, typed: RwSignal::new(None), at: RwSignal::new(None) };
    let code = id.code();
    let unknown = move || page.answers.with(|a| a.get(id).is_none());
    view! {
        <div class="place">
            <div class="combo">
                <input
                    type="text"
                    role="combobox"
                    autocomplete="off"
                    id=format!("{code}-field")
                    data-test=format!("q-{code}-input")
                    aria-labelledby=format!("{code}-name")
                    aria-autocomplete="list"
                    aria-controls="places"
                    aria-expanded=move || picker.open().to_string()
                    aria-activedescendant=move || picker.at.get().map(|i| format!("place-{i}"))
                    placeholder=page.key("page-place-type")
                    prop:value=move || picker.typed.get().unwrap_or_else(|| picker.answered())
                    on:input=move |event| {
                        picker.at.set(None);
                        picker.typed.set(Some(event_target_value(&event)));
                    }
                    on:keydown=move |event| picker.key(&event)
                    on:blur=move |_| picker.close()
                />
                <ul role="listbox" id="places" aria-labelledby=format!("{code}-name") hidden=move || !picker.open()>
                    {move || picker.open().then(|| list(picker))}
                </ul>
            </div>
            <button
                type="button"
                class="unknown"
                data-test=format!("q-{code}-unknown")
                aria-pressed=move || unknown().to_string()
                on:click=move |_| page.forget(id)
            >
                {page.key("page-unknown")}
            </button>
        </div>
        <p class="quiet" role="status">{move || picker.open().then(|| tally(picker))}</p>
    }
}

fn tally(picker: Picker) -> String {
    let count = search(&picker.typed.get().unwrap_or_default()).len();
    picker.page.say(&Message::new("page-place-found").with("count", count as i64))
}

fn list(picker: Picker) -> impl IntoView {
    let entry = move |(i, place): (usize, &'static places::Place)| {
        view! {
            <li
                role="option"
                id=format!("place-{i}")
                data-test=format!("place-{}", place.id)
                aria-selected=move || (picker.at.get() == Some(i)).to_string()
                // A press must not take the focus from the field: the list would close before the click.
                on:mousedown=move |event| event.prevent_default()
                on:click=move |_| picker.pick(place)
            >
                {full_name(place)}
            </li>
        }
    };
    picker.found().into_iter().enumerate().map(entry).collect_view()
}
