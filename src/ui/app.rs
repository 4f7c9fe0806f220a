//! The frame around every page: the head, notices, the page itself, the verdict, the foot.

use super::after;
use super::browser::{advice, focus, history, media, offline};
use super::components::chart_looks::Looks;
use super::components::head::Head;
use super::components::here::Here;
use super::components::kept::YourAnswers;
use super::components::notices::Notices;
use super::components::offline::OfflineLine;
use super::components::verdict::VerdictBar;
use super::components::way::Way;
use super::components::working::WorkingSheet;
use super::jobs;
use super::lazy::shown;
use super::over::{Over, OverSheet};
use super::pages::{
    asked, job, jobs as job_list, offer, onsite, result, section::SectionPage, start::StartPage, work,
};
use super::route::Route;
use super::state::{Page, page};
use leptos::prelude::*;

/// The page.
#[component]
pub fn App() -> impl IntoView {
    let page = Page::open();
    provide_context(page);
    provide_context(Looks(media::looks(Signal::derive(move || page.settings.with(|s| s.theme)))));
    history::follow(page.route);
    history::follow_fragment(move |fragment| page.over.set(Some(Over::Open(fragment))));
    jobs::follow(page);
    advice::follow(page);
    follow_route(page);
    let standing = offline::follow(page);
    view! {
        <a class="skip" href="#heading">{page.key("page-skip")}</a>
        <Head/>
        <div class="frame" data-page=move || page.route.get().code()>
            <Way/>
            <main id="main">
                <Here/>
                <Notices/>
                <Shown/>
            </main>
            <VerdictBar/>
        </div>
        <footer class="foot">
            <YourAnswers/>
            <p class="quiet">{page.key("page-foot-private")}</p>
            <OfflineLine standing/>
            <p class="quiet">{page.key("page-foot-code")}</p>
        </footer>
        <WorkingSheet/>
        <OverSheet/>
    }
}

/// The page of the route. Moving to a question within the same section does not draw it anew.
#[component]
fn Shown() -> impl IntoView {
    let page = page();
    let kind = Memo::new(move |_| match page.route.get() {
        Route::Section(section, _) => Route::Section(section, None),
        other => other,
    });
    move || match kind.get() {
        Route::Start => view! { <StartPage/> }.into_any(),
        Route::Section(section, _) => view! { <SectionPage section/> }.into_any(),
        Route::Result => shown(|| Box::pin(result::part())),
        Route::Jobs => shown(|| Box::pin(job_list::part())),
        Route::Job => shown(|| Box::pin(job::part())),
        Route::Asked => shown(|| Box::pin(asked::part())),
        Route::Offer => shown(|| Box::pin(offer::part())),
        Route::Onsite => shown(|| Box::pin(onsite::part())),
        Route::Work => shown(|| Box::pin(work::part())),
        Route::After => shown(|| Box::pin(after::part())),
        Route::Report => shown(|| Box::pin(after::printed_part())),
    }
}

/// After each change of page: its title, and the reader's place on it.
fn follow_route(page: Page) {
    Effect::new(move |before: Option<Route>| {
        let route = page.route.get();
        document().set_title(&page.key(match route {
            Route::Start => "page-title-start",
            Route::Section(..) => "page-title-section",
            Route::Result => "page-title-result",
            Route::Asked => "page-title-section",
            Route::Jobs
            | Route::Job
            | Route::Offer
            | Route::Onsite
            | Route::Work
            | Route::After
            | Route::Report => "page-title-jobs",
        }));
        match (before, route) {
            // The first page of a visit is left as the browser opens it, unless it goes to a question.
            (_, Route::Section(section, Some(id))) => {
                page.unfold_for(section, id);
                focus::to(format!("{}-field", id.code()));
            }
            (Some(before), _) if before != route => focus::to_heading(),
            _ => {}
        }
        route
    });
}
