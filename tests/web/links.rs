//! Jobs that travel: from one person's browser to another's and back, wrong links, files.
use anyhow::{Context, Result, ensure};
use serde_json::json;

use crate::harness::{KEPT, Page};
use crate::reach::axe;

/// A link of the first form with three heaters, kept for ever.
const FULL: &str = include_str!("../jobs/links/v1-full.link");

impl Page {
    /// Opens the sheet to send by, and gives the link.
    async fn link_to_send(&self) -> Result<String> {
        let link = self.find("send-link").await?.prop("value").await?.context("a field without a value")?;
        ensure!(link.starts_with(&format!("{}#j1.", self.address)), "{link}");
        Ok(link)
    }

    /// Goes on through the asked questions to the end.
    async fn through_the_asked(&self) -> Result<()> {
        while self.value("document.querySelector('[data-test=asked-next]') !== null").await? == true {
            let before = self.value("document.querySelector('[data-test=asked-step]').textContent").await?;
            self.click("asked-next").await?;
            let next = format!("document.querySelector('[data-test=asked-step]')?.textContent !== {before}");
            self.until("the next question", &next).await?;
        }
        Ok(())
    }

    /// The words of an element.
    async fn words_of(&self, test: &str) -> Result<String> {
        Ok(self.find(test).await?.text().await?)
    }
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_job_goes_to_another_browser_and_comes_back() -> Result<()> {
    let installer = Page::served().await?;
    installer.go("?p=heater").await?;
    installer.click("q-heater_kind-gas").await?;
    installer.until_kept("heater_kind").await?;
    installer.go("?p=job").await?;
    installer.find("job-name").await?.send_keys("Secret name").await?;
    installer.find("job-notes").await?.send_keys("Secret notes").await?;
    installer.until_kept("Secret notes").await?;
    installer.click("send").await?;
    let link = installer.link_to_send().await?;
    let held = installer.value("document.querySelector('[data-test=over-all]').textContent").await?;
    ensure!(held.as_str().is_some_and(|h| !h.contains("Secret")), "the link holds a text: {held}");
    let asked =
        installer.value("document.querySelectorAll('[data-test=send-suggested] :checked').length").await?;
    ensure!(asked == 8, "{asked} questions are suggested");
    // What was asked is remembered once the link has gone out.
    installer.value("document.querySelector('[data-test=send-mail]').addEventListener('click', (e) => e.preventDefault())").await?;
    installer.click("send-mail").await?;
    installer.until_kept("asked").await?;

    let householder = Page::at(&installer.address, &[]).await?;
    // A phone with a sheet to share by.
    householder.before_each_page("navigator.share = async (what) => { window.shared = what; };").await?;
    householder.browser.client.goto(&link).await?;
    householder.find("open-go").await?;
    let hash = householder.value("location.hash").await?;
    ensure!(hash == "", "the address still has {hash}");
    ensure!(householder.value(&format!("({KEPT}) === ''")).await? == true, "something was kept unasked");
    householder.click("open-go").await?;
    householder.answer("adults", "3").await?;
    householder.through_the_asked().await?;
    householder.find("asked-verdict").await?;
    let back = householder.link_to_send().await?;
    // One tap sends it.
    householder.click("send-share").await?;
    householder.until("it to be shared", "window.shared").await?;
    let shared = householder.value("window.shared.url").await?;
    ensure!(shared == back, "{shared} was shared, not {back}");
    householder.close().await?;

    installer.click("over-close").await?;
    installer.browser.client.goto(&back).await?;
    let words = installer.words_of("open-name").await?;
    ensure!(words.contains("back"), "it says {words}");
    installer.find("difference").await?;
    installer.click("open-go").await?;
    installer.until_kept("adults").await?;
    let kept = installer.value(KEPT).await?;
    let kept = kept.as_str().context("nothing is kept")?;
    for word in ["heater_kind", "Secret name", "Secret notes"] {
        ensure!(kept.contains(word), "{word} is lost: {kept}");
    }
    let jobs = installer
        .value("Object.keys(localStorage).filter((k) => k.startsWith('tankful.job.')).length")
        .await?;
    ensure!(jobs == 1, "{jobs} jobs came of one");
    installer.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_bad_link_is_explained_and_changes_nothing() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.until_kept("adults").await?;
    let before = page.value(KEPT).await?;
    let full = FULL.trim();
    let middle = full.len() / 2;
    let other = if full.as_bytes()[middle] == b'A' { "B" } else { "A" };
    let bad = [
        ("cut off", full[..middle].to_owned(), "end of this link"),
        ("damaged", format!("{}{other}{}", &full[..middle], &full[middle + 1..]), "changed on the way"),
        ("newer", full.replacen("j1.", "j7.", 1), "newer version"),
        ("wrong", String::from("hello"), "no job"),
        ("a trick", String::from("%3Cscript%3Ealert(1)%3C/script%3E"), "no job"),
        ("far too long", format!("j1.{}", "A".repeat(30_000)), "too long"),
        ("no letters", String::from("j1.%%%%"), "end of this link"),
    ];
    for (what, fragment, says) in &bad {
        page.value(&format!("location.hash = {}", json!(fragment))).await?;
        let words = page.words_of("open-refused").await?;
        ensure!(words.contains(says), "{what}: {words}");
        ensure!(page.value("location.hash").await? == "", "{what}: it stays in the address");
        page.click("over-close").await?;
        page.until("it to be closed", "!document.querySelector('[data-test=open-refused]')").await?;
    }
    // The same at the start of the page.
    page.browser.client.goto("about:blank").await?;
    page.go(&format!("?p=household#{}", bad[1].1)).await?;
    page.find("open-refused").await?;
    let after = page.value(KEPT).await?;
    ensure!(before == after, "kept before: {before}; after: {after}");
    ensure!(page.answered("adults").await? == "5", "the open job is another");
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_link_is_merged_field_by_field() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.until_kept("adults").await?;
    page.value(&format!("location.hash = {}", json!(FULL.trim()))).await?;
    // Of a job that is not here: it is offered as a new one, and one may choose otherwise.
    let own =
        page.value("Object.keys(localStorage).find((k) => k.startsWith('tankful.job.2.')).slice(14)").await?;
    let own = own.as_str().context("no job")?;
    page.find("open-where").await?.select_by_value(own).await?;
    page.find("difference").await?;
    page.click("take-ours").await?;
    page.click("open-go").await?;
    page.find("notice-merged").await?;
    page.go("?p=household").await?;
    ensure!(page.answered("adults").await? == "5", "the one picked is not taken");
    let kept = page.value(KEPT).await?;
    let kept = kept.as_str().context("nothing is kept")?;
    ensure!(kept.contains("Example series") && kept.contains("answers.adults"), "not all is here: {kept}");
    // Opened once more as a new job, it stands beside the first.
    page.value(&format!("location.hash = {}", json!(FULL.trim()))).await?;
    page.click("open-go").await?;
    page.until(
        "two jobs",
        "Object.keys(localStorage).filter((k) => k.startsWith('tankful.job.2.')).length === 2",
    )
    .await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn a_file_shows_what_it_would_change_first() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=household").await?;
    page.answer("adults", "5").await?;
    page.until_kept("adults").await?;
    page.go("?p=jobs").await?;
    let own =
        page.value("Object.keys(localStorage).find((k) => k.startsWith('tankful.job.2.')).slice(14)").await?;
    let job = |id: &serde_json::Value, adults: u32| {
        json!({ "tankful_job": 2, "id": id, "revision": 4, "created": 1e12, "changed": 4e12, "name": "From a file",
            "answers": { "adults": adults, "no_such_question": 1 } })
    };
    let other = json!("0000000000aa");
    let file = json!({ "tankful_jobs": 1, "jobs": [job(&own, 3), job(&other, 2), { "tankful_job": 99 }] })
        .to_string();
    let path = std::env::temp_dir().join(format!("tankful-jobs-{}.json", std::process::id()));
    std::fs::write(&path, file)?;
    let before = page.value(KEPT).await?;
    page.find("jobs-load-file").await?.send_keys(&path.display().to_string()).await?;
    let found = page.words_of("bring-found").await?;
    ensure!(found.contains("New here: 1") && found.contains("different: 1"), "{found}");
    ensure!(page.words_of("bring-faults").await?.contains("jobs[2]"), "the fault is not told");
    ensure!(page.value(KEPT).await? == before, "something was taken unasked");
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.click("bring-take").await?;
    page.find("notice-brought").await?;
    page.until_kept("0000000000aa").await?;
    let kept = page.value(KEPT).await?;
    // Newer and answered alike: theirs is taken, ours is set aside.
    ensure!(
        kept.as_str().is_some_and(|k| k.contains("\"adults\":3") && k.contains("answers.adults")),
        "{kept}"
    );
    std::fs::write(&path, "no jobs at all")?;
    page.find("jobs-load-file").await?.send_keys(&path.display().to_string()).await?;
    page.find("bring-refused").await?;
    std::fs::remove_file(&path)?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn axe_finds_no_fault_on_what_lies_over_the_page() -> Result<()> {
    let page = Page::served().await?;
    let mut faults = Vec::new();
    for (width, scheme) in [(390, "light"), (390, "dark"), (1440, "light"), (1440, "dark")] {
        page.browser.look(width, 900, 1.0, scheme).await?;
        page.browser.client.goto("about:blank").await?;
        page.go(&format!("?p=job#{}", FULL.trim())).await?;
        page.find("open-go").await?;
        // Two looks at each: as it opens, and with everything unfolded.
        faults.extend(axe(&page).await?);
        page.value("document.querySelectorAll('dialog details').forEach((d) => { d.open = true; })").await?;
        faults.extend(axe(&page).await?);
        page.click("over-close").await?;
        page.click("send").await?;
        page.click("send-show-code").await?;
        page.value("document.querySelectorAll('dialog details').forEach((d) => { d.open = true; })").await?;
        faults.extend(axe(&page).await?);
        page.click("send-code").await?;
        faults.extend(axe(&page).await?);
        page.value("location.hash = 'nonsense'").await?;
        page.find("open-refused").await?;
        faults.extend(axe(&page).await?);
    }
    ensure!(faults.is_empty(), "{} faults: {faults:#?}", faults.len());
    page.close().await
}
