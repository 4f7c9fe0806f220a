//! How a heater does in the rating test: label against model, the test's day, and a heat pump's
//! coefficient of performance. The worker runs the test when somebody looks; results stay by label.

use super::parts::{heads, waiting};
use super::provenance::ProvenanceMark;
use super::tank::WarmthLegend;
use crate::core::candidates::{CandidateId, Label, offered};
use crate::core::case::Provenance;
use crate::core::label::Rated;
use crate::core::label::rated::{Compared, Parameter, RatedHeater};
use crate::core::message::{Arg, Message};
use crate::core::units::Quantity;
use crate::job::complete::complete;
use crate::job::offer::Figure;
use crate::job::questions::Id;
use crate::ui::charts::{cop::CopChart, rating::RatingChart};
use crate::ui::errands::Came;
use crate::ui::lazy;
use crate::ui::model::Asked;
use crate::ui::reading;
use crate::ui::state::{Page, page};
use crate::worker::errands;
use leptos::prelude::*;
use std::sync::Arc;

/// The label of a heater: the present one's as the answers have it now, another's as last compared.
pub fn label_of(page: Page, candidate: CandidateId) -> Memo<Option<Label>> {
    Memo::new(move |_| {
        if candidate == CandidateId::Keep {
            let all = page.answers.with(|answers| offered::candidates(&complete(answers)));
            return all.into_iter().next().map(|c| c.label);
        }
        page.outcome.with(|o| o.as_ref()?.0.of(candidate).map(|c| c.candidate.label.clone()))
    })
}

/// How far the test of a label is.
#[derive(Clone, PartialEq)]
pub enum Tested {
    /// Under way.
    NotYet,
    /// What the worker needs for it could not be fetched.
    Missing,
    /// It ran.
    Ran(Arc<Rated>),
}

/// The test of a label, asked for as soon as the label is known.
pub fn test_of(page: Page, label: Memo<Option<Label>>) -> Memo<Tested> {
    let ask = Memo::new(move |_| label.get().map(|label| errands::to_rate(&label)));
    Effect::new(move |_| {
        if let Some(ask) = ask.get() {
            page.send_errand(ask);
        }
    });
    Memo::new(move |_| match ask.get().map(|ask| page.errand(&ask)) {
        None | Some(Came::NotYet) => Tested::NotYet,
        Some(Came::Missing) => Tested::Missing,
        Some(Came::Done(bytes)) => {
            errands::rated(&bytes).map_or(Tested::Missing, |rated| Tested::Ran(Arc::new(rated)))
        }
    })
}

/// A button that shows how a heater does in the test.
#[component]
pub fn ShowTest(#[prop(into)] candidate: Signal<CandidateId>) -> impl IntoView {
    let page = page();
    let show = move |_| {
        page.asked.set(Some(Asked { candidate: candidate.get_untracked(), figure: Some(reading::TEST) }));
    };
    let words = move || page.say(&Message::new("test-show").with("heater", page.heater(candidate.get())));
    view! {
        <button type="button" class="button" data-test="show-test" on:click=show>{words}</button>
    }
}

/// How a heater does in the test.
#[component]
pub fn RatingTest(candidate: CandidateId) -> impl IntoView {
    let page = page();
    let label = label_of(page, candidate);
    let tested = test_of(page, label);
    let again = move || {
        if let Some(label) = label.get_untracked() {
            page.send_errand(errands::to_rate(&label));
        }
    };
    view! {
        <div class="rating" data-test="rating" aria-busy=move || tested.with(|t| *t == Tested::NotYet).to_string()>
            <p>{page.key("test-about")}</p>
            {move || match tested.get() {
                Tested::Ran(rated) => outcome(page, candidate, &rated).into_any(),
                Tested::Missing => lazy::missing(again),
                Tested::NotYet => waiting(page.key("test-wait")),
            }}
        </div>
    }
}

fn outcome(page: Page, candidate: CandidateId, rated: &Rated) -> impl IntoView {
    let says = rated.says.clone();
    let says = says.into_iter().map(|said| view! { <p class="refusal">{move || page.say(&said)}</p> });
    let heater = rated.heater.clone().map(|RatedHeater { compared, parameters, run, cop }| {
        view! {
            {against(page, candidate, compared)}
            <RatingChart run=Arc::new(run)/>
            <WarmthLegend of="test-scale"/>
            {cop.map(|map| view! { <CopChart map=Arc::new(map)/> })}
            {made_of(page, parameters)}
        }
    });
    view! { {says.collect_view()} {heater} }
}

/// What a label's figure rests on: the answer to its question for the present heater; what the installer typed, or
/// left to what is typical of the class, for an offered one; for a class it is typical. `None` for what is
/// worked out from those.
fn rests_on(page: Page, candidate: CandidateId, name: &str) -> Option<Provenance> {
    let (id, figure) = match name {
        "label-figure-factor" => (Id::HeaterFactor, Figure::Factor),
        "label-figure-first-hour" => (Id::HeaterFirstHour, Figure::FirstHour),
        _ => return None,
    };
    if candidate == CandidateId::Keep {
        return Some(page.provenance(id));
    }
    let place = CandidateId::OFFERS.iter().position(|offered| *offered == candidate);
    let typed = page.offer.with_untracked(|o| place.and_then(|at| o.heaters.get(at)?.get(figure)).is_some());
    Some(if typed { Provenance::Answered } else { Provenance::Assumed })
}

/// Label against model.
fn against(page: Page, candidate: CandidateId, rows: Vec<Compared>) -> impl IntoView {
    let row = move |row: Compared| {
        let Compared { name, label, model, residual, met } = row;
        let mark = match rests_on(page, candidate, &name) {
            Some(from) => view! { " " <ProvenanceMark from=Signal::stored(from)/> }.into_any(),
            None if label.is_some() => {
                view! { " " <small>{page.key("label-from-worked-out")}</small> }.into_any()
            }
            None => ().into_any(),
        };
        let difference = {
            let label = label.clone();
            move || match (&label, residual) {
                (Some(Arg::Quantity(q)), Some(by)) => page.quantity(Quantity::new(by, q.unit)),
                (Some(_), Some(by)) => page.words().number(by, 2),
                (Some(_), None) if met => page.key("test-same"),
                (Some(_), None) => page.key("test-other"),
                (None, _) => page.key("page-nothing"),
            }
        };
        let label = move || match &label {
            Some(arg) => page.words().arg(arg),
            None => page.key("test-not-said"),
        };
        view! {
            <tr class:unmet=!met>
                <th scope="row">{page.key(&name)}</th>
                <td>{label} {mark}</td>
                <td>{move || page.words().arg(&model)}</td>
                <td>{difference} {(!met).then(|| view! { " " <strong>{page.key("test-unmet")}</strong> })}</td>
            </tr>
        }
    };
    let keys = ["test-figure", "test-label", "test-model", "test-difference"];
    view! {
        <h3 id="against-name">{page.key("test-against")}</h3>
        <div class="scroll" tabindex="0" role="group" aria-labelledby="against-name">
            <table data-test="against">
                {heads(keys.map(|key| page.key(key)).into())}
                <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
            </table>
        </div>
    }
}

/// The model's parameters, folded.
fn made_of(page: Page, rows: Vec<Parameter>) -> impl IntoView {
    let row = move |Parameter { name, value, calibrated }: Parameter| {
        let from = if calibrated { "test-from-label" } else { "test-from-class" };
        view! {
            <tr>
                <th scope="row">{page.key(&name)}</th>
                <td>{move || page.words().arg(&value)}</td>
                <td>{page.key(from)}</td>
            </tr>
        }
    };
    view! {
        <details class="data" data-test="made-of">
            <summary>{page.key("test-made-of")}</summary>
            <table><tbody>{rows.into_iter().map(row).collect_view()}</tbody></table>
        </details>
    }
}
