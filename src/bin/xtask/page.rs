//! Building the page: Trunk into target/site, then the cut into parts, the optimiser and the finishing into
//! dist/.
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::time::Instant;

use anyhow::{Context, Result};

use crate::chunks;
use crate::finish::{self, Files};
use crate::run::run;
use crate::tools::{self, Optimiser};
use crate::{dist, root};

/// How hard the optimiser works, and at what.
const LEVEL: &str = "-O3";

/// Builds the page into dist/. `quick` skips the optimisations.
pub fn build(quick: bool) -> Result<()> {
    let start = Instant::now();
    let root = root();
    let tools = tools::ensure(&root)?;
    let mut trunk = tools.command("trunk");
    trunk.current_dir(&root).args(["build", "--offline=true", "--log", "warn"]);
    if !quick {
        trunk.arg("--release");
    }
    // Some machines set NO_COLOR=1, which Trunk takes for a flag that must say true or false.
    trunk.env_remove("NO_COLOR");
    run(&mut trunk).context("Trunk could not build the page")?;

    let mut files = read(&root.join("target/site"))?;
    let profile = if quick { "page-quick" } else { "page" };
    let linked = root.join("target/wasm32-unknown-unknown").join(profile).join("page.wasm");
    chunks::cut(&mut files, &linked, &tools, &root.join("target/parts"))?;
    if !quick && let Some(optimiser) = &tools.optimiser {
        let modules = files.iter_mut().filter(|(name, _)| name.ends_with(".wasm"));
        optimised(optimiser, modules.map(|(_, wasm)| wasm), &root.join("target/optimised"))?;
    }
    write(&finish::finish(files)?, &dist())?;
    eprintln!("The page is in {} ({:.1} s)", dist().display(), start.elapsed().as_secs_f64());
    Ok(())
}

/// Optimises modules. Outcomes are kept, because the optimiser takes many seconds and most builds change
/// nothing.
pub fn optimised<'a>(
    optimiser: &Optimiser,
    modules: impl Iterator<Item = &'a mut Vec<u8>>,
    kept: &Path,
) -> Result<()> {
    fs::create_dir_all(kept)?;
    let mut wanted = BTreeSet::new();
    for module in modules {
        let name = finish::short_hash(&[module, optimiser.recipe(LEVEL).as_bytes()].concat());
        let after = kept.join(format!("{name}.wasm"));
        if !after.is_file() {
            let (before, part) = (kept.join("before.wasm"), kept.join("part.wasm"));
            fs::write(&before, &module)?;
            optimiser.optimise(LEVEL, &before, &part)?;
            fs::rename(&part, &after)?;
            fs::remove_file(&before)?;
        }
        *module = fs::read(&after).with_context(|| format!("could not read {}", after.display()))?;
        wanted.insert(after);
    }
    // Only the newest are worth their room.
    for entry in fs::read_dir(kept)? {
        let path = entry?.path();
        if !wanted.contains(&path) {
            fs::remove_file(path)?;
        }
    }
    Ok(())
}

/// All files below a folder, by their path in it.
pub fn read(dir: &Path) -> Result<Files> {
    let mut files = BTreeMap::new();
    let mut open = vec![dir.to_path_buf()];
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(&folder).with_context(|| format!("could not read {}", folder.display()))? {
            let path = entry?.path();
            if path.is_dir() {
                open.push(path);
                continue;
            }
            let name = path.strip_prefix(dir)?.to_string_lossy().replace('\\', "/");
            files.insert(name, fs::read(&path)?);
        }
    }
    Ok(files)
}

/// Puts the files in place of what the folder held before.
fn write(files: &Files, dir: &Path) -> Result<()> {
    let (fresh, old) = (dir.with_extension("fresh"), dir.with_extension("old"));
    for leftover in [&fresh, &old] {
        let _ = fs::remove_dir_all(leftover);
    }
    for (name, bytes) in files {
        let path = fresh.join(name);
        fs::create_dir_all(path.parent().context("a file without a folder")?)?;
        fs::write(path, bytes)?;
    }
    // A server that is running meets the old page or the new one, never half of each.
    if dir.exists() {
        fs::rename(dir, &old)?;
    }
    fs::rename(&fresh, dir)?;
    let _ = fs::remove_dir_all(&old);
    Ok(())
}
