//! Cold-water temperature of a day, from the outdoor climate or from one measurement at the tap.
//!
//! The relation of the Building America House Simulation Protocols (US National Renewable Energy Laboratory;
//! the 2010 edition and after, from memory; first published by Burch and Christensen, "Towards Development of an
//! Algorithm for Mains Water Temperature", American Solar Energy Society, 2007). In the publication's own
//! units, with Ta the annual mean outdoor temperature in °F, ΔTa the difference between the warmest and the
//! coldest monthly mean in °F, day 1 = 1 January, and the sine of an angle in degrees:
//!
//! ```text
//! T(day) = (Ta + 6) + ratio · ΔTa/2 · sin(0.986 · (day − 15 − lag) − 90)
//! ratio  = 0.4 + 0.01 · (Ta − 44)
//! lag    = 35 − 1.0 · (Ta − 44)        days
//! ```
//!
//! The published fit rests on measurements in US cities, annual means of about 4 to 25 °C. Outside that, bounds
//! of our own keep it physical: the ratio does not fall below zero (the water would be coldest in summer), the
//! lag does not fall below zero (a buried pipe cannot be ahead of the air), the mean is not below
//! [`COLDEST_MAINS_C`], and the swing is at most what keeps the coldest day there. Limiting the swing rather than
//! cutting the curve off keeps the yearly mean what it says.

use super::outdoor::{OutdoorYear, bounded};
use crate::core::calendar::DayOfYear;
use crate::core::units::{celsius, kelvins, to_celsius};
use std::f64::consts::PI;
use std::ops::RangeInclusive;
use thiserror::Error;
use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature};
use uom::si::temperature_interval::kelvin;

/// The coldest that the relation may say cold water is, °C.
///
/// Water at 0 °C would freeze in the pipe; where the ground is that cold the utility heats or circulates the
/// water (common practice, no source). One kelvin above freezing is our choice: it costs the heater more than
/// any such place will really ask, so it errs to the safe side.
pub const COLDEST_MAINS_C: f64 = 1.0;

/// Cold-tap temperatures taken as measured, °C: from ice water to a shallow pipe in a desert summer.
pub const MEASURED_BOUNDS_C: RangeInclusive<f64> = 0.0..=45.0;

/// Yearly means taken, °C.
const MEAN_BOUNDS_C: RangeInclusive<f64> = COLDEST_MAINS_C..=*MEASURED_BOUNDS_C.end();

/// Mean of the year above the outdoor mean, K (6 °F).
const OFFSET_K: f64 = 6.0 / 1.8;
/// Outdoor mean at which the ratio is 0.4 and the lag 35 days, °C (44 °F).
const REFERENCE_C: f64 = (44.0 - 32.0) / 1.8;
/// Ratio of the water's swing to the outdoor swing at the reference.
const RATIO_AT_REFERENCE: f64 = 0.4;
/// Growth of the ratio, 1/K (0.01 per °F).
const RATIO_PER_K: f64 = 0.01 * 1.8;
/// Lag at the reference, days.
const LAG_AT_REFERENCE: f64 = 35.0;
/// Fall of the lag, days/K (1 per °F).
const LAG_PER_K: f64 = 1.0 * 1.8;
/// Middle of the coldest month in the relation, day of the year.
const MIDWINTER_DAY: f64 = 15.0;
/// The year's angle a day, degrees, rounded as published: 365 days make 359.89 degrees.
const DEGREES_PER_DAY: f64 = 0.986;

/// A measured temperature that cannot be that of cold water.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("cold-tap temperature of {measured_c} °C: let the tap run cold, and give one between 0 and 45 °C")]
pub struct NotColdWater {
    /// The temperature given, °C; may be not a number.
    pub measured_c: f64,
}

/// The cold water through an average year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mains {
    /// Yearly mean with the shift.
    mean_c: f64,
    /// Half the swing, before it is limited by the mean.
    published_amplitude_k: f64,
    /// Day of the coldest water, 15 or later.
    coldest_day: f64,
}

impl Mains {
    /// From the annual mean outdoor temperature and the difference between the warmest and the coldest monthly
    /// mean, by the published relation. Total, as [`OutdoorYear::new`] is.
    pub fn from_outdoor(mean: ThermodynamicTemperature, range: TemperatureInterval) -> Self {
        let outdoor = OutdoorYear::new(mean, range);
        let above_reference = outdoor.mean_c() - REFERENCE_C;
        let ratio = at_least(0.0, RATIO_AT_REFERENCE + RATIO_PER_K * above_reference);
        let lag = at_least(0.0, LAG_AT_REFERENCE - LAG_PER_K * above_reference);
        Self {
            mean_c: at_least(COLDEST_MAINS_C, outdoor.mean_c() + OFFSET_K),
            published_amplitude_k: ratio * outdoor.range_k() / 2.0,
            coldest_day: MIDWINTER_DAY + lag,
        }
    }

    /// The same curve with its yearly mean moved by `shift`. Total: the mean stays between [`COLDEST_MAINS_C`]
    /// and the warmest of [`MEASURED_BOUNDS_C`], and a shift that is not a number makes it the coldest.
    #[must_use]
    pub fn shifted(self, shift: TemperatureInterval) -> Self {
        Self { mean_c: bounded(self.mean_c + shift.get::<kelvin>(), MEAN_BOUNDS_C), ..self }
    }

    /// The shift that takes this curve through a temperature measured at the cold tap on a day: what
    /// [`Self::shifted`] needs. One day's measurement moves the whole year, because wells, lakes and rivers
    /// differ from the relation mostly in their mean. Water measured colder than [`COLDEST_MAINS_C`] counts as
    /// that cold.
    ///
    /// # Errors
    /// [`NotColdWater`] when the temperature is not a number or outside [`MEASURED_BOUNDS_C`].
    pub fn shift_through(
        &self,
        day: DayOfYear,
        measured: ThermodynamicTemperature,
    ) -> Result<TemperatureInterval, NotColdWater> {
        let measured_c = to_celsius(measured);
        if !MEASURED_BOUNDS_C.contains(&measured_c) {
            return Err(NotColdWater { measured_c });
        }
        let above_coldest = at_least(0.0, measured_c - COLDEST_MAINS_C);
        let phase = self.phase(day);
        let full_swing = self.published_amplitude_k;
        // With mean m above the coldest, the day lies at m + swing(m) · phase, where swing(m) = min(full, m).
        let mean_above_coldest = if above_coldest >= full_swing * (1.0 + phase) {
            above_coldest - full_swing * phase
        } else {
            above_coldest / (1.0 + phase)
        };
        Ok(kelvins(COLDEST_MAINS_C + mean_above_coldest - self.mean_c))
    }

    /// Cold-water temperature of a day.
    pub fn on(&self, day: DayOfYear) -> ThermodynamicTemperature {
        celsius(self.mean_c + self.amplitude_k() * self.phase(day))
    }

    /// The mean over the year.
    pub fn annual_mean(&self) -> ThermodynamicTemperature {
        celsius(self.mean_c)
    }

    /// The day with the coldest water: where the busiest hour is hardest.
    pub fn coldest_day(&self) -> DayOfYear {
        // The lag of the coldest climate that `OutdoorYear` takes is 101 days: this is a day of the year.
        DayOfYear::from_index((self.coldest_day + 0.5) as u32 - 1)
    }

    /// Half the swing between the coldest and the warmest day, K.
    fn amplitude_k(&self) -> f64 {
        let room_below = self.mean_c - COLDEST_MAINS_C;
        if self.published_amplitude_k < room_below { self.published_amplitude_k } else { room_below }
    }

    /// Where the day lies in the swing: -1 on the coldest day, 1 on the warmest.
    fn phase(&self, day: DayOfYear) -> f64 {
        let degrees = DEGREES_PER_DAY * (f64::from(day.number()) - self.coldest_day) - 90.0;
        libm::sin(degrees * PI / 180.0)
    }
}

/// `x`, or `least` where it is below.
const fn at_least(least: f64, x: f64) -> f64 {
    if x < least { least } else { x }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::climate::places;
    use crate::core::units::fahrenheit;

    fn in_fahrenheit(t: ThermodynamicTemperature) -> f64 {
        to_celsius(t) * 1.8 + 32.0
    }

    fn from_fahrenheit(mean_f: f64, range_f: f64) -> Mains {
        Mains::from_outdoor(fahrenheit(mean_f), kelvins(range_f / 1.8))
    }

    fn day(number: u16) -> DayOfYear {
        DayOfYear::new(number).expect("a day of the year")
    }

    fn climates() -> impl Iterator<Item = Mains> {
        places::all().map(|p| Mains::from_outdoor(p.annual_mean(), p.monthly_range()))
    }

    /// By hand: at an annual mean of 44 °F the ratio is 0.4 and the lag 35 days, so the coldest day is 15 + 35 =
    /// 50, with 50 °F − 0.4 · 40 / 2 °F = 42 °F; a quarter turn, 90 / 0.986 = 91.3 days later, it is at its mean.
    #[test]
    fn hand_computed_days_at_the_reference_mean() {
        let mains = from_fahrenheit(44.0, 40.0);
        assert_eq!(mains.coldest_day(), day(50));
        assert!((in_fahrenheit(mains.on(day(50))) - 42.0).abs() < 1e-9);
        assert!((in_fahrenheit(mains.on(day(141))) - 50.0).abs() < 0.05);
    }

    /// By hand in °F, from annual mean, range and day:
    /// - 51.9, 44.2, 20 (Boston's figures): ratio 0.479, lag 27.1, angle 0.986 · (20 − 42.1) − 90 = −111.7906°, sine
    ///   −0.928547, so 57.9 − 0.479 · 22.1 · 0.928547 = 48.0705
    /// - 77.4, 15.4, 230 (Miami's): ratio 0.734, lag 1.6, angle 0.986 · 213.4 − 90 = 120.4124°, sine 0.862404, so
    ///   83.4 + 0.734 · 7.7 · 0.862404 = 88.2741
    /// - 46.9, 59.0, 91 (Minneapolis's): ratio 0.429, lag 32.1, angle 0.986 · 43.9 − 90 = −46.7146°, sine −0.727947,
    ///   so 52.9 − 0.429 · 29.5 · 0.727947 = 43.6875
    #[test]
    fn hand_computed_days_of_three_climates() {
        for (mean_f, range_f, number, expected_f) in
            [(51.9, 44.2, 20, 48.0705), (77.4, 15.4, 230, 88.2741), (46.9, 59.0, 91, 43.6875)]
        {
            let t = in_fahrenheit(from_fahrenheit(mean_f, range_f).on(day(number)));
            assert!((t - expected_f).abs() < 1e-4, "{mean_f}, {range_f}, day {number}: {t}");
        }
    }

    #[test]
    fn the_year_averages_six_fahrenheit_above_the_outdoor_mean() {
        for place in places::all() {
            let mains = Mains::from_outdoor(place.annual_mean(), place.monthly_range());
            let mean = DayOfYear::all().map(|d| to_celsius(mains.on(d))).sum::<f64>() / 365.0;
            // 365 days of 0.986° fall 0.11° short of a turn: at most a few hundredths of a kelvin.
            assert!((mean - to_celsius(mains.annual_mean())).abs() < 0.02, "{}: {mean}", place.id);
            let expected = place.annual_mean_c + 6.0 / 1.8;
            if expected > COLDEST_MAINS_C {
                assert!((mean - expected).abs() < 0.02, "{}: {mean}", place.id);
            }
        }
    }

    #[test]
    fn water_follows_the_air_later_and_with_a_smaller_swing() {
        for place in places::all() {
            let mains = Mains::from_outdoor(place.annual_mean(), place.monthly_range());
            let coldest = DayOfYear::all()
                .min_by(|a, b| to_celsius(mains.on(*a)).total_cmp(&to_celsius(mains.on(*b))))
                .expect("a year has days");
            // Where the ground is frozen all year there is no swing, and no day is the coldest.
            if mains.amplitude_k() > 0.0 {
                assert!(
                    coldest.number().abs_diff(mains.coldest_day().number()) <= 1,
                    "{}: {coldest:?}",
                    place.id
                );
            }
            assert!((15..=116).contains(&mains.coldest_day().number()), "{}", place.id);
            assert!(mains.amplitude_k() < place.monthly_range_k / 2.0, "{}", place.id);
        }
        // A cooler ground lags more: Minneapolis after Miami.
        let coldest = |id| {
            let p = places::by_id(id).expect("listed");
            Mains::from_outdoor(p.annual_mean(), p.monthly_range()).coldest_day()
        };
        assert!(coldest("us-mn-minneapolis") > coldest("us-fl-miami"));
    }

    #[test]
    fn water_never_freezes_even_where_the_ground_does() {
        for mains in climates() {
            for d in DayOfYear::all() {
                let t = to_celsius(mains.on(d));
                assert!((COLDEST_MAINS_C - 1e-9..40.0).contains(&t), "{t}");
            }
        }
    }

    #[test]
    fn a_measured_cold_tap_moves_the_curve_through_itself() {
        for mains in climates() {
            for number in [1, 20, 50, 120, 230, 300] {
                for measured_c in [0.0, 1.0, 4.0, 12.5, 25.0] {
                    let shift = mains.shift_through(day(number), celsius(measured_c)).expect("cold water");
                    let there = to_celsius(mains.shifted(shift).on(day(number)));
                    let expected = at_least(COLDEST_MAINS_C, measured_c);
                    assert!(
                        (there - expected).abs() < 1e-9,
                        "{mains:?} day {number}: {there}, not {expected}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_shift_moves_the_mean_and_keeps_the_shape() {
        let mains = from_fahrenheit(51.9, 44.2);
        let warmer = mains.shifted(kelvins(2.5));
        for d in DayOfYear::all() {
            assert!((to_celsius(warmer.on(d)) - to_celsius(mains.on(d)) - 2.5).abs() < 1e-9);
        }
        assert!((to_celsius(warmer.annual_mean()) - to_celsius(mains.annual_mean()) - 2.5).abs() < 1e-9);
    }

    #[test]
    fn what_is_not_cold_water_is_refused() {
        let mains = from_fahrenheit(51.9, 44.2);
        for bad in [f64::NAN, f64::INFINITY, -0.1, 45.1, 1e300] {
            assert!(mains.shift_through(day(1), celsius(bad)).is_err(), "{bad}");
        }
    }

    #[test]
    fn unreasonable_climates_and_shifts_still_give_cold_water() {
        for mean in [f64::NAN, f64::NEG_INFINITY, -273.15, 40.0, 1e300] {
            for range in [f64::NAN, -5.0, 70.0, f64::INFINITY] {
                for shift in [f64::NAN, -1e300, 0.0, 1e300] {
                    let mains = Mains::from_outdoor(celsius(mean), kelvins(range)).shifted(kelvins(shift));
                    for d in DayOfYear::all() {
                        let t = to_celsius(mains.on(d));
                        assert!((COLDEST_MAINS_C - 1e-9..=90.0).contains(&t), "{mean} {range} {shift}: {t}");
                    }
                    assert!(mains.coldest_day() <= day(116));
                }
            }
        }
    }
}
