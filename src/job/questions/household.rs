//! Who lives there and how they use hot water.
//!
//! Defaults follow the Building America House Simulation Protocols' daily-use relations (from memory,
//! 2014 edition) as put in [`crate::core::draws::daily_use`]: unanswered, the household draws what the
//! protocols say for its size.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, number, plain};
use crate::core::case::YesNo;
use crate::core::draws::daily_use;
use crate::core::units::Unit;
use crate::job::resolved::Resolved;

/// People of all ages, at least a half: an empty house still has its defaults.
fn people(r: &Resolved) -> f64 {
    let n = r.base(Id::Adults).value + r.base(Id::Teenagers).value + r.base(Id::Children).value;
    if n > 0.0 { n } else { 0.0 }
}

const ENERGY_COMFORT: &[Affects] = &[Affects::Energy, Affects::Comfort];

const fn ask(id: Id, kind: Kind, default: Default, spread: Spread, first: bool) -> Question {
    Question {
        id,
        section: Section::Household,
        kind,
        default,
        spread,
        who: Who::Householder,
        affects: ENERGY_COMFORT,
        first,
    }
}

pub(super) static QUESTIONS: &[Question] = &[
    ask(
        Id::Adults,
        plain(0.0, 12.0, Unit::One, 1.0),
        Default::Number(2.0, Unit::One),
        Spread::Plus(1.0, 1.0, Unit::One),
        true,
    ),
    ask(
        Id::Teenagers,
        plain(0.0, 12.0, Unit::One, 1.0),
        Default::Number(0.0, Unit::One),
        Spread::Plus(0.0, 1.0, Unit::One),
        true,
    ),
    ask(
        Id::Children,
        plain(0.0, 12.0, Unit::One, 1.0),
        Default::Number(1.0, Unit::One),
        Spread::Plus(1.0, 1.0, Unit::One),
        true,
    ),
    ask(
        Id::ShowersInARow,
        plain(0.0, 8.0, Unit::One, 1.0),
        // Half the household, rounded up: common practice, no source.
        Default::Derived(|r| {
            let n = (people(r) / 2.0).ceil();
            Value::number(if n > 4.0 { 4.0 } else { n }, Unit::One)
        }),
        Spread::Plus(1.0, 1.0, Unit::One),
        true,
    ),
    ask(Id::RunsOutNow, Kind::Choice(YesNo::CODES), Default::Code("no"), Spread::AnyOption, true),
    ask(
        Id::ShowersPerDay,
        plain(0.0, 30.0, Unit::One, 0.5),
        Default::Derived(|r| Value::number(daily_use::showers_per_day(people(r)), Unit::One)),
        Spread::Factor(0.6, 1.5),
        false,
    ),
    ask(
        Id::ShowerTime,
        plain(1.0, 60.0, Unit::Minute, 1.0),
        Default::Number(daily_use::SHOWER_MINUTES, Unit::Minute),
        Spread::Factor(0.65, 1.5),
        false,
    ),
    ask(
        Id::ShowerFlow,
        number(0.5, 6.0, Unit::GallonPerMinute, Unit::GallonPerMinute, Unit::LitrePerMinute, 0.1),
        Default::Number(daily_use::SHOWER_GPM, Unit::GallonPerMinute),
        Spread::Factor(0.75, 1.2),
        false,
    ),
    ask(
        Id::BathsPerWeek,
        plain(0.0, 60.0, Unit::One, 1.0),
        Default::Derived(|r| Value::number(daily_use::baths_per_week(people(r)), Unit::One)),
        Spread::Factor(0.0, 2.5),
        false,
    ),
    ask(
        Id::TubVolume,
        number(10.0, 150.0, Unit::Gallon, Unit::Gallon, Unit::Litre, 5.0),
        Default::Number(daily_use::TUB_GAL, Unit::Gallon),
        Spread::Factor(0.75, 1.5),
        false,
    ),
    ask(
        Id::DishwasherLoads,
        plain(0.0, 40.0, Unit::One, 1.0),
        Default::Derived(|r| Value::number(daily_use::dishwasher_loads_per_week(people(r)), Unit::One)),
        Spread::Factor(0.3, 1.5),
        false,
    ),
    ask(
        Id::HotWashes,
        plain(0.0, 40.0, Unit::One, 1.0),
        Default::Derived(|r| Value::number(daily_use::hot_washes_per_week(people(r)), Unit::One)),
        Spread::Factor(0.2, 1.5),
        false,
    ),
];
