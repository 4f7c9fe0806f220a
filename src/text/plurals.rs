//! Plural categories, one function a language: the rules of the Unicode CLDR (from memory, version 44).

/// The category (`zero`, `one`, `two`, `few`, `many`, `other`) of a number written with this many
/// decimals.
pub(super) type Plural = fn(value: f64, decimals: usize) -> &'static str;

/// English: one for 1 (and −1) written without decimals, other for the rest.
pub(super) fn english(value: f64, decimals: usize) -> &'static str {
    if value.abs() == 1.0 && decimals == 0 { "one" } else { "other" }
}
