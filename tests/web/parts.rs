//! The parts of the page that are fetched when first shown: from a file or a host's miss of it, with no
//! signal, and never before they are needed.
use anyhow::{Context, Result, ensure};

use crate::harness::Page;
use crate::hosted::{Folder, Host, Release, first_release};

/// Every page that is a part, or has one on it, with what shows that it came.
const PARTS: [(&str, &str); 8] = [
    ("?p=result", "answer"),
    ("?p=jobs", "jobs"),
    ("?p=job", "job"),
    ("?p=asked", "asked"),
    ("?p=offer", "offer"),
    ("?p=onsite", "onsite"),
    ("?p=work", "work"),
    ("?p=job#nothing", "open-refused"),
];

/// Whether a path names the file of a part.
fn is_part(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or_default();
    name.starts_with("split_") || name.starts_with("chunk_")
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_first_verdict_needs_no_part() -> Result<()> {
    // Without the service worker, which fetches everything for later.
    let mut bare = first_release()?;
    bare.remove("service-worker.js");
    let host = Host::of(&bare)?;
    let page = Page::at(&host.address, &[]).await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.until_advised().await?;
    let parts: Vec<String> = host.asked().into_iter().filter(|path| is_part(path)).collect();
    ensure!(parts.is_empty(), "{parts:?}");
    page.go("?p=result").await?;
    page.find("answer").await?;
    ensure!(host.asked().iter().any(|path| is_part(path)), "the advice came from nowhere");
    page.browser.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn every_part_opens_with_no_signal() -> Result<()> {
    let (host, profile) = (Host::of(&first_release()?)?, Folder::new()?);
    let page = Page::at(&host.address, &profile.as_profile()).await?;
    page.go("").await?;
    page.until_ready().await?;
    page.close().await?;
    host.close()?;
    let page = Page::at(&host.address, &profile.as_profile()).await?;
    for (at, test) in PARTS {
        page.go(at).await?;
        page.find(test).await?;
    }
    rates(&page).await?;
    page.close().await
}

/// Looks at the rating test of the present heater, which the worker fetches a part of its own for.
pub async fn rates(page: &Page) -> Result<()> {
    page.go("?p=heater").await?;
    page.click("read-label").await?;
    page.find("show-test").await?;
    page.click("show-test").await?;
    page.until("the rating test", "document.querySelector('[data-test=rating][aria-busy=false] table')").await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_part_that_the_worker_cannot_have_is_said_and_tried_again() -> Result<()> {
    let mut without = first_release()?;
    without.remove("service-worker.js");
    let errands = without.keys().find(|name| name.starts_with("split_errands")).cloned();
    let errands = errands.context("no part for errands")?;
    let file = without.remove(&errands);
    let host = Host::of(&without)?;
    let page = Page::at(&host.address, &[]).await?;
    page.go("?p=heater").await?;
    page.click("read-label").await?;
    page.find("show-test").await?;
    page.click("show-test").await?;
    page.find("part-missing").await?;
    without.extend(file.map(|file| (errands, file)));
    host.put("", &without)?;
    page.click("part-again").await?;
    page.until("the rating test", "document.querySelector('[data-test=rating][aria-busy=false] table')")
        .await?;
    page.browser.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_part_that_cannot_be_had_is_said_and_tried_again() -> Result<()> {
    let whole = first_release()?;
    let without: Release = whole
        .iter()
        .filter(|(name, _)| !is_part(name))
        .map(|(name, file)| (name.clone(), file.clone()))
        .collect();
    let host = Host::of(&without)?;
    let page = Page::at(&host.address, &[]).await?;
    page.go("?p=result").await?;
    page.find("part-missing").await?;
    page.until_advised().await?;
    // Each miss draws its button anew, so it is pressed where it stands; the one that was pressed says so.
    let again = "(() => { const b = document.querySelector('[data-test=part-again]'); b.dataset.pressed = ''; b.click(); })()";
    page.value(again).await?;
    page.until("the second miss", "document.querySelector('[data-test=part-again]:not([data-pressed])')")
        .await?;
    host.put("", &whole)?;
    page.value(again).await?;
    page.find("answer").await?;
    page.until("the focus to follow", "document.activeElement.matches('h1, body')").await?;
    // The console tells of the misses, as it should.
    page.browser.close().await
}
