//! A year's weather by day, as a simulated year needs it.

use super::{Mains, OutdoorYear};
use crate::core::calendar::DayOfYear;
use crate::core::units::to_celsius;
use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature};

/// Cold water and outdoors, day by day.
#[derive(Clone, Debug, PartialEq)]
pub struct Days {
    /// Cold water, °C.
    pub mains_c: Vec<f32>,
    /// Outdoor daily mean, °C.
    pub outdoor_c: Vec<f32>,
    /// The day of the coldest cold water.
    pub coldest: DayOfYear,
    /// Cold water on that day, °C.
    pub coldest_c: f64,
}

impl Days {
    /// Of a place: its outdoor annual mean, monthly range, and how far the cold water lies from what follows from those.
    pub fn of(
        outdoor_mean: ThermodynamicTemperature,
        outdoor_range: TemperatureInterval,
        cold_water_shift: TemperatureInterval,
    ) -> Days {
        let outdoor = OutdoorYear::new(outdoor_mean, outdoor_range);
        let mains = Mains::from_outdoor(outdoor_mean, outdoor_range).shifted(cold_water_shift);
        let coldest = mains.coldest_day();
        Days {
            mains_c: DayOfYear::all().map(|day| to_celsius(mains.on(day)) as f32).collect(),
            outdoor_c: DayOfYear::all().map(|day| to_celsius(outdoor.on(day)) as f32).collect(),
            coldest_c: to_celsius(mains.on(coldest)),
            coldest,
        }
    }
}
