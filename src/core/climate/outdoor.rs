//! The outdoor temperature of a day from the two figures of a climate: annual mean and yearly range.
//!
//! A sinusoid, because the monthly means of a temperate or cold climate follow one within a kelvin or two
//! (common practice, no source) and because the published cold-water relation rests on the same two figures.
//! Weather from day to day is not in it.

use crate::core::calendar::{DAYS_PER_YEAR, DayOfYear};
use crate::core::units::{celsius, kelvins, to_celsius};
use std::f64::consts::PI;
use std::ops::RangeInclusive;
use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature};
use uom::si::temperature_interval::kelvin;

/// Annual mean outdoor temperatures taken, °C: every inhabited place, with room to spare.
pub const MEAN_BOUNDS_C: RangeInclusive<f64> = -30.0..=40.0;
/// Yearly ranges taken, K: none on the equator; the widest known, in eastern Siberia, is above 60.
pub const RANGE_BOUNDS_K: RangeInclusive<f64> = 0.0..=70.0;

/// Day of the year with the coldest outdoor air: 20 January.
///
/// The sun is lowest on 21 December; the ground and the air go on cooling for about a month, because they still
/// lose more heat than they gain. In the interior of the continent the coldest day falls in mid January, at the
/// coasts in late January or early February (published daily normals, from memory).
pub const COLDEST_DAY: f64 = 20.0;

/// Warmest less coldest monthly mean, as a part of twice the daily curve's amplitude.
///
/// A monthly mean flattens the curve's top and bottom, and no month lies just around them, so the daily curve
/// has to swing by a little more than the range of its monthly means: the mean over January less the mean over
/// July of cos(2π (day − 20) / 365), halved.
const MONTHLY_SPAN: f64 = 0.984_805_145_770_677;

/// The outdoor temperature through an average year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutdoorYear {
    mean_c: f64,
    range_k: f64,
}

impl OutdoorYear {
    /// From the annual mean and the difference between the warmest and the coldest monthly mean.
    ///
    /// Total, for the figures of a case were checked where they were entered: one out of bounds counts as the
    /// nearest bound, and one that is not a number as the lower bound.
    pub fn new(mean: ThermodynamicTemperature, range: TemperatureInterval) -> Self {
        Self {
            mean_c: bounded(to_celsius(mean), MEAN_BOUNDS_C),
            range_k: bounded(range.get::<kelvin>(), RANGE_BOUNDS_K),
        }
    }

    /// The annual mean.
    pub fn annual_mean(&self) -> ThermodynamicTemperature {
        celsius(self.mean_c)
    }

    /// The difference between the warmest and the coldest monthly mean.
    pub fn monthly_range(&self) -> TemperatureInterval {
        kelvins(self.range_k)
    }

    /// The annual mean in °C.
    pub(in crate::core) const fn mean_c(&self) -> f64 {
        self.mean_c
    }

    /// The yearly range in K.
    pub(in crate::core) const fn range_k(&self) -> f64 {
        self.range_k
    }

    /// Mean temperature of a day in an average year.
    pub fn on(&self, day: DayOfYear) -> ThermodynamicTemperature {
        let angle = 2.0 * PI / f64::from(DAYS_PER_YEAR) * (f64::from(day.number()) - COLDEST_DAY);
        celsius(self.mean_c - self.range_k / (2.0 * MONTHLY_SPAN) * libm::cos(angle))
    }
}

/// `x` within bounds; what is not a number counts as the lower one.
pub(super) const fn bounded(x: f64, bounds: RangeInclusive<f64>) -> f64 {
    if x > *bounds.start() { if x < *bounds.end() { x } else { *bounds.end() } } else { *bounds.start() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::calendar::Month;

    fn year(mean_c: f64, range_k: f64) -> OutdoorYear {
        OutdoorYear::new(celsius(mean_c), kelvins(range_k))
    }

    fn monthly_means(year: &OutdoorYear) -> Vec<f64> {
        Month::ALL
            .iter()
            .map(|&m| {
                let days: Vec<_> = DayOfYear::all().filter(|d| d.month() == m).collect();
                days.iter().map(|&d| to_celsius(year.on(d))).sum::<f64>() / days.len() as f64
            })
            .collect()
    }

    #[test]
    fn mean_and_monthly_range_come_back_out() {
        for (mean, range) in [(11.1, 24.6), (-9.0, 35.3), (25.6, 4.8), (10.0, 0.0)] {
            let year = year(mean, range);
            let daily = DayOfYear::all().map(|d| to_celsius(year.on(d))).sum::<f64>() / 365.0;
            assert!((daily - mean).abs() < 1e-9, "mean {daily} for {mean}");
            let months = monthly_means(&year);
            let coldest = months.iter().copied().fold(f64::INFINITY, f64::min);
            let warmest = months.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            assert!((warmest - coldest - range).abs() < 1e-6, "{} for {range}", warmest - coldest);
        }
    }

    #[test]
    fn coldest_is_late_january_and_warmest_half_a_year_later() {
        let year = year(8.0, 30.0);
        let by_temperature =
            |a: &DayOfYear, b: &DayOfYear| to_celsius(year.on(*a)).total_cmp(&to_celsius(year.on(*b)));
        assert_eq!(DayOfYear::all().min_by(by_temperature).map(DayOfYear::number), Some(20));
        let warmest = DayOfYear::all().max_by(by_temperature).map(DayOfYear::number);
        assert!(matches!(warmest, Some(202 | 203)), "{warmest:?}");
    }

    #[test]
    fn figures_that_no_place_has_count_as_the_nearest_bound() {
        for (bad, taken) in [(f64::NAN, -30.0), (f64::INFINITY, 40.0), (-273.0, -30.0), (1e300, 40.0)] {
            let mean = to_celsius(year(bad, 10.0).annual_mean());
            assert!((mean - taken).abs() < 1e-9, "{bad} taken as {mean}");
        }
        for (bad, taken) in [(f64::NAN, 0.0), (f64::NEG_INFINITY, 0.0), (-0.1, 0.0), (70.1, 70.0)] {
            assert_eq!(year(10.0, bad).monthly_range().get::<kelvin>(), taken, "{bad}");
        }
        assert!(DayOfYear::all().all(|d| to_celsius(year(f64::NAN, f64::NAN).on(d)).is_finite()));
    }
}
