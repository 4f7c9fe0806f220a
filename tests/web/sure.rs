//! How sure the advice is: bands that come by themselves, narrow with answers, stop and go on, come out alike whoever
//! simulates, and as the headless command has them.
use std::path::PathBuf;
use std::process::Command;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::harness::Page;
use crate::reach::axe;

/// Everything is found.
const WHOLE: &str = "document.querySelector('[data-test=futures]')?.getAttribute('aria-busy') === 'false' \
    && !!document.querySelector('[data-test=chart-bands]') && !document.querySelector('[data-test=futures-go-on]')";
/// What stands above the chart of bands.
const READING: &str = "document.querySelector('[data-test=chart-bands-reading]').textContent";
/// What another house would turn the choice to: each open question with what is said of it.
const OTHERWISE: &str = "[...document.querySelectorAll('[data-test=sure-changes] li')] \
    .filter(l => ['change-heater_kind', 'change-room_kind', 'change-place'].includes(l.dataset.test)) \
    .map(l => l.querySelector('a').textContent.trim() + ': ' + l.lastElementChild.textContent.trim())";
/// How sure each heater is.
const EACH: &str = "[...document.querySelectorAll('[data-test=sure-each] li')].map(l => l.textContent)";

/// The dollars that words name, in order.
fn dollars(words: &str) -> Vec<f64> {
    let digits = |rest: &str| -> String {
        rest.chars().take_while(|c| c.is_ascii_digit() || *c == ',').filter(|c| *c != ',').collect()
    };
    words.split('$').skip(1).filter_map(|rest| digits(rest).parse().ok()).collect()
}

/// How long all the simulated years may take where every core is busy with other tests.
const PATIENCE: Duration = Duration::from_secs(300);

async fn until_whole(page: &Page) -> Result<()> {
    let whole = format!("return Boolean({WHOLE})");
    page.browser.until("every future to be drawn", &whole, PATIENCE).await
}

/// Everything the section says, once all of it is found.
async fn said(page: &Page) -> Result<Value> {
    until_whole(page).await?;
    page.value(&format!(
        "JSON.stringify([{READING}, {EACH}, document.querySelector('[data-test=sure-changes]')?.textContent])"
    ))
    .await
}

/// A page whose browser says that it has so many cores.
async fn with_cores(cores: u32) -> Result<Page> {
    let page = Page::served().await?;
    page.before_each_page(&format!(
        "Object.defineProperty(Navigator.prototype, 'hardwareConcurrency', {{ get: () => {cores} }});
         globalThis.hired = 0;
         globalThis.Worker = class extends Worker {{ constructor(...all) {{ super(...all); hired += 1; }} }};"
    ))
    .await?;
    Ok(page)
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn one_worker_and_three_come_to_the_same_figures() -> Result<()> {
    let mut all = Vec::new();
    for (cores, hired) in [(2, 1), (4, 3)] {
        let page = with_cores(cores).await?;
        page.go("?p=result").await?;
        all.push(said(&page).await?);
        let workers = page.value("hired").await?;
        ensure!(workers == hired, "{workers} workers with {cores} cores");
        page.close().await?;
    }
    ensure!(all[0] == all[1], "{}\n{}", all[0], all[1]);
    Ok(())
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn an_answer_narrows_the_band_and_the_page_says_so() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=result").await?;
    until_whole(&page).await?;
    let before = page.value(READING).await?;
    // Somewhere else and back, without loading the page anew.
    page.click("change-answers").await?;
    page.value("(document.querySelector('[data-test=way-money]').click(), true)").await?;
    for (question, value) in
        [("price_electricity", "0.18"), ("installed_heat_pump", "4200"), ("installed_same", "1900")]
    {
        page.answer(question, value).await?;
    }
    page.until_advised().await?;
    page.click("result").await?;
    until_whole(&page).await?;
    let after = page.value(READING).await?;
    let (wide, narrow) =
        (dollars(before.as_str().context("words")?), dollars(after.as_str().context("words")?));
    ensure!(wide.len() == 4 && narrow.len() == 4, "{before}\n{after}");
    ensure!(narrow[1] - narrow[0] < wide[1] - wide[0], "{before}\n{after}");
    let says = page.value("document.querySelector('[data-test=sure-narrowed]').textContent").await?;
    ensure!(says.as_str().is_some_and(|s| s.contains("narrower")), "{says}");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn it_stops_and_goes_on_and_a_newer_answer_takes_its_place() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=result").await?;
    // A press of the button wherever it stands: it goes when all is found.
    let press = |test: &str| format!("(document.querySelector('[data-test={test}]').click(), true)");
    page.until("the drawing", "document.querySelector('[data-test=futures-stop]')").await?;
    page.value(&press("futures-stop")).await?;
    page.until("it to stop", "document.querySelector('[data-test=futures-go-on]')").await?;
    let years = "document.querySelector('[data-test=futures] progress').value";
    tokio::time::sleep(Duration::from_millis(500)).await;
    let stopped = page.value(years).await?;
    tokio::time::sleep(Duration::from_millis(500)).await;
    ensure!(page.value(years).await? == stopped, "it goes on, stopped");
    page.value(&press("futures-go-on")).await?;
    let first = said(&page).await?;
    page.click("open-headroom").await?;
    page.answer("headroom", "58").await?;
    page.until(
        "the newer drawing",
        "document.querySelector('[data-test=futures]').getAttribute('aria-busy') === 'true'",
    )
    .await?;
    page.until_advised().await?;
    let newer = said(&page).await?;
    ensure!(first != newer, "{first}");
    // From nothing, the same answers say the same.
    page.reload().await?;
    let again = said(&page).await?;
    ensure!(newer == again, "{newer}\n{again}");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn its_figures_are_those_of_the_headless_command() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.answer("adults", "4").await?;
    page.until_advised().await?;
    page.go("?p=result").await?;
    until_whole(&page).await?;
    let each: Vec<String> = serde_json::from_value(page.value(EACH).await?)?;
    ensure!(each.len() > 2, "{each:?}");
    let otherwise: Vec<String> = serde_json::from_value(page.value(OTHERWISE).await?)?;
    ensure!(otherwise.len() > 1, "{otherwise:?}");
    let case = std::env::temp_dir().join(format!("tankful-sure-{}.json", std::process::id()));
    std::fs::write(&case, r#"{"tankful": 1, "answers": {"adults": 4}}"#)?;
    let command = PathBuf::from(env!("CARGO_BIN_EXE_tankful"));
    let out = Command::new(command)
        .arg("advise")
        .arg(&case)
        .args(["--futures", "1000", "--seed", "1", "--text"])
        .output()?;
    std::fs::remove_file(&case)?;
    let text = String::from_utf8(out.stdout)?;
    for line in each.into_iter().chain(otherwise) {
        ensure!(text.contains(&line), "{line}\nis not in\n{text}");
    }
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn prices_by_the_hour_count_in_the_advice() -> Result<()> {
    let page = Page::served().await?;
    let running = "figure-keep-figure-running";
    let cost = format!("document.querySelector('[data-test={running}]')?.textContent");
    page.go("?p=result").await?;
    page.find(running).await?;
    let flat = page.value(&cost).await?;
    page.go("?p=money&q=tariff").await?;
    page.click("q-tariff-time").await?;
    for (question, value) in [("price_peak", "0.9"), ("price_low", "0.2")] {
        page.answer(question, value).await?;
    }
    page.until_advised().await?;
    page.click("result").await?;
    page.until("another cost", &format!("{cost} && {cost} !== {flat}")).await?;
    page.click(running).await?;
    let working = "document.querySelector('[data-test=working] table')?.textContent";
    page.until("the working by the hour", &format!("{working}?.includes('Mean price for this heater')"))
        .await?;
    page.click("working-close").await?;
    page.find("sure-tariff").await?;
    let says = "[...document.querySelectorAll('[data-test=sure-tariff] > ul li')].map(l => l.textContent)";
    let says: Vec<String> = serde_json::from_value(page.value(says).await?)?;
    let case = std::env::temp_dir().join(format!("tankful-hours-{}.json", std::process::id()));
    let price = |dollars: f64| json!({ "value": dollars, "unit": "$/kWh" });
    let answers = json!({ "tariff": "time", "price_peak": price(0.9), "price_low": price(0.2) });
    std::fs::write(&case, json!({ "tankful": 1, "answers": answers }).to_string())?;
    let out = Command::new(env!("CARGO_BIN_EXE_tankful")).arg("advise").arg(&case).output()?;
    std::fs::remove_file(&case)?;
    let report: Value = serde_json::from_slice(&out.stdout)?;
    let told: Vec<&str> = report["outlook"]["says"]
        .as_array()
        .context("a list")?
        .iter()
        .filter_map(|s| s["text"].as_str())
        .collect();
    ensure!(says.len() > 2 && says.iter().all(|said| told.contains(&said.as_str())), "{says:?}\n{told:?}");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_section_is_within_everybody_s_reach() -> Result<()> {
    let page = Page::served().await?;
    let mut faults = Vec::new();
    for (width, scheme) in [(390, "light"), (1440, "dark")] {
        page.browser.look(width, 900, 1.0, scheme).await?;
        page.go("?p=result").await?;
        until_whole(&page).await?;
        for test in ["sure-futures", "sure-changes", "sure-map", "sure-life", "sure-tariff", "sure-emissions"]
        {
            page.find(test).await?;
        }
        let wide = page.value("document.documentElement.scrollWidth > innerWidth").await?;
        ensure!(wide == false, "the page scrolls sideways at {width}");
        faults.extend(axe(&page).await?.into_iter().map(|fault| format!("{scheme} {width}: {fault}")));
    }
    ensure!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
    // The map is read by its sliders, from the keyboard.
    let reading = "document.querySelector('[data-test=chart-map-reading]').textContent";
    let before = page.value(reading).await?;
    page.find("map-across").await?.send_keys("\u{e014}\u{e014}\u{e014}").await?;
    page.until("another point", &format!("{reading} !== {before}")).await?;
    page.close().await
}
