//! The installer's offer of the open job: heaters by the figures of their labels with an installed price, prices of
//! further work, labour; kept as templates to start the next one from.

mod heater;
mod prices;
mod templates;

use crate::core::case::HeaterKind;
use crate::job::Part;
use crate::job::offer::{Heater, MOST_HEATERS, Offer};
use crate::ui::browser::focus::HEADING;
use crate::ui::components::link::GoTo;
use crate::ui::components::parts::{Text, button};
use crate::ui::lazy::Part as Fetched;
use crate::ui::over::contents::heater_name;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// The offer as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Fetched {
    page().learn(&crate::text::JOBS);
    Ok(editor(page()))
}

/// Changes the open job's offer and keeps it.
fn change(page: Page, change: impl FnOnce(&mut Offer)) {
    page.alter(|job| change(&mut job.offer));
}

fn editor(page: Page) -> AnyView {
    let name = Text {
        words: "offer-name",
        test: "offer-name",
        most: crate::job::offer::LONGEST_NAME,
        lines: false,
        now: Signal::derive(move || page.offer.with(|o| o.name.clone())),
        write: Callback::new(move |text: String| {
            change(page, |o| o.name = crate::job::offer::tidy(&text, crate::job::offer::LONGEST_NAME));
        }),
    };
    let open = page.job.with_untracked(|j| j.sheet.text(Part::Name).to_owned());
    let of = (!open.is_empty()).then(|| view! { <p class="quiet">{open}</p> });
    view! {
        <div class="offer" data-test="offer">
            <h1 id=HEADING tabindex="-1">{page.key("offer-heading")}</h1>
            {of}
            <p class="lead">{page.key("offer-lead")}</p>
            {templates::chooser(page)}
            {name.field()}
            <h2>{page.key("offer-heaters")}</h2>
            {heaters(page)}
            <h2>{page.key("offer-work")}</h2>
            <p class="quiet">{page.key("offer-work-about")}</p>
            {prices::work(page)}
            {templates::keeper(page)}
            <div class="ways">
                <GoTo route=Route::Job class="button" test="offer-to-job">{page.key("job-heading")}</GoTo>
                <GoTo route=Route::Result class="button main" test="offer-to-result">{page.key("page-verdict-more")}</GoTo>
            </div>
        </div>
    }
    .into_any()
}

/// The heaters, one of them unfolded.
fn heaters(page: Page) -> AnyView {
    let count = Memo::new(move |_| page.offer.with(|o| o.heaters.len()));
    let unfolded = RwSignal::new(None::<usize>);
    let add = move || {
        let at = count.get_untracked();
        change(page, |o| o.heaters.push(Heater::new(HeaterKind::HeatPump)));
        unfolded.set(Some(at));
    };
    let more = move || {
        if count.get() < MOST_HEATERS {
            button(page.key("offer-add-heater"), "button main", "offer-add-heater", add)
        } else {
            view! { <p class="quiet">{page.key("offer-heaters-full")}</p> }.into_any()
        }
    };
    view! {
        {move || (0..count.get()).map(|at| card(page, at, unfolded)).collect_view()}
        <div class="ways">{more}</div>
    }
    .into_any()
}

fn card(page: Page, at: usize, unfolded: RwSignal<Option<usize>>) -> AnyView {
    let open = Memo::new(move |_| unfolded.get() == Some(at));
    let called = move || page.offer.with(|o| o.heaters.get(at).map(|h| heater_name(page, h)));
    let missing = Memo::new(move |_| {
        page.offer.with(|o| o.heaters.get(at).is_some_and(|h| h.wanting().next().is_some()))
    });
    let fold = move |_| unfolded.set((!open.get_untracked()).then_some(at));
    let inside = move || open.get().then(|| heater::fields(page, at, move || unfolded.set(None)));
    view! {
        <section class="offered-heater" data-test=format!("heater-{at}")>
            <button type="button" class="unfold" data-test=format!("heater-{at}-unfold") aria-expanded=move || open.get().to_string() on:click=fold>
                {called}
            </button>
            {move || missing.get().then(|| view! { <p class="refusal">{page.key("offer-wanting")}</p> })}
            {inside}
        </section>
    }
    .into_any()
}
