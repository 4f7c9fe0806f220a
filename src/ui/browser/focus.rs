//! Moving the reader: focus and scroll after a page changes.

use leptos::prelude::*;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

thread_local! {
    /// What the reader was to be moved to while it was not there yet: its part of the page is being fetched.
    static AWAITED: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// Puts the focus on an element and scrolls it into sight, once the page that holds it is drawn.
pub fn to(id: String) {
    request_animation_frame(move || {
        let Some(element) = document().get_element_by_id(&id) else {
            return AWAITED.set(Some(id));
        };
        AWAITED.set(None);
        if let Some(html) = element.dyn_ref::<HtmlElement>() {
            // Elements that cannot take the focus ignore this.
            let _ = html.focus();
        }
        if id == HEADING {
            window().scroll_to_with_x_and_y(0.0, 0.0);
        } else {
            // The whole question, with its words above the field.
            element.closest(".question, .spot").ok().flatten().unwrap_or(element).scroll_into_view();
        }
    });
}

/// Scrolls to the top and puts the focus on the page's heading.
pub fn to_heading() {
    to(HEADING.to_owned());
}

/// A part of the page came: moves the reader to what was not there before.
pub fn part_came() {
    if let Some(id) = AWAITED.take() {
        to(id);
    }
}

/// The identity of each page's heading.
pub const HEADING: &str = "heading";
