//! The browser's history: one entry a page, so that its back button works.

use crate::ui::route::Route;
use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

/// The page of the address in the bar.
pub fn current() -> Route {
    Route::from_query(&window().location().search().unwrap_or_default())
}

/// A new entry. Where the browser refuses one (too many in a short time), the page changes all the same.
pub fn push(route: Route) {
    if let Ok(history) = window().history() {
        let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&route.address()));
    }
}

/// Follows the back and forward buttons.
pub fn follow(to: RwSignal<Route>) {
    let handle = window_event_listener(ev::popstate, move |_| to.set(current()));
    on_cleanup(move || handle.remove());
}

/// Takes what stands after the `#` out of the address, so that a reload or a bookmark does not bring it again.
fn take_fragment() -> Option<String> {
    let location = window().location();
    let fragment = location.hash().ok()?.trim_start_matches('#').to_owned();
    // The way to the page's heading is no link of a job.
    if fragment.is_empty() || fragment == super::focus::HEADING {
        return None;
    }
    let rest = location.pathname().unwrap_or_default() + &location.search().unwrap_or_default();
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&rest));
    }
    Some(fragment)
}

/// Calls back with what comes after the `#` of the address: now, and whenever it changes.
pub fn follow_fragment(opened: impl Fn(String) + 'static) {
    let take = move || {
        if let Some(fragment) = take_fragment() {
            opened(fragment);
        }
    };
    take();
    let handle = window_event_listener(ev::Custom::<web_sys::Event>::new("hashchange"), move |_| take());
    on_cleanup(move || handle.remove());
}
