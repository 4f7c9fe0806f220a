//! `tankful::core::climate::Mains` against the Building America relation written out in numpy, in °F. The
//! fixture's climates lie within the fit's own range, where none of the core's bounds acts.
use crate::fixture::{Fixture, Worst};
use tankful::core::calendar::DayOfYear;
use tankful::core::climate::Mains;
use tankful::core::units::{fahrenheit, kelvins, to_celsius};

/// The same relation in °C: nothing but rounding, of numbers near 300 K and 80 °F.
const ROUNDING_K: f64 = 1e-9;

#[test]
fn cold_water_follows_the_published_relation() {
    let mut worst = Worst::of("mains temperature, K");
    for [mean_f, spread_f, day, mains_c] in Fixture::load("cold_water").table("mains").rows([
        "annual_mean_f",
        "monthly_spread_f",
        "day",
        "mains_c",
    ]) {
        let mains = Mains::from_outdoor(fahrenheit(mean_f), kelvins(spread_f / 1.8));
        let ours = to_celsius(mains.on(DayOfYear::new(day as u16).expect("a day of the year")));
        worst.see(ours, mains_c, (mean_f, spread_f, day));
    }
    worst.within(ROUNDING_K);
}
