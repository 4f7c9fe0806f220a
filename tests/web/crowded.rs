//! Storage in trouble while many jobs lie in it: full, with junk among them, forbidden half way; and a browser that is
//! killed as a whole.
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::harness::{KEPT, Page};
use crate::hosted::{Folder, Host, first_release};
use crate::jobs::fill;
use crate::reach::axe;

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn full_storage_takes_no_job_away() -> Result<()> {
    let page = Page::served().await?;
    page.go("").await?;
    page.value(&fill(300)).await?;
    page.value(
        "(() => { let size = 1 << 22, n = 0;
           while (size > 0) { try { localStorage.setItem('filler' + n++, 'x'.repeat(size)) } catch { size >>= 1 } } })()",
    )
    .await?;
    let before = page.value(KEPT).await?;
    page.go("?p=jobs").await?;
    page.until("the list", "document.querySelectorAll('li.job').length > 10").await?;
    // It says how full it is, with figures, and what to do.
    page.find("jobs-nearly-full").await?;
    page.click("job-unfold").await?;
    page.click("job-duplicate").await?;
    page.find("notice-not-kept").await?;
    // A link opens all the same; a newer release must not be put in its place while it is not kept.
    page.value(&format!("location.hash = {}", json!(include_str!("../jobs/links/v1-typical.link").trim())))
        .await?;
    page.find("open-where").await?.select_by_value("").await?;
    page.click("open-go").await?;
    page.until("the job", "!document.querySelector('[data-test=jobs]')").await?;
    page.find("notice-not-kept").await?;
    page.go("?p=household&j=000000000007").await?;
    page.answer("children", "3").await?;
    page.find("notice-not-kept").await?;
    page.until_advised().await?;
    ensure!(page.value(KEPT).await? == before, "a kept job changed or went");
    // Saving to a file still works, and then there is room.
    page.value("Object.keys(localStorage).filter((k) => k.startsWith('filler')).forEach((k) => localStorage.removeItem(k))")
        .await?;
    page.answer("children", "4").await?;
    page.until_kept("children").await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn junk_among_many_jobs_hides_none_of_them() -> Result<()> {
    let page = Page::served().await?;
    page.go("").await?;
    page.value(&fill(60)).await?;
    for (key, junk) in [
        ("tankful.job.2.0000000000f0", "{\"tankful_job\":2,"),
        ("tankful.job.2.0000000000f1", "[]"),
        ("tankful.job.2.not-an-identity", "junk"),
        ("tankful.jobs.1", "{\"tankful_index\":1,\"jobs\":[{\"id\":\"x\"},7]}"),
        ("tankful.offers.1", "no offers"),
        ("tankful.open.1", "\u{1F6BF}"),
        ("tankful.settings.1", "{"),
    ] {
        page.value(&format!("localStorage.setItem({}, {})", json!(key), json!(junk))).await?;
    }
    page.go("?p=jobs").await?;
    page.until("the list", "document.querySelector('[data-test=jobs-count]')?.textContent.startsWith('60 ')")
        .await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.browser.look(390, 844, 1.0, "dark").await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core, dark: {:?}", axe(&page).await?);
    page.click("job-open").await?;
    page.until("the job", "document.querySelector('[data-page=result]')").await?;
    page.go("?p=household&j=0000000000f0").await?;
    page.find("notice-set-aside").await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn forbidden_storage_still_opens_and_sends_links() -> Result<()> {
    let page = Page::served().await?;
    page.before_each_page(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })",
    )
    .await?;
    page.go(&format!("#{}", include_str!("../jobs/links/v1-typical.link").trim())).await?;
    page.click("open-go").await?;
    page.find("notice-not-kept").await?;
    page.go("?p=jobs").await?;
    page.find("jobs").await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_browser_is_asked_to_keep_jobs_and_says_when_it_may_not() -> Result<()> {
    let page = Page::served().await?;
    page.before_each_page(
        "window.asked = 0;
         navigator.storage.persisted = async () => false;
         navigator.storage.persist = async () => { window.asked += 1; return window.asked > 1; };",
    )
    .await?;
    page.go("?p=jobs").await?;
    page.find("jobs-may-be-cleared").await?;
    page.click("jobs-persist").await?;
    page.until("it to be asked", "window.asked === 1").await?;
    page.find("jobs-may-be-cleared").await?;
    page.click("jobs-persist").await?;
    page.until("the promise", "!document.querySelector('[data-test=jobs-may-be-cleared]')").await?;
    page.close().await
}

/// Chromium writes what a page keeps to the disk within some seconds: what was typed before that must be there, and a
/// job is never half written.
#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_browser_killed_in_mid_edit_keeps_whole_jobs() -> Result<()> {
    let (host, profile) = (Host::of(&first_release()?)?, Folder::new()?);
    let page = Page::at(&host.address, &profile.as_profile()).await?;
    page.go("?p=job").await?;
    page.find("job-notes").await?.send_keys("before the fall").await?;
    page.until_kept("before the fall").await?;
    tokio::time::sleep(Duration::from_secs(8)).await;
    page.find("job-notes").await?.send_keys(" and half a sen").await?;
    page.until_kept("half a sen").await?;
    // The browser's own process dies at once, and every page with it.
    let _ = page.browser.devtools("Browser.crash", json!({})).await;
    drop(page);
    let page = Page::at(&host.address, &profile.as_profile()).await?;
    page.go("?p=job").await?;
    page.until_kept("before the fall").await?;
    let kept = page.value(KEPT).await?;
    let kept = kept.as_str().context("nothing is kept")?;
    let job: serde_json::Value = serde_json::from_str(kept).context("half a job")?;
    println!("after the kill the notes were: {}", job["notes"]);
    ensure!(
        page.value("document.querySelector('[data-test=notice-set-aside]') === null").await? == true,
        "{kept}"
    );
    page.close().await
}
