//! The whole page as one HTML file, for a stick or an e-mail: opened from a disk, it needs no host and no
//! signal. Its policy allows the one script and the one style it carries, by their hashes, and no request.
use std::fmt::Write as _;
use std::fs;

use anyhow::{Context, Result, bail, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use crate::chunks::is_part;
use crate::finish::{Files, tags, without_comments};
use crate::precache::integrity;
use crate::{dist, page, root};

/// What the script ends with, behind the glue.
const TAIL: &str = include_str!("../../../public/single.js");

/// Puts the page in dist/ together in dist-single/tankful.html.
pub fn build() -> Result<()> {
    let html = single(&page::read(&dist())?)?;
    let folder = root().join("dist-single");
    fs::create_dir_all(&folder)?;
    let file = folder.join("tankful.html");
    fs::write(&file, &html)?;
    eprintln!("The page in one file is {} ({} bytes)", file.display(), html.len());
    Ok(())
}

/// The one file, from those of a finished page.
fn single(files: &Files) -> Result<String> {
    let text =
        |start: &str, end: &str| -> Result<&str> { Ok(std::str::from_utf8(found(files, start, end)?)?) };
    let html = text("index", ".html")?;
    let style = text("page-", ".css")?;
    let glue = no_module(&parts_inside(text("page-", ".js")?))?;
    let code = format!("(() => {{\n\"use strict\";\n{glue}{}}})();\n", without_comments(TAIL));
    // The program, and its parts under their names.
    let mut modules = String::new();
    for (name, bytes) in files.iter().filter(|(name, _)| name.ends_with(".wasm")) {
        let id = if is_part(name) { name.as_str() } else { "wasm" };
        let _ =
            writeln!(modules, "<script type=\"text/plain\" id=\"{id}\">{}</script>", STANDARD.encode(bytes));
    }
    for (what, inline) in [("style", style), ("script", &code)] {
        let lower = inline.to_ascii_lowercase();
        let breaks = ["</script", "</style", "<!--", "\r"].into_iter().find(|end| lower.contains(end));
        if let Some(end) = breaks {
            bail!("the {what} has {end:?} in it and cannot stand inside a page");
        }
    }
    let policy = format!(
        "default-src 'none'; script-src '{}' 'wasm-unsafe-eval'; style-src '{}'; img-src data: blob:; \
         worker-src blob:; base-uri 'none'; form-action 'none'",
        integrity(code.as_bytes()),
        integrity(style.as_bytes())
    );
    let icon = STANDARD.encode(found(files, "favicon", ".svg")?);
    let head = format!(
        "<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n\
         <link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">\n<style>{style}</style>"
    );
    let tail = format!("{modules}<script id=\"code\">{code}</script>\n</body>");

    // What refers to other files goes; the policy and the code come in its place.
    let (mut out, mut policies) = (html.to_owned(), 0);
    for tag in tags(html) {
        let whole = format!("<{tag}>");
        if tag.starts_with("link ") {
            out = out.replacen(&whole, "", 1);
        } else if tag.starts_with("script ") {
            out = out.replacen(&format!("{whole}</script>"), "", 1);
        } else if tag.contains("Content-Security-Policy") {
            out = out.replacen(&whole, &head, 1);
            policies += 1;
        }
    }
    ensure!(policies == 1, "index.html must have one content security policy");
    let (before, after) = out.rsplit_once("</body>").context("index.html has no end of its body")?;
    let out = format!("{before}{tail}{after}");
    let outside = tags(&out).into_iter().find(|tag| tag.contains("src=") || tag.contains("href=\"./"));
    match outside {
        Some(tag) => bail!("<{tag}> refers to another file"),
        None => Ok(out),
    }
}

/// The glue with its parts taken from the page they stand in, instead of from files.
fn parts_inside(glue: &str) -> String {
    glue.replace("fetch(new URL(\"./", "part((\"").replace(".wasm\", import.meta.url))", ".wasm\"))")
}

/// The glue as a plain script. Chromium refuses a page opened from a disk any worker that is a module
/// ("cross-origin redirects of the top-level worker script"), and page and worker run the same text.
fn no_module(glue: &str) -> Result<String> {
    let mut out = String::with_capacity(glue.len());
    for line in glue.lines() {
        if line.starts_with("export {") && line.ends_with("};") {
            continue;
        }
        let line = line.strip_prefix("export ").unwrap_or(line).replace("import.meta.url", "location.href");
        let module = ["export ", "default ", "import "].iter().any(|word| line.starts_with(word));
        ensure!(!module && !line.contains("import.meta") && !line.contains("import("), "not plain: {line}");
        out.push_str(&line);
        out.push('\n');
    }
    Ok(out)
}

/// The content of the one file whose name starts and ends like this.
fn found<'a>(files: &'a Files, start: &str, end: &str) -> Result<&'a [u8]> {
    let fits = |name: &str| name.starts_with(start) && name.ends_with(end);
    let (_, bytes) =
        files.iter().find(|(name, _)| fits(name)).with_context(|| format!("dist/ has no {start}…{end}"))?;
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(style: &str) -> Files {
        let html = "<!doctype html><head><meta\n http-equiv=\"Content-Security-Policy\" content=\"default-src 'self'\" />\
             <link rel=\"manifest\" href=\"./m.json\"><link rel=\"stylesheet\" href=\"./page-1.css\">\
             <script type=\"module\" src=\"./boot-1.js\"></script></head><body><p>Words</p></body>";
        [
            ("index.html", html),
            ("page-1.css", style),
            ("page-1.js", "export class A {\n}\nat(import.meta.url);\nsrc = fetch(new URL(\"./split_x-1.wasm\", import.meta.url));\nexport { A, B as default };\n"),
            ("split_x-1.wasm", "\0asmx"),
            ("page_bg-1.wasm", "\0asm"),
            ("favicon.svg", "<svg/>"),
        ]
        .into_iter()
        .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
        .collect()
    }

    /// What stands between two marks.
    fn between<'a>(text: &'a str, start: &str, end: &str) -> &'a str {
        text.split_once(start).and_then(|(_, rest)| rest.split_once(end)).expect(start).0
    }

    #[test]
    fn everything_is_inside_and_its_hashes_are_those_of_what_stands_there() {
        let html = single(&files("p { color: red }")).expect("one file");
        let policy = between(&html, "Security-Policy\" content=\"", "\"");
        let code = between(&html, "id=\"code\">", "</script>");
        let style = between(&html, "<style>", "</style>");
        assert!(policy.contains(&format!("script-src '{}'", integrity(code.as_bytes()))), "{policy}");
        assert!(policy.contains(&format!("style-src '{}'", integrity(style.as_bytes()))), "{policy}");
        assert!(!policy.contains("self") && !html.contains("./"), "{html}");
        assert!(html.contains("<p>Words</p>") && code.contains("\nclass A {\n}\nat(location.href);\n"));
        assert_eq!(between(&html, "id=\"split_x-1.wasm\">", "</script>"), STANDARD.encode("\0asmx"));
        assert!(code.contains("src = part((\"split_x-1.wasm\"));"), "{code}");
        assert_eq!(between(&html, "id=\"wasm\">", "</script>"), STANDARD.encode("\0asm"));
    }

    #[test]
    fn what_would_end_its_own_element_is_refused() {
        assert!(single(&files("p::after { content: '</style>' }")).is_err());
        assert!(single(&Files::new()).is_err());
        for module in ["import a from './a.js';", "export default a;", "const a = import('./a.js');"] {
            assert!(no_module(module).is_err(), "{module}");
        }
    }
}
