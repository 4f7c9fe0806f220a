//! The table of checks for developers is complete.

/// Every check's file has its row in DEVELOPERS.md, and no row is left of a check that went.
#[test]
fn every_check_has_its_row() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(root.join("DEVELOPERS.md")).expect("the developers' page");
    let mut files: Vec<String> = std::fs::read_dir(root.join("src/core/checks"))
        .expect("the checks")
        .filter_map(|e| e.ok()?.file_name().into_string().ok()?.strip_suffix(".rs").map(str::to_owned))
        .filter(|name| !matches!(name.as_str(), "mod" | "judge" | "finding"))
        .collect();
    files.sort();
    let mut rows: Vec<String> = text
        .split_once("### The checks")
        .expect("the table")
        .1
        .lines()
        .skip_while(|l| !l.starts_with("| `"))
        .take_while(|l| l.starts_with("| `"))
        .filter_map(|l| l.split('`').nth(1).map(str::to_owned))
        .collect();
    rows.sort();
    assert_eq!(files, rows);
}
