//! What the service worker keeps: the list of a finished page's files with the hashes of their content, and a
//! version that changes with any of them, both put into the script by the build.
use std::collections::BTreeMap;

use anyhow::{Context, Result, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The service worker's script. Its name never changes, or browsers would not find a newer one.
pub const SCRIPT: &str = "service-worker.js";

/// Where the build puts the version and the list.
const MARKS: [&str; 2] = ["\"the version\"", "\"the files\""];

/// Fills in the service worker of a page whose other files are finished: from here on none may change.
///
/// # Errors
/// When the script is missing or is not the one that the build knows how to fill in.
pub fn fill_in(files: &mut BTreeMap<String, Vec<u8>>) -> Result<()> {
    let script = files.remove(SCRIPT).with_context(|| format!("the built page has no {SCRIPT}"))?;
    let mut script = String::from_utf8(script).with_context(|| format!("{SCRIPT} is not text"))?;
    let list: Vec<(&String, String)> = files.iter().map(|(name, bytes)| (name, integrity(bytes))).collect();
    let list = serde_json::to_string(&list)?;
    let version = STANDARD.encode(&Sha256::digest(format!("{script}{list}"))[..9]);
    for (mark, value) in MARKS.into_iter().zip([serde_json::to_string(&version)?, list]) {
        ensure!(script.matches(mark).count() == 1, "{SCRIPT} must have one {mark}");
        script = script.replace(mark, &value);
    }
    files.insert(SCRIPT.to_owned(), script.into_bytes());
    Ok(())
}

/// The hash of a content, in the form that `fetch` and content security policies take.
pub fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn filled(files: &[(&str, &str)]) -> String {
        let mut files: BTreeMap<String, Vec<u8>> =
            files.iter().map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec())).collect();
        files.insert(SCRIPT.to_owned(), b"const VERSION = \"the version\", FILES = \"the files\";".to_vec());
        fill_in(&mut files).expect("filled in");
        String::from_utf8(files.remove(SCRIPT).expect("the script")).expect("text")
    }

    #[test]
    fn every_file_is_listed_with_its_hash() {
        // The hash of "abc": FIPS 180-4's own example, in base64.
        let abc = "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=";
        assert_eq!(integrity(b"abc"), abc);
        let script = filled(&[("a.js", "abc"), ("index.html", "")]);
        assert!(
            script.contains(&format!("FILES = [[\"a.js\",\"{abc}\"],[\"index.html\",\"sha256-")),
            "{script}"
        );
        assert!(!script.contains("the "), "{script}");
    }

    #[test]
    fn the_version_changes_with_any_file() {
        let of = |name, text| filled(&[(name, text)]).split(", FILES").next().map(str::to_owned);
        assert_eq!(of("a", "1"), of("a", "1"));
        assert_ne!(of("a", "1"), of("a", "2"));
        assert_ne!(of("a", "1"), of("b", "1"));
    }

    #[test]
    fn a_script_without_room_for_the_list_is_refused() {
        let with = |script: &str| fill_in(&mut [(SCRIPT.to_owned(), script.as_bytes().to_vec())].into());
        assert!(with("\"the version\"").is_err());
        assert!(with("\"the version\" \"the files\" \"the files\"").is_err());
        assert!(fill_in(&mut BTreeMap::new()).is_err());
    }
}
