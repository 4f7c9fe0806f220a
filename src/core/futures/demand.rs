//! What a household's hot water takes in a year, as the year of draws of its seed really has it.
//!
//! A synthetic year draws a little more or less than its means say, by its luck. How much depends on nothing but the
//! seed, the fixture and how often it is used: it is tabled once over a grid of that and interpolated, instead of
//! generating a year for each future.

use crate::core::draws::{DrawYear, Fixture, HouseholdUse};

/// Draws a day of the grid, from the least to the most, by equal factors.
const LEAST: f64 = 0.05;
const MOST: f64 = 24.0;
const POINTS: usize = 28;
const DAYS: f64 = 365.0;

/// A seed's luck: the year's volume over what the means say, by fixture and use.
#[derive(Clone, Debug)]
pub struct Luck {
    share: Vec<[f64; POINTS]>,
}

/// Mean volumes a day, m³: mixed water, and hot water for appliances.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Volumes {
    /// At showers, baths and sinks, mixed.
    pub mixed_m3: f64,
    /// For dishwasher and clothes washer.
    pub hot_m3: f64,
}

fn nobody() -> HouseholdUse {
    HouseholdUse {
        showers_per_day: 0.0,
        shower_m3: 1.0,
        shower_flow: 1.0,
        baths_per_day: 0.0,
        bath_m3: 1.0,
        sinks_m3_per_day: 0.0,
        dishwasher_per_day: 0.0,
        hot_washes_per_day: 0.0,
    }
}

fn only(fixture: Fixture, rate: f64) -> HouseholdUse {
    let nobody = nobody();
    match fixture {
        Fixture::Shower => HouseholdUse { showers_per_day: rate, ..nobody },
        Fixture::Bath => HouseholdUse { baths_per_day: rate, ..nobody },
        // A grid of volumes: a hundredth of a cubic metre is some four draws.
        Fixture::Sink => HouseholdUse { sinks_m3_per_day: 0.01 * rate, ..nobody },
        Fixture::Dishwasher => HouseholdUse { dishwasher_per_day: rate, ..nobody },
        Fixture::ClothesWasher => HouseholdUse { hot_washes_per_day: rate, ..nobody },
    }
}

fn rate(point: usize) -> f64 {
    let step = libm::log(MOST / LEAST) / (POINTS - 1) as f64;
    LEAST * libm::exp(step * point as f64)
}

impl Luck {
    /// Of a seed of draws.
    pub fn of(seed: u64) -> Luck {
        let volume = |used: &HouseholdUse| {
            DrawYear::generate(used, seed).all().iter().map(|d| d.volume_m3).sum::<f64>() / DAYS
        };
        let share = Fixture::ALL
            .into_iter()
            .map(|fixture| {
                std::array::from_fn(|point| {
                    let used = only(fixture, rate(point));
                    let expected = match fixture {
                        Fixture::Sink => used.sinks_m3_per_day,
                        _ => rate(point) * used.volume_m3(fixture),
                    };
                    volume(&used) / expected
                })
            })
            .collect();
        Luck { share }
    }

    /// The year's volumes of a household, a day.
    pub fn volumes(&self, used: &HouseholdUse) -> Volumes {
        let of = |fixture: Fixture, rate: f64, volume_m3: f64| volume_m3 * self.at(fixture, rate);
        Volumes {
            mixed_m3: of(Fixture::Shower, used.showers_per_day, used.showers_per_day * used.shower_m3)
                + of(Fixture::Bath, used.baths_per_day, used.baths_per_day * used.bath_m3)
                + of(Fixture::Sink, used.sinks_m3_per_day / 0.01, used.sinks_m3_per_day),
            hot_m3: of(
                Fixture::Dishwasher,
                used.dishwasher_per_day,
                used.dishwasher_per_day * used.volume_m3(Fixture::Dishwasher),
            ) + of(
                Fixture::ClothesWasher,
                used.hot_washes_per_day,
                used.hot_washes_per_day * used.volume_m3(Fixture::ClothesWasher),
            ),
        }
    }

    fn at(&self, fixture: Fixture, rate: f64) -> f64 {
        let Some(share) = self.share.get(fixture as usize) else { return 1.0 };
        if rate <= LEAST {
            return share[0];
        }
        let place = libm::log(rate / LEAST) / libm::log(MOST / LEAST) * (POINTS - 1) as f64;
        let below = place as usize;
        if below + 1 >= POINTS {
            return share[POINTS - 1];
        }
        let part = place - below as f64;
        share[below] + part * (share[below + 1] - share[below])
    }
}
