//! One line at the foot of the page: whether it works with no signal, and if not, why.

use crate::ui::browser::offline::Standing;
use crate::ui::state::page;
use leptos::prelude::*;

/// The line. It is announced when it changes.
#[component]
pub fn OfflineLine(standing: Standing) -> impl IntoView {
    let page = page();
    view! {
        <p class="quiet" role="status" data-test="offline" data-standing=standing>
            {move || page.key(standing.get())}
        </p>
    }
}
