//! What would change the advice: open questions by what they move, each with the way to its answer, and who is cheapest
//! over the two numbers that matter most.

use super::futures::View;
use crate::core::futures::{BreakEvenMap, Changes, Sensitivity};
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::job::questions::Id;
use crate::ui::components::findings::Jump;
use crate::ui::state::Page;
use leptos::prelude::*;
use std::sync::Arc;

/// How many are listed at once.
const SHOWN: usize = 6;
/// Shares of the doubt below this are not worth a line.
const LEAST: f64 = 0.01;

/// The list, and the map.
pub fn changes(page: Page, view: &View) -> Option<AnyView> {
    let changes = view.seen.changes.clone()?;
    let outcome = view.of.0.clone();
    let about = Message::new("sure-changes-about")
        .with("heater", outcome.name_of(changes.advised))
        .with("rival", outcome.name_of(changes.next));
    let list = listed(page, &changes, view);
    let map = view.seen.map.clone().map(|map| table(page, view, Arc::new(map)));
    let view = view! {
        <section aria-labelledby="sure-changes-name" data-test="sure-changes">
            <h3 id="sure-changes-name">{page.key("sure-changes")}</h3>
            <p>{move || page.say(&about)}</p>
            <ol>{list}</ol>
            {map}
        </section>
    };
    Some(view.into_any())
}

fn listed(page: Page, changes: &Changes, view: &View) -> Vec<AnyView> {
    let worth = |s: &&Sensitivity| s.total >= LEAST || s.flips_to.is_some();
    changes.sensitivities.iter().filter(worth).take(SHOWN).map(|s| one(page, s, view)).collect()
}

fn one(page: Page, s: &Sensitivity, view: &View) -> AnyView {
    let outcome = &view.of.0;
    let mut says =
        vec![Message::new("sure-change-share").quantity("share", (100.0 * s.total).round(), Unit::Percent)];
    if let Some(id) = s.flips_to {
        says.push(Message::new("sure-change-flips").with("heater", outcome.name_of(id)));
    }
    if let Some(even) = &s.break_even {
        says.push(
            Message::new("sure-change-even")
                .with("value", even.value)
                .with("below", outcome.name_of(even.below))
                .with("above", outcome.name_of(even.above)),
        );
    }
    let id = Id::from_code(&s.code);
    let name = match id {
        Some(id) => view! { <Jump id/> }.into_any(),
        None => {
            let key = future_key(&s.code);
            view! { <p>{page.key(key)}</p> }.into_any()
        }
    };
    let says = says.into_iter().map(|m| view! { <span>{move || page.say(&m)} " "</span> }).collect_view();
    view! { <li>{name} <p>{says}</p></li> }.into_any()
}

/// What nobody can know today.
fn future_key(code: &str) -> &'static str {
    match code {
        "future_lives" => "sure-future-lives",
        "future_prices" => "sure-future-prices",
        "future_household" => "sure-future-household",
        _ => "sure-future-weather",
    }
}

/// Who is cheapest over two numbers: a table of letters, said below.
fn table(page: Page, view: &View, map: Arc<BreakEvenMap>) -> impl IntoView {
    let mut ids: Vec<_> = Vec::new();
    for id in &map.cheapest {
        if !ids.contains(id) {
            ids.push(*id);
        }
    }
    let letter = |at: usize| char::from(b'A' + (at % 26) as u8).to_string();
    let outcome = view.of.0.clone();
    let key = ids
        .iter()
        .enumerate()
        .map(|(at, id)| {
            let name = outcome.name_of(*id);
            view! { <li><strong>{letter(at)}</strong> " " {move || page.say(&name)}</li> }
        })
        .collect_view();
    let question = |code: &str| Id::from_code(code).map(|id| page.key(&id.key())).unwrap_or_default();
    let (across, up) = (question(&map.x.code), question(&map.y.code));
    let columns = map.x.values.len();
    let heads = {
        let map = map.clone();
        move || {
            let cell = |q: &crate::core::units::Quantity| view! { <th scope="col">{page.quantity(*q)}</th> };
            map.x.values.iter().map(cell).collect_view()
        }
    };
    // The highest on top, as on a map.
    let rows = (0..map.y.values.len())
        .rev()
        .map(|row| {
            let value = map.y.values[row];
            let cells = map.cheapest.iter().skip(row * columns).take(columns);
            let cells = cells
                .map(|id| ids.iter().position(|i| i == id).map(letter))
                .map(|letter| view! { <td>{letter}</td> })
                .collect_view();
            view! { <tr><th scope="row">{move || page.quantity(value)}</th>{cells}</tr> }
        })
        .collect_view();
    view! {
        <h4 id="sure-map-name">{page.key("sure-map")}</h4>
        <p>{page.key("sure-map-across")} " " {across}</p>
        <p>{page.key("sure-map-up")} " " {up}</p>
        <ul data-test="sure-map-key">{key}</ul>
        <div class="scroll" tabindex="0" role="group" aria-labelledby="sure-map-name">
            <table data-test="sure-map">
                <thead><tr><td></td>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}
