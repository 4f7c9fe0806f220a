//! "Show the working": how a figure came about, on request, for every figure.

use super::provenance::ProvenanceMark;
use super::rating::{RatingTest, ShowTest};
use crate::core::candidates::CandidateId;
use crate::core::case::{Input, Provenance};
use crate::core::outcome::Working;
use crate::text;
use crate::ui::lazy::{Part, shown};
use crate::ui::model::Asked;
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::html;
use leptos::prelude::*;
use std::borrow::Cow;
use std::sync::Arc;

/// A figure that opens its working, with the mark of what it rests on.
#[component]
pub fn Figure(
    #[prop(into)] value: Signal<String>,
    candidate: CandidateId,
    figure: &'static str,
) -> impl IntoView {
    let page = page();
    let from = use_context::<Marks>().and_then(|m| m.of(candidate, figure));
    let mark = from.map(|from| view! { <ProvenanceMark from=Signal::stored(from)/> });
    view! {
        <span class="with-mark">
            <button
                type="button"
                class="figure"
                data-test=format!("figure-{}-{figure}", candidate.code())
                title=page.key("page-working-show")
                on:click=move |_| page.asked.set(Some(Asked { candidate, figure: Some(figure) }))
            >
                {value}
            </button>
            {mark}
        </span>
    }
}

/// What each figure of each heater rests on, from context on the result page.
#[derive(Clone)]
pub struct Marks(Arc<Vec<Mark>>);

/// Whose figure, its name, and what it rests on.
type Mark = (CandidateId, Cow<'static, str>, Provenance);

impl Marks {
    /// The marks of every figure that has a working.
    pub fn of_all(page: Page, candidates: impl Iterator<Item = CandidateId>) -> Marks {
        let mut marks = Vec::new();
        for id in candidates {
            marks.extend(page.workings(id).into_iter().map(|w| (id, w.name, w.from)));
        }
        Marks(Arc::new(marks))
    }

    fn of(&self, candidate: CandidateId, figure: &str) -> Option<Provenance> {
        self.0.iter().find(|(id, name, _)| *id == candidate && name == figure).map(|(.., from)| *from)
    }
}

/// The sheet on which workings are shown, over the page.
#[component]
pub fn WorkingSheet() -> impl IntoView {
    let page = page();
    let sheet = NodeRef::<html::Dialog>::new();
    Effect::new(move |_| {
        let (Some(dialog), asked) = (sheet.get(), page.asked.get()) else { return };
        match asked {
            // Opening one that is open throws; closing one that is closed does nothing.
            Some(_) if !dialog.open() => drop(dialog.show_modal()),
            Some(_) => {}
            None => dialog.close(),
        }
    });
    view! {
        <dialog node_ref=sheet class="sheet" data-test="working" aria-labelledby="working-name" on:close=move |_| page.asked.set(None)>
            <form method="dialog">
                <button class="button" data-test="working-close">{page.key("page-working-close")}</button>
            </form>
            {move || page.asked.get().map(|_| shown(|| Box::pin(part())))}
        </dialog>
    }
}

/// What is asked for, as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(advice, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&text::ADVICE);
    let asked = page().asked.get_untracked();
    Ok(asked.map(|asked| view! { <Workings asked/> }).into_any())
}

#[component]
fn Workings(asked: Asked) -> impl IntoView {
    let page = page();
    let candidate = asked.candidate;
    let name = view! { <h2 id="working-name">{move || page.say(&page.heater(candidate))}</h2> };
    if asked.figure == Some(reading::TEST) {
        return view! { {name} <RatingTest candidate/> }.into_any();
    }
    let all = page.workings(candidate);
    let shown: Vec<Working> =
        all.into_iter().filter(|w| asked.figure.is_none_or(|figure| w.name == figure)).collect();
    let none = shown.is_empty().then(|| view! { <p>{page.key("page-working-none")}</p> });
    view! {
        {name}
        {shown.into_iter().map(|working| view! { <OneWorking working/> }).collect_view()}
        {none}
        <div class="ways"><ShowTest candidate/></div>
    }
    .into_any()
}

/// One working: the relation, what went in and what each rests on, the result, the source.
#[component]
fn OneWorking(working: Working) -> impl IntoView {
    let page = page();
    let Working { name, result, from, relation, inputs, source } = working;
    view! {
        <section class="working">
            <h3>{page.key(&name)}</h3>
            <p class="result">
                <strong>{move || page.words().arg(&result)}</strong> <ProvenanceMark from=Signal::stored(from)/>
            </p>
            <p>{page.key(&relation)}</p>
            <table>
                <caption class="quiet">{page.key("page-working-inputs")}</caption>
                <tbody>{inputs.into_iter().map(|input| view! { <OneInput input/> }).collect_view()}</tbody>
            </table>
            <p class="quiet">{page.key("page-working-source")} " " {page.key(&source)}</p>
        </section>
    }
}

/// One figure that went in.
#[component]
fn OneInput(input: Input) -> impl IntoView {
    let page = page();
    let Input { label, value, from } = input;
    view! {
        <tr>
            <th scope="row">{page.key(&label)}</th>
            <td>{move || page.words().arg(&value)}</td>
            <td><ProvenanceMark from=Signal::stored(from)/></td>
        </tr>
    }
}
