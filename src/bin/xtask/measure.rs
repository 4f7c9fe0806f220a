//! `cargo xtask measure`: the figures that are reported with a change.
use anyhow::{Context, Result, ensure};
use clap::ValueEnum;
use std::time::Duration;

use crate::browser::{Browser, Driver};
use crate::site::Site;
use crate::{dist, futures, page, sizes, years};

/// One kind of figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Figures {
    /// Each file of the page, raw and compressed.
    Sizes,
    /// A simulated year of each candidate: instructions, time, WebAssembly against native.
    Years,
    /// The calibration of every heater on offer: time natively and in a worker of Chromium.
    Calibrations,
    /// From an answer to the new verdict, in Chromium.
    Answers,
    /// From the verdict to first bands and to all futures, in Chromium with one worker and more; futures natively.
    Futures,
}

/// The answers timed: each leads to a household not simulated before. Back takes another way than there.
const THERE: [&str; 9] = [
    "adults-more",
    "adults-more",
    "adults-more",
    "teenagers-more",
    "teenagers-more",
    "teenagers-more",
    "children-more",
    "children-more",
    "children-more",
];
#[cfg(target_os = "linux")]
const BACK: [&str; 8] = [
    "adults-less",
    "adults-less",
    "adults-less",
    "teenagers-less",
    "teenagers-less",
    "teenagers-less",
    "children-less",
    "children-less",
];

/// How much slower the slow machine is.
#[cfg(target_os = "linux")]
const SLOWER: u32 = 4;

/// Measures what is asked for; everything when nothing is named.
pub fn measure(named: &[Figures]) -> Result<()> {
    for figures in if named.is_empty() { Figures::value_variants() } else { named } {
        println!("\n== {figures:?}");
        match figures {
            Figures::Sizes => {
                sizes::print(&sizes::of(&page::read(&dist()).context("the page is not built")?)?)
            }
            Figures::Years => years::years()?,
            Figures::Calibrations => years::calibrations()?,
            Figures::Answers => answers()?,
            Figures::Futures => futures::futures()?,
        }
    }
    Ok(())
}

/// Answers a question again and again, and times how long the verdict takes.
fn answers() -> Result<()> {
    let site = Site::open(dist(), "/", 0)?;
    site.serve_aside(|_| ());
    let driver = Driver::start()?;
    tokio::runtime::Runtime::new()?.block_on(async {
        let browser = driver.browser(&[]).await?;
        browser.look(390, 844, 2.0, "light").await?;
        browser.client.goto(&format!("{}?p=household", site.address())).await?;
        let settled =
            "return document.querySelector('[data-test=verdict][aria-busy=false] .key-figures') !== null";
        browser.until("the first verdict", settled, Duration::from_secs(60)).await?;
        print("as it is", timed(&browser, &THERE).await?)?;
        #[cfg(target_os = "linux")]
        {
            let slowed = crate::slow::Slowed::children_of(driver.process.id(), SLOWER);
            print(&format!("{SLOWER} times slower"), timed(&browser, &BACK).await?)?;
            drop(slowed);
        }
        browser.close().await
    })
}

/// Times in milliseconds from an answer to the verdict of the first look, and to that of the whole years.
async fn timed(browser: &Browser, buttons: &[&str]) -> Result<Vec<(f64, f64)>> {
    let mut times = Vec::new();
    for button in buttons {
        let time = browser
            .client
            .execute_async(
                "const done = arguments[arguments.length - 1];
                 const verdict = document.querySelector('[data-test=verdict]');
                 const start = performance.now();
                 let first = null, busy = false;
                 const watch = new MutationObserver(() => {
                   const now = performance.now() - start;
                   if (verdict.dataset.stage === 'first') first ??= now;
                   if (verdict.getAttribute('aria-busy') === 'true') busy = true;
                   else if (busy) { watch.disconnect(); done([first ?? now, now]); }
                 });
                 watch.observe(verdict, { attributes: true, attributeFilter: ['aria-busy', 'data-stage'] });
                 document.querySelector(`[data-test=q-${arguments[0]}]`).click();",
                vec![(*button).into()],
            )
            .await?;
        times.push(serde_json::from_value(time)?);
        // The next one finds everything settled.
        tokio::time::sleep(Duration::from_millis(500)).await;
    }
    Ok(times)
}

fn print(how: &str, times: Vec<(f64, f64)>) -> Result<()> {
    let (first, last): (Vec<f64>, Vec<f64>) = times.into_iter().unzip();
    for (what, mut times) in [("first verdict", first), ("full verdict", last)] {
        ensure!(!times.is_empty(), "nothing was timed");
        times.sort_by(f64::total_cmp);
        let (median, worst) = (times[times.len() / 2], times[times.len() - 1]);
        println!("{how}, {what}: median {median:.0} ms, worst of {} {worst:.0} ms", times.len());
    }
    Ok(())
}
