//! The page is within everybody's reach: axe-core finds no fault on any page in either scheme, and the
//! keyboard alone leads from the first page to the advice.
use std::path::PathBuf;

use anyhow::{Context, Result, bail, ensure};
use fantoccini::key::Key;
use serde_json::Value;

use crate::harness::Page;

/// Every page there is.
const PAGES: [&str; 10] = [
    "",
    "?p=household",
    "?p=heater",
    "?p=room",
    "?p=drain",
    "?p=circuit",
    "?p=water",
    "?p=place",
    "?p=money",
    "?p=result",
];

/// Pages beside the way through the questions, without a verdict of their own.
const ASIDE: [&str; 6] = ["?p=jobs", "?p=job", "?p=asked", "?p=offer", "?p=onsite", "?p=work"];

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn axe_finds_no_fault_on_any_page() -> Result<()> {
    let page = Page::served().await?;
    let mut faults = Vec::new();
    for (width, scheme) in [(390, "light"), (390, "dark"), (1440, "light"), (1440, "dark")] {
        page.browser.look(width, 900, 1.0, scheme).await?;
        for below in PAGES.into_iter().chain(ASIDE) {
            page.go(below).await?;
            page.until_advised().await?;
            faults.extend(
                axe(&page).await?.into_iter().map(|fault| format!("{scheme} {width} {below}: {fault}")),
            );
        }
    }
    ensure!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
    page.close().await
}

/// Notes at every frame where what can be pressed stands, from when it is first in sight.
const WATCH: &str = "
    window.stood = {};
    window.frames = 0;
    const look = () => {
        requestAnimationFrame(look);
        window.frames += 1;
        const seen = new Set();
        for (const at of document.querySelectorAll('main :is(a, button, input, select, summary)[data-test]')) {
            // Of those for one purpose, the first.
            if (seen.has(at.dataset.test)) continue;
            seen.add(at.dataset.test);
            const { top, height } = at.getBoundingClientRect();
            const known = stood[at.dataset.test];
            if (height === 0 || (!known && top > innerHeight)) continue;
            (known ?? (stood[at.dataset.test] = new Set())).add(Math.round(top + scrollY));
        }
    };
    look();";

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn nothing_moves_from_under_a_finger_when_the_advice_comes() -> Result<()> {
    let page = Page::served().await?;
    page.before_each_page(WATCH).await?;
    let mut moved = Vec::new();
    for (width, height) in [(390, 844), (1024, 768)] {
        page.browser.look(width, height, 1.0, "light").await?;
        for below in PAGES.into_iter().chain(ASIDE).chain(["?p=after", "?p=report"]) {
            page.go(below).await?;
            page.until_advised().await?;
            page.value("frames = 0").await?;
            page.until("what follows the advice", "frames > 30").await?;
            let places = "Object.entries(stood).map(([test, at]) => `${test} ${[...at]}`).filter((l) => l.includes(','))";
            let places = page.value(places).await?;
            let count = page.value("Object.keys(stood).length").await?;
            ensure!(count.as_u64().is_some_and(|count| count > 0), "nothing to press on {below}");
            for line in places.as_array().context("a list")? {
                moved.push(format!("{width} {below}: {line}"));
            }
        }
    }
    ensure!(moved.is_empty(), "{}", moved.join("\n"));
    page.close().await
}

/// What axe-core finds at fault on the page as it is now.
pub async fn axe(page: &Page) -> Result<Vec<Value>> {
    let axe = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("target/npm/node_modules/axe-core/axe.min.js");
    let axe =
        std::fs::read_to_string(axe).context("axe-core is not there: `cargo xtask test web` installs it")?;
    page.browser.script(&axe).await?;
    let found = page
        .browser
        .client
        .execute_async(
            "const done = arguments[0];
             axe.run({ resultTypes: ['violations'] }).then((all) => done(all.violations.flatMap(
               (rule) => rule.nodes.map((node) => rule.id + ' ' + node.target + ': ' + node.failureSummary))));",
            Vec::new(),
        )
        .await?;
    match found {
        Value::Array(found) => Ok(found),
        other => bail!("axe-core answered {other}"),
    }
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_keyboard_alone_leads_to_the_advice() -> Result<()> {
    let page = Page::open().await?;
    tab_to(&page, "start").await?;
    press(&page, Key::Enter).await?;
    page.until("the first section", "document.querySelector('[data-page=section]')").await?;
    page.until("the focus to follow", "document.activeElement.matches('h1')").await?;
    tab_to(&page, "q-adults-input").await?;
    page.browser.client.active_element().await?.send_keys("5").await?;
    for _ in 2..PAGES.len() {
        tab_to(&page, "next").await?;
        let before = page.value("location.href").await?;
        press(&page, Key::Enter).await?;
        page.until("the next page", &format!("location.href !== {before}")).await?;
        page.until("the focus to follow", "document.activeElement.matches('h1')").await?;
    }
    page.until("the result", "document.querySelector('[data-page=result]')").await?;
    page.until("the focus to follow", "document.activeElement.matches('h1')").await?;
    page.go("?p=household").await?;
    ensure!(page.answered("adults").await? == "5", "what was typed is gone");
    page.close().await
}

/// Tabs on until the element for a purpose has the focus; on the way each stop must show that it has it.
async fn tab_to(page: &Page, test: &str) -> Result<()> {
    for _ in 0..200 {
        press(page, Key::Tab).await?;
        let seen = page
            .value(
                "(() => { const at = document.activeElement, box = at.getBoundingClientRect(), look = getComputedStyle(at);
                   return [at.dataset.test ?? '', at.outerHTML.slice(0, 120),
                     box.width > 0 && (look.outlineStyle !== 'none' || look.boxShadow !== 'none'
                       || getComputedStyle(at.parentElement).outlineStyle !== 'none')]; })()",
            )
            .await?;
        ensure!(seen[2] == true, "the focus does not show on {}", seen[1]);
        if seen[0] == test {
            return Ok(());
        }
    }
    bail!("{test} is not reached by Tab")
}

async fn press(page: &Page, key: Key) -> Result<()> {
    Ok(page.browser.client.active_element().await?.send_keys(&char::from(key).to_string()).await?)
}
