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
    let mut sums = Sums::of(groups, seed);
    for _ in 0..points {
        sums.add(f);
    }
    sums.shares()
}

/// The sums behind shares, a point at a time: for those who do a little now and a little later.
#[derive(Clone, Debug)]
pub struct Sums {
    groups: Vec<Option<usize>>,
    seed: u32,
    points: u32,
    /// Of each group.
    sums: Vec<(f64, f64)>,
    sum: f64,
    squares: f64,
}

impl Sums {
    /// Of groups and a seed as in [`shares`], without any point yet.
    pub fn of(groups: &[Option<usize>], seed: u32) -> Sums {
        let count = groups.iter().flatten().max().map_or(0, |most| most + 1);
        Sums {
            groups: groups.to_vec(),
            seed,
            points: 0,
            sums: vec![(0.0, 0.0); count],
            sum: 0.0,
            squares: 0.0,
        }
    }

    /// How many points there are.
    pub fn points(&self) -> u32 {
        self.points
    }

    /// Adds the next point: two more calls of `f` than there are groups.
    pub fn add(&mut self, f: &mut dyn FnMut(&[f64]) -> f64) {
        let n = self.groups.len();
        let both = normals(self.points, 2 * n, self.seed);
        let (a, b) = both.split_at(n);
        let (of_a, of_b) = (f(a), f(b));
        self.sum += of_a + of_b;
        self.squares += of_a * of_a + of_b * of_b;
        for (group, (alone, total)) in self.sums.iter_mut().enumerate() {
            let mixed: Vec<f64> = self
                .groups
                .iter()
                .zip(a.iter().zip(b))
                .map(|(g, (a, b))| if *g == Some(group) { *b } else { *a })
                .collect();
            let of_mixed = f(&mixed);
            *alone += of_b * (of_mixed - of_a);
            *total += (of_a - of_mixed) * (of_a - of_mixed);
        }
        self.points += 1;
    }

    /// The shares by the points so far.
    pub fn shares(&self) -> Vec<Share> {
        let all = 2.0 * f64::from(self.points);
        let mean = self.sum / all;
        let variance = self.squares / all - mean * mean;
        // Less than rounding leaves of the squares is no variance.
        if self.points == 0 || variance <= 1e-12 * self.squares / all {
            return vec![Share::default(); self.sums.len()];
        }
        let share = |value: f64| (value / f64::from(self.points) / variance).clamp(0.0, 1.0);
        self.sums
            .iter()
            .map(|(alone, total)| Share { alone: share(*alone), total: share(0.5 * total) })
            .collect()
    }
}
