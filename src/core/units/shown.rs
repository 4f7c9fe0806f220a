//! In which units a household reads what.

use super::{Dimension, Quantity, Unit};
use serde::{Deserialize, Serialize};

/// Which units a person wants to read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum UnitSystem {
    /// US customary units.
    #[default]
    Us,
    /// The international system, with °C, litres and kWh as households use them.
    Si,
}

impl Dimension {
    /// The unit in which a household of this system reads the dimension.
    pub const fn display_unit(self, system: UnitSystem) -> Unit {
        use UnitSystem::{Si, Us};
        match (self, system) {
            (Dimension::Number, _) => Unit::One,
            (Dimension::Temperature, Us) => Unit::DegF,
            (Dimension::Temperature, Si) => Unit::DegC,
            (Dimension::TemperatureDifference, Us) => Unit::DeltaF,
            (Dimension::TemperatureDifference, Si) => Unit::Kelvin,
            (Dimension::WaterVolume, Us) => Unit::Gallon,
            (Dimension::WaterVolume, Si) => Unit::Litre,
            (Dimension::RoomVolume, Us) => Unit::CubicFoot,
            (Dimension::RoomVolume, Si) => Unit::CubicMetre,
            (Dimension::Distance, Us) => Unit::Foot,
            (Dimension::Distance, Si) => Unit::Metre,
            (Dimension::Size, Us) => Unit::Inch,
            (Dimension::Size, Si) => Unit::Centimetre,
            (Dimension::WaterFlow, Us) => Unit::GallonPerMinute,
            (Dimension::WaterFlow, Si) => Unit::LitrePerMinute,
            (Dimension::AirFlow, Us) => Unit::CubicFootPerMinute,
            (Dimension::AirFlow, Si) => Unit::CubicMetrePerHour,
            (Dimension::Power, _) => Unit::Watt,
            (Dimension::Energy, _) => Unit::KilowattHour,
            (Dimension::Conductance, Us) => Unit::BtuPerHourPerDegF,
            (Dimension::Conductance, Si) => Unit::WattPerKelvin,
            (Dimension::Minutes, _) => Unit::Minute,
            (Dimension::Years, _) => Unit::Year,
            (Dimension::Current, _) => Unit::Ampere,
            (Dimension::Voltage, _) => Unit::Volt,
            (Dimension::Pressure, Us) => Unit::Psi,
            (Dimension::Pressure, Si) => Unit::Kilopascal,
            (Dimension::Mass, Us) => Unit::Pound,
            (Dimension::Mass, Si) => Unit::Kilogram,
            (Dimension::Hardness, Us) => Unit::GrainPerGallon,
            (Dimension::Hardness, Si) => Unit::MilligramPerLitre,
            (Dimension::Money, _) => Unit::Dollar,
            (Dimension::EnergyPrice, _) => Unit::DollarPerKwh,
            (Dimension::FuelPrice, Us) => Unit::DollarPerGallon,
            (Dimension::FuelPrice, Si) => Unit::DollarPerLitre,
            (Dimension::FloorArea, Us) => Unit::SquareFoot,
            (Dimension::FloorArea, Si) => Unit::SquareMetre,
            (Dimension::Sound, _) => Unit::Decibel,
        }
    }
}

impl Quantity {
    /// The quantity in the unit that a household of `system` reads. Prices a therm stay so: that is
    /// how the bill has them, in either system.
    pub fn displayed(self, system: UnitSystem) -> Quantity {
        if matches!(self.unit, Unit::Percent | Unit::DollarPerTherm | Unit::Therm | Unit::Kilowatt) {
            return self;
        }
        self.to(self.unit.dimension().display_unit(system)).unwrap_or(self)
    }
}
