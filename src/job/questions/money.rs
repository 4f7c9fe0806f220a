//! Prices and how money is counted. All in today's money of the place.

use super::place::place;
use super::{Affects, Default, Id, Kind, Question, Section, Spread, Value, Who, first, number, plain};
use crate::core::candidates::typical_price;
use crate::core::case::{HeaterKind, PeakSeason, TariffKind, YesNo};
use crate::core::climate::prices;
use crate::core::units::{KWH_J, Unit};
use crate::job::resolved::Resolved;

const COST: &[Affects] = &[Affects::Cost];

const fn ask(id: Id, kind: Kind, default: Default, spread: Spread, who: Who) -> Question {
    Question { id, section: Section::Money, kind, default, spread, who, affects: COST, first: false }
}

/// An hour of the clock.
const fn hour(id: Id, usual: f64) -> Question {
    let kind = plain(0.0, 24.0, Unit::One, 1.0);
    ask(id, kind, Default::Number(usual, Unit::One), Spread::None, Who::Householder)
}

/// A price at some hours. Its spread, beside the flat price's that its default follows: common practice, no source.
const fn by_hour(id: Id, default: Default, spread: Spread) -> Question {
    ask(id, plain(0.0, 3.0, Unit::DollarPerKwh, 0.01), default, spread, Who::Householder)
}

/// The flat price times something.
fn of_flat(r: &Resolved, share: f64) -> Value {
    Value::number(r.base(Id::PriceElectricity).value * KWH_J * share, Unit::DollarPerKwh)
}

pub(super) static QUESTIONS: &[Question] = &[
    first(ask(
        Id::PriceElectricity,
        plain(0.0, 2.0, Unit::DollarPerKwh, 0.01),
        Default::Derived(|r| Value::number(prices::of(place(r)).electricity_per_kwh, Unit::DollarPerKwh)),
        Spread::Factor(0.8, 1.3),
        Who::Householder,
    )),
    ask(
        Id::PriceGas,
        plain(0.0, 10.0, Unit::DollarPerTherm, 0.05),
        Default::Derived(|r| Value::number(prices::of(place(r)).gas_per_therm, Unit::DollarPerTherm)),
        Spread::Factor(0.75, 1.35),
        Who::Householder,
    ),
    ask(
        Id::PricePropane,
        number(0.0, 20.0, Unit::DollarPerGallon, Unit::DollarPerGallon, Unit::DollarPerLitre, 0.05),
        Default::Derived(|r| Value::number(prices::of(place(r)).propane_per_gal, Unit::DollarPerGallon)),
        Spread::Factor(0.75, 1.35),
        Who::Householder,
    ),
    ask(
        Id::PriceOil,
        number(0.0, 20.0, Unit::DollarPerGallon, Unit::DollarPerGallon, Unit::DollarPerLitre, 0.05),
        Default::Derived(|r| Value::number(prices::of(place(r)).oil_per_gal, Unit::DollarPerGallon)),
        Spread::Factor(0.75, 1.35),
        Who::Householder,
    ),
    first(ask(
        Id::InstalledSame,
        plain(0.0, 50_000.0, Unit::Dollar, 50.0),
        Default::Derived(|r| {
            let kind = HeaterKind::from_code(r.code(Id::HeaterKind).value).unwrap_or(HeaterKind::Electric);
            Value::number(typical_price::installed_same(kind), Unit::Dollar)
        }),
        Spread::Factor(0.7, 1.5),
        Who::Installer,
    )),
    first(ask(
        Id::InstalledHeatPump,
        plain(0.0, 50_000.0, Unit::Dollar, 50.0),
        Default::Number(typical_price::HEAT_PUMP_50, Unit::Dollar),
        Spread::Factor(0.7, 1.5),
        Who::Installer,
    )),
    first(ask(
        Id::Rebate,
        plain(0.0, 20_000.0, Unit::Dollar, 50.0),
        // No tax or rebate rule is built in: they change.
        Default::Number(0.0, Unit::Dollar),
        Spread::Plus(0.0, 800.0, Unit::Dollar),
        Who::Householder,
    )),
    ask(
        Id::Horizon,
        plain(1.0, 40.0, Unit::Year, 1.0),
        // About the life of a new heater, so that no default answer hangs on a second replacement.
        Default::Number(12.0, Unit::Year),
        Spread::None,
        Who::Householder,
    ),
    ask(
        Id::DiscountRate,
        plain(0.0, 20.0, Unit::Percent, 0.5),
        Default::Number(2.0, Unit::Percent),
        Spread::None,
        Who::Householder,
    ),
    ask(
        Id::PriceGrowth,
        plain(-5.0, 15.0, Unit::Percent, 0.5),
        Default::Number(1.0, Unit::Percent),
        Spread::Plus(1.5, 2.0, Unit::Percent),
        Who::Householder,
    ),
    ask(Id::Tariff, Kind::Choice(TariffKind::CODES), Default::Code("flat"), Spread::None, Who::Householder),
    // Peaks that hardly differ, about 1.25 times the flat price, to those of a summer afternoon, 2.7 times.
    by_hour(Id::PricePeak, Default::Derived(|r| of_flat(r, 1.8)), Spread::Factor(0.7, 1.5)),
    by_hour(Id::PriceLow, Default::Derived(|r| of_flat(r, 0.7)), Spread::Factor(0.75, 1.25)),
    hour(Id::PeakFrom, 16.0),
    hour(Id::PeakTo, 21.0),
    ask(Id::PeakDays, Kind::Choice(YesNo::CODES), Default::Code("yes"), Spread::None, Who::Householder),
    ask(
        Id::PeakSeason,
        Kind::Choice(PeakSeason::CODES),
        Default::Code("year"),
        Spread::None,
        Who::Householder,
    ),
    ask(
        Id::GridChange,
        plain(-15.0, 15.0, Unit::Percent, 0.5),
        // The United States' grid emitted about a third less per kWh in 2022 than in 2005: energy statistics, from
        // memory. Whether that goes on is anybody's guess.
        Default::Number(-2.0, Unit::Percent),
        Spread::Plus(2.0, 2.0, Unit::Percent),
        Who::Householder,
    ),
];
