//! The figures of a heater's label and nameplate, as data.

use super::{CaseError, MOST_DOLLARS, Trouble, units_like, within};
use crate::core::units::{Quantity, Unit};

/// A figure of an offered heater. Only ever appended to: links carry the position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Figure {
    /// Nominal volume.
    Volume,
    /// Uniform energy factor.
    Factor,
    /// First-hour rating.
    FirstHour,
    /// Each element, or the burner's input.
    Input,
    /// Supply voltage.
    Volts,
    /// Breaker it asks for.
    Breaker,
    /// Height.
    Height,
    /// Diameter, or the larger side.
    Diameter,
    /// Weight empty.
    Weight,
    /// Installed price.
    Price,
}

impl Figure {
    /// Every figure, in the order of a label; a figure's place here is its number.
    pub const ALL: [Figure; 10] = [
        Figure::Volume,
        Figure::Factor,
        Figure::FirstHour,
        Figure::Input,
        Figure::Volts,
        Figure::Breaker,
        Figure::Height,
        Figure::Diameter,
        Figure::Weight,
        Figure::Price,
    ];

    /// Code, smallest and largest in the US unit, the units of either system.
    const fn entry(self) -> (&'static str, f64, f64, Unit, Unit) {
        match self {
            Figure::Volume => ("volume", 15.0, 120.0, Unit::Gallon, Unit::Litre),
            Figure::Factor => ("factor", 0.3, 6.0, Unit::One, Unit::One),
            Figure::FirstHour => ("first_hour", 10.0, 250.0, Unit::Gallon, Unit::Litre),
            // 0: no element of its own.
            Figure::Input => ("input", 0.0, 60_000.0, Unit::Watt, Unit::Watt),
            Figure::Volts => ("volts", 90.0, 480.0, Unit::Volt, Unit::Volt),
            Figure::Breaker => ("breaker", 0.0, 100.0, Unit::Ampere, Unit::Ampere),
            Figure::Height => ("height", 20.0, 100.0, Unit::Inch, Unit::Centimetre),
            Figure::Diameter => ("diameter", 10.0, 50.0, Unit::Inch, Unit::Centimetre),
            Figure::Weight => ("weight", 30.0, 1_500.0, Unit::Pound, Unit::Kilogram),
            Figure::Price => ("price", 0.0, MOST_DOLLARS, Unit::Dollar, Unit::Dollar),
        }
    }

    /// The code in files and locale keys (`offer-figure-<code with dashes>`).
    pub const fn code(self) -> &'static str {
        self.entry().0
    }

    /// The figure with this code, if there is one.
    pub fn from_code(code: &str) -> Option<Figure> {
        Figure::ALL.into_iter().find(|f| f.code() == code)
    }

    /// The key of its words.
    pub fn key(self) -> String {
        format!("offer-figure-{}", self.code().replace('_', "-"))
    }

    /// Smallest and largest, in the US unit.
    pub const fn range(self) -> (Quantity, Quantity) {
        let (_, low, high, us, _) = self.entry();
        (Quantity::new(low, us), Quantity::new(high, us))
    }

    /// The unit asked for in US customary mode, and in SI mode.
    pub const fn units(self) -> (Unit, Unit) {
        let (_, _, _, us, si) = self.entry();
        (us, si)
    }

    /// Whether nothing can be computed without it.
    pub const fn is_required(self) -> bool {
        matches!(self, Figure::Volume | Figure::Factor)
    }

    /// Whether a value may stand here.
    ///
    /// # Errors
    /// Says why not.
    pub fn check(self, value: Quantity) -> Result<(), CaseError> {
        let (code, low, high, us, _) = self.entry();
        let Some(there) = value.to(us) else {
            let units = units_like(us);
            return Err(CaseError::new(code, Trouble::WrongUnit { given: value.unit.code().into(), units }));
        };
        // A hair of slack: a limit written in the other system's unit must not be refused for rounding.
        let slack = 1e-9 * (high - low);
        if there.value >= low - slack && there.value <= high + slack {
            return Ok(());
        }
        let limit = |v| Quantity::new(v, us).to(value.unit).map_or(v, |q| q.value);
        within(code, value, limit(low), limit(high))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figures_place_is_its_number() {
        for (i, f) in Figure::ALL.into_iter().enumerate() {
            assert_eq!(f as usize, i);
            assert_eq!(Figure::from_code(f.code()), Some(f));
            let (low, high) = f.range();
            assert!(f.check(low).is_ok() && f.check(high).is_ok() && low.value < high.value);
            let (us, si) = f.units();
            assert_eq!(us.dimension(), si.dimension());
            // The limits themselves, written in the other system.
            assert!(low.to(si).is_some_and(|q| f.check(q).is_ok()), "{f:?}");
            assert!(high.to(si).is_some_and(|q| f.check(q).is_ok()), "{f:?}");
        }
    }

    #[test]
    fn a_refusal_says_the_range_in_the_unit_given() {
        let refused = Figure::Height.check(Quantity::new(900.0, Unit::Centimetre)).expect_err("too tall");
        let Trouble::OutOfRange { low, high, .. } = refused.trouble else { panic!("{refused:?}") };
        assert_eq!((low.unit, high.unit), (Unit::Centimetre, Unit::Centimetre));
        assert!((high.value - 254.0).abs() < 1e-9, "{high:?}");
    }
}
