//! Numbers as people read them: how many decimals a unit deserves, and where the marks go.

use crate::core::units::{Quantity, Unit};

/// The marks of a language's numbers.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Marks {
    /// Between thousands.
    pub group: String,
    /// Before the decimals.
    pub decimal: String,
}

/// Most decimals ever written.
const MOST: usize = 9;

/// How many decimals a quantity gets in its own unit.
///
/// Whole degrees, whole dollars, prices to a tenth of a cent where the unit is small; sizes and flows
/// to what a tape or a bucket can tell. A value too small for that keeps its first figure, so that
/// nothing but zero reads as zero.
pub fn decimals_of(q: Quantity) -> usize {
    let size = q.value.abs();
    let usual = match q.unit {
        Unit::DegF
        | Unit::DegC
        | Unit::DeltaF
        | Unit::Dollar
        | Unit::Watt
        | Unit::BtuPerHour
        | Unit::KilowattHour
        | Unit::Volt
        | Unit::Psi
        | Unit::Kilopascal
        | Unit::Pound
        | Unit::Kilogram
        | Unit::CubicFootPerMinute
        | Unit::CubicMetrePerHour
        | Unit::MilligramPerLitre => return 0,
        Unit::DollarPerKwh => 3,
        Unit::DollarPerTherm | Unit::DollarPerGallon | Unit::DollarPerLitre => 2,
        // A whole number is written whole.
        _ if q.value.fract() == 0.0 => return 0,
        Unit::One | Unit::Kilowatt | Unit::Metre if size < 10.0 => 2,
        // Shower heads are sold by the quarter gallon.
        Unit::GallonPerMinute if size < 10.0 && (q.value * 10.0 - (q.value * 10.0).round()).abs() > 0.05 => 2,
        Unit::GallonPerMinute | Unit::LitrePerMinute | Unit::CubicMetre if size < 100.0 => 1,
        _ if size < 10.0 => 1,
        _ => 0,
    };
    let mut decimals = usual;
    if size > 0.0 && size.is_finite() {
        let mut smallest = 0.5;
        for _ in 0..usual {
            smallest /= 10.0;
        }
        while size < smallest && decimals < MOST {
            smallest /= 10.0;
            decimals += 1;
        }
    }
    decimals
}

/// The number without its sign, with marks; and whether the rounded number is below zero.
pub(super) fn unsigned(value: f64, decimals: usize, marks: &Marks) -> (String, bool) {
    let plain = format!("{:.*}", decimals.min(MOST), value.abs());
    let (whole, rest) = plain.split_once('.').map_or((plain.as_str(), None), |(w, r)| (w, Some(r)));
    let mut text = String::with_capacity(plain.len() + whole.len() / 3);
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i).is_multiple_of(3) && value.is_finite() {
            text.push_str(&marks.group);
        }
        text.push(digit);
    }
    if let Some(rest) = rest {
        text.push_str(&marks.decimal);
        text.push_str(rest);
    }
    // "−0" is no number anybody would write.
    let below = value < 0.0 && text.bytes().any(|b| (b'1'..=b'9').contains(&b));
    (text, below)
}

/// The shortest way to write a number that somebody typed, to at most four decimals; more only where
/// those would say nothing but zeros.
pub(super) fn decimals_as_typed(value: f64) -> usize {
    let most = decimals_of(Quantity::new(value, Unit::One)).max(4);
    let written = format!("{value:.most$}");
    written.split_once('.').map_or(0, |(_, rest)| rest.trim_end_matches('0').len())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marks() -> Marks {
        Marks { group: ",".into(), decimal: ".".into() }
    }

    #[test]
    fn thousands_decimals_and_signs() {
        for (value, decimals, want, below) in [
            (0.0, 0, "0", false),
            (-0.4, 0, "0", false),
            (-0.6, 0, "1", true),
            (999.6, 0, "1,000", false),
            (1_234_567.891, 2, "1,234,567.89", false),
            (-12_345.0, 1, "12,345.0", true),
            (100.0, 0, "100", false),
        ] {
            assert_eq!(unsigned(value, decimals, &marks()), (want.to_owned(), below), "{value}");
        }
    }

    #[test]
    fn decimals_suit_the_unit() {
        for (value, unit, want) in [
            (119.6, Unit::DegF, 0),
            (1_899.5, Unit::Dollar, 0),
            (0.165, Unit::DollarPerKwh, 3),
            (1.4, Unit::DollarPerTherm, 2),
            (2.0, Unit::GallonPerMinute, 0),
            (2.5, Unit::GallonPerMinute, 1),
            (2.25, Unit::GallonPerMinute, 2),
            (-1.0, Unit::Foot, 0),
            (-1.25, Unit::Foot, 1),
            (50.0, Unit::Gallon, 0),
            (0.1, Unit::CubicFoot, 1),
            (0.002_831, Unit::CubicMetre, 3),
            (3.0, Unit::One, 0),
            (0.92, Unit::One, 2),
            (17.9, Unit::One, 0),
            (15.0, Unit::Year, 0),
            (7.25, Unit::Year, 1),
        ] {
            assert_eq!(decimals_of(Quantity::new(value, unit)), want, "{value} {unit:?}");
        }
    }

    #[test]
    fn typed_numbers_come_back_as_typed() {
        for (value, want) in [(120.0, 0), (0.1, 1), (37.777_777_78, 4), (-12.5, 1), (0.000_02, 5)] {
            assert_eq!(decimals_as_typed(value), want, "{value}");
        }
    }
}
