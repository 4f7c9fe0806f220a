//! exp(−x) for the short steps that nearly all are.

/// Below this the series is exact to a few roundings: the term left out is 0.05⁹/9! = 5e-18.
const SERIES_BELOW: f64 = 0.05;

/// exp(−x) for x ≥ 0: a Taylor series where it is exact to rounding, the portable library elsewhere.
#[inline(always)]
pub fn decay_factor(x: f64) -> f64 {
    const fn over(n: f64) -> f64 {
        1.0 / n
    }
    if x < SERIES_BELOW {
        let tail = over(120.0) - x * (over(720.0) - x * (over(5_040.0) - x * over(40_320.0)));
        1.0 - x * (1.0 - x * (over(2.0) - x * (over(6.0) - x * (over(24.0) - x * tail))))
    } else {
        libm::exp(-x)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The library's exponential is good to one unit in the last place; the series adds one or two.
        #[test]
        fn it_is_the_exponential(x in 0.0..0.2f64) {
            prop_assert!((decay_factor(x) / libm::exp(-x) - 1.0).abs() < 5e-16, "{x}");
        }
    }

    #[test]
    fn it_starts_at_one_and_ends_at_nothing() {
        assert_eq!(decay_factor(0.0), 1.0);
        assert_eq!(decay_factor(1e6), 0.0);
    }
}
