//! The day of the work on the page: what is ticked stays, hold points come first, the list of parts is a table.
use anyhow::{Context, Result, ensure};
use serde_json::Value;

use crate::harness::Page;
use crate::reach::axe;

impl Page {
    async fn at_work(&self) -> Result<()> {
        self.go("?p=work").await?;
        self.until("the plan", "document.querySelector('[data-test=parts-tally]')").await
    }

    /// Which of these are pressed.
    async fn pressed(&self, stem: &str) -> Result<Vec<String>> {
        let all = self
            .value(&format!(
                "[...document.querySelectorAll('[data-test^={stem}-][aria-pressed=true]')].map((e) => e.dataset.test)"
            ))
            .await?;
        Ok(all.as_array().into_iter().flatten().filter_map(Value::as_str).map(str::to_owned).collect())
    }

    /// The codes of the steps that can be settled now, in order.
    async fn free(&self) -> Result<Vec<String>> {
        let all = self
            .value(
                "[...document.querySelectorAll('.confirm[aria-disabled=false][aria-pressed=false]')]
                   .map((e) => e.dataset.test.slice(8))",
            )
            .await?;
        Ok(all.as_array().into_iter().flatten().filter_map(Value::as_str).map(str::to_owned).collect())
    }
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn marks_stay_and_hold_points_come_first() -> Result<()> {
    let page = Page::served().await?;
    page.browser.look(390, 844, 1.0, "light").await?;
    page.at_work().await?;
    page.click("have-shutoff").await?;
    page.click("buy-elbow").await?;
    page.click("show-steps").await?;
    // Nothing may be opened, emptied or switched on before the hold points.
    for held in ["drain", "cut_pipes", "old_out", "fill", "power_on"] {
        page.click(&format!("confirm-{held}")).await?;
        // The reader is taken to what must come first.
        page.until("the hold point", "document.activeElement.matches('.step.hold')").await?;
        page.value("document.activeElement.blur()").await?;
        let waits = page.value(&format!("document.getElementById('waits-{held}').textContent")).await?;
        ensure!(waits.as_str().is_some_and(|w| w.starts_with("First confirm step")), "{held}: {waits}");
    }
    ensure!(page.pressed("confirm").await?.is_empty(), "ticked out of order");
    page.click("confirm-power_off").await?;
    page.click("confirm-water_off").await?;
    page.click("confirm-drain").await?;
    page.until_kept("step.drain").await?;
    ensure!(page.pressed("confirm").await?.len() == 3);
    // A hold point taken back takes back what was done on its strength.
    page.click("confirm-water_off").await?;
    page.until("them to be open", "document.querySelectorAll('.confirm[aria-pressed=true]').length === 1")
        .await?;
    ensure!(page.pressed("confirm").await? == ["confirm-power_off"]);
    // All of it in the order in which it can be done: every step comes to its turn.
    let all = page.value("document.querySelectorAll('.confirm').length").await?.as_u64().context("steps")?;
    for _ in 0..all {
        let Some(next) = page.free().await?.into_iter().next() else { break };
        page.click(&format!("confirm-{next}")).await?;
        page.until(
            "it to be ticked",
            &format!("document.querySelector('[data-test=confirm-{next}][aria-pressed=true]')"),
        )
        .await?;
    }
    ensure!(page.pressed("confirm").await?.len() as u64 == all, "some step never comes to its turn");
    page.reload().await?;
    page.until("the plan", "document.querySelector('[data-test=work-steps]:not([hidden])')").await?;
    ensure!(page.pressed("confirm").await?.len() as u64 == all, "ticks are gone");
    page.click("show-load").await?;
    ensure!(page.pressed("have").await? == ["have-shutoff"] && page.pressed("buy").await? == ["buy-elbow"]);
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_work_is_within_reach_on_a_phone() -> Result<()> {
    let page = Page::served().await?;
    let mut faults = Vec::new();
    for scheme in ["light", "dark"] {
        page.browser.look(390, 844, 1.0, scheme).await?;
        page.at_work().await?;
        for shown in ["show-load", "show-steps"] {
            page.click(shown).await?;
            faults.extend(axe(&page).await?.into_iter().map(|fault| format!("{scheme} {shown}: {fault}")));
            let wide = page.value("document.documentElement.scrollWidth - innerWidth").await?;
            ensure!(wide.as_i64().is_some_and(|w| w <= 0), "{shown} is {wide} wider than the screen");
            let small = page
                .value(
                    "[...document.querySelectorAll('.work-view:not([hidden]) button, .work-view:not([hidden]) label')]
                       .filter((e) => { const box = e.getBoundingClientRect(); return box.height < 48 || box.width < 48; })
                       .map((e) => e.dataset.test ?? e.textContent)",
                )
                .await?;
            ensure!(small.as_array().is_some_and(Vec::is_empty), "too small for wet hands: {small}");
        }
    }
    ensure!(faults.is_empty(), "{} faults\n{}", faults.len(), faults.join("\n"));
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_list_of_parts_is_a_table_with_its_marks() -> Result<()> {
    let page = Page::served().await?;
    // What is offered for download is kept, for this test to look at.
    page.before_each_page(
        "const make = URL.createObjectURL;
         URL.createObjectURL = (blob) => { blob.text().then((text) => { window.offered = text; }); return make(blob); };",
    )
    .await?;
    page.at_work().await?;
    page.click("have-heater").await?;
    page.until_kept("part.heater").await?;
    page.click("parts-csv").await?;
    page.until("the table", "window.offered").await?;
    let table = page.value("window.offered").await?;
    let mut table = csv::Reader::from_reader(table.as_str().context("no table")?.as_bytes());
    let titles = table.headers()?.clone();
    let column =
        |name: &str| titles.iter().position(|t| t == name).with_context(|| format!("{name} in {titles:?}"));
    let (code, state, bring) = (column("Code")?, column("Have or buy")?, column("Bring")?);
    let rows: Vec<csv::StringRecord> = table.records().collect::<Result<_, _>>()?;
    for row in &rows {
        ensure!(row[bring].parse::<f64>()? > 0.0, "{row:?}");
        ensure!(row[state].is_empty() == (&row[code] != "heater"), "{row:?}");
    }
    let listed = page.value("document.querySelectorAll('.load').length").await?;
    ensure!(listed == rows.len(), "{listed} on the page, {} in the table", rows.len());
    page.close().await
}
