//! `cargo xtask test`: every check there is, in an order that fails early.
use std::fs;
use std::io::{BufRead, BufReader, Write as _};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use clap::ValueEnum;

use crate::run::{answer, cargo, find, quietly, run};
use crate::{dist, finish, page, root, single, sizes, tools, years};

const WASM: [&str; 2] = ["--target", "wasm32-unknown-unknown"];

/// The accessibility checker, from npm.
const AXE: &str = "4.14.1";

/// One check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Step {
    /// The code is formatted.
    Format,
    /// No warnings in the native code.
    Lints,
    /// No warnings in the page's code.
    LintsPage,
    /// The native tests.
    Tests,
    /// The manual builds without warnings.
    Docs,
    /// The reference figures are recomputed with the reference libraries.
    Reference,
    /// The release page builds.
    Page,
    /// The page keeps to its size.
    Size,
    /// The page works in a real browser.
    Web,
    /// The computing core gives the same bits natively and in the browser.
    Bits,
}

impl Step {
    /// Those that need neither the page nor other programs than Rust's.
    const FAST: [Step; 4] = [Step::Format, Step::Lints, Step::LintsPage, Step::Tests];
}

/// How many tests a step ran.
#[derive(Clone, Copy, Debug, Default)]
struct Count {
    passed: usize,
    failed: usize,
}

/// Runs the steps asked for (all when none is named) and says how each went.
pub fn test(fast: bool, named: &[Step]) -> Result<()> {
    let steps = match (named, fast) {
        ([], true) => &Step::FAST,
        ([], false) => Step::value_variants(),
        _ => named,
    };
    let mut report: Vec<(Step, Duration, Result<Count>)> = Vec::new();
    for step in steps {
        println!("\n== {step:?}");
        let start = Instant::now();
        let result = perform(*step);
        if let Err(error) = &result {
            println!("{error:#}");
        }
        report.push((*step, start.elapsed(), result));
    }

    println!("\n{:>8}  step", "seconds");
    let mut count = Count::default();
    for (step, time, result) in &report {
        let verdict = if result.is_ok() { "passed" } else { "FAILED" };
        println!("{:>8.1}  {step:?}: {verdict}", time.as_secs_f64());
        match result {
            // A step without tests of its own counts as one.
            Ok(Count { passed: 0, failed: 0 }) => count.passed += 1,
            Ok(tests) => count.passed += tests.passed,
            Err(error) => {
                let tests = error.downcast_ref::<Failures>().map_or(Count { passed: 0, failed: 1 }, |f| f.0);
                count.passed += tests.passed;
                count.failed += tests.failed.max(1);
            }
        }
    }
    println!("\n{} passed, {} failed", count.passed, count.failed);
    match report.iter().filter(|(_, _, result)| result.is_err()).count() {
        0 => Ok(()),
        failed => bail!("{failed} of {} steps failed", report.len()),
    }
}

fn perform(step: Step) -> Result<Count> {
    let root = root();
    let mut cargo = cargo(&root);
    match step {
        Step::Format => run(cargo.args(["fmt", "--check"]))?,
        Step::Lints => run(cargo.args(["clippy", "--quiet", "--all-targets", "--", "-D", "warnings"]))?,
        Step::LintsPage => {
            tools::wasm_target(&root)?;
            run(cargo
                .args(["clippy", "--quiet", "--lib", "--bin", "page"])
                .args(WASM)
                .args(["--", "-D", "warnings"]))?;
        }
        Step::Tests => return counted(cargo.args(["test", "--quiet", "--no-fail-fast"])),
        Step::Docs => {
            tools::wasm_target(&root)?;
            cargo.env("RUSTDOCFLAGS", "-D warnings");
            run(cargo.args(["doc", "--quiet", "--no-deps", "--document-private-items", "--lib"]))?;
            // The page's own rooms exist for wasm only.
            run(cargo.args(WASM))?;
        }
        Step::Reference => reference()?,
        Step::Page => {
            page::build(false)?;
            single::build()?;
        }
        Step::Size => size()?,
        Step::Bits => {
            browser()?;
            years::same_bits()?;
        }
        Step::Web => {
            browser()?;
            axe()?;
            return counted(cargo.args(["test", "--test", "web", "--", "--ignored", "--test-threads=2"]));
        }
    }
    Ok(Count::default())
}

/// Tests that failed, or could not be built.
#[derive(Debug)]
struct Failures(Count);

impl std::fmt::Display for Failures {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} tests failed", self.0.failed)
    }
}

impl std::error::Error for Failures {}

/// Runs cargo's tests, showing what they say and adding up their closing lines.
fn counted(command: &mut Command) -> Result<Count> {
    let mut child =
        command.stdin(Stdio::null()).stdout(Stdio::piped()).spawn().context("could not start cargo")?;
    let out = child.stdout.take().context("cargo without output")?;
    let mut count = Count::default();
    for line in BufReader::new(out).split(b'\n') {
        let line = line?;
        let text = String::from_utf8_lossy(&line);
        println!("{text}");
        std::io::stdout().flush()?;
        if let Some(more) = closing(&text) {
            count.passed += more.passed;
            count.failed += more.failed;
        }
    }
    if child.wait()?.success() { Ok(count) } else { Err(Failures(count).into()) }
}

/// The figures of a closing line of cargo's test runner.
fn closing(line: &str) -> Option<Count> {
    let figures = line.trim().strip_prefix("test result: ")?.split_once(". ")?.1;
    let figure = |word: &str| {
        figures.split(';').find_map(|part| part.trim().strip_suffix(word)?.trim().parse::<usize>().ok())
    };
    Some(Count { passed: figure("passed")?, failed: figure("failed")? })
}

/// Recomputes the reference figures, in a Python environment of their own.
fn reference() -> Result<()> {
    let folder = root().join("tests/reference");
    let wanted = folder.join("requirements.txt");
    let text = fs::read(&wanted).with_context(|| format!("could not read {}", wanted.display()))?;
    let home = root().join("target/reference").join(finish::short_hash(&text));
    let python = home.join("bin/python");
    let done = home.join("complete");
    if !done.is_file() {
        println!("Installing the reference libraries...");
        let venv = || quietly(Command::new("python3").args(["-m", "venv", "--clear"]).arg(&home));
        if venv().is_err() {
            tools::debian(&["python3", "python3-venv"])?;
            venv().context("python3 with venv is needed for the reference figures")?;
        }
        let mut pip = Command::new(&python);
        pip.args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-r"]).arg(&wanted);
        quietly(&mut pip).with_context(|| {
            format!(
                "the reference libraries could not be installed from PyPI. Way round: where there is network access, \
                 `pip download -r {0}`, and set PIP_FIND_LINKS to that folder; or leave this step out by naming others",
                wanted.display()
            )
        })?;
        fs::write(&done, "")?;
    }
    run(Command::new(&python).current_dir(&folder).args(["recompute.py", "--check"]))
}

fn size() -> Result<()> {
    let sizes = sizes::of(&page::read(&dist()).context("the page is not built")?)?;
    sizes::print(&sizes);
    let first = sizes::first_load(&sizes);
    if first > sizes::LIMIT {
        bail!("the first visit downloads {first} bytes in brotli, {} too many", first - sizes::LIMIT);
    }
    Ok(())
}

/// Sees to it that there is a browser to test with.
fn browser() -> Result<()> {
    let there = || {
        let browser: Option<PathBuf> =
            ["chromium", "chromium-browser", "google-chrome"].iter().find_map(|name| find(name, &[]));
        browser.is_some() && find("chromedriver", &[]).is_some()
    };
    if !there() {
        println!("Installing Chromium...");
        tools::debian(&["chromium", "chromium-driver"]).context(
            "the page's tests need Chromium and ChromeDriver, and neither is here. Way round: install both from your \
             distribution (Debian: chromium, chromium-driver)",
        )?;
    }
    match answer(Command::new("chromedriver").arg("--version")) {
        Some(version) => println!("{version}"),
        None => bail!("chromedriver does not start"),
    }
    Ok(())
}

/// Sees to it that the accessibility checker is there.
fn axe() -> Result<()> {
    let home = root().join("target/npm");
    let wanted = format!("\"version\": \"{AXE}\"");
    let there = || {
        fs::read_to_string(home.join("node_modules/axe-core/package.json"))
            .is_ok_and(|it| it.contains(&wanted))
    };
    if there() {
        return Ok(());
    }
    println!("Installing axe-core {AXE}...");
    let package = format!("axe-core@{AXE}");
    let install = || {
        let mut npm = Command::new("npm");
        quietly(
            npm.args(["install", "--no-audit", "--no-fund", "--ignore-scripts", "--prefix"])
                .arg(&home)
                .arg(&package),
        )
    };
    fs::create_dir_all(&home)?;
    if find("npm", &[]).is_none() {
        tools::debian(&["npm"]).context("npm is needed to fetch axe-core, and is not here")?;
    }
    install().with_context(|| {
        format!(
            "axe-core could not be fetched from npm. Way round: where there is network access run \
             `npm install --prefix target/npm {package}`, and copy target/npm here"
        )
    })?;
    if !there() {
        bail!("npm installed another axe-core than {AXE}");
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closing_lines_are_added_up() {
        let line = "test result: FAILED. 11 passed; 1 failed; 2 ignored; 0 measured; 0 filtered out; finished in 0.09s";
        let count = closing(line).expect("a closing line");
        assert_eq!((count.passed, count.failed), (11, 1));
        assert!(closing("test finish::tests::x ... ok").is_none());
    }
}
