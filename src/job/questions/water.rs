//! The water pipes at the heater.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, number};
use crate::core::case::YesNo;
use crate::core::site::{ClosedBy, Pan, PipeMaterial, Recirculation, ReliefPipe};
use crate::core::units::Unit;

const fn ask(id: Id, kind: Kind, default: Default, spread: Spread, who: Who) -> Question {
    let affects = &[Affects::Fit, Affects::Cost];
    Question { id, section: Section::Water, kind, default, spread, who, affects, first: false }
}

const fn pressure(id: Id, default: f64, spread: Spread) -> Question {
    let kind = number(0.0, 200.0, Unit::Psi, Unit::Psi, Unit::Kilopascal, 5.0);
    ask(id, kind, Default::Number(default, Unit::Psi), spread, Who::OnSite)
}

/// The defaults are what most houses have: common practice, no source.
pub(super) static QUESTIONS: &[Question] = &[
    pressure(Id::Pressure, 60.0, Spread::Plus(15.0, 20.0, Unit::Psi)),
    ask(Id::ClosedBy, Kind::Choice(ClosedBy::CODES), Default::Code("none"), Spread::AnyOption, Who::OnSite),
    ask(
        Id::ExpansionVolume,
        // 0: there is none.
        number(0.0, 30.0, Unit::Gallon, Unit::Gallon, Unit::Litre, 0.5),
        Default::Number(0.0, Unit::Gallon),
        Spread::Plus(0.0, 4.5, Unit::Gallon),
        Who::OnSite,
    ),
    // As they come from the works.
    pressure(Id::ExpansionPrecharge, 40.0, Spread::Plus(10.0, 20.0, Unit::Psi)),
    ask(
        Id::PipeMaterial,
        Kind::Choice(PipeMaterial::CODES),
        Default::Code("copper"),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(Id::ShutoffWorks, Kind::Choice(YesNo::CODES), Default::Code("yes"), Spread::AnyOption, Who::OnSite),
    ask(
        Id::ReliefPipe,
        Kind::Choice(ReliefPipe::CODES),
        Default::Code("good"),
        Spread::AnyOption,
        Who::OnSite,
    ),
    ask(Id::Pan, Kind::Choice(Pan::CODES), Default::Code("none"), Spread::AnyOption, Who::Householder),
    ask(
        Id::FixturesBelow,
        Kind::Choice(YesNo::CODES),
        Default::Derived(|r| Value::code(if r.code(Id::RoomKind).value == "attic" { "yes" } else { "no" })),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(Id::MixingValve, Kind::Choice(YesNo::CODES), Default::Code("no"), Spread::AnyOption, Who::OnSite),
    ask(
        Id::Recirculation,
        Kind::Choice(Recirculation::CODES),
        Default::Code("none"),
        Spread::AnyOption,
        Who::Householder,
    ),
    ask(
        Id::LoopLength,
        number(0.0, 1_000.0, Unit::Foot, Unit::Foot, Unit::Metre, 10.0),
        Default::Number(100.0, Unit::Foot),
        Spread::Factor(0.5, 2.0),
        Who::OnSite,
    ),
    ask(Id::LoopCovered, Kind::Choice(YesNo::CODES), Default::Code("no"), Spread::AnyOption, Who::OnSite),
];
