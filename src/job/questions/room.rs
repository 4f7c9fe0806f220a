//! The room the heater stands in.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, first, number};
use crate::core::case::{Dampness, DoorKind, HouseHeat, RoomKind, YesNo};
use crate::core::room::typical;
use crate::core::units::{Unit, ZERO_C_K};
use crate::job::resolved::Resolved;

fn kind(r: &Resolved) -> RoomKind {
    RoomKind::from_code(r.code(Id::RoomKind).value).unwrap_or(RoomKind::Basement)
}

/// Outdoor annual mean in °C and monthly range in K.
fn outdoor(r: &Resolved) -> (f64, f64) {
    (r.base(Id::OutdoorMean).value - ZERO_C_K, r.base(Id::OutdoorRange).value)
}

const AIR: &[Affects] = &[Affects::Energy, Affects::Fit];

const fn ask(
    id: Id,
    kind: Kind,
    default: Default,
    spread: Spread,
    who: Who,
    affects: &'static [Affects],
) -> Question {
    Question { id, section: Section::Room, kind, default, spread, who, affects, first: false }
}

pub(super) static QUESTIONS: &[Question] = &[
    first(ask(
        Id::RoomKind,
        Kind::Choice(RoomKind::CODES),
        Default::Code("basement"),
        Spread::AnyOption,
        Who::Householder,
        AIR,
    )),
    first(ask(
        Id::RoomVolume,
        // Down to a cupboard, up to a hall: what people enter is computed, not judged.
        number(0.1, 100_000.0, Unit::CubicFoot, Unit::CubicFoot, Unit::CubicMetre, 50.0),
        Default::Derived(|r| Value::number(typical::volume_ft3(kind(r)), Unit::CubicFoot)),
        Spread::Factor(0.5, 1.6),
        Who::Householder,
        AIR,
    )),
    first(ask(
        Id::RoomWinter,
        number(-40.0, 130.0, Unit::DegF, Unit::DegF, Unit::DegC, 1.0),
        Default::Derived(|r| {
            let (mean_c, range_k) = outdoor(r);
            Value::number(typical::winter_c(kind(r), mean_c, range_k), Unit::DegC)
        }),
        Spread::Plus(3.0, 3.0, Unit::Kelvin),
        Who::OnSite,
        AIR,
    )),
    ask(
        Id::RoomSummer,
        number(-40.0, 130.0, Unit::DegF, Unit::DegF, Unit::DegC, 1.0),
        Default::Derived(|r| {
            let (mean_c, range_k) = outdoor(r);
            Value::number(typical::summer_c(kind(r), mean_c, range_k), Unit::DegC)
        }),
        Spread::Plus(3.0, 3.0, Unit::Kelvin),
        Who::OnSite,
        AIR,
    ),
    first(ask(
        Id::Door,
        Kind::Choice(DoorKind::CODES),
        Default::Derived(|r| Value::code(typical::door(kind(r)).code())),
        Spread::AnyOption,
        Who::Householder,
        AIR,
    )),
    first(ask(
        Id::Headroom,
        number(30.0, 240.0, Unit::Inch, Unit::Inch, Unit::Centimetre, 1.0),
        Default::Derived(|r| Value::number(typical::headroom_in(kind(r)), Unit::Inch)),
        Spread::Plus(8.0, 12.0, Unit::Inch),
        Who::OnSite,
        &[Affects::Fit],
    )),
    ask(
        Id::WayIn,
        number(10.0, 120.0, Unit::Inch, Unit::Inch, Unit::Centimetre, 1.0),
        // A common narrow interior door: common practice, no source.
        Default::Number(30.0, Unit::Inch),
        Spread::Plus(4.0, 6.0, Unit::Inch),
        Who::OnSite,
        &[Affects::Fit],
    ),
    ask(
        Id::Dampness,
        Kind::Choice(Dampness::CODES),
        Default::Code("normal"),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Energy],
    ),
    ask(
        Id::Dehumidifier,
        Kind::Choice(YesNo::CODES),
        Default::Code("no"),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Energy, Affects::Cost],
    ),
    ask(
        Id::HouseHeat,
        Kind::Choice(HouseHeat::CODES),
        // A house with a fuel-fired water heater usually burns the same fuel for heat.
        Default::Derived(|r| {
            Value::code(match r.code(Id::HeaterKind).value {
                "propane" => "propane",
                "oil" => "oil",
                _ => "gas",
            })
        }),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Cost],
    ),
    ask(
        Id::HouseCooled,
        Kind::Choice(YesNo::CODES),
        Default::Code("yes"),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Cost],
    ),
];
