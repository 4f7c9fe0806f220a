//! Which job is open: one quiet line above the page, for whoever keeps more than their own.

use super::link::GoTo;
use crate::ui::browser::jobs;
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// The line. Somebody with one nameless job never sees it.
#[component]
pub fn Here() -> impl IntoView {
    let page = page();
    let name = Memo::new(move |_| page.job.with(|j| j.sheet.name.clone()));
    let many = Memo::new(move |_| {
        page.listed.track();
        page.open.track();
        jobs::ids().len() > 1
    });
    let shown = Memo::new(move |_| {
        page.route.get() != Route::Jobs
            && (many.get() || page.job.with(|j| !j.sheet.name.is_empty() || !j.sheet.offer.is_empty()))
    });
    let called = move || name.with(|n| if n.is_empty() { page.key("jobs-nameless") } else { n.clone() });
    move || {
        shown.get().then(|| {
            view! {
                <nav class="here-line" aria-label=page.key("jobs-here") data-test="here">
                    <GoTo route=Route::Job test="here-job">{called}</GoTo>
                    <GoTo route=Route::Jobs test="here-jobs">{page.key("jobs-link")}</GoTo>
                </nav>
            }
        })
    }
}
