//! The two searches of the calibration: for the first-hour rating and for the uniform energy factor.

use super::class::{self, Build};
use super::first_hour::first_hour_rating_m3;
use super::patterns::Pattern;
use super::simulated_use::simulated_use;
use crate::core::candidates::Label;
use crate::core::heater::{Model, Source};
use crate::core::numeric::root_in_bracket;
use crate::core::units::GALLON_M3;

/// Standby conductance looked for, as multiples of the class's usual: from a thick jacket of foam to a thin one
/// of old wool, or an open flue.
const STANDBY: (f64, f64) = (0.3, 5.0);
/// A factor this close is met.
const CLOSE_FACTOR: f64 = 0.0005;
/// A first hour this close is met, m³.
const CLOSE_M3: f64 = 0.05 * GALLON_M3;
/// Beyond this the search looks elsewhere, m³: it has ended at a jump, where one more draw fits into the hour.
const TOO_FAR_M3: f64 = 0.4 * GALLON_M3;
/// Shares stirred that are tried: what dip tubes usually do, and what is rare.
const STIRS: &[f64] = &[0.13, 0.17, 0.21, 0.26];
const MORE_STIRS: &[f64] = &[0.13, 0.11, 0.09];
const RARE_STIRS: &[f64] = &[0.26, 0.30, 0.36, 0.42, 0.50, 0.58];
/// An inlet that stirs most of the tank: a dip tube that is short or broken. The lowest ratings that a label of such a size
/// and input can carry.
const BROKEN_STIRS: &[f64] = &[0.42, 0.50, 0.58, 0.66, 0.74, 0.82];
/// Little stirring: thermoclines finer than the year's layers, taken only where nothing else will do.
const STILL: &[f64] = &[0.10, 0.08, 0.06];
/// Water held, off the class's usual share.
const HELD: &[f64] = &[-0.06, -0.02, 0.02, 0.035, 0.065, 0.08];
/// Heights of the upper element: how much of the tank it has to heat before the next draw may begin.
const LOWER_HEIGHTS: &[f64] = &[0.70, 0.66, 0.62, 0.58, 0.54, 0.50, 0.46, 0.42];
const HIGHER_HEIGHTS: &[f64] = &[0.70, 0.75, 0.80];
/// Outputs of a heat pump alone, as multiples of the class's: no label says them.
const OUTPUTS: &[f64] = &[1.0, 1.2, 1.4];

/// What the search for a first hour found.
#[derive(Clone, Debug)]
pub(super) struct FirstHourFit {
    /// The heater.
    pub model: Model,
    /// Its first-hour rating, m³.
    pub first_hour_m3: f64,
    /// The lowest and the highest that were met on the way, m³.
    pub range_m3: (f64, f64),
    /// The nearest that were met below and above what was wanted, m³.
    pub beside_m3: (f64, f64),
}

/// Fits the build to a first-hour rating.
///
/// The rating is a sum of whole draws, but the procedure's own scaling of the last one makes it continuous along
/// nearly all of a build's path, with maxima between: so neighbours that bracket the rating are looked for
/// from the likeliest build on, and a bracketed search goes in between them.
pub(super) fn fit_first_hour(label: &Label, like: &Model, first_hour_m3: f64) -> FirstHourFit {
    let mut search = FirstHourSearch {
        label,
        like,
        wanted_m3: first_hour_m3,
        best: None,
        range_m3: (f64::MAX, 0.0),
        beside_m3: (0.0, f64::MAX),
    };
    let usual = Build::usual(label.kind);
    let held = |by: f64| Build { held_share: usual.held_share + by, ..usual };
    let stirred = |build: Build| move |inlet_stir: f64| Build { inlet_stir, ..build };
    let raised = |build: Build| move |upper_height: f64| Build { upper_height, ..build };
    let stronger = |build: Build| move |output: f64| Build { output, ..build };
    let elements = match &like.source {
        Source::Elements(_) | Source::HeatPump { backup: Some(_), .. } => true,
        Source::HeatPump { .. } | Source::Burner(_) => false,
    };
    let alone = like.pump().is_some() && !elements;
    // Each path is tried only where those before it have not met the rating. A heat pump's elements are left where
    // they are as long as possible: where they heat more of the tank, they take its work.
    let heights = |s: &mut FirstHourSearch| {
        s.along(&raised(usual), LOWER_HEIGHTS) || s.along(&raised(usual), HIGHER_HEIGHTS)
    };
    let plain = elements && like.pump().is_none();
    let met = search.along(&stirred(usual), STIRS)
        || plain && heights(&mut search)
        || search.along(&stirred(held(0.05)), STIRS)
        || search.along(&stirred(held(-0.04)), STIRS)
        || search.along(&stirred(usual), MORE_STIRS)
        || alone && search.along(&stronger(held(0.05)), OUTPUTS)
        || search.along(&stirred(usual), STILL)
        || search.along(&stirred(usual), RARE_STIRS)
        || search.along(&stirred(held(0.08)), STILL)
        || HELD.iter().any(|by| search.along(&stirred(held(*by)), STIRS))
        || search.along(&stirred(held(-0.05)), RARE_STIRS);
    if !met {
        let low = |upper_height: f64| Build { upper_height, ..usual };
        let _ = elements
            && (!plain && heights(&mut search) || search.along(&raised(held(-0.04)), LOWER_HEIGHTS))
            || search.along(&stirred(usual), BROKEN_STIRS)
            || plain
                && (search.along(&stirred(low(0.46)), BROKEN_STIRS)
                    || search.along(&stirred(low(0.54)), BROKEN_STIRS)
                    || search.along(&stirred(low(0.62)), BROKEN_STIRS))
            || search.along(&stirred(held(0.03)), RARE_STIRS)
            || search.along(&stirred(held(0.05)), BROKEN_STIRS)
            || search.along(&stirred(held(-0.05)), BROKEN_STIRS)
            || [-0.03, 0.03].iter().any(|by| search.along(&stirred(held(*by)), STILL));
    }
    let (model, first_hour_m3) = search.best.unwrap_or_else(|| (like.clone(), 0.0));
    FirstHourFit { model, first_hour_m3, range_m3: search.range_m3, beside_m3: search.beside_m3 }
}

struct FirstHourSearch<'a> {
    label: &'a Label,
    /// The heater whose standby and effectiveness are taken over.
    like: &'a Model,
    wanted_m3: f64,
    best: Option<(Model, f64)>,
    range_m3: (f64, f64),
    beside_m3: (f64, f64),
}

impl FirstHourSearch<'_> {
    /// Goes along a path of builds; whether the rating was met.
    fn along(&mut self, path: &dyn Fn(f64) -> Build, points: &[f64]) -> bool {
        let mut last: Option<(f64, f64)> = None;
        for &at in points {
            let off = self.off(&path(at));
            if off == 0.0 {
                return true;
            }
            if let Some((last_at, last_off)) = last
                && (last_off > 0.0) != (off > 0.0)
                && self.between(path, last_at, at)
            {
                return true;
            }
            last = Some((at, off));
        }
        false
    }

    fn between(&mut self, path: &dyn Fn(f64) -> Build, a: f64, b: f64) -> bool {
        let (low, high) = if a < b { (a, b) } else { (b, a) };
        // The bracket is sure; how it ends is seen by the best that was met.
        let _ = root_in_bracket(|at| self.off(&path(at)), low, high, 1e-4, 16);
        self.best.as_ref().is_some_and(|(_, m3)| (m3 - self.wanted_m3).abs() < TOO_FAR_M3)
    }

    /// How far a build is off, m³; 0 when close enough.
    fn off(&mut self, build: &Build) -> f64 {
        let mut model = class::model(self.label, build, self.like.setpoint_c);
        take_over(&mut model, self.like);
        let m3 = first_hour_rating_m3(&model);
        if m3 < self.range_m3.0 {
            self.range_m3.0 = m3;
        }
        if m3 > self.range_m3.1 {
            self.range_m3.1 = m3;
        }
        let off = m3 - self.wanted_m3;
        if off < 0.0 && m3 > self.beside_m3.0 {
            self.beside_m3.0 = m3;
        }
        if off > 0.0 && m3 < self.beside_m3.1 {
            self.beside_m3.1 = m3;
        }
        if self.best.as_ref().is_none_or(|(_, best)| off.abs() < (best - self.wanted_m3).abs()) {
            self.best = Some((model, m3));
        }
        if off.abs() < CLOSE_M3 { 0.0 } else { off }
    }
}

/// Takes over what the other search has found.
fn take_over(model: &mut Model, like: &Model) {
    match (&mut model.source, &like.source) {
        (Source::HeatPump { pump, .. }, Source::HeatPump { pump: found, .. }) => {
            class::set_poorness(pump, class::poorness(found));
        }
        _ => model.standby_w_per_k = like.standby_w_per_k,
    }
}

/// What the search for a factor found.
#[derive(Clone, Debug)]
pub(super) struct FactorFit {
    /// The heater.
    pub model: Model,
    /// What such a heater reaches; worked out only when the factor is beyond that.
    pub range: Option<(f64, f64)>,
}

/// Fits standby or effectiveness to the label's uniform energy factor, which `pattern` is to score.
///
/// The inverse of the factor is all but straight in the standby conductance, and not far from it in a heat pump's
/// poorness: one step along the straight line from where the heater is lands beside the root, a second one
/// past it brackets it, and a bracketed search does the rest.
pub(super) fn fit_factor(label: &Label, model: &Model, pattern: Pattern) -> FactorFit {
    let factor = label.uniform_energy_factor;
    let (low, high) = if model.pump().is_some() {
        (0.0, class::POOREST)
    } else {
        let usual = class::standby_w_per_k(label.kind, model.volume_m3);
        (STANDBY.0 * usual, STANDBY.1 * usual)
    };
    let mut tried = model.clone();
    let mut best = (f64::MAX, model.clone());
    // Energy used for heat delivered, more than wanted: grows with what is looked for.
    let mut excess = |x: f64| {
        set_loss(&mut tried, x);
        let scored = simulated_use(&tried, pattern).uniform_energy_factor;
        let off = (scored - factor).abs();
        if off < best.0 {
            best = (off, tried.clone());
        }
        if off < CLOSE_FACTOR { 0.0 } else { 1.0 / scored - 1.0 / factor }
    };
    let within = |x: f64| {
        if x < low {
            low
        } else if x > high {
            high
        } else {
            x
        }
    };
    let start = within(loss(model));
    let at_start = excess(start);
    // At no standby loss only the source's own efficiency is left.
    let used = at_start + 1.0 / factor;
    let slope = match &model.source {
        Source::Burner(b) => (used - 1.0 / b.recovery) / start,
        Source::Elements(_) => (used - 1.0) / start,
        Source::HeatPump { .. } => class::POORNESS_COSTS,
    };
    let straight = if slope > 0.0 { start - at_start / slope } else { start };
    let mut range = None;
    if at_start != 0.0 {
        let near = within(straight);
        let beside = near + 0.2 * (near - start);
        let mut last = (start, at_start);
        for x in [near, within(beside), if at_start > 0.0 { low } else { high }] {
            let at = excess(x);
            if at == 0.0 {
                break;
            }
            if (at > 0.0) != (last.1 > 0.0) {
                let (a, b) = if x < last.0 { (x, last.0) } else { (last.0, x) };
                // The bracket is sure; the best that was met is kept.
                let _ = root_in_bracket(&mut excess, a, b, 1e-5 * (high - low), 24);
                break;
            }
            last = (x, at);
            if x == low || x == high {
                let reached = |at: f64| 1.0 / (at + 1.0 / factor);
                let other = if x == low { high } else { low };
                let (one, two) = (reached(at), reached(excess(other)));
                range = Some(if one < two { (one, two) } else { (two, one) });
                break;
            }
        }
    }
    FactorFit { model: best.1, range }
}

/// What the factor sets: standby conductance, W/K, or how poor the heat pump is.
fn loss(model: &Model) -> f64 {
    model.pump().map_or(model.standby_w_per_k, class::poorness)
}

fn set_loss(model: &mut Model, x: f64) {
    match &mut model.source {
        Source::HeatPump { pump, .. } => class::set_poorness(pump, x),
        Source::Elements(_) | Source::Burner(_) => model.standby_w_per_k = x,
    }
}
