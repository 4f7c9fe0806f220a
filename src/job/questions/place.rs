//! Climate and cold water.

use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, number};
use crate::core::climate::region::Region;
use crate::core::climate::{mains, places};
use crate::core::site::Seismic;
use crate::core::units::{Unit, kelvins, to_celsius};
use crate::job::resolved::Resolved;

/// The place answered, or the default's.
pub(super) fn place(r: &Resolved) -> &'static places::Place {
    places::by_id(r.code(Id::Place).value).unwrap_or_else(places::typical)
}

const ENERGY: &[Affects] = &[Affects::Energy, Affects::Cost];

pub(super) static QUESTIONS: &[Question] = &[
    Question {
        id: Id::Place,
        section: Section::Place,
        kind: Kind::Place,
        default: Default::Derived(|_| Value::code(places::typical().id)),
        spread: Spread::AnyOption,
        who: Who::Householder,
        affects: ENERGY,
        first: true,
    },
    Question {
        id: Id::OutdoorMean,
        section: Section::Place,
        kind: number(-20.0, 30.0, Unit::DegC, Unit::DegF, Unit::DegC, 0.5),
        default: Default::Derived(|r| Value::number(place(r).annual_mean_c, Unit::DegC)),
        spread: Spread::Plus(1.0, 1.0, Unit::Kelvin),
        who: Who::Householder,
        affects: ENERGY,
        first: false,
    },
    Question {
        id: Id::OutdoorRange,
        section: Section::Place,
        kind: number(0.0, 50.0, Unit::Kelvin, Unit::DeltaF, Unit::Kelvin, 0.5),
        default: Default::Derived(|r| Value::number(place(r).monthly_range_k, Unit::Kelvin)),
        spread: Spread::Plus(1.5, 1.5, Unit::Kelvin),
        who: Who::Householder,
        affects: ENERGY,
        first: false,
    },
    Question {
        id: Id::ColdTap,
        section: Section::Place,
        // The year's mean at the cold tap.
        kind: number(1.0, 32.0, Unit::DegC, Unit::DegF, Unit::DegC, 0.5),
        default: Default::Derived(|r| {
            let mean_c = r.base(Id::OutdoorMean).value - crate::core::units::ZERO_C_K;
            let curve = mains::Mains::from_outdoor(
                crate::core::units::celsius(mean_c),
                kelvins(r.base(Id::OutdoorRange).value),
            );
            Value::number(to_celsius(curve.annual_mean()), Unit::DegC)
        }),
        spread: Spread::Plus(2.0, 2.0, Unit::Kelvin),
        who: Who::OnSite,
        affects: &[Affects::Energy, Affects::Comfort],
        first: false,
    },
    Question {
        id: Id::Seismic,
        section: Section::Place,
        kind: Kind::Choice(Seismic::CODES),
        default: Default::Derived(|r| Value::code(seismic(place(r).region).code())),
        spread: Spread::AnyOption,
        who: Who::Installer,
        affects: &[Affects::Fit],
        first: false,
    },
];

/// Seismic design category that much of a state or province lies in (maps of the International Residential Code,
/// from memory; it varies within a state).
const fn seismic(region: Region) -> Seismic {
    use Region::{Ak, Ar, Bc, Ca, Hi, Id, Mo, Mt, Nv, Or, Sc, Tn, Ut, Wa, Wy, Yt};
    match region {
        Ak | Ca | Hi | Nv | Or | Ut | Wa | Bc => Seismic::High,
        Ar | Id | Mo | Mt | Sc | Tn | Wy | Yt => Seismic::Moderate,
        _ => Seismic::Low,
    }
}
