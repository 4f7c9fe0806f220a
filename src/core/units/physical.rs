//! Physical quantities of `uom` from numbers, for the public interfaces of the physics.

use super::GALLON_M3;
use uom::si::f64::{Length, Power, TemperatureInterval, ThermodynamicTemperature, Time, Volume, VolumeRate};
use uom::si::{length, power, temperature_interval, thermodynamic_temperature, time, volume, volume_rate};

/// A temperature from °C.
pub fn celsius(t_c: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<thermodynamic_temperature::degree_celsius>(t_c)
}

/// A temperature from °F.
pub fn fahrenheit(t_f: f64) -> ThermodynamicTemperature {
    celsius((t_f - 32.0) * 5.0 / 9.0)
}

/// A temperature in °C.
pub fn to_celsius(t: ThermodynamicTemperature) -> f64 {
    t.get::<thermodynamic_temperature::degree_celsius>()
}

/// A temperature difference from K.
pub fn kelvins(dt_k: f64) -> TemperatureInterval {
    TemperatureInterval::new::<temperature_interval::kelvin>(dt_k)
}

/// A volume from US gallons.
pub fn gallons(v: f64) -> Volume {
    cubic_metres(v * GALLON_M3)
}

/// A volume from litres.
pub fn litres(v: f64) -> Volume {
    cubic_metres(v * 1e-3)
}

/// A volume from m³.
pub fn cubic_metres(v: f64) -> Volume {
    Volume::new::<volume::cubic_meter>(v)
}

/// A length from m.
pub fn metres(v: f64) -> Length {
    Length::new::<length::meter>(v)
}

/// A length from inches.
pub fn inches(v: f64) -> Length {
    metres(v * 0.0254)
}

/// A power from W.
pub fn watts(v: f64) -> Power {
    Power::new::<power::watt>(v)
}

/// A time from s.
pub fn seconds(v: f64) -> Time {
    Time::new::<time::second>(v)
}

/// A time from minutes.
pub fn minutes(v: f64) -> Time {
    seconds(v * 60.0)
}

/// A water flow from litres a minute.
pub fn litres_per_minute(v: f64) -> VolumeRate {
    VolumeRate::new::<volume_rate::cubic_meter_per_second>(v * 1e-3 / 60.0)
}
