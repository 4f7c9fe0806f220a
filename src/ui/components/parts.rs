//! Small parts that many pages have: plain functions, so that each is in the page once.

use crate::ui::state::page;
use leptos::prelude::*;

/// A button.
pub fn button(
    words: String,
    class: &'static str,
    test: impl Into<String>,
    act: impl Fn() + 'static,
) -> AnyView {
    plain_button(words, class, test.into(), Box::new(act))
}

fn plain_button(words: String, class: &'static str, test: String, act: Box<dyn Fn()>) -> AnyView {
    view! { <button type="button" class=class data-test=test on:click=move |_| act()>{words}</button> }
        .into_any()
}

/// Says what is being waited for, once the wait is long enough to be noticed (style sheet).
pub fn waiting(words: String) -> AnyView {
    view! { <p class="waiting" role="status"><progress aria-hidden="true"></progress> {words}</p> }.into_any()
}

/// The heads of a table's columns.
pub fn heads(words: Vec<String>) -> AnyView {
    let cells = words.into_iter().map(|w| view! { <th scope="col">{w}</th> }).collect_view();
    view! { <thead><tr>{cells}</tr></thead> }.into_any()
}

/// A box to tick, with its words beside it.
pub fn tick(words: String, test: String, ticked: Signal<bool>, set: Callback<bool>) -> AnyView {
    view! {
        <label class="measured">
            <input
                type="checkbox"
                data-test=test
                prop:checked=move || ticked.get()
                on:change=move |event| set.run(event_target_checked(&event))
            />
            <span>{words}</span>
        </label>
    }
    .into_any()
}

/// A button that opens the browser's file chooser, and what to do with the file. The field itself is out of sight.
pub fn file_button(words: String, test: &'static str, chosen: Callback<web_sys::File>) -> AnyView {
    let field = NodeRef::<leptos::html::Input>::new();
    let choose = move || {
        if let Some(field) = field.get_untracked() {
            field.click();
        }
    };
    let changed = move |_| {
        let Some(field) = field.get_untracked() else { return };
        if let Some(file) = field.files().and_then(|files| files.get(0)) {
            chosen.run(file);
            // Emptied, so that the same file can be chosen again.
            field.set_value("");
        }
    };
    let name = words.clone();
    view! {
        <input node_ref=field type="file" hidden accept=".json,application/json" data-test=format!("{test}-file") aria-label=name on:change=changed/>
        {button(words, "button", test, choose)}
    }
    .into_any()
}

/// A text that somebody writes. What is typed stays as typed until the field is left.
pub struct Text {
    /// Key of its name.
    pub words: &'static str,
    /// Its `data-test`.
    pub test: &'static str,
    /// Longest text, characters.
    pub most: usize,
    /// Several lines.
    pub lines: bool,
    /// The text as it is kept.
    pub now: Signal<String>,
    /// Keeps what is typed, at every letter.
    pub write: Callback<String>,
}

impl Text {
    /// The field with its name above it.
    pub fn field(self) -> AnyView {
        let Text { words, test, most, lines, now, write } = self;
        let typed = RwSignal::new(None::<String>);
        let value = move || typed.get().unwrap_or_else(|| now.get());
        let typing = move |event| {
            let text: String = event_target_value(&event);
            typed.set(Some(text.clone()));
            write.run(text);
        };
        let left = move |_| typed.set(None);
        let field = if lines {
            view! { <textarea rows="4" maxlength=most data-test=test prop:value=value on:input=typing on:blur=left></textarea> }
                .into_any()
        } else {
            view! { <input type="text" autocomplete="off" maxlength=most data-test=test prop:value=value on:input=typing on:blur=left/> }
                .into_any()
        };
        view! { <label class="text">{page().key(words)} {field}</label> }.into_any()
    }
}

/// A choice from a list of codes and their words.
pub fn pick(
    words: String,
    test: &'static str,
    options: Vec<(String, String)>,
    chosen: Signal<String>,
    choose: Callback<String>,
) -> AnyView {
    let one = move |(code, words): (String, String)| {
        let value = code.clone();
        view! { <option value=value selected=move || chosen.get() == code>{words}</option> }
    };
    view! {
        <label class="text">
            {words}
            <select
                data-test=test
                prop:value=move || chosen.get()
                on:change=move |event| choose.run(event_target_value(&event))
            >
                {options.into_iter().map(one).collect_view()}
            </select>
        </label>
    }
    .into_any()
}
