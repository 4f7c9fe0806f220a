//! Present value and payback, in today's money.

/// Present value of payments: the first entry is paid now, each next one a year later.
///
/// `Σ payments[y] / (1 + rate)^y`; a rate of 0 sums them.
pub fn present_value(payments: &[f64], rate: f64) -> f64 {
    let mut factor = 1.0;
    let mut sum = 0.0;
    for p in payments {
        sum += p * factor;
        factor /= 1.0 + rate;
    }
    sum
}

/// The first time at which a candidate has cost no more than the reference, in years with a straight
/// line inside the year; `None` when that is not within the horizon. Both series are cumulated, the
/// first entry now. A later replacement may put it behind again for a while: that is what the net
/// present cost is for.
pub fn payback_years(candidate: &[f64], reference: &[f64]) -> Option<f64> {
    let behind: Vec<f64> = candidate.iter().zip(reference).map(|(c, r)| c - r).collect();
    let caught_up = behind.iter().position(|b| *b <= 1e-9)?;
    if caught_up == 0 {
        return Some(0.0);
    }
    let (before, after) = (behind[caught_up - 1], behind[caught_up]);
    Some((caught_up - 1) as f64 + before / (before - after))
}

/// Cumulated payments, each discounted to now.
pub fn cumulated(payments: &[f64], rate: f64) -> Vec<f64> {
    let mut factor = 1.0;
    let mut sum = 0.0;
    payments
        .iter()
        .map(|p| {
            sum += p * factor;
            factor /= 1.0 + rate;
            sum
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The closed form of a growing annuity: `c·(1 − ((1+g)/(1+d))^n) / (d − g)`.
    #[test]
    fn growing_annuity() {
        let (c, g, d, n): (f64, f64, f64, i32) = (100.0, 0.01, 0.03, 15);
        let payments: Vec<f64> =
            std::iter::once(0.0).chain((0..n).map(|y| c * libm::pow(1.0 + g, f64::from(y)))).collect();
        let closed = c * (1.0 - libm::pow((1.0 + g) / (1.0 + d), f64::from(n))) / (d - g);
        assert!((present_value(&payments, d) - closed).abs() < 1e-9 * closed);
    }

    #[test]
    fn payback_of_a_straight_saving() {
        let dear: Vec<f64> = (0..=10).map(|y| 1_000.0 + 50.0 * f64::from(y)).collect();
        let cheap: Vec<f64> = (0..=10).map(|y| 200.0 * f64::from(y)).collect();
        let years = payback_years(&dear, &cheap).expect("pays back");
        assert!((years - 1_000.0 / 150.0).abs() < 1e-9);
        assert_eq!(payback_years(&cheap, &cheap), Some(0.0));
        assert_eq!(payback_years(&[1.0, 2.0], &[0.0, 0.0]), None);
    }

    proptest! {
        #[test]
        fn a_higher_rate_never_raises_the_value_of_costs(
            payments in prop::collection::vec(0.0..1e5f64, 1..40),
            rate in 0.0..0.2f64,
        ) {
            prop_assert!(present_value(&payments, rate + 0.01) <= present_value(&payments, rate) + 1e-9);
            let sums = cumulated(&payments, rate);
            let last = sums.last().copied().unwrap_or(0.0);
            prop_assert!((last - present_value(&payments, rate)).abs() <= 1e-9 * (1.0 + last));
        }
    }
}
