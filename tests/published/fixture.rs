//! Reads a fixture's tables, and keeps the largest difference of a comparison.
use serde_json::Value;

/// One fixture file.
pub struct Fixture(pub Value);

impl Fixture {
    /// `tests/reference/fixtures/<name>.json`.
    pub fn load(name: &str) -> Self {
        let path = format!("{}/tests/reference/fixtures/{name}.json", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
        Self(serde_json::from_str(&text).unwrap_or_else(|e| panic!("{path}: {e}")))
    }

    /// A number by its path of names.
    pub fn number(&self, path: &[&str]) -> f64 {
        let found = path.iter().fold(&self.0, |v, key| &v[*key]);
        found.as_f64().unwrap_or_else(|| panic!("no number at {path:?}"))
    }

    /// A table of this fixture.
    pub fn table(&self, name: &str) -> Table {
        Table::new(&self.0[name])
    }
}

/// Rows of numbers under named columns.
pub struct Table {
    columns: Vec<String>,
    rows: Vec<Vec<f64>>,
}

impl Table {
    /// A table from its JSON; refuses an empty one, so that no comparison passes by comparing nothing.
    pub fn new(value: &Value) -> Self {
        let columns: Vec<String> = serde_json::from_value(value["columns"].clone()).expect("columns");
        let rows: Vec<Vec<f64>> = serde_json::from_value(value["rows"].clone()).expect("rows");
        assert!(!rows.is_empty() && rows.iter().all(|r| r.len() == columns.len()));
        Self { columns, rows }
    }

    /// The rows with the wanted columns, in the order asked.
    pub fn rows<const N: usize>(&self, wanted: [&str; N]) -> Vec<[f64; N]> {
        let at = wanted.map(|name| {
            let found = self.columns.iter().position(|c| c == name);
            found.unwrap_or_else(|| panic!("no column {name} among {:?}", self.columns))
        });
        self.rows.iter().map(|row| at.map(|i| row[i])).collect()
    }
}

/// The largest difference of one compared quantity.
pub struct Worst {
    what: &'static str,
    difference: f64,
    place: String,
    count: usize,
}

impl Worst {
    /// Starts a comparison of `what` (with the unit of the difference).
    pub fn of(what: &'static str) -> Self {
        Self { what, difference: 0.0, place: String::new(), count: 0 }
    }

    /// Takes an absolute difference at a place. Not-a-number counts as infinitely wrong.
    pub fn see(&mut self, ours: f64, reference: f64, place: impl std::fmt::Debug) {
        let difference = (ours - reference).abs();
        let difference = if difference.is_nan() { f64::INFINITY } else { difference };
        self.count += 1;
        if difference >= self.difference {
            self.difference = difference;
            self.place = format!("{ours} against {reference} at {place:?}");
        }
    }

    /// Takes a difference relative to the reference.
    pub fn see_relative(&mut self, ours: f64, reference: f64, place: impl std::fmt::Debug) {
        self.see(ours / reference, 1.0, place);
    }

    /// Prints the largest difference and fails above the tolerance.
    pub fn within(self, tolerance: f64) {
        hold([(self, tolerance)]);
    }
}

/// Prints every largest difference, then fails if any is above its tolerance.
pub fn hold(comparisons: impl IntoIterator<Item = (Worst, f64)>) {
    let mut failures = Vec::new();
    for (Worst { what, difference, place, count }, tolerance) in comparisons {
        let line = format!(
            "{what}: largest of {count} differences {difference:.3e} (allowed {tolerance:.1e}): {place}"
        );
        println!("{line}");
        if count == 0 || difference > tolerance {
            failures.push(line);
        }
    }
    assert!(failures.is_empty(), "too far from the reference, or nothing compared: {failures:#?}");
}
