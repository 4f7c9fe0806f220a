//! The start-up record: what each reading should be in this very house with this very heater, and what to look for
//! when it is not.
//!
//! [`expected`] puts the heater, calibrated to its label, into the room of the day with the cold water of the day
//! and works out each reading at the corners of what is not known exactly. So a reading that was taken narrows
//! those that follow from it: the air that goes in and the water in the tank decide what comes out.

mod causes;
mod machine;
mod pumped;
mod ranges;
mod reading;

pub use causes::{Side, causes};
pub use ranges::{Expected, Start, calibrated, expected};
pub use reading::{Reading, Refusal};

use crate::core::units::Quantity;

/// The readings taken so far, in base SI units.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taken(Vec<(Reading, f64)>);

impl Taken {
    /// Enters a reading, in place of an earlier one.
    ///
    /// # Errors
    /// Refuses what no instrument shows; the earlier one stays.
    pub fn set(&mut self, reading: Reading, given: Quantity) -> Result<(), Refusal> {
        let base = reading.check(given)?;
        self.0.retain(|(r, _)| *r != reading);
        self.0.push((reading, base));
        Ok(())
    }

    /// A reading in its base SI unit.
    pub fn get(&self, reading: Reading) -> Option<f64> {
        self.0.iter().find(|(r, _)| *r == reading).map(|(_, base)| *base)
    }
}

/// How a reading stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Not taken.
    Open,
    /// As expected.
    Within,
    /// Outside, on this side.
    Off(Side),
}

impl Expected {
    /// How a reading stands against what was expected. A reading that others are judged by is as it is.
    pub fn standing(&self, taken: &Taken) -> Standing {
        match taken.get(self.reading) {
            None => Standing::Open,
            Some(base) if base < self.low => Standing::Off(Side::Low),
            Some(base) if base > self.high => Standing::Off(Side::High),
            Some(_) => Standing::Within,
        }
    }
}
