//! The listed places: at least one in each US state, the District of Columbia and each Canadian province and
//! territory, and the large cities.
//!
//! **Source.** All figures are from memory: approximations of the published climate normals for 1991 to 2020
//! (US National Oceanic and Atmospheric Administration; Environment and Climate Change Canada) and of the
//! climatic design conditions in the ASHRAE Handbook of Fundamentals, 2017 edition and after, for the city or
//! its airport, usually within 1 K. They are where a household starts that has no better figures of its own;
//! a valley, a lake shore or a mountain near a listed city can differ by several kelvins.
//!
//! **Columns** of the tables in `places_us.rs` and `places_ca.rs`: identity, name, state or province, latitude
//! and longitude in degrees north and east, elevation in m, annual mean outdoor temperature in °C, warmest less
//! coldest monthly mean in K, mean outdoor dew point of June to August and of December to February in °C,
//! 99 % heating design temperature in °C (the air is warmer for 99 % of the hours of the year). To add a place,
//! add its line where the sorted order wants it; the tests say when a figure is implausible.

use super::outdoor::OutdoorYear;
use super::places_ca::CA_PLACES;
use super::places_us::US_PLACES;
use super::region::{Country, Region};
use crate::core::units::{celsius, kelvins, metres};
use std::f64::consts::PI;
use uom::si::f64::{Length, TemperatureInterval, ThermodynamicTemperature};

/// Mean radius of the earth, m (International Union of Geodesy and Geophysics, 6,371.0 km).
const EARTH_RADIUS_M: f64 = 6.371e6;

/// A listed place and its climate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Stable identity, country-region-city, such as `us-ma-boston`. Kept for good once published: saved
    /// answers and links name it.
    pub id: &'static str,
    /// Name of the city, in the language of its people.
    pub name: &'static str,
    /// State or province.
    pub region: Region,
    /// Latitude, degrees north.
    pub latitude_deg: f64,
    /// Longitude, degrees east (negative in the Americas).
    pub longitude_deg: f64,
    /// Height above the sea, m.
    pub elevation_m: f64,
    /// Annual mean outdoor temperature, °C.
    pub annual_mean_c: f64,
    /// Warmest less coldest monthly mean, K.
    pub monthly_range_k: f64,
    /// Mean outdoor dew point of June to August, °C.
    pub summer_dew_point_c: f64,
    /// Mean outdoor dew point of December to February, °C.
    pub winter_dew_point_c: f64,
    /// 99 % heating design temperature, °C.
    pub design_cold_c: f64,
}

impl Place {
    /// The country it lies in.
    pub const fn country(&self) -> Country {
        self.region.country()
    }

    /// Height above the sea.
    pub fn elevation(&self) -> Length {
        metres(self.elevation_m)
    }

    /// Annual mean outdoor temperature.
    pub fn annual_mean(&self) -> ThermodynamicTemperature {
        celsius(self.annual_mean_c)
    }

    /// Warmest less coldest monthly mean.
    pub fn monthly_range(&self) -> TemperatureInterval {
        kelvins(self.monthly_range_k)
    }

    /// Mean outdoor dew point of June to August.
    pub fn summer_dew_point(&self) -> ThermodynamicTemperature {
        celsius(self.summer_dew_point_c)
    }

    /// Mean outdoor dew point of December to February.
    pub fn winter_dew_point(&self) -> ThermodynamicTemperature {
        celsius(self.winter_dew_point_c)
    }

    /// 99 % heating design temperature: the outdoor air is warmer for 99 % of the hours of an average year.
    pub fn design_cold(&self) -> ThermodynamicTemperature {
        celsius(self.design_cold_c)
    }

    /// Outdoor temperature through the average year.
    pub fn outdoor_year(&self) -> OutdoorYear {
        OutdoorYear::new(self.annual_mean(), self.monthly_range())
    }

    /// Great-circle distance from a point on the earth, degrees north and east (haversine formula).
    pub fn distance_from(&self, latitude_deg: f64, longitude_deg: f64) -> Length {
        let radians = PI / 180.0;
        let half_sin = |degrees: f64| libm::sin(degrees * radians / 2.0);
        let (dlat, dlon) =
            (half_sin(latitude_deg - self.latitude_deg), half_sin(longitude_deg - self.longitude_deg));
        let cosines = libm::cos(latitude_deg * radians) * libm::cos(self.latitude_deg * radians);
        let h = dlat * dlat + cosines * dlon * dlon;
        // Rounding can take the opposite point of the earth just past 1.
        metres(2.0 * EARTH_RADIUS_M * libm::asin(if h > 1.0 { 1.0 } else { h }.sqrt()))
    }
}

/// Every listed place, Canada's first, each country's sorted by identity: in all, sorted by identity.
pub fn all() -> impl DoubleEndedIterator<Item = &'static Place> + Clone {
    CA_PLACES.iter().chain(US_PLACES)
}

/// The place with this identity, if it is listed.
pub fn by_id(id: &str) -> Option<&'static Place> {
    let find =
        |table: &'static [Place]| table.binary_search_by(|p| p.id.cmp(id)).ok().and_then(|i| table.get(i));
    find(US_PLACES).or_else(|| find(CA_PLACES))
}

/// The place taken when nobody has said where they live: Philadelphia, whose climate, electricity price and grid
/// emission lie near the mean of the people of the United States (from memory).
pub fn typical() -> &'static Place {
    by_id("us-pa-philadelphia").unwrap_or(&US_PLACES[0])
}

/// The place below which a share of the listed ones (0 to 1) lies by a figure of theirs; the first in order of identity of
/// equals.
pub fn at_share(share: f64, figure: fn(&Place) -> f64) -> &'static Place {
    let mut sorted: Vec<&'static Place> = all().collect();
    sorted.sort_by(|a, b| figure(a).total_cmp(&figure(b)));
    let last = sorted.len().saturating_sub(1);
    let at = (share.clamp(0.0, 1.0) * last as f64).round() as usize;
    sorted.get(at).copied().unwrap_or_else(typical)
}

/// The places of a country, sorted by identity, that is by state or province and then by name.
pub fn in_country(country: Country) -> &'static [Place] {
    match country {
        Country::UnitedStates => US_PLACES,
        Country::Canada => CA_PLACES,
    }
}

/// The places of a state or province, sorted by identity; at least one.
pub fn in_region(region: Region) -> impl Iterator<Item = &'static Place> {
    in_country(region.country()).iter().filter(move |p| p.region == region)
}

/// The place nearest to a point on the earth (degrees north and east), with its distance; `None` when the
/// point is not one: not numbers, or outside ±90 and ±180 degrees.
pub fn nearest(latitude_deg: f64, longitude_deg: f64) -> Option<(&'static Place, Length)> {
    if !(-90.0..=90.0).contains(&latitude_deg) || !(-180.0..=180.0).contains(&longitude_deg) {
        return None;
    }
    all()
        .map(|place| (place, place.distance_from(latitude_deg, longitude_deg)))
        .min_by(|(_, a), (_, b)| a.value.total_cmp(&b.value))
}

/// A table of places: one line a place, columns as in [`self`].
macro_rules! places {
    (
        $(#[$doc:meta])* $table:ident:
        $($id:literal, $name:literal, $region:ident, $lat:expr, $lon:expr, $elevation:expr, $mean:expr,
          $range:expr, $dew_summer:expr, $dew_winter:expr, $design:expr;)*
    ) => {
        $(#[$doc])*
        pub(super) static $table: &[Place] = &[$(Place {
            id: $id,
            name: $name,
            region: super::region::Region::$region,
            latitude_deg: $lat,
            longitude_deg: $lon,
            elevation_m: $elevation,
            annual_mean_c: $mean,
            monthly_range_k: $range,
            summer_dew_point_c: $dew_summer,
            winter_dew_point_c: $dew_winter,
            design_cold_c: $design,
        },)*];
    };
}
pub(super) use places;

#[cfg(test)]
#[path = "places_tests.rs"]
mod tests;
