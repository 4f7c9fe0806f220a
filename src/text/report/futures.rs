//! Futures and what would change the advice, in words.

use super::super::words::Words;
use crate::core::climate::places;
use crate::core::futures::{Changes, Futures, Sensitivity};
use crate::core::message::{Arg, Message};
use crate::core::outcome::Outcome;
use crate::core::units::{Quantity, Unit};
use crate::job::questions::Id;

/// Most lines about what would change the advice.
const MOST: usize = 8;
/// What makes less of the difference than this is not worth a line, unless it turns the advice.
const LEAST: f64 = 0.02;

/// A line a candidate.
pub fn candidates(words: &Words, futures: &Futures, outcome: &Outcome) -> Vec<String> {
    let percent = |share: f64| Quantity::new(100.0 * share, Unit::Percent);
    let dollars = |v: f64| Quantity::new((v / 10.0).round() * 10.0, Unit::Dollar);
    let of = futures.candidates.iter().filter(|c| c.fits).map(|c| {
        let message = Message::new("report-future")
            .with("heater", outcome.name_of(c.id))
            .with("low", dollars(c.net_present_cost.low))
            .with("high", dollars(c.net_present_cost.high))
            .with("chance", percent(c.cheapest))
            .with("cold", percent(c.runs_cold));
        words.say(&message)
    });
    of.collect()
}

/// How often the advised heater costs least, and how often it or another of its kind; `None` where it is none of the futures'.
pub fn advised(futures: &Futures, outcome: &Outcome) -> Option<Message> {
    let hundredths = |share: f64| Arg::Number((100.0 * share).round(), 0);
    let advised = futures.of(futures.advised)?;
    let (own, alike) = (hundredths(advised.cheapest), hundredths(futures.cheapest_alike));
    let message = match own == alike {
        true => Message::new("sure-cheapest"),
        false => Message::new("sure-cheapest-kind").with("alike", alike),
    };
    Some(message.with("heater", outcome.name_of(advised.id)).with("chance", own))
}

/// A line a question that can turn the advice, or moves it.
pub fn changes(words: &Words, changes: &Changes, outcome: &Outcome) -> Vec<String> {
    let worth = |s: &&Sensitivity| s.flips_to.is_some() || s.total >= LEAST;
    changes.sensitivities.iter().filter(worth).take(MOST).map(|s| change(words, s, outcome)).collect()
}

/// With which answer another heater would be the better choice; `None` where no other house turns the advice.
pub fn otherwise(s: &Sensitivity, outcome: &Outcome) -> Option<Message> {
    let (code, heater) = (s.alternative.as_deref()?, outcome.name_of(s.flips_to?));
    let id = Id::from_code(&s.code)?;
    let place = if id == Id::Place { places::by_id(code) } else { None };
    let message = match place {
        Some(place) => Message::new("report-change-place")
            .with("place", Arg::Verbatim(place.name.to_owned()))
            .with("region", Arg::Verbatim(place.region.name().to_owned())),
        None => {
            let option = Message::new(format!("{}-{}", id.key(), code.replace('_', "-")));
            Message::new("report-change-option").with("option", option)
        }
    };
    Some(message.with("heater", heater))
}

fn change(words: &Words, s: &Sensitivity, outcome: &Outcome) -> String {
    let what = match Id::from_code(&s.code) {
        Some(id) => words.question(id),
        None => words.key(&format!("report-{}", s.code.replace('_', "-"))),
    };
    if let Some(otherwise) = otherwise(s, outcome) {
        return format!("{what}: {}", words.say(&otherwise));
    }
    let share = Quantity::new(100.0 * s.total, Unit::Percent);
    let mut said = vec![words.say(&Message::new("report-change").with("share", share))];
    if let Some(id) = s.flips_to.filter(|_| s.open) {
        said.push(words.say(&Message::new("report-change-turns").with("heater", outcome.name_of(id))));
    }
    if let Some(b) = &s.break_even {
        let message = Message::new("report-change-even")
            .with("value", b.value)
            .with("below", outcome.name_of(b.below))
            .with("above", outcome.name_of(b.above));
        said.push(words.say(&message));
    }
    format!("{what}: {}", said.join(" "))
}
