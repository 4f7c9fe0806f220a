//! The finishing of a built page: names that carry a hash of their content, so that a browser never mixes
//! files of two releases, and a refusal of anything its content security policy would block or that would
//! tie it to one server or folder.
use std::collections::BTreeMap;

use anyhow::{Context, Result, bail};
use sha2::{Digest, Sha256};

use crate::chunks::is_part;
use crate::precache;

/// The files of a page by their path in it.
pub type Files = BTreeMap<String, Vec<u8>>;

/// What runs the page, each after those it refers to; these, the parts of the program and the style sheets
/// get a hash in their name.
const RUN: [&str; 3] = ["page_bg.wasm", "page.js", "boot.js"];

/// The scripts, written by hand and by wasm-bindgen, and the one style sheet.
const COMMENTED: [&str; 5] = ["boot.js", "worker.js", "page.js", "page.css", precache::SCRIPT];

/// Finishes a page.
///
/// # Errors
/// When a file is missing or nothing refers to it, or the page breaks a rule of its own (see [`faults`]).
pub fn finish(mut files: Files) -> Result<Files> {
    one_sheet(&mut files)?;
    for name in COMMENTED {
        let text = files.remove(name).with_context(|| format!("the built page has no {name}"))?;
        let text = String::from_utf8(text).with_context(|| format!("{name} is not text"))?;
        files.insert(name.to_owned(), without_comments(&text).into_bytes());
    }
    let free: Vec<String> =
        files.keys().filter(|name| name.ends_with(".css") || is_part(name)).cloned().collect();
    for name in free.iter().map(String::as_str).chain(RUN) {
        let bytes = files.remove(name).with_context(|| format!("the built page has no {name}"))?;
        let (stem, ending) = name.rsplit_once('.').unwrap_or((name, ""));
        let hashed = format!("{stem}-{}.{ending}", short_hash(&bytes));
        let mut uses = 0;
        for (other, text) in
            files.iter_mut().filter(|(other, _)| other.ends_with(".js") || other.ends_with(".html"))
        {
            let old = std::str::from_utf8(text).with_context(|| format!("{other} is not text"))?;
            let (new, count) = renamed(old, name, &hashed);
            uses += count;
            *text = new.into_bytes();
        }
        if uses == 0 {
            bail!("nothing in the built page refers to {name}");
        }
        files.insert(hashed, bytes);
    }
    let html = files.get("index.html").context("the built page has no index.html")?;
    let faults = faults(std::str::from_utf8(html).context("index.html is not text")?);
    if !faults.is_empty() {
        bail!("index.html breaks the page's own rules:\n  {}", faults.join("\n  "));
    }
    precache::fill_in(&mut files)?;
    Ok(files)
}

/// A script or style sheet without the lines that are only a comment and without its indents: they are for
/// people, and a visitor's download is dear.
pub fn without_comments(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut inside = false;
    for line in text.lines().map(str::trim) {
        inside |= line.starts_with("/*");
        if inside {
            inside = !line.ends_with("*/");
        } else if !line.is_empty() && !line.starts_with("//") {
            out.push_str(line);
            out.push('\n');
        }
    }
    out
}

/// Puts the style sheets of the page together in one, in the order of their links: the sources are cut by
/// meaning, but one file is one request, and packs smaller.
fn one_sheet(files: &mut Files) -> Result<()> {
    let html = files.get("index.html").context("the built page has no index.html")?;
    let mut html = String::from_utf8(html.clone()).context("index.html is not text")?;
    let links: Vec<(String, String)> = tags(&html)
        .into_iter()
        .filter(|tag| tag.starts_with("link ") && tag.contains("stylesheet"))
        .filter_map(|tag| {
            let name = tag.split("./").nth(1)?.split(['"', '\'', ' ']).next()?;
            Some((format!("<{tag}>"), name.to_owned()))
        })
        .collect();
    let Some((first, _)) = links.first() else { return Ok(()) };
    let mut whole = Vec::new();
    for (_, name) in &links {
        whole.extend(files.remove(name).with_context(|| format!("the built page has no {name}"))?);
        whole.push(b'\n');
    }
    html = html.replacen(first, "<link rel=\"stylesheet\" href=\"./page.css\">", 1);
    for (link, _) in links.iter().skip(1) {
        html = html.replacen(link, "", 1);
    }
    files.insert("page.css".to_owned(), whole);
    files.insert("index.html".to_owned(), html.into_bytes());
    Ok(())
}

/// The start of a content's SHA-256, long enough for a file name.
pub fn short_hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(5).map(|byte| format!("{byte:02x}")).collect()
}

/// A text with a file's name replaced wherever it stands as a whole address, and how often it did.
fn renamed(text: &str, old: &str, new: &str) -> (String, usize) {
    let (mut out, mut rest, mut count) = (String::with_capacity(text.len()), text, 0);
    while let Some(at) = rest.find(old) {
        let (before, from) = rest.split_at(at);
        let after = &from[old.len()..];
        let opens = before.ends_with(['"', '\'', '`', '/', '=']);
        let closes = after.is_empty() || after.starts_with(['"', '\'', '`', '>', ' ']);
        out.push_str(before);
        out.push_str(if opens && closes { new } else { old });
        count += usize::from(opens && closes);
        rest = after;
    }
    out.push_str(rest);
    (out, count)
}

/// What in a page's HTML the content security policy would block, or would tie it to a server or folder.
fn faults(html: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let mut policy = false;
    for tag in tags(html) {
        let name = tag.split([' ', '\n', '\t', '>']).next().unwrap_or_default().to_ascii_lowercase();
        let lower = tag.to_ascii_lowercase();
        let loads = matches!(name.as_str(), "script" | "link" | "style" | "img");
        if name == "meta" && lower.contains("content-security-policy") {
            policy = true;
            faults.extend(
                ["'unsafe-inline'", "'unsafe-eval'", "*"]
                    .iter()
                    .filter(|weak| lower.contains(**weak))
                    .map(|weak| format!("the content security policy allows {weak}")),
            );
        }
        if loads && !policy {
            faults.push(format!("<{tag}> stands before the content security policy"));
        }
        if name == "style" || (name == "script" && !lower.contains("src=")) {
            faults.push(format!("<{tag}> is inline"));
        }
        for attribute in lower.split_whitespace().skip(1) {
            let (key, value) = attribute.split_once('=').unwrap_or((attribute, ""));
            let value = value.trim_start_matches(['"', '\'']);
            if key == "style" || (key.starts_with("on") && !value.is_empty()) {
                faults.push(format!("<{tag}> has an inline {key}"));
            }
            if matches!(key, "src" | "href") && (value.starts_with('/') || value.contains("://")) {
                faults.push(format!("<{tag}> has an address that is not relative"));
            }
        }
    }
    if !policy {
        faults.push("there is no content security policy".to_owned());
    }
    faults
}

/// The opening tags of a page, comments left out.
pub fn tags(html: &str) -> Vec<&str> {
    let mut tags = Vec::new();
    let mut rest = html;
    while let Some(at) = rest.find('<') {
        rest = &rest[at + 1..];
        let end = if rest.starts_with("!--") { rest.find("-->") } else { rest.find('>') };
        let (tag, after) = rest.split_at(end.unwrap_or(rest.len()));
        if tag.starts_with(|first: char| first.is_ascii_alphabetic()) {
            tags.push(tag);
        }
        rest = after;
    }
    tags
}

#[cfg(test)]
mod tests {
    use super::*;

    const POLICY: &str =
        r#"<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'">"#;

    fn built() -> Files {
        let html = format!(
            "<!doctype html><head>{POLICY}<link rel=stylesheet href=./page.css><link rel=\"preload\" href=\"./page_bg.wasm\">\
             <script type=\"module\" src=\"./boot.js\"></script></head>"
        );
        [
            ("index.html", html.as_str()),
            ("boot.js", r#"import init from "./page.js"; init(new URL("./page_bg.wasm", import.meta.url))"#),
            ("page.js", "export default (a = new URL('page_bg.wasm', import.meta.url)) => a"),
            ("page.css", "p { color: red }"),
            ("page_bg.wasm", "\0asm"),
            ("worker.js", "// why\nself.onmessage = null"),
            ("service-worker.js", "const V = \"the version\", F = \"the files\";"),
        ]
        .into_iter()
        .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
        .collect()
    }

    /// Name and text of the file whose name starts and ends like this.
    fn text<'a>(files: &'a Files, start: &str, end: &str) -> (&'a str, &'a str) {
        let fits = |name: &str| name.starts_with(start) && name.ends_with(end);
        let (name, bytes) = files.iter().find(|(name, _)| fits(name)).expect(start);
        (name, std::str::from_utf8(bytes).expect("text"))
    }

    #[test]
    fn every_reference_follows_its_file_to_the_new_name() {
        let files = finish(built()).expect("finished");
        let wasm = text(&files, "page_bg-", ".wasm").0;
        let (glue, boot) = (text(&files, "page-", ".js"), text(&files, "boot-", ".js"));
        assert!(glue.1.contains(&format!("'{wasm}'")));
        assert!(boot.1.contains(&format!("./{wasm}\"")) && boot.1.contains(&format!("./{}\"", glue.0)));
        let html = text(&files, "index", ".html").1;
        for name in [wasm, boot.0, text(&files, "page-", ".css").0] {
            assert!(html.contains(name), "{name} in {html}");
        }
        assert!(!html.contains("./page.css") && !html.contains("./boot.js"));
        assert_eq!(text(&files, "worker", ".js").1, "self.onmessage = null\n");
        assert_eq!(files.len(), 7);
        let kept = text(&files, "service-worker", ".js").1;
        assert!(
            files.keys().all(|name| kept.contains(&format!("\"{name}\"")) || name == precache::SCRIPT),
            "{kept}"
        );
    }

    #[test]
    fn a_name_changes_when_what_its_file_refers_to_changes() {
        let mut other = built();
        other.insert("page_bg.wasm".to_owned(), b"\0asm2".to_vec());
        let (one, two) = (finish(built()).expect("one"), finish(other).expect("two"));
        assert_ne!(text(&one, "boot-", ".js").0, text(&two, "boot-", ".js").0);
    }

    #[test]
    fn a_missing_or_unused_file_is_refused() {
        let mut files = built();
        files.remove("page.js");
        assert!(finish(files).is_err());
        let mut files = built();
        files.insert("boot.js".to_owned(), b"nothing".to_vec());
        assert!(finish(files).is_err());
    }

    #[test]
    fn comments_and_indents_go_and_code_stays() {
        let text =
            "/**\n * What `f` does. */\n  f(\"/* no */\"); // why\n\n// alone\n* { a: b }\n/* c */\nd\n";
        assert_eq!(without_comments(text), "f(\"/* no */\"); // why\n* { a: b }\nd\n");
    }

    #[test]
    fn only_whole_names_are_renamed() {
        assert_eq!(
            renamed("'page.js' 'mypage.js' 'page.json'", "page.js", "x"),
            ("'x' 'mypage.js' 'page.json'".into(), 1)
        );
    }

    #[test]
    fn what_the_policy_would_block_is_a_fault() {
        assert_eq!(
            faults(&format!("{POLICY}<script src=./boot.js></script><p hidden>x</p>")),
            Vec::<String>::new()
        );
        for bad in [
            "<script>run()</script>",
            "<style>p{}</style>",
            "<p style=\"color:red\">x</p>",
            "<body onload=\"run()\">",
            "<link href=\"/page.css\">",
            "<img src=https://example.org/x.png>",
        ] {
            assert_eq!(faults(&format!("{POLICY}{bad}")).len(), 1, "{bad}");
        }
        assert_eq!(faults("<p>x</p>"), ["there is no content security policy"]);
        assert_eq!(faults(&format!("<script src=./a.js></script>{POLICY}")).len(), 1);
        assert_eq!(faults(&POLICY.replace("'self'", "'self' 'unsafe-inline'")).len(), 1);
    }
}
