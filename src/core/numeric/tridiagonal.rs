//! Solves a tridiagonal set of linear equations in place (conduction between the layers of a tank).
use thiserror::Error;

/// Why the equations could not be solved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum TridiagonalError {
    /// The slices differ in length; nothing was changed.
    #[error("the slices of a tridiagonal solve must be equally long")]
    Lengths,
    /// A pivot is zero or not a number in this row: the matrix is singular, or needs the row exchanges
    /// that this method does not make. The right side then holds intermediate values.
    #[error("row {row} of the tridiagonal equations has no usable pivot")]
    Pivot {
        /// The row, from 0.
        row: usize,
    },
}

/// Solves `lower[i]·x[i−1] + diagonal[i]·x[i] + upper[i]·x[i+1] = right[i]`; the solution replaces `right`.
///
/// `lower[0]` and the last `upper` are ignored. `scratch` is overwritten. All slices have the same
/// length; an empty set is solved. The Thomas algorithm (Gaussian elimination without row exchange): exact
/// to rounding and stable for diagonally dominant rows, as every implicit conduction step gives
/// (S. D. Conte and C. de Boor, *Elementary Numerical Analysis*, 3rd ed. 1980, section 4.2, from memory).
///
/// # Errors
/// [`TridiagonalError`] for slices of different length or a zero pivot.
pub fn solve_tridiagonal(
    lower: &[f64],
    diagonal: &[f64],
    upper: &[f64],
    right: &mut [f64],
    scratch: &mut [f64],
) -> Result<(), TridiagonalError> {
    let n = diagonal.len();
    if lower.len() != n || upper.len() != n || right.len() != n || scratch.len() != n {
        return Err(TridiagonalError::Lengths);
    }
    let (mut previous_ratio, mut previous) = (0.0, 0.0);
    for row in 0..n {
        let below = if row == 0 { 0.0 } else { lower[row] };
        let pivot = diagonal[row] - below * previous_ratio;
        if pivot == 0.0 || pivot.is_nan() {
            return Err(TridiagonalError::Pivot { row });
        }
        previous_ratio = upper[row] / pivot;
        previous = (right[row] - below * previous) / pivot;
        scratch[row] = previous_ratio;
        right[row] = previous;
    }
    let mut next = 0.0;
    for (row, value) in right.iter_mut().enumerate().rev() {
        if row + 1 < n {
            *value -= scratch[row] * next;
        }
        next = *value;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_discrete_poisson_problem_gives_its_parabola() {
        // −x[i−1] + 2x[i] − x[i+1] = 1 with zero beyond both ends: x[i] = (i+1)(n−i)/2 exactly.
        const N: usize = 12;
        let (mut right, mut scratch) = ([1.0; N], [0.0; N]);
        solve_tridiagonal(&[-1.0; N], &[2.0; N], &[-1.0; N], &mut right, &mut scratch).unwrap();
        for (i, x) in right.iter().enumerate() {
            let exact = (i as f64 + 1.0) * (N - i) as f64 / 2.0;
            assert!((x - exact).abs() < 1e-12 * exact, "{i}: {x} {exact}");
        }
    }

    #[test]
    fn short_and_unsolvable_sets_are_told() {
        let mut right = [6.0];
        solve_tridiagonal(&[9.0], &[2.0], &[9.0], &mut right, &mut [0.0]).unwrap();
        assert_eq!(right, [3.0]);
        assert_eq!(solve_tridiagonal(&[], &[], &[], &mut [], &mut []), Ok(()));
        assert_eq!(
            solve_tridiagonal(&[1.0], &[1.0, 1.0], &[1.0], &mut [1.0], &mut [1.0]),
            Err(TridiagonalError::Lengths)
        );
        assert_eq!(
            solve_tridiagonal(&[0.0, 1.0], &[1.0, 1.0], &[1.0, 0.0], &mut [1.0, 1.0], &mut [0.0, 0.0]),
            Err(TridiagonalError::Pivot { row: 1 })
        );
    }

    proptest! {
        #[test]
        fn the_solution_satisfies_any_dominant_set(
            rows in proptest::collection::vec((-1.0..1.0f64, 0.01..3.0f64, -1.0..1.0f64, -100.0..100.0f64), 1..40),
        ) {
            let n = rows.len();
            let lower: Vec<f64> = rows.iter().map(|r| r.0).collect();
            let upper: Vec<f64> = rows.iter().map(|r| r.2).collect();
            let diagonal: Vec<f64> = rows.iter().map(|r| r.0.abs() + r.1 + r.2.abs()).collect();
            let right: Vec<f64> = rows.iter().map(|r| r.3).collect();
            let (mut x, mut scratch) = (right.clone(), vec![0.0; n]);
            solve_tridiagonal(&lower, &diagonal, &upper, &mut x, &mut scratch).unwrap();
            for i in 0..n {
                let before = if i > 0 { lower[i] * x[i - 1] } else { 0.0 };
                let after = if i + 1 < n { upper[i] * x[i + 1] } else { 0.0 };
                let scale = 1.0 + x.iter().fold(0.0f64, |m, v| m.max(v.abs()));
                prop_assert!((before + diagonal[i] * x[i] + after - right[i]).abs() < 1e-12 * scale);
            }
        }
    }
}
