//! The worker: one download of the WebAssembly serves the page and it, and the page does without a worker
//! where it must.
use anyhow::{Result, ensure};

use crate::harness::{FOLDER, Page};
use crate::parts::rates;

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_worker_reuses_the_page_s_download() -> Result<()> {
    let page = Page::served().await?;
    // The service worker would ask for everything once more, for its own keeping.
    page.before_each_page(
        "Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined })",
    )
    .await?;
    page.go("").await?;
    page.until_advised().await?;
    let asked = page.asked();
    let count = |ending: &str| asked.iter().filter(|path| path.ends_with(ending)).count();
    ensure!(count(".wasm") == 1, "the WebAssembly was asked for {} times: {asked:?}", count(".wasm"));
    ensure!(count("/worker.js") == 1, "the worker was asked for {} times: {asked:?}", count("/worker.js"));
    ensure!(asked.iter().all(|path| path.starts_with(FOLDER)), "{asked:?}");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn without_a_worker_the_page_advises_all_the_same_and_says_so() -> Result<()> {
    advises_without(Page::served().await?).await
}

/// In a browser that gives no worker, the page advises and says that it works without.
pub async fn advises_without(page: Page) -> Result<()> {
    page.before_each_page(
        "globalThis.Worker = class { constructor() { throw new Error('no workers here') } }",
    )
    .await?;
    page.go("").await?;
    page.until_advised().await?;
    page.find("notice-no-worker").await?;
    rates(&page).await?;
    // The page warns on the console of what went wrong, as it should.
    page.browser.close().await
}
