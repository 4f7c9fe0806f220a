//! A root of one function of one variable, kept inside a bracket at all times.
use thiserror::Error;

/// What was found, and how.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Root {
    /// The best estimate of the root.
    pub x: f64,
    /// The final bracket: the sign change lies within it (both ends are `x` for an exact zero).
    pub bracket: (f64, f64),
    /// How often the function was called, ends included.
    pub evaluations: u32,
    /// Whether the asked tolerance was reached.
    pub status: RootStatus,
}

/// How the search ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RootStatus {
    /// The root lies within the tolerance of [`Root::x`], or the function was exactly zero there.
    Converged,
    /// The allowed evaluations ran out, or the bracket can shrink no further in this arithmetic;
    /// [`Root::bracket`] is still true.
    EvaluationLimit,
}

/// Why no search was possible.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum RootError {
    /// The function has the same sign at both ends, so that no root is certain between them.
    #[error("no sign change between {low} and {high}: the function is {f_low} and {f_high} there")]
    NotBracketed {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
        /// Function at the lower end.
        f_low: f64,
        /// Function at the upper end.
        f_high: f64,
    },
    /// An end or the tolerance is not a usable number (`low` < `high`, tolerance > 0, all finite).
    #[error("the search needs finite ends in order and a tolerance above 0, got {low}, {high}, {tolerance}")]
    BadBracket {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
        /// Tolerance in x.
        tolerance: f64,
    },
    /// The function gave NaN.
    #[error("the function is not a number at {x}")]
    NotANumber {
        /// Where.
        x: f64,
    },
}

/// Finds where `f` changes sign between `low` and `high`, to within ± `tolerance` in x.
///
/// **Algorithm.** Interpolate, truncate, project (ITP) with κ₁ = 0.2/(high − low), κ₂ = 2, n₀ = 1:
/// I. F. D. Oliveira and R. H. C. Takahashi, "An Enhancement of the Bisection Method Average
/// Performance Preserving Minmax Optimality", ACM Trans. Math. Softw. 47 (2021), article 5.
///
/// **Convergence.** Superlinear for smooth functions. Never more than two evaluations
/// worse than bisection (one by the method, one by rounding): at most
/// ⌈log₂((high − low) / 2·tolerance)⌉ + 2 inside the bracket, plus the two ends. A jump
/// through zero counts as a root.
///
/// # Errors
/// [`RootError`] when the ends do not bracket a sign change or the input is not numbers.
pub fn root_in_bracket(
    mut f: impl FnMut(f64) -> f64,
    low: f64,
    high: f64,
    tolerance: f64,
    max_evaluations: u32,
) -> Result<Root, RootError> {
    let usable =
        low.is_finite() && high.is_finite() && tolerance.is_finite() && low < high && tolerance > 0.0;
    if !usable {
        return Err(RootError::BadBracket { low, high, tolerance });
    }
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (finite_or(f(a), a)?, finite_or(f(b), b)?);
    let mut evaluations = 2;
    let exact = |x: f64, evaluations| Root { x, bracket: (x, x), evaluations, status: RootStatus::Converged };
    if fa == 0.0 {
        return Ok(exact(a, evaluations));
    }
    if fb == 0.0 {
        return Ok(exact(b, evaluations));
    }
    if (fa > 0.0) == (fb > 0.0) {
        return Err(RootError::NotBracketed { low, high, f_low: fa, f_high: fb });
    }
    let rising = fb > 0.0;
    let kappa = 0.2 / (b - a);
    // The widest half-bracket still allowed: it starts one doubling (n₀ = 1) above the present one, as
    // a power of two times the tolerance, and halves at each step.
    let mut allowed = tolerance;
    while allowed < 0.5 * (b - a) {
        allowed *= 2.0;
    }
    allowed *= 2.0;
    while b - a > 2.0 * tolerance && evaluations < max_evaluations {
        let half = 0.5 * (a + b);
        if half <= a || half >= b {
            break;
        }
        let radius = allowed - 0.5 * (b - a);
        // Interpolate (regula falsi), truncate towards the middle, project into the radius.
        let falsi = (fb * a - fa * b) / (fb - fa);
        let towards = if half >= falsi { 1.0 } else { -1.0 };
        let nudge = kappa * (b - a) * (b - a);
        let truncated = if nudge <= (half - falsi).abs() { falsi + towards * nudge } else { half };
        let x = if (truncated - half).abs() <= radius { truncated } else { half - towards * radius };
        // Overflowing function values can spoil the interpolation: fall back to the middle.
        let x = if x > a && x < b { x } else { half };
        let fx = finite_or(f(x), x)?;
        evaluations += 1;
        if fx == 0.0 {
            return Ok(exact(x, evaluations));
        }
        if (fx > 0.0) == rising {
            (b, fb) = (x, fx);
        } else {
            (a, fa) = (x, fx);
        }
        allowed *= 0.5;
    }
    let status = if b - a > 2.0 * tolerance { RootStatus::EvaluationLimit } else { RootStatus::Converged };
    Ok(Root { x: 0.5 * (a + b), bracket: (a, b), evaluations, status })
}

fn finite_or(value: f64, x: f64) -> Result<f64, RootError> {
    if value.is_nan() { Err(RootError::NotANumber { x }) } else { Ok(value) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn known_roots_are_met() {
        let cubic = root_in_bracket(|x| x * x * x - 2.0, 0.0, 2.0, 1e-12, 100).unwrap();
        assert_eq!(cubic.status, RootStatus::Converged);
        assert!((cubic.x - libm::cbrt(2.0)).abs() <= 1e-12);
        let kepler = root_in_bracket(|x| libm::cos(x) - x, 0.0, 1.0, 1e-13, 100).unwrap();
        assert!((kepler.x - 0.739_085_133_215_160_6).abs() <= 1e-13);
        assert!(kepler.evaluations < 20, "a smooth function took {} evaluations", kepler.evaluations);
    }

    #[test]
    fn a_jump_and_an_end_count_as_roots() {
        let jump = root_in_bracket(|x| if x < 0.3 { -1.0 } else { 2.0 }, 0.0, 1.0, 1e-9, 100).unwrap();
        assert!((jump.x - 0.3).abs() <= 1e-9);
        let end = root_in_bracket(|x| x, 0.0, 1.0, 1e-9, 100).unwrap();
        assert_eq!((end.x, end.evaluations), (0.0, 2));
    }

    #[test]
    fn unusable_input_is_refused_and_limits_are_told() {
        assert!(matches!(root_in_bracket(|_| 1.0, 0.0, 1.0, 1e-9, 9), Err(RootError::NotBracketed { .. })));
        assert!(matches!(root_in_bracket(|x| x, 1.0, 0.0, 1e-9, 9), Err(RootError::BadBracket { .. })));
        assert!(matches!(root_in_bracket(|x| x, -1.0, f64::NAN, 1e-9, 9), Err(RootError::BadBracket { .. })));
        assert!(matches!(
            root_in_bracket(|_| f64::NAN, 0.0, 1.0, 1e-9, 9),
            Err(RootError::NotANumber { .. })
        ));
        let cut = root_in_bracket(|x| x * x * x - 2.0, 0.0, 2.0, 1e-12, 4).unwrap();
        assert_eq!(cut.status, RootStatus::EvaluationLimit);
        assert!(cut.bracket.0 < libm::cbrt(2.0) && libm::cbrt(2.0) < cut.bracket.1);
    }

    proptest! {
        #[test]
        fn any_steep_or_flat_cubic_converges_within_the_stated_count(
            root in -50.0..50.0f64, stretch in -6.0..6.0f64, left in 0.01..60.0f64, right in 0.01..60.0f64,
        ) {
            let scale = libm::exp(stretch);
            let f = |x: f64| scale * (x - root) * ((x - root) * (x - root) + 1e-3);
            let found = root_in_bracket(f, root - left, root + right, 1e-10, 200).unwrap();
            prop_assert_eq!(found.status, RootStatus::Converged);
            prop_assert!((found.x - root).abs() <= 1.1e-10);
            let bisection = libm::ceil(libm::log2((left + right) / 2e-10)) as u32;
            prop_assert!(found.evaluations <= bisection + 2 + 2);
        }
    }
}
