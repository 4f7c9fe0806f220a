//! The installer's pages: an offer put in figure by figure, kept for other jobs; and measuring on site.
use anyhow::{Context, Result, ensure};

use crate::harness::{KEPT, Page};
use crate::reach::axe;

impl Page {
    /// Types into a field that is no question, and leaves it.
    async fn put(&self, test: &str, text: &str) -> Result<()> {
        self.find(test).await?.send_keys(text).await?;
        self.value("document.activeElement.blur()").await?;
        Ok(())
    }

    /// Puts in a heater with a price: volume, factor and price, in gallons and dollars.
    async fn offer_a_heater(&self, at: usize, figures: [&str; 3]) -> Result<()> {
        self.click("offer-add-heater").await?;
        for (figure, text) in ["volume", "factor", "price"].into_iter().zip(figures) {
            self.answer(&format!("offer-{at}-{figure}"), text).await?;
        }
        Ok(())
    }
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn an_offer_is_put_in_and_kept_for_other_jobs() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=offer").await?;
    page.put("offer-name", "Example offer").await?;
    page.offer_a_heater(0, ["66", "3.7", "4200"]).await?;
    page.put("offer-heater-name", "Example 66").await?;
    page.until_kept("Example 66").await?;
    // Out of range: refused, and the figure from before stays.
    page.answer("offer-0-volume", "5000").await?;
    page.until("the refusal", "document.querySelector('[data-test=q-offer-0-volume-refusal]').textContent")
        .await?;
    page.answer("offer-0-volume", "66").await?;
    page.answer("labour", "300").await?;
    page.answer("adder-permit", "90").await?;
    page.answer("adder-louvred-door", "180").await?;
    let permit = page.value("document.querySelector('[data-test=adder-permit-always]').checked").await?;
    ensure!(permit == true, "a permit belongs to every job");
    page.put("own-name", "Attic hoist").await?;
    page.answer("own", "120").await?;
    page.click("own-add").await?;
    page.until_kept("Attic hoist").await?;
    page.click("offer-template-keep").await?;
    page.until(
        "it to be a template",
        "(localStorage.getItem('tankful.offers.1') ?? '').includes('Example 66')",
    )
    .await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.browser.look(390, 844, 1.0, "dark").await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core, dark: {:?}", axe(&page).await?);
    // The advice is about the offered heater, and names what it may cost on top.
    page.click("offer-to-result").await?;
    page.until_advised().await?;
    page.until(
        "the offered heater",
        "document.querySelector('[data-test=candidates]')?.textContent.includes('Example 66')",
    )
    .await?;
    // Another job starts from it.
    page.go("?p=jobs").await?;
    page.click("job-new").await?;
    page.put("job-name", "Second house").await?;
    page.until_kept("Second house").await?;
    page.go("?p=offer").await?;
    page.find("offer-template").await?.select_by_value("Example offer").await?;
    page.click("offer-template-use").await?;
    page.find("heater-0-unfold").await?;
    let jobs = page.value(&format!("({KEPT}).split('Example 66').length - 1")).await?;
    ensure!(jobs == 2, "the heater stands in {jobs} jobs");
    page.click("heater-0-unfold").await?;
    page.click("heater-0-out").await?;
    page.until("it to be out", "!document.querySelector('[data-test=heater-0-unfold]')").await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn on_site_a_tape_and_a_thumb_are_enough() -> Result<()> {
    let page = Page::served().await?;
    page.browser.look(390, 844, 1.0, "light").await?;
    page.go("?p=onsite").await?;
    page.until("the list", "document.querySelectorAll('[data-test=measures] li').length > 5").await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.value("document.querySelectorAll('.onsite details').forEach((d) => { d.open = true; })").await?;
    page.click("measure-headroom").await?;
    page.find("tape-feet").await?.send_keys("7").await?;
    page.find("tape-inches").await?.send_keys("3").await?;
    page.click("tape-2").await?;
    page.until_kept("headroom").await?;
    let kept = page.value(KEPT).await?;
    let kept = kept.as_str().context("nothing is kept")?;
    ensure!(kept.contains("87.5") && kept.contains("measured"), "{kept}");
    page.find("tape-inches").await?.send_keys("x").await?;
    page.until("the refusal", "document.querySelector('[data-test=tape-refusal]').textContent").await?;
    // Large targets within a thumb's reach.
    let reach = page
        .value(
            "[...document.querySelectorAll('.hand button, .thumb > *')].map((e) => e.getBoundingClientRect())
               .every((box) => box.height >= 56 && box.bottom <= innerHeight + 1)",
        )
        .await?;
    ensure!(reach == true, "something is small, or out of reach");
    page.browser.look(390, 844, 1.0, "dark").await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core, dark: {:?}", axe(&page).await?);
    page.click("onsite-next").await?;
    page.click("onsite-list").await?;
    page.until(
        "it to be done with",
        "!document.querySelector('[data-test=measures] [data-test=measure-headroom]')",
    )
    .await?;
    page.find("onsite-measured").await?;
    // Asked to, the screen stays on; where the browser refuses, that is said.
    page.click("onsite-wake").await?;
    page.until("word of the screen", "document.querySelector('[data-test=onsite-wake-said]').textContent")
        .await?;
    page.go("?p=job").await?;
    page.until("the log", "document.querySelectorAll('[data-test=job-log] li').length === 1").await?;
    page.close().await
}
