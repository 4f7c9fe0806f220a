//! "Read it off the label": the present heater's questions as figures on its drawn label. While it is
//! unfolded, these questions are asked there and not in the section's list.

use super::bound::Bound;
use super::drawn_label::{DrawnLabel, Pick, Sheet, Spot, Takes};
use super::question::{option_key, value_words};
use super::rating::{ShowTest, Tested, label_of, test_of};
use crate::core::candidates::CandidateId;
use crate::core::case::Provenance;
use crate::core::message::{Arg, Message};
use crate::job::answers::Answers;
use crate::job::questions::{Id, Kind, Question, Value};
use crate::text;
use crate::ui::lazy::{Part, shown};
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// A figure of the present heater, and the key of its words on the label.
type Asked = (Id, &'static str);

/// On the energy label.
const TAG: [Asked; 4] = [
    (Id::HeaterKind, "spot-fuel"),
    (Id::HeaterFactor, "spot-factor"),
    (Id::LabelScale, "spot-scale"),
    (Id::HeaterFirstHour, "spot-first-hour"),
];
/// On the nameplate.
const PLATE: [Asked; 3] =
    [(Id::HeaterVolume, "spot-volume"), (Id::HeaterInput, "spot-input"), (Id::HeaterAge, "spot-made")];

/// Whether a question is asked on the label.
pub fn asks(id: Id) -> bool {
    TAG.iter().chain(&PLATE).any(|(asked, _)| *asked == id)
}

/// Whether somebody has read a label before: then it is shown unfolded.
pub fn was_read(answers: &Answers) -> bool {
    [Id::HeaterFactor, Id::HeaterFirstHour, Id::HeaterInput].iter().any(|&id| answers.get(id).is_some())
}

/// The label of the present heater, folded behind a button.
#[component]
pub fn PresentLabel() -> impl IntoView {
    let page = page();
    let open = Memo::new(move |_| page.job.with(|j| j.label));
    view! {
        <section class="read-label" aria-labelledby="read-label-name">
            <h2 id="read-label-name">{page.key("label-read")}</h2>
            <p>{page.attr("label-read", "about")}</p>
            <button
                type="button"
                class="unfold"
                aria-expanded=move || open.get().to_string()
                aria-controls="read-label"
                data-test="read-label"
                on:click=move |_| page.job.update(|j| j.label = !j.label)
            >
                {move || page.key(if open.get() { "label-fold" } else { "label-unfold" })}
            </button>
            <div id="read-label">{move || open.get().then(|| shown(|| Box::pin(part())))}</div>
        </section>
    }
}

/// The unfolded label, as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(label, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&text::LABEL);
    Ok(view! { <Unfolded/> }.into_any())
}

#[component]
fn Unfolded() -> impl IntoView {
    let page = page();
    let tested = test_of(page, label_of(page, CandidateId::Keep));
    let objections = Memo::new(move |_| {
        let says = if let Tested::Ran(rated) = tested.get() { rated.says.clone() } else { Vec::new() };
        page.answers.with(|answers| {
            says.into_iter().filter_map(|said| Some((placed(answers, &said)?, said))).collect::<Vec<_>>()
        })
    });
    let spots = |asked: &[Asked]| asked.iter().map(|&asked| spot(page, asked, objections)).collect();
    let sheets = vec![
        Sheet { looks: "tag", letter: "A", words: "label-tag", spots: spots(&TAG) },
        Sheet { looks: "plate", letter: "B", words: "label-plate", spots: spots(&PLATE) },
    ];
    view! {
        <DrawnLabel sheets/>
        <p class="quiet">{page.key("label-conditions")}</p>
        <div class="ways"><ShowTest candidate=CandidateId::Keep/></div>
    }
}

/// What the model says against the label, with the figure to say it at.
type Objections = Memo<Vec<(Id, Message)>>;

/// The figure to say it at: the one it is about, or where that was not read, the first that was.
fn placed(answers: &Answers, said: &Message) -> Option<Id> {
    let names = |part: &str| {
        let figure = |arg: &Arg| matches!(arg, Arg::Message(m) if m.id.contains(part));
        said.id.contains(part) || said.args.iter().any(|(_, arg)| figure(arg))
    };
    let about = ABOUT.iter().find(|(part, _)| names(part)).map(|(_, id)| *id);
    let figures = ABOUT.iter().map(|(_, id)| *id).chain([Id::HeaterKind]);
    about.into_iter().chain(figures).find(|&id| answers.get(id).is_some())
}

/// Parts of messages' names and the figures they are about.
const ABOUT: [(&str, Id); 4] = [
    ("first-hour", Id::HeaterFirstHour),
    ("factor", Id::HeaterFactor),
    ("input", Id::HeaterInput),
    ("volume", Id::HeaterVolume),
];

/// A question of the present heater as a spot on the label.
fn spot(page: Page, (id, words): Asked, objections: Objections) -> Spot {
    let question = Question::get(id);
    let year = f64::from(js_sys::Date::new_0().get_full_year());
    let taken = move || match page.resolved.with(|r| r.get(id).map(|k| k.value.clone())) {
        Some(Value::Number(age)) if id == Id::HeaterAge => (year - age.value).round().to_string(),
        Some(value) => value_words(page, id, &value),
        None => String::new(),
    };
    let takes = match question.kind {
        Kind::Choice(options) => Takes::Choice(Pick {
            code: id.code(),
            options: options.iter().map(|&option| (option, page.key(&option_key(id, option)))).collect(),
            chosen: Signal::derive(move || {
                page.answers.with(|a| match a.get(id).map(|a| &a.value) {
                    Some(Value::Code(code)) => Some(code.clone()),
                    _ => None,
                })
            }),
            choose: Callback::new(move |option: Option<&'static str>| match option {
                // An option of the list is never refused.
                Some(option) => drop(page.answer(id, Value::code(option), Provenance::Measured)),
                None => page.forget(id),
            }),
        }),
        _ => {
            let bound = Bound::question(page, question).off_label();
            Takes::Number(if id == Id::HeaterAge { bound.as_year(year) } else { bound })
        }
    };
    Spot {
        words,
        large: id == Id::HeaterFactor,
        takes,
        from: Signal::derive(move || page.provenance(id)),
        taken: Signal::derive(taken),
        objection: Signal::derive(move || {
            objections.with(|all| all.iter().find(|(at, _)| *at == id).map(|(_, said)| said.clone()))
        }),
    }
}
