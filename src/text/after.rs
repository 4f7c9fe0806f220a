//! What stands after the work, in words: ranges of readings, dates of care. The page and the headless command share it.

use super::words::Words;
use crate::core::after::care::Due;
use crate::core::after::icalendar::{self, EventWords};
use crate::core::after::start::{Expected, Reading};
use crate::core::after::{Date, Fitted, care};
use crate::core::message::{Arg, Message};
use crate::core::units::{Quantity, Unit};

/// Decimals that an instrument shows.
const fn decimals(unit: Unit) -> usize {
    match unit {
        Unit::Ampere | Unit::DegF | Unit::DegC => 1,
        _ => 0,
    }
}

/// A reading in words, in the reader's units. Condensate is read off a measuring cup: in mL.
pub fn reading(words: &Words, of: Reading, q: Quantity) -> String {
    if of == Reading::Condensate {
        let ml = Message::new("start-millilitres").with("ml", Arg::Number(q.base() * 1e6, 0));
        return words.say(&ml);
    }
    words.quantity_to(q, decimals(q.displayed(words.units()).unit))
}

/// The range of a reading in words.
pub fn range(words: &Words, e: &Expected) -> String {
    let part = |base: f64| Arg::Verbatim(reading(words, e.reading, e.quantity(base)));
    // Where nothing is too little, only the most counts.
    if e.low <= 0.0 && !matches!(e.reading, Reading::AirIn | Reading::AirOut) {
        return words.say(&Message::new("start-range-most").with("high", part(e.high)));
    }
    words.say(&Message::new("start-range").with("low", part(e.low)).with("high", part(e.high)))
}

/// How often a task comes, in words.
pub fn every(words: &Words, due: &Due) -> String {
    match due.every_months {
        None => words.key("care-once"),
        Some(months) if months % 12 == 0 => {
            words.say(&Message::new("care-every-years").with("years", i64::from(months / 12)))
        }
        Some(months) => words.say(&Message::new("care-every-months").with("months", i64::from(months))),
    }
}

/// When a task comes first, how often, and who does it, in words.
pub fn when(words: &Words, due: &Due) -> String {
    words.say(
        &Message::new("care-when")
            .with("first", Arg::Verbatim(due.first.iso()))
            .with("every", Arg::Verbatim(every(words, due)))
            .with("who", Message::new(due.hands.key())),
    )
}

/// The calendar file of a heater's care.
pub fn calendar(words: &Words, job: &str, fitted: &Fitted, installed: Date) -> String {
    icalendar::calendar(job, installed, &care::schedule(fitted, installed), &|due| EventWords {
        summary: words.key(due.task.key()),
        description: words.say(
            &Message::new("care-description")
                .with("who", Message::new(due.hands.key()))
                .with("how", due.how.clone()),
        ),
    })
}
