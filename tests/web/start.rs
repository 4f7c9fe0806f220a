//! The page starts, from any folder, with nothing on the console and nobody else asked.
use anyhow::{Result, ensure};

use crate::harness::Page;

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_page_starts_without_a_word_on_the_console() -> Result<()> {
    let page = Page::open().await?;
    ensure!(page.value("document.title").await? != "", "a page without a title");
    ensure!(page.value("document.documentElement.lang").await? != "", "a page without a language");
    ensure!(
        page.value("document.getElementById('not-started').hidden").await? == true,
        "it says it could not start"
    );
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn nobody_but_the_page_s_own_folder_is_asked() -> Result<()> {
    let page = Page::open().await?;
    page.reload().await?;
    let requests = page.requests().await?;
    ensure!(
        requests.iter().any(|url| url.ends_with(".wasm")),
        "the log of requests misses the page's own: {requests:?}"
    );
    for url in &requests {
        let own = url.starts_with(&page.address) || url.starts_with("data:") || url.starts_with("blob:");
        ensure!(own, "{url} was asked for");
    }
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_content_security_policy_is_in_force() -> Result<()> {
    let page = Page::open().await?;
    // What an injected script would try: inline code, text as code, a call home.
    let tried = page
        .browser
        .client
        .execute_async(
            "const done = arguments[0], blocked = [];
             document.addEventListener('securitypolicyviolation', (e) => blocked.push(e.effectiveDirective));
             const script = document.createElement('script');
             script.textContent = 'window.injected = true';
             document.body.append(script);
             fetch('https://elsewhere.invalid/').catch(() => 0)
               .then(() => setTimeout(() => done([blocked.sort(), window.injected === true]), 50));",
            Vec::new(),
        )
        .await?;
    ensure!(tried == serde_json::json!([["connect-src", "script-src-elem"], false]), "{tried}");
    // The console is full of the refusals, as it should be.
    page.browser.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn where_the_page_cannot_start_it_says_so() -> Result<()> {
    let page = Page::served().await?;
    page.before_each_page("delete globalThis.WebAssembly").await?;
    page.browser.client.goto(&page.address).await?;
    page.until("a word about it", "document.getElementById('not-started').checkVisibility()").await?;
    page.browser.close().await
}
