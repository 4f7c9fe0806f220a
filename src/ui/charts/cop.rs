//! A heat pump's coefficient of performance over the room's air and the tank's water.

use super::axis::Axis;
use super::frame::{ChartFrame, Figures, Legend};
use super::plot;
use super::sheet::Sheet;
use crate::core::label::CopMap;
use crate::core::message::{Arg, Message};
use crate::core::units::{Dimension, Quantity, Unit};
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// Rooms shown as lines, °C: a heated one, a cold one, a hot one, with their signs in the legend.
const ROOMS: [(f32, &str); 3] = [(20.0, "solid"), (8.0, "dashed"), (32.0, "thin")];
/// Water as hot as most tanks are set, °C.
const SET_C: f32 = 50.0;

/// The chart.
#[component]
pub fn CopChart(map: Arc<CopMap>) -> impl IntoView {
    let page = page();
    let legend: Legend = ROOMS
        .iter()
        .map(|&(room_c, sign)| {
            let words =
                move || page.say(&Message::new("cop-room").quantity("warmth", f64::from(room_c), Unit::DegC));
            (sign, Signal::derive(words))
        })
        .collect();
    let (said, told, drawn) = (map.clone(), map.clone(), map);
    view! {
        <ChartFrame
            code="cop"
            heading="cop-chart"
            reading=Signal::derive(move || reading(page, &said))
            legend=Signal::stored(legend)
            figures=Signal::derive(move || figures(page, &told))
            draw=Arc::new(move |sheet: &Sheet| draw(page, &drawn, sheet))
        />
    }
}

/// The values for a room by the temperature of the water; empty for a room not on the map.
fn row(map: &CopMap, room_c: f32) -> &[f32] {
    let n = map.water_c.len();
    let at = map.room_c.iter().position(|&c| c == room_c);
    at.and_then(|i| map.cop.get(i * n..(i + 1) * n)).unwrap_or_default()
}

fn reading(page: Page, map: &CopMap) -> String {
    let at = |room_c: f32| {
        let water = map.water_c.iter().position(|&c| c == SET_C);
        f64::from(water.and_then(|i| row(map, room_c).get(i)).copied().unwrap_or(0.0))
    };
    let [(usual, _), (cold, _), _] = ROOMS;
    page.say(
        &Message::new("cop-reading")
            .quantity("water", f64::from(SET_C), Unit::DegC)
            .quantity("room", f64::from(usual), Unit::DegC)
            .quantity("cold-room", f64::from(cold), Unit::DegC)
            .with("cop", Arg::Number(at(usual), 1))
            .with("cold-cop", Arg::Number(at(cold), 1)),
    )
}

fn figures(page: Page, map: &CopMap) -> Figures {
    let degrees = |celsius: f32| page.quantity(Quantity::new(f64::from(celsius), Unit::DegC));
    let words = page.words();
    let mut heads = vec![page.key("cop-water")];
    heads.extend(
        map.room_c
            .iter()
            .map(|&room| page.say(&Message::new("cop-room").quantity("warmth", f64::from(room), Unit::DegC))),
    );
    let rows = map.water_c.iter().enumerate().map(|(i, &water)| {
        let cop = map.room_c.iter().map(|&room| match row(map, room).get(i) {
            Some(&cop) if cop > 0.0 => words.number(f64::from(cop), 1),
            _ => page.key("page-nothing"),
        });
        std::iter::once(degrees(water)).chain(cop).collect()
    });
    Figures { heads, rows: rows.collect() }
}

fn draw(page: Page, map: &CopMap, sheet: &Sheet) {
    let unit = Dimension::Temperature.display_unit(page.units());
    let degrees = |celsius: f32| {
        let q = Quantity::new(f64::from(celsius), Unit::DegC);
        q.to(unit).map_or(q.value, |q| q.value)
    };
    let x = Axis::round(map.water_c.iter().map(|&c| degrees(c)), 5, |v| page.words().number(v, 0));
    let y = Axis::round(map.cop.iter().map(|&v| f64::from(v)).chain([0.0]), 5, |v| page.words().number(v, 0));
    let title = Message::new("cop-title").with("unit", Arg::Verbatim(page.words().unit_sign(unit)));
    let title = page.say(&title);
    let colours = sheet.colours;
    plot::whole(sheet, &x, &y, &title, &mut |plot| {
        for (room_c, sign) in ROOMS {
            let points: Vec<(f64, f64)> = map
                .water_c
                .iter()
                .zip(row(map, room_c))
                .filter(|(_, cop)| **cop > 0.0)
                .map(|(&water, &cop)| (degrees(water), f64::from(cop)))
                .collect();
            let (colour, px) = match sign {
                "solid" => (colours.copper, 3.0),
                "dashed" => (colours.rival, 2.5),
                _ => (colours.soft, 1.0),
            };
            plot.line(&points, colour, px, sign == "dashed");
        }
    });
}
