//! After the work: start-up ranges, the page for the household, dates of care, the meter.
//!
//! Houses here are invented. Their simulated years are made once.

mod calendar;
mod handover;
mod meter;
mod start;

use std::sync::LazyLock;
use tankful::core::after::Fitted;
use tankful::core::candidates::CandidateId;
use tankful::core::case::{Case, Provenance};
use tankful::core::outcome::Outcome;
use tankful::core::pipeline;
use tankful::core::units::Unit;
use tankful::job::answers::Answers;
use tankful::job::complete::complete;
use tankful::job::questions::{Id, Value};

/// A house with its outcome.
pub struct House {
    pub case: Case,
    pub outcome: Outcome,
}

/// By its place alone: an outcome fills pages.
impl std::fmt::Debug for House {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.case.place.id.value)
    }
}

impl House {
    fn of(list: &[(Id, Value)]) -> House {
        let mut answers = Answers::new();
        for (id, value) in list {
            answers.set(*id, value.clone(), Provenance::Answered).expect("within the range");
        }
        let case = complete(&answers);
        let outcome = pipeline::advise(&case);
        House { case, outcome }
    }

    pub fn fitted(&self, id: CandidateId) -> Fitted<'_> {
        let chosen = self.outcome.of(id).expect("a candidate");
        Fitted::of(&self.case, &self.outcome, chosen)
    }
}

fn n(value: f64, unit: Unit) -> Value {
    Value::number(value, unit)
}

/// A cool, damp basement in the north; hard water; no drain.
pub static NORTH: LazyLock<House> = LazyLock::new(|| {
    House::of(&[
        (Id::Adults, n(2.0, Unit::One)),
        (Id::Children, n(2.0, Unit::One)),
        (Id::HeaterKind, Value::code("electric")),
        (Id::Place, Value::code("us-ma-boston")),
        (Id::RoomKind, Value::code("basement")),
        (Id::Dampness, Value::code("damp")),
        (Id::DrainKind, Value::code("none")),
        (Id::Hardness, n(14.0, Unit::GrainPerGallon)),
        (Id::MixingValve, Value::code("no")),
        (Id::Pressure, n(60.0, Unit::Psi)),
    ])
});

/// An electric tank that pays by the hour, with a peak in the north's winter evenings.
pub static EVENING: LazyLock<House> = LazyLock::new(|| {
    House::of(&[
        (Id::HeaterKind, Value::code("electric")),
        (Id::Place, Value::code("us-mn-minneapolis")),
        (Id::Tariff, Value::code("time")),
        (Id::PeakSeason, Value::code("winter")),
        (Id::PricePeak, n(0.55, Unit::DollarPerKwh)),
        (Id::PriceLow, n(0.11, Unit::DollarPerKwh)),
    ])
});

/// A utility room in the south with a gas heater; soft water; a mixing valve.
pub static SOUTH: LazyLock<House> = LazyLock::new(|| {
    House::of(&[
        (Id::Adults, n(1.0, Unit::One)),
        (Id::HeaterKind, Value::code("gas")),
        (Id::Place, Value::code("us-fl-miami")),
        (Id::RoomKind, Value::code("utility")),
        (Id::Hardness, n(2.0, Unit::GrainPerGallon)),
        (Id::MixingValve, Value::code("yes")),
        (Id::Setpoint, n(140.0, Unit::DegF)),
        (Id::ExpansionVolume, n(2.0, Unit::Gallon)),
    ])
});
