//! Small drawings that explain a finding: data for the figures they show, and one renderer for all. Every drawing has
//! its sentence; the picture itself is not read aloud.

use crate::core::message::Arg;
use crate::core::outcome::Finding;
use crate::ui::state::Page;
use leptos::prelude::*;
use std::fmt::Write as _;

/// Width and height of every drawing, in its own units.
const SIZE: (f64, f64) = (320.0, 200.0);
/// Where the floor is.
const FLOOR: f64 = 180.0;

/// A drawing: strokes and words. The class says what a stroke is: `house` (walls, floor), `thing` (the tank, a box),
/// `way` (pipe, wire, sweep), `gauge` (a measured length).
#[derive(Default)]
struct Sketch {
    strokes: Vec<(&'static str, Vec<(f64, f64)>)>,
    words: Vec<(f64, f64, String)>,
    says: &'static str,
}

impl Sketch {
    fn new(says: &'static str) -> Sketch {
        let mut sketch = Sketch { says, ..Sketch::default() };
        sketch.stroke("house", &[(8.0, FLOOR), (SIZE.0 - 8.0, FLOOR)]);
        sketch
    }

    fn stroke(&mut self, class: &'static str, points: &[(f64, f64)]) {
        self.strokes.push((class, points.to_vec()));
    }

    fn frame(&mut self, class: &'static str, x: f64, y: f64, w: f64, h: f64) {
        self.stroke(class, &[(x, y), (x + w, y), (x + w, y + h), (x, y + h), (x, y)]);
    }

    fn word(&mut self, x: f64, y: f64, text: String) {
        self.words.push((x, y, text));
    }
}

/// The drawing of a finding; nothing for checks that need none.
pub fn of(page: Page, f: &Finding) -> AnyView {
    let sketch = match f.check.as_ref() {
        "stand-up" | "headroom" => stand_up(page, f),
        "drain" => drain(page, f),
        "circuit" | "conductor" | "voltage-drop" | "disconnect" => circuit(page, f),
        "relief" => relief(page, f),
        _ => return ().into_any(),
    };
    draw(page, sketch)
}

/// The one renderer.
fn draw(page: Page, sketch: Sketch) -> AnyView {
    let line = |(class, points): (&'static str, Vec<(f64, f64)>)| {
        let mut path = String::new();
        for (x, y) in points {
            let _ = write!(path, "{x:.1},{y:.1} ");
        }
        view! { <polyline class=class points=path></polyline> }
    };
    let word =
        |(x, y, text): (f64, f64, String)| view! { <text x=x.to_string() y=y.to_string()>{text}</text> };
    let lines = sketch.strokes.into_iter().map(line).collect_view();
    let words = sketch.words.into_iter().map(word).collect_view();
    view! {
        <figure class="sketch">
            <svg viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1) aria-hidden="true">{lines}{words}</svg>
            <figcaption>{page.key(sketch.says)}</figcaption>
        </figure>
    }
    .into_any()
}

/// A figure of the finding in SI, and in words.
fn figure(page: Page, f: &Finding, label: &str) -> Option<(f64, String)> {
    let input = f.figures.iter().find(|i| i.label == label)?;
    match &input.value {
        Arg::Quantity(q) => Some((q.base(), page.words().arg(&input.value))),
        _ => None,
    }
}

/// The same in words alone; empty where the finding has none.
fn said(page: Page, f: &Finding, label: &str) -> String {
    figure(page, f, label).map(|(_, text)| text).unwrap_or_default()
}

/// The tank between lying and standing under its ceiling: what it sweeps is its diagonal.
fn stand_up(page: Page, f: &Finding) -> Sketch {
    let tall = figure(page, f, "figure-tank-height").map_or(1.5, |(v, _)| v);
    let wide = figure(page, f, "figure-tank-diameter").map_or(0.55, |(v, _)| v);
    let rises = f.check == "stand-up";
    let (label, says) =
        if rises { ("figure-stand-up", "sketch-stand-up") } else { ("figure-headroom", "sketch-headroom") };
    let (ceiling, has) = figure(page, f, label).unwrap_or((tall, String::new()));
    let mut s = Sketch::new(says);
    // The higher of tank and ceiling fills the picture.
    let top = libm::hypot(tall, wide).max(ceiling);
    let px = 150.0 / top;
    let lift = FLOOR - ceiling * px;
    s.stroke("house", &[(8.0, lift), (SIZE.0 - 8.0, lift)]);
    let (h, w) = (tall * px, wide * px);
    let x = 110.0;
    if rises {
        // On its edge: the diagonal stands upright.
        let (sin, cos) = (wide / libm::hypot(tall, wide), tall / libm::hypot(tall, wide));
        let at = |along: f64, up: f64| (x + along * cos - up * sin, FLOOR - along * sin - up * cos);
        s.stroke("thing", &[at(0.0, 0.0), at(w, 0.0), at(w, h), at(0.0, h), at(0.0, 0.0)]);
        s.stroke("way", &[at(0.0, 0.0), at(w, h)]);
        s.word(x + w + 6.0, FLOOR - 0.3 * h, said(page, f, "figure-diagonal"));
    } else {
        s.frame("thing", x - w, FLOOR - h, w, h);
        s.word(x + 14.0, FLOOR - 0.5 * h, said(page, f, "figure-tank-height"));
    }
    s.stroke("gauge", &[(232.0, FLOOR), (232.0, lift)]);
    s.word(240.0, 0.5 * (FLOOR + lift), has);
    s
}

/// The condensate's way: downhill to the drain, or up by a pump.
fn drain(page: Page, f: &Finding) -> Sketch {
    let rise = figure(page, f, "figure-drain-rise").map_or(-0.3, |(v, _)| v);
    let pumped = f.likely != crate::core::outcome::Fit::Fits;
    let mut s = Sketch::new(if pumped { "sketch-drain-pump" } else { "sketch-drain-slope" });
    s.frame("thing", 20.0, 50.0, 52.0, FLOOR - 50.0);
    let outlet = (72.0, 110.0);
    let end = 280.0;
    if pumped {
        s.frame("thing", 96.0, FLOOR - 22.0, 34.0, 22.0);
        let up = (110.0 - rise.clamp(0.3, 3.0) * 30.0).max(16.0);
        s.stroke("way", &[outlet, (104.0, 110.0), (104.0, FLOOR - 22.0)]);
        s.stroke("way", &[(120.0, FLOOR - 22.0), (120.0, up), (end, up), (end, up + 24.0)]);
        s.stroke("gauge", &[(148.0, 110.0), (148.0, up)]);
        s.word(154.0, 0.5 * (110.0 + up) + 4.0, said(page, f, "figure-drain-rise"));
        s.word(190.0, up - 6.0, said(page, f, "figure-drain-run"));
    } else {
        s.stroke("way", &[outlet, (end, 140.0), (end, FLOOR)]);
        s.stroke("gauge", &[(end + 8.0, 110.0), (end + 8.0, 140.0)]);
        s.stroke("gauge", &[(72.0, 100.0), (end, 100.0)]);
        s.word(150.0, 92.0, said(page, f, "figure-drain-run"));
        s.word(end - 58.0, 158.0, said(page, f, "figure-fall"));
    }
    s
}

/// Panel, run, switch, heater.
fn circuit(page: Page, f: &Finding) -> Sketch {
    let mut s = Sketch::new("sketch-circuit");
    s.frame("thing", 20.0, 50.0, 46.0, 70.0);
    s.stroke("thing", &[(28.0, 70.0), (58.0, 70.0)]);
    s.stroke("thing", &[(28.0, 82.0), (58.0, 82.0)]);
    s.stroke("way", &[(66.0, 76.0), (90.0, 76.0), (90.0, 30.0), (214.0, 30.0), (214.0, 76.0)]);
    s.frame("thing", 206.0, 76.0, 16.0, 24.0);
    s.stroke("way", &[(214.0, 100.0), (214.0, 118.0), (252.0, 118.0)]);
    s.frame("thing", 252.0, 60.0, 48.0, FLOOR - 60.0);
    s.word(20.0, 138.0, said(page, f, "figure-breaker"));
    s.word(112.0, 22.0, said(page, f, "figure-run"));
    s.word(112.0, 46.0, said(page, f, "figure-needed-amps"));
    s.word(150.0, 138.0, said(page, f, "figure-amps"));
    s
}

/// The relief valve and its pipe.
fn relief(page: Page, f: &Finding) -> Sketch {
    let mut s = Sketch::new("sketch-relief");
    s.frame("thing", 90.0, 30.0, 70.0, FLOOR - 30.0);
    s.frame("thing", 160.0, 40.0, 16.0, 12.0);
    s.stroke("thing", &[(168.0, 40.0), (168.0, 32.0), (180.0, 32.0)]);
    s.stroke("way", &[(176.0, 46.0), (192.0, 46.0), (192.0, FLOOR - 16.0)]);
    s.stroke("gauge", &[(210.0, FLOOR - 16.0), (210.0, FLOOR)]);
    s.word(216.0, FLOOR - 4.0, said(page, f, "figure-relief-end"));
    s.word(200.0, 106.0, said(page, f, "figure-relief-length"));
    s
}
