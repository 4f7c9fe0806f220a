//! The way in, the floor, and what is next door: what only the checks ask about the room.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, number};
use crate::core::case::{RoomKind, YesNo};
use crate::core::site::{Ducts, FloorKind, FuelLeft, WallKind};
use crate::core::units::Unit;
use crate::job::resolved::Resolved;

fn kind(r: &Resolved) -> RoomKind {
    RoomKind::from_code(r.code(Id::RoomKind).value).unwrap_or(RoomKind::Basement)
}

/// A default in inches that depends on the room.
fn inches(of: impl Fn(RoomKind) -> f64, r: &Resolved) -> Value {
    Value::number(of(kind(r)), Unit::Inch)
}

const fn ask(id: Id, kind: Kind, default: Default, spread: Spread, who: Who) -> Question {
    Question {
        id,
        section: Section::Room,
        kind,
        default,
        spread,
        who,
        affects: &[Affects::Fit],
        first: false,
    }
}

const fn size(low: f64, high: f64) -> Kind {
    number(low, high, Unit::Inch, Unit::Inch, Unit::Centimetre, 1.0)
}

/// The defaults are guesses by the kind of room: common practice, no source.
pub(super) static QUESTIONS: &[Question] = &[
    ask(
        Id::StairTurn,
        size(0.0, 120.0),
        // 0: no turn on the way. A house's stairs are 36 in wide or more (International Residential Code R311.7).
        Default::Derived(|r| {
            let of = |k| if matches!(k, RoomKind::Basement | RoomKind::Attic) { 36.0 } else { 0.0 };
            inches(of, r)
        }),
        Spread::Plus(6.0, 6.0, Unit::Inch),
        Who::OnSite,
    ),
    ask(
        Id::StandUp,
        size(20.0, 360.0),
        Default::Derived(|r| {
            let below = r.base(Id::Headroom).value / 0.0254;
            let of = |k| match k {
                RoomKind::Crawlspace => below,
                RoomKind::Attic => below + 12.0,
                _ => below + 6.0,
            };
            inches(of, r)
        }),
        Spread::Plus(6.0, 12.0, Unit::Inch),
        Who::OnSite,
    ),
    ask(
        Id::Footprint,
        size(10.0, 240.0),
        Default::Derived(|r| {
            let of = |k| match k {
                RoomKind::Closet => 26.0,
                RoomKind::Utility => 34.0,
                _ => 48.0,
            };
            inches(of, r)
        }),
        Spread::Factor(0.85, 1.5),
        Who::OnSite,
    ),
    ask(
        Id::ServiceSpace,
        size(0.0, 240.0),
        Default::Derived(|r| {
            let of = |k| match k {
                RoomKind::Closet | RoomKind::Crawlspace => 36.0,
                RoomKind::Utility => 42.0,
                _ => 60.0,
            };
            inches(of, r)
        }),
        Spread::Factor(0.6, 1.6),
        Who::OnSite,
    ),
    ask(
        Id::Floor,
        Kind::Choice(FloorKind::CODES),
        Default::Derived(|r| {
            let ground = matches!(kind(r), RoomKind::Basement | RoomKind::Garage | RoomKind::Crawlspace);
            Value::code(if ground { "slab" } else { "wood" })
        }),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(
        Id::FinishedBelow,
        Kind::Choice(YesNo::CODES),
        Default::Derived(|r| Value::code(if kind(r) == RoomKind::Attic { "yes" } else { "no" })),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(
        Id::QuietRoom,
        Kind::Choice(YesNo::CODES),
        Default::Derived(|r| Value::code(if kind(r) == RoomKind::Closet { "yes" } else { "no" })),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(
        Id::QuietWall,
        Kind::Choice(WallKind::CODES),
        Default::Code("stud"),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(
        Id::QuietDistance,
        number(0.0, 100.0, Unit::Foot, Unit::Foot, Unit::Metre, 1.0),
        Default::Number(5.0, Unit::Foot),
        Spread::Factor(0.4, 2.5),
        Who::Householder,
    ),
    ask(
        Id::FuelLeft,
        Kind::Choice(FuelLeft::CODES),
        Default::Derived(|r| {
            let burns = matches!(r.code(Id::HouseHeat).value, "gas" | "propane" | "oil");
            let here = matches!(kind(r), RoomKind::Basement | RoomKind::Utility);
            Value::code(if burns && here { "open" } else { "none" })
        }),
        Spread::AnyOption,
        Who::OnSite,
    ),
    ask(Id::Ducts, Kind::Choice(Ducts::CODES), Default::Code("none"), Spread::None, Who::Installer),
];
