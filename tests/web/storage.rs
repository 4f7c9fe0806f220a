//! Keeping answers in the browser: they survive a reload and reach other tabs; what cannot be read is set
//! aside, and where nothing can be kept the page works and says so.
use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::harness::{KEPT, Page};

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn answers_survive_a_reload() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.until_kept("adults").await?;
    page.reload().await?;
    ensure!(page.answered("adults").await? == "5", "the answer is gone");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn what_cannot_be_read_is_set_aside() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    for (n, junk) in
        ["{\"version\":1,\"revis", "null", "{\"version\":99}", "\u{1F6BF}"].into_iter().enumerate()
    {
        page.value(&format!("localStorage.setItem('tankful.job.1', {})", json!(junk))).await?;
        page.reload().await?;
        page.find("notice-set-aside").await?;
        page.find("notice-download").await?;
        let aside = page.value(&format!("localStorage.getItem('tankful.aside.{}')", n + 1)).await?;
        ensure!(aside == junk, "{junk} became {aside}");
        ensure!(page.answered("adults").await?.is_empty(), "an answer from nowhere");
    }
    page.answer("adults", "3").await?;
    page.reload().await?;
    ensure!(page.answered("adults").await? == "3", "keeping does not work after damage");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn good_answers_are_saved_from_damaged_ones() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.answer("children", "2").await?;
    page.until_kept("children").await?;
    page.value(
        "(() => { const key = Object.keys(localStorage).find((k) => k.startsWith('tankful.job.2.'));
                  const job = JSON.parse(localStorage.getItem(key));
                  job.answers.children = 'two'; job.revision += 1;
                  localStorage.setItem(key, JSON.stringify(job)); })()",
    )
    .await?;
    page.reload().await?;
    page.find("notice-set-aside").await?;
    ensure!(page.answered("adults").await? == "5", "the good answer is gone");
    ensure!(page.answered("children").await?.is_empty(), "the damaged answer is taken");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn where_storage_is_forbidden_the_page_works_and_says_so() -> Result<()> {
    let page = Page::served().await?;
    page.before_each_page(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })",
    )
    .await?;
    page.go("?p=household").await?;
    page.find("notice-not-kept").await?;
    page.answer("adults", "5").await?;
    page.until_advised().await?;
    ensure!(page.answered("adults").await? == "5", "the answer is not taken");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn where_storage_is_full_the_page_works_and_says_so() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.value(
        "(() => { let size = 1 << 22, n = 0;
                  while (size > 0) {
                    try { localStorage.setItem('filler' + n++, 'x'.repeat(size)) } catch { size >>= 1 }
                  } })()",
    )
    .await?;
    page.answer("adults", "5").await?;
    page.find("notice-not-kept").await?;
    page.until_advised().await?;
    ensure!(page.answered("adults").await? == "5", "the answer is not taken");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn two_tabs_follow_each_other() -> Result<()> {
    let page = Page::served().await?;
    let client = &page.browser.client;
    page.go("?p=household").await?;
    let first = client.window().await?;
    let second = client.new_window(true).await?.handle;
    client.switch_to_window(second.clone()).await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    client.switch_to_window(first).await?;
    page.until(
        "the other tab's answer",
        "document.querySelector('[data-test=q-adults-input]').value === '5'",
    )
    .await?;
    page.answer("children", "3").await?;
    client.switch_to_window(second).await?;
    page.until(
        "the first tab's answer",
        "document.querySelector('[data-test=q-children-input]').value === '3'",
    )
    .await?;
    let kept = page.value(KEPT).await?;
    let kept = kept.as_str().context("nothing is kept")?;
    ensure!(
        kept.contains("adults") && kept.contains("children"),
        "one tab's answer overwrote the other's: {kept}"
    );
    page.close().await
}
