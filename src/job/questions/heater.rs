//! The heater that stands there now.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, first, number, plain};
use crate::core::case::{HeaterKind, LabelScale, TankSigns, YesNo};
use crate::core::label::present;
use crate::core::units::Unit;
use crate::job::resolved::Resolved;

fn kind(r: &Resolved) -> HeaterKind {
    HeaterKind::from_code(r.code(Id::HeaterKind).value).unwrap_or(HeaterKind::Electric)
}

const fn ask(
    id: Id,
    kind: Kind,
    default: Default,
    spread: Spread,
    who: Who,
    affects: &'static [Affects],
) -> Question {
    Question { id, section: Section::Heater, kind, default, spread, who, affects, first: false }
}

pub(super) static QUESTIONS: &[Question] = &[
    first(ask(
        Id::HeaterKind,
        Kind::Choice(HeaterKind::CODES),
        Default::Code("electric"),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Energy, Affects::Cost, Affects::Fit],
    )),
    first(ask(
        Id::HeaterAge,
        plain(0.0, 60.0, Unit::Year, 1.0),
        // About when tanks get replaced: common practice, no source.
        Default::Number(12.0, Unit::Year),
        Spread::Plus(6.0, 6.0, Unit::Year),
        Who::Householder,
        &[Affects::Timing, Affects::Energy, Affects::Cost],
    )),
    first(ask(
        Id::HeaterVolume,
        number(15.0, 120.0, Unit::Gallon, Unit::Gallon, Unit::Litre, 5.0),
        // The commonest sizes on sale for each kind: common practice, no source.
        Default::Derived(|r| {
            Value::number(
                if matches!(kind(r), HeaterKind::Electric | HeaterKind::HeatPump) { 50.0 } else { 40.0 },
                Unit::Gallon,
            )
        }),
        Spread::Factor(0.8, 1.3),
        Who::Householder,
        &[Affects::Comfort, Affects::Energy],
    )),
    first(ask(
        Id::Signs,
        Kind::Choice(TankSigns::CODES),
        Default::Code("none"),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Timing, Affects::Energy],
    )),
    first(ask(
        Id::Setpoint,
        number(100.0, 160.0, Unit::DegF, Unit::DegF, Unit::DegC, 1.0),
        // The household default: common practice, no source.
        Default::Number(120.0, Unit::DegF),
        Spread::Plus(5.0, 10.0, Unit::DegF),
        Who::Householder,
        &[Affects::Energy, Affects::Comfort],
    )),
    ask(
        Id::HeaterFactor,
        plain(0.30, 6.0, Unit::One, 0.01),
        Default::Derived(|r| {
            let gal = r.base(Id::HeaterVolume).value / crate::core::units::GALLON_M3;
            Value::number(
                present::typical_uniform_energy_factor(kind(r), gal, r.base(Id::HeaterAge).value),
                Unit::One,
            )
        }),
        Spread::Factor(0.95, 1.05),
        Who::OnSite,
        &[Affects::Energy],
    ),
    ask(
        Id::LabelScale,
        Kind::Choice(LabelScale::CODES),
        // Labels changed in the middle of 2017 (81 FR 96204, from memory): some nine years ago.
        Default::Derived(|r| Value::code(if r.base(Id::HeaterAge).value > 9.0 { "ef" } else { "uef" })),
        Spread::AnyOption,
        Who::OnSite,
        &[Affects::Energy],
    ),
    ask(
        Id::HeaterFirstHour,
        number(10.0, 200.0, Unit::Gallon, Unit::Gallon, Unit::Litre, 1.0),
        Default::Derived(|r| {
            let gal = r.base(Id::HeaterVolume).value / crate::core::units::GALLON_M3;
            Value::number(present::typical_first_hour_rating_gal(kind(r), gal), Unit::Gallon)
        }),
        Spread::Factor(0.85, 1.15),
        Who::OnSite,
        &[Affects::Comfort],
    ),
    ask(
        Id::HeaterInput,
        number(0.5, 60.0, Unit::Kilowatt, Unit::Watt, Unit::Watt, 100.0),
        Default::Derived(|r| Value::number(present::typical_input_w(kind(r)), Unit::Watt)),
        Spread::Factor(0.8, 1.2),
        Who::OnSite,
        &[Affects::Comfort],
    ),
    ask(
        Id::AnodeChanged,
        Kind::Choice(YesNo::CODES),
        Default::Code("no"),
        Spread::AnyOption,
        Who::Householder,
        &[Affects::Timing],
    ),
    ask(
        Id::Hardness,
        number(0.0, 60.0, Unit::GrainPerGallon, Unit::GrainPerGallon, Unit::MilligramPerLitre, 1.0),
        // "Moderately hard" on the usual scale; most cities lie from 3 to 15. Common practice, no source.
        Default::Number(7.0, Unit::GrainPerGallon),
        Spread::Plus(5.0, 9.0, Unit::GrainPerGallon),
        Who::Householder,
        &[Affects::Timing, Affects::Energy],
    ),
    ask(
        Id::SharesFlue,
        Kind::Choice(YesNo::CODES),
        Default::Derived(|r| {
            Value::code(if matches!(kind(r), HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil) {
                "yes"
            } else {
                "no"
            })
        }),
        Spread::AnyOption,
        Who::OnSite,
        &[Affects::Fit],
    ),
];
