//! A seeded synthetic year of draws.
//!
//! Counts and volumes follow the household's answers; the times follow [`super::day_shape`]. Each day
//! and fixture has its own stream of the generator, so that a change to one fixture leaves the others'
//! draws as they are: candidates and futures are compared on the same year.

use super::day_shape::DayShape;
use super::{Draw, Fixture, daily_use};
use crate::core::calendar::{DayOfYear, SECONDS_PER_DAY};
use crate::core::case::Household;
use crate::core::units::GALLON_M3;
use rand::RngExt;
use rand_pcg::Pcg32;
use uom::si::{time::second, volume::cubic_meter, volume_rate::cubic_meter_per_second};

/// Mean volume of a draw at a sink, m³ (0.7 US gal), and its flow, m³/s (1.1 US gal a minute): Building
/// America's event characteristics, from memory.
const SINK_M3: f64 = 0.7 * GALLON_M3;
const SINK_FLOW: f64 = 1.1 * GALLON_M3 / 60.0;
/// Flow into a tub, m³/s (4 US gal a minute), from memory of the same table.
const BATH_FLOW: f64 = 4.0 * GALLON_M3 / 60.0;
/// Flow into a dishwasher (1.4) and a clothes washer (2.2 US gal a minute), m³/s, the same.
const DISHWASHER_FLOW: f64 = 1.4 * GALLON_M3 / 60.0;
const CLOTHES_WASHER_FLOW: f64 = 2.2 * GALLON_M3 / 60.0;
/// More draws a day than this of one fixture are not made: twelve people stay well below.
const MOST_A_DAY: u32 = 400;

/// What a household uses, as plain figures.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseholdUse {
    /// Showers a day.
    pub showers_per_day: f64,
    /// Mixed water of a shower, m³.
    pub shower_m3: f64,
    /// Its flow, m³/s.
    pub shower_flow: f64,
    /// Baths a day.
    pub baths_per_day: f64,
    /// Mixed water of a bath, m³.
    pub bath_m3: f64,
    /// Mixed water at sinks, m³ a day.
    pub sinks_m3_per_day: f64,
    /// Dishwasher loads a day.
    pub dishwasher_per_day: f64,
    /// Hot clothes washes a day.
    pub hot_washes_per_day: f64,
}

impl HouseholdUse {
    /// What the case's household uses.
    pub fn of(h: &Household) -> Self {
        let flow = h.shower_flow.value.get::<cubic_meter_per_second>();
        Self {
            showers_per_day: h.showers_per_day.value,
            shower_m3: flow * h.shower_time.value.get::<second>(),
            shower_flow: flow,
            baths_per_day: h.baths_per_week.value / 7.0,
            bath_m3: h.tub.value.get::<cubic_meter>(),
            sinks_m3_per_day: daily_use::sinks_m3(h.people()),
            dishwasher_per_day: h.dishwasher_loads_per_week.value / 7.0,
            hot_washes_per_day: h.hot_washes_per_week.value / 7.0,
        }
    }

    /// Mean volume of a draw at a fixture, m³.
    pub fn volume_m3(&self, fixture: Fixture) -> f64 {
        self.fixture(fixture).1
    }

    /// Mean draws a day, mean volume and flow of a fixture.
    fn fixture(&self, fixture: Fixture) -> (f64, f64, f64) {
        match fixture {
            Fixture::Shower => (self.showers_per_day, self.shower_m3, self.shower_flow),
            Fixture::Bath => (self.baths_per_day, self.bath_m3, BATH_FLOW),
            Fixture::Sink => (self.sinks_m3_per_day / SINK_M3, SINK_M3, SINK_FLOW),
            Fixture::Dishwasher => {
                (self.dishwasher_per_day, daily_use::DISHWASHER_GAL * GALLON_M3, DISHWASHER_FLOW)
            }
            Fixture::ClothesWasher => {
                (self.hot_washes_per_day, daily_use::CLOTHES_WASHER_GAL * GALLON_M3, CLOTHES_WASHER_FLOW)
            }
        }
    }
}

/// A year of draws in order, none overlapping the next.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DrawYear {
    pub(super) draws: Vec<Draw>,
    /// Index of the first draw of each day, and the length at the end.
    pub(super) days: Vec<usize>,
}

impl DrawYear {
    /// The year of a household and seed.
    pub fn generate(use_: &HouseholdUse, seed: u64) -> Self {
        let mut draws = Vec::new();
        let mut days = Vec::with_capacity(366);
        let shapes = [false, true].map(|weekend| Fixture::ALL.map(|fixture| DayShape::of(fixture, weekend)));
        for day in DayOfYear::all() {
            let first = draws.len();
            days.push(first);
            let shapes = &shapes[usize::from(day.is_weekend())];
            for (stream, (fixture, shape)) in Fixture::ALL.into_iter().zip(shapes).enumerate() {
                let mut rng = Pcg32::new(seed, (day.index() * 8 + stream) as u64);
                one_fixture(&mut draws, use_, fixture, (day, shape), &mut rng);
            }
            by_start(&mut draws[first..]);
        }
        days.push(draws.len());
        queue(&mut draws);
        Self { draws, days }
    }

    /// The draws of a day (from 0).
    pub fn day(&self, day: usize) -> &[Draw] {
        match (self.days.get(day), self.days.get(day + 1)) {
            (Some(&a), Some(&b)) => &self.draws[a..b],
            _ => &[],
        }
    }

    /// How many days there are; none in a year without any.
    pub(super) fn day_count(&self) -> usize {
        self.days.len().saturating_sub(1)
    }

    /// Every draw in order.
    pub fn all(&self) -> &[Draw] {
        &self.draws
    }
}

fn one_fixture(
    draws: &mut Vec<Draw>,
    use_: &HouseholdUse,
    fixture: Fixture,
    (day, shape): (DayOfYear, &DayShape),
    rng: &mut Pcg32,
) {
    let (mean, volume, flow) = use_.fixture(fixture);
    if mean <= 0.0 || volume <= 0.0 || flow <= 0.0 {
        return;
    }
    let count = match fixture {
        // People shower by habit: the whole part every day, the rest by chance.
        Fixture::Shower => mean as u32 + u32::from(rng.random::<f64>() < mean - mean.floor()),
        _ => poisson(mean, rng),
    };
    for _ in 0..count.min(MOST_A_DAY) {
        let share = match fixture {
            // Sink draws are many short and few long: exponential, cut at six means.
            Fixture::Sink => {
                let e = -libm::log(1.0 - rng.random::<f64>());
                if e < 6.0 { e } else { 6.0 }
            }
            Fixture::Shower => (1.0 + 0.25 * normal(rng)).clamp(0.4, 1.9),
            _ => 1.0,
        };
        let time = shape.time_s(rng.random());
        draws.push(Draw {
            start_s: day.index() as f64 * SECONDS_PER_DAY + time,
            fixture,
            volume_m3: share * volume,
            flow_m3_per_s: flow,
        });
    }
}

/// A count from a Poisson distribution, by multiplying uniforms (Knuth 1969, section 3.4.1). The
/// distributions of `rand_distr` take their logarithms from std where any other package asks `num-traits`
/// for it, and std's differ between native and wasm: these few lines use the portable library.
fn poisson(mean: f64, rng: &mut Pcg32) -> u32 {
    let limit = libm::exp(-mean);
    let mut product: f64 = rng.random();
    let mut count = 0;
    while product > limit && count < MOST_A_DAY {
        product *= rng.random::<f64>();
        count += 1;
    }
    count
}

/// A standard normal number (Box and Muller 1958).
fn normal(rng: &mut Pcg32) -> f64 {
    let radius = libm::sqrt(-2.0 * libm::log(1.0 - rng.random::<f64>()));
    radius * libm::cos(std::f64::consts::TAU * rng.random::<f64>())
}

/// Puts a day's draws in the order of their start; equal ones stay as they are. Some fifty draws: by insertion, as
/// the library's sorting is 4 kB of the page for each kind of list.
fn by_start(draws: &mut [Draw]) {
    for i in 1..draws.len() {
        let mut at = i;
        while at > 0 && draws[at - 1].start_s > draws[at].start_s {
            draws.swap(at - 1, at);
            at -= 1;
        }
    }
}

/// One at a time: a draw that would begin during another waits for its end. Late ones run on into the
/// next day's first minutes.
pub(super) fn queue(draws: &mut [Draw]) {
    let mut free = 0.0;
    for d in draws {
        if d.start_s < free {
            d.start_s = free;
        }
        free = d.start_s + d.duration_s();
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use proptest::prelude::*;

    pub(crate) fn use_for(people: f64) -> HouseholdUse {
        HouseholdUse {
            showers_per_day: daily_use::showers_per_day(people),
            shower_m3: daily_use::SHOWER_GPM * daily_use::SHOWER_MINUTES * GALLON_M3,
            shower_flow: daily_use::SHOWER_GPM * GALLON_M3 / 60.0,
            baths_per_day: daily_use::baths_per_week(people) / 7.0,
            bath_m3: daily_use::TUB_GAL * GALLON_M3,
            sinks_m3_per_day: daily_use::sinks_m3(people),
            dishwasher_per_day: daily_use::dishwasher_loads_per_week(people) / 7.0,
            hot_washes_per_day: daily_use::hot_washes_per_week(people) / 7.0,
        }
    }

    fn gal_per_day(year: &DrawYear, f: Fixture) -> f64 {
        year.all().iter().filter(|d| d.fixture == f).map(|d| d.volume_m3).sum::<f64>() / GALLON_M3 / 365.0
    }

    /// The year's mean daily volumes are the Building America relations', within the scatter of a
    /// sampled year: 3 standard errors are about 5 % for the rarest fixture.
    #[test]
    fn a_year_draws_what_the_protocols_say() {
        let people = 2.64;
        let year = DrawYear::generate(&use_for(people), 7);
        for (fixture, want) in [
            (Fixture::Shower, daily_use::showers_gal(people)),
            (Fixture::Bath, daily_use::baths_gal(people)),
            (Fixture::Sink, daily_use::sinks_gal(people)),
            (Fixture::Dishwasher, daily_use::dishwasher_gal(people)),
            (Fixture::ClothesWasher, daily_use::clothes_washer_gal(people)),
        ] {
            let got = gal_per_day(&year, fixture);
            let tolerance = if fixture == Fixture::Bath { 0.25 } else { 0.08 };
            assert!((got / want - 1.0).abs() < tolerance, "{fixture:?}: {got} against {want}");
        }
    }

    #[test]
    fn the_same_seed_gives_the_same_year_and_another_another() {
        let u = use_for(3.0);
        assert_eq!(DrawYear::generate(&u, 1), DrawYear::generate(&u, 1));
        assert_ne!(DrawYear::generate(&u, 1), DrawYear::generate(&u, 2));
    }

    #[test]
    fn a_change_to_one_fixture_leaves_the_others_alone() {
        let a = use_for(3.0);
        let b = HouseholdUse { baths_per_day: 3.0, ..a.clone() };
        let sinks = |y: &DrawYear| {
            y.all().iter().filter(|d| d.fixture == Fixture::Sink).map(|d| d.volume_m3).collect::<Vec<_>>()
        };
        assert_eq!(sinks(&DrawYear::generate(&a, 5)), sinks(&DrawYear::generate(&b, 5)));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(16))]
        #[test]
        fn draws_are_in_order_and_do_not_overlap(people in 0.0..12.0f64, seed in any::<u64>()) {
            let year = DrawYear::generate(&use_for(people), seed);
            let mut free = 0.0;
            for d in year.all() {
                prop_assert!(d.start_s >= free && d.volume_m3 > 0.0);
                free = d.start_s + d.duration_s() - 1e-6;
            }
        }
    }
}
