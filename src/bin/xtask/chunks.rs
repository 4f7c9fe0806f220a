//! The page's program, cut into what the first visit needs and the parts that are fetched when first shown
//! (`src/ui/lazy.rs`), and its glue.
//!
//! The cut is made in the linked module, before wasm-bindgen sees it: what only a part reaches goes into the
//! part's file, what several parts share into files of its own (`chunk_…`).
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, anyhow, ensure};
use wasm_split_cli_support::{Options, transform};

use crate::finish::Files;
use crate::run::run;
use crate::tools::Tools;

/// What the glue imports the loaders of the parts from.
const LOADERS: &str = "__wasm_split.js";

/// How the loaders start a part's module: only where the host gives WebAssembly its own media type.
const STREAMED: &str = "WebAssembly.instantiateStreaming(src, imports)";

/// What they do instead: parts are small, and not every host knows the type.
const WHOLE: &str = "startPart(src, imports)";

/// What [`WHOLE`] calls.
const START: &str = r"const startPart = async (coming, imports) => {
    const response = await coming;
    if (!response.ok) throw new Error(`${response.status} for ${response.url}`);
    return WebAssembly.instantiate(await response.arrayBuffer(), imports);
};
";

/// The page's WebAssembly.
pub const WASM: &str = "page_bg.wasm";

/// The page's glue.
const GLUE: &str = "page.js";

/// Whether a file holds a part of the program that the first visit does not need.
pub fn is_part(name: &str) -> bool {
    let name = name.rsplit('/').next().unwrap_or(name);
    name.ends_with(".wasm") && (name.starts_with("split_") || name.starts_with("chunk_"))
}

/// Puts the program as linked, cut and bound, in the place of the whole one that Trunk bound.
pub fn cut(files: &mut Files, linked: &Path, tools: &Tools, work: &Path) -> Result<()> {
    let _ = fs::remove_dir_all(work);
    let wasm = fs::read(linked).with_context(|| format!("could not read {}", linked.display()))?;
    let main = work.join("main.wasm");
    let mut options = Options::new(&wasm);
    options.output_dir = work;
    options.main_out_path = &main;
    options.link_name = LOADERS;
    options.main_module = "./page.js";
    options.emit_dwarf = false;
    let cut =
        transform(options).map_err(|error| anyhow!("the page could not be cut into parts: {error:#}"))?;

    let bound = work.join("bound");
    let mut bind = tools.command("wasm-bindgen");
    // The parts find what they need in the main module by its exports.
    bind.args([
        "--target",
        "web",
        "--no-typescript",
        "--keep-lld-exports",
        "--out-name",
        "page",
        "--out-dir",
    ]);
    run(bind.arg(&bound).arg(&main)).context("wasm-bindgen could not bind the page")?;

    let loaders = fs::read_to_string(work.join(LOADERS))?;
    let glue = joined(&fs::read_to_string(bound.join(GLUE))?, &loaders)?;
    files.insert(GLUE.to_owned(), glue.into_bytes());
    files.insert(WASM.to_owned(), fs::read(bound.join(WASM))?);
    for part in cut.split_modules {
        let name = part.file_name().context("a part without a name")?.to_string_lossy().into_owned();
        files.insert(name, fs::read(&part)?);
    }
    Ok(())
}

/// Glue and loaders as one script. Each would import the other, and then neither could have the hash of its
/// content in its name.
fn joined(glue: &str, loaders: &str) -> Result<String> {
    let mut top = String::from(START);
    let mut names = Vec::new();
    for line in loaders.lines().filter(|line| !line.starts_with("import ")) {
        let plain = line.strip_prefix("export ").unwrap_or(line);
        if plain.len() < line.len() {
            let name = plain.strip_prefix("const ").and_then(|rest| rest.split(' ').next());
            names.push(name.with_context(|| format!("a loader of an unknown form: {line}"))?);
        }
        top.push_str(&plain.replace(STREAMED, WHOLE));
        top.push('\n');
    }
    ensure!(!names.is_empty() && !top.contains("Streaming"), "the loaders of the parts have another form");
    let names = names.join(", ");
    let mut rest = String::with_capacity(glue.len());
    for line in glue.lines() {
        // import * as import1 from "__wasm_split.js"
        let imported = line.strip_prefix("import * as ").filter(|rest| rest.contains(LOADERS));
        match imported.and_then(|rest| rest.split(' ').next()) {
            Some(name) => rest.push_str(&format!("const {name} = {{ {names} }};\n")),
            None => {
                rest.push_str(line);
                rest.push('\n');
            }
        }
    }
    ensure!(!rest.lines().any(|line| line.starts_with("import ")), "the glue imports another file");
    Ok(top + &rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOADER: &str = "import { initSync } from \"./page.js\";\nconst a = 1;\n\
        export const load_x = wrap(() => { return async (imports) => (WebAssembly.instantiateStreaming(src, imports)); });\n";

    #[test]
    fn glue_and_loaders_become_one_script_without_imports() {
        let glue = "import * as import1 from \"__wasm_split.js\"\nexport function f() {}\n";
        let script = joined(glue, LOADER).expect("joined");
        assert!(script.contains("const import1 = { load_x };\nexport function f() {}\n"), "{script}");
        assert!(script.contains(
            "const load_x = wrap(() => { return async (imports) => (startPart(src, imports)); });"
        ));
        assert!(!script.contains("import {") && !script.contains("export const"));
    }

    #[test]
    fn another_form_of_loaders_or_glue_is_refused() {
        assert!(joined("", "const a = 1;").is_err());
        assert!(joined("import x from 'y'", LOADER).is_err());
    }

    #[test]
    fn parts_are_told_from_the_program() {
        assert!(is_part("split_jobs-0123456789.wasm") && is_part("a/chunk_4.wasm"));
        assert!(!is_part("page_bg-0123456789.wasm") && !is_part("split_jobs.js"));
    }
}
