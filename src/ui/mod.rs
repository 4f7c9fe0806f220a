//! The page.
use leptos::prelude::*;

/// Mounts the page.
pub fn start() {
    console_error_panic_hook::set_once();
    mount_to_body(|| view! { <main>"Tankful"</main> });
}
