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

/// The time of day, s after midnight, at a point `share` (0 to below 1) of the day's weight.
pub(super) fn time_of_day_s(fixture: Fixture, weekend: bool, share: f64) -> f64 {
    let total: f64 = (0..24).map(|h| weight(fixture, h, weekend)).sum();
    let mut left = share * total;
    for hour in 0..24 {
        let w = weight(fixture, hour, weekend);
        if left < w {
            return (hour as f64 + left / w) * 3600.0;
        }
        left -= w;
    }
    86_399.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_map_to_times_in_order_within_the_day() {
        for fixture in Fixture::ALL {
            for weekend in [false, true] {
                let mut last = -1.0;
                for i in 0..1000 {
                    let t = time_of_day_s(fixture, weekend, f64::from(i) / 1000.0);
                    assert!(t >= last && t < 86_400.0);
                    last = t;
                }
            }
        }
    }

    #[test]
    fn weekend_showers_come_later() {
        let median = |weekend| time_of_day_s(Fixture::Shower, weekend, 0.4);
        assert!(median(true) > median(false));
    }
}
