//! The head of the page: its name, the switches for units and theme.

use super::link::GoTo;
use crate::core::units::UnitSystem;
use crate::ui::browser::media::Theme;
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// The head of the page.
#[component]
pub fn Head() -> impl IntoView {
    let page = page();
    view! {
        <header class="head">
            <GoTo route=Route::Start class="name" test="home">{page.key("page-name")}</GoTo>
            <UnitSwitch/>
            <ThemeSwitch/>
        </header>
    }
}

/// US customary or SI.
#[component]
fn UnitSwitch() -> impl IntoView {
    let page = page();
    let choice = move |units: UnitSystem, words: &'static str, test: &'static str| {
        view! {
            <button
                type="button"
                data-test=test
                aria-pressed=move || (page.units() == units).to_string()
                on:click=move |_| page.set(|s| s.units = units)
            >
                {page.key(words)}
            </button>
        }
    };
    view! {
        <div class="switch" role="group" aria-label=page.key("page-units")>
            {choice(UnitSystem::Us, "page-units-us", "units-us")}
            {choice(UnitSystem::Si, "page-units-si", "units-si")}
        </div>
    }
}

/// Light, dark or as the system has it: one button that goes round, so that it fits a small screen.
#[component]
fn ThemeSwitch() -> impl IntoView {
    let page = page();
    let theme = move || page.settings.with(|s| s.theme);
    let next = move |_| {
        let at = Theme::ALL.iter().position(|&t| t == theme()).unwrap_or(0);
        page.set(|s| s.theme = Theme::ALL[(at + 1) % Theme::ALL.len()]);
    };
    let words = move || match theme() {
        Theme::Auto => page.key("page-theme-auto"),
        Theme::Light => page.key("page-theme-light"),
        Theme::Dark => page.key("page-theme-dark"),
    };
    view! {
        <button
            type="button"
            class="theme"
            data-test="theme"
            data-shown=move || theme().code()
            aria-label=move || format!("{}: {}", page.key("page-theme"), words())
            on:click=next
        >
            <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
                <circle cx="12" cy="12" r="8" fill="none" stroke="currentColor" stroke-width="2"></circle>
                <path class="half" d="M12 4a8 8 0 0 1 0 16z" fill="currentColor"></path>
            </svg>
            <span class="theme-word">{words}</span>
        </button>
    }
}
