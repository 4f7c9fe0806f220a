//! Electricity that costs more at some hours: what a candidate pays by the hour, and what heating at the cheap
//! hours saves.
//!
//! [`hours`] gathers a simulated year's electricity by hour of the day; [`schedule`] is a heater that heats before the
//! peak and holds off during it; [`report`] puts both beside each candidate. None of it belongs to the first verdict,
//! which counts with one price.
//!
//! Hours are those of the clock on the wall: people live by it, and tariffs mostly do. The change to summer time is no
//! hour of its own here, neither in the draws nor in the prices.

pub mod hours;
pub mod report;
pub mod schedule;

pub use hours::Hours;

use super::calendar::Month;
use super::case::{PeakSeason, Tariff, TariffKind, YesNo};

impl Tariff {
    /// True where the hour matters.
    pub fn is_by_hour(&self) -> bool {
        self.kind.value == TariffKind::Time
    }

    /// Whether a month has peak hours.
    pub fn has_peak(&self, month: usize) -> bool {
        match self.season.value {
            PeakSeason::Year => true,
            PeakSeason::Summer => (Month::June.index()..=Month::September.index()).contains(&month),
            PeakSeason::Winter => month >= Month::November.index() || month <= Month::March.index(),
        }
    }

    /// Share of an hour of the day that lies in the peak, 0 to 1. From and to alike: no peak.
    pub fn peak_share(&self, month: usize, weekend: bool, hour: usize) -> f64 {
        if !self.has_peak(month) || (weekend && matches!(self.weekdays_only.value, YesNo::Yes)) {
            return 0.0;
        }
        let (from, to) = (self.from_hour.value, self.to_hour.value);
        let within = |from: f64, to: f64| {
            let (start, end) = (hour as f64, hour as f64 + 1.0);
            let (start, end) = (if start > from { start } else { from }, if end < to { end } else { to });
            if end > start { end - start } else { 0.0 }
        };
        // Over midnight, the early hours count to the day they fall on.
        if from <= to { within(from, to) } else { within(from, 24.0) + within(0.0, to) }
    }

    /// Length of the peak in a day that has one, hours.
    pub fn peak_hours(&self) -> f64 {
        let length = self.to_hour.value - self.from_hour.value;
        if length < 0.0 { length + 24.0 } else { length }
    }

    /// Price of a kilowatt-hour at an hour.
    fn price(&self, month: usize, weekend: bool, hour: usize) -> f64 {
        let share = self.peak_share(month, weekend, hour);
        self.low.value + share * (self.peak.value - self.low.value)
    }

    /// What a year's electricity costs: by the hour where the tariff says so, else all of it at the flat price,
    /// which is then the very figure that the verdict counts with.
    pub fn cost(&self, flat: f64, year_kwh: f64, hours: &Hours) -> f64 {
        if !self.is_by_hour() {
            return year_kwh * flat;
        }
        hours.sum(|month, weekend, hour| self.price(month, weekend, hour))
    }
}
