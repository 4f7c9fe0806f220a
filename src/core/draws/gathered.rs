//! A year of fewer draws: water at sinks, gathered.

use super::year::queue;
use super::{Draw, DrawYear, Fixture};

/// Water at sinks waits until it amounts to this, m³, unless a shower or a bath takes it along,
const GATHER_M3: f64 = 0.012;
/// or until so much time has passed since the first of it, s.
const GATHER_S: f64 = 3_600.0;

impl DrawYear {
    /// The same water in a third of the draws: what is taken at sinks waits until it amounts to something.
    #[must_use]
    pub fn gathered(&self) -> DrawYear {
        let mut draws = Vec::with_capacity(self.all().len() / 2);
        let mut days = Vec::with_capacity(366);
        for day in 0..self.day_count() {
            days.push(draws.len());
            let mut waits: Option<(Draw, f64)> = None;
            for draw in self.day(day) {
                if !draw.fixture.is_mixed() {
                    draws.push(*draw);
                    continue;
                }
                let (together, since_s) = match waits.take() {
                    Some((before, since_s)) => (with(draw, &before), since_s),
                    None => (*draw, draw.start_s),
                };
                let waits_on = draw.fixture == Fixture::Sink
                    && together.volume_m3 < GATHER_M3
                    && draw.start_s - since_s < GATHER_S;
                if waits_on {
                    waits = Some((together, since_s));
                } else {
                    draws.push(together);
                }
            }
            draws.extend(waits.map(|(draw, _)| draw));
        }
        days.push(draws.len());
        queue(&mut draws);
        DrawYear { draws, days }
    }
}

/// A draw that takes along what was to come before it, in its own time.
fn with(draw: &Draw, before: &Draw) -> Draw {
    let volume_m3 = draw.volume_m3 + before.volume_m3;
    Draw { volume_m3, flow_m3_per_s: volume_m3 / draw.duration_s(), ..*draw }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::draws::year::tests::use_for;
    use proptest::prelude::*;

    proptest! {
        /// Each day keeps its water, mixed and hot; draws are fewer, in order, and none overlaps the next.
        #[test]
        fn each_day_keeps_its_water(people in 1.0..8.0f64, seed in 0u64..1_000) {
            let year = DrawYear::generate(&use_for(people), seed);
            let gathered = year.gathered();
            prop_assert!(gathered.all().len() < year.all().len());
            for day in 0..365 {
                for mixed in [true, false] {
                    let sum = |y: &DrawYear| {
                        y.day(day).iter().filter(|d| d.fixture.is_mixed() == mixed).map(|d| d.volume_m3).sum::<f64>()
                    };
                    prop_assert!((sum(&year) - sum(&gathered)).abs() < 1e-12);
                }
            }
            for pair in gathered.all().windows(2) {
                prop_assert!(pair[0].start_s + pair[0].duration_s() <= pair[1].start_s + 1e-6);
            }
        }
    }
}
