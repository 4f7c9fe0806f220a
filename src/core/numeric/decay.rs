//! exp(−x) for the short steps that nearly all are.

/// Below this the series is exact to a few roundings: the term left out is 0.05⁹/9! = 5e-18.
const SERIES_BELOW: f64 = 0.05;
/// Below this the series of a 32nd, squared five times: still exact to some thirty roundings, at a quarter of the library's
/// cost.
const SQUARED_BELOW: f64 = 32.0 * SERIES_BELOW;

/// exp(−x) for x ≥ 0: a Taylor series where it is exact to rounding, the portable library far out.
#[inline(always)]
pub fn decay_factor(x: f64) -> f64 {
    if x < SERIES_BELOW {
        series(x)
    } else if x < SQUARED_BELOW {
        let mut y = series(x * (1.0 / 32.0));
        for _ in 0..5 {
            y *= y;
        }
        y
    } else {
        libm::exp(-x)
    }
}

#[inline(always)]
fn series(x: f64) -> f64 {
    const TERMS: [f64; 7] =
        [1.0 / 2.0, 1.0 / 6.0, 1.0 / 24.0, 1.0 / 120.0, 1.0 / 720.0, 1.0 / 5_040.0, 1.0 / 40_320.0];
    let [b, c, d, e, f, g, h] = TERMS;
    1.0 - x * (1.0 - x * (b - x * (c - x * (d - x * (e - x * (f - x * (g - x * h)))))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The library's exponential is good to one unit in the last place; the series adds one or two, squaring doubles
        /// what is off five times.
        #[test]
        fn it_is_the_exponential(x in 0.0..2.0f64) {
            let near = if x < SERIES_BELOW { 5e-16 } else { 1e-14 };
            prop_assert!((decay_factor(x) / libm::exp(-x) - 1.0).abs() < near, "{x}");
        }
    }

    #[test]
    fn it_starts_at_one_and_ends_at_nothing() {
        assert_eq!(decay_factor(0.0), 1.0);
        assert_eq!(decay_factor(1e6), 0.0);
    }
}
