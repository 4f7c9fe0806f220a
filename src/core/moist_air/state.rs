//! Moist air with units in its types, checked where it is made.
use std::ops::RangeInclusive;

use thiserror::Error;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{AvailableEnergy, MassDensity, Pressure, Ratio, SpecificVolume, ThermodynamicTemperature};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::specific_volume::cubic_meter_per_kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Temperatures accepted, °C: any room or outdoor air, and the hottest attic.
const TEMPERATURE_C: RangeInclusive<f64> = -60.0..=95.0;
/// Pressures accepted, Pa: from above 5,500 m to below the lowest land.
const PRESSURE_PA: RangeInclusive<f64> = 50_000.0..=110_000.0;
/// Room for rounding when a state is given at saturation, as a share of its humidity ratio.
const SATURATION_SLACK: f64 = 1e-9;

/// A figure that moist air cannot have.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("{field} is {value} {unit}; it must lie between {low} and {high} {unit}")]
pub struct MoistAirError {
    /// Which figure: `temperature`, `pressure`, `humidity ratio`, `relative humidity`, `dew point` or `wet bulb`.
    pub field: &'static str,
    /// The value given, in `unit`.
    pub value: f64,
    /// Lowest allowed value.
    pub low: f64,
    /// Highest allowed value: for humidity that of saturation at the given temperature.
    pub high: f64,
    /// Unit of the three figures.
    pub unit: &'static str,
}

/// A state of moist air that can exist: −60 to 95 °C, 50 to 110 kPa, not above saturation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoistAir {
    t_c: f64,
    w: f64,
    pressure_pa: f64,
}

impl MoistAir {
    /// Air of this temperature, humidity ratio (kg of water per kg of dry air) and pressure.
    ///
    /// # Errors
    /// [`MoistAirError`] for a figure outside its range or humidity above saturation.
    pub fn new(
        temperature: ThermodynamicTemperature,
        humidity_ratio: Ratio,
        pressure: Pressure,
    ) -> Result<Self, MoistAirError> {
        let (t_c, pressure_pa) = accept(temperature, pressure)?;
        let w = within(
            "humidity ratio",
            humidity_ratio.get::<ratio>(),
            0.0,
            most_humid(t_c, pressure_pa),
            "kg/kg",
        )?;
        Ok(Self { t_c, w, pressure_pa })
    }

    /// Air of this temperature, relative humidity (0 to 1) and pressure.
    ///
    /// # Errors
    /// [`MoistAirError`] for a figure outside its range.
    pub fn from_relative_humidity(
        temperature: ThermodynamicTemperature,
        relative_humidity: Ratio,
        pressure: Pressure,
    ) -> Result<Self, MoistAirError> {
        let (t_c, pressure_pa) = accept(temperature, pressure)?;
        let rh = within("relative humidity", relative_humidity.get::<ratio>(), 0.0, 1.0, "of saturation")?;
        let w = super::humidity_ratio_from_relative_humidity(t_c, rh, pressure_pa);
        Self::new(temperature, Ratio::new::<ratio>(w), pressure)
    }

    /// Air of this temperature, dew point (frost point below 0 °C) and pressure.
    ///
    /// # Errors
    /// [`MoistAirError`] for a figure outside its range or a dew point above the temperature.
    pub fn from_dew_point(
        temperature: ThermodynamicTemperature,
        dew_point: ThermodynamicTemperature,
        pressure: Pressure,
    ) -> Result<Self, MoistAirError> {
        let (t_c, pressure_pa) = accept(temperature, pressure)?;
        let dew_c =
            within("dew point", dew_point.get::<degree_celsius>(), *TEMPERATURE_C.start(), t_c, "°C")?;
        let w = super::saturation_humidity_ratio(dew_c, pressure_pa);
        Self::new(temperature, Ratio::new::<ratio>(w), pressure)
    }

    /// Air of this temperature, wet bulb and pressure.
    ///
    /// # Errors
    /// [`MoistAirError`] for a figure outside its range, or a wet bulb above the temperature or below that
    /// of dry air.
    pub fn from_wet_bulb(
        temperature: ThermodynamicTemperature,
        wet_bulb: ThermodynamicTemperature,
        pressure: Pressure,
    ) -> Result<Self, MoistAirError> {
        let (t_c, pressure_pa) = accept(temperature, pressure)?;
        let lowest = super::wet_bulb_c(t_c, 0.0, pressure_pa);
        let bulb_c = within("wet bulb", wet_bulb.get::<degree_celsius>(), lowest, t_c, "°C")?;
        let w = super::humidity_ratio_from_wet_bulb(t_c, bulb_c, pressure_pa);
        // The root behind `lowest` is good to 1e-6 K: humidity may round to just below none.
        Self::new(temperature, Ratio::new::<ratio>(if w < 0.0 { 0.0 } else { w }), pressure)
    }

    /// Dry-bulb temperature.
    pub fn temperature(&self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(self.t_c)
    }

    /// Humidity ratio, kg of water per kg of dry air.
    pub fn humidity_ratio(&self) -> Ratio {
        Ratio::new::<ratio>(self.w)
    }

    /// Total pressure.
    pub fn pressure(&self) -> Pressure {
        Pressure::new::<pascal>(self.pressure_pa)
    }

    /// Relative humidity, 0 to 1.
    pub fn relative_humidity(&self) -> Ratio {
        Ratio::new::<ratio>(super::relative_humidity(self.t_c, self.w, self.pressure_pa))
    }

    /// Dew point (frost point below 0 °C), −60 °C at the least.
    pub fn dew_point(&self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(super::dew_point_c(self.w, self.pressure_pa))
    }

    /// Thermodynamic wet bulb.
    pub fn wet_bulb(&self) -> ThermodynamicTemperature {
        let bulb_c = super::wet_bulb_c(self.t_c, self.w, self.pressure_pa);
        ThermodynamicTemperature::new::<degree_celsius>(bulb_c)
    }

    /// Enthalpy per kg of dry air, above dry air and liquid water at 0 °C.
    pub fn enthalpy(&self) -> AvailableEnergy {
        AvailableEnergy::new::<joule_per_kilogram>(super::enthalpy_j_per_kg(self.t_c, self.w))
    }

    /// Volume per kg of dry air.
    pub fn specific_volume(&self) -> SpecificVolume {
        let volume = super::specific_volume_m3_per_kg(self.t_c, self.w, self.pressure_pa);
        SpecificVolume::new::<cubic_meter_per_kilogram>(volume)
    }

    /// Density of the mixture.
    pub fn density(&self) -> MassDensity {
        let density = super::density_kg_per_m3(self.t_c, self.w, self.pressure_pa);
        MassDensity::new::<kilogram_per_cubic_meter>(density)
    }
}

/// Humidity ratio of saturation, or 1 kg/kg where the air would boil away (hot and high up).
fn most_humid(t_c: f64, pressure_pa: f64) -> f64 {
    let saturation = super::saturation_pressure_pa(t_c);
    let w = super::humidity_ratio_from_vapour_pressure(saturation, pressure_pa);
    if saturation < pressure_pa && w < 1.0 { w * (1.0 + SATURATION_SLACK) } else { 1.0 }
}

fn accept(temperature: ThermodynamicTemperature, pressure: Pressure) -> Result<(f64, f64), MoistAirError> {
    let (coldest, hottest) = TEMPERATURE_C.into_inner();
    let t_c = within("temperature", temperature.get::<degree_celsius>(), coldest, hottest, "°C")?;
    let (lowest, highest) = PRESSURE_PA.into_inner();
    Ok((t_c, within("pressure", pressure.get::<pascal>(), lowest, highest, "Pa")?))
}

/// The value, or the refusal that names it; NaN lies in no range.
fn within(
    field: &'static str,
    value: f64,
    low: f64,
    high: f64,
    unit: &'static str,
) -> Result<f64, MoistAirError> {
    // Kelvin to Celsius and back rounds at 1e-13: do not refuse saturation or a range's end for it.
    let slack = 1e-9 * high.abs();
    if value >= low - slack && value <= high + slack {
        Ok(value)
    } else {
        Err(MoistAirError { field, value, low, high, unit })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn celsius(t: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(t)
    }
    fn pascals(p: f64) -> Pressure {
        Pressure::new::<pascal>(p)
    }
    fn part(x: f64) -> Ratio {
        Ratio::new::<ratio>(x)
    }

    #[test]
    fn a_state_is_the_same_however_it_is_given() {
        let p = pascals(95_000.0);
        let air = MoistAir::from_relative_humidity(celsius(19.7), part(0.5), p).unwrap();
        let ways = [
            MoistAir::new(air.temperature(), air.humidity_ratio(), p).unwrap(),
            MoistAir::from_dew_point(air.temperature(), air.dew_point(), p).unwrap(),
            MoistAir::from_wet_bulb(air.temperature(), air.wet_bulb(), p).unwrap(),
        ];
        for way in ways {
            assert!((way.relative_humidity().get::<ratio>() - 0.5).abs() < 1e-6, "{way:?}");
        }
        let saturated = MoistAir::from_relative_humidity(celsius(19.7), part(1.0), p).unwrap();
        assert!(MoistAir::from_dew_point(saturated.temperature(), saturated.dew_point(), p).is_ok());
    }

    #[test]
    fn refusals_name_the_field_the_value_and_the_range() {
        let p = pascals(101_325.0);
        let field = |r: Result<MoistAir, MoistAirError>| r.unwrap_err().field;
        assert_eq!(field(MoistAir::new(celsius(200.0), part(0.0), p)), "temperature");
        assert_eq!(field(MoistAir::new(celsius(f64::NAN), part(0.0), p)), "temperature");
        assert_eq!(field(MoistAir::new(celsius(20.0), part(0.0), pascals(0.0))), "pressure");
        assert_eq!(field(MoistAir::new(celsius(20.0), part(0.03), p)), "humidity ratio");
        assert_eq!(
            field(MoistAir::from_relative_humidity(celsius(20.0), part(50.0), p)),
            "relative humidity"
        );
        assert_eq!(field(MoistAir::from_dew_point(celsius(20.0), celsius(21.0), p)), "dew point");
        assert_eq!(field(MoistAir::from_wet_bulb(celsius(20.0), celsius(-10.0), p)), "wet bulb");
        let error = MoistAir::from_relative_humidity(celsius(20.0), part(1.5), p).unwrap_err();
        assert_eq!(
            error.to_string(),
            "relative humidity is 1.5 of saturation; it must lie between 0 and 1 of saturation"
        );
    }
}
