//! A heater that heats before the peak and holds off during it: the tank as a store.
//!
//! Three ways to run the same heater take turns by the clock. *Usual*: as it is. *Before the peak*: its thermostat
//! calls at once, so that the tank goes full into the peak; where a mixing valve stands behind the tank the setpoint is
//! raised as well, to the advised storage temperature at most, for the valve keeps the taps at what they were. *During
//! the peak*: it heats only when the upper part of the tank falls to a floor of comfort, so that nobody runs cold for
//! the tariff's sake. A tank does not know that a draw is coming: whether the showers stay warm is simulated, not
//! promised.

use super::hours::{Hours, Meter};
use crate::core::calendar::DayOfYear;
use crate::core::case::{Case, Household, Tariff, YesNo};
use crate::core::draws::daily_use::USE_C;
use crate::core::heater::{Model, Sim, Source};
use crate::core::room::air::RoomAir;
use crate::core::room::model::RoomModel;
use crate::core::simulate::fixture::{Served, serve};
use crate::core::simulate::morning;
use crate::core::simulate::year::Watch;

/// Advised storage temperature (ASHRAE guideline 12, from memory), and the highest that a schedule raises to, °C.
pub const HIGHEST_C: f64 = 60.0;
/// Water in the upper tank never falls below this for the tariff's sake, °C: use temperature and a little for the
/// pipes. Common practice, no source.
pub const FLOOR_C: f64 = USE_C + 2.0;
/// Where the upper part of a tank is read, as a share of its height, when it has no upper element.
const UPPER: f64 = 0.75;
/// How far above the floor a heater that had to heat during the peak goes, K.
const RELIEF_K: f64 = 3.0;
/// Deadband before the peak, K: calls at once.
const EAGER_K: f64 = 1.0;
/// Hours before the peak in which it heats: a heat pump is slow.
const AHEAD_PUMP_H: usize = 4;
const AHEAD_ELEMENTS_H: usize = 2;
/// The peak may take at most so much of a day; a longer one leaves no time to heat.
const LONGEST_PEAK_H: f64 = 12.0;

/// A heater's three ways to run.
pub struct Schedule {
    usual: Model,
    before: Model,
    during: Model,
    ahead_h: usize,
    /// What the setpoint is raised to before the peak; `None`: not raised.
    pub raised_c: Option<f64>,
}

impl Schedule {
    /// A schedule for a heater; `None` for one that burns fuel, without a tariff by the hour, where the peak costs no more
    /// than the rest, and where it is too long to heat beside it.
    pub fn of(model: &Model, case: &Case) -> Option<Schedule> {
        let tariff = &case.prices.tariff;
        let dear = tariff.peak.value > tariff.low.value;
        let long = tariff.peak_hours();
        let electric = !matches!(model.source, Source::Burner(_));
        if !tariff.is_by_hour() || !dear || !electric || long <= 0.0 || long > LONGEST_PEAK_H {
            return None;
        }
        let mixed = matches!(case.site.mixing_valve.value, YesNo::Yes);
        let raised_c = (mixed && model.setpoint_c < HIGHEST_C).then_some(HIGHEST_C);
        let mut before = model.at_setpoint(raised_c.unwrap_or(model.setpoint_c));
        if before.deadband_k > EAGER_K {
            before.deadband_k = EAGER_K;
        }
        Some(Schedule {
            before,
            during: held(model),
            usual: model.clone(),
            ahead_h: if model.pump().is_some() { AHEAD_PUMP_H } else { AHEAD_ELEMENTS_H },
            raised_c,
        })
    }

    /// How it runs in an hour of a kind of day.
    pub fn at(&self, tariff: &Tariff, month: usize, weekend: bool, hour: usize) -> &Model {
        let peak = |hour: usize| tariff.peak_share(month, weekend, hour % 24) > 0.5;
        if peak(hour) {
            &self.during
        } else if (1..=self.ahead_h).any(|later| peak(hour + later)) {
            &self.before
        } else {
            &self.usual
        }
    }

    /// The busiest morning by this schedule: water asked for and what fell short. The tank has had the night.
    pub fn morning(
        &self,
        tariff: &Tariff,
        h: &Household,
        cold_c: f64,
        day: DayOfYear,
        room: &RoomModel,
    ) -> Served {
        let mut air = RoomAir::new(room, day.index() as f64, 5.0);
        // The busiest morning is a working day's.
        let way = |hour: usize| self.at(tariff, day.month().index(), false, hour);
        let mut sim = Sim::new(way(5)).with_pump_step(60.0);
        let (mut now_s, mut hour) = (5.0 * 3600.0, 5_usize);
        let mut total = Served::default();
        for draw in morning::draws(h) {
            while now_s < draw.start_s {
                let end = (hour + 1) as f64 * 3600.0;
                let to = if end < draw.start_s { end } else { draw.start_s };
                if to > now_s {
                    sim.advance(to - now_s, &mut air);
                    now_s = to;
                }
                if now_s >= end {
                    hour += 1;
                    sim.go_on_as(way(hour));
                }
            }
            total.add(&serve(&mut sim, &draw, cold_c, 10.0, &mut air, |_, _| ()));
            now_s = draw.start_s + draw.duration_s();
        }
        total
    }
}

/// The heater during the peak: whatever it heats with, called only by the water in its upper part.
fn held(model: &Model) -> Model {
    let mut held = model.clone();
    if model.setpoint_c > FLOOR_C + RELIEF_K {
        held.setpoint_c = FLOOR_C + RELIEF_K;
    }
    held.deadband_k = RELIEF_K;
    match &mut held.source {
        Source::Elements(e) => e.lower.sensor = e.upper.sensor,
        Source::HeatPump { sensor, backup, backup_drop_k, .. } => {
            *sensor = UPPER;
            if let Some(e) = backup {
                *sensor = e.upper.sensor;
                e.lower.sensor = e.upper.sensor;
                // The machine first, as ever: elements a little later.
                if *backup_drop_k < 2.0 * RELIEF_K {
                    *backup_drop_k = 2.0 * RELIEF_K;
                }
            }
        }
        Source::Burner(_) => {}
    }
    held
}

/// Runs a year by a schedule and reads its meter.
pub struct ByClock<'m> {
    schedule: &'m Schedule,
    tariff: &'m Tariff,
    meter: Meter,
}

impl<'m> ByClock<'m> {
    /// From the first of January on.
    pub fn new(schedule: &'m Schedule, tariff: &'m Tariff) -> Self {
        Self { schedule, tariff, meter: Meter::default() }
    }

    /// What the meter read.
    pub fn hours(self) -> Hours {
        self.meter.hours()
    }
}

impl<'m> Watch<'m> for ByClock<'m> {
    fn hour_ended(&mut self, hour: u32, stands_for: f64, sim: &mut Sim<'m>) {
        self.meter.read(hour, stands_for, sim.totals().electricity_j);
        let next = hour + 1;
        let day = DayOfYear::from_index(next / 24);
        sim.go_on_as(self.schedule.at(
            self.tariff,
            day.month().index(),
            day.is_weekend(),
            next as usize % 24,
        ));
    }
}
