//! Are the figures of the listed places plausible, and are the places found?

use super::*;
use crate::core::calendar::DayOfYear;
use crate::core::units::to_celsius;

/// Relative humidity of air at a temperature with a dew point, both °C, by the Magnus form of the saturation
/// pressure (World Meteorological Organization, Guide to Instruments, from memory): apart from the core's own
/// moist-air properties, and good to a percent here.
fn relative_humidity(t_c: f64, dew_c: f64) -> f64 {
    let pressure = |t: f64| libm::exp(17.62 * t / (243.12 + t));
    pressure(dew_c) / pressure(t_c)
}

fn mean_over(place: &Place, days: impl Iterator<Item = u16>) -> f64 {
    let year = place.outdoor_year();
    let on: Vec<f64> = days.map(|d| to_celsius(year.on(DayOfYear::from_index(u32::from(d) - 1)))).collect();
    on.iter().sum::<f64>() / on.len() as f64
}

#[test]
fn each_figure_is_within_the_bounds_of_the_continent() {
    for p in all() {
        let id = p.id;
        assert!((-17.0..=27.0).contains(&p.annual_mean_c), "{id}");
        assert!((0.5..=48.0).contains(&p.monthly_range_k), "{id}");
        assert!((-60.0..=3300.0).contains(&p.elevation_m), "{id}");
        assert!((18.0..=72.0).contains(&p.latitude_deg), "{id}");
        assert!((-170.0..=-52.0).contains(&p.longitude_deg), "{id}");
        match p.country() {
            Country::Canada => assert!(p.latitude_deg > 41.6 && p.longitude_deg > -141.1, "{id}"),
            Country::UnitedStates => {
                assert!(p.latitude_deg < 49.1 || p.region == Region::Ak, "{id}");
                assert!(p.longitude_deg < -66.9, "{id}");
            }
        }
    }
}

#[test]
fn each_places_figures_agree_with_each_other() {
    for p in all() {
        let id = p.id;
        // The design cold lies below the coldest month's mean, and not absurdly far.
        assert!(p.design_cold_c < p.annual_mean_c - 0.5 * p.monthly_range_k, "{id}");
        assert!(p.design_cold_c > p.annual_mean_c - 0.5 * p.monthly_range_k - 22.0, "{id}");
        let summer = mean_over(p, 152..=243);
        let winter = mean_over(p, (335..=365).chain(1..=59));
        let (summer_rh, winter_rh) = (
            relative_humidity(summer, p.summer_dew_point_c),
            relative_humidity(winter, p.winter_dew_point_c),
        );
        // Deserts are near 20 % in summer and 40 % in winter; rain coasts and snow country near 85 % in winter.
        assert!((0.15..=0.85).contains(&summer_rh), "{id}: summer {summer_rh}");
        assert!((0.35..=0.92).contains(&winter_rh), "{id}: winter {winter_rh}");
        assert!(p.summer_dew_point_c > p.winter_dew_point_c, "{id}");
    }
}

#[test]
fn identities_are_unique_sorted_and_name_their_region() {
    let ids: Vec<&str> = all().map(|p| p.id).collect();
    assert!(ids.windows(2).all(|w| w[0] < w[1]), "sorted, none twice");
    for p in all() {
        let expected = format!("{}-{}-", p.country().code(), p.region.code().to_lowercase());
        assert!(p.id.starts_with(&expected), "{} is not {expected}", p.id);
        assert!(p.id.bytes().all(|b| b.is_ascii_lowercase() || b == b'-'), "{}", p.id);
        assert_eq!(by_id(p.id), Some(p));
    }
}

/// The postal codes, listed here apart from the table of regions.
#[test]
fn every_state_and_province_has_a_place() {
    let us = "AK AL AR AZ CA CO CT DC DE FL GA HI IA ID IL IN KS KY LA MA MD ME MI MN MO MS MT NC ND NE NH NJ NM \
              NV NY OH OK OR PA RI SC SD TN TX UT VA VT WA WI WV WY";
    let canada = "AB BC MB NB NL NS NT NU ON PE QC SK YT";
    for (codes, country, count) in [(us, Country::UnitedStates, 51), (canada, Country::Canada, 13)] {
        let listed: Vec<&str> = codes.split_whitespace().collect();
        assert_eq!(listed.len(), count);
        for &code in &listed {
            let region = Region::from_code(code).expect(code);
            assert_eq!((region.country(), region.code()), (country, code));
            assert!(in_region(region).next().is_some(), "no place in {code}");
        }
        assert_eq!(Region::ALL.iter().filter(|r| r.country() == country).count(), count);
        assert!(in_country(country).iter().all(|p| p.country() == country));
    }
    assert!(all().count() >= 100);
    assert_eq!(
        in_region(Region::Tx).count(),
        in_country(Country::UnitedStates).iter().filter(|p| p.id.contains("-tx-")).count()
    );
}

/// Published normals as the trade remembers them (from memory), ±1.5 K.
#[test]
fn well_known_climates_are_as_known() {
    for (id, mean, range) in [
        ("us-ma-boston", 11.0, 24.0),
        ("us-mn-minneapolis", 8.0, 34.0),
        ("us-fl-miami", 25.0, 8.0),
        ("us-ak-anchorage", 3.0, 24.0),
        ("us-hi-honolulu", 25.5, 4.0),
        ("us-az-phoenix", 24.0, 22.0),
        ("us-il-chicago", 10.5, 27.5),
        ("us-wa-seattle", 11.5, 14.0),
        ("ca-qc-montreal", 7.0, 31.0),
        ("ca-bc-vancouver", 10.5, 15.0),
        ("ca-mb-winnipeg", 3.0, 36.0),
    ] {
        let p = by_id(id).expect(id);
        assert!((p.annual_mean_c - mean).abs() <= 1.5, "{id}: mean {}", p.annual_mean_c);
        assert!((p.monthly_range_k - range).abs() <= 1.5, "{id}: range {}", p.monthly_range_k);
    }
}

#[test]
fn accessors_carry_the_tables_figures() {
    let p = by_id("us-co-denver").expect("listed");
    assert!((to_celsius(p.annual_mean()) - p.annual_mean_c).abs() < 1e-9);
    assert!((to_celsius(p.design_cold()) - p.design_cold_c).abs() < 1e-9);
    assert!((to_celsius(p.summer_dew_point()) - p.summer_dew_point_c).abs() < 1e-9);
    assert!((to_celsius(p.winter_dew_point()) - p.winter_dew_point_c).abs() < 1e-9);
    assert_eq!(p.elevation().value, p.elevation_m);
    assert_eq!(p.monthly_range().value, p.monthly_range_k);
    assert_eq!(p.outdoor_year().monthly_range(), p.monthly_range());
}

#[test]
fn nearest_is_the_place_itself_or_the_one_next_to_it() {
    for p in all() {
        let (found, distance) = nearest(p.latitude_deg, p.longitude_deg).expect("a point");
        assert_eq!((found.id, distance.value), (p.id, 0.0));
    }
    // Cambridge, Gatineau, Tacoma, and far out in the Pacific.
    for (lat, lon, id) in [
        (42.37, -71.11, "us-ma-boston"),
        (45.48, -75.65, "ca-on-ottawa"),
        (47.25, -122.44, "us-wa-seattle"),
        (10.0, 179.0, "us-hi-honolulu"),
    ] {
        assert_eq!(nearest(lat, lon).map(|(p, _)| p.id), Some(id));
    }
}

/// Boston to Los Angeles is about 4,170 km along the great circle (as airline tables say, from memory); one
/// degree of latitude is 111.2 km on a sphere of 6,371 km; the far side of the earth is half its girth away.
#[test]
fn distances_are_along_the_great_circle() {
    let boston = by_id("us-ma-boston").expect("listed");
    assert!((boston.distance_from(34.05, -118.24).value / 4.17e6 - 1.0).abs() < 0.01);
    let degree = boston.distance_from(boston.latitude_deg + 1.0, boston.longitude_deg).value;
    assert!((degree - EARTH_RADIUS_M * PI / 180.0).abs() < 1.0);
    let far = boston.distance_from(-boston.latitude_deg, boston.longitude_deg + 180.0).value;
    assert!((far - EARTH_RADIUS_M * PI).abs() < 1e3);
}

#[test]
fn points_that_are_none_have_no_nearest_place() {
    for (lat, lon) in
        [(f64::NAN, 0.0), (0.0, f64::NAN), (90.1, 0.0), (-91.0, 0.0), (0.0, 180.5), (f64::INFINITY, 0.0)]
    {
        assert_eq!(nearest(lat, lon), None);
    }
    for (lat, lon) in [(90.0, 180.0), (-90.0, -180.0), (0.0, 0.0)] {
        assert!(nearest(lat, lon).is_some());
    }
}

#[test]
fn unknown_identities_find_nothing_and_the_typical_place_is_listed() {
    for id in ["", "us", "us-ma-atlantis", "US-MA-BOSTON", "zz-zz-zz", "ca-"] {
        assert_eq!(by_id(id), None, "{id}");
    }
    assert_eq!(typical().id, "us-pa-philadelphia");
}
