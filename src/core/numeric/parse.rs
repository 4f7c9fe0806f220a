//! Numbers from text. The standard library's own parser carries a table of 10 kB that does not compress;
//! this library's compact one gives the same bits.

use lexical_parse_float::FromLexical as _;

/// The number a text writes, in plain or exponent form ("12", "-0.5", "1e3"); `None` for anything else, also
/// for words such as "inf" and for numbers beyond what a double holds.
pub fn number(text: &str) -> Option<f64> {
    let figures = text.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b'-' | b'+' | b'e' | b'E'));
    let parsed = f64::from_lexical(text.as_bytes()).ok();
    parsed.filter(|value| figures && value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The standard library is the reference, to the bit.
        #[test]
        fn it_is_the_standard_librarys(value in proptest::num::f64::NORMAL, decimals in 0..20_usize) {
            for text in [format!("{value}"), format!("{value:e}"), format!("{:.decimals$}", value % 1e6)] {
                prop_assert_eq!(number(&text).map(f64::to_bits), text.parse().ok().map(f64::to_bits), "{}", text);
            }
        }

        #[test]
        fn any_text_is_taken_as_the_standard_library_takes_it(text in "[-+]?[0-9]{0,25}[.]?[0-9]{0,25}([eE][-+]?[0-9]{0,3})?") {
            let want = text.parse().ok().filter(|value: &f64| value.is_finite());
            prop_assert_eq!(number(&text).map(f64::to_bits), want.map(f64::to_bits), "{}", text);
        }
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in
            ["", " 1", "1 ", "inf", "NaN", "infinity", "1e999", "0x10", "1_000", "1,5", ".", "-", "e5"]
        {
            assert_eq!(number(text), None, "{text}");
        }
    }
}
