//! Lengths as a tape says them: feet, inches, and fractions of an inch.

/// Finest fraction of an inch read, as its denominator: tapes have sixteenths, some thirty-seconds.
const FINEST: u32 = 64;

/// Inches of what was typed as feet and as inches; `None` where that is no length, or nothing was typed.
///
/// Inches may be `6`, `6.5`, `6 1/2`, `6-1/2` or `1/2`; the first field may hold both, as `7' 6 1/2"`.
pub fn inches(feet: &str, inches: &str) -> Option<f64> {
    let plain = |text: &str| text.replace(['"', '″', '”'], "").replace(['′', '’'], "'").trim().to_owned();
    let (feet, inches) = (plain(feet), plain(inches));
    if let Some((whole, rest)) = feet.split_once('\'')
        && !rest.trim().is_empty()
    {
        // Both in one field, and something in the other as well: nobody knows what is meant.
        return if inches.is_empty() { Some(12.0 * part(whole)? + part(rest)?) } else { None };
    }
    let feet = feet.trim_end_matches('\'');
    if feet.trim().is_empty() && inches.is_empty() {
        return None;
    }
    Some(12.0 * part_or_zero(feet)? + part_or_zero(&inches)?)
}

/// A length in inches as whole feet, and the rest to a quarter of an inch as a tape has it.
pub fn feet_and_inches(inches: f64) -> (String, String) {
    let quarters = (inches.clamp(0.0, 1e6) * 4.0).round() as u64;
    let (feet, rest) = (quarters / 48, quarters % 48);
    let fraction = ["", " 1/4", " 1/2", " 3/4"].get((rest % 4) as usize).copied().unwrap_or("");
    (feet.to_string(), format!("{}{fraction}", rest / 4))
}

fn part_or_zero(text: &str) -> Option<f64> {
    if text.trim().is_empty() { Some(0.0) } else { part(text) }
}

/// A number with an optional fraction behind it.
fn part(text: &str) -> Option<f64> {
    let text = text.replace(',', ".");
    let mut sum = 0.0;
    let mut parts = 0;
    for word in text.split(|c: char| c.is_whitespace() || c == '-').filter(|w| !w.is_empty()) {
        parts += 1;
        sum += match word.split_once('/') {
            Some((over, under)) => fraction(over, under)?,
            // Only a fraction may stand behind a number.
            None if parts == 1 => number(word)?,
            None => return None,
        };
    }
    (1..=2).contains(&parts).then_some(sum)
}

fn fraction(over: &str, under: &str) -> Option<f64> {
    let (over, under): (u32, u32) = (over.parse().ok()?, under.parse().ok()?);
    ((1..=FINEST).contains(&under) && over < under).then(|| f64::from(over) / f64::from(under))
}

fn number(word: &str) -> Option<f64> {
    // Words such as "inf" and "1e9" parse as numbers and are no length on a tape.
    let plain = word.chars().all(|c| c.is_ascii_digit() || c == '.') && word.len() < 10;
    word.parse().ok().filter(|_| plain)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn lengths_are_read_as_a_tape_says_them() {
        for (feet, rest, want) in [
            ("7", "6", 90.0),
            ("7", "", 84.0),
            ("", "90", 90.0),
            ("7", "6 1/2", 90.5),
            ("7'", "6-1/2\"", 90.5),
            ("7' 6 1/2\"", "", 90.5),
            ("7′6″", "", 90.0),
            ("", "1/16", 0.0625),
            ("6.5", "", 78.0),
            ("0", "80,25", 80.25),
        ] {
            assert_eq!(inches(feet, rest), Some(want), "{feet} | {rest}");
        }
    }

    #[test]
    fn what_is_no_length_is_refused() {
        for (feet, rest) in [
            ("", ""),
            (" ", "\""),
            ("a", "6"),
            ("7", "six"),
            ("7' 6", "2"),
            ("", "6 7"),
            ("", "3/2"),
            ("", "1/0"),
            ("", "1/2/3"),
            ("-", "-"),
            ("1e9", ""),
            ("inf", ""),
            ("", "1/2 1/2 1/2"),
            ("99999999999", ""),
        ] {
            assert_eq!(inches(feet, rest), None, "{feet} | {rest}");
        }
    }

    proptest! {
        /// What is shown reads back as the same length, to the quarter of an inch it is shown to.
        #[test]
        fn what_is_shown_reads_back(length in 0.0..2_000.0f64) {
            let (feet, rest) = feet_and_inches(length);
            let back = inches(&feet, &rest).expect("a length");
            prop_assert!((back - length).abs() <= 0.125 + 1e-9, "{} became {}", length, back);
        }

        /// No text panics.
        #[test]
        fn any_text_is_read_or_refused(feet in ".{0,12}", rest in ".{0,12}") {
            let read = inches(&feet, &rest);
            prop_assert!(read.is_none_or(|v| v.is_finite() && v >= 0.0));
        }
    }
}
