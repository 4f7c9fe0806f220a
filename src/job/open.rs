//! What is open about a job: the questions that nobody answered, with their spreads, as coordinates for
//! [`crate::core::futures`].
//!
//! - A number lies about its default so that one house in ten is below its spread and one above: a normal
//!   distribution with a width of its own on either side, of the logarithm where the spread is a factor.
//! - Of options the default is as likely as [`DEFAULT_SHARE`], the others share the rest alike.
//! - An answer is taken at its word; a default that derives from an open question follows it.
//! - What the case does not count with is not open: prices by the hour where there is one price, and the one price where
//!   both by the hour were said.
//! - What kind of heater it is, where the house stands and in which room the heater stands is not drawn: other
//!   answers there are another house, and the futures are those of the one that stands in the case. Where nobody has
//!   said, the other houses are tried one by one ([`super::otherwise`]).

use super::answers::Answers;
use super::complete::{DEFAULT_SEED, case_of};
use super::offer::Offer;
use super::otherwise;
use super::questions::{Id, Kind, Question, Spread, Value};
use super::resolved::Resolved;
use crate::core::case::{Case, Known, Provenance, TariffKind};
use crate::core::futures::points::normal_share;
use crate::core::futures::unknowns::{Coordinate, Held, PLAUSIBLE_Z, Unknowns};
use crate::core::units::{Quantity, Unit};
use std::borrow::Cow;

/// How likely the default option is where nobody answered; a judgement of our own.
const DEFAULT_SHARE: f64 = 0.6;

/// The questions that move the simulated year or its busiest morning: these are drawn, as are those of [`MONEY`]. The others
/// only decide whether a heater fits, which the checks judge over their whole range.
const LIVED: [Id; 29] = [
    Id::Adults,
    Id::Teenagers,
    Id::Children,
    Id::ShowersInARow,
    Id::RunsOutNow,
    Id::ShowersPerDay,
    Id::ShowerTime,
    Id::ShowerFlow,
    Id::BathsPerWeek,
    Id::TubVolume,
    Id::DishwasherLoads,
    Id::HotWashes,
    Id::HeaterAge,
    Id::HeaterVolume,
    Id::Signs,
    Id::Setpoint,
    Id::HeaterFactor,
    Id::HeaterFirstHour,
    Id::HeaterInput,
    Id::AnodeChanged,
    Id::Hardness,
    Id::OutdoorMean,
    Id::OutdoorRange,
    Id::ColdTap,
    Id::RoomVolume,
    Id::RoomWinter,
    Id::RoomSummer,
    Id::Door,
    Id::Dampness,
];

/// The questions that move money or time alone: the simulated year is the same.
const MONEY: [Id; 15] = [
    Id::Dehumidifier,
    Id::HouseHeat,
    Id::HouseCooled,
    Id::PriceElectricity,
    Id::PriceGas,
    Id::PricePropane,
    Id::PriceOil,
    Id::InstalledSame,
    Id::InstalledHeatPump,
    Id::Rebate,
    Id::PriceGrowth,
    Id::Horizon,
    Id::DiscountRate,
    Id::PricePeak,
    Id::PriceLow,
];

/// What makes another house, and is never varied: kind of heater, place, room, and what only tells how to read a label.
const HELD: [Id; 5] = [Id::HeaterKind, Id::Place, Id::RoomKind, Id::LabelScale, Id::Seismic];

/// A job's answers and offer with what is open about them.
#[derive(Clone, Debug)]
pub struct Open {
    answers: Answers,
    offer: Offer,
    seed: u64,
    ids: Vec<Id>,
    coordinates: Vec<Coordinate>,
    held: Vec<Held>,
}

impl Open {
    /// Of answers and an offer, with the default seed of the draws.
    pub fn of(answers: &Answers, offer: &Offer) -> Open {
        Open::seeded(answers, offer, DEFAULT_SEED)
    }

    /// The same with another seed of the draws.
    pub fn seeded(answers: &Answers, offer: &Offer, seed: u64) -> Open {
        let resolved = Resolved::of(answers);
        let drawn = |id: &Id| LIVED.contains(id) || MONEY.contains(id);
        let others = Id::ALL.iter().filter(|id| !drawn(id) && !HELD.contains(id));
        let ids: Vec<Id> = LIVED.iter().chain(&MONEY).chain(others).copied().collect();
        let coordinates = ids
            .iter()
            .map(|id| {
                let question = Question::get(*id);
                let assumed = resolved.get(*id).is_some_and(Known::is_assumed);
                let counts = counts(*id, &resolved);
                Coordinate {
                    code: Cow::Borrowed(id.code()),
                    open: counts && assumed && question.spread != Spread::None,
                    drawn: counts && drawn(id),
                    lived: !MONEY.contains(id),
                    number: matches!(question.kind, Kind::Number { .. }),
                }
            })
            .collect();
        let held = otherwise::held(&resolved);
        Open { answers: answers.clone(), offer: offer.clone(), seed, ids, coordinates, held }
    }

    fn resolved(&self, z: &[f64]) -> Resolved {
        Resolved::varied(&self.answers, &mut |question, value| {
            let at = self.ids.iter().position(|id| *id == question.id);
            match at.and_then(|at| z.get(at)) {
                Some(z) if *z != 0.0 => varied(question, value, *z),
                _ => value,
            }
        })
    }
}

impl Open {
    /// With one coordinate moved.
    fn alone(&self, coordinate: usize, z: f64) -> Resolved {
        let mut position = vec![0.0; coordinate + 1];
        position[coordinate] = z;
        self.resolved(&position)
    }

    /// The case had somebody answered a question.
    fn had_answered(&self, id: Id, value: Value) -> Case {
        let mut answers = self.answers.clone();
        // A value within the question's range is never refused.
        let _ = answers.set(id, value, Provenance::Answered);
        case_of(&Resolved::of(&answers), &self.offer, self.seed)
    }
}

impl Unknowns for Open {
    fn coordinates(&self) -> &[Coordinate] {
        &self.coordinates
    }

    fn case(&self, z: &[f64]) -> Case {
        case_of(&self.resolved(z), &self.offer, self.seed)
    }

    fn answered(&self, coordinate: usize, z: f64) -> Case {
        let resolved = self.alone(coordinate, z);
        match self.ids.get(coordinate).and_then(|id| Some((*id, resolved.get(*id)?))) {
            Some((id, known)) => self.had_answered(id, known.value.clone()),
            None => self.case(&[]),
        }
    }

    fn value(&self, coordinate: usize, z: f64) -> Option<Quantity> {
        let id = self.ids.get(coordinate)?;
        Some(self.alone(coordinate, z).quantity(*id)?.value)
    }

    fn held(&self) -> &[Held] {
        &self.held
    }

    fn otherwise(&self, question: usize, option: usize) -> Option<Case> {
        let held = self.held.get(question)?;
        let option = held.options.get(option)?;
        Some(self.had_answered(Id::from_code(&held.code)?, Value::code(option)))
    }
}

/// Whether a case counts with a question's value, by the tariff.
fn counts(id: Id, resolved: &Resolved) -> bool {
    const BY_HOUR: [Id; 2] = [Id::PricePeak, Id::PriceLow];
    let by_hour = TariffKind::from_code(resolved.code(Id::Tariff).value) == Some(TariffKind::Time);
    if BY_HOUR.contains(&id) {
        return by_hour;
    }
    // What nobody said of them follows the one price.
    let follows = |id: &Id| resolved.get(*id).is_some_and(Known::is_assumed);
    id != Id::PriceElectricity || !by_hour || BY_HOUR.iter().any(follows)
}

/// A question's value at a standard normal number, given the one at 0.
fn varied(question: &Question, value: Value, z: f64) -> Value {
    match (value, question.kind) {
        (Value::Number(q), Kind::Number { low, high, .. }) => {
            let spread = match question.spread {
                Spread::None => Spread::Factor(0.8, 1.25),
                spread => spread,
            };
            let moved = Quantity { value: number(q, spread, z), ..q };
            // People come whole.
            let moved = if matches!(spread, Spread::Plus(_, _, Unit::One)) {
                Quantity { value: q.value + (moved.value - q.value).round(), ..q }
            } else {
                moved
            };
            // A house with nobody in it asks nothing.
            let low = if question.id == Id::Adults { Quantity::new(1.0, Unit::One) } else { low };
            let moved = if moved.base() < low.base() {
                low.to(q.unit).unwrap_or(moved)
            } else if moved.base() > high.base() {
                high.to(q.unit).unwrap_or(moved)
            } else {
                moved
            };
            Value::Number(moved)
        }
        (Value::Code(code), Kind::Choice(options)) => Value::code(option(&code, options, z)),
        (value, _) => value,
    }
}

fn number(q: Quantity, spread: Spread, z: f64) -> f64 {
    let share = z / PLAUSIBLE_Z;
    let side = |low: f64, high: f64| if z < 0.0 { low } else { high };
    match spread {
        // A spread that begins at nothing has no logarithm.
        Spread::Factor(low, high) if low <= 0.0 => {
            let far = 1.0 + share * side(1.0 - low, high - 1.0);
            q.value * if far > 0.0 { far } else { 0.0 }
        }
        Spread::Factor(low, high) => q.value * libm::exp(share.abs() * libm::log(side(low, high))),
        Spread::Plus(low, high, unit) => {
            // A difference in kelvin moves a temperature in °F by as many kelvins.
            let by = share * unit.to_base(side(low, high)) - share * unit.to_base(0.0);
            let there = q.base() + by;
            q.unit.from_base(there)
        }
        Spread::AnyOption | Spread::None => q.value,
    }
}

/// The default in the middle, so that it is what stands there at 0; the others to both sides.
fn option<'a>(default: &'a str, options: &[&'a str], z: f64) -> &'a str {
    let u = normal_share(z);
    let aside = 0.5 * (1.0 - DEFAULT_SHARE);
    let place = if u < aside {
        u / (2.0 * aside)
    } else if u >= 1.0 - aside {
        (u - (1.0 - 2.0 * aside)) / (2.0 * aside)
    } else {
        return default;
    };
    let mut others = options.iter().filter(|o| **o != default);
    let count = others.clone().count();
    others.nth((place * count as f64) as usize).copied().unwrap_or(default)
}
