//! The page in one file, opened from the disk.
use std::path::PathBuf;

use anyhow::{Result, ensure};

use crate::harness::Page;
use crate::hosted::Folder;
use crate::parts::rates;
use crate::worker::advises_without;

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn opened_from_the_disk_it_advises() -> Result<()> {
    let file = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("dist-single/tankful.html");
    ensure!(file.is_file(), "there is no dist-single/: run `cargo xtask build --single` first");
    let profile = Folder::new()?;
    let address = format!("file://{}", file.display());
    let page = Page::at(&address, &profile.as_profile()).await?;
    page.go("?p=household").await?;
    page.until_standing("offline-file").await?;
    page.until_advised().await?;
    ensure!(
        page.value("document.querySelector('[data-test=notice-no-worker]')").await?.is_null(),
        "no worker"
    );
    page.answer("adults", "5").await?;
    page.until_kept("adults").await?;
    page.until_advised().await?;
    page.click("result").await?;
    page.until("the result", "document.querySelector('[data-page=result]')").await?;
    page.browser.client.back().await?;
    page.until("the way back", "document.querySelector('[data-page=section]')").await?;
    rates(&page).await?;
    for url in page.requests().await? {
        ensure!(!url.starts_with("http"), "{url} was asked for");
    }
    page.close().await?;
    let page = Page::at(&address, &profile.as_profile()).await?;
    page.go("?p=household").await?;
    ensure!(page.answered("adults").await? == "5", "the answer is gone after the browser was closed");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn where_the_disk_s_page_gets_no_worker_it_advises_all_the_same() -> Result<()> {
    let file = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("dist-single/tankful.html");
    advises_without(Page::at(&format!("file://{}", file.display()), &[]).await?).await
}
