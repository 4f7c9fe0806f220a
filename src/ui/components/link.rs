//! A link to another page of this one: a real link, so that it can be copied and opened in a new tab,
//! but followed without loading anything.

use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// A link to another page. `test` becomes its `data-test`.
#[component]
pub fn GoTo(
    route: Route,
    #[prop(into, default = String::new())] class: String,
    #[prop(into)] test: String,
    children: Children,
) -> impl IntoView {
    let page = page();
    let follow = move |event: MouseEvent| {
        // With a key held or another button the browser opens a tab or window: leave that to it.
        if event.ctrl_key() || event.meta_key() || event.shift_key() || event.button() != 0 {
            return;
        }
        event.prevent_default();
        page.go(route);
    };
    view! {
        <a href=route.address() class=class data-test=test on:click=follow>
            {children()}
        </a>
    }
}
