//! The advice in full: verdict, reasons, what to settle, the tanks, the charts, every candidate, what
//! was checked and what is taken for granted.

use crate::core::outcome::Outcome;
use crate::text;
use crate::ui::browser::focus::HEADING;
use crate::ui::charts::{money::MoneyChart, months::MonthsChart, morning::MorningChart, room::RoomChart};
use crate::ui::components::candidates::CandidatesTable;
use crate::ui::components::findings::Findings;
use crate::ui::components::link::GoTo;
use crate::ui::components::morning::BusiestMorning;
use crate::ui::components::pair::{Pair, PairPicker, pair};
use crate::ui::components::parts::{button, waiting};
use crate::ui::components::provenance::MarkLegend;
use crate::ui::components::rating::ShowTest;
use crate::ui::components::reasons::{Assumed, Cautions, Reasons, SettleFirst};
use crate::ui::components::tiles::Tiles;
use crate::ui::components::working::Marks;
use crate::ui::lazy::Part;
use crate::ui::over::Over;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use crate::ui::sure::{Drawing, Sure, Weighed};
use leptos::prelude::*;
use std::sync::Arc;
use std::time::Duration;

/// The advice as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(advice, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&text::ADVICE);
    page().learn(&text::SURE);
    Ok(view! { <ResultPage/> }.into_any())
}

/// What the page draws in a task of its own, in this order: the worker is at the futures meanwhile, and the answer is on
/// the screen before the rest is laid out.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
enum Drawn {
    Heading,
    Answer,
    All,
}

/// Draws the answer in the next task, and all in the one after a picture of it.
fn draw_on(drawn: RwSignal<Drawn>) {
    // Nothing is set once the page has gone.
    let set = move |to| {
        drawn.try_set(to);
    };
    let all = move || set_timeout(move || set(Drawn::All), Duration::ZERO);
    set_timeout(
        move || {
            set(Drawn::Answer);
            request_animation_frame(all);
        },
        Duration::ZERO,
    );
}

/// The advice in full. A newer outcome is drawn afresh.
#[component]
fn ResultPage() -> impl IntoView {
    let page = page();
    let drawing = Drawing::start(page);
    let drawn = RwSignal::new(Drawn::Heading);
    draw_on(drawn);
    let answer = Memo::new(move |_| drawn.get() >= Drawn::Answer);
    // The heading stays while outcomes come and go, and with it the focus of whoever is there.
    let heading = move || match page.outcome.get() {
        Some(shared) => page.say(&shared.0.advice.verdict),
        None => page.key("page-way-result"),
    };
    let top = move || match page.outcome.get().filter(|_| answer.get()) {
        Some(shared) => view! { <Answer outcome=shared.0/> }.into_any(),
        None => waiting(page.key("page-verdict-wait")),
    };
    let some = Memo::new(move |_| page.outcome.with(Option::is_some));
    let rest = Memo::new(move |_| some.get() && drawn.get() == Drawn::All);
    let foot =
        move || page.outcome.get().filter(|_| rest.get()).map(|shared| view! { <Foot outcome=shared.0/> });
    // What would change the advice is found below, and orders what is taken for granted above.
    provide_context(Weighed(RwSignal::new(None)));
    let test = move || some.get().then_some("answer-verdict");
    // The findings stay while newer outcomes come: a measurement is being put in there.
    let findings = move || rest.get().then(|| view! { <Findings/> });
    view! {
        <div class="result">
            <header>
                <p class="quiet">{page.key("page-way-result")}</p>
                <h1 id=HEADING tabindex="-1" data-test=test>{heading}</h1>
            </header>
            {top}
        </div>
        {move || rest.get().then(|| view! { <Sure drawing/> })}
        <div class="result">{findings} {foot}</div>
    }
}

#[component]
fn Answer(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    provide_context(Pair::of(&outcome));
    provide_context(Marks::of_all(page, outcome.candidates.iter().map(|c| c.candidate.id)));
    view! {
        <div class="result" data-test="answer">
            <Tiles outcome=outcome.clone()/>
            <div class="quiet">
                <p>{page.key("page-working-hint")}</p>
                <MarkLegend/>
            </div>
            <Reasons outcome=outcome.clone()/>
            <SettleFirst outcome=outcome.clone()/>
            <Compared/>
            <CandidatesTable outcome=outcome.clone()/>
        </div>
    }
}

/// What is taken for granted, and the cautions.
#[component]
fn Foot(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let print = move |_| {
        // A browser that cannot print says so itself.
        let _ = window().print();
    };
    view! {
        {extras(page, &outcome)}
        <Assumed/>
        <Cautions outcome/>
        <div class="ways">
            {button(page.key("send-button"), "button main", "send", move || page.over.set(Some(Over::Send { back: false })))}
            <GoTo route=Route::Work class="button" test="to-work">{page.key("work-link")}</GoTo>
            <GoTo route=Route::After class="button" test="to-after">{page.key("result-after")}</GoTo>
            <button type="button" class="button" data-test="print" on:click=print>{page.key("page-print")}</button>
        </div>
    }
}

/// Work that the offer prices and nothing asks for so far.
fn extras(page: Page, outcome: &Outcome) -> Option<AnyView> {
    let all = outcome.advice.extras.clone();
    (!all.is_empty()).then(|| {
        let all = all.into_iter().map(|m| view! { <li>{move || page.say(&m)}</li> }).collect_view();
        view! {
            <section aria-labelledby="extras-name" data-test="extras">
                <h2 id="extras-name">{page.key("offer-extras")}</h2>
                <p class="quiet">{page.attr("offer-extras", "about")}</p>
                <ul>{all}</ul>
            </section>
        }
        .into_any()
    })
}

/// Two heaters beside each other: the tanks, then the charts.
#[component]
fn Compared() -> impl IntoView {
    let page = page();
    view! {
        <section class="compared" aria-labelledby="compared-name">
            <h2 id="compared-name">{page.key("page-pair")}</h2>
            <PairPicker/>
            <div class="ways"><ShowTest candidate=pair().chosen/></div>
            <BusiestMorning/>
            <div class="charts">
                <MorningChart/>
                <MoneyChart/>
                <MonthsChart/>
                <RoomChart/>
            </div>
        </section>
    }
}
