//! Axes: a range, and round numbers on it with their labels.

/// One axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Marks with their labels.
    pub marks: Vec<(f64, String)>,
}

impl Axis {
    /// An axis that holds all of `values`, from round number to round number, with about `wanted` marks.
    /// Values that are no numbers are passed over; without any the axis goes from 0 to 1.
    pub fn round(values: impl IntoIterator<Item = f64>, wanted: u32, label: impl Fn(f64) -> String) -> Axis {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for v in values.into_iter().filter(|v| v.is_finite()) {
            if v < low {
                low = v;
            }
            if v > high {
                high = v;
            }
        }
        if low > high {
            (low, high) = (0.0, 1.0);
        }
        if high - low < 1e-9 {
            high = low + 1.0;
        }
        let step = round_step((high - low) / f64::from(wanted.max(1)));
        let (from, to) = ((low / step).floor() * step, (high / step).ceil() * step);
        let count = ((to - from) / step).round() as u32;
        let marks = (0..=count).map(|i| from + f64::from(i) * step).map(|v| (v, label(v))).collect();
        Axis { from, to, marks }
    }

    /// An axis with marks of one's own.
    pub fn with_marks(from: f64, to: f64, marks: Vec<(f64, String)>) -> Axis {
        // A range without length cannot be drawn.
        let to = if to > from { to } else { from + 1.0 };
        Axis { from, to, marks }
    }
}

/// The smallest of 1, 2, 5 times a power of ten that is no smaller than `wanted`.
pub fn round_step(wanted: f64) -> f64 {
    let mut decade = 1e-9;
    while decade * 10.0 <= wanted && decade < 1e12 {
        decade *= 10.0;
    }
    [1.0, 2.0, 5.0].into_iter().map(|m| m * decade).find(|&s| s >= wanted * 0.999).unwrap_or(10.0 * decade)
}
