//! Did it do what we said? What the meter shows over a span of days beside what the simulated year expects of
//! those days, season and all, and the likely reason where the two are apart.

use super::{Date, Fitted};
use crate::core::calendar::Month;
use crate::core::case::{HeaterKind, Provenance};
use crate::core::message::Message;
use crate::core::money::energy_price::{self, OIL_KWH_PER_GAL, PROPANE_KWH_PER_GAL, fuel};
use crate::core::outcome::YearResult;
use crate::core::units::{KWH_J, Quantity, Unit, to_celsius};
use thiserror::Error;
use uom::si::energy::joule;

/// What was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meter {
    /// The heater's own count of electricity, or a meter of its own.
    Own,
    /// The house's electricity bill.
    Electricity,
    /// The house's bill of the fuel that the heater burns, or burned before.
    Fuel,
}

impl Meter {
    /// Every kind.
    pub const ALL: [Meter; 3] = [Meter::Own, Meter::Electricity, Meter::Fuel];

    /// The code in kept jobs.
    pub const fn code(self) -> &'static str {
        match self {
            Meter::Own => "own",
            Meter::Electricity => "electricity",
            Meter::Fuel => "fuel",
        }
    }

    /// The key of its words.
    pub const fn key(self) -> &'static str {
        match self {
            Meter::Own => "meter-own",
            Meter::Electricity => "meter-electricity",
            Meter::Fuel => "meter-fuel",
        }
    }
}

/// Two readings, kWh (fuel at its higher heating value).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readings {
    /// What was read.
    pub meter: Meter,
    /// First day.
    pub from: Date,
    /// Day of the last reading: it does not count any more.
    pub to: Date,
    /// Own count: the count on the first day. Bills: what the house used in the same days a year before.
    pub first_kwh: f64,
    /// Own count: the count on the last day. Bills: what the house used in these days.
    pub last_kwh: f64,
}

/// The unit that a meter is read in; the fuel's as bills have it.
pub const fn unit(meter: Meter, burned: HeaterKind) -> Unit {
    match (meter, burned) {
        (Meter::Fuel, HeaterKind::Gas) => Unit::Therm,
        (Meter::Fuel, HeaterKind::Propane | HeaterKind::Oil) => Unit::Gallon,
        _ => Unit::KilowattHour,
    }
}

/// An amount on a meter or bill in kWh; `None` in a unit that such a meter does not have.
pub fn kwh(meter: Meter, burned: HeaterKind, amount: Quantity) -> Option<f64> {
    let amount = amount.to(unit(meter, burned))?;
    Some(match (amount.unit, burned) {
        (Unit::Gallon, HeaterKind::Oil) => amount.value * OIL_KWH_PER_GAL,
        (Unit::Gallon, _) => amount.value * PROPANE_KWH_PER_GAL,
        _ => amount.base() / KWH_J,
    })
}

/// Readings that cannot be.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum BadReadings {
    /// Fewer days than tell anything, or more than a heater lives.
    #[error("the readings span {days} days; {least} to {most} would do")]
    Span {
        /// Days between them.
        days: i64,
        /// Least.
        least: i64,
        /// Most.
        most: i64,
    },
    /// A count that goes backwards.
    #[error("the last reading, {last} kWh, is below the first, {first} kWh")]
    Backwards {
        /// First count.
        first: f64,
        /// Last count.
        last: f64,
    },
    /// No energy at all, or more than a house can use.
    #[error("a reading of {given} kWh; 0 to {most} would do")]
    OutOfRange {
        /// What was given.
        given: f64,
        /// Most.
        most: f64,
    },
}

impl BadReadings {
    /// What to tell a person.
    pub fn message(&self) -> Message {
        match self {
            BadReadings::Span { days, least, most } => {
                Message::new("meter-bad-span").with("days", *days).with("least", *least).with("most", *most)
            }
            BadReadings::Backwards { .. } => Message::new("meter-bad-backwards"),
            BadReadings::OutOfRange { most, .. } => {
                Message::new("meter-bad-range").quantity("most", *most, Unit::KilowattHour)
            }
        }
    }
}

/// Fewest days between two readings: below, one bath more or less tells more than the heater.
pub const LEAST_DAYS: i64 = 14;
/// Most days: a heater's life.
pub const MOST_DAYS: i64 = 20 * 366;
/// Largest reading, kWh.
pub const MOST_KWH: f64 = 1e7;

/// How the meter stands against what was said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Against {
    /// Less than the band.
    Less,
    /// Within the band.
    AsExpected,
    /// More than the band.
    More,
}

/// The comparison.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// Days compared.
    pub days: i64,
    /// What was expected, kWh: of the heater, or of the change of a bill (negative: it falls).
    pub expected_kwh: f64,
    /// What was measured, likewise.
    pub measured_kwh: f64,
    /// The band around what was expected, kWh, within which nothing is amiss.
    pub band_kwh: (f64, f64),
    /// Money of what was expected and of what was measured.
    pub money: (f64, f64),
    /// How it stands.
    pub against: Against,
    /// Likely reasons, in order; none where all is as expected.
    pub reasons: Vec<&'static str>,
}

/// Daily use of a year's month series over a span, added up. A 29 February is a day like the month's others.
fn over(months: &[f64; 12], from: Date, to: Date) -> f64 {
    let mut sum = 0.0;
    let mut day = from;
    while day < to {
        let month = usize::from(day.month()) - 1;
        let (Some(of_month), Some(m)) = (months.get(month), Month::ALL.get(month)) else { return sum };
        // On to the next month at once: a span may have thousands of days.
        let next = day.plus_days(1 - i64::from(day.day())).plus_months(1);
        let end = if next < to { next } else { to };
        let in_month = (next.days() - day.plus_days(1 - i64::from(day.day())).days()) as f64;
        // Whole months give the month's figure, and a leap year a day more.
        let length = if in_month > f64::from(m.days()) { f64::from(m.days()) } else { in_month };
        sum += of_month / length * (end.days() - day.days()) as f64;
        if end <= day {
            return sum;
        }
        day = end;
    }
    sum
}

/// How sure the expectation is, as a share: how people use water is the most of it. Two households alike on paper
/// differ by a quarter; one that measured its showers by less; and a few weeks scatter more than a year. Common
/// practice, no source.
fn unsure(fitted: &Fitted, days: i64) -> f64 {
    let habits = match fitted.case.household.showers_per_day.from {
        Provenance::Assumed => 0.25,
        Provenance::Answered => 0.18,
        Provenance::Measured => 0.12,
    };
    let (model, weeks): (f64, f64) = (0.10, 0.35 / libm::sqrt(days as f64 / 7.0));
    libm::sqrt(habits * habits + model * model + weeks * weeks)
}

/// What the rest of a house's bill changes by from one year to the next, as a share of it.
const REST_OF_BILL: f64 = 0.08;

/// What the heater before used in a span: the present heater's year, by carrier.
fn series(year: &YearResult, meter: Meter) -> &[f64; 12] {
    match meter {
        Meter::Own | Meter::Electricity => &year.electricity_kwh,
        Meter::Fuel => &year.fuel_kwh,
    }
}

/// Compares readings with the heater's simulated year. `before` is the year of the heater that stood there: what a
/// bill of the year before holds.
///
/// # Errors
/// Refuses readings that cannot be, with what would do.
pub fn compare(fitted: &Fitted, before: &YearResult, r: &Readings) -> Result<Compared, BadReadings> {
    let days = r.to.days() - r.from.days();
    if !(LEAST_DAYS..=MOST_DAYS).contains(&days) {
        return Err(BadReadings::Span { days, least: LEAST_DAYS, most: MOST_DAYS });
    }
    for given in [r.first_kwh, r.last_kwh] {
        if !(0.0..=MOST_KWH).contains(&given) {
            return Err(BadReadings::OutOfRange { given, most: MOST_KWH });
        }
    }
    let bill = r.meter != Meter::Own;
    if !bill && r.last_kwh < r.first_kwh {
        return Err(BadReadings::Backwards { first: r.first_kwh, last: r.last_kwh });
    }
    let of_heater = over(series(fitted.year, r.meter), r.from, r.to);
    let of_before = over(series(before, r.meter), r.from, r.to);
    let (measured, expected) =
        (r.last_kwh - r.first_kwh, if bill { of_heater - of_before } else { of_heater });
    let share = unsure(fitted, days);
    let band = if bill {
        let larger = if of_heater > of_before { of_heater } else { of_before };
        share * larger + REST_OF_BILL * r.first_kwh
    } else {
        share * expected
    };
    let against = if measured < expected - band {
        Against::Less
    } else if measured > expected + band {
        Against::More
    } else {
        Against::AsExpected
    };
    let prices = &fitted.case.prices;
    let price = match r.meter {
        Meter::Own | Meter::Electricity => energy_price::of_heater(prices, fitted.year).price,
        Meter::Fuel => fuel(fitted.case.heater.kind.value, prices).price,
    };
    let reasons = reasons(fitted, r, against, measured, of_heater);
    Ok(Compared {
        days,
        expected_kwh: expected,
        measured_kwh: measured,
        band_kwh: (expected - band, expected + band),
        money: (expected * price, measured * price),
        against,
        reasons,
    })
}

/// What elements alone would use in a span, kWh: all heat delivered and lost.
pub fn by_elements_kwh(year: &YearResult, from: Date, to: Date) -> f64 {
    let delivered = over(&year.delivered_kwh, from, to);
    let standby = year.standby.get::<joule>() / KWH_J * (to.days() - from.days()) as f64 / 365.0;
    delivered + standby
}

/// Likely reasons as keys of their words, in order: what the size of the difference speaks for comes first.
fn reasons(
    fitted: &Fitted,
    r: &Readings,
    against: Against,
    measured: f64,
    of_heater: f64,
) -> Vec<&'static str> {
    let bill = r.meter != Meter::Own;
    let pump = matches!(fitted.candidate.label.kind, HeaterKind::HeatPump);
    let mut all = Vec::new();
    match against {
        Against::AsExpected => {}
        Against::More => {
            let elements = by_elements_kwh(fitted.year, r.from, r.to);
            // Nearer to what elements alone use than to what the heat pump does.
            let mostly_elements = pump && !bill && measured > 0.5 * (of_heater + elements);
            if mostly_elements {
                all.extend(["meter-why-elements-mode", "meter-why-locked-out"]);
            }
            if bill {
                all.push("meter-why-rest-of-house");
            }
            all.push("meter-why-more-water");
            all.push("meter-why-setpoint-up");
            if pump && !mostly_elements {
                all.push("meter-why-elements-often");
                // A cool room makes it work harder.
                if to_celsius(fitted.case.room.winter.value) < 15.0 {
                    all.push("meter-why-cold-room");
                }
                all.push("meter-why-filter");
            }
            all.push("meter-why-leak-or-loop");
        }
        Against::Less => {
            if bill {
                all.push("meter-why-rest-of-house");
            }
            all.extend(["meter-why-less-water", "meter-why-away", "meter-why-setpoint-down"]);
            if pump && !bill {
                all.extend(["meter-why-warm-room", "meter-why-counts-part"]);
            }
        }
    }
    all
}
