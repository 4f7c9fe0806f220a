//! The key figures of the advice, large, each opening its working.

use super::working::Figure;
use crate::core::candidates::CandidateId;
use crate::core::outcome::Outcome;
use crate::core::units::{Quantity, Unit};
use crate::ui::reading;
use crate::ui::state::page;
use leptos::prelude::*;
use std::sync::Arc;

/// The key figures.
#[component]
pub fn Tiles(outcome: Arc<Outcome>) -> impl IntoView {
    let page = page();
    let id = outcome.advice.best;
    let best = outcome.of(id)?;
    let dollars = move |v: f64| Signal::derive(move || page.quantity(Quantity::new(v, Unit::Dollar)));
    let payback = reading::payback_cell(&best.cost);
    let saved = (id != CandidateId::Keep).then(|| reading::saved_a_year(&outcome)).flatten();
    let years = best.cost.spent.len().saturating_sub(1) as i64;
    let total = crate::core::message::Message::new("page-tile-total").with("years", years);
    let runs = reading::running_year(&best.cost);
    Some(view! {
        <dl class="tiles" data-test="tiles">
            {saved.map(|saved| view! {
                <Tile
                    label=page.key(if saved < 0.0 { "page-tile-costs-more" } else { "page-tile-saves" })
                    id
                    figure=reading::SAVED
                    value=dollars(saved.abs())
                />
            })}
            <Tile label=page.key("page-tile-running") id figure=reading::RUNNING value=dollars(runs)/>
            <Tile label=page.key("page-tile-upfront") id figure=reading::UPFRONT value=dollars(best.cost.upfront)/>
            {(id != CandidateId::Keep).then(|| view! {
                <Tile label=page.key("page-tile-payback") id figure=reading::PAYBACK value=Signal::derive(move || page.say(&payback))/>
            })}
            <Tile label=page.words_now().say(&total) id figure=reading::NET_PRESENT_COST value=dollars(best.cost.net_present_cost)/>
        </dl>
    })
}

#[component]
fn Tile(label: String, id: CandidateId, figure: &'static str, value: Signal<String>) -> impl IntoView {
    view! {
        <div>
            <dt>{label}</dt>
            <dd><Figure value candidate=id figure/></dd>
        </div>
    }
}
