//! A response fitted to simulated years: what a candidate's year comes to beside an estimate of it, from the figures that
//! move it.
//!
//! Kriging (Gaussian-process regression; Rasmussen and Williams, "Gaussian Processes for Machine Learning", 2006,
//! chapters 2 and 5): a constant, a linear part and a smooth part over the coordinates of [`super::features`], with noise,
//! since the year of one seed of draws jumps where a peak just starts an element. Width, noise and weight of the smooth part
//! are the likeliest of a small grid. The result is anchored: at the case as it stands it gives what was simulated.
//!
//! It serves what would change the advice, which asks for thousands of years ([`super::study`]); its own error is held in
//! `tests/futures/accuracy.rs`.

use super::features::COUNT;
use crate::core::numeric::cholesky::Cholesky;

/// What is learned of a year.
pub const OUTPUTS: usize = 6;
/// Position of the first of the outputs. They are: logarithm of the energy over its estimate; heating made up and cooling spared, less their
/// estimates, and condensate in the dehumidifier's months, over the heat, kWh and litres a kWh; share of the busiest morning that
/// falls short; share of the electricity that is used at peak hours.
pub const ENERGY: usize = 0;

/// A simulated year: where, and what it came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Sample {
    /// Coordinates.
    pub at: [f64; COUNT],
    /// Outputs.
    pub gave: [f64; OUTPUTS],
}

/// Variance of the linear part over that of the outputs.
const LINEAR: f64 = 0.3;
/// Variance of the constant.
const CONSTANT: f64 = 10.0;
/// Weights of the smooth part, its widths in coordinates, and standard deviations of the noise, tried.
const SMOOTH: [f64; 3] = [0.3, 1.0, 4.0];
const WIDTHS: [f64; 3] = [2.0, 3.0, 5.0];
const NOISE: [f64; 5] = [0.03, 0.08, 0.18, 0.4, 0.8];
/// Years the grid is judged by.
const JUDGED: usize = 64;

/// How the covariance is made.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Shape {
    smooth: f64,
    width: f64,
    noise: f64,
}

/// The fitted response of a candidate.
#[derive(Clone, Debug)]
pub struct Response {
    samples: Vec<[f64; COUNT]>,
    /// Coordinates of the case as it stands: the linear part counts from there.
    origin: [f64; COUNT],
    weights: Vec<[f64; OUTPUTS]>,
    mean: [f64; OUTPUTS],
    shape: Shape,
    /// What was simulated of the case as it stands, and what is added so that the response meets it.
    truth: [f64; OUTPUTS],
    anchor: [f64; OUTPUTS],
}

impl Response {
    /// Fits samples, the first of which is the case as it stands; `truth` is what the whole year gave there, which is met.
    /// `None` for no samples.
    pub fn fit(samples: &[Sample], truth: &[f64; OUTPUTS]) -> Option<Response> {
        let origin = samples.first()?.at;
        let count = samples.len() as f64;
        let mut mean = [0.0; OUTPUTS];
        let mut spread = [0.0; OUTPUTS];
        for k in 0..OUTPUTS {
            mean[k] = samples.iter().map(|s| s.gave[k]).sum::<f64>() / count;
            let variance =
                samples.iter().map(|s| (s.gave[k] - mean[k]) * (s.gave[k] - mean[k])).sum::<f64>() / count;
            spread[k] = if variance > 1e-18 { libm::sqrt(variance) } else { 1.0 };
        }
        let at: Vec<[f64; COUNT]> = samples.iter().map(|s| s.at).collect();
        let energy: Vec<f64> =
            samples.iter().map(|s| (s.gave[ENERGY] - mean[ENERGY]) / spread[ENERGY]).collect();
        let judged = if at.len() < JUDGED { at.len() } else { JUDGED };
        let shape = likeliest(&at[..judged], &energy[..judged], &origin);
        let factor = Cholesky::of(at.len(), covariances(&at, &origin, &shape, true))?;
        let mut weights = vec![[0.0; OUTPUTS]; at.len()];
        for k in 0..OUTPUTS {
            let mut column: Vec<f64> = samples.iter().map(|s| s.gave[k] - mean[k]).collect();
            factor.solve(&mut column);
            for (to, w) in weights.iter_mut().zip(&column) {
                to[k] = *w;
            }
        }
        let mut response =
            Response { samples: at, origin, weights, mean, shape, truth: *truth, anchor: [0.0; OUTPUTS] };
        let there = response.elsewhere(&origin);
        for k in 0..OUTPUTS {
            response.anchor[k] = truth[k] - there[k];
        }
        Some(response)
    }

    /// The outputs at coordinates; those of the case as it stands are what was simulated, to the bit.
    pub fn at(&self, at: &[f64; COUNT]) -> [f64; OUTPUTS] {
        if *at == self.origin { self.truth } else { self.elsewhere(at) }
    }

    fn elsewhere(&self, at: &[f64; COUNT]) -> [f64; OUTPUTS] {
        let mut sum = [0.0; OUTPUTS];
        for (sample, weights) in self.samples.iter().zip(&self.weights) {
            let k = covariance(sample, at, &self.origin, &self.shape);
            for (to, w) in sum.iter_mut().zip(weights) {
                *to += k * w;
            }
        }
        for (to, (mean, anchor)) in sum.iter_mut().zip(self.mean.iter().zip(&self.anchor)) {
            *to += mean + anchor;
        }
        sum
    }
}

/// The likeliest shape of the grid; the first of equals.
fn likeliest(at: &[[f64; COUNT]], y: &[f64], origin: &[f64; COUNT]) -> Shape {
    let mut best = Shape { smooth: SMOOTH[1], width: WIDTHS[1], noise: NOISE[2] };
    let mut most = f64::NEG_INFINITY;
    for smooth in SMOOTH {
        for width in WIDTHS {
            let shape = Shape { smooth, width, noise: 0.0 };
            let plain = covariances(at, origin, &shape, true);
            for noise in NOISE {
                let mut matrix = plain.clone();
                for i in 0..at.len() {
                    matrix[i * at.len() + i] += noise * noise;
                }
                let Some(factor) = Cholesky::of(at.len(), matrix) else { continue };
                let mut weights = y.to_vec();
                factor.solve(&mut weights);
                let fit: f64 = weights.iter().zip(y).map(|(w, y)| w * y).sum();
                let likelihood = -0.5 * (fit + factor.log_determinant());
                if likelihood > most {
                    (most, best) = (likelihood, Shape { noise, ..shape });
                }
            }
        }
    }
    best
}

/// The lower triangle of the covariances, with the noise on the diagonal.
fn covariances(at: &[[f64; COUNT]], origin: &[f64; COUNT], shape: &Shape, noisy: bool) -> Vec<f64> {
    let n = at.len();
    let mut matrix = vec![0.0; n * n];
    for i in 0..n {
        for j in 0..=i {
            matrix[i * n + j] = covariance(&at[i], &at[j], origin, shape);
        }
        if noisy {
            matrix[i * n + i] += shape.noise * shape.noise;
        }
    }
    matrix
}

fn covariance(a: &[f64; COUNT], b: &[f64; COUNT], origin: &[f64; COUNT], shape: &Shape) -> f64 {
    const { assert!(COUNT.is_multiple_of(2), "coordinates are summed in pairs") };
    // Two sums side by side: no order of additions is left to the compiler.
    let (mut apart, mut along) = ([0.0; 2], [0.0; 2]);
    for k in (0..COUNT).step_by(2) {
        for s in 0..2 {
            let (x, y, o) = (a[k + s], b[k + s], origin[k + s]);
            apart[s] += (x - y) * (x - y);
            along[s] += (x - o) * (y - o);
        }
    }
    let apart = (apart[0] + apart[1]) / (shape.width * shape.width);
    CONSTANT + LINEAR * (along[0] + along[1]) + shape.smooth * libm::exp(-0.5 * apart)
}
