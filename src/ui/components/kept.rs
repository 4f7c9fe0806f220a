//! The reader's answers as their own: save to a file, load from one, start over.

use crate::ui::state::page;
use leptos::prelude::*;

/// Save, load, start over.
#[component]
pub fn YourAnswers() -> impl IntoView {
    let page = page();
    view! {
        <section class="kept" aria-labelledby="kept">
            <h2 id="kept">{page.key("page-kept")}</h2>
            <p class="quiet">{page.key("page-kept-about")}</p>
            <div class="ways">
                <button type="button" class="button" data-test="start-over" on:click=move |_| page.start_over()>
                    {page.key("page-kept-clear")}
                </button>
            </div>
        </section>
    }
}
