//! What lies over the page: sending a job, opening a link, taking jobs from a file. Each is one plain function of
//! plain data, called only while it is shown; reading links and files happens in there.

pub mod bring;
pub mod contents;
mod differences;
pub mod open;
pub mod send;
mod ways;

use super::lazy::{Part, shown};
use super::state::page;
use leptos::html;
use leptos::prelude::*;

/// What is shown over the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Over {
    /// Sending the open job; back to who asked, or to somebody who is asked.
    Send {
        /// It goes back.
        back: bool,
    },
    /// A link that was opened: the part of the address after the `#`, or what was pasted.
    Open(String),
    /// A file of jobs; `None` where it could not be read at all.
    Bring(Option<String>),
}

/// What is shown, as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
fn part() -> Part {
    page().learn(&crate::text::JOBS);
    let page = page();
    let content = move || {
        page.over.get().map(|over| match over {
            Over::Send { back } => send::dialog(page, back),
            Over::Open(text) => open::dialog(page, text),
            Over::Bring(text) => bring::dialog(page, text),
        })
    };
    Ok(content.into_any())
}

/// The sheet it is shown on.
#[component]
pub fn OverSheet() -> impl IntoView {
    let page = page();
    let sheet = NodeRef::<html::Dialog>::new();
    let any = Memo::new(move |_| page.over.with(Option::is_some));
    Effect::new(move |_| {
        let (Some(dialog), shown) = (sheet.get(), any.get()) else { return };
        match shown {
            // Opening one that is open throws; closing one that is closed does nothing.
            true if !dialog.open() => drop(dialog.show_modal()),
            true => dialog.set_scroll_top(0),
            false => dialog.close(),
        }
    });
    let content = move || any.get().then(|| shown(|| Box::pin(part())));
    view! {
        <dialog node_ref=sheet class="sheet over" data-test="over" aria-labelledby="over-name" on:close=move |_| page.over.set(None)>
            <form method="dialog">
                <button class="button" data-test="over-close">{page.key("page-working-close")}</button>
            </form>
            {content}
        </dialog>
    }
}
