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
