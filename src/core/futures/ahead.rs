//! What nobody can know today, as standard normal numbers: how long heaters live, where prices go, who moves out or in,
//! what the weather of the years is.
//!
//! Each at 0 in the middle of its distribution; [`Ahead::expected`] is the one future that the advice's own figures rest on.

use crate::core::case::Case;
use crate::core::draws::daily_use;
use crate::core::life::present;
use crate::core::room::typical;
use crate::core::units::{celsius, to_celsius};

use super::points::normal_share;

/// How many numbers one future takes.
pub const COUNT: usize = 8;
/// What they are called, in their order: those of one name belong together.
pub const CODES: [&str; COUNT] = [
    "future_lives",
    "future_lives",
    "future_lives",
    "future_prices",
    "future_prices",
    "future_household",
    "future_household",
    "future_weather",
];

/// Real household prices wander: standard deviation of their logarithm after a year, growing with the root of time.
/// Electricity moves a few per cent a year, fuels some three times as much (US energy statistics' yearly averages, from
/// memory).
const ELECTRICITY_WANDERS: f64 = 0.03;
const FUEL_WANDERS: f64 = 0.08;
/// Chance a year that somebody moves out or in: about one in twelve households (common practice, no source).
const MOVES_A_YEAR: f64 = 0.08;
/// Standard deviation of the years' mean outdoor temperature about the climate's, K: a single year's is about 0.7, of a
/// dozen years' mean 0.2 by chance and as much by trend (from memory).
const WEATHER_K: f64 = 0.3;

/// The years ahead of one future.
#[derive(Clone, Debug, PartialEq)]
pub struct Ahead {
    /// Years the present heater goes on.
    pub present_fails: f64,
    /// Lives of the first heater bought and of those after, years.
    pub lives: [f64; 2],
    /// How far electricity's and fuels' prices have wandered after a year, as a logarithm.
    pub wanders: [f64; 2],
    /// When somebody moves, and whether out (−1) or in (1); `None` within the years counted.
    pub moves: Option<(f64, f64)>,
    /// Outdoor temperature above the climate's, K.
    pub warmer_k: f64,
}

impl Ahead {
    /// What the advice reckons with: mean lives, prices as they are said to grow, nobody moves.
    pub fn expected(case: &Case) -> Ahead {
        Ahead {
            present_fails: present::expected_left(&case.heater),
            lives: [present::new_heater_years(); 2],
            wanders: [0.0; 2],
            moves: None,
            warmer_k: 0.0,
        }
    }

    /// Of one future.
    pub fn of(z: &[f64; COUNT], case: &Case) -> Ahead {
        let [old, first, later, electricity, fuel, when, way, weather] = *z;
        let h = &case.heater;
        let new = |z: f64| present::NEW.left_at(normal_share(z), 0.0);
        let when = -libm::log(normal_share(-when)) / MOVES_A_YEAR;
        Ahead {
            present_fails: if present::is_at_its_end(h) {
                0.0
            } else {
                present::of(h).left_at(normal_share(old), h.age_years.value)
            },
            lives: [new(first), new(later)],
            wanders: [ELECTRICITY_WANDERS * electricity, FUEL_WANDERS * fuel],
            moves: (when < case.prices.horizon_years.value).then(|| (when, Ahead::way(way, case))),
            warmer_k: WEATHER_K * weather,
        }
    }

    /// Out or in; the last one stays.
    fn way(z: f64, case: &Case) -> f64 {
        if z < 0.0 && case.household.people() >= 2.0 { -1.0 } else { 1.0 }
    }
}

/// The case in years that are so much warmer outdoors: cold water and room follow as far as they hang on it.
pub fn warmer(case: &mut Case, by_k: f64) {
    if by_k == 0.0 {
        return;
    }
    let (place, room) = (&mut case.place, &mut case.room);
    place.outdoor_mean.value = celsius(to_celsius(place.outdoor_mean.value) + by_k);
    let follows = |f: fn(crate::core::case::RoomKind, f64, f64) -> f64| {
        f(room.kind.value, 1.0, 0.0) - f(room.kind.value, 0.0, 0.0)
    };
    let (winter, summer) = (follows(typical::winter_c), follows(typical::summer_c));
    room.winter.value = celsius(to_celsius(room.winter.value) + winter * by_k);
    room.summer.value = celsius(to_celsius(room.summer.value) + summer * by_k);
}

/// The case with so many people more or less: what they use changes as the protocols' relations do.
#[must_use]
pub fn with_people(case: &Case, more: f64) -> Case {
    let mut case = case.clone();
    let h = &mut case.household;
    let before = h.people();
    let after = if before + more > 1.0 { before + more } else { 1.0 };
    let scale = |relation: fn(f64) -> f64| {
        let was = relation(before);
        if was > 0.0 { relation(after) / was } else { 1.0 }
    };
    h.showers_per_day.value *= scale(daily_use::showers_per_day);
    h.baths_per_week.value *= scale(daily_use::baths_per_week);
    h.dishwasher_loads_per_week.value *= scale(daily_use::dishwasher_loads_per_week);
    h.hot_washes_per_week.value *= scale(daily_use::hot_washes_per_week);
    // Sinks go by the people.
    h.adults.value += after - before;
    case
}
