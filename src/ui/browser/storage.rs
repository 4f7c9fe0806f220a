//! The browser's own storage, through gloo-storage: texts under keys, and the reader's choices.
//!
//! Storage may be forbidden (private browsing, a policy), full, or hold what somebody else wrote. Every
//! function works in each case and says what it could not do. What lies under which key is known to
//! [`super::jobs`].

use crate::ui::model::Settings;
use gloo_storage::{LocalStorage, Storage as _};
use leptos::ev;
use leptos::prelude::*;

/// Where the reader's choices are kept.
const SETTINGS_KEY: &str = "tankful.settings.1";
/// Where unreadable texts are moved, with a number after it.
const ASIDE_KEY: &str = "tankful.aside.";
/// How many unreadable texts are kept before the page stops making room for more.
const MOST_ASIDE: u32 = 20;

/// The storage, unless it is forbidden.
fn storage() -> Option<web_sys::Storage> {
    // gloo's `raw` panics where the browser forbids storage, so ask first.
    matches!(window().local_storage(), Ok(Some(_))).then(LocalStorage::raw)
}

/// Whether nothing can be kept at all.
pub fn is_forbidden() -> bool {
    storage().is_none()
}

/// The text under a key.
pub fn text_at(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

/// Keeps a text under a key; the browser takes all of it or leaves the former text. False: it is not kept.
pub fn put(key: &str, text: &str) -> bool {
    storage().is_some_and(|s| s.set_item(key, text).is_ok())
}

/// Forgets the text under a key.
pub fn remove(key: &str) {
    if let Some(storage) = storage() {
        let _ = storage.remove_item(key);
    }
}

/// Every key.
pub fn keys() -> Vec<String> {
    let Some(storage) = storage() else { return Vec::new() };
    let count = storage.length().unwrap_or(0);
    (0..count).filter_map(|i| storage.key(i).ok().flatten()).collect()
}

/// Moves an unreadable text to a key of its own. False when it could not be moved; it then stays where
/// it is.
pub fn set_aside(key: &str, text: &str) -> bool {
    let free = (1..=MOST_ASIDE).map(|n| format!("{ASIDE_KEY}{n}")).find(|k| text_at(k).is_none());
    let Some(aside) = free else { return false };
    if put(&aside, text) {
        remove(key);
        return true;
    }
    // No room for a second copy: make room by taking the first one away, or put it back.
    remove(key);
    put(&aside, text) || {
        put(key, text);
        false
    }
}

/// The reader's choices; the usual ones when none are kept or readable.
pub fn settings() -> Settings {
    text_at(SETTINGS_KEY).and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default()
}

/// Keeps the reader's choices. They are small and easily made again: trouble is not worth a notice.
pub fn keep_settings(settings: &Settings) {
    put(SETTINGS_KEY, &serde_json::to_string(settings).unwrap_or_default());
}

/// What belongs to this tab alone; gone when it is closed.
pub fn of_tab(key: &str) -> Option<String> {
    window().session_storage().ok()??.get_item(key).ok()?
}

/// Keeps what belongs to this tab alone, where the browser lets it.
pub fn put_in_tab(key: &str, text: &str) {
    if let Ok(Some(storage)) = window().session_storage() {
        let _ = storage.set_item(key, text);
    }
}

/// Calls back with the key when another tab has changed something; with none when it may have: everything
/// was cleared, or this tab slept.
pub fn follow(changed: impl Fn(Option<String>) + Clone + 'static) {
    let at_once = changed.clone();
    let handle = window_event_listener(ev::Custom::<web_sys::StorageEvent>::new("storage"), move |event| {
        at_once(event.key());
    });
    let woken = window_event_listener(ev::Custom::<web_sys::Event>::new("pageshow"), move |_| changed(None));
    on_cleanup(move || {
        handle.remove();
        woken.remove();
    });
}
