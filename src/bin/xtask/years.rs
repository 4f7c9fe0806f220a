//! A simulated year: its instructions, its time natively, and its time as WebAssembly in a browser.
use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::browser::{Browser, Driver};
use crate::run::{answer, cargo, find, quietly, run};
use crate::site::Site;
use crate::{page, root, tools};

/// The program measured: `tests/measure/year.rs`.
const PROGRAM: &str = "measure_year";

/// How many years are timed of each candidate.
const TIMES: usize = 15;

/// Measures a year of every candidate and prints a table.
pub fn years() -> Result<()> {
    let root = root();
    run(cargo(&root).args(["build", "--quiet", "--release", "--example", PROGRAM]))?;
    let program = root.join("target/release/examples").join(PROGRAM);
    let codes = answer(&mut Command::new(&program)).context("the measured program lists no candidates")?;
    let codes: Vec<&str> = codes.lines().collect();
    ensure!(!codes.is_empty(), "there is nothing to measure");
    let in_browser = wasm(&codes)?;
    println!(
        "{:>16} {:>14} {:>10} {:>10} {:>6} {:>12}",
        "candidate", "instructions", "native ms", "wasm ms", "ratio", "unbalanced"
    );
    for code in codes {
        let (native, unbalanced) = native(&program, code)?;
        let instructions = instructions(&program, code)
            .map_or("no valgrind".to_owned(), |n| format!("{:.1} M", n as f64 / 1e6));
        let wasm = in_browser.get(code).copied().context("a candidate that the browser did not run")?;
        println!(
            "{code:>16} {instructions:>14} {native:>10.1} {wasm:>10.1} {:>6.2} {unbalanced:>12.1e}",
            wasm / native
        );
    }
    Ok(())
}

/// Measures the calibration of every heater on offer: natively, and in a worker of Chromium.
pub fn calibrations() -> Result<()> {
    let root = root();
    run(cargo(&root).args(["build", "--quiet", "--release", "--example", PROGRAM]))?;
    let program = root.join("target/release/examples").join(PROGRAM);
    let said = answer(Command::new(program).args(["calibrations", "5"])).context("nothing was calibrated")?;
    let mut native: BTreeMap<String, f64> = BTreeMap::new();
    for line in said.lines() {
        let mut words = line.split_whitespace();
        let (Some(name), Some(ms)) = (words.next(), words.next()) else {
            anyhow::bail!("no figures: {line}")
        };
        let ms: f64 = ms.parse()?;
        let least = native.entry(name.to_owned()).or_insert(ms);
        *least = least.min(ms);
    }
    let wasm: BTreeMap<String, f64> = in_browser(|browser| async move {
        let script = "const [done] = arguments;
             const code = `import('${new URL('measure_year.js', location)}').then(async (it) => {
               await it.default();
               const all = {};
               it.on_offer().forEach((name, at) => {
                 for (let n = 0; n < 3; n++) {
                   const start = performance.now();
                   it.calibrate(at);
                   all[name] = Math.min(all[name] ?? Infinity, performance.now() - start);
                 }
               });
               postMessage(all);
             });`;
             const worker = new Worker(URL.createObjectURL(new Blob([code], { type: 'text/javascript' })), { type: 'module' });
             worker.onmessage = (message) => done(message.data);";
        let all = browser.client.execute_async(script, Vec::new()).await?;
        browser.close().await?;
        Ok(serde_json::from_value(all)?)
    })?;
    println!("{:>28} {:>10} {:>10}", "heater", "native ms", "worker ms");
    for (name, ms) in &native {
        let worker = wasm.get(name).with_context(|| format!("{name} was not calibrated in the browser"))?;
        println!("{name:>28} {ms:>10.1} {worker:>10.1}");
    }
    for (how, times) in [("native", &native), ("worker", &wasm)] {
        let mut times: Vec<f64> = times.values().copied().collect();
        times.sort_by(f64::total_cmp);
        let (median, worst) = (times[times.len() / 2], times[times.len() - 1]);
        println!("{how}: median {median:.1} ms, worst of {} {worst:.1} ms", times.len());
    }
    Ok(())
}

/// The least time in milliseconds, and the part of the energy that is unaccounted for.
fn native(program: &PathBuf, code: &str) -> Result<(f64, f64)> {
    let said = answer(Command::new(program).arg(code).arg(TIMES.to_string()))
        .context("the measured program failed")?;
    let mut times = Vec::new();
    let mut unbalanced = 0.0;
    for line in said.lines() {
        let figures: Vec<f64> = line.split_whitespace().map(str::parse).collect::<Result<_, _>>()?;
        let [ms, _, residual] = figures.as_slice() else { anyhow::bail!("a line of other figures: {line}") };
        times.push(*ms);
        unbalanced = *residual;
    }
    Ok((fastest(&times)?, unbalanced))
}

/// The instructions of one year, where valgrind is there to count them.
fn instructions(program: &PathBuf, code: &str) -> Option<u64> {
    find("valgrind", &[])?;
    let output = Command::new("valgrind")
        .args(["--tool=callgrind", "--callgrind-out-file=/dev/null", "--toggle-collect=*measured_year*"])
        .arg(program)
        .args([code, "1"])
        .output()
        .ok()?;
    collected(&String::from_utf8_lossy(&output.stderr))
}

/// The figure in callgrind's closing lines.
fn collected(said: &str) -> Option<u64> {
    said.lines().find_map(|line| line.split_once("Collected : ")?.1.trim().parse().ok())
}

/// Sees to it that whole outcomes are the same to the bit natively and as WebAssembly in Chromium.
pub fn same_bits() -> Result<()> {
    let root = root();
    // As the tests are built: the same speed, and mostly built already.
    run(cargo(&root).args(["build", "--quiet", "--profile", "test", "--example", PROGRAM]))?;
    let native = answer(Command::new(root.join("target/debug/examples").join(PROGRAM)).arg("bits"))
        .context("the measured program failed")?;
    let wasm: String = in_browser(|browser| async move {
        let script = "const [done] = arguments;
             import(new URL('measure_year.js', location)).then(async (it) => { await it.default(); done(it.bits()); })
               .catch((fault) => done(`${fault}`));";
        let said = browser.client.execute_async(script, Vec::new()).await?;
        browser.close().await?;
        Ok(serde_json::from_value(said)?)
    })?;
    println!("native:\n{native}\nWebAssembly:\n{wasm}");
    ensure!(native.trim() == wasm.trim(), "native and WebAssembly differ");
    Ok(())
}

/// The least time in milliseconds of each candidate's year in Chromium.
fn wasm(codes: &[&str]) -> Result<BTreeMap<String, f64>> {
    let codes: Vec<String> = codes.iter().map(|&code| code.to_owned()).collect();
    in_browser(|browser| async move {
        let mut fastest_of = BTreeMap::new();
        for code in codes {
            let times = browser
                .client
                .execute_async(
                    "const [code, times, done] = arguments;
                     import(new URL('measure_year.js', location)).then(async (it) => {
                       await it.default();
                       const year = new it.Year(code), all = [];
                       for (let n = 0; n < times; n++) {
                         const start = performance.now();
                         year.simulate();
                         all.push(performance.now() - start);
                       }
                       done(all);
                     });",
                    vec![code.as_str().into(), TIMES.into()],
                )
                .await?;
            fastest_of.insert(code, fastest(&serde_json::from_value::<Vec<f64>>(times)?)?);
        }
        browser.close().await?;
        Ok(fastest_of)
    })
}

/// Builds the measured program for the browser, optimised as the page is, and does something with it there.
fn in_browser<T, F>(work: impl FnOnce(Browser) -> F) -> Result<T>
where
    F: Future<Output = Result<T>>,
{
    let root = root();
    let tools = tools::ensure(&root)?;
    let (target, profile) = ("wasm32-unknown-unknown", "page");
    run(cargo(&root).args([
        "build",
        "--quiet",
        "--profile",
        profile,
        "--target",
        target,
        "--no-default-features",
        "--example",
        PROGRAM,
    ]))?;
    let built = root.join(format!("target/{target}/{profile}/examples/{PROGRAM}.wasm"));
    let dir = root.join("target/measure");
    quietly(
        tools
            .command("wasm-bindgen")
            .args(["--target", "web", "--no-typescript", "--out-dir"])
            .arg(&dir)
            .arg(&built),
    )?;
    let wasm = dir.join(format!("{PROGRAM}_bg.wasm"));
    if let Some(optimiser) = &tools.optimiser {
        let mut module = fs::read(&wasm)?;
        page::optimised(optimiser, [&mut module].into_iter(), &root.join("target/optimised-measure"))?;
        fs::write(&wasm, module)?;
    }
    fs::write(dir.join("index.html"), "<!doctype html><title>Measure</title>")?;

    let site = Site::open(dir, "/", 0)?;
    site.serve_aside(|_| ());
    let driver = Driver::start()?;
    tokio::runtime::Runtime::new()?.block_on(async {
        let browser = driver.browser(&[]).await?;
        browser.client.goto(&site.address()).await?;
        work(browser).await
    })
}

/// The least of the times: what else the machine does only ever adds to them.
fn fastest(times: &[f64]) -> Result<f64> {
    times.iter().copied().min_by(f64::total_cmp).context("nothing was measured")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn callgrind_is_understood() {
        assert_eq!(collected("==1== Events    : Ir\n==1== Collected : 85075184\n==1==\n"), Some(85_075_184));
        assert_eq!(collected("valgrind: no such file"), None);
    }

    #[test]
    fn the_fastest_run_counts() {
        assert_eq!(fastest(&[3.0, 1.0, 2.0]).expect("figures"), 1.0);
        assert!(fastest(&[]).is_err());
    }
}
