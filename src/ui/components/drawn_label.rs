//! A heater's energy label and nameplate, drawn to a design of our own: each figure is a field in the
//! place where it usually stands, with words on where to look for it.
//!
//! The drawing takes its fields as data ([`Spot`]), so that it serves the present heater's questions
//! and figures that are kept elsewhere alike.

use super::bound::Bound;
use super::number::NumberField;
use super::provenance::ProvenanceMark;
use crate::core::case::Provenance;
use crate::core::message::{Arg, Message};
use crate::ui::state::page;
use leptos::prelude::*;

/// What a spot takes.
#[derive(Clone)]
pub enum Takes {
    /// A number.
    Number(Bound),
    /// One of some options.
    Choice(Pick),
}

/// A choice among options.
#[derive(Clone)]
pub struct Pick {
    /// Stem of identities and `data-test`.
    pub code: &'static str,
    /// Codes of the options and their words.
    pub options: Vec<(&'static str, String)>,
    /// The code of the one chosen.
    pub chosen: Signal<Option<String>>,
    /// Chooses, or takes the choice back.
    pub choose: Callback<Option<&'static str>>,
}

/// One figure on a label.
#[derive(Clone)]
pub struct Spot {
    /// Key of its name; `.where` says where it usually stands.
    pub words: &'static str,
    /// Printed large.
    pub large: bool,
    /// Its field.
    pub takes: Takes,
    /// What the value in force rests on.
    pub from: Signal<Provenance>,
    /// What stands in while nothing is read, in words.
    pub taken: Signal<String>,
    /// What the model says against the figure.
    pub objection: Signal<Option<Message>>,
}

/// One of the two drawn: the energy label, or the nameplate.
pub struct Sheet {
    /// `tag` or `plate`: how it is drawn.
    pub looks: &'static str,
    /// The letter that marks it on the picture of the heater.
    pub letter: &'static str,
    /// Key of its name; `.where` says where on the heater it usually is.
    pub words: &'static str,
    /// Its figures, in the order read.
    pub spots: Vec<Spot>,
}

/// The drawing.
#[component]
pub fn DrawnLabel(sheets: Vec<Sheet>) -> impl IntoView {
    view! {
        <div class="label">
            <Heater/>
            {sheets.into_iter().map(one_sheet).collect_view()}
        </div>
    }
}

fn one_sheet(sheet: Sheet) -> impl IntoView {
    let page = page();
    let Sheet { looks, letter, words, spots } = sheet;
    view! {
        <div class="sheet-drawn" data-looks=looks data-test=format!("label-{looks}")>
            {if looks == "tag" { tag().into_any() } else { plate().into_any() }}
            <div class="sheet-head">
                <h3><span class="letter" aria-hidden="true">{letter}</span> {page.key(words)}</h3>
                <p class="quiet">{page.attr(words, "where")}</p>
            </div>
            {spots.into_iter().map(one_spot).collect_view()}
        </div>
    }
}

fn one_spot(spot: Spot) -> impl IntoView {
    let page = page();
    let Spot { words, large, takes, from, taken, objection } = spot;
    let code = match &takes {
        Takes::Number(bound) => bound.code.get_value(),
        Takes::Choice(pick) => String::from(pick.code),
    };
    let field = match takes {
        Takes::Number(bound) => view! { <NumberField bound/> }.into_any(),
        Takes::Choice(pick) => choice(pick).into_any(),
    };
    let assumed = move || from.get() == Provenance::Assumed;
    let taken = move || page.say(&Message::new("page-taken").with("value", Arg::Verbatim(taken.get())));
    view! {
        <div class="spot" class:large=large role="group" aria-labelledby=format!("{code}-name") data-test=format!("spot-{code}")>
            <div class="question-head">
                <strong id=format!("{code}-name")>{page.key(words)}</strong>
                <ProvenanceMark from/>
            </div>
            <p class="quiet">{page.attr(words, "where")}</p>
            {field}
            <p class="standing" id=format!("{code}-standing") hidden=move || !assumed()>{taken}</p>
            <p class="refusal" role="alert" data-test=format!("spot-{code}-objection")>
                {move || objection.get().map(|said| page.say(&said))}
            </p>
        </div>
    }
}

fn choice(pick: Pick) -> impl IntoView {
    let page = page();
    let Pick { code, options, chosen, choose } = pick;
    let codes: Vec<&'static str> = options.iter().map(|(code, _)| *code).collect();
    let changed = move |event| {
        let value = event_target_value(&event);
        choose.run(codes.iter().find(|code| **code == value).copied());
    };
    let one = move |(code, words): (&'static str, String)| {
        view! { <option value=code selected=move || chosen.get().as_deref() == Some(code)>{words}</option> }
    };
    view! {
        <select
            id=format!("{code}-field")
            data-test=format!("q-{code}-input")
            aria-labelledby=format!("{code}-name")
            prop:value=move || chosen.get().unwrap_or_default()
            on:change=changed
        >
            <option value="" selected=move || chosen.with(Option::is_none)>{page.key("spot-unreadable")}</option>
            {options.into_iter().map(one).collect_view()}
        </select>
    }
}

/// The heater with both on it, each marked with its letter.
#[component]
fn Heater() -> impl IntoView {
    view! {
        <svg class="label-heater" viewBox="0 0 120 190" aria-hidden="true">
            <path class="pipe" d="M44 28V4M76 28V4"></path>
            <rect class="body" x="20" y="26" width="80" height="150" rx="16"></rect>
            <path class="seam" d="M20 48h80M20 160h80M36 176v8M84 176v8"></path>
            <rect class="paper" x="36" y="62" width="48" height="50" rx="5"></rect>
            <path class="print" d="M43 94h34M43 102h22"></path>
            <rect class="metal" x="38" y="124" width="44" height="28" rx="3"></rect>
            <path class="print" d="M64 133h12M64 142h12"></path>
            <text x="60" y="84" text-anchor="middle">A</text>
            <text x="52" y="144" text-anchor="middle">B</text>
        </svg>
    }
}

/// Paper on a string: our drawing of an energy label. Lengths in per cent let it grow with its fields.
fn tag() -> impl IntoView {
    view! {
        <svg class="sheet-art" aria-hidden="true">
            <rect class="paper" width="100%" height="100%" rx="14"></rect>
            <rect class="band" width="100%" height="10" rx="5"></rect>
            <svg x="100%" overflow="visible">
                <path class="string" d="M-30 30C-22 14 -34 4 -20 -12"></path>
                <circle class="hole" cx="-30" cy="32" r="7"></circle>
            </svg>
        </svg>
    }
}

/// Metal with a rivet in each corner: our drawing of a nameplate.
fn plate() -> impl IntoView {
    let rivet = |x: &'static str, y: &'static str, across: i32, down: i32| {
        view! {
            <circle class="rivet" cx=x cy=y r="4" transform=format!("translate({across} {down})")></circle>
        }
    };
    view! {
        <svg class="sheet-art" aria-hidden="true">
            <rect class="metal" width="100%" height="100%" rx="6"></rect>
            {rivet("0", "0", 12, 12)}
            {rivet("100%", "0", -12, 12)}
            {rivet("0", "100%", 12, -12)}
            {rivet("100%", "100%", -12, -12)}
        </svg>
    }
}
