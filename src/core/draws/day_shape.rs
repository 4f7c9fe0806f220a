//! When in the day water is drawn: weights by hour, weekday and weekend. Two humps for people, evening
//! for the dishwasher, midday for washing; common practice, no source. Only their shape matters.

use super::Fixture;

type Hours = [f64; 24];

const SHOWER: Hours = [
    0.2, 0.1, 0.1, 0.1, 0.6, 2.5, 7.5, 9.0, 5.5, 3.0, 1.8, 1.2, 1.0, 0.8, 0.8, 1.0, 1.5, 2.2, 2.6, 2.8, 3.0,
    2.8, 1.8, 0.7,
];
const BATH: Hours = [
    0.1, 0.0, 0.0, 0.0, 0.1, 0.4, 1.0, 1.5, 1.5, 1.2, 1.0, 0.8, 0.6, 0.6, 0.6, 0.8, 1.4, 3.0, 5.5, 6.5, 5.0,
    2.8, 1.2, 0.4,
];
const SINK: Hours = [
    0.4, 0.2, 0.2, 0.2, 0.5, 1.6, 4.0, 5.5, 5.0, 4.2, 3.8, 3.8, 4.6, 4.0, 3.2, 3.2, 3.8, 5.6, 6.6, 5.8, 4.6,
    3.6, 2.4, 1.2,
];
const DISHWASHER: Hours = [
    0.4, 0.2, 0.1, 0.1, 0.1, 0.2, 0.6, 1.4, 2.2, 2.2, 1.8, 1.4, 1.8, 2.2, 1.6, 1.2, 1.2, 2.0, 4.6, 6.6, 6.2,
    4.4, 2.4, 1.0,
];
const CLOTHES_WASHER: Hours = [
    0.2, 0.1, 0.1, 0.1, 0.2, 0.8, 2.0, 3.6, 5.0, 6.0, 6.0, 5.6, 5.0, 4.6, 4.2, 3.8, 3.6, 3.6, 3.6, 3.2, 2.6,
    1.8, 1.0, 0.5,
];

/// Hours by which weekend mornings are later.
const WEEKEND_LATER: usize = 2;

fn hours(fixture: Fixture) -> &'static Hours {
    match fixture {
        Fixture::Shower => &SHOWER,
        Fixture::Bath => &BATH,
        Fixture::Sink => &SINK,
        Fixture::Dishwasher => &DISHWASHER,
        Fixture::ClothesWasher => &CLOTHES_WASHER,
    }
}

/// Weight of an hour; on weekends what weekdays have before noon comes later.
fn weight(fixture: Fixture, hour: usize, weekend: bool) -> f64 {
    let h = hours(fixture);
    if weekend && (4..14).contains(&hour) { h[hour - WEEKEND_LATER] } else { h[hour % 24] }
}

/// When a fixture is used on a kind of day: made once for a year, since a year asks for thousands of times.
pub(super) struct DayShape {
    weights: [f64; 24],
    total: f64,
}

impl DayShape {
    pub fn of(fixture: Fixture, weekend: bool) -> DayShape {
        let weights: [f64; 24] = std::array::from_fn(|hour| weight(fixture, hour, weekend));
        DayShape { weights, total: weights.iter().sum() }
    }

    /// The time of day, s after midnight, at a point `share` (0 to below 1) of the day's weight.
    pub fn time_s(&self, share: f64) -> f64 {
        let mut left = share * self.total;
        for (hour, weight) in self.weights.iter().enumerate() {
            if left < *weight {
                return (hour as f64 + left / weight) * 3600.0;
            }
            left -= weight;
        }
        86_399.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_map_to_times_in_order_within_the_day() {
        for fixture in Fixture::ALL {
            for weekend in [false, true] {
                let mut last = -1.0;
                let shape = DayShape::of(fixture, weekend);
                for i in 0..1000 {
                    let t = shape.time_s(f64::from(i) / 1000.0);
                    assert!(t >= last && t < 86_400.0);
                    last = t;
                }
            }
        }
    }

    #[test]
    fn weekend_showers_come_later() {
        let median = |weekend| DayShape::of(Fixture::Shower, weekend).time_s(0.4);
        assert!(median(true) > median(false));
    }
}
