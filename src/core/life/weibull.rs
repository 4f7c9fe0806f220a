//! Weibull survival: what share of things lives past an age, and what that says about one that got there.
//!
//! W. Weibull, *A statistical distribution function of wide applicability*, Journal of Applied Mechanics 18,
//! 1951, 293–297 (from memory). Held to scipy's `weibull_min` in `tests/published/lives.rs`.

/// Longest remaining life counted, years.
const LONGEST: u32 = 60;
/// Steps a year of the trapezoids over it.
const STEPS: u32 = 4;

/// Lives that survive an age with the chance `exp(−(age/scale)^shape)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weibull {
    /// Above 1: the older, the likelier to fail.
    pub shape: f64,
    /// Age that a share of 1/e gets past, years.
    pub scale_years: f64,
}

impl Weibull {
    /// `None` unless both are positive and finite.
    pub fn new(shape: f64, scale_years: f64) -> Option<Self> {
        let sound = |v: f64| v > 0.0 && v.is_finite();
        (sound(shape) && sound(scale_years)).then_some(Self { shape, scale_years })
    }

    /// `(age/scale)^shape`: the hazard gathered up to an age. None before the start.
    pub fn gathered(self, age_years: f64) -> f64 {
        if age_years > 0.0 { libm::pow(age_years / self.scale_years, self.shape) } else { 0.0 }
    }

    /// Share that lives past an age.
    pub fn survival(self, age_years: f64) -> f64 {
        libm::exp(-self.gathered(age_years))
    }

    /// Chance that one that has reached an age fails within some years more.
    pub fn fails_within(self, years: f64, age_years: f64) -> f64 {
        let age = if age_years > 0.0 { age_years } else { 0.0 };
        // The difference of exponents, so that very old ones do not divide zero by zero.
        let later = age + if years > 0.0 { years } else { 0.0 };
        1.0 - libm::exp(self.gathered(age) - self.gathered(later))
    }

    /// Years that one of this age may be expected to go on: the integral of its survival over the next
    /// 60 years (trapezoids of a quarter year).
    pub fn expected_left(self, age_years: f64) -> f64 {
        let step = 1.0 / f64::from(STEPS);
        let alive = |t: f64| 1.0 - self.fails_within(t, age_years);
        let inner: f64 = (1..LONGEST * STEPS).map(|i| alive(f64::from(i) * step)).sum();
        step * (0.5 * (alive(0.0) + alive(f64::from(LONGEST))) + inner)
    }

    /// Years left of one of this age that a share `chance` of its like has failed by: the quantile of what is
    /// left, for `chance` from 0 to 1 (1 and beyond: the last that a number can tell apart from it).
    pub fn left_at(self, chance: f64, age_years: f64) -> f64 {
        let age = if age_years > 0.0 { age_years } else { 0.0 };
        let chance = match chance {
            c if c >= 1.0 - f64::EPSILON => 1.0 - f64::EPSILON,
            c if c > 0.0 => c,
            _ => return 0.0,
        };
        let gathered = self.gathered(age) - libm::log1p(-chance);
        let left = self.scale_years * libm::pow(gathered, 1.0 / self.shape) - age;
        if left > 0.0 { left } else { 0.0 }
    }

    /// Mean life of a new one: `scale · Γ(1 + 1/shape)`.
    pub fn mean(self) -> f64 {
        self.scale_years * libm::tgamma(1.0 + 1.0 / self.shape)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const USUAL: Weibull = Weibull { shape: 3.0, scale_years: 14.0 };

    #[test]
    fn expected_life_of_a_new_one_is_the_closed_form() {
        // Trapezoids of a quarter year.
        assert!((USUAL.expected_left(0.0) - USUAL.mean()).abs() < 0.01);
    }

    #[test]
    fn refuses_what_is_no_distribution() {
        for (shape, scale) in [(0.0, 1.0), (1.0, -1.0), (f64::NAN, 1.0), (2.0, f64::INFINITY)] {
            assert_eq!(Weibull::new(shape, scale), None);
        }
    }

    #[test]
    fn nonsense_ages_and_chances_count_as_none() {
        for bad in [f64::NAN, -3.0, f64::NEG_INFINITY] {
            assert_eq!(USUAL.survival(bad), 1.0);
            assert_eq!(USUAL.fails_within(bad, 5.0), 0.0);
            assert_eq!(USUAL.fails_within(1.0, bad), USUAL.fails_within(1.0, 0.0));
            assert_eq!(USUAL.left_at(bad, 5.0), 0.0);
        }
        assert!(USUAL.left_at(1.0, 5.0).is_finite() && USUAL.left_at(7.0, 1e6).is_finite());
    }

    proptest! {
        #[test]
        fn older_ones_fail_sooner(
            age in 0.0..50.0f64, years in 0.1..10.0f64, shape in 1.0..6.0f64, scale in 3.0..30.0f64,
        ) {
            let w = Weibull { shape, scale_years: scale };
            let (a, b) = (w.fails_within(years, age), w.fails_within(years, age + 1.0));
            // Rounding of the exponent's difference.
            prop_assert!(b >= a - 1e-12 && (0.0..=1.0).contains(&a));
            prop_assert!(w.fails_within(years + 1.0, age) >= a);
            prop_assert!(w.expected_left(age + 1.0) <= w.expected_left(age) + 1e-9);
        }

        /// The quantile and the chance undo each other.
        #[test]
        fn quantile_undoes_chance(
            age in 0.0..30.0f64, chance in 0.001..0.999f64, shape in 1.0..6.0f64, scale in 8.0..30.0f64,
        ) {
            let w = Weibull { shape, scale_years: scale };
            let back = w.fails_within(w.left_at(chance, age), age);
            // Rounding: of an age of thirty years and a remaining life of minutes.
            prop_assert!((back - chance).abs() < 1e-9, "{back} {chance}");
        }
    }
}
