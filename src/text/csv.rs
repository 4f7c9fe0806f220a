//! Lists as comma-separated values (RFC 4180), for spreadsheets: the list of parts.

use super::words::Words;
use crate::core::plan::{Part, PartKind, Plan};
use crate::core::units::{Quantity, Unit};

/// The list of parts, one a line under a line of titles. `state` says what stands in the last column: whether it is
/// there already, or bought.
pub fn parts(words: &Words, plan: &Plan, state: &dyn Fn(PartKind) -> String) -> String {
    let mut out = String::new();
    let titles = [
        "csv-shelf",
        "csv-part",
        "csv-needs",
        "csv-bring",
        "csv-unit",
        "csv-trade",
        "csv-why",
        "csv-maybe",
        "csv-code",
        "csv-state",
    ];
    line(&mut out, &titles.map(|key| words.key(key)));
    for part in &plan.parts {
        let (needs, bring) = (part.needs.displayed(words.units()), part.bring.displayed(words.units()));
        line(
            &mut out,
            &[
                words.key(part.kind.shelf().key()),
                words.say(&part.says),
                number(needs),
                number(bring),
                if bring.unit == Unit::One { words.key("csv-piece") } else { words.unit_sign(bring.unit) },
                words.key(part.kind.trade().key()),
                why(words, part),
                words.key(if part.maybe { "csv-perhaps" } else { "csv-sure" }),
                part.kind.code().to_owned(),
                state(part.kind),
            ],
        );
    }
    out
}

/// Why a part is on the list: any such job, or the checks that ask for it.
pub fn why(words: &Words, part: &Part) -> String {
    let mut said = if part.always { words.key("parts-always") } else { String::new() };
    for check in &part.checks {
        if !said.is_empty() {
            said.push_str("; ");
        }
        said.push_str(&words.check(check));
    }
    said
}

/// A number as programs read it, to a hundredth at most.
fn number(q: Quantity) -> String {
    let hundredths = (q.value * 100.0).round();
    if hundredths % 100.0 == 0.0 { format!("{:.0}", q.value) } else { format!("{:.2}", q.value) }
}

/// Adds a line of fields.
fn line(out: &mut String, fields: &[String]) {
    for (i, text) in fields.iter().enumerate() {
        if i > 0 {
            out.push(',');
        }
        field(out, text);
    }
    out.push_str("\r\n");
}

/// Adds a field, in quotes where it needs them. A heater's name is whatever somebody typed: what a spreadsheet would
/// take for a formula gets an apostrophe before it.
fn field(out: &mut String, text: &str) {
    let formula = text.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let quoted =
        formula || text.contains([',', '"', '\r', '\n']) || text.starts_with(' ') || text.ends_with(' ');
    if quoted {
        out.push('"');
    }
    if formula {
        out.push('\'');
    }
    for letter in text.chars() {
        if letter == '"' {
            out.push('"');
        }
        out.push(letter);
    }
    if quoted {
        out.push('"');
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(text: &str) -> Vec<Vec<String>> {
        let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
        reader.records().map(|r| r.expect("a line").iter().map(str::to_owned).collect()).collect()
    }

    #[test]
    fn a_formula_stays_a_text() {
        let mut out = String::new();
        line(&mut out, &["=1+1".to_owned(), "3/4 in".to_owned()]);
        assert_eq!(out, "\"'=1+1\",3/4 in\r\n");
    }

    proptest! {
        /// The crate `csv`, which knows nothing of this, reads back what was written.
        #[test]
        fn another_reader_reads_it_back(rows in proptest::collection::vec(proptest::collection::vec("[A-Za-z0-9\", ä\n][ -~\n\r\"äß,]{0,12}", 3), 1..5)) {
            let mut out = String::new();
            for row in &rows {
                line(&mut out, row);
            }
            prop_assert_eq!(read(&out), rows);
        }
    }
}
