//! What would change the advice: open questions by what they move, each with the way to its answer.

use crate::core::case::Provenance;
use crate::core::futures::{Changes, Sensitivity};
use crate::core::message::Message;
use crate::core::outcome::Outcome;
use crate::core::units::Unit;
use crate::job::questions::Id;
use crate::text::report::futures as said;
use crate::ui::components::findings::Jump;
use crate::ui::model::Shared;
use crate::ui::state::Page;
use leptos::prelude::*;

/// How many are listed at once.
const SHOWN: usize = 6;
/// Shares of the doubt below this are not worth a line.
const LEAST: f64 = 0.01;
/// Dollars below this are not worth naming.
const LEAST_DOLLARS: f64 = 10.0;

/// The list.
pub fn changes(page: Page, of: &Shared, changes: &Changes) -> AnyView {
    let outcome = &of.0;
    let about = Message::new("sure-changes-about")
        .with("heater", outcome.name_of(changes.advised))
        .with("rival", outcome.name_of(changes.next));
    let worth = |s: &&Sensitivity| s.total >= LEAST || s.flips_to.is_some();
    let list: Vec<AnyView> =
        changes.sensitivities.iter().filter(worth).take(SHOWN).map(|s| one(page, s, outcome)).collect();
    view! {
        <section aria-labelledby="sure-changes-name" data-test="sure-changes">
            <h3 id="sure-changes-name">{page.key("sure-changes")}</h3>
            <p>{move || page.say(&about)}</p>
            <ol>{list}</ol>
        </section>
    }
    .into_any()
}

/// What an open question does to the choice: the heater that it may turn to, and how far it moves the difference in cost. One
/// that makes another house: with which answer it turns.
pub fn weight(s: &Sensitivity, outcome: &Outcome) -> Vec<Message> {
    if let Some(otherwise) = said::otherwise(s, outcome) {
        return vec![otherwise];
    }
    let turns = s.flips_to.map(|id| Message::new("sure-change-flips").with("heater", outcome.name_of(id)));
    let dollars = ((s.difference.1 - s.difference.0).abs() / LEAST_DOLLARS).round() * LEAST_DOLLARS;
    let moves = (dollars >= LEAST_DOLLARS)
        .then(|| Message::new("sure-change-moves").quantity("amount", dollars, Unit::Dollar));
    turns.into_iter().chain(moves).collect()
}

fn one(page: Page, s: &Sensitivity, outcome: &Outcome) -> AnyView {
    let mut says = Vec::new();
    if s.alternative.is_none() {
        let share = (100.0 * s.total).round();
        says.push(Message::new("sure-change-share").quantity("share", share, Unit::Percent));
    }
    says.extend(weight(s, outcome));
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
    // Another house is none any more once somebody has said which it is, although the list still stands.
    let other_house = s.alternative.is_some();
    let gone = move || other_house && id.is_some_and(|id| page.provenance(id) != Provenance::Assumed);
    let test = format!("change-{}", s.code);
    view! { <li hidden=gone data-test=test>{name} <p>{says}</p></li> }.into_any()
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
