//! Draws of hot water: how much, when, at which fixture. A seed gives the same year everywhere.

pub mod daily_use;
mod day_shape;
mod gathered;
mod year;

use serde::{Deserialize, Serialize};

pub use year::{DrawYear, HouseholdUse};

/// Where water is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fixture {
    /// A shower: mixed water for a time.
    Shower,
    /// A bath: mixed water to a volume.
    Bath,
    /// A basin or kitchen sink: mixed water.
    Sink,
    /// A dishwasher: hot water.
    Dishwasher,
    /// A clothes washer on a hot or warm cycle: hot water.
    ClothesWasher,
}

impl Fixture {
    /// Every fixture.
    pub const ALL: [Fixture; 5] =
        [Fixture::Shower, Fixture::Bath, Fixture::Sink, Fixture::Dishwasher, Fixture::ClothesWasher];

    /// True when it takes mixed water at use temperature; false when it takes hot water as it comes.
    pub const fn is_mixed(self) -> bool {
        matches!(self, Fixture::Shower | Fixture::Bath | Fixture::Sink)
    }
}

/// One draw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Draw {
    /// Start, s since the start of the year.
    pub start_s: f64,
    /// Where.
    pub fixture: Fixture,
    /// Water at the fixture (mixed, or hot for an appliance), m³.
    pub volume_m3: f64,
    /// Flow at the fixture, m³/s.
    pub flow_m3_per_s: f64,
}

impl Draw {
    /// How long it takes, s.
    pub fn duration_s(&self) -> f64 {
        self.volume_m3 / self.flow_m3_per_s
    }
}
