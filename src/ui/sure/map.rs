//! Who costs least over the two numbers that matter most: a map, read point by point.
//!
//! Its fields are told apart by letter and hatching as well as by colour. The point that is read follows the pointer, or two
//! sliders; a ring marks the case as it stands.

use crate::core::candidates::CandidateId;
use crate::core::futures::{Axis as Values, BreakEvenMap};
use crate::core::message::{Arg, Message};
use crate::job::questions::Id;
use crate::ui::charts::axis::Axis;
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::plot::{self, Plot};
use crate::ui::charts::sheet::Sheet;
use crate::ui::model::Shared;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use plotters::style::RGBColor;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Hatchings there are; a fifth heater would look like the first, but for its letter.
const HATCHINGS: usize = 4;
/// Their signs in the legend.
const SIGNS: [&str; HATCHINGS] = ["field-0", "field-1", "field-2", "field-3"];
/// Parts of an axis between its marks, and between rows of the table.
const PARTS: usize = 4;

/// A map with what its fields are called.
struct Read {
    map: Arc<BreakEvenMap>,
    /// The heaters on it, in the order of their letters.
    heaters: Vec<(CandidateId, Message)>,
}

impl Read {
    fn heater(&self, (x, y): (usize, usize)) -> usize {
        let id = self.map.cheapest.get(y * self.map.x.values.len() + x);
        self.heaters.iter().position(|(of, _)| Some(of) == id).unwrap_or(0)
    }

    /// The point of the case as it stands: values are spread evenly about it.
    fn now(&self) -> (usize, usize) {
        (self.map.x.values.len() / 2, self.map.y.values.len() / 2)
    }
}

fn letter(heater: usize) -> String {
    char::from(b'A' + (heater % 26) as u8).to_string()
}

fn question(page: Page, axis: &Values) -> String {
    Id::from_code(&axis.code).map(|id| page.key(&id.key())).unwrap_or_default()
}

/// The map.
#[component]
pub fn Map(of: Shared, map: Arc<BreakEvenMap>) -> impl IntoView {
    let page = page();
    let mut heaters: Vec<(CandidateId, Message)> = Vec::new();
    for id in &map.cheapest {
        if heaters.iter().all(|(known, _)| known != id) {
            heaters.push((*id, of.0.name_of(*id)));
        }
    }
    let read = StoredValue::new(Read { map, heaters });
    let at = RwSignal::new(read.with_value(Read::now));
    // Where the fields lie on the canvas, CSS pixels.
    let place = StoredValue::new_local([0.0; 4]);
    let legend = Signal::derive(move || read.with_value(|read| legend(page, read)));
    let reading = Signal::derive(move || read.with_value(|read| reading(page, read, at.get())));
    let figures = Signal::derive(move || read.with_value(|read| figures(page, read)));
    let follow = move |event: leptos::ev::PointerEvent| {
        let on_canvas = event.target().is_some_and(|t| t.has_type::<web_sys::HtmlCanvasElement>());
        if on_canvas {
            let here = (f64::from(event.offset_x()), f64::from(event.offset_y()));
            let found = read.with_value(|read| place.with_value(|place| point(read, place, here)));
            if let Some(found) = found.filter(|found| at.get_untracked() != *found) {
                at.set(found);
            }
        }
    };
    let slider = move |up: bool| {
        let axis = move || read.with_value(|read| if up { read.map.y.clone() } else { read.map.x.clone() });
        let here = move || if up { at.get().1 } else { at.get().0 };
        let value = move || axis().values.get(here()).map(|q| page.quantity(*q));
        let moved = move |event| {
            let Ok(to) = event_target_value(&event).parse() else { return };
            at.update(|at| if up { at.1 = to } else { at.0 = to });
        };
        let (test, words) = if up { ("map-up", "sure-map-up") } else { ("map-across", "sure-map-across") };
        view! {
            <label class="slider">
                <span>{page.key(words)} " " {question(page, &axis())}</span>
                <input
                    type="range"
                    min="0"
                    max=(axis().values.len().max(1) - 1).to_string()
                    data-test=test
                    prop:value=move || here().to_string()
                    aria-valuetext=value
                    on:input=moved
                />
                <output>{value}</output>
            </label>
        }
        .into_any()
    };
    view! {
        <section data-test="sure-map" on:pointermove=follow on:pointerdown=follow>
            <ChartFrame
                code="map"
                heading="sure-map"
                reading
                legend
                figures
                draw=Arc::new(move |sheet: &Sheet| {
                    let lies = read.with_value(|read| draw(page, read, at.get(), sheet));
                    // None where the place has gone meanwhile.
                    place.try_set_value(lies);
                })
                tall=true
            />
            <div class="sliders">{slider(false)} {slider(true)}</div>
        </section>
    }
}

fn legend(page: Page, read: &Read) -> Legend {
    let of = |(n, (_, name)): (usize, &(CandidateId, Message))| {
        (SIGNS[n % HATCHINGS], Signal::stored(format!("{}: {}", letter(n), page.say(name))))
    };
    let now = ("ring", Signal::stored(page.key("sure-map-now")));
    read.heaters.iter().enumerate().map(of).chain([now]).collect()
}

fn reading(page: Page, read: &Read, at: (usize, usize)) -> String {
    let (x, y) = (&read.map.x, &read.map.y);
    let (Some(across), Some(up)) = (x.values.get(at.0), y.values.get(at.1)) else { return String::new() };
    let n = read.heater(at);
    let Some((_, name)) = read.heaters.get(n) else { return String::new() };
    page.say(
        &Message::new("sure-map-reading")
            .with("x", Arg::Verbatim(question(page, x)))
            .with("across", *across)
            .with("y", Arg::Verbatim(question(page, y)))
            .with("up", *up)
            .with("letter", Arg::Verbatim(letter(n)))
            .with("heater", name.clone()),
    )
}

/// The point below the pointer.
fn point(read: &Read, [left, top, right, bottom]: &[f64; 4], here: (f64, f64)) -> Option<(usize, usize)> {
    let (columns, rows) = (read.map.x.values.len() as f64, read.map.y.values.len() as f64);
    let across = (here.0 - left) / (right - left) * columns;
    let up = (bottom - here.1) / (bottom - top) * rows;
    let inside = across >= 0.0 && across < columns && up >= 0.0 && up < rows;
    inside.then_some((across as usize, up as usize))
}

fn axis(page: Page, values: &Values) -> Axis {
    let last = values.values.len().max(1) - 1;
    let marks = (0..=PARTS).map(|part| part * last / PARTS);
    let marks = marks.filter_map(|i| Some((i as f64, page.quantity(*values.values.get(i)?)))).collect();
    Axis::with_marks(-0.5, last as f64 + 0.5, marks)
}

/// Draws the map with the point that is read; where its fields lie.
fn draw(page: Page, read: &Read, at: (usize, usize), sheet: &Sheet) -> [f64; 4] {
    let mut lies = [0.0; 4];
    plot::whole(sheet, &axis(page, &read.map.x), &axis(page, &read.map.y), "", &mut |plot| {
        fields(plot, read, sheet);
        crossing(plot, read, at, sheet);
        lies = plot.place();
    });
    lies
}

/// Fields, the lines between them, and their letters.
fn fields(plot: &mut Plot<'_>, read: &Read, sheet: &Sheet) {
    let (columns, rows) = (read.map.x.values.len(), read.map.y.values.len());
    let colours = sheet.colours;
    for y in 0..rows {
        for x in 0..columns {
            field(plot, sheet, read.heater((x, y)), (x as f64, y as f64));
        }
    }
    for y in 0..rows {
        for x in 0..columns {
            let own = read.heater((x, y));
            let (right, top) = (x as f64 + 0.5, y as f64 + 0.5);
            if x + 1 < columns && read.heater((x + 1, y)) != own {
                plot.line(&[(right, top - 1.0), (right, top)], colours.ink, 2.0, false);
            }
            if y + 1 < rows && read.heater((x, y + 1)) != own {
                plot.line(&[(right - 1.0, top), (right, top)], colours.ink, 2.0, false);
            }
        }
    }
    for n in 0..read.heaters.len() {
        // The letter stands on the middle one of its points.
        let all: Vec<(usize, usize)> =
            (0..columns * rows).map(|i| (i / rows, i % rows)).filter(|at| read.heater(*at) == n).collect();
        if let Some((x, y)) = all.get(all.len() / 2) {
            plot.words(&letter(n), *x as f64, *y as f64);
        }
    }
}

/// The point that is read, and the case as it stands.
fn crossing(plot: &mut Plot<'_>, read: &Read, at: (usize, usize), sheet: &Sheet) {
    let (x, y) = (at.0 as f64, at.1 as f64);
    let end = |values: &Values| values.values.len() as f64 - 0.5;
    let ink = sheet.colours.ink;
    plot.line(&[(x, -0.5), (x, end(&read.map.y))], ink, 1.0, true);
    plot.line(&[(-0.5, y), (end(&read.map.x), y)], ink, 1.0, true);
    let now = read.now();
    plot.ring((now.0 as f64, now.1 as f64), ink);
}

/// One point's field: a tint, and lines over it that none but its heater has.
fn field(plot: &mut Plot<'_>, sheet: &Sheet, heater: usize, (x, y): (f64, f64)) {
    let colours = sheet.colours;
    let (colour, lines): (RGBColor, &[[f64; 4]]) = match heater % HATCHINGS {
        0 => (colours.copper, &[]),
        1 => (colours.rival, &[[-0.5, -0.5, 0.5, 0.5]]),
        2 => (colours.soft, &[[-0.5, 0.0, 0.5, 0.0]]),
        _ => (colours.line, &[[-0.5, 0.5, 0.5, -0.5], [-0.5, -0.5, 0.5, 0.5]]),
    };
    plot.tint((x - 0.5, y - 0.5), (x + 0.5, y + 0.5), colour);
    for [x0, y0, x1, y1] in lines {
        plot.line(&[(x + x0, y + y0), (x + x1, y + y1)], colour, 1.0, false);
    }
}

/// A few points of the map, the highest on top.
fn figures(page: Page, read: &Read) -> Figures {
    let map = &read.map;
    let some = |values: &Values| -> Vec<usize> {
        let last = values.values.len().max(1) - 1;
        (0..=PARTS).map(|part| part * last / PARTS).collect()
    };
    let words =
        |values: &Values, i: usize| values.values.get(i).map_or_else(String::new, |q| page.quantity(*q));
    let columns = some(&map.x);
    let corner = page.say(
        &Message::new("sure-map-corner")
            .with("y", Arg::Verbatim(question(page, &map.y)))
            .with("x", Arg::Verbatim(question(page, &map.x))),
    );
    Figures {
        heads: [corner].into_iter().chain(columns.iter().map(|x| words(&map.x, *x))).collect(),
        rows: some(&map.y)
            .into_iter()
            .rev()
            .map(|y| {
                let name = |x: &usize| read.heaters.get(read.heater((*x, y))).map(|(_, name)| page.say(name));
                let cells = columns.iter().map(|x| name(x).unwrap_or_default());
                [words(&map.y, y)].into_iter().chain(cells).collect()
            })
            .collect(),
    }
}
