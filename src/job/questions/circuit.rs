//! The electrical supply at the heater.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, plain};
use crate::core::case::Supply;
use crate::core::site::Outlet;
use crate::core::units::Unit;

const FIT: &[Affects] = &[Affects::Fit, Affects::Cost];

pub(super) static QUESTIONS: &[Question] = &[
    Question {
        id: Id::Supply,
        section: Section::Circuit,
        kind: Kind::Choice(Supply::CODES),
        default: Default::Code("240"),
        spread: Spread::AnyOption,
        who: Who::OnSite,
        affects: FIT,
        first: true,
    },
    Question {
        id: Id::Breaker,
        section: Section::Circuit,
        // 0: the heater has no two-pole breaker of its own.
        kind: plain(0.0, 60.0, Unit::Ampere, 5.0),
        // An electric tank has a 30 A, 240 V circuit; a fuel-fired one has none: common practice, no source.
        default: Default::Derived(|r| {
            Value::number(
                if matches!(r.code(Id::HeaterKind).value, "electric" | "heat_pump") { 30.0 } else { 0.0 },
                Unit::Ampere,
            )
        }),
        spread: Spread::AnyOption,
        who: Who::OnSite,
        affects: FIT,
        first: true,
    },
    Question {
        id: Id::Own120,
        section: Section::Circuit,
        kind: Kind::Choice(Outlet::CODES),
        default: Default::Code("no"),
        spread: Spread::AnyOption,
        who: Who::OnSite,
        affects: FIT,
        first: false,
    },
    Question {
        id: Id::FreeSpaces,
        section: Section::Circuit,
        kind: plain(0.0, 40.0, Unit::One, 1.0),
        default: Default::Number(1.0, Unit::One),
        spread: Spread::Plus(1.0, 3.0, Unit::One),
        who: Who::OnSite,
        affects: FIT,
        first: false,
    },
];
