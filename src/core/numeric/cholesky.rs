//! Symmetric positive definite systems by Cholesky's factorisation. Own code, because libraries pick fused or vector
//! instructions by the machine, and results must be the same to the bit everywhere.

/// A factor L with L·Lᵀ = A, lower triangle, row by row.
#[derive(Clone, Debug)]
pub struct Cholesky {
    n: usize,
    l: Vec<f64>,
}

impl Cholesky {
    /// Factors a matrix of n rows given row by row; only its lower triangle is read. `None` where it is not
    /// positive definite in this arithmetic.
    pub fn of(n: usize, mut a: Vec<f64>) -> Option<Cholesky> {
        if a.len() != n * n {
            return None;
        }
        for i in 0..n {
            let (above, row) = a.split_at_mut(i * n);
            let row = &mut row[..n];
            for j in 0..i {
                let other = &above[j * n..=j * n + j];
                let sum = dot(&row[..j], &other[..j]);
                row[j] = (row[j] - sum) / other[j];
            }
            let left = row[i] - dot(&row[..i], &row[..i]);
            if left.is_nan() || left <= 0.0 {
                return None;
            }
            row[i] = libm::sqrt(left);
        }
        Some(Cholesky { n, l: a })
    }

    /// Solves A·x = b in place.
    pub fn solve(&self, b: &mut [f64]) {
        let n = self.n;
        for i in 0..n {
            let row = &self.l[i * n..=i * n + i];
            b[i] = (b[i] - dot(&row[..i], &b[..i])) / row[i];
        }
        for i in (0..n).rev() {
            let row = &self.l[i * n..=i * n + i];
            b[i] /= row[i];
            let x = b[i];
            for (to, l) in b[..i].iter_mut().zip(row) {
                *to -= l * x;
            }
        }
    }

    /// The logarithm of A's determinant.
    pub fn log_determinant(&self) -> f64 {
        (0..self.n).map(|i| 2.0 * libm::log(self.l[i * self.n + i])).sum()
    }
}

/// Four sums side by side: no order of additions is left to the compiler.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (a4, b4) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest: f64 = a4.remainder().iter().zip(b4.remainder()).map(|(x, y)| x * y).sum();
    for (x, y) in a4.zip(b4) {
        for k in 0..4 {
            sums[k] += x[k] * y[k];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn by_hand() {
        // [[4, 2], [2, 3]]: determinant 8, inverse [[3, -2], [-2, 4]] / 8.
        let c = Cholesky::of(2, vec![4.0, 2.0, 2.0, 3.0]).expect("positive definite");
        assert!((c.log_determinant() - libm::log(8.0)).abs() < 1e-14);
        let mut b = [1.0, 2.0];
        c.solve(&mut b);
        assert!((b[0] + 0.125).abs() < 1e-15 && (b[1] - 0.75).abs() < 1e-15, "{b:?}");
        assert!(Cholesky::of(2, vec![1.0, 2.0, 2.0, 1.0]).is_none());
        assert!(Cholesky::of(2, vec![1.0]).is_none());
    }

    proptest! {
        /// Any M·Mᵀ + I: the solution solves it, to rounding.
        #[test]
        fn solutions_solve(n in 1..12usize, numbers in prop::collection::vec(-2.0..2.0f64, 156)) {
            let m = |i: usize, j: usize| numbers[i * 12 + j];
            let a = |i: usize, j: usize| {
                (0..n).map(|k| m(i, k) * m(j, k)).sum::<f64>() + if i == j { 1.0 } else { 0.0 }
            };
            let matrix = (0..n * n).map(|k| a(k / n, k % n)).collect();
            let b: Vec<f64> = numbers[144..144 + n].to_vec();
            let mut x = b.clone();
            let c = Cholesky::of(n, matrix).expect("positive definite");
            c.solve(&mut x);
            for (i, b) in b.iter().enumerate() {
                let back: f64 = (0..n).map(|j| a(i, j) * x[j]).sum();
                prop_assert!((back - b).abs() < 1e-10);
            }
        }
    }
}
