//! The mean day's power by the hour: as it runs, and by the schedule.

use super::Ahead;
use crate::core::message::Message;
use crate::core::outlook::says;
use crate::core::tariff::report::ByHour;
use crate::core::units::{Quantity, Unit};
use crate::ui::charts::axis::Axis;
use crate::ui::charts::frame::{ChartFrame, Figures, Legend};
use crate::ui::charts::plot;
use crate::ui::charts::sheet::Sheet;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The chart, of the advised heater or, where that burns fuel, the next that does not.
pub fn hours_chart(ahead: &Ahead) -> Option<AnyView> {
    let page = page();
    let (t, outcome) = (&ahead.outlook.time_of_use, &ahead.of.0);
    let shown = says::shown(t, outcome).into_iter().find(|c| c.schedule.is_some()).cloned()?;
    let name = outcome.name_of(shown.id);
    let of = StoredValue::new(shown);
    let legend = Signal::derive(move || -> Legend {
        vec![
            ("bar", Signal::stored(page.key("sure-hours-usual"))),
            ("hollow", Signal::stored(page.key("sure-hours-schedule"))),
        ]
    });
    let reading = Signal::derive(move || {
        let (before, after) =
            of.with_value(|c| (c.peak_share, c.schedule.as_ref().map_or(0.0, |s| s.peak_share)));
        page.say(
            &Message::new("sure-hours-reading")
                .with("heater", name.clone())
                .quantity("before", (100.0 * before).round(), Unit::Percent)
                .quantity("after", (100.0 * after).round(), Unit::Percent),
        )
    });
    let figures = Signal::derive(move || of.with_value(|c| figures(page, c)));
    let draw = Arc::new(move |sheet: &Sheet| of.with_value(|c| draw(page, c, sheet)));
    Some(view! { <ChartFrame code="hours" heading="sure-hours" reading legend figures draw/> }.into_any())
}

/// The mean day by the schedule; nothing without one.
fn scheduled(c: &ByHour) -> &[f64] {
    c.schedule.as_ref().map_or(&[], |s| &s.mean_day_kwh)
}

fn draw(page: Page, c: &ByHour, sheet: &Sheet) {
    let all = c.mean_day_kwh.iter().chain(scheduled(c)).copied().chain([0.0]);
    let y = Axis::round(all, 4, |v| page.words().number(v, 1));
    let marks = [0.0, 6.0, 12.0, 18.0, 24.0].map(|h| (h, page.words().number(h, 0))).to_vec();
    plot::whole(sheet, &Axis::with_marks(0.0, 24.0, marks), &y, "", &mut |plot| {
        for (hour, (usual, by_clock)) in c.mean_day_kwh.iter().zip(scheduled(c)).enumerate() {
            let at = hour as f64;
            plot.bar(at + 0.08, at + 0.48, *usual, sheet.colours.copper, false);
            plot.bar(at + 0.52, at + 0.92, *by_clock, sheet.colours.rival, true);
        }
    });
}

fn figures(page: Page, c: &ByHour) -> Figures {
    // A kilowatt-hour and a decimal would hide most hours.
    let kwh = |v: f64| page.quantity(Quantity::new((v * 100.0).round() / 100.0, Unit::KilowattHour));
    Figures {
        heads: ["sure-hours-hour", "sure-hours-usual", "sure-hours-schedule"].map(|k| page.key(k)).to_vec(),
        rows: c
            .mean_day_kwh
            .iter()
            .zip(scheduled(c))
            .enumerate()
            .map(|(hour, (usual, by_clock))| vec![hour.to_string(), kwh(*usual), kwh(*by_clock)])
            .collect(),
    }
}
