//! The busiest morning at the shower head: what comes out, for two heaters, minute by minute.

use super::axis::Axis;
use super::frame::{ChartFrame, Figures, Legend};
use super::plot;
use super::sheet::Sheet;
use crate::core::message::{Arg, Message};
use crate::core::outcome::{CandidateOutcome, Morning};
use crate::core::units::{Dimension, Quantity, Unit};
use crate::ui::components::pair::{Pair, pair};
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The chart.
#[component]
pub fn MorningChart() -> impl IntoView {
    let page = page();
    let pair = pair();
    let legend = Signal::derive(move || -> Legend {
        vec![
            ("solid", Signal::derive(move || pair.name(page, false))),
            ("dashed", Signal::derive(move || pair.name(page, true))),
            ("thin", Signal::stored(page.key("page-chart-morning-wanted"))),
            ("shade", Signal::stored(page.key("page-chart-morning-in-use"))),
        ]
    });
    view! {
        <ChartFrame
            code="morning"
            heading="page-chart-morning"
            reading=Signal::derive(move || pair.with(|a, b| say(page, a, b)).unwrap_or_default())
            legend
            figures=Signal::derive(move || pair.with(|a, b| figures(page, a, b)).unwrap_or_default())
            draw=Arc::new(move |sheet: &Sheet| pair_lines(page, pair, sheet))
        />
    }
}

/// The chart's usual range of temperatures, °C.
const COOL_C: f64 = 20.0;
const WARM_C: f64 = 45.0;
/// Shown before the first use and after the last, s.
const AROUND_S: f64 = 300.0;

/// The part of the morning with uses in it.
fn in_use(m: &Morning) -> (f64, f64) {
    let end = m.start_s + m.step_s * m.tap_c.len().saturating_sub(1) as f64;
    let first = m.uses.iter().map(|u| u.0).fold(end, |a, b| if b < a { b } else { a });
    let last = m.uses.iter().map(|u| u.1).fold(m.start_s, |a, b| if b > a { b } else { a });
    if first >= last {
        return (m.start_s, end);
    }
    (first - AROUND_S, last + AROUND_S)
}

/// A time of day in words.
pub fn clock(page: Page, seconds: f64) -> String {
    let minutes = (seconds / 60.0).round() as i64;
    page.say(
        &Message::new("page-clock")
            .with("hour", Arg::Verbatim((minutes / 60).rem_euclid(24).to_string()))
            .with("minute", Arg::Verbatim(format!("{:02}", minutes.rem_euclid(60)))),
    )
}

/// A temperature in the reader's unit.
fn shown(page: Page, celsius: f64) -> f64 {
    let unit = Dimension::Temperature.display_unit(page.units());
    Quantity::new(celsius, Unit::DegC).to(unit).map_or(celsius, |q| q.value)
}

/// What comes out, as lines broken where nobody draws.
fn lines(page: Page, m: &Morning, series: &[f32]) -> Vec<Vec<(f64, f64)>> {
    let mut all = vec![Vec::new()];
    for (i, &celsius) in series.iter().enumerate() {
        if celsius > 0.0 {
            if let Some(line) = all.last_mut() {
                line.push((m.start_s + i as f64 * m.step_s, shown(page, f64::from(celsius))));
            }
        } else if all.last().is_some_and(|line: &Vec<_>| !line.is_empty()) {
            all.push(Vec::new());
        }
    }
    all.retain(|line| line.len() > 1);
    all
}

fn pair_lines(page: Page, pair: Pair, sheet: &Sheet) {
    let drawn = pair.with(|a, b| {
        (
            lines(page, &a.morning, &a.morning.tap_c),
            lines(page, &b.morning, &b.morning.tap_c),
            lines(page, &a.morning, &a.morning.wanted_c),
            a.morning.clone(),
        )
    });
    let Some((chosen, beside, wanted, morning)) = drawn else { return };
    // Room-cold to shower-warm at least, so that a drop of a degree does not look like a cliff.
    let usual = [shown(page, COOL_C), shown(page, WARM_C)];
    let heights = chosen.iter().chain(&beside).chain(&wanted).flatten().map(|p| p.1).chain(usual);
    let y = Axis::round(heights, 5, |v| page.words().number(v, 0));
    let (from, to) = in_use(&morning);
    let colours = sheet.colours;
    plot::whole(sheet, &hours(page, from, to), &y, "", &mut |plot| {
        for (from, to, _) in &morning.uses {
            plot.span(*from, *to);
        }
        for line in &wanted {
            plot.line(line, colours.soft, 1.0, false);
        }
        for line in &beside {
            plot.line(line, colours.rival, 2.5, true);
        }
        for line in &chosen {
            plot.line(line, colours.copper, 3.0, false);
        }
    });
}

/// An axis of clock time with a mark every five minutes to two hours.
fn hours(page: Page, from: f64, to: f64) -> Axis {
    let step = if to - from <= 2_400.0 {
        300.0
    } else if to - from <= 5_400.0 {
        900.0
    } else if to - from <= 14_400.0 {
        1_800.0
    } else {
        7_200.0
    };
    let first = (from / step).ceil() * step;
    let count = ((to - first) / step).floor().max(0.0) as u32;
    let marks = (0..=count).map(|i| first + f64::from(i) * step).map(|t| (t, clock(page, t))).collect();
    Axis::with_marks(from, to, marks)
}

/// Whether it stays warm, and if not when it turns cold.
fn one(page: Page, c: &CandidateOutcome) -> String {
    let name = c.candidate.name();
    let m = &c.morning;
    page.say(&match m.cold_at_s {
        _ if m.carries() => Message::new("page-morning-carries").with("heater", name),
        Some(at) => Message::new("page-morning-cold")
            .with("heater", name)
            .with("at", Arg::Verbatim(clock(page, at)))
            .quantity("short", m.shortfall.value * 1e3, Unit::Litre),
        None => Message::new("page-morning-short").with("heater", name),
    })
}

/// The reading for both.
pub fn say(page: Page, a: &CandidateOutcome, b: &CandidateOutcome) -> String {
    let first = one(page, a);
    if a.candidate.id == b.candidate.id { first } else { format!("{first} {}", one(page, b)) }
}

/// The coolest water within a span of the morning, °C.
fn coolest(m: &Morning, from: f64, to: f64) -> Option<f32> {
    let within = m.tap_c.iter().enumerate().filter(|(i, celsius)| {
        let at = m.start_s + *i as f64 * m.step_s;
        at >= from && at <= to && **celsius > 0.0
    });
    within
        .map(|(_, &celsius)| celsius)
        .fold(None, |low, c| if low.is_some_and(|l| l <= c) { low } else { Some(c) })
}

fn figures(page: Page, a: &CandidateOutcome, b: &CandidateOutcome) -> Figures {
    let degrees = |celsius: Option<f32>| match celsius {
        Some(c) => page.quantity(Quantity::new(f64::from(c), Unit::DegC)),
        None => page.key("page-nothing"),
    };
    Figures {
        heads: vec![
            page.key("page-chart-morning-use"),
            page.key("page-chart-morning-from"),
            page.key("page-chart-morning-to"),
            page.say(&Message::new("page-chart-morning-coolest").with("heater", a.candidate.name())),
            page.say(&Message::new("page-chart-morning-coolest").with("heater", b.candidate.name())),
        ],
        rows: a
            .morning
            .uses
            .iter()
            .map(|(from, to, what)| {
                vec![
                    page.say(&Message::new(what.clone())),
                    clock(page, *from),
                    clock(page, *to),
                    degrees(coolest(&a.morning, *from, *to)),
                    degrees(coolest(&b.morning, *from, *to)),
                ]
            })
            .collect(),
    }
}
