//! Jobs of any content, for properties.

use proptest::prelude::*;
use tankful::core::case::{HeaterKind, Provenance};
use tankful::core::climate::places;
use tankful::core::units::{Quantity, Unit};
use tankful::job::done::Done;
use tankful::job::file::units_of;
use tankful::job::offer::{AdderKind, Figure, Heater, MOST_HEATERS, Offer};
use tankful::job::questions::{self, Id, Kind, Question, Value};
use tankful::job::{Aside, Job, JobId, Measured, Part, Why};

/// A number from `low` to `high` with at most this many decimals, as people type it.
fn typed(low: f64, high: f64, share: f64, decimals: usize) -> f64 {
    let text = format!("{:.decimals$}", low + share * (high - low));
    text.parse::<f64>().expect("a number").clamp(low, high)
}

/// A value that a question takes.
pub fn value(id: Id) -> BoxedStrategy<Value> {
    match Question::get(id).kind {
        Kind::Number { low, high, .. } => {
            let units = units_of(Question::get(id));
            (0..units.len(), 0.0..=1.0f64, 0usize..6)
                .prop_map(move |(i, share, decimals)| {
                    let unit = units[i];
                    let limit = |q: Quantity| q.to(unit).expect("of the same kind").value;
                    Value::number(typed(limit(low), limit(high), share, decimals), unit)
                })
                .boxed()
        }
        Kind::Choice(options) => proptest::sample::select(options).prop_map(Value::code).boxed(),
        Kind::Place => {
            let all: Vec<&str> = places::all().map(|p| p.id).collect();
            proptest::sample::select(all).prop_map(Value::code).boxed()
        }
    }
}

fn heater() -> impl Strategy<Value = Heater> {
    let figure = (any::<bool>(), 0.0..=1.0f64, 0usize..4, any::<bool>());
    let kinds: Vec<HeaterKind> = HeaterKind::CODES.iter().filter_map(|c| HeaterKind::from_code(c)).collect();
    (".{0,70}", proptest::sample::select(kinds), proptest::collection::vec(figure, Figure::ALL.len()))
        .prop_map(|(name, kind, figures)| {
            let mut heater = Heater::new(kind);
            heater.call(&name);
            for (f, (given, share, decimals, si)) in Figure::ALL.into_iter().zip(figures) {
                let unit = if si { f.units().1 } else { f.units().0 };
                let (low, high) = f.range();
                let limit = |q: Quantity| q.to(unit).expect("of the same kind").value;
                let q = Quantity::new(typed(limit(low), limit(high), share, decimals), unit);
                heater.set(f, given.then_some(q)).expect("within the range");
            }
            heater
        })
}

/// An offer.
pub fn offer() -> impl Strategy<Value = Offer> {
    let adder = (proptest::sample::select(AdderKind::ALL.to_vec()), ".{0,20}", 1u32..100_000, any::<bool>());
    (
        "[a-zA-Z ]{0,20}",
        proptest::collection::vec(heater(), 0..=MOST_HEATERS),
        proptest::collection::vec(adder, 0..8),
        0u32..5_000,
    )
        .prop_map(|(name, heaters, adders, labour)| {
            let name = name.split_whitespace().collect::<Vec<_>>().join(" ");
            let mut offer = Offer { name, heaters, labour: f64::from(labour), ..Offer::default() };
            for (kind, name, price, always) in adders {
                offer.price_adder(kind, &name, f64::from(price)).expect("a price");
                if let Some(last) = offer.adders.last_mut() {
                    last.always = always;
                }
            }
            offer
        })
}

fn answer() -> impl Strategy<Value = (Id, Value, bool)> {
    proptest::sample::select(Id::ALL).prop_flat_map(|id| (Just(id), value(id), any::<bool>()))
}

/// What was done: few codes, so that two of them clash.
pub fn done() -> impl Strategy<Value = Done> {
    let is = prop_oneof![
        ".{0,20}".prop_map(|text| Value::code(&text)),
        (-1e6..1e6f64, proptest::sample::select(Unit::ALL)).prop_map(|(v, unit)| Value::number(v, unit)),
    ];
    let entry = ("(part|step|reading)\\.[a-c]|[^ ]{0,70}", is, 0u32..100, ".{0,50}");
    proptest::collection::vec(entry, 0..8).prop_map(|all| {
        let mut done = Done::default();
        for (what, is, at, who) in all {
            done.note(&what, is, f64::from(at), &who);
        }
        done
    })
}

/// A job.
pub fn job() -> impl Strategy<Value = Job> {
    let texts = (".{0,90}", ".{0,220}", "(.|\n){0,300}");
    let lists = (
        proptest::collection::vec(answer(), 0..60),
        proptest::collection::vec(proptest::sample::select(Id::ALL), 0..10),
        proptest::collection::vec((answer(), ".{0,50}", 0u32..u32::MAX), 0..5),
        proptest::collection::vec((".{0,20}", ".{0,100}", 0usize..3), 0..4),
    );
    (any::<u64>(), any::<u32>(), 0u64..1 << 42, any::<bool>(), texts, lists, offer(), done()).prop_map(
        |(id, revision, at, archived, (name, place, notes), (answers, asked, log, aside), offer, done)| {
            let mut job = Job::new(JobId::new(id), at as f64);
            (job.revision, job.archived, job.offer) = (u64::from(revision), archived, offer);
            job.done = done;
            for (part, text) in [(Part::Name, name), (Part::Place, place), (Part::Notes, notes)] {
                job.write(part, &text);
            }
            for (id, value, measured) in answers {
                let from = if measured { Provenance::Measured } else { Provenance::Answered };
                job.answer(id, value, from, at as f64 + 1.0, "Ann").expect("within the range");
            }
            job.asked = questions::all().map(|q| q.id).filter(|id| asked.contains(id)).collect();
            for ((id, value, _), who, at) in log {
                let who = tankful::job::offer::tidy(&who, 40);
                job.record(Measured { id, value, at_ms: f64::from(at), who });
            }
            for (field, text, why) in aside {
                job.set_aside(&field, text, Why::ALL[why], at as f64);
            }
            job
        },
    )
}

/// A thing set aside, as a pair.
pub fn told(aside: &[Aside]) -> Vec<(&str, &str)> {
    aside.iter().map(|a| (a.field.as_str(), a.text.as_str())).collect()
}

/// A quantity in gallons.
pub fn gal(v: f64) -> Quantity {
    Quantity::new(v, Unit::Gallon)
}
