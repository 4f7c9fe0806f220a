//! Newer releases: found in the background, announced, used only when the reader says so, with nothing
//! lost; and the files of older ones stay for as long as a page uses them.
use std::time::Duration;

use anyhow::{Result, ensure};
use serde_json::json;

use crate::harness::Page;
use crate::hosted::{Host, boot, first_release, second_release};

/// The browser looks for a newer release, as it does by itself whenever the page is opened.
const LOOK: &str = "navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true)";

/// Whether this page is of the second release.
const SECOND: &str = "document.documentElement.dataset.release === '2'";

/// How many releases are kept.
const KEPT: &str = "caches.keys().then((all) => all.length)";

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_newer_release_waits_for_the_reader_and_loses_nothing() -> Result<()> {
    let host = Host::of(&first_release()?)?;
    let page = Page::at(&host.address, &[]).await?;
    page.before_each_page("sessionStorage.starts = Number(sessionStorage.starts ?? 0) + 1").await?;
    page.go("?p=household").await?;
    page.until_ready().await?;
    page.answer("adults", "5").await?;
    page.answer("children", "two").await?;

    host.put("", &second_release()?)?;
    ensure!(page.value(LOOK).await? == true, "no look for a newer release");
    page.find("notice-use").await?;
    // Time enough for whatever would happen by itself.
    tokio::time::sleep(Duration::from_secs(2)).await;
    ensure!(page.value("sessionStorage.starts").await? == "1", "the page was loaded anew by itself");
    ensure!(page.value(KEPT).await? == 2, "the newer release is not kept");
    ensure!(page.answered("children").await? == "two", "what was typed is gone");
    // The notice can be put off; whatever is opened anew in the meantime is still the old release.
    page.click("notice-dismiss").await?;
    page.reload().await?;
    ensure!(page.value(SECOND).await? == false, "a reload changed the release");
    page.find("notice-use").await?;
    page.answer("children", "two").await?;

    page.click("notice-use").await?;
    page.until("the newer release", SECOND).await?;
    page.until("the page", "document.querySelector('main')").await?;
    ensure!(page.answered("adults").await? == "5", "the answer is gone");
    ensure!(page.answered("children").await? == "two", "what was typed is gone");
    page.until("the refusal", "document.querySelector('[data-test=q-children-refusal]').textContent.trim()")
        .await?;
    page.until_advised().await?;
    page.until_brings("the older release to be cleared away", &format!("{KEPT}.then((n) => n === 1)"))
        .await?;
    ensure!(page.value("sessionStorage.starts").await? == "3", "it was loaded anew more than once");
    ensure!(
        page.value("document.querySelector('[data-test=notice-newer]')").await?.is_null(),
        "still a notice"
    );
    host.close()?;
    page.reload().await?;
    page.until_advised().await?;
    ensure!(page.value(SECOND).await? == true, "offline it is the old release again");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn another_tab_goes_on_with_the_release_it_has() -> Result<()> {
    let first = first_release()?;
    let host = Host::of(&first)?;
    let page = Page::at(&host.address, &[]).await?;
    let client = &page.browser.client;
    page.go("?p=household").await?;
    page.until_ready().await?;
    page.answer("adults", "5").await?;
    let stays = client.window().await?;
    let changes = client.new_window(true).await?.handle;
    client.switch_to_window(changes.clone()).await?;
    host.put("", &second_release()?)?;
    // Opening the page in another tab finds the newer release by itself.
    page.go("?p=household").await?;
    page.click("notice-use").await?;
    page.until("the newer release", SECOND).await?;
    page.until_advised().await?;

    client.switch_to_window(stays.clone()).await?;
    page.find("notice-use").await?;
    ensure!(page.value(SECOND).await? == false, "this tab was changed too");
    // The host has this script no more; the release that is open here is still whole.
    let script = format!("fetch({}).then((r) => r.ok)", json!(boot(&first)?));
    ensure!(page.value(&script).await? == true, "the older release lost a file");
    ensure!(page.value(KEPT).await? == 2, "the older release is gone while it is open");
    page.answer("adults", "6").await?;
    page.until_advised().await?;
    page.click("notice-use").await?;
    page.until("the newer release", SECOND).await?;
    ensure!(page.answered("adults").await? == "6", "the answer is gone");
    page.until_brings("the older release to be cleared away", &format!("{KEPT}.then((n) => n === 1)"))
        .await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn answers_that_are_not_kept_hold_the_change_back() -> Result<()> {
    let host = Host::of(&first_release()?)?;
    let page = Page::at(&host.address, &[]).await?;
    page.before_each_page(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })",
    )
    .await?;
    page.go("?p=household").await?;
    page.until_ready().await?;
    page.answer("adults", "5").await?;
    host.put("", &second_release()?)?;
    ensure!(page.value(LOOK).await? == true, "no look for a newer release");
    page.click("notice-use").await?;
    page.until("the reason", "!document.querySelector('[data-test=notice-newer] [data-test=notice-use]')")
        .await?;
    tokio::time::sleep(Duration::from_secs(1)).await;
    ensure!(page.value(SECOND).await? == false, "it changed all the same");
    ensure!(page.answered("adults").await? == "5", "the answer is gone");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn copies_in_two_folders_leave_each_other_alone() -> Result<()> {
    let host = Host::of_folders("/", &["one", "two/deep"], &first_release()?)?;
    let mut page = Page::at(&host.address, &[]).await?;
    let (one, two) = (format!("{}one/", host.address), format!("{}two/deep/", host.address));
    for address in [&one, &two] {
        page.address.clone_from(address);
        page.go("").await?;
        page.until_ready().await?;
    }
    ensure!(page.value(KEPT).await? == 2, "the copies share what they keep");
    page.address = one;
    host.put("one", &second_release()?)?;
    page.go("").await?;
    page.click("notice-use").await?;
    page.until("the newer release", SECOND).await?;
    page.until_advised().await?;
    page.until_brings("the older release to be cleared away", &format!("{KEPT}.then((n) => n === 2)"))
        .await?;
    host.close()?;
    page.go("").await?;
    page.until_advised().await?;
    ensure!(page.value(SECOND).await? == true, "the newer release is gone");
    page.address = two;
    page.go("").await?;
    page.until_advised().await?;
    ensure!(page.value(SECOND).await? == false, "the other copy was changed too");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_release_that_does_not_start_gives_way_when_its_tabs_are_closed() -> Result<()> {
    let mut broken = first_release()?;
    let name = boot(&broken)?.to_owned();
    let script = broken.remove(&name).unwrap_or_default();
    let script = String::from_utf8(script)?.replace("await init(", "await init.broken(");
    broken.insert(name, script.into_bytes());
    let whole = second_release()?;
    broken.insert(
        crate::precache::SCRIPT.to_owned(),
        include_bytes!("../../public/service-worker.js").to_vec(),
    );
    crate::precache::fill_in(&mut broken)?;
    let host = Host::of(&broken)?;
    let page = Page::at(&host.address, &[]).await?;
    let client = &page.browser.client;
    client.goto(&page.address).await?;
    page.until("a word about it", "document.getElementById('not-started').checkVisibility()").await?;
    // Kept all the same, as another page of this copy might have it.
    page.value("navigator.serviceWorker.register('./service-worker.js').then(() => navigator.serviceWorker.ready).then(() => 1)")
        .await?;
    host.put("", &whole)?;
    ensure!(page.value(LOOK).await? == true, "no look for a newer release");
    page.until_brings(
        "the newer release to wait",
        "navigator.serviceWorker.getRegistration().then((r) => Boolean(r.waiting))",
    )
    .await?;
    // What the page asks for: its only tab is closed, and it is opened again.
    client.goto("about:blank").await?;
    tokio::time::sleep(Duration::from_secs(1)).await;
    client.goto(&page.address).await?;
    page.until("the newer release", SECOND).await?;
    page.until_advised().await?;
    page.browser.close().await
}
