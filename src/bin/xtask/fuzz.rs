//! `cargo xtask fuzz`: throws bytes at what reads links and kept jobs, guided by which code they reach.
//!
//! The package in `tests/fuzz` is built with the compiler's counters of edges, as stable Rust can, and linked
//! with LLVM's libFuzzer; what it found of interest stays in `target/fuzz/corpus`.
use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};

use crate::root;
use crate::run::{cargo, run};

const TARGETS: [&str; 2] = ["links", "jobs"];
const HOST: &str = "x86_64-unknown-linux-gnu";

/// Counts of edges reached, for libFuzzer.
const COUNTERS: &str = "-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4 \
    -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table \
    -Ccodegen-units=1 --cfg fuzzing";

/// Fuzzes each target for so many minutes, at low priority.
pub fn fuzz(minutes: u64) -> Result<()> {
    let home = root().join("target/fuzz");
    run(cargo(&root().join("tests/fuzz"))
        .env("RUSTFLAGS", COUNTERS)
        .env("CARGO_PROFILE_RELEASE_LTO", "off")
        .args(["build", "--release", "--target", HOST, "--target-dir"])
        .arg(&home))?;
    for target in TARGETS {
        let corpus = home.join("corpus").join(target);
        fs::create_dir_all(&corpus)?;
        seed(&corpus)?;
        println!("{target}: {minutes} minutes");
        run(Command::new("nice")
            .args(["-n", "19"])
            .arg(home.join(HOST).join("release").join(target))
            .arg(&corpus)
            .arg(format!("-max_total_time={}", 60 * minutes))
            .args(["-max_len=8192", "-timeout=10", "-rss_limit_mb=1024", "-print_final_stats=1"])
            .current_dir(&home))
        .with_context(|| format!("{target} failed: the input stands in {}", home.display()))?;
    }
    Ok(())
}

/// Puts the golden links and jobs among the inputs to start from.
fn seed(corpus: &Path) -> Result<()> {
    for entry in fs::read_dir(root().join("tests/jobs/links"))? {
        let path = entry?.path();
        if let Some(name) = path.file_name() {
            fs::copy(&path, corpus.join(name))?;
        }
    }
    Ok(())
}
