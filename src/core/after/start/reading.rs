//! The readings taken when a heater starts: their codes, units, and what a reading can be at all.

use crate::core::message::Message;
use crate::core::units::{PSI_PA, Quantity, Unit, ZERO_C_K};
use thiserror::Error;

macro_rules! readings {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $key:literal, $us:ident, $si:ident, $low:expr, $high:expr;)*) => {
        /// A reading. Codes are for ever: kept jobs have them.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Reading { $($(#[$doc])* $name,)* }

        impl Reading {
            /// Every reading, in the order in which they are taken.
            pub const ALL: &'static [Reading] = &[$(Reading::$name,)*];

            /// The code in kept jobs and files.
            pub const fn code(self) -> &'static str { match self { $(Reading::$name => $code,)* } }

            /// The key of its words; `.find` says how to take it.
            pub const fn key(self) -> &'static str { match self { $(Reading::$name => $key,)* } }

            /// The units it is read in: US customary and SI.
            pub const fn units(self) -> (Unit, Unit) { match self { $(Reading::$name => (Unit::$us, Unit::$si),)* } }

            /// The least and the most that an instrument can sensibly show, in the base SI unit.
            const fn bounds(self) -> (f64, f64) { match self { $(Reading::$name => ($low, $high),)* } }
        }
    };
}

readings! {
    /// Static pressure of the cold water, before power.
    Pressure = "pressure", "start-pressure", Psi, Kilopascal, 0.0, 200.0 * PSI_PA;
    /// Volts at the heater while it runs.
    Volts = "volts", "start-volts", Volt, Volt, 50.0, 300.0;
    /// Air that the heat pump takes in.
    AirIn = "air_in", "start-air-in", DegF, DegC, ZERO_C_K - 20.0, ZERO_C_K + 60.0;
    /// Air that it blows out.
    AirOut = "air_out", "start-air-out", DegF, DegC, ZERO_C_K - 30.0, ZERO_C_K + 60.0;
    /// Water low in the tank while the heat pump runs.
    Water = "water", "start-water", DegF, DegC, ZERO_C_K, ZERO_C_K + 85.0;
    /// Current of the heat pump.
    AmpsPump = "amps_pump", "start-amps-pump", Ampere, Ampere, 0.0, 60.0;
    /// Condensate caught.
    Condensate = "condensate", "start-condensate", Litre, Litre, 0.0, 5e-3;
    /// Time it was caught for.
    CondensateTime = "condensate_time", "start-condensate-time", Minute, Minute, 60.0, 7_200.0;
    /// Sound a metre from the heater.
    SoundNear = "sound_near", "start-sound-near", Decibel, Decibel, 10.0, 110.0;
    /// Sound in the next room.
    SoundNext = "sound_next", "start-sound-next", Decibel, Decibel, 0.0, 110.0;
    /// Current of the elements.
    AmpsElements = "amps_elements", "start-amps-elements", Ampere, Ampere, 0.0, 100.0;
    /// Time to heat the full tank from cold.
    HeatTime = "heat_time", "start-heat-time", Minute, Minute, 60.0, 172_800.0;
    /// Hot water at the top of the tank once it has heated.
    TankTop = "tank_top", "start-tank-top", DegF, DegC, ZERO_C_K, ZERO_C_K + 99.0;
    /// Hot water at the nearest tap once it has heated.
    Tap = "tap", "start-tap", DegF, DegC, ZERO_C_K, ZERO_C_K + 99.0;
}

/// A reading that no instrument shows.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum Refusal {
    /// Outside what the reading can be; limits in the unit given.
    #[error("{}: {} {} is outside {} to {} {}", .reading.code(), .given.value, .given.unit.code(), .low.value, .high.value, .low.unit.code())]
    OutOfRange {
        /// The reading.
        reading: Reading,
        /// What was given.
        given: Quantity,
        /// Least accepted, in the unit given.
        low: Quantity,
        /// Most accepted, in the unit given.
        high: Quantity,
    },
    /// A unit of something else, or no number.
    #[error("{}: the unit {} does not measure this; use {}", .reading.code(), .given.code(), .wanted.code())]
    WrongUnit {
        /// The reading.
        reading: Reading,
        /// The unit given.
        given: Unit,
        /// A unit that would do.
        wanted: Unit,
    },
}

impl Refusal {
    /// What to tell a person at the field.
    pub fn message(&self) -> Message {
        match self {
            Refusal::OutOfRange { reading, given, low, high } => Message::new("refusal-out-of-range")
                .with("question", Message::new(reading.key()))
                .with("given", *given)
                .with("low", *low)
                .with("high", *high),
            Refusal::WrongUnit { reading, .. } => {
                Message::new("refusal-not-a-number").with("question", Message::new(reading.key()))
            }
        }
    }
}

impl Reading {
    /// The reading with this code, if there is one.
    pub fn from_code(code: &str) -> Option<Reading> {
        Reading::ALL.iter().copied().find(|r| r.code() == code)
    }

    /// The base SI unit.
    pub fn base_unit(self) -> Unit {
        match self.units().0 {
            Unit::DegF => Unit::DegC,
            Unit::Psi => Unit::Kilopascal,
            other => other,
        }
    }

    /// Whether something can be a reading at all; in the base SI unit.
    ///
    /// # Errors
    /// Says what would do.
    pub fn check(self, given: Quantity) -> Result<f64, Refusal> {
        let wanted = self.units().0;
        if given.unit.dimension() != wanted.dimension() || !given.value.is_finite() {
            return Err(Refusal::WrongUnit { reading: self, given: given.unit, wanted });
        }
        let (low, high) = self.bounds();
        let base = given.base();
        // A hair of slack: a limit typed in the other system's unit must not be refused for rounding.
        let slack = 1e-9 * (high - low);
        if base >= low - slack && base <= high + slack {
            return Ok(base);
        }
        let limit = |base: f64| Quantity::new(given.unit.from_base(base), given.unit);
        Err(Refusal::OutOfRange { reading: self, given, low: limit(low), high: limit(high) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_find_readings_and_bad_readings_are_refused() {
        for &r in Reading::ALL {
            assert_eq!(Reading::from_code(r.code()), Some(r));
            let (us, si) = r.units();
            assert_eq!(us.dimension(), si.dimension());
            let (low, high) = r.bounds();
            for unit in [us, si] {
                for base in [low, high, 0.5 * (low + high)] {
                    r.check(Quantity::new(unit.from_base(base), unit)).expect("within");
                }
                let over = Quantity::new(unit.from_base(high + 0.1 * (high - low)), unit);
                let refused = r.check(over).expect_err("too much").to_string();
                assert!(
                    refused.starts_with(r.code()) && refused.contains(&format!("{}", over.value)),
                    "{refused}"
                );
            }
            assert!(r.check(Quantity::new(f64::NAN, us)).is_err());
            assert!(r.check(Quantity::new(1.0, Unit::Dollar)).is_err());
        }
    }
}
