//! Where condensate can go.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, number};
use crate::core::case::{DrainKind, YesNo};
use crate::core::units::Unit;

const FIT: &[Affects] = &[Affects::Fit, Affects::Cost];

pub(super) static QUESTIONS: &[Question] = &[
    Question {
        id: Id::DrainKind,
        section: Section::Drain,
        kind: Kind::Choice(DrainKind::CODES),
        default: Default::Derived(|r| {
            Value::code(match r.code(Id::RoomKind).value {
                "basement" => "floor",
                "utility" => "standpipe",
                _ => "none",
            })
        }),
        spread: Spread::AnyOption,
        who: Who::Householder,
        affects: FIT,
        first: true,
    },
    Question {
        id: Id::DrainDistance,
        section: Section::Drain,
        kind: number(0.0, 200.0, Unit::Foot, Unit::Foot, Unit::Metre, 1.0),
        default: Default::Number(10.0, Unit::Foot),
        spread: Spread::Factor(0.3, 2.5),
        who: Who::OnSite,
        affects: FIT,
        first: false,
    },
    Question {
        id: Id::DrainRise,
        section: Section::Drain,
        // Negative: the drain lies below the heater's condensate outlet.
        kind: number(-20.0, 30.0, Unit::Foot, Unit::Foot, Unit::Metre, 0.5),
        default: Default::Derived(|r| {
            Value::number(
                match r.code(Id::DrainKind).value {
                    "floor" | "sump" => -1.0,
                    "standpipe" => 3.0,
                    _ => 7.0,
                },
                Unit::Foot,
            )
        }),
        spread: Spread::Plus(2.0, 2.0, Unit::Foot),
        who: Who::OnSite,
        affects: FIT,
        first: false,
    },
    Question {
        id: Id::DrainFreezes,
        section: Section::Drain,
        kind: Kind::Choice(YesNo::CODES),
        // A room that is cold on the mean of its coldest month freezes at times; common practice, no source.
        default: Default::Derived(|r| {
            let cold = r.base(Id::RoomWinter).value < Unit::DegC.to_base(4.0);
            Value::code(if cold { "yes" } else { "no" })
        }),
        spread: Spread::AnyOption,
        who: Who::OnSite,
        affects: FIT,
        first: false,
    },
];
