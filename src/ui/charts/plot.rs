//! A plot: axes with their labels, and lines, bands, spans and bars between them.

use super::axis::Axis;
use super::sheet::{Sheet, Side};
use plotters::chart::{ChartBuilder, ChartContext};
use plotters::coord::Shift;
use plotters::coord::types::RangedCoordf64;
use plotters::prelude::{Cartesian2d, Circle, DrawingArea, IntoDrawingArea, PathElement, Polygon, Rectangle};
use plotters::style::{Color, RGBColor, ShapeStyle};
use plotters_canvas::CanvasBackend;

/// Free space above and to the right, CSS pixels.
const EDGE_PX: f64 = 12.0;
/// Free space above a plot with a title.
const TITLE_PX: f64 = 26.0;
/// Room for the labels below, CSS pixels.
const BELOW_PX: f64 = 26.0;

/// A plot being drawn. Drawing on canvas cannot fail in a way that could be put right; what cannot be
/// drawn is left out, and the figures stand in the table.
pub struct Plot<'a> {
    sheet: &'a Sheet,
    chart: ChartContext<'a, CanvasBackend, Cartesian2d<RangedCoordf64, RangedCoordf64>>,
    y: (f64, f64),
}

/// Draws one plot on the whole canvas.
pub fn whole(sheet: &Sheet, x: &Axis, y: &Axis, title: &str, paint: &mut dyn FnMut(&mut Plot)) {
    let parts = areas(sheet, 1);
    let Some(area) = parts.first() else { return };
    if let Some(mut plot) = Plot::titled(sheet, area, x, y, title, 0.0) {
        paint(&mut plot);
    }
}

/// The whole canvas as an area to draw on, cut into `parts` one above the other.
pub fn areas(sheet: &Sheet, parts: usize) -> Vec<DrawingArea<CanvasBackend, Shift>> {
    match CanvasBackend::with_canvas_object(sheet.canvas()) {
        Some(backend) => backend.into_drawing_area().split_evenly((parts, 1)),
        None => Vec::new(),
    }
}

impl<'a> Plot<'a> {
    /// Draws the axes on an area of the sheet.
    pub fn begin(
        sheet: &'a Sheet,
        area: &'a DrawingArea<CanvasBackend, Shift>,
        x: &Axis,
        y: &Axis,
    ) -> Option<Plot<'a>> {
        Plot::titled(sheet, area, x, y, "", 0.0)
    }

    /// The same under a title. Plots one above the other line up when each leaves as much room for the
    /// labels at its side: the width of the widest, CSS pixels.
    pub fn titled(
        sheet: &'a Sheet,
        area: &'a DrawingArea<CanvasBackend, Shift>,
        x: &Axis,
        y: &Axis,
        title: &str,
        labels_px: f64,
    ) -> Option<Plot<'a>> {
        let widest = y.marks.iter().map(|(_, label)| sheet.text_width(label)).fold(labels_px, f64::max);
        let above = if title.is_empty() { EDGE_PX } else { TITLE_PX };
        let chart = ChartBuilder::on(area)
            .margin_left(sheet.dots(widest + 10.0))
            .margin_right(sheet.dots(EDGE_PX))
            .margin_top(sheet.dots(above))
            .margin_bottom(sheet.dots(BELOW_PX))
            .build_cartesian_2d(x.from..x.to, y.from..y.to)
            .ok()?;
        let mut plot = Plot { sheet, chart, y: (y.from, y.to) };
        plot.axes(x, y);
        let (px, py) = plot.at(x.from, y.to);
        let at = (px, py - 13.0 * sheet.scale);
        sheet.write(title, at, Side::Right, sheet.colours.ink);
        Some(plot)
    }

    fn style(&self, colour: RGBColor, px: f64) -> ShapeStyle {
        colour.stroke_width(self.sheet.dots(px).max(1))
    }

    fn axes(&mut self, x: &Axis, y: &Axis) {
        let colours = self.sheet.colours;
        let thin = self.style(colours.line, 1.0);
        for (at, label) in &y.marks {
            let _ = self.chart.draw_series([PathElement::new(vec![(x.from, *at), (x.to, *at)], thin)]);
            let (px, py) = self.at(x.from, *at);
            self.sheet.write(label, (px - 6.0 * self.sheet.scale, py), Side::Left, colours.soft);
        }
        // Labels that would run into the one before are left out.
        let mut free_from = f64::NEG_INFINITY;
        for (at, label) in &x.marks {
            let (px, py) = self.at(*at, y.from);
            let half = (self.sheet.text_width(label) / 2.0 + 4.0) * self.sheet.scale;
            if px - half >= free_from
                && px + half <= self.sheet.width * self.sheet.scale + 8.0 * self.sheet.scale
            {
                self.sheet.write(label, (px, py + 7.0 * self.sheet.scale), Side::Below, colours.soft);
                free_from = px + half;
            }
        }
        if y.from < 0.0 && y.to > 0.0 {
            let zero = self.style(colours.soft, 1.5);
            let _ = self.chart.draw_series([PathElement::new(vec![(x.from, 0.0), (x.to, 0.0)], zero)]);
        }
    }

    /// A point in dots on the canvas.
    fn at(&self, x: f64, y: f64) -> (f64, f64) {
        let (px, py) = self.chart.backend_coord(&(x, y));
        (f64::from(px), f64::from(py))
    }

    /// A line; dashed lines tell two apart without colour.
    pub fn line(&mut self, points: &[(f64, f64)], colour: RGBColor, px: f64, dashed: bool) {
        let style = self.style(colour, px);
        self.sheet.dash(dashed);
        let _ = self.chart.draw_series([PathElement::new(points.to_vec(), style)]);
        self.sheet.dash(false);
    }

    /// A band between two lines over the same places.
    pub fn band(&mut self, low: &[(f64, f64)], high: &[(f64, f64)], colour: RGBColor) {
        let around: Vec<(f64, f64)> = high.iter().chain(low.iter().rev()).copied().collect();
        let _ = self.chart.draw_series([Polygon::new(around, colour.mix(0.16).filled())]);
    }

    /// A span of the horizontal axis, shaded over the whole height.
    pub fn span(&mut self, from: f64, to: f64) {
        let (low, high) = self.y;
        let shade = self.sheet.colours.line.mix(0.45).filled();
        let _ = self.chart.draw_series([Rectangle::new([(from, low), (to, high)], shade)]);
    }

    /// A bar from zero; hollow bars tell two apart without colour.
    pub fn bar(&mut self, from: f64, to: f64, value: f64, colour: RGBColor, hollow: bool) {
        let corners = [(from, 0.0), (to, value)];
        if hollow {
            let _ = self.chart.draw_series([Rectangle::new(corners, colour.mix(0.25).filled())]);
            let edge = self.style(colour, 1.5);
            let _ = self.chart.draw_series([Rectangle::new(corners, edge)]);
        } else {
            let _ = self.chart.draw_series([Rectangle::new(corners, colour.filled())]);
        }
    }

    /// A filled cell between two corners.
    pub fn cell(&mut self, from: (f64, f64), to: (f64, f64), (red, green, blue): (u8, u8, u8)) {
        let fill = RGBColor(red, green, blue).filled();
        let _ = self.chart.draw_series([Rectangle::new([from, to], fill)]);
    }

    /// A tinted cell between two corners.
    pub fn tint(&mut self, from: (f64, f64), to: (f64, f64), colour: RGBColor) {
        let _ = self.chart.draw_series([Rectangle::new([from, to], colour.mix(0.3).filled())]);
    }

    /// A ring around a point.
    pub fn ring(&mut self, at: (f64, f64), colour: RGBColor) {
        let style = self.style(colour, 2.5);
        let _ = self.chart.draw_series([Circle::new(at, self.sheet.dots(7.0), style)]);
    }

    /// Where the plot lies on the canvas: left, top, right, bottom, CSS pixels.
    pub fn place(&self) -> [f64; 4] {
        let (x, y) = self.chart.plotting_area().get_pixel_range();
        [x.start, y.start, x.end, y.end].map(|dots| f64::from(dots) / self.sheet.scale)
    }

    /// Words at a point.
    pub fn words(&self, text: &str, x: f64, y: f64) {
        let at = self.at(x, y);
        self.sheet.write(text, (at.0 + 4.0 * self.sheet.scale, at.1), Side::Right, self.sheet.colours.ink);
    }
}
