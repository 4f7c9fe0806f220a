//! Units as people write them, and what they mean in SI.
//!
//! Answers, messages and figures carry a [`Quantity`]: the number as it was written, with its unit, so
//! that nothing a person typed is lost to rounding. Public interfaces of the physics take `uom` types;
//! the conversions are here and nowhere else. US gallons, international feet and inches, and the
//! international-table Btu (as in 10 CFR 430) throughout.

mod physical;
mod shown;

pub use physical::{
    celsius, cubic_metres, fahrenheit, gallons, inches, kelvins, litres, litres_per_minute, metres, minutes,
    seconds, to_celsius, watts,
};
pub use shown::UnitSystem;

use serde::{Deserialize, Serialize};

/// One US gallon in m³ (231 cubic inches, exact).
pub const GALLON_M3: f64 = 231.0 * 0.0254 * 0.0254 * 0.0254;
/// One international foot in m (exact).
pub const FOOT_M: f64 = 0.3048;
/// One international-table Btu in J.
pub const BTU_J: f64 = 1_055.055_852_62;
/// One kilowatt-hour in J (exact).
pub const KWH_J: f64 = 3.6e6;
/// One therm (100,000 Btu) in J.
pub const THERM_J: f64 = 1e5 * BTU_J;
/// 0 °C in K (exact).
pub const ZERO_C_K: f64 = 273.15;
/// One psi in Pa.
pub const PSI_PA: f64 = 6_894.757_293_168;

/// What kind of thing a number measures; one base SI unit each.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Dimension {
    /// A bare count or ratio; base: 1.
    Number,
    /// A temperature on a scale; base: K.
    Temperature,
    /// A difference of two temperatures; base: K.
    TemperatureDifference,
    /// A volume of water; base: m³.
    WaterVolume,
    /// A volume of air or space; base: m³.
    RoomVolume,
    /// A distance of metres or feet; base: m.
    Distance,
    /// A size of centimetres or inches; base: m.
    Size,
    /// A flow of water; base: m³/s.
    WaterFlow,
    /// A flow of air; base: m³/s.
    AirFlow,
    /// Power; base: W.
    Power,
    /// Energy; base: J.
    Energy,
    /// Heat lost a kelvin of difference; base: W/K.
    Conductance,
    /// A short time; base: s.
    Minutes,
    /// A long time; base: years.
    Years,
    /// Electric current; base: A.
    Current,
    /// Voltage; base: V.
    Voltage,
    /// Gauge pressure; base: Pa.
    Pressure,
    /// Mass; base: kg.
    Mass,
    /// Water hardness; base: kg/m³ as calcium carbonate.
    Hardness,
    /// Money of the place; base: one dollar.
    Money,
    /// Price of electricity or heat; base: dollars per J.
    EnergyPrice,
    /// Price of a liquid fuel; base: dollars per m³.
    FuelPrice,
    /// An area of floor or of an opening; base: m².
    FloorArea,
    /// Sound, A-weighted; base: dB.
    Sound,
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident, $code:literal, $dim:ident, $scale:expr, $offset:expr;)*) => {
        /// A unit a number can be written in.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum Unit { $($(#[$doc])* #[serde(rename = $code)] $name,)* }

        impl Unit {
            /// Every unit.
            pub const ALL: &'static [Unit] = &[$(Unit::$name,)*];

            /// The short code used in files, links and locale keys.
            pub const fn code(self) -> &'static str { match self { $(Unit::$name => $code,)* } }

            /// What the unit measures.
            pub const fn dimension(self) -> Dimension { match self { $(Unit::$name => Dimension::$dim,)* } }

            /// `(scale, offset)` of `base = value · scale + offset`.
            const fn to_base_factors(self) -> (f64, f64) { match self { $(Unit::$name => ($scale, $offset),)* } }
        }
    };
}

units! {
    /// A bare number.
    One, "1", Number, 1.0, 0.0;
    /// Hundredths.
    Percent, "percent", Number, 0.01, 0.0;
    /// Degrees Fahrenheit.
    DegF, "degF", Temperature, 5.0 / 9.0, ZERO_C_K - 32.0 * 5.0 / 9.0;
    /// Degrees Celsius.
    DegC, "degC", Temperature, 1.0, ZERO_C_K;
    /// Difference in degrees Fahrenheit.
    DeltaF, "deltaF", TemperatureDifference, 5.0 / 9.0, 0.0;
    /// Difference in kelvin.
    Kelvin, "K", TemperatureDifference, 1.0, 0.0;
    /// US gallons.
    Gallon, "gal", WaterVolume, GALLON_M3, 0.0;
    /// Litres.
    Litre, "L", WaterVolume, 1e-3, 0.0;
    /// Cubic feet.
    CubicFoot, "ft3", RoomVolume, FOOT_M * FOOT_M * FOOT_M, 0.0;
    /// Cubic metres.
    CubicMetre, "m3", RoomVolume, 1.0, 0.0;
    /// Feet.
    Foot, "ft", Distance, FOOT_M, 0.0;
    /// Metres.
    Metre, "m", Distance, 1.0, 0.0;
    /// Inches.
    Inch, "in", Size, 0.0254, 0.0;
    /// Centimetres.
    Centimetre, "cm", Size, 0.01, 0.0;
    /// US gallons a minute.
    GallonPerMinute, "gpm", WaterFlow, GALLON_M3 / 60.0, 0.0;
    /// Litres a minute.
    LitrePerMinute, "L/min", WaterFlow, 1e-3 / 60.0, 0.0;
    /// Cubic feet a minute.
    CubicFootPerMinute, "cfm", AirFlow, FOOT_M * FOOT_M * FOOT_M / 60.0, 0.0;
    /// Cubic metres an hour.
    CubicMetrePerHour, "m3/h", AirFlow, 1.0 / 3600.0, 0.0;
    /// Watts.
    Watt, "W", Power, 1.0, 0.0;
    /// Kilowatts.
    Kilowatt, "kW", Power, 1e3, 0.0;
    /// Btu an hour.
    BtuPerHour, "Btu/h", Power, BTU_J / 3600.0, 0.0;
    /// Kilowatt-hours.
    KilowattHour, "kWh", Energy, KWH_J, 0.0;
    /// Therms.
    Therm, "therm", Energy, THERM_J, 0.0;
    /// Watts a kelvin.
    WattPerKelvin, "W/K", Conductance, 1.0, 0.0;
    /// Btu an hour a degree Fahrenheit.
    BtuPerHourPerDegF, "Btu/h/degF", Conductance, BTU_J / 3600.0 * 1.8, 0.0;
    /// Minutes.
    Minute, "min", Minutes, 60.0, 0.0;
    /// Years.
    Year, "year", Years, 1.0, 0.0;
    /// Amperes.
    Ampere, "A", Current, 1.0, 0.0;
    /// Volts.
    Volt, "V", Voltage, 1.0, 0.0;
    /// Pounds a square inch, gauge.
    Psi, "psi", Pressure, PSI_PA, 0.0;
    /// Kilopascals, gauge.
    Kilopascal, "kPa", Pressure, 1e3, 0.0;
    /// Pounds.
    Pound, "lb", Mass, 0.453_592_37, 0.0;
    /// Kilograms.
    Kilogram, "kg", Mass, 1.0, 0.0;
    /// Grains a US gallon, as calcium carbonate.
    GrainPerGallon, "gr/gal", Hardness, 64.798_91e-6 / GALLON_M3, 0.0;
    /// Milligrams a litre, as calcium carbonate.
    MilligramPerLitre, "mg/L", Hardness, 1e-3, 0.0;
    /// Dollars of the place.
    Dollar, "$", Money, 1.0, 0.0;
    /// Dollars a kilowatt-hour.
    DollarPerKwh, "$/kWh", EnergyPrice, 1.0 / KWH_J, 0.0;
    /// Dollars a therm.
    DollarPerTherm, "$/therm", EnergyPrice, 1.0 / THERM_J, 0.0;
    /// Dollars a US gallon.
    DollarPerGallon, "$/gal", FuelPrice, 1.0 / GALLON_M3, 0.0;
    /// Dollars a litre.
    DollarPerLitre, "$/L", FuelPrice, 1e3, 0.0;
    /// Square feet.
    SquareFoot, "ft2", FloorArea, FOOT_M * FOOT_M, 0.0;
    /// Square metres.
    SquareMetre, "m2", FloorArea, 1.0, 0.0;
    /// Decibels, A-weighted.
    Decibel, "dB", Sound, 1.0, 0.0;
}

impl Unit {
    /// The value in the dimension's base SI unit.
    pub fn to_base(self, value: f64) -> f64 {
        let (scale, offset) = self.to_base_factors();
        value * scale + offset
    }

    /// The value in this unit, given the dimension's base SI unit.
    pub fn from_base(self, base: f64) -> f64 {
        let (scale, offset) = self.to_base_factors();
        (base - offset) / scale
    }

    /// The unit with this code, if there is one.
    pub fn from_code(code: &str) -> Option<Unit> {
        Unit::ALL.iter().copied().find(|u| u.code() == code)
    }
}

/// A number as it was written, with its unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Quantity {
    /// The number in `unit`.
    pub value: f64,
    /// The unit it was written in.
    pub unit: Unit,
}

impl Quantity {
    /// A number in a unit.
    pub const fn new(value: f64, unit: Unit) -> Self {
        Self { value, unit }
    }

    /// The value in the base SI unit of its dimension.
    pub fn base(self) -> f64 {
        self.unit.to_base(self.value)
    }

    /// The same quantity written in another unit of the same dimension; `None` for another dimension.
    pub fn to(self, unit: Unit) -> Option<Quantity> {
        if unit == self.unit {
            return Some(self);
        }
        (unit.dimension() == self.unit.dimension()).then(|| Quantity::new(unit.from_base(self.base()), unit))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_round_trips_and_has_its_own_code() {
        for &u in Unit::ALL {
            for v in [-40.0, 0.0, 1.0, 123.456] {
                let back = u.from_base(u.to_base(v));
                assert!((back - v).abs() < 1e-10, "{u:?}: {v} came back as {back}");
            }
            assert_eq!(Unit::from_code(u.code()), Some(u));
        }
    }

    /// Exact definitions: NIST Special Publication 811, appendix B (from memory).
    #[test]
    fn known_conversions() {
        assert_eq!(Unit::DegF.to_base(32.0), 273.15);
        assert!((Unit::DegF.to_base(-40.0) - Unit::DegC.to_base(-40.0)).abs() < 1e-12);
        assert!((Unit::Gallon.to_base(1.0) - 3.785_411_784e-3).abs() < 1e-15);
        assert!((Unit::CubicFoot.to_base(1.0) - 2.831_684_659_2e-2).abs() < 1e-15);
        assert!((Unit::BtuPerHour.to_base(1.0) - 0.293_071_07).abs() < 1e-8);
        assert!((Unit::GrainPerGallon.to_base(1.0) - 17.118e-3).abs() < 1e-6);
    }

    #[test]
    fn another_dimension_is_refused() {
        assert_eq!(Quantity::new(1.0, Unit::Gallon).to(Unit::CubicFoot), None);
    }
}
