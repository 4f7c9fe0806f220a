//! What the device and the reader prefer: light or dark, still or moving; and paper.

use leptos::ev;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::cell::Cell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Light or dark.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Theme {
    /// As the system has it.
    #[default]
    Auto,
    /// Light.
    Light,
    /// Dark.
    Dark,
}

impl Theme {
    /// All, in the order shown.
    pub const ALL: [Theme; 3] = [Theme::Auto, Theme::Light, Theme::Dark];

    /// The code in the style sheet and in tests.
    pub const fn code(self) -> &'static str {
        match self {
            Theme::Auto => "auto",
            Theme::Light => "light",
            Theme::Dark => "dark",
        }
    }
}

/// Puts the theme on the document; the style sheet does the rest.
pub fn apply(theme: Theme) {
    let Some(root) = document().document_element() else { return };
    let _ = match theme {
        Theme::Auto => root.remove_attribute("data-theme"),
        Theme::Light | Theme::Dark => root.set_attribute("data-theme", theme.code()),
    };
}

/// Whether the reader asked for less motion.
pub fn still() -> bool {
    matches("(prefers-reduced-motion: reduce)")
}

fn matches(query: &str) -> bool {
    window().match_media(query).ok().flatten().is_some_and(|m| m.matches())
}

/// A count that goes up whenever what is drawn may look different: the system's theme or contrast, the
/// screen's density, or the page going to paper and back. `theme` is the reader's own choice.
pub fn looks(theme: Signal<Theme>) -> RwSignal<u32> {
    let count = RwSignal::new(0);
    let bump = move || count.update(|n| *n += 1);
    for query in ["(prefers-color-scheme: dark)", "(prefers-contrast: more)", "(forced-colors: active)"] {
        let Ok(Some(list)) = window().match_media(query) else { continue };
        // Lives as long as the page.
        let changed = Closure::<dyn FnMut()>::new(bump).into_js_value();
        list.set_onchange(Some(changed.unchecked_ref()));
        std::mem::forget(list);
    }
    Effect::new(move |_| {
        apply(theme.get());
        bump();
    });
    on_paper(theme, count);
    on_density(bump);
    count
}

/// Calls back when the screen's density changes: another zoom, or a window moved to another screen. A
/// media query holds for one density only, so each new density gets a query of its own.
fn on_density(changed: impl Fn() + Copy + 'static) {
    let known = window().device_pixel_ratio();
    let Ok(Some(list)) = window().match_media(&format!("(resolution: {known}dppx)")) else { return };
    let followed = Cell::new(false);
    let at_change = Closure::<dyn FnMut()>::new(move || {
        changed();
        // Coming back to this density reaches this query again; the next one is there already then.
        if !followed.replace(true) {
            on_density(changed);
        }
    });
    list.set_onchange(Some(at_change.into_js_value().unchecked_ref()));
    // Lives as long as the page.
    std::mem::forget(list);
}

/// Paper is light: switches over before printing and back after it.
fn on_paper(theme: Signal<Theme>, count: RwSignal<u32>) {
    let before = window_event_listener(ev::beforeprint, move |_| {
        apply(Theme::Light);
        count.update(|n| *n += 1);
    });
    let after = window_event_listener(ev::afterprint, move |_| {
        apply(theme.get_untracked());
        count.update(|n| *n += 1);
    });
    on_cleanup(move || {
        before.remove();
        after.remove();
    });
}
