//! The way in: what this is, what it asks for, and the first step.

use crate::ui::browser::focus::HEADING;
use crate::ui::components::link::GoTo;
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// The way in.
#[component]
pub fn StartPage() -> impl IntoView {
    let page = page();
    let begun = move || page.answers.with(|a| !a.is_empty());
    let first = Route::Start.next();
    view! {
        <div class="start">
            <h1 id=HEADING tabindex="-1">{page.key("page-start-heading")}</h1>
            <p class="lead">{page.key("page-start-lead")}</p>
            <div class="ways">
                <GoTo route=first class="button main" test="start">
                    {move || page.key(if begun() { "page-start-go-on" } else { "page-start-begin" })}
                </GoTo>
                <GoTo route=Route::Result class="button" test="start-result">
                    {move || page.key(if begun() { "page-start-see-yours" } else { "page-start-see-typical" })}
                </GoTo>
            </div>
            <ul class="promises">
                <li>{page.key("page-start-promise-time")}</li>
                <li>{page.key("page-start-promise-unknown")}</li>
                <li>{page.key("page-start-promise-private")}</li>
                <li>{page.key("page-start-promise-honest")}</li>
            </ul>
            <p class="caution">{page.key("page-caution-local")}</p>
        </div>
    }
}
