//! What must hold for any house.

use super::*;
use proptest::prelude::*;
use tankful::core::message::{Arg, Message};
use tankful::core::units::UnitSystem;
use tankful::job::questions::{Kind, Question, all};
use tankful::text::{Language, Words};

/// A value of a question: somewhere between its limits, or one of its options.
fn value(q: &Question, at: f64) -> Value {
    match q.kind {
        Kind::Number { low, high, us, .. } => {
            let base = low.base() + at * (high.base() - low.base());
            let near = us.from_base(base).clamp(us.from_base(low.base()), us.from_base(high.base()));
            Value::number(near, us)
        }
        Kind::Choice(options) => {
            Value::code(options[((at * options.len() as f64) as usize).min(options.len() - 1)])
        }
        Kind::Place => Value::code("us-pa-philadelphia"),
    }
}

/// Any house: some questions answered, anywhere in their range, the corners too.
pub fn house() -> impl Strategy<Value = Answers> {
    let at = prop_oneof![Just(0.0), Just(1.0), 0.0..1.0f64];
    let one = proptest::option::weighted(0.5, at);
    proptest::collection::vec(one, all().count()).prop_map(|picks| {
        let mut answers = Answers::new();
        for (q, at) in all().zip(picks) {
            if let Some(at) = at {
                // Rounding at a limit may refuse it: then it stays open.
                let _ = answers.set(q.id, value(q, at), Provenance::Answered);
            }
        }
        answers
    })
}

fn finite(message: &Message) -> bool {
    message.args.iter().all(|(_, arg)| match arg {
        Arg::Quantity(q) => q.value.is_finite(),
        Arg::Message(inner) => finite(inner),
        _ => true,
    })
}

/// What may only help when it grows (or shrinks, where marked so), with the check it belongs to.
const HELPS: [(Id, &str, bool); 16] = [
    (Id::Headroom, "headroom", true),
    (Id::Footprint, "footprint", true),
    (Id::WayIn, "way-in", true),
    (Id::StandUp, "stand-up", true),
    (Id::ServiceSpace, "service-space", true),
    (Id::RoomVolume, "air-volume", true),
    (Id::RoomVolume, "burner-air", true),
    (Id::Breaker, "circuit", true),
    (Id::FreeSpaces, "panel", true),
    (Id::ServiceRating, "panel", true),
    (Id::LargeLoads, "panel", false),
    (Id::RunLength, "voltage-drop", false),
    (Id::DrainRise, "drain", false),
    (Id::DrainDistance, "drain", false),
    (Id::Pressure, "pressure", false),
    (Id::QuietDistance, "noise", true),
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Whatever was answered, every check gives finite figures and words that want for nothing, what stops the job
    /// first stands first, and work is asked for exactly where it may be needed.
    #[test]
    fn any_house_gets_sound_findings(answers in house()) {
        let case = complete(&answers);
        let words = Words::new(Language::ENGLISH, UnitSystem::Us);
        for candidate in offered::candidates(&case) {
            let found = checks::all(&Seen { candidate: &candidate, case: &case, year: year(), opened: Some(&Opened { door: year().clone(), ducts: year().clone() }), rules: &US });
            prop_assert!(found.windows(2).all(|w| !w[1].stops_before(&w[0])));
            for f in &found {
                let says: Vec<&Message> = std::iter::once(&f.says).chain(f.work.iter().map(|w| &w.says)).chain(&f.lets_in).chain(&f.caution).collect();
                for m in says {
                    prop_assert!(finite(m), "{}: {m:?}", f.check);
                    prop_assert!(words.faults(m).is_empty(), "{}: {:?}", f.check, words.faults(m));
                }
                for figure in &f.figures {
                    prop_assert!(words.has(&figure.label), "{}", figure.label);
                    if let Arg::Quantity(q) = &figure.value {
                        prop_assert!(q.value.is_finite(), "{}: {}", f.check, figure.label);
                    }
                }
                prop_assert!(f.fit != Fit::FitsWithWork || !f.work.is_empty(), "{} names no work", f.check);
                prop_assert!(f.fit != Fit::DoesNotFit || f.lets_in.is_some(), "{} lets nothing in", f.check);
                prop_assert!(f.fit != Fit::MeasureFirst || !f.asks.is_empty(), "{} asks nothing", f.check);
                prop_assert!(f.likely <= f.worst, "{}", f.check);
                prop_assert!(f.asks.iter().all(|code| Id::from_code(code).is_some()), "{}", f.check);
                for w in &f.work {
                    prop_assert!(w.kind.sizes().iter().all(|name| w.size(name).is_some()), "{:?}", w);
                    prop_assert!(w.says.args.iter().all(|(name, _)| w.kind.sizes().contains(&name.as_ref())), "{:?}", w);
                }
            }
        }
    }

    /// A larger room, breaker, drain or headroom, measured, never makes its finding worse.
    #[test]
    fn more_room_never_makes_it_worse(answers in house(), a in 0.0..1.0f64, b in 0.0..1.0f64) {
        let (less, more) = if a < b { (a, b) } else { (b, a) };
        for (id, check, up) in HELPS {
            let (worse, better) = if up { (less, more) } else { (more, less) };
            let of = |at: f64| {
                let mut answers = answers.clone();
                answers.set(id, value(Question::get(id), at), Provenance::Measured).ok()?;
                Some(complete(&answers))
            };
            let (Some(worse), Some(better)) = (of(worse), of(better)) else { continue };
            for candidate in offered::candidates(&worse) {
                let find = |case: &Case| {
                    let seen = Seen { candidate: &candidate, case, year: year(), opened: None, rules: &US };
                    checks::all(&seen).into_iter().find(|f| f.check == check)
                };
                let (Some(w), Some(b)) = (find(&worse), find(&better)) else { continue };
                prop_assert!(b.likely <= w.likely && b.worst <= w.worst, "{check} by {id:?} for {:?}: {w:?} {b:?}", candidate.id);
            }
        }
    }
}
