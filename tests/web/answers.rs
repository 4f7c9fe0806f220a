//! Answering: what is typed moves the verdict, what makes no sense is refused at its field, and once
//! loaded the page needs no network.
use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::harness::Page;

const VERDICT: &str = "document.querySelector('[data-test=verdict-says]').textContent";

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn an_answer_moves_the_verdict() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.until_advised().await?;
    let before = page.value(VERDICT).await?;
    page.answer("adults", "6").await?;
    page.until("another verdict", &format!("{VERDICT} !== {before}")).await?;
    page.until_advised().await?;
    page.close().await
}

/// Nothing but an answer has the worker asked again: not even the first look at the advice.
#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn advice_is_asked_for_once_for_the_same_answers() -> Result<()> {
    let page = Page::served().await?;
    // A request for advice begins with a nought (`worker::messages::Request`).
    page.before_each_page(
        "globalThis.questions = 0;
         const post = Worker.prototype.postMessage;
         Worker.prototype.postMessage = function (...all) {
             if (all[0]?.[0] === 0) questions += 1;
             return post.apply(this, all);
         };",
    )
    .await?;
    page.go("?p=household").await?;
    page.until_advised().await?;
    page.click("result").await?;
    page.until("first bands", "document.querySelector('[data-test=chart-bands]')").await?;
    ensure!(page.value("questions").await? == 1, "asked {} times", page.value("questions").await?);
    page.click("change-answers").await?;
    page.answer("adults", "5").await?;
    page.until("a question", "questions > 1").await?;
    page.until_advised().await?;
    ensure!(page.value("questions").await? == 2, "asked {} times", page.value("questions").await?);
    page.close().await
}

/// After an answer the verdict is that of a first look, said to be one; then that of the whole years.
#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_first_look_comes_and_is_replaced() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.until_advised().await?;
    page.value(
        "globalThis.seen = [], new MutationObserver(() => {
            const verdict = document.querySelector('[data-test=verdict]');
            seen.push([verdict.dataset.stage, verdict.getAttribute('aria-busy'),
                document.querySelector('[data-test=verdict-basis]').textContent,
                document.querySelector('[data-test=verdict-says] .key-figures') !== null]);
         }).observe(document.querySelector('[data-test=verdict]'),
            { attributes: true, attributeFilter: ['data-stage', 'aria-busy'] }), true",
    )
    .await?;
    page.answer("adults", "6").await?;
    page.until("the whole verdict", "seen.length && seen.at(-1)[1] === 'false'").await?;
    let seen: Vec<(String, String, String, bool)> = serde_json::from_value(page.value("seen").await?)?;
    let first = seen.iter().position(|(stage, ..)| stage == "first");
    let (stage, _, basis, figures) = &seen[first.context(format!("no first look: {seen:?}"))?];
    ensure!(stage == "first" && basis.contains("first look") && *figures, "{seen:?}");
    let (stage, _, basis, figures) = &seen[seen.len() - 1];
    ensure!(stage == "full" && !basis.contains("first look") && *figures, "{seen:?}");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn what_makes_no_sense_is_refused_at_its_field() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.until_advised().await?;
    for junk in ["-1", "13", "1e999", "NaN", "inf", "two", "3 4", "<b>4</b>"] {
        page.answer("adults", junk).await?;
        page.until(
            &format!("{junk} to be refused"),
            "document.querySelector('[data-test=q-adults-refusal]').textContent.trim() !== ''",
        )
        .await?;
        let stands = page.answered("adults").await?;
        ensure!(stands == junk, "{junk} became {stands}");
    }
    page.answer("adults", "4").await?;
    page.until(
        "the refusal to go",
        "!document.querySelector('[data-test=q-adults-refusal]').textContent.trim()",
    )
    .await?;
    page.until_advised().await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn once_loaded_the_page_needs_no_network() -> Result<()> {
    let page = Page::open().await?;
    page.until_advised().await?;
    page.until_ready().await?;
    let loaded = page.asked().len();
    let offline = json!({ "offline": true, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0 });
    page.browser.devtools("Network.emulateNetworkConditions", offline).await?;
    page.click("start").await?;
    page.answer("adults", "5").await?;
    page.until_advised().await?;
    page.click("result").await?;
    page.until("the result", "document.querySelector('[data-page=result]')").await?;
    ensure!(page.asked().len() == loaded, "more was asked for: {:?}", page.asked());
    page.close().await
}
