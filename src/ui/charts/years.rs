//! Two lines over the years, each with the band around it: the chosen heater's in front, the one beside it behind.

use super::axis::{Axis, round_step};
use super::plot;
use super::sheet::Sheet;
use crate::ui::state::Page;

/// A line over the years, from the start on, and the band around it.
#[derive(Clone, Debug, PartialEq)]
pub struct Banded {
    line: Vec<(f64, f64)>,
    low: Vec<(f64, f64)>,
    high: Vec<(f64, f64)>,
    /// Edges of a band that was there before: drawn thin.
    former: Vec<Vec<(f64, f64)>>,
}

impl Banded {
    /// Of three values a year, the first at the start: the line's, the band's lower and its upper edge.
    pub fn new(line: Vec<f64>, low: Vec<f64>, high: Vec<f64>) -> Self {
        Self { line: over(line), low: over(low), high: over(high), former: Vec::new() }
    }

    /// The same with the edges of a band that was there before.
    pub fn after(self, low: Vec<f64>, high: Vec<f64>) -> Self {
        Self { former: vec![over(low), over(high)], ..self }
    }
}

/// Values a year, the first at the start.
fn over(values: Vec<f64>) -> Vec<(f64, f64)> {
    values.into_iter().enumerate().map(|(year, v)| (year as f64, v)).collect()
}

/// An axis from the start to the end of the last of some years, with a mark at each or at every second, fifth…
fn axis(page: Page, years: f64) -> Axis {
    let step = round_step((years / 8.0).max(1.0)).round().max(1.0);
    let marks = (0..=(years / step) as u32)
        .map(|i| f64::from(i) * step)
        .map(|year| (year, page.words().number(year, 0)))
        .collect();
    Axis::with_marks(0.0, years, marks)
}

/// Draws both, from nothing up, with about `wanted` marks on the vertical axis.
pub fn draw(
    page: Page,
    sheet: &Sheet,
    chosen: &Banded,
    beside: &Banded,
    wanted: u32,
    label: &dyn Fn(f64) -> String,
) {
    let all =
        [chosen, beside].into_iter().flat_map(|b| [&b.line, &b.low, &b.high].into_iter().chain(&b.former));
    let all = all.flatten();
    let y = Axis::round(all.map(|(_, v)| *v).chain([0.0]), wanted, label);
    let x = axis(page, chosen.line.len().saturating_sub(1) as f64);
    let colours = sheet.colours;
    plot::whole(sheet, &x, &y, "", &mut |plot| {
        plot.band(&beside.low, &beside.high, colours.rival);
        plot.band(&chosen.low, &chosen.high, colours.copper);
        for edge in &chosen.former {
            plot.line(edge, colours.soft, 1.0, false);
        }
        plot.line(&beside.line, colours.rival, 2.5, true);
        plot.line(&chosen.line, colours.copper, 3.0, false);
    });
}
