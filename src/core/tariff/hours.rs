//! A year's electricity by hour of the day, on weekdays and weekends, month by month.

use crate::core::calendar::DayOfYear;
use crate::core::heater::Sim;
use crate::core::simulate::year::Watch;
use crate::core::units::KWH_J;

/// Kilowatt-hours by month, kind of day (weekday, weekend) and hour. A draw that runs past the hour counts to the
/// hour it began in.
#[derive(Clone, Debug, PartialEq)]
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

    /// Goes through all hours: month from 0, whether weekend, hour of the day, kWh.
    pub fn each(&self, mut see: impl FnMut(usize, bool, usize, f64)) {
        for (at, kwh) in self.kwh.iter().enumerate() {
            let day = at / IN_A_DAY;
            see(day / KINDS, day % KINDS == 1, at % IN_A_DAY, *kwh);
        }
    }

    /// All of it, kWh.
    pub fn total(&self) -> f64 {
        self.kwh.iter().sum()
    }

    /// The mean day's use by hour, kWh.
    pub fn mean_day(&self) -> Vec<f64> {
        let mut day = vec![0.0; IN_A_DAY];
        self.each(|_, _, hour, kwh| day[hour] += kwh / 365.0);
        day
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

    /// Enters the hour that has just ended, for as many days as its own stands for.
    pub fn read(&mut self, hour_of_year: u32, stands_for: f64, electricity_j: f64) {
        let (day, hour) = (hour_of_year / 24, hour_of_year % 24);
        let day = DayOfYear::from_index(day);
        let used = stands_for * (electricity_j - self.seen_j);
        self.hours.add(day.month().index(), day.is_weekend(), hour as usize, used / KWH_J);
        self.seen_j = electricity_j;
    }
}

impl<'m> Watch<'m> for Meter {
    fn hour_ended(&mut self, hour: u32, stands_for: f64, sim: &mut Sim<'m>) {
        self.read(hour, stands_for, sim.totals().electricity_j);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A meter reads what came since it was last read, and counts it for the days that this one stands for.
    #[test]
    fn readings_count_for_the_days_they_stand_for() {
        let mut meter = Meter::default();
        // Days run in count for nothing, and are not read later.
        meter.read(7, 0.0, 5.0 * KWH_J);
        meter.read(8, 6.0, 7.0 * KWH_J);
        // A Saturday in June, some days later.
        let june = DayOfYear::all().find(|d| d.month().index() == 5 && d.is_weekend()).expect("a Saturday");
        meter.read(24 * june.index() as u32 + 23, 5.5, 8.0 * KWH_J);
        let hours = meter.hours();
        let mut seen = Vec::new();
        hours.each(|month, weekend, hour, kwh| {
            if kwh != 0.0 {
                seen.push((month, weekend, hour, kwh));
            }
        });
        assert_eq!(seen, [(0, false, 8, 12.0), (5, true, 23, 5.5)]);
        assert_eq!(hours.total(), 17.5);
        let day = hours.mean_day();
        assert_eq!((day[8], day[23], day.len()), (12.0 / 365.0, 5.5 / 365.0, 24));
    }
}
