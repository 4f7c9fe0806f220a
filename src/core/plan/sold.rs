//! How things are sold, and what therefore has to be brought.

use crate::core::units::FOOT_M;

/// How a part is sold; common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sold {
    /// By the piece.
    Each,
    /// In lengths of so many feet.
    Lengths(f64),
    /// In coils of these lengths, ft, in order.
    Coils(&'static [f64]),
}

/// Coils of cable, ft.
pub(super) const CABLE_FT: &[f64] = &[25.0, 50.0, 100.0, 250.0];
/// Coils of small tube, ft.
pub(super) const TUBE_FT: &[f64] = &[20.0, 50.0, 100.0];
/// Hoses, ft.
pub(super) const HOSE_FT: &[f64] = &[25.0, 50.0, 100.0];
/// Drain pans, inches across.
pub(super) const PANS_IN: &[f64] = &[20.0, 22.0, 24.0, 26.0, 28.0, 30.0, 32.0, 36.0];

/// A hair of slack: sizes are converted from feet.
const HAIR: f64 = 1e-9;

impl Sold {
    /// What is brought where so much is needed, SI base (pieces, or m): as much or more, and as it is sold.
    pub fn bring(self, needs: f64) -> f64 {
        match self {
            Sold::Each => (needs - HAIR).ceil(),
            Sold::Lengths(feet) => whole(needs, feet * FOOT_M),
            Sold::Coils(feet) => {
                let largest = feet.last().copied().unwrap_or(1.0);
                let one = feet.iter().find(|f| **f * FOOT_M >= needs - HAIR);
                one.map_or_else(|| whole(needs, largest * FOOT_M), |f| f * FOOT_M)
            }
        }
    }
}

/// Whole pieces of a length.
fn whole(needs: f64, piece: f64) -> f64 {
    (needs / piece - HAIR).ceil() * piece
}

/// The smallest size on sale that is large enough; the largest where none is.
pub(super) fn size_up(sizes: &[f64], at_least: f64) -> f64 {
    let found = sizes.iter().find(|s| **s >= at_least - HAIR);
    found.or(sizes.last()).copied().unwrap_or(at_least)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn sticks_and_coils() {
        let feet = |sold: Sold, ft: f64| sold.bring(ft * FOOT_M) / FOOT_M;
        assert_eq!(Sold::Each.bring(2.0), 2.0);
        assert!((feet(Sold::Lengths(10.0), 10.0) - 10.0).abs() < 1e-9);
        assert!((feet(Sold::Lengths(10.0), 10.5) - 20.0).abs() < 1e-9);
        assert!((feet(Sold::Coils(CABLE_FT), 51.0) - 100.0).abs() < 1e-9);
        assert!((feet(Sold::Coils(CABLE_FT), 251.0) - 500.0).abs() < 1e-9);
        assert_eq!(size_up(PANS_IN, 24.5), 26.0);
        assert_eq!(size_up(PANS_IN, 50.0), 36.0);
    }

    proptest! {
        #[test]
        fn never_less_than_needed(needs in 0.01..200.0f64) {
            for sold in [Sold::Each, Sold::Lengths(10.0), Sold::Coils(CABLE_FT), Sold::Coils(TUBE_FT)] {
                prop_assert!(sold.bring(needs) >= needs - 1e-6, "{sold:?}");
            }
        }
    }
}
