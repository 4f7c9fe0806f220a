//! Parts of the page that are fetched when they are first shown, so that the first visit downloads no more
//! than what leads to a first verdict. The build cuts them out of the program (`src/bin/xtask/chunks.rs`);
//! the service worker keeps them beside it, so that they open with no signal too.
//!
//! A part is one function marked `#[wasm_split(name, …, fallible)]`: called the first time, it fetches its
//! file. What is reachable only from there goes into that file. The worker never shows a part.

use super::browser::focus;
use super::components::parts::{button, waiting};
use super::state::page;
use leptos::prelude::*;
use leptos::reactive::computed::ScopedFuture;
use leptos::reactive::owner::Owner;
use leptos::wasm_split::SplitLoaderError;
use std::pin::Pin;

/// A part's view, or why its file could not be had.
pub type Part = Result<AnyView, SplitLoaderError>;

/// A part that may still be on its way.
pub type Coming = Pin<Box<dyn Future<Output = Part>>>;

/// Shows a part: at once when its file is here, otherwise a line that says so until it comes. Where it
/// cannot be fetched, says that, and offers to try again.
pub fn shown(fetch: fn() -> Coming) -> AnyView {
    let page = page();
    let part = StoredValue::new_local(None::<Part>);
    let came = RwSignal::new(0_u32);
    let owner = Owner::current().unwrap_or_default();
    let get = move || {
        let build = async move {
            let view = fetch().await;
            // None where the place has gone meanwhile.
            part.try_set_value(Some(view));
            came.try_update(|count| *count += 1);
        };
        // What the part makes lives as long as its place, whoever asked for it.
        leptos::task::spawn_local(owner.with(|| ScopedFuture::new_untracked(build)));
    };
    get();
    (move || {
        came.get();
        match part.try_update_value(Option::take).flatten() {
            Some(Ok(view)) => {
                focus::part_came();
                view
            }
            Some(Err(_)) => {
                let get = get.clone();
                missing(move || {
                    // The wait is shown again, and a second miss said again.
                    came.update(|count| *count += 1);
                    get();
                })
            }
            None => waiting(page.key("page-part-wait")),
        }
    })
    .into_any()
}

/// Says that a part could not be fetched, and offers to try again.
pub fn missing(again: impl Fn() + 'static) -> AnyView {
    let page = page();
    view! {
        <div class="notice" role="alert" data-test="part-missing">
            <p>{page.key("page-part-missing")}</p>
            {button(page.key("page-part-again"), "button", "part-again", again)}
        </div>
    }
    .into_any()
}
