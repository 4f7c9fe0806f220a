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
use crate::ui::components::parts::button;
use crate::ui::components::provenance::MarkLegend;
use crate::ui::components::rating::ShowTest;
use crate::ui::components::reasons::{Assumed, Cautions, Reasons, SettleFirst};
use crate::ui::components::tiles::Tiles;
use crate::ui::components::working::Marks;
use crate::ui::lazy::{self, Part};
use crate::ui::over::Over;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use crate::ui::sure;
use leptos::prelude::*;
use std::sync::Arc;

/// The advice as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(advice, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&text::ADVICE);
    page().learn(&text::SURE);
    Ok(view! { <ResultPage/> }.into_any())
}

/// The advice in full. A newer outcome is drawn afresh.
#[component]
fn ResultPage() -> impl IntoView {
    let page = page();
    let top = move || match page.outcome.get() {
        Some(shared) => view! { <Answer outcome=shared.0/> }.into_any(),
        None => view! {
            <div class="result">
                <h1 id=HEADING tabindex="-1">{page.key("page-way-result")}</h1>
                <p>{page.key("page-verdict-wait")}</p>
            </div>
        }
        .into_any(),
    };
    let some = Memo::new(move |_| page.outcome.with(Option::is_some));
    let foot = move || page.outcome.get().map(|shared| view! { <Foot outcome=shared.0/> });
    // The findings stay while newer outcomes come: a measurement is being put in there.
    // Hundreds of simulated years: for whoever asks.
    let wanted = RwSignal::new(false);
    view! {
        {top}
        {move || some.get().then(|| match wanted.get() {
            true => lazy::shown(|| Box::pin(sure::part())),
            false => view! {
                <div class="ways">{button(page.key("sure-name"), "button", "show-sure", move || wanted.set(true))}</div>
            }
            .into_any(),
        })}
        <div class="result">{move || some.get().then(|| view! { <Findings/> })} {foot}</div>
    }
}

#[component]
fn Answer(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    provide_context(Pair::of(&outcome));
    provide_context(Marks::of_all(page, outcome.candidates.iter().map(|c| c.candidate.id)));
    let verdict = outcome.advice.verdict.clone();
    view! {
        <div class="result" data-test="answer">
            <header>
                <p class="quiet">{page.key("page-way-result")}</p>
                <h1 id=HEADING tabindex="-1" data-test="answer-verdict">{move || page.say(&verdict)}</h1>
            </header>
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
