//! All candidates in one table, and what each of the others would need to be first.

use super::parts::heads;
use super::working::Figure;
use crate::core::candidates::CandidateId;
use crate::core::message::Message;
use crate::core::outcome::{CandidateOutcome, Fit, Outcome, RunnerUp};
use crate::core::units::{Quantity, Unit};
use crate::ui::reading;
use crate::ui::state::page;
use leptos::prelude::*;
use std::sync::Arc;

/// The key of a check's outcome.
pub const fn fit_key(fit: Fit) -> &'static str {
    match fit {
        Fit::Fits => "fit-fits",
        Fit::FitsWithWork => "fit-fits-with-work",
        Fit::MeasureFirst => "fit-measure-first",
        Fit::DoesNotFit => "fit-does-not-fit",
    }
}

/// Heads of the columns.
const HEADS: [&str; 10] = [
    "page-table-heater",
    "page-table-fits",
    "page-table-energy",
    "page-table-running",
    "page-table-upfront",
    "page-table-net-present-cost",
    "page-table-payback",
    "page-table-first-hour",
    "page-table-morning",
    "page-table-emission",
];

/// The table of all candidates.
#[component]
pub fn CandidatesTable(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let best = outcome.advice.best;
    let rows = outcome
        .candidates
        .iter()
        .map(|c| view! { <Row c=c.clone() best=c.candidate.id == best/> })
        .collect_view();
    view! {
        <section class="candidates" aria-labelledby="candidates-name">
            <h2 id="candidates-name">{page.key("page-table")}</h2>
            <p class="quiet">{page.key("page-table-about")}</p>
            <div class="scroll" tabindex="0" role="group" aria-labelledby="candidates-name">
                <table data-test="candidates">
                    {heads(HEADS.map(|key| page.key(key)).into())}
                    <tbody>{rows}</tbody>
                </table>
            </div>
            <RunnersUp runners=outcome.advice.runners_up.clone()/>
        </section>
    }
}

/// One candidate. The figures open their working.
#[component]
fn Row(c: CandidateOutcome, best: bool) -> impl IntoView {
    let page = page();
    let id = c.candidate.id;
    let fit = c.fit();
    let payback = reading::payback_cell(&c.cost);
    let carries = if c.morning.carries() { "page-table-carries" } else { "page-table-runs-cold" };
    let figure = move |q: Quantity, figure: &'static str| {
        view! { <td><FigureCell id q figure/></td> }
    };
    let tag = best.then(|| view! { <span class="tag">{page.key("page-table-best")}</span> });
    view! {
        <tr class:best=best data-test=format!("candidate-{}", id.code())>
            <th scope="row">{page.words_now().say(&c.candidate.name())} {tag}</th>
            <td><span class="fit" data-fit=fit_key(fit)>{page.key(fit_key(fit))}</span></td>
            {figure(Quantity::new(reading::energy_year_kwh(&c), Unit::KilowattHour), reading::ENERGY)}
            {figure(Quantity::new(reading::running_year(&c.cost), Unit::Dollar), reading::RUNNING)}
            {figure(Quantity::new(c.cost.upfront, Unit::Dollar), reading::UPFRONT)}
            {figure(Quantity::new(c.cost.net_present_cost, Unit::Dollar), reading::NET_PRESENT_COST)}
            <td><Figure value=Signal::derive(move || page.say(&payback)) candidate=id figure=reading::PAYBACK/></td>
            {figure(Quantity::new(c.label.model_first_hour.value * 1e3, Unit::Litre), reading::FIRST_HOUR)}
            <td><Figure value=Signal::stored(page.key(carries)) candidate=id figure=reading::MORNING/></td>
            {figure(Quantity::new(c.cost.emission_kg, Unit::Kilogram), reading::EMISSION)}
        </tr>
    }
}

/// A figure with its mark, in a cell.
#[component]
fn FigureCell(id: CandidateId, q: Quantity, figure: &'static str) -> impl IntoView {
    let page = page();
    view! { <Figure value=Signal::derive(move || page.quantity(q)) candidate=id figure/> }
}

/// The others, in order, with what each would need.
#[component]
fn RunnersUp(runners: Vec<RunnerUp>) -> impl IntoView {
    let page = page();
    let one = move |r: RunnerUp| {
        let extra =
            Message::new(if r.extra_cost >= 0.0 { "page-runner-dearer" } else { "page-runner-cheaper" })
                .with("heater", page.heater(r.id))
                .quantity("amount", r.extra_cost.abs(), Unit::Dollar);
        let needs = r.needs.into_iter().map(|n| view! { <li>{move || page.say(&n)}</li> }).collect_view();
        view! {
            <li data-test=format!("runner-{}", r.id.code())>
                <p><strong>{move || page.say(&extra)}</strong></p>
                <ul>{needs}</ul>
            </li>
        }
    };
    view! {
        <h3>{page.key("page-runners")}</h3>
        <ol class="runners">{runners.into_iter().map(one).collect_view()}</ol>
    }
}
