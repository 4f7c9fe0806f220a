//! JSON as this room writes and reads it: numbers with units, lists, options; each fault with its field.

use super::file::{CaseError, Trouble, Wanted};
use crate::core::units::{Quantity, Unit};
use serde_json::{Map, Number, Value as Json};

/// A JSON object.
pub(super) type Object = Map<String, Json>;

/// Puts in a field.
pub(super) fn put(to: &mut Object, name: &str, value: Json) {
    to.insert(name.to_owned(), value);
}

/// Puts in a text, unless it is empty.
pub(super) fn put_text(to: &mut Object, name: &str, text: &str) {
    if !text.is_empty() {
        put(to, name, text.into());
    }
}

/// A number as people write it: 2, not 2.0. Null for what is not finite.
pub fn number(value: f64) -> Json {
    let whole = value as i64;
    // Exact both ways below 2^53; a minus zero would lose its sign.
    if whole as f64 == value && whole.unsigned_abs() < 1 << 53 && !(whole == 0 && value.is_sign_negative()) {
        return whole.into();
    }
    // Answers are finite: what is not cannot be set.
    Number::from_f64(value).map_or(Json::Null, Json::Number)
}

/// A number with its unit; bare where it could have only one.
pub(super) fn quantity(q: Quantity, units: &[Unit]) -> Json {
    if units == [q.unit] {
        return number(q.value);
    }
    let mut all = Object::new();
    put(&mut all, "value", number(q.value));
    put(&mut all, "unit", q.unit.code().into());
    all.into()
}

/// A number with its unit, or bare where it could have only one.
pub(super) fn read_quantity(json: &Json, units: &[Unit]) -> Result<Quantity, Trouble> {
    let (value, unit) = match json {
        Json::Object(all) => (all.get("value").unwrap_or(&Json::Null), all.get("unit")),
        bare => (bare, None),
    };
    let Some(value) = value.as_f64() else {
        return Err(Trouble::Wanted { given: shown(value), wanted: Wanted::Quantity });
    };
    match (unit, units) {
        (None, [only]) => Ok(Quantity::new(value, *only)),
        (None, _) => Err(Trouble::NeedsUnit { given: value.to_string(), units: units.to_vec() }),
        (Some(code), _) => code
            .as_str()
            .and_then(Unit::from_code)
            .filter(|unit| units.contains(unit))
            .map(|unit| Quantity::new(value, unit))
            .ok_or_else(|| Trouble::WrongUnit { given: shown(code), units: units.to_vec() }),
    }
}

/// At most 40 characters of a text.
pub(super) fn short(text: &str) -> String {
    let mut cut: String = text.chars().take(40).collect();
    if cut.len() < text.len() {
        cut.push('…');
    }
    cut
}

/// What a value is, for an error: short, and never the whole of a long text.
pub(super) fn shown(json: &Json) -> String {
    match json {
        Json::Array(_) => String::from("[…]"),
        Json::Object(_) => String::from("{…}"),
        Json::String(text) => short(text),
        other => other.to_string(),
    }
}

/// Something else stands where this belongs.
pub(super) fn wanted(field: &str, given: &Json, wanted: Wanted) -> CaseError {
    CaseError::new(field, Trouble::Wanted { given: shown(given), wanted })
}

/// A name nobody knows.
pub(super) fn unknown(field: &str, name: &str) -> CaseError {
    CaseError::new(field, Trouble::Unknown { given: short(name), near: None })
}

/// An object; told of when it is none.
pub(super) fn object<'a>(field: &str, json: &'a Json, refused: &mut Vec<CaseError>) -> Option<&'a Object> {
    let found = json.as_object();
    if found.is_none() {
        refused.push(wanted(field, json, Wanted::Object));
    }
    found
}

/// A list of at most so many; what is beyond, or cannot be read, is left out and told of.
pub(super) fn list<T>(
    field: &str,
    json: &Json,
    most: usize,
    refused: &mut Vec<CaseError>,
    read: impl Fn(&str, &Json, &mut Vec<CaseError>) -> Option<T>,
) -> Vec<T> {
    let Some(entries) = json.as_array() else {
        refused.push(wanted(field, json, Wanted::List));
        return Vec::new();
    };
    if entries.len() > most {
        refused.push(CaseError::new(field, Trouble::TooMany { most }));
    }
    let mut all = Vec::new();
    for (i, entry) in entries.iter().take(most).enumerate() {
        all.extend(read(&format!("{field}[{i}]"), entry, refused));
    }
    all
}

/// One of these options, from a field that must be there.
pub(super) fn code<T>(
    field: &str,
    name: &str,
    all: &Object,
    options: &[&str],
    from_code: fn(&str) -> Option<T>,
    refused: &mut Vec<CaseError>,
) -> Option<T> {
    let given = all.get(name);
    let found = given.and_then(Json::as_str).and_then(from_code);
    if found.is_none() {
        let trouble = match given {
            None => Trouble::Missing,
            Some(given) => Trouble::NotAnOption {
                given: shown(given),
                options: options.iter().map(|&o| o.to_owned()).collect(),
            },
        };
        refused.push(CaseError::new(format!("{field}.{name}"), trouble));
    }
    found
}
