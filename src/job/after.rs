//! What is noted after the work, typed: the heater decided on, the day it was installed, start-up readings, meter
//! readings. A view of [`Done`], which keeps them by code; what cannot be understood counts as not there.
//!
//! Codes: `heater`, `installed`, `start.<reading>`, `meter`, `meter.from`, `meter.to`, `meter.first`, `meter.last`.

use super::done::Done;
use super::questions::Value;
use crate::core::after::Date;
use crate::core::after::meter::{Meter, Readings, kwh};
use crate::core::after::start::{Reading, Taken};
use crate::core::candidates::CandidateId;
use crate::core::case::HeaterKind;
use crate::core::units::Quantity;

/// Code of the heater decided on.
pub const HEATER: &str = "heater";
/// Code of the day it was installed.
pub const INSTALLED: &str = "installed";
/// Code of what meter is read.
pub const METER: &str = "meter";
/// Code of the day of the first meter reading.
pub const METER_FROM: &str = "meter.from";
/// Code of the day of the last one.
pub const METER_TO: &str = "meter.to";
/// Code of the first meter reading.
pub const METER_FIRST: &str = "meter.first";
/// Code of the last one.
pub const METER_LAST: &str = "meter.last";

fn text<'a>(done: &'a Done, what: &str) -> Option<&'a str> {
    match done.get(what)? {
        Value::Code(text) => Some(text),
        Value::Number(_) => None,
    }
}

/// A number that was noted.
pub fn number(done: &Done, what: &str) -> Option<Quantity> {
    match done.get(what)? {
        Value::Number(q) => Some(*q),
        Value::Code(_) => None,
    }
}

/// A day that was noted.
pub fn date(done: &Done, what: &str) -> Option<Date> {
    Date::parse(text(done, what)?)
}

/// The heater decided on.
pub fn heater(done: &Done) -> Option<CandidateId> {
    CandidateId::from_code(text(done, HEATER)?)
}

/// The meter that is read; the heater's own count unless another was chosen.
pub fn meter(done: &Done) -> Meter {
    let said = text(done, METER).unwrap_or("");
    Meter::ALL.into_iter().find(|m| m.code() == said).unwrap_or(Meter::Own)
}

/// The code a reading is kept under.
pub fn code(reading: Reading) -> String {
    format!("start.{}", reading.code())
}

/// The start-up readings; what no instrument shows is left out.
pub fn taken(done: &Done) -> Taken {
    let mut taken = Taken::default();
    for &reading in Reading::ALL {
        if let Some(q) = number(done, &code(reading)) {
            // Refused ones stay in the record, and are no readings.
            let _ = taken.set(reading, q);
        }
    }
    taken
}

/// The meter readings, once all four are there. `burned`: what the heater whose fuel bill it is burns.
pub fn readings(done: &Done, burned: HeaterKind) -> Option<Readings> {
    let meter = meter(done);
    let amount = |what| kwh(meter, burned, number(done, what)?);
    Some(Readings {
        meter,
        from: date(done, METER_FROM)?,
        to: date(done, METER_TO)?,
        first_kwh: amount(METER_FIRST)?,
        last_kwh: amount(METER_LAST)?,
    })
}
