//! What waiting costs against replacing now, year by year.

use crate::core::life::replace::LifeLeft;
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit};
use crate::ui::charts::axis::Axis;
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::plot;
use crate::ui::charts::sheet::Sheet;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The chart.
#[component]
pub fn WaitingChart(life: LifeLeft) -> impl IntoView {
    let page = page();
    let costs = StoredValue::new(life.waiting);
    let legend = Signal::derive(move || -> Legend {
        vec![("solid", Signal::stored(page.key("sure-waiting-legend")))]
    });
    let reading = Signal::derive(move || {
        costs.with_value(|costs| {
            let most = costs.iter().enumerate().fold(0, |at, (i, c)| if *c < costs[at] { i } else { at });
            let say = if most == 0 { "sure-waiting-rises" } else { "sure-waiting-falls" };
            page.say(&Message::new(say).with("years", most as i64))
        })
    });
    let figures = Signal::derive(move || {
        costs.with_value(|costs| Figures {
            heads: vec![page.key("sure-waiting-year"), page.key("sure-waiting-legend")],
            rows: costs.iter().enumerate().map(|(y, c)| vec![y.to_string(), money(page, *c)]).collect(),
        })
    });
    let draw = Arc::new(move |sheet: &Sheet| costs.with_value(|costs| draw(page, costs, sheet)));
    view! { <ChartFrame code="waiting" heading="sure-waiting" reading legend figures draw/> }
}

fn money(page: Page, dollars: f64) -> String {
    page.quantity(Quantity::new(dollars, Unit::Dollar))
}

fn draw(page: Page, costs: &[f64], sheet: &Sheet) {
    let y = Axis::round(costs.iter().copied().chain([0.0]), 4, |v| money(page, v));
    let years = costs.len().saturating_sub(1) as f64;
    let marks = (0..costs.len()).step_by(2).map(|y| (y as f64, page.words().number(y as f64, 0))).collect();
    let line: Vec<(f64, f64)> = costs.iter().enumerate().map(|(y, c)| (y as f64, *c)).collect();
    plot::whole(sheet, &Axis::with_marks(0.0, years, marks), &y, "", &mut |plot| {
        plot.line(&[(0.0, 0.0), (years, 0.0)], sheet.colours.rival, 1.5, true);
        plot.line(&line, sheet.colours.copper, 3.0, false);
    });
}
