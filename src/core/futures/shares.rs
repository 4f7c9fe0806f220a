//! Shares of variance: how much of a figure's spread each input makes, alone and with all its interactions.
//!
//! Sobol's indices by the estimators of Saltelli et al. (Computer Physics Communications 181, 2010, table 2): for the first
//! order (b), for the total order (f), which is Jansen's of 1999. Points are two halves of scrambled Sobol points.

use super::points::normals;

/// Shares of one input.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Share {
    /// Alone, 0 to 1.
    pub alone: f64,
    /// With all its interactions, 0 to 1.
    pub total: f64,
}

/// Shares of each group of inputs of `f`, which takes standard normal numbers; `groups` names each input's group, from 0 on,
/// or `None` where it does nothing. Zeros where nothing varies.
pub fn shares(
    f: &mut dyn FnMut(&[f64]) -> f64,
    groups: &[Option<usize>],
    points: u32,
    seed: u32,
) -> Vec<Share> {
    let n = groups.len();
    let count = groups.iter().flatten().max().map_or(0, |most| most + 1);
    let mut sums = vec![(0.0, 0.0); count];
    let (mut sum, mut squares) = (0.0, 0.0);
    for index in 0..points {
        let both = normals(index, 2 * n, seed);
        let (a, b) = both.split_at(n);
        let (of_a, of_b) = (f(a), f(b));
        sum += of_a + of_b;
        squares += of_a * of_a + of_b * of_b;
        for (group, (alone, total)) in sums.iter_mut().enumerate() {
            let mixed: Vec<f64> = groups
                .iter()
                .zip(a.iter().zip(b))
                .map(|(g, (a, b))| if *g == Some(group) { *b } else { *a })
                .collect();
            let of_mixed = f(&mixed);
            *alone += of_b * (of_mixed - of_a);
            *total += (of_a - of_mixed) * (of_a - of_mixed);
        }
    }
    let all = 2.0 * f64::from(points);
    let mean = sum / all;
    let variance = squares / all - mean * mean;
    // Less than rounding leaves of the squares is no variance.
    if points == 0 || variance <= 1e-12 * squares / all {
        return vec![Share::default(); count];
    }
    let share = |value: f64| (value / f64::from(points) / variance).clamp(0.0, 1.0);
    sums.into_iter().map(|(alone, total)| Share { alone: share(alone), total: share(0.5 * total) }).collect()
}
