//! The frame of a chart: its heading, reading, canvas, legend and table.

use super::sheet::Sheet;
use crate::ui::browser::resize;
use crate::ui::components::{chart_looks, parts};
use crate::ui::state::page;
use leptos::html;
use leptos::prelude::*;
use std::sync::Arc;

/// What a sign in the legend stands for: its sign (`solid`, `dashed`, `thin`, `shade`, `band`) and words.
pub type Legend = Vec<(&'static str, Signal<String>)>;

/// What paints a chart on its sheet.
pub type Paint = Arc<dyn Fn(&Sheet) + Send + Sync>;

/// A table of figures: the heads of its columns, and its rows, the first cell of each being its head.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Figures {
    /// Heads of the columns.
    pub heads: Vec<String>,
    /// Rows.
    pub rows: Vec<Vec<String>>,
}

/// A chart. `draw` reads whatever signals it needs; it is called again when they, the size or the
/// colours change.
#[component]
pub fn ChartFrame(
    /// `data-test` and the stem of identities.
    code: &'static str,
    /// Key of the heading.
    heading: &'static str,
    reading: Signal<String>,
    legend: Signal<Legend>,
    figures: Signal<Figures>,
    draw: Paint,
    #[prop(optional)] tall: bool,
) -> impl IntoView {
    let page = page();
    let canvas = NodeRef::<html::Canvas>::new();
    let size = RwSignal::new((0.0, 0.0));
    Effect::new(move |_| {
        if let Some(canvas) = canvas.get() {
            resize::follow(&canvas, move |w, h| size.set((w, h)));
        }
    });
    Effect::new(move |_| {
        size.track();
        chart_looks::track();
        let Some(canvas) = canvas.get() else { return };
        if let Some(sheet) = Sheet::open(&canvas) {
            draw(&sheet);
        }
    });
    view! {
        <figure class="chart" class:tall=tall data-test=format!("chart-{code}") aria-labelledby=format!("{code}-heading")>
            <figcaption>
                <h3 id=format!("{code}-heading")>{page.key(heading)}</h3>
                <p data-test=format!("chart-{code}-reading")>{reading}</p>
            </figcaption>
            <canvas node_ref=canvas role="img" aria-labelledby=format!("{code}-heading")></canvas>
            <LegendList legend/>
            <FigureTable figures code/>
        </figure>
    }
}

#[component]
fn LegendList(legend: Signal<Legend>) -> impl IntoView {
    view! {
        <ul class="legend" aria-hidden="true">
            {move || legend.get().into_iter().map(|(sign, words)| view! {
                <li><span class="sign" data-sign=sign></span>{words}</li>
            }).collect_view()}
        </ul>
    }
}

/// The figures, folded; drawn once unfolded.
#[component]
fn FigureTable(figures: Signal<Figures>, code: &'static str) -> impl IntoView {
    let page = page();
    let open = RwSignal::new(false);
    let table = move || {
        let Figures { heads, rows } = figures.get();
        view! {
            <div class="scroll" tabindex="0" role="group" aria-label=page.key("page-chart-table")>
                <table>
                    {parts::heads(heads)}
                    <tbody>{rows.into_iter().map(row).collect_view()}</tbody>
                </table>
            </div>
        }
    };
    view! {
        <details class="data" data-test=format!("chart-{code}-table") on:toggle=move |_| open.set(true)>
            <summary>{page.key("page-chart-table")}</summary>
            {move || open.get().then(table)}
        </details>
    }
}

fn row(cells: Vec<String>) -> impl IntoView {
    let mut cells = cells.into_iter();
    let head = cells.next().unwrap_or_default();
    view! {
        <tr>
            <th scope="row">{head}</th>
            {cells.map(|c| view! { <td>{c}</td> }).collect_view()}
        </tr>
    }
}
