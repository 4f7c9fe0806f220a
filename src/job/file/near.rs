//! The nearest known name to a mistyped one.

use crate::core::letters::lower;
use crate::job::form::short;

/// The name that takes the fewest letters changed, added or dropped to reach, if that is few enough to
/// be a slip of the finger. The first of equals.
pub(super) fn nearest<'a>(typed: &str, names: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let typed = lower(&short(typed));
    let most = (typed.chars().count() / 3).max(2);
    names
        .map(|name| (distance(&typed, name), name))
        .filter(|(d, _)| *d <= most)
        .min_by_key(|(d, _)| *d)
        .map(|(_, name)| name)
}

/// Levenshtein's edit distance.
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.chars().enumerate() {
        let mut diagonal = i;
        let mut left = i + 1;
        for (cell, cb) in row.iter_mut().skip(1).zip(&b) {
            let changed = diagonal + usize::from(ca != *cb);
            diagonal = *cell;
            *cell = changed.min(*cell + 1).min(left + 1);
            left = *cell;
        }
        if let Some(first) = row.first_mut() {
            *first = i + 1;
        }
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Distances by hand.
    #[test]
    fn distances() {
        for (a, b, want) in [
            ("", "", 0),
            ("", "abc", 3),
            ("abc", "", 3),
            ("kitten", "sitting", 3),
            ("setpont", "setpoint", 1),
            ("ab", "ba", 2),
        ] {
            assert_eq!(distance(a, b), want, "{a} {b}");
        }
    }

    #[test]
    fn only_slips_are_mended() {
        let names = ["adults", "setpoint", "room_kind"];
        assert_eq!(nearest("set_point", names.into_iter()), Some("setpoint"));
        assert_eq!(nearest("Adult", names.into_iter()), Some("adults"));
        assert_eq!(nearest("weather", names.into_iter()), None);
    }
}
