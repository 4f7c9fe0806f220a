//! Reads the sources and the files of words as text: which keys are used, which are given.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// The package's folder.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A key that stands in the source.
pub struct Used {
    /// File, from the package's folder.
    pub file: String,
    /// The key.
    pub key: String,
    /// The attribute asked for, if one is.
    pub attribute: Option<String>,
}

/// Calls whose first argument is a key.
const TAKES_KEY: &[&str] = &["Message::new(", ".key(", ".attr(", "t(", "t!("];

/// Families of keys the core hands out in other ways than `Message::new` (labels of inputs, names of
/// workings): any literal of the core that begins so must have words.
const CORE_FAMILIES: &[&str] = &[
    "advice-",
    "care-",
    "cause-",
    "caution-",
    "check-",
    "figure-",
    "handover-",
    "input-",
    "label-",
    "job-",
    "meter-",
    "need-",
    "part-",
    "phase-",
    "reason-",
    "relation-",
    "rule-",
    "settle-",
    "shelf-",
    "source-",
    "step-",
    "tool-",
    "trade-",
    "start-",
    "use-",
    "verdict-",
    "work-",
    "working-",
];

fn files(folder: &Path, out: &mut Vec<PathBuf>) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        let path = entry.path();
        if path.is_dir() {
            files(&path, out);
        } else if path.extension().is_some_and(|e| e == "rs") {
            out.push(path);
        }
    }
    out.sort();
}

/// `(what stands before it on its line, the literal)` for each string of a source, comments and test
/// modules left out.
fn strings(source: &str) -> Vec<(String, String)> {
    let source = source.split("#[cfg(test)]").next().unwrap_or(source);
    let chars: Vec<char> = source.chars().collect();
    let (mut out, mut i, mut before) = (Vec::new(), 0, String::new());
    while i < chars.len() {
        let next = chars.get(i + 1).copied();
        match chars[i] {
            '/' if next == Some('/') => {
                while i < chars.len() && chars[i] != '\n' {
                    i += 1;
                }
            }
            // The character '"' is no string.
            '\'' if next == Some('"') => i += 3,
            '"' => {
                let mut text = String::new();
                i += 1;
                while i < chars.len() && chars[i] != '"' {
                    if chars[i] == '\\' {
                        i += 1;
                    }
                    text.extend(chars.get(i));
                    i += 1;
                }
                i += 1;
                out.push((before.clone(), text));
                before.push('"');
            }
            c => {
                if !c.is_whitespace() {
                    before.push(c);
                }
                i += 1;
            }
        }
        if before.len() > 200 {
            before = before.chars().skip(before.chars().count() - 60).collect();
        }
    }
    out
}

fn sources() -> Vec<(String, Vec<(String, String)>)> {
    let mut paths = Vec::new();
    files(&root().join("src"), &mut paths);
    paths
        .into_iter()
        .map(|p| {
            let name = p.strip_prefix(root()).unwrap_or(&p).display().to_string();
            let text = std::fs::read_to_string(&p).expect("a source file");
            (name, strings(&text))
        })
        .collect()
}

/// Every string literal of the sources.
pub fn literals() -> BTreeSet<String> {
    sources().into_iter().flat_map(|(_, found)| found).map(|(_, text)| text).collect()
}

/// Every literal key of the sources.
pub fn literal_keys() -> Vec<Used> {
    let mut out = Vec::new();
    for (file, found) in sources() {
        let core = file.starts_with("src/core") || file.starts_with("src/job");
        for (i, (before, text)) in found.iter().enumerate() {
            let called = TAKES_KEY.iter().find(|call| {
                // `t(` must be the whole name, not the end of another.
                before.strip_suffix(**call).is_some_and(|rest| {
                    !call.starts_with('t')
                        || !rest.ends_with(|c: char| c.is_alphanumeric() || c == '_' || c == '.')
                })
            });
            let like_a_key = text.contains('-')
                && text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
                && !text.ends_with('-');
            let family = core && like_a_key && CORE_FAMILIES.iter().any(|f| text.starts_with(f));
            if called.is_some() || family {
                let attribute = (called == Some(&".attr("))
                    .then(|| found.get(i + 1).map(|(_, attribute)| attribute.clone()))
                    .flatten();
                out.push(Used { file: file.clone(), key: text.clone(), attribute });
            }
        }
    }
    assert!(out.iter().any(|u| u.key == "refusal-out-of-range"), "the reader of sources finds nothing");
    out
}

/// The keys a file of words gives.
pub fn keys_of(ftl: &str) -> impl Iterator<Item = String> {
    ftl.lines()
        .filter(|l| l.starts_with(|c: char| c.is_ascii_alphabetic()))
        .filter_map(|l| l.split_once('='))
        .map(|(key, _)| key.trim().to_owned())
}

/// Keys that a file's words put into other words (`{ key }`).
pub fn mentions_of(ftl: &str) -> impl Iterator<Item = String> {
    ftl.split('{').skip(1).filter_map(|rest| {
        let inner = rest.split('}').next()?.trim();
        inner.starts_with(|c: char| c.is_ascii_alphabetic()).then(|| inner.to_owned())
    })
}

/// The variables that a key's texts ask for, by key.
pub fn variables_of(ftl: &str) -> Vec<(String, BTreeSet<String>)> {
    let mut out: Vec<(String, BTreeSet<String>)> = Vec::new();
    for line in ftl.lines().filter(|l| !l.starts_with('#')) {
        if line.starts_with(|c: char| c.is_ascii_alphabetic()) {
            let key = line.split_once('=').map_or(line, |(key, _)| key).trim();
            out.push((key.to_owned(), BTreeSet::new()));
        }
        let names = line.split('$').skip(1).map(|rest| {
            rest.split(|c: char| !(c.is_ascii_alphanumeric() || c == '-' || c == '_')).next().unwrap_or("")
        });
        if let Some((_, found)) = out.last_mut() {
            found.extend(
                names.filter(|n| n.starts_with(|c: char| c.is_ascii_alphabetic())).map(str::to_owned),
            );
        }
    }
    out
}

/// The literals of each source file, by its name.
pub fn literals_by_file() -> Vec<(String, BTreeSet<String>)> {
    sources()
        .into_iter()
        .map(|(name, found)| (name, found.into_iter().map(|(_, text)| text).collect()))
        .collect()
}

/// Each text of a file, by its key; what is put in stands as a number would.
pub fn texts_of(ftl: &str) -> Vec<(String, String)> {
    let (mut out, mut key): (Vec<(String, String)>, String) = (Vec::new(), String::new());
    for line in ftl.lines().filter(|l| !l.starts_with('#')) {
        let start = line.trim_start();
        let (name, text) = match start.split_once('=') {
            Some((name, text)) if line.starts_with(|c: char| c.is_ascii_alphabetic()) => {
                key = name.trim().to_owned();
                (key.clone(), text)
            }
            Some((name, text)) if start.starts_with('.') => (format!("{key}{}", name.trim()), text),
            // Branches of a selection and further lines are texts of their own.
            _ => match start.strip_prefix(['[', '*']).and_then(|s| s.split_once(']')) {
                Some((_, text)) => (key.clone(), text),
                None => (key.clone(), start),
            },
        };
        let mut plain = String::new();
        let mut depth = 0;
        for c in text.chars() {
            match c {
                '{' => {
                    if depth == 0 {
                        plain.push('7');
                    }
                    depth += 1;
                }
                '}' => depth -= 1,
                c if depth == 0 => plain.push(c),
                _ => {}
            }
        }
        if !plain.trim().is_empty() {
            out.push((name, plain.trim().to_owned()));
        }
    }
    out
}
