//! What a rule makes of a value that may only be known within a range.

use crate::core::finding::Fit;
use crate::core::site::Ranged;

/// How a check may come out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Could {
    /// With the values taken.
    pub likely: Fit,
    /// At best.
    pub best: Fit,
    /// At worst.
    pub worst: Fit,
}

impl Could {
    /// One way only.
    pub const fn only(fit: Fit) -> Could {
        Could { likely: fit, best: fit, worst: fit }
    }

    /// Also in this other way, if `possible`.
    pub fn or(mut self, possible: bool, other: Could) -> Could {
        if possible {
            if other.best < self.best {
                self.best = other.best;
            }
            if other.worst > self.worst {
                self.worst = other.worst;
            }
        }
        self
    }

    /// The finding: measure first only where the range lies on both sides of the rule.
    pub fn fit(self) -> Fit {
        if self.best == self.worst { self.worst } else { Fit::MeasureFirst }
    }

    /// The words for how it came out: fits, fits with work, measure first, does not fit.
    pub fn say(self, ids: [&'static str; 4]) -> &'static str {
        let [fits, work, measure, not] = ids;
        match self.fit() {
            Fit::Fits => fits,
            Fit::FitsWithWork => work,
            Fit::MeasureFirst => measure,
            Fit::DoesNotFit => not,
        }
    }
}

/// A rule over the ranges of its numbers: at the values taken, and at every corner. Rules are monotone in each
/// number, so the corners hold the best and the worst.
pub(super) fn over(numbers: &[Ranged], at: &dyn Fn(&[f64]) -> Fit) -> Could {
    let mut values: Vec<f64> = numbers.iter().map(|n| n.value).collect();
    let mut could = Could::only(at(&values));
    for corner in 0..1_u32 << numbers.len() {
        for (i, (value, n)) in values.iter_mut().zip(numbers).enumerate() {
            *value = if corner >> i & 1 == 1 { n.high } else { n.low };
        }
        could = could.or(true, Could::only(at(&values)));
    }
    could
}

/// Fits from a limit on; below it as said.
pub(super) fn at_least(value: f64, limit: f64, below: Fit) -> Fit {
    // A hair of slack: sizes are converted from inches.
    if value >= limit - 1e-9 { Fit::Fits } else { below }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::case::Provenance;

    #[test]
    fn only_a_range_on_both_sides_asks_to_measure() {
        let rule = |v: &[f64]| at_least(v[0], 2.0, Fit::DoesNotFit);
        let of = |low, high| over(&[Ranged::assumed(2.1, low, high)], &rule);
        assert_eq!(of(2.0, 3.0).fit(), Fit::Fits);
        assert_eq!(of(1.0, 3.0).fit(), Fit::MeasureFirst);
        assert_eq!((of(1.0, 3.0).likely, of(1.0, 3.0).worst), (Fit::Fits, Fit::DoesNotFit));
        let exact = over(&[Ranged::exact(1.9, Provenance::Measured)], &rule);
        assert_eq!(exact.fit(), Fit::DoesNotFit);
    }

    #[test]
    fn corners_of_two_numbers() {
        let rule = |v: &[f64]| at_least(v[0] + v[1], 3.0, Fit::FitsWithWork);
        let r = Ranged::assumed(1.5, 1.0, 2.0);
        let could = over(&[r, r], &rule);
        assert_eq!((could.best, could.worst), (Fit::Fits, Fit::FitsWithWork));
    }
}
