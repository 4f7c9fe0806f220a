//! With no signal: one visit makes the page start from nothing without a network; what is in the way of
//! that is said, and the page works all the same.
use std::time::Instant;

use anyhow::{Result, ensure};
use serde_json::json;

use crate::harness::Page;
use crate::hosted::{Folder, Host, first_release};

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn after_one_visit_the_page_starts_with_no_signal() -> Result<()> {
    let (host, profile) = (Host::of(&first_release()?)?, Folder::new()?);
    let page = Page::at(&host.address, &profile.as_profile()).await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.until_kept("adults").await?;
    page.until_ready().await?;
    page.close().await?;
    host.close()?;

    let page = Page::at(&host.address, &profile.as_profile()).await?;
    let start = Instant::now();
    page.go("?p=household").await?;
    let drawn = start.elapsed();
    page.until_advised().await?;
    let advised = start.elapsed();
    println!(
        "offline cold start: drawn after {} ms, advised after {} ms",
        drawn.as_millis(),
        advised.as_millis()
    );
    let compiled = "performance.getEntriesByType('resource').find((r) => r.name.endsWith('.wasm'))";
    let streamed = format!("fetch({compiled}.name).then((r) => r.headers.get('content-type'))");
    ensure!(page.value(&streamed).await? == "application/wasm", "the WebAssembly has another type");
    ensure!(page.answered("adults").await? == "5", "the answer is gone");
    page.until_ready().await?;
    ensure!(
        page.value("document.querySelector('[data-test=notice-no-worker]')").await?.is_null(),
        "no worker"
    );

    // An address that is no page of ours leads to the way in.
    page.browser.client.goto(&format!("{}docs/nothing.html", page.address)).await?;
    page.until("the way in", &format!("location.href === {}", json!(page.address))).await?;
    page.until_advised().await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_first_visit_downloads_nothing_large_twice() -> Result<()> {
    let release = first_release()?;
    let host = Host::of(&release)?;
    let page = Page::at(&host.address, &[]).await?;
    page.go("").await?;
    page.until_ready().await?;
    let asked = host.asked();
    for name in release.keys() {
        let times = asked.iter().filter(|path| path.rsplit('/').next() == Some(name)).count();
        let hashed = [".wasm", ".css"].iter().any(|end| name.ends_with(end))
            || name.starts_with("page-")
            || name.starts_with("boot-");
        ensure!(times >= 1, "{name} was never asked for");
        ensure!(times == 1 || !hashed, "{name} was asked for {times} times");
    }
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_download_that_broke_off_is_said_and_tried_again() -> Result<()> {
    let whole = first_release()?;
    let (mut without, mut other) = (whole.clone(), whole.clone());
    without.remove("icon.svg");
    other.insert("icon.svg".to_owned(), b"<p>Please log in to this network</p>".to_vec());
    let host = Host::of(&without)?;
    let page = Page::at(&host.address, &[]).await?;
    for broken in [&without, &other] {
        host.put("", broken)?;
        page.go("").await?;
        page.until_standing("offline-failed").await?;
        page.until_advised().await?;
    }
    host.put("", &whole)?;
    page.reload().await?;
    page.until_ready().await?;
    host.close()?;
    page.reload().await?;
    page.until_advised().await?;
    // The console tells of the failures, as it should.
    page.browser.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn where_there_is_no_room_the_page_works_and_says_so() -> Result<()> {
    let host = Host::of(&first_release()?)?;
    let page = Page::at(&host.address, &[]).await?;
    let origin = host.address.trim_end_matches(crate::harness::FOLDER);
    let little = json!({ "origin": origin, "quotaSize": 200_000 });
    page.browser.devtools("Storage.overrideQuotaForOrigin", little).await?;
    page.go("?p=household").await?;
    page.until_standing("offline-full").await?;
    page.answer("adults", "5").await?;
    page.until_advised().await?;
    page.until_brings("the half kept to be cleared away", "caches.keys().then((all) => all.length === 0)")
        .await?;
    page.browser.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn where_service_workers_are_refused_the_page_works_and_says_so() -> Result<()> {
    let host = Host::of(&first_release()?)?;
    for (standing, script) in [
        (
            "offline-refused",
            "ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException('no', 'SecurityError'))",
        ),
        ("offline-none", "Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined })"),
        (
            "offline-none",
            "Object.defineProperty(Navigator.prototype, 'serviceWorker',
               { get() { throw new DOMException('no', 'SecurityError') } })",
        ),
    ] {
        let page = Page::at(&host.address, &[]).await?;
        page.before_each_page(script).await?;
        page.go("").await?;
        page.until_standing(standing).await?;
        page.until_advised().await?;
        page.browser.close().await?;
    }
    Ok(())
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn at_an_address_without_https_the_page_works_and_says_so() -> Result<()> {
    let host = Host::of(&first_release()?)?;
    let rules = "--host-resolver-rules=MAP plain.test 127.0.0.1, MAP * ~NOTFOUND , EXCLUDE 127.0.0.1";
    let address = host.address.replace("127.0.0.1", "plain.test");
    let page = Page::at(&address, &[rules.to_owned()]).await?;
    page.go("?p=household").await?;
    page.until_standing("offline-unsafe").await?;
    page.answer("adults", "5").await?;
    page.until_advised().await?;
    page.close().await
}
