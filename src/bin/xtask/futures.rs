//! The futures: how long until first bands and until all are drawn, on the page in Chromium with one worker and more, and
//! natively on one core and more.
use std::fs;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};

use crate::browser::{Browser, Driver};
use crate::run::{answer, cargo, run};
use crate::site::Site;
use crate::{dist, root};
use tankful::core::futures::stages::STAGES;

/// Workers tried on the page.
const WORKERS: [u32; 3] = [1, 2, 3];
/// Cores tried natively.
const CORES: [u32; 2] = [1, 2];
/// Answers timed with workers that are warm.
const ANSWERS: [&str; 3] = ["70", "72", "74"];
/// Futures drawn: what the page draws.
const FUTURES: f64 = 1_000.0;

/// Households that all futures are drawn on at first, and in the end.
const HOUSEHOLDS: [u32; 2] = [STAGES[STAGES.len() - 2].households, STAGES[STAGES.len() - 1].households];

/// What the page shows of the futures, from when: milliseconds until first bands, until all futures, until their last word,
/// until everything.
type Times = [f64; 4];

/// Watches from the advice on, told by the script before or after.
const WATCH: &str = "
    const watch = (from, until) => {
        const start = performance.now(), old = from?.dataset.years ?? '0';
        let first = null, all = null, last = null, moved = false;
        const look = () => {
            const futures = document.querySelector('[data-test=futures]'), now = performance.now() - start;
            if (!futures) return;
            const years = futures.dataset.years;
            moved ||= years !== '0' && years !== old || futures.getAttribute('aria-busy') === 'true' && years !== '0' && from === null;
            if (moved && first === null) first = now;
            if (first !== null && years === ALL && all === null) all = now;
            if (all !== null && years === LAST && last === null) last = now;
            if (last !== null && futures.getAttribute('aria-busy') === 'false') {
                seen.disconnect();
                until([first, all, last, now]);
            }
        };
        const seen = new MutationObserver(look);
        seen.observe(document.body, { subtree: true, childList: true, attributes: true });
        look();
    };";

/// From a press of the verdict's button, with the advice settled: part and workers are still to come.
const COLD: &str = "const done = arguments[0];
    document.querySelector('[data-test=result]').click();
    watch(null, done);";

/// From the advice on a newer answer, with the section on the page and every worker at hand.
const WARM: &str = "const [value, done] = arguments;
    const field = document.querySelector('[data-test=q-headroom-input]');
    const verdict = document.querySelector('[data-test=verdict]');
    let busy = false;
    const settled = new MutationObserver(() => {
        if (verdict.getAttribute('aria-busy') === 'true') busy = true;
        else if (busy) { settled.disconnect(); watch(document.querySelector('[data-test=futures]'), done); }
    });
    settled.observe(verdict, { attributes: true });
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set.call(field, value);
    field.dispatchEvent(new Event('input', { bubbles: true }));
    field.dispatchEvent(new Event('change', { bubbles: true }));";

/// Measures both and prints a table each.
pub fn futures() -> Result<()> {
    let site = Site::open(dist(), "/", 0)?;
    site.serve_aside(|_| ());
    let driver = Driver::start()?;
    println!(
        "{:>8} {:>14} {:>12} {:>12} {:>12} {:>12}",
        "workers", "", "first bands", "all futures", "last word", "all is found"
    );
    tokio::runtime::Runtime::new()?.block_on(async {
        for workers in WORKERS {
            let browser = driver.browser(&[]).await?;
            let (cold, mut warm) = on_page(&browser, &site.address(), workers).await?;
            browser.close().await?;
            print(workers, "first visit", cold);
            warm.sort_by(|a, b| a[1].total_cmp(&b[1]));
            print(workers, "newer answer", warm[warm.len() / 2]);
        }
        anyhow::Ok(())
    })?;
    natively()
}

fn print(workers: u32, how: &str, [first, all, last, found]: Times) {
    let rate = FUTURES / all * 1e3;
    println!(
        "{workers:>8} {how:>14} {first:>9.0} ms {all:>9.0} ms {last:>9.0} ms {found:>9.0} ms   {rate:.0} futures/s"
    );
}

async fn on_page(browser: &Browser, address: &str, workers: u32) -> Result<(Times, Vec<Times>)> {
    browser.look(390, 844, 2.0, "light").await?;
    // One core more than workers: the page's own.
    let cores = format!(
        "Object.defineProperty(Navigator.prototype, 'hardwareConcurrency', {{ get: () => {} }})",
        workers + 1
    );
    browser.devtools("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source": cores })).await?;
    browser.client.goto(&format!("{address}?p=household")).await?;
    let limit = Duration::from_secs(60);
    let settled =
        "return document.querySelector('[data-test=verdict][aria-busy=false] .key-figures') !== null";
    browser.until("the first verdict", settled, limit).await?;
    let timed = |script: &str| format!("const [ALL, LAST] = {HOUSEHOLDS:?}.map(String);\n{WATCH}\n{script}");
    let cold = serde_json::from_value(browser.client.execute_async(&timed(COLD), Vec::new()).await?)?;
    let open = "document.querySelector('[data-test=open-headroom]').click(); return true";
    browser.until("the finding", open, limit).await?;
    browser
        .until("its field", "return document.querySelector('[data-test=q-headroom-input]') !== null", limit)
        .await?;
    let mut warm = Vec::new();
    for value in ANSWERS {
        tokio::time::sleep(Duration::from_millis(500)).await;
        let times = browser.client.execute_async(&timed(WARM), vec![value.into()]).await?;
        warm.push(serde_json::from_value(times)?);
    }
    Ok((cold, warm))
}

/// The headless command with futures, less its time without.
fn natively() -> Result<()> {
    let root = root();
    run(cargo(&root).args(["build", "--quiet", "--release", "--bin", "tankful"]))?;
    let program = root.join("target/release/tankful");
    let case = root.join("target/futures-case.json");
    fs::write(&case, answer(Command::new(&program).arg("example")).context("no example")?)?;
    for cores in CORES {
        let timed = |futures: Option<&str>| -> Result<f64> {
            let mut command = Command::new(&program);
            command
                .arg("advise")
                .arg(&case)
                .env("RAYON_NUM_THREADS", cores.to_string())
                .stdout(Stdio::null());
            if let Some(count) = futures {
                command.args(["--futures", count]);
            }
            let start = Instant::now();
            ensure!(command.status()?.success(), "the headless command failed");
            Ok(start.elapsed().as_secs_f64() * 1e3)
        };
        let (all, without) = (timed(Some("1000"))?, timed(None)?);
        let ms = all - without;
        println!("natively on {cores} of the cores: {ms:.0} ms, {:.0} futures/s", FUTURES / ms * 1e3);
    }
    Ok(())
}
