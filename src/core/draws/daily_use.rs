//! How much hot water a household uses a day, by fixture.
//!
//! Source: Building America House Simulation Protocols (Wilson et al., NREL/TP-5500-60988, 2014), daily
//! domestic hot water by number of bedrooms, and its relation of occupants to bedrooms; both from
//! memory. Showers, baths and sinks are mixed water at 110 °F; the appliances take hot water.

use crate::core::units::GALLON_M3;

/// Minutes of a shower, from the protocols' event table (from memory).
pub const SHOWER_MINUTES: f64 = 8.0;
/// Flow of a shower head, US gallons a minute, mixed. The protocols' mean event (from memory).
pub const SHOWER_GPM: f64 = 2.25;
/// Mixed water in a bath, US gallons. Common practice, no source.
pub const TUB_GAL: f64 = 35.0;
/// Hot water of a dishwasher load, US gallons: the peak-hour worksheet's 6 to 7, lower end (from memory).
pub const DISHWASHER_GAL: f64 = 6.0;
/// Hot water of a clothes-washer load, US gallons: the worksheet's 6 to 7, middle (from memory).
pub const CLOTHES_WASHER_GAL: f64 = 6.5;
/// Temperature of mixed water at the fixture, °C (110 °F).
pub const USE_C: f64 = 43.333_333_333_333_336;

/// Bedrooms of the protocols' house for this many people: people = 0.59 bedrooms + 0.87. Not below
/// zero, so that a single person's house keeps the protocols' intercept; nobody uses nothing.
fn bedrooms(people: f64) -> f64 {
    let n = (people - 0.87) / 0.59;
    if n > 0.0 { n } else { 0.0 }
}

/// `intercept + slope · bedrooms`, in gallons a day; nothing when nobody lives there.
fn relation_gal(people: f64, intercept: f64, slope: f64) -> f64 {
    if people > 0.0 { intercept + slope * bedrooms(people) } else { 0.0 }
}

/// Mixed water for showers, US gallons a day.
pub fn showers_gal(people: f64) -> f64 {
    relation_gal(people, 14.0, 4.67)
}

/// Mixed water for baths, US gallons a day.
pub fn baths_gal(people: f64) -> f64 {
    relation_gal(people, 3.5, 1.17)
}

/// Mixed water at sinks, US gallons a day.
pub fn sinks_gal(people: f64) -> f64 {
    relation_gal(people, 12.5, 4.16)
}

/// Hot water of the clothes washer, US gallons a day.
pub fn clothes_washer_gal(people: f64) -> f64 {
    relation_gal(people, 2.35, 0.78)
}

/// Hot water of the dishwasher, US gallons a day.
pub fn dishwasher_gal(people: f64) -> f64 {
    relation_gal(people, 2.26, 0.75)
}

/// Showers a day that use the protocols' volume at the default length and flow.
pub fn showers_per_day(people: f64) -> f64 {
    showers_gal(people) / (SHOWER_MINUTES * SHOWER_GPM)
}

/// Baths a week that use the protocols' volume at the default tub.
pub fn baths_per_week(people: f64) -> f64 {
    7.0 * baths_gal(people) / TUB_GAL
}

/// Dishwasher loads a week that use the protocols' volume.
pub fn dishwasher_loads_per_week(people: f64) -> f64 {
    7.0 * dishwasher_gal(people) / DISHWASHER_GAL
}

/// Hot clothes-washer loads a week that use the protocols' volume.
pub fn hot_washes_per_week(people: f64) -> f64 {
    7.0 * clothes_washer_gal(people) / CLOTHES_WASHER_GAL
}

/// Mixed water at sinks, m³ a day.
pub fn sinks_m3(people: f64) -> f64 {
    sinks_gal(people) * GALLON_M3
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The protocols' three-bedroom house (2.64 people): hand arithmetic on the published relations.
    #[test]
    fn three_bedrooms() {
        let people = 0.59 * 3.0 + 0.87;
        assert!((showers_gal(people) - 28.01).abs() < 1e-9);
        assert!((baths_gal(people) - 7.01).abs() < 1e-9);
        assert!((sinks_gal(people) - 24.98).abs() < 1e-9);
        assert!((clothes_washer_gal(people) - 4.69).abs() < 1e-9);
        assert!((dishwasher_gal(people) - 4.51).abs() < 1e-9);
    }

    #[test]
    fn more_people_never_use_less_and_nobody_uses_nothing() {
        assert_eq!(showers_gal(0.0), 0.0);
        let mut last = 0.0;
        for tenths in 0..130 {
            let now = sinks_m3(f64::from(tenths) / 10.0);
            assert!(now >= last);
            last = now;
        }
    }
}
