//! Days that stand for the year: what a first look simulates.
//!
//! Every [`EVERY`]th day is taken. That number shares no factor with the week's, so that each weekday comes as
//! often as any other, in every season. What is lost is the chance of what people draw on a day; but how much
//! they draw is known for every day without a simulation. So the days are weighted such that they have the
//! year's length, its demand, and its demand in winter against summer (which tells cold air and cold rooms from
//! warm ones), all three exactly: a calibration estimator (J.-C. Deville and C.-E. Särndal, *Calibration
//! estimators in survey sampling*, Journal of the American Statistical Association 87, 1992, 376–382, from
//! memory), with the distance that makes it the generalised regression estimator.
//!
//! The error against the whole year is stated and held in `tests/first_look.rs`.

use super::year::House;
use crate::core::calendar::DayOfYear;
use crate::core::draws::daily_use::USE_C;
use crate::core::room::model::season;

/// One day in so many is simulated.
pub const EVERY: usize = 6;
/// The first of them, from 0: the middle of the days it stands for.
const FIRST: usize = EVERY / 2;
const DAYS: usize = 365;
/// Below this share of what it could be, the determinant of the equations for the weights is rounding.
const SINGULAR: f64 = 1e-6;

/// Days with the number of days that each stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct Sample {
    days: Vec<(DayOfYear, f64)>,
}

impl Sample {
    /// The days of a house's year.
    pub fn of(house: &House) -> Self {
        let known: Vec<[f64; 2]> = DayOfYear::all().map(|day| known(house, day)).collect();
        let picked = || known.iter().skip(FIRST).step_by(EVERY);
        let count = picked().count() as f64;
        let means = mean(picked());
        let year = mean(known.iter());
        // Variances and covariance in the sample, and how far its means are from the year's.
        let (mut aa, mut ab, mut bb) = (0.0, 0.0, 0.0);
        for day in picked() {
            let (a, b) = (day[0] - means[0], day[1] - means[1]);
            aa += a * a / count;
            ab += a * b / count;
            bb += b * b / count;
        }
        let off = [year[0] - means[0], year[1] - means[1]];
        let determinant = aa * bb - ab * ab;
        let tilt = if determinant > SINGULAR * aa * bb {
            [(bb * off[0] - ab * off[1]) / determinant, (aa * off[1] - ab * off[0]) / determinant]
        } else {
            // Nothing is drawn, or always the same.
            [0.0; 2]
        };
        let share = |day: &[f64; 2]| 1.0 + tilt[0] * (day[0] - means[0]) + tilt[1] * (day[1] - means[1]);
        // A household that draws a few times a year only has no days like the others to learn from.
        let all_count = picked().all(|day| share(day) > 0.0);
        let days = DayOfYear::all()
            .skip(FIRST)
            .step_by(EVERY)
            .zip(picked())
            .map(|(day, known)| (day, DAYS as f64 / count * if all_count { share(known) } else { 1.0 }))
            .collect();
        Self { days }
    }

    /// The days in order, each with how many it stands for.
    pub fn days(&self) -> &[(DayOfYear, f64)] {
        &self.days
    }
}

/// What is known of a day without a simulation: the water asked for times its rise to use temperature, m³·K;
/// and the same counted from −1 in the coldest season to 1 in the warmest.
fn known(house: &House, day: DayOfYear) -> [f64; 2] {
    let cold_c = house.mains_c.get(day.index()).copied().map_or(10.0, f64::from);
    let rise = if cold_c < USE_C { USE_C - cold_c } else { 0.0 };
    let demand = rise * house.draws.day(day.index()).iter().map(|draw| draw.volume_m3).sum::<f64>();
    [demand, demand * (2.0 * season(day.index() as f64) - 1.0)]
}

fn mean<'a>(days: impl Iterator<Item = &'a [f64; 2]>) -> [f64; 2] {
    let (mut sum, mut count) = ([0.0; 2], 0.0);
    for day in days {
        sum[0] += day[0];
        sum[1] += day[1];
        count += 1.0;
    }
    sum.map(|s| s / count)
}
