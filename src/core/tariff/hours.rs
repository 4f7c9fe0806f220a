//! A year's electricity by hour of the day, on weekdays and weekends, month by month.

use crate::core::calendar::DayOfYear;
use crate::core::heater::Sim;
use crate::core::simulate::year::Watch;
use crate::core::units::KWH_J;
use serde::{Deserialize, Serialize};

/// Kilowatt-hours by month, kind of day (weekday, weekend) and hour. A draw that runs past the hour counts to the
/// hour it began in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Hours {
    kwh: Vec<f64>,
}

const KINDS: usize = 2;
const IN_A_DAY: usize = 24;

impl Default for Hours {
    fn default() -> Self {
        Self { kwh: vec![0.0; 12 * KINDS * IN_A_DAY] }
    }
}

impl Hours {
    /// Enters what was used in an hour.
    pub fn add(&mut self, month: usize, weekend: bool, hour: usize, kwh: f64) {
        if let Some(cell) = self.kwh.get_mut((month * KINDS + usize::from(weekend)) * IN_A_DAY + hour) {
            *cell += kwh;
        }
    }

    /// Sum of all hours, each times its weight (by month, weekend, hour).
    pub fn sum(&self, weight: impl Fn(usize, bool, usize) -> f64) -> f64 {
        let weighed = self.kwh.iter().enumerate().map(|(at, kwh)| {
            let day = at / IN_A_DAY;
            kwh * weight(day / KINDS, day % KINDS == 1, at % IN_A_DAY)
        });
        weighed.sum()
    }

    /// All of it, kWh.
    pub fn total(&self) -> f64 {
        self.kwh.iter().sum()
    }

    /// The mean day's use by hour, kWh.
    pub fn mean_day(&self) -> Vec<f64> {
        (0..IN_A_DAY)
            .map(|wanted| self.sum(|_, _, hour| f64::from(u8::from(hour == wanted))) / 365.0)
            .collect()
    }
}

/// Gathers the hours of a year as it is simulated.
#[derive(Default)]
pub struct Meter {
    hours: Hours,
    seen_j: f64,
}

impl Meter {
    /// What was gathered.
    pub fn hours(self) -> Hours {
        self.hours
    }

    /// Enters the hour that has just ended.
    pub fn read(&mut self, hour_of_year: u32, electricity_j: f64) {
        let (day, hour) = (hour_of_year / 24, hour_of_year % 24);
        let day = DayOfYear::from_index(day);
        let used = electricity_j - self.seen_j;
        self.hours.add(day.month().index(), day.is_weekend(), hour as usize, used / KWH_J);
        self.seen_j = electricity_j;
    }
}

impl<'m> Watch<'m> for Meter {
    fn hour_ended(&mut self, hour: u32, sim: &mut Sim<'m>) {
        self.read(hour, sim.totals().electricity_j);
    }
}
