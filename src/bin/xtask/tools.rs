//! What building the page needs, installed where it is missing: the wasm target, Trunk, wasm-bindgen's
//! command, and an optimiser where one can be had.
//!
//! Own installs go to a folder of their own (`~/.cache/tankful`), so that nothing the user has is
//! replaced, a fresh clone finds them, and `cargo clean` keeps them.
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::run::{answer, cargo, find, path_with, quietly, run};

const TRUNK: &str = "0.21.14";
const NPM_BINARYEN: &str = "binaryen@132.0.0";
/// Older optimisers write a module with two tables wrongly (seen with 108, Debian 12's): the page then
/// does not start.
const OLDEST_OPTIMISER: u32 = 120;
const WASM: &str = "wasm32-unknown-unknown";

/// What Rust's compiler takes for granted in a browser of today. Not "all features": with those the optimiser
/// writes what no browser reads yet.
const FEATURES: [&str; 8] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-call-indirect-overlong",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// The tools found or installed.
pub struct Tools {
    /// Folders that stand before the PATH while building.
    dirs: Vec<PathBuf>,
    /// The optimiser, where there is one.
    pub optimiser: Option<Optimiser>,
}

/// A `wasm-opt` of a version that can be trusted with the page.
pub struct Optimiser {
    program: PathBuf,
    /// As it calls itself.
    version: String,
}

impl Tools {
    /// One of the tools, with the others in its reach.
    pub fn command(&self, program: &str) -> Command {
        let mut command = Command::new(find(program, &self.dirs).unwrap_or_else(|| program.into()));
        command.env("PATH", path_with(&self.dirs));
        command
    }
}

impl Optimiser {
    /// Optimises one WebAssembly file into another. `level` is `-O3`, `-Oz` and the like.
    pub fn optimise(&self, level: &str, from: &Path, to: &Path) -> Result<()> {
        quietly(Command::new(&self.program).arg(level).args(FEATURES).arg(from).arg("-o").arg(to))
    }

    /// What the outcome depends on, besides the module.
    pub fn recipe(&self, level: &str) -> String {
        format!("{} {level} {}", self.version, FEATURES.concat())
    }

    fn number(&self) -> u32 {
        self.version.split_whitespace().find_map(|word| word.parse().ok()).unwrap_or(0)
    }
}

/// Finds the tools, installing those that are missing.
pub fn ensure(root: &Path) -> Result<Tools> {
    wasm_target(root)?;
    let home = home()?;
    let bin = home.join("bin");
    let dirs = vec![bin, home.join("node_modules/.bin")];
    cargo_tool(root, &home, &dirs, "trunk", "trunk", TRUNK, true)?;
    let bindgen = locked_version(root, "wasm-bindgen")?;
    // Without --locked: the lock file it was published with asks for versions that may be gone.
    cargo_tool(root, &home, &dirs, "wasm-bindgen", "wasm-bindgen-cli", &bindgen, false)?;
    Ok(Tools { optimiser: optimiser(&home, &dirs), dirs })
}

/// Where own installs live.
fn home() -> Result<PathBuf> {
    let cache = std::env::var_os("XDG_CACHE_HOME").map(PathBuf::from);
    let home = std::env::var_os("HOME").or_else(|| std::env::var_os("USERPROFILE")).map(PathBuf::from);
    let cache = cache
        .or_else(|| home.map(|home| home.join(".cache")))
        .context("neither HOME nor XDG_CACHE_HOME is set")?;
    Ok(cache.join("tankful"))
}

/// Sees to it that Rust can compile for the browser.
pub fn wasm_target(root: &Path) -> Result<()> {
    let mut ask = Command::new("rustc");
    ask.current_dir(root).args(["--print", "target-libdir", "--target", WASM]);
    if answer(&mut ask).is_some_and(|dir| Path::new(&dir).is_dir()) {
        return Ok(());
    }
    eprintln!("Installing the {WASM} target...");
    run(Command::new("rustup").current_dir(root).args(["target", "add", WASM])).with_context(|| {
        format!(
            "Rust's {WASM} target is missing and could not be fetched. Way round: with network access run \
             `rustup target add {WASM}`, or install your distribution's package of it (Debian: libstd-rust-dev-wasm32)"
        )
    })
}

fn cargo_tool(
    root: &Path,
    home: &Path,
    dirs: &[PathBuf],
    program: &str,
    package: &str,
    version: &str,
    locked: bool,
) -> Result<()> {
    let right = |path: PathBuf| {
        answer(Command::new(path).arg("--version"))
            .is_some_and(|said| said.split_whitespace().nth(1) == Some(version))
    };
    if find(program, dirs).is_some_and(right) {
        return Ok(());
    }
    eprintln!("Installing {package} {version} (once, some minutes)...");
    let mut install = cargo(root);
    install.args(["install", "--force", "--root"]).arg(home).arg(format!("{package}@{version}"));
    if locked {
        install.arg("--locked");
    }
    // These tools wait for files and other programs: compiling them fast matters more than their speed.
    install.env("CARGO_PROFILE_RELEASE_LTO", "off").env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16");
    install.env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1").env_remove("CARGO_TARGET_DIR");
    let flag = if locked { " --locked" } else { "" };
    run(&mut install).with_context(|| {
        format!(
            "{package} {version} is missing and could not be installed from crates.io. Way round: where there is \
             network access run `cargo install{flag} {package}@{version}`, and put the program `{program}` into {}",
            home.join("bin").display()
        )
    })?;
    if !find(program, dirs).is_some_and(right) {
        bail!("{program} was installed, but does not call itself version {version}");
    }
    Ok(())
}

/// An optimiser that is there, or that npm or Debian can give. None is no error: the page works without.
fn optimiser(home: &Path, dirs: &[PathBuf]) -> Option<Optimiser> {
    let look = || {
        let program = find("wasm-opt", dirs)?;
        let version = answer(Command::new(&program).arg("--version"))?;
        Some(Optimiser { program, version }).filter(|found| found.number() >= OLDEST_OPTIMISER)
    };
    if let Some(found) = look() {
        return Some(found);
    }
    eprintln!("Installing wasm-opt...");
    // Debian 12's own wasm-opt is too old, but its npm brings a newer one.
    if find("npm", &[]).is_none() {
        let _ = debian(&["npm"]);
    }
    let mut npm = Command::new("npm");
    npm.args(["install", "--no-audit", "--no-fund", "--prefix"]).arg(home).arg(NPM_BINARYEN);
    let tried = quietly(&mut npm)
        .or_else(|error| debian(&["binaryen"]).map_err(|second| error.context(format!("{second:#}"))));
    let found = look();
    if found.is_none() {
        let why =
            tried.err().map_or("what could be installed is too old".to_owned(), |error| format!("{error:#}"));
        eprintln!(
            "No wasm-opt of version {OLDEST_OPTIMISER} or newer: the page is built without it, larger and slower. \
             Way round: where there is network access, `npm install --global {NPM_BINARYEN}`. The reason: {why}"
        );
    }
    found
}

/// Installs packages with Debian's package manager, as root or where sudo asks no password.
pub fn debian(packages: &[&str]) -> Result<()> {
    if find("apt-get", &[]).is_none() {
        bail!("this machine has no apt-get");
    }
    let root = answer(Command::new("id").arg("-u")).as_deref() == Some("0");
    let apt = |words: &[&str]| {
        let mut command = if root { Command::new("apt-get") } else { Command::new("sudo") };
        if !root {
            command.args(["-n", "apt-get"]);
        }
        quietly(command.args(words).env("DEBIAN_FRONTEND", "noninteractive"))
    };
    let install: Vec<&str> =
        ["install", "-y", "--no-install-recommends"].into_iter().chain(packages.iter().copied()).collect();
    if apt(&install).is_ok() {
        return Ok(());
    }
    // Most often the package lists are missing or old.
    apt(&["update"])?;
    apt(&install)
}

/// The version of a package in Cargo.lock.
fn locked_version(root: &Path, package: &str) -> Result<String> {
    let lock = std::fs::read_to_string(root.join("Cargo.lock")).context("could not read Cargo.lock")?;
    version_in(&lock, package).with_context(|| format!("Cargo.lock has no {package}"))
}

fn version_in(lock: &str, package: &str) -> Option<String> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().skip_while(|line| *line != name);
    lines.nth(1)?.strip_prefix("version = \"")?.strip_suffix('"').map(str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCK: &str = "[[package]]\nname = \"wasm\"\nversion = \"1.0.0\"\n\n[[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";

    #[test]
    fn the_lock_file_tells_which_wasm_bindgen_to_install() {
        assert_eq!(version_in(LOCK, "wasm-bindgen").as_deref(), Some("0.2.130"));
        assert_eq!(version_in(LOCK, "wasm").as_deref(), Some("1.0.0"));
        assert_eq!(version_in(LOCK, "bindgen"), None);
    }

    #[test]
    fn an_optimiser_knows_its_number_in_both_ways_of_saying_it() {
        let number = |said: &str| Optimiser { program: PathBuf::new(), version: said.to_owned() }.number();
        assert_eq!(number("wasm-opt version 108"), 108);
        assert_eq!(number("wasm-opt version 132 (version_132)"), 132);
    }
}
