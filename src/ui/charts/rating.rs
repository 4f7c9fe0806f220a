//! The rating test's day: the water in the tank, what leaves it, and what heats it.

use super::axis::Axis;
use super::frame::{ChartFrame, Figures, Legend};
use super::morning::clock;
use super::plot::{Plot, areas};
use super::sheet::Sheet;
use crate::core::label::RatingRun;
use crate::core::message::{Arg, Message};
use crate::core::units::{Dimension, Quantity, Unit, to_celsius};
use crate::ui::components::warmth;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// A day's minutes.
const DAY_MIN: f64 = 1_440.0;
/// A draw is shown at least this wide, minutes: most last two or three.
const SEEN_MIN: f64 = 12.0;

/// The chart.
#[component]
pub fn RatingChart(run: Arc<RatingRun>) -> impl IntoView {
    let page = page();
    let burns = run.fuel_w.iter().any(|&w| w > 0.0);
    let mut legend: Legend = vec![
        ("solid", Signal::stored(page.key("test-electricity"))),
        ("shade", Signal::stored(page.key("test-drawn"))),
    ];
    if burns {
        legend.push(("dashed", Signal::stored(page.key("test-fuel"))));
    }
    let (said, told, drawn) = (run.clone(), run.clone(), run);
    view! {
        <ChartFrame
            code="test"
            heading="test-day"
            reading=Signal::derive(move || reading(page, &said))
            legend=Signal::stored(legend)
            figures=Signal::derive(move || figures(page, &told))
            draw=Arc::new(move |sheet: &Sheet| draw(page, &drawn, sheet))
            tall=true
        />
    }
}

/// One draw of the day.
#[derive(Clone, Copy, Debug)]
struct Draw {
    from_min: f64,
    to_min: f64,
    litres: f64,
    /// Mean over the draw.
    outlet_c: f64,
}

/// The draws: stretches of entries with a flow.
fn draws(run: &RatingRun) -> Vec<Draw> {
    let mut all: Vec<Draw> = Vec::new();
    let mut open = false;
    let entries = run.minutes.iter().zip(&run.flow_l_per_min).zip(&run.outlet_c);
    let mut last_min = 0.0;
    for ((&minute, &flow), &outlet) in entries {
        let (minute, flow, outlet) = (f64::from(minute), f64::from(flow), f64::from(outlet));
        // Two entries share a moment where a draw begins or ends.
        if minute <= last_min {
            continue;
        }
        let litres = flow * (minute - last_min);
        match all.last_mut() {
            _ if litres <= 0.0 => open = false,
            Some(draw) if open => {
                draw.outlet_c = (draw.outlet_c * draw.litres + outlet * litres) / (draw.litres + litres);
                draw.litres += litres;
                draw.to_min = minute;
            }
            _ => {
                all.push(Draw { from_min: last_min, to_min: minute, litres, outlet_c: outlet });
                open = true;
            }
        }
        last_min = minute;
    }
    all
}

fn reading(page: Page, run: &RatingRun) -> String {
    let draws = draws(run);
    let used = run.scored.electricity + run.scored.fuel;
    page.say(
        &Message::new("test-reading")
            .with("draws", draws.len() as i64)
            .quantity("drawn", draws.iter().map(|d| d.litres).sum(), Unit::Litre)
            .quantity("warmth", to_celsius(run.conditions.delivered), Unit::DegC)
            .with("used", kwh(Unit::KilowattHour.from_base(used.value)))
            .with("factor", Arg::Number(run.scored.uniform_energy_factor, 2)),
    )
}

/// A day's energy is small: two decimals.
fn kwh(energy: f64) -> Message {
    Message::new("test-kwh").with("energy", Arg::Number(energy, 2))
}

fn figures(page: Page, run: &RatingRun) -> Figures {
    // What was used until each draw began since the one before it.
    let used_kwh = |from: f64, to: f64| {
        let mut sum = 0.0;
        for (i, pair) in run.minutes.windows(2).enumerate() {
            let (a, b) = (f64::from(pair[0]), f64::from(pair[1]));
            if a >= from
                && b <= to
                && let (Some(&electric), Some(&fuel)) = (run.electric_w.get(i + 1), run.fuel_w.get(i + 1))
            {
                sum += f64::from(electric + fuel) * (b - a) / 60e3;
            }
        }
        sum
    };
    let draws = draws(run);
    let ends = draws.iter().skip(1).map(|d| d.from_min).chain([DAY_MIN]);
    let rows = draws.iter().zip(ends).map(|(d, next)| {
        vec![
            clock(page, d.from_min * 60.0),
            clock(page, d.to_min * 60.0),
            page.quantity(Quantity::new(d.litres, Unit::Litre)),
            page.quantity(Quantity::new(d.outlet_c, Unit::DegC)),
            page.say(&kwh(used_kwh(d.from_min, next))),
        ]
    });
    Figures {
        heads: ["test-from", "test-to", "test-volume", "test-outlet", "test-used"]
            .map(|key| page.key(key))
            .to_vec(),
        rows: rows.collect(),
    }
}

fn draw(page: Page, run: &RatingRun, sheet: &Sheet) {
    let parts = areas(sheet, 3);
    let [water, outlet, power] = parts.as_slice() else { return };
    let colours = sheet.colours;
    let line = |series: &[f32], shown: &dyn Fn(f64) -> f64| -> Vec<(f64, f64)> {
        run.minutes.iter().zip(series).map(|(&m, &v)| (f64::from(m), shown(f64::from(v)))).collect()
    };
    let unit = Dimension::Temperature.display_unit(page.units());
    let degrees = |celsius: f64| Quantity::new(celsius, Unit::DegC).to(unit).map_or(celsius, |q| q.value);
    let warmth = line(&run.outlet_c, &degrees);
    let electric = steps(&line(&run.electric_w, &|w| w / 1e3));
    let fuel = steps(&line(&run.fuel_w, &|w| w / 1e3));

    let marks = (0..4).map(|i| f64::from(i) * 360.0).map(|m| (m, clock(page, m * 60.0))).collect();
    let hours = Axis::with_marks(0.0, DAY_MIN, marks);
    let depth = vec![(0.0, page.key("test-bottom")), (1.0, page.key("test-top"))];
    let depth = Axis::with_marks(0.0, 1.0, depth);
    // From lukewarm up at least, so that a drop of a degree does not look like a cliff.
    let range = warmth.iter().map(|p| p.1).chain([degrees(30.0), degrees(55.0)]);
    let degrees = Axis::round(range, 3, |v| page.words().quantity(Quantity::new(v, unit)));
    let range = electric.iter().chain(&fuel).map(|p| p.1).chain([0.0]);
    let kilowatts = Axis::round(range, 3, |v| page.words().quantity(Quantity::new(v, Unit::Kilowatt)));
    let labels = depth.marks.iter().chain(&degrees.marks).chain(&kilowatts.marks);
    let widest =
        labels.map(|(_, label)| sheet.text_width(label)).fold(0.0, |most, w| if w > most { w } else { most });
    let begin = |area, y, title| Plot::titled(sheet, area, &hours, y, &page.key(title), widest);

    if let Some(mut plot) = begin(water, &depth, "test-water") {
        layers(run, &mut plot);
    }
    if let Some(mut plot) = begin(outlet, &degrees, "test-outlet") {
        for d in draws(run) {
            let to = if d.to_min - d.from_min < SEEN_MIN { d.from_min + SEEN_MIN } else { d.to_min };
            plot.span(d.from_min, to);
        }
        plot.line(&warmth, colours.copper, 2.0, false);
    }
    if let Some(mut plot) = begin(power, &kilowatts, "test-power") {
        if fuel.iter().any(|p| p.1 > 0.0) {
            plot.line(&fuel, colours.rival, 2.0, true);
        }
        plot.line(&electric, colours.copper, 2.0, false);
    }
}

/// Means over the time before each entry, as steps.
fn steps(line: &[(f64, f64)]) -> Vec<(f64, f64)> {
    line.windows(2).flat_map(|w| [(w[0].0, w[1].1), w[1]]).collect()
}

/// The tank's layers over the day in the colours of their water.
fn layers(run: &RatingRun, plot: &mut Plot) {
    let n = run.layers;
    for (i, pair) in run.minutes.windows(2).enumerate() {
        let row = run.layers_c.get((i + 1) * n..(i + 2) * n).unwrap_or_default();
        for (k, &celsius) in row.iter().enumerate() {
            let (low, high) = (k as f64 / n as f64, (k + 1) as f64 / n as f64);
            let [r, g, b] = warmth::parts(f64::from(celsius));
            plot.cell((f64::from(pair[0]), low), (f64::from(pair[1]), high), (r, g, b));
        }
    }
}
