//! The circuit's wires and the house's service.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, number, plain};
use crate::core::case::YesNo;
use crate::core::site::{CableKind, WireMetal, WireSize, Wires};
use crate::core::units::Unit;

const fn ask(id: Id, kind: Kind, default: Default, spread: Spread, who: Who) -> Question {
    let affects = &[Affects::Fit, Affects::Cost];
    Question { id, section: Section::Circuit, kind, default, spread, who, affects, first: false }
}

/// The defaults are what most houses have: common practice, no source.
pub(super) static QUESTIONS: &[Question] = &[
    ask(
        Id::WireSize,
        Kind::Choice(WireSize::CODES),
        // What the code asks for that breaker with copper (240.4(D), from memory).
        Default::Derived(|r| {
            let amps = r.base(Id::Breaker).value;
            Value::code(match amps {
                a if a <= 15.0 && a > 0.0 => "14",
                a if a <= 20.0 && a > 0.0 => "12",
                a if a <= 30.0 => "10",
                a if a <= 40.0 => "8",
                _ => "6",
            })
        }),
        Spread::AnyOption,
        Who::OnSite,
    ),
    ask(
        Id::WireMetal,
        Kind::Choice(WireMetal::CODES),
        Default::Code("copper"),
        Spread::AnyOption,
        Who::OnSite,
    ),
    ask(
        Id::CableKind,
        Kind::Choice(CableKind::CODES),
        Default::Code("sheathed"),
        Spread::AnyOption,
        Who::OnSite,
    ),
    ask(
        Id::RunLength,
        number(0.0, 500.0, Unit::Foot, Unit::Foot, Unit::Metre, 5.0),
        Default::Number(40.0, Unit::Foot),
        Spread::Factor(0.3, 2.5),
        Who::OnSite,
    ),
    ask(Id::Wires, Kind::Choice(Wires::CODES), Default::Code("ground"), Spread::AnyOption, Who::OnSite),
    ask(Id::Disconnect, Kind::Choice(YesNo::CODES), Default::Code("yes"), Spread::AnyOption, Who::OnSite),
    ask(
        Id::ServiceRating,
        plain(30.0, 400.0, Unit::Ampere, 25.0),
        Default::Number(200.0, Unit::Ampere),
        Spread::Plus(100.0, 0.0, Unit::Ampere),
        Who::OnSite,
    ),
    ask(
        Id::LargeLoads,
        plain(0.0, 100.0, Unit::Kilowatt, 1.0),
        // A range, a dryer and a dishwasher, or an air conditioner.
        Default::Number(15.0, Unit::Kilowatt),
        Spread::Factor(0.3, 2.0),
        Who::Householder,
    ),
    ask(
        Id::HouseArea,
        number(100.0, 20_000.0, Unit::SquareFoot, Unit::SquareFoot, Unit::SquareMetre, 100.0),
        Default::Number(1_800.0, Unit::SquareFoot),
        Spread::Factor(0.6, 1.6),
        Who::Householder,
    ),
];
