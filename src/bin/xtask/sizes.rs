//! How large the page is to download.
use std::io::Write as _;

use anyhow::Result;

use crate::chunks::is_part;
use crate::finish::Files;

/// What the first visit may download in all, compressed by brotli, in bytes: everything but the parts that
/// are fetched when first shown.
pub const LIMIT: usize = 350_000;

/// What the files are for, by the endings of their names: the first that fits.
const KINDS: [(&str, &[&str]); 6] = [
    ("the program", &[".wasm"]),
    (
        "no signal, installing",
        &["service-worker.js", ".webmanifest", "icon-192.png", "icon-512.png", "icon.svg"],
    ),
    ("scripts", &[".js"]),
    ("looks", &[".css"]),
    ("the frame", &[".html"]),
    ("other", &[]),
];

/// One file of the page.
pub struct Size {
    /// Its path.
    pub name: String,
    /// Its bytes on the disk.
    pub raw: usize,
    /// Its bytes as a server sends it.
    pub brotli: usize,
}

/// The sizes of a page's files, the largest first.
pub fn of(files: &Files) -> Result<Vec<Size>> {
    let mut sizes = Vec::new();
    for (name, bytes) in files {
        sizes.push(Size { name: name.clone(), raw: bytes.len(), brotli: compressed(bytes)? });
    }
    sizes.sort_by(|a, b| b.brotli.cmp(&a.brotli).then_with(|| a.name.cmp(&b.name)));
    Ok(sizes)
}

/// What the first visit downloads, in brotli bytes. The service worker's and the shortcuts' files count, though
/// a browser asks for them later.
pub fn first_load(sizes: &[Size]) -> usize {
    sizes.iter().filter(|size| !is_part(&size.name)).map(|size| size.brotli).sum()
}

/// Prints the sizes as a table.
pub fn print(sizes: &[Size]) {
    println!("{:>10} {:>10}  file", "raw", "brotli");
    for size in sizes {
        println!("{:>10} {:>10}  {}", size.raw, size.brotli, size.name);
    }
    println!();
    let line = |what: &str, counts: &dyn Fn(&&Size) -> bool| {
        let (raw, brotli): (usize, usize) =
            sizes.iter().filter(counts).fold((0, 0), |sum, size| (sum.0 + size.raw, sum.1 + size.brotli));
        println!("{raw:>10} {brotli:>10}  {what}");
    };
    for (kind, endings) in KINDS {
        line(kind, &|size| !is_part(&size.name) && kind_of(&size.name) == endings);
    }
    line(&format!("at the first visit; limit {LIMIT} brotli"), &|size| !is_part(&size.name));
    line("parts of the program, when first shown", &|size| is_part(&size.name));
    line("in all, kept for no signal", &|_| true);
}

/// The endings of a file's kind; those of the last kind for a file of no other.
fn kind_of(name: &str) -> &'static [&'static str] {
    let known = KINDS.iter().find(|(_, endings)| endings.iter().any(|ending| name.ends_with(ending)));
    known.or(KINDS.last()).map_or(&[], |(_, endings)| *endings)
}

/// The length after brotli at its hardest (quality 11, as a static host prepares its files).
fn compressed(bytes: &[u8]) -> Result<usize> {
    let mut writer = brotli::CompressorWriter::new(Vec::new(), 1 << 16, 11, 22);
    writer.write_all(bytes)?;
    Ok(writer.into_inner().len())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_add_up_and_are_compressed() {
        let files = [("a", vec![7_u8; 10_000]), ("b", b"short".to_vec())];
        let sizes = of(&files.map(|(name, bytes)| (name.to_owned(), bytes)).into()).expect("sizes");
        assert_eq!(sizes.iter().map(|size| size.raw).sum::<usize>(), 10_005);
        assert!(first_load(&sizes) < 100, "{}", first_load(&sizes));
        assert!(sizes[0].brotli >= sizes[1].brotli);
    }

    #[test]
    fn each_file_is_of_one_kind() {
        let kind = |name| KINDS.iter().find(|(_, endings)| *endings == kind_of(name)).map(|(kind, _)| *kind);
        assert_eq!(kind("page_bg-0123456789.wasm"), Some("the program"));
        assert_eq!(kind("service-worker.js"), Some("no signal, installing"));
        assert_eq!(kind("boot-0123456789.js"), Some("scripts"));
        assert_eq!(kind("notes.txt"), Some("other"));
    }
}
