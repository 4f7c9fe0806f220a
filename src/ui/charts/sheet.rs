//! The sheet a chart is drawn on: a canvas with as many dots as the screen has, and the page's colours.
//!
//! Text is written by the canvas itself: plotters measures text with elements that carry inline styles,
//! which the page's content security policy forbids.

use leptos::prelude::*;
use plotters::style::RGBColor;
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Size of text, CSS pixels.
const TEXT_PX: f64 = 13.0;

/// Where a text stands, seen from its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// To the left, level with the point.
    Left,
    /// Below, centred.
    Below,
    /// To the right, level with the point.
    Right,
}

/// The page's colours, as the style sheet has them now.
#[derive(Clone, Copy, Debug)]
pub struct Colours {
    /// Text.
    pub ink: RGBColor,
    /// Lesser text.
    pub soft: RGBColor,
    /// Lines between marks.
    pub line: RGBColor,
    /// The chosen heater.
    pub copper: RGBColor,
    /// The heater beside it.
    pub rival: RGBColor,
}

/// A canvas made ready.
pub struct Sheet {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    /// Dots a CSS pixel.
    pub scale: f64,
    /// Width in CSS pixels.
    pub width: f64,
    /// The page's colours.
    pub colours: Colours,
}

impl Sheet {
    /// Fits the canvas to its place and to the screen, and clears it. `None` where the browser has no
    /// canvas, or the canvas no size yet.
    pub fn open(canvas: &HtmlCanvasElement) -> Option<Sheet> {
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let rect = canvas.get_bounding_client_rect();
        let (width, height) = (rect.width(), rect.height());
        if width < 1.0 || height < 1.0 {
            return None;
        }
        let scale = window().device_pixel_ratio().clamp(1.0, 4.0);
        // Setting the size also clears.
        canvas.set_width((width * scale).round() as u32);
        canvas.set_height((height * scale).round() as u32);
        let colours = Colours::now(&context)?;
        Some(Sheet { canvas: canvas.clone(), context, scale, width, colours })
    }

    /// The canvas.
    pub fn canvas(&self) -> HtmlCanvasElement {
        self.canvas.clone()
    }

    /// CSS pixels in dots.
    pub fn dots(&self, css: f64) -> u32 {
        (css * self.scale).round() as u32
    }

    fn set_font(&self) {
        self.context.set_font(&format!(
            "{}px system-ui, \"Segoe UI\", Roboto, \"DejaVu Sans\", sans-serif",
            TEXT_PX * self.scale
        ));
    }

    /// Whether lines drawn from now on are dashed; plotters draws on the same canvas.
    pub fn dash(&self, dashed: bool) {
        let pattern = js_sys::Array::new();
        if dashed {
            pattern.push(&(7.0 * self.scale).into());
            pattern.push(&(5.0 * self.scale).into());
        }
        // Refused, the line is drawn whole, and its colour still tells it apart.
        let _ = self.context.set_line_dash(&pattern);
    }

    /// Width of a text in CSS pixels.
    pub fn text_width(&self, text: &str) -> f64 {
        self.set_font();
        self.context.measure_text(text).map_or(0.0, |m| m.width()) / self.scale
    }

    /// Writes a text at a point in dots.
    pub fn write(&self, text: &str, at: (f64, f64), side: Side, colour: RGBColor) {
        let (align, baseline) = match side {
            Side::Left => ("right", "middle"),
            Side::Below => ("center", "top"),
            Side::Right => ("left", "middle"),
        };
        self.set_font();
        self.context.set_text_align(align);
        self.context.set_text_baseline(baseline);
        self.context.set_fill_style_str(&format!("rgb({},{},{})", colour.0, colour.1, colour.2));
        // A text that the canvas refuses is still in the table under the chart.
        let _ = self.context.fill_text(text, at.0, at.1);
    }
}

impl Colours {
    fn now(context: &CanvasRenderingContext2d) -> Option<Colours> {
        let style = window().get_computed_style(&document().document_element()?).ok()??;
        let colour = |name: &str| {
            let text = style.get_property_value(name).unwrap_or_default();
            // The canvas turns any colour of the style sheet, system colours too, into #rrggbb.
            context.set_fill_style_str(text.trim());
            let hex = context.fill_style().as_string().unwrap_or_default();
            let part =
                |at: usize| hex.get(at..at + 2).and_then(|p| u8::from_str_radix(p, 16).ok()).unwrap_or(128);
            RGBColor(part(1), part(3), part(5))
        };
        Some(Colours {
            ink: colour("--ink"),
            soft: colour("--soft"),
            line: colour("--line"),
            copper: colour("--copper"),
            rival: colour("--rival"),
        })
    }
}
