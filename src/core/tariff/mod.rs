//! Electricity that costs more at some hours: what a candidate pays by the hour, and what heating at the cheap
//! hours saves.
//!
//! [`hours`] gathers a simulated year's electricity by hour of the day. Where a case's tariff goes by the hour, the
//! verdict, the costs and the futures count with it: each candidate pays the mean price of the hours at which it uses
//! its electricity ([`crate::core::money::energy_price`]), as it runs by itself.
//!
//! [`schedule`] is a heater that heats before the peak and holds off during it; [`report`] says what that saves. The
//! verdict never assumes it, not even where it is advised: nobody is held to set a clock. So heaters that run by a
//! schedule cost less than the verdict says, by what the report says.
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

    /// Mean price of a kilowatt-hour, $, of electricity of which this share is used at peak hours.
    pub fn mean_price(&self, peak_share: f64) -> f64 {
        self.low.value + peak_share * (self.peak.value - self.low.value)
    }

    /// Share of each month's electricity that is used at peak hours, 0 to 1; 0 where a month used none.
    pub fn shares(&self, hours: &Hours) -> [f64; 12] {
        let (mut all, mut shares) = ([0.0; 12], [0.0; 12]);
        hours.each(|month, weekend, hour, kwh| {
            all[month] += kwh;
            shares[month] += kwh * self.peak_share(month, weekend, hour);
        });
        for (share, all) in shares.iter_mut().zip(all) {
            if all > 0.0 {
                *share /= all;
            }
        }
        shares
    }

    /// Of what is used month by month, evenly round the clock: all of it, and how much of that at peak hours. Five working
    /// days to the week.
    pub fn level(&self, by_month: &[f64; 12]) -> [f64; 2] {
        let days = if matches!(self.weekdays_only.value, YesNo::Yes) { 5.0 / 7.0 } else { 1.0 };
        let share = days * self.peak_hours() / 24.0;
        let peak = by_month.iter().enumerate().filter(|(month, _)| self.has_peak(*month));
        [by_month.iter().sum(), peak.map(|(_, used)| used * share).sum()]
    }
}
