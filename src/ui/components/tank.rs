//! The tank in section: its layers of temperature, what heats it, and what comes out of the shower head.

use super::pair::{Pair, pair};
use super::warmth;
use crate::core::case::HeaterKind;
use crate::core::message::Message;
use crate::core::outcome::{CandidateOutcome, Morning};
use crate::core::units::{Quantity, Unit};
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// Top of the water in the picture.
const TOP: f64 = 64.0;
/// Height of the water in the picture.
const HEIGHT: f64 = 200.0;
/// Water at least this warm counts as hot, °C: a shower's use temperature.
const HOT_C: f32 = 40.0;

/// A moment of a morning.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Moment {
    /// Layers from the bottom up, °C.
    layers_c: Vec<f32>,
    /// At the shower head, °C; `None` when nobody draws.
    tap_c: Option<f32>,
    /// Power of heat pump, elements or burner, W.
    power_w: f32,
}

/// A morning's entry; the last one for a time after its end.
pub fn moment(m: &Morning, at: usize) -> Moment {
    let last = m.power_w.len().saturating_sub(1);
    let at = at.min(last);
    let layers = m.layers_c.get(at * m.layers..(at + 1) * m.layers).unwrap_or_default();
    Moment {
        layers_c: layers.to_vec(),
        tap_c: m.tap_c.get(at).copied().filter(|&c| c > 0.0),
        power_w: m.power_w.get(at).copied().unwrap_or(0.0),
    }
}

fn look(pair: Pair, beside: bool, at: usize) -> Moment {
    pair.with(|a, b| moment(if beside { &b.morning } else { &a.morning }, at)).unwrap_or_default()
}

fn kind(pair: Pair, beside: bool) -> HeaterKind {
    let of = |c: &CandidateOutcome| c.candidate.label.kind;
    pair.with(|a, b| if beside { of(b) } else { of(a) }).unwrap_or(HeaterKind::Electric)
}

/// One tank of the pair at a moment of the morning.
#[component]
pub fn TankPicture(at: Signal<usize>, beside: bool) -> impl IntoView {
    let page = page();
    let pair = pair();
    let now = Memo::new(move |_| look(pair, beside, at.get()));
    let kind = Memo::new(move |_| kind(pair, beside));
    let count = Memo::new(move |_| now.with(|m| m.layers_c.len()));
    let clip = if beside { "tank-beside" } else { "tank-chosen" };
    let layers = move || {
        let n = count.get();
        (0..n).map(|i| view! { <Layer now i n/> }).collect_view()
    };
    view! {
        <figure class="tank" data-test=clip>
            <figcaption>
                <h3>{move || pair.name(page, beside)}</h3>
            </figcaption>
            <svg viewBox="0 0 220 300" aria-hidden="true">
                <clipPath id=clip><rect x="30" y=TOP width="110" height=HEIGHT rx="26"></rect></clipPath>
                <g clip-path=format!("url(#{clip})")>{layers}</g>
                <rect class="wall" x="30" y=TOP width="110" height=HEIGHT rx="26"></rect>
                {move || heat(kind.get(), now)}
                <Shower now/>
            </svg>
            <p class="tank-says" data-test=format!("{clip}-says")>{move || say(page, &now.get())}</p>
        </figure>
    }
}

/// One layer, from the bottom up. Each a little taller than its share, so that no gap shows between.
#[component]
fn Layer(now: Memo<Moment>, i: usize, n: usize) -> impl IntoView {
    let tall = HEIGHT / n as f64;
    let y = TOP + HEIGHT - (i + 1) as f64 * tall;
    let fill = move || now.with(|m| m.layers_c.get(i).map(|&c| warmth::colour(f64::from(c))));
    view! { <rect x="30" y=y width="110" height=tall + 0.6 fill=fill></rect> }
}

/// What heats it: a heat pump on top, elements inside, or a burner below; marked while at work.
fn heat(kind: HeaterKind, now: Memo<Moment>) -> impl IntoView {
    let on = move || now.with(|m| m.power_w > 0.0);
    match kind {
        HeaterKind::HeatPump => view! {
            <g class="heat" class:on=on>
                <rect x="36" y="14" width="68" height="44" rx="8"></rect>
                <circle cx="70" cy="36" r="14"></circle>
                <path d="M70 36V23M70 36l11 7M70 36l-11 7"></path>
            </g>
        }
        .into_any(),
        HeaterKind::Electric => view! {
            <g class="heat" class:on=on>
                <path d="M30 132h18l6-8 8 16 8-16 8 16 8-16 6 8h10"></path>
                <path d="M30 230h18l6-8 8 16 8-16 8 16 8-16 6 8h10"></path>
            </g>
        }
        .into_any(),
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => view! {
            <g class="heat" class:on=on>
                <path d="M76 64V20M94 64V20"></path>
                <path d="M70 292c-8-10 4-14 4-24 8 6 10 12 8 18 4-4 6-8 5-14 10 8 12 14 6 20z"></path>
            </g>
        }
        .into_any(),
    }
}

/// The shower head: drops in the colour of the water that comes out.
#[component]
fn Shower(now: Memo<Moment>) -> impl IntoView {
    let page = page();
    let tap = move || now.with(|m| m.tap_c);
    let fill = move || tap().map(|c| warmth::colour(f64::from(c)));
    let words = move || tap().map(|c| page.quantity(Quantity::new(f64::from(c), Unit::DegC)));
    view! {
        <g class="shower">
            <path class="pipe" d="M118 64V34h64v18"></path>
            <path class="head" d="M166 66c0-9 7-14 16-14s16 5 16 14z"></path>
            <g class="drops" class:on=move || tap().is_some() stroke=fill>
                <path d="M170 74l-4 34M178 74l-1 40M186 74l1 40M194 74l4 34"></path>
            </g>
            <text x="182" y="142" text-anchor="middle">{words}</text>
        </g>
    }
}

/// The picture in words.
fn say(page: Page, now: &Moment) -> String {
    let n = now.layers_c.len();
    let hot = now.layers_c.iter().filter(|&&c| c >= HOT_C).count();
    let share = if n == 0 { 0.0 } else { (100.0 * hot as f64 / n as f64).round() };
    let mut words = page.say(&Message::new("page-tank-hot").quantity("share", share, Unit::Percent));
    let more = match now.tap_c {
        Some(c) => Message::new("page-tank-tap").quantity("warmth", f64::from(c), Unit::DegC),
        None => Message::new("page-tank-tap-closed"),
    };
    words.push(' ');
    words.push_str(&page.say(&more));
    if now.power_w > 0.0 {
        words.push(' ');
        let heating = Message::new("page-tank-heating").quantity("power", f64::from(now.power_w), Unit::Watt);
        words.push_str(&page.say(&heating));
    }
    words
}

/// The colours and what they mean.
#[component]
pub fn WarmthLegend(
    /// Key of the words for what is coloured.
    #[prop(default = "page-tank-scale")]
    of: &'static str,
) -> impl IntoView {
    let page = page();
    let at = move |celsius: f64| page.quantity(Quantity::new(celsius, Unit::DegC));
    view! {
        <div class="warmth">
            <span>{move || at(warmth::COLD_C)}</span>
            <span class="warmth-scale" aria-hidden="true"></span>
            <span>{move || at(warmth::HOT_C)}</span>
            <span class="quiet">{page.key(of)}</span>
        </div>
    }
}

/// Both names in one sentence, for readers who do not see the picture.
pub fn both_names(page: Page, pair: Pair) -> String {
    page.say(
        &Message::new("page-tank-both")
            .with("heater", page.heater(pair.chosen.get()))
            .with("rival", page.heater(pair.beside.get())),
    )
}
