//! A year's draws with the small ones gathered.

use crate::core::draws::{DrawYear, Fixture};

/// Water at sinks waits until it amounts to this, m³, unless a larger draw takes it along.
const GATHER_M3: f64 = 0.024;
/// Or until so much time has passed since the first of it, s.
const GATHER_S: f64 = 4.0 * 3_600.0;

/// One draw, or several small ones.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Event {
    /// Start, s after midnight of its day.
    pub at_s: f64,
    /// Mixed water at fixtures, m³.
    pub mixed_m3: f64,
    /// Hot water for an appliance, m³.
    pub hot_m3: f64,
    /// How long it takes, s.
    pub lasts_s: f64,
}

/// A household's year of draws.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Demand {
    events: Vec<Event>,
    days: Vec<usize>,
}

impl Demand {
    /// Of a year of draws.
    pub fn of(draws: &DrawYear) -> Demand {
        let mut demand = Demand::default();
        for day in 0..365 {
            demand.days.push(demand.events.len());
            let midnight = day as f64 * 86_400.0;
            let mut waits: Option<Event> = None;
            for d in draws.day(day) {
                let at_s = d.start_s - midnight;
                let mut event = Event { at_s, lasts_s: d.duration_s(), ..Event::default() };
                if d.fixture.is_mixed() {
                    event.mixed_m3 = d.volume_m3;
                } else {
                    event.hot_m3 = d.volume_m3;
                }
                if let Some(w) = waits.take() {
                    event.mixed_m3 += w.mixed_m3;
                    event.lasts_s += w.lasts_s;
                    if d.fixture == Fixture::Sink {
                        event.at_s = w.at_s;
                    }
                }
                if d.fixture == Fixture::Sink && event.mixed_m3 < GATHER_M3 && at_s - event.at_s < GATHER_S {
                    waits = Some(event);
                } else {
                    // What waited is drawn at the end of its wait.
                    event.at_s = at_s;
                    demand.events.push(event);
                }
            }
            demand.events.extend(waits);
        }
        demand.days.push(demand.events.len());
        demand
    }

    /// The events of a day (from 0).
    pub(super) fn day(&self, day: usize) -> &[Event] {
        match (self.days.get(day), self.days.get(day + 1)) {
            (Some(&a), Some(&b)) => self.events.get(a..b).unwrap_or_default(),
            _ => &[],
        }
    }

    /// How many events there are.
    pub fn len(&self) -> usize {
        self.events.len()
    }

    /// Whether nothing is drawn.
    pub fn is_empty(&self) -> bool {
        self.events.is_empty()
    }
}
