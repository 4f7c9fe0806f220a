//! Moving the reader: focus and scroll after a page changes.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Puts the focus on an element and scrolls it into sight, once the page that holds it is drawn.
pub fn to(id: String) {
    request_animation_frame(move || {
        let Some(element) = document().get_element_by_id(&id) else { return };
        if let Some(html) = element.dyn_ref::<HtmlElement>() {
            // Elements that cannot take the focus ignore this.
            let _ = html.focus();
        }
        // The whole question, with its words above the field.
        element.closest(".question, .spot").ok().flatten().unwrap_or(element).scroll_into_view();
    });
}

/// Scrolls to the top and puts the focus on the page's heading.
pub fn to_heading() {
    request_animation_frame(move || {
        if let Some(heading) = document().get_element_by_id(HEADING)
            && let Some(html) = heading.dyn_ref::<HtmlElement>()
        {
            let _ = html.focus();
        }
        window().scroll_to_with_x_and_y(0.0, 0.0);
    });
}

/// The identity of each page's heading.
pub const HEADING: &str = "heading";
