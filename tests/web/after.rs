//! After the work: what was read stays and is judged, the calendar file is one, the meter gets its verdict, and the
//! report prints page by page.
use anyhow::{Context, Result, ensure};
use fantoccini::wd::{PrintConfiguration, PrintSize};
use serde_json::{Value, json};

use crate::harness::Page;
use crate::reach::axe;

impl Page {
    /// Types into a field by its purpose, over what stands there, and leaves it.
    async fn note(&self, test: &str, text: &str) -> Result<()> {
        let field = self.find(test).await?;
        field.clear().await?;
        field.send_keys(text).await?;
        self.value("document.activeElement.blur()").await?;
        Ok(())
    }

    /// The text of the element for a purpose.
    async fn says(&self, test: &str) -> Result<String> {
        let text = self.value(&format!("document.querySelector('[data-test={test}]').innerText")).await?;
        Ok(text.as_str().unwrap_or_default().to_owned())
    }

    /// Whether the page is no wider than its window.
    async fn fits(&self) -> Result<bool> {
        let wide = "document.documentElement.scrollWidth <= document.documentElement.clientWidth";
        Ok(self.value(wide).await? == true)
    }
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn readings_stay_and_are_judged() -> Result<()> {
    let page = Page::served().await?;
    page.go("?p=after").await?;
    page.note("start-air-in", "60").await?;
    page.until("it to be as expected", "document.querySelector('[data-test=start-air-in-flag] .within')")
        .await?;
    page.note("start-air-out", "80").await?;
    page.until(
        "causes in order",
        "document.querySelectorAll('[data-test=start-air-out-flag] ol li').length >= 3",
    )
    .await?;
    // No gauge shows that: refused with the range, and nothing of it is noted.
    page.note("start-pressure", "999").await?;
    let refusal = page.says("start-pressure-refusal").await?;
    ensure!(refusal.contains("999") && refusal.contains("200"), "{refusal}");
    ensure!(page.says("start-pressure-flag").await?.is_empty(), "a part of a refused reading counts");
    page.until_kept("start.air_out").await?;
    for (width, height) in [(390, 844), (820, 1180), (320, 640)] {
        page.browser.look(width, height, 1.0, "light").await?;
        ensure!(page.fits().await?, "it scrolls sideways at {width}");
    }
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.browser.look(390, 844, 1.0, "dark").await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core, dark: {:?}", axe(&page).await?);
    page.reload().await?;
    page.find("start-air-out").await?;
    page.until(
        "the reading after a reload",
        "document.querySelector('[data-test=start-air-out]').value === '80' \
         && document.querySelector('[data-test=start-air-out-flag] .off')",
    )
    .await?;
    // Emptied, it is no reading any more.
    page.note("start-air-out", " ").await?;
    page.until("the flag to go", "!document.querySelector('[data-test=start-air-out-flag] .off')").await?;
    page.close().await
}

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_dates_are_a_calendar_and_the_meter_has_its_verdict() -> Result<()> {
    let page = Page::served().await?;
    let keep = "const make = URL.createObjectURL; URL.createObjectURL = (blob) => { \
                blob.text().then((text) => { window.saved = [blob.type, text]; }); return make.call(URL, blob); };";
    page.before_each_page(keep).await?;
    page.go("?p=after").await?;
    page.click("tab-household").await?;
    page.find("months").await?;
    ensure!(page.says("household").await?.contains("kWh"), "no energy");
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.click("calendar").await?;
    page.until("the file", "window.saved").await?;
    let saved = page.value("window.saved").await?;
    ensure!(saved[0] == "text/calendar", "{}", saved[0]);
    let text = saved[1].as_str().context("a text")?;
    let calendars = ical::IcalParser::new(text.as_bytes()).collect::<Result<Vec<_>, _>>()?;
    ensure!(calendars.len() == 1 && calendars[0].events.len() >= 6, "{text}");
    page.click("tab-meter").await?;
    page.find("meter-first").await?;
    let day = |test: &str, text: &str| {
        format!(
            "(() => {{ const f = document.querySelector('[data-test={test}]'); f.value = '{text}'; \
             f.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()"
        )
    };
    page.value(&day("meter-from", "2026-01-01")).await?;
    page.value(&day("meter-to", "2027-01-01")).await?;
    page.note("meter-first", "10").await?;
    page.note("meter-last", "9000").await?;
    page.until("too much", "document.querySelector('[data-against=meter-more]')").await?;
    // What the sentence says was expected, read on the meter, is as expected.
    let said = page.says("meter-says").await?;
    let expected =
        said.split("days, ").nth(1).and_then(|rest| rest.split('\u{a0}').next()).context("a figure")?;
    let expected: f64 = expected.replace(',', "").parse()?;
    page.note("meter-last", &format!("{}", 10.0 + expected)).await?;
    page.until("as expected", "document.querySelector('[data-against=meter-as-expected]')").await?;
    ensure!(axe(&page).await?.is_empty(), "axe-core: {:?}", axe(&page).await?);
    page.reload().await?;
    page.click("tab-meter").await?;
    page.until("it after a reload", "document.querySelector('[data-against=meter-as-expected]')").await?;
    page.close().await
}

/// Three invented jobs: what they answer, and what is noted at the start.
fn jobs() -> [(&'static str, Value); 3] {
    let at = |what: &str, value: f64, unit: &str| json!({ "what": what, "is": { "value": value, "unit": unit }, "at": 1.764e12, "who": "Ann" });
    let job = |id: &str, name: &str, answers: Value, done: Value| {
        json!({ "tankful_job": 3, "id": id, "revision": 1, "created": 1e12, "changed": 1e12, "name": name,
            "place": "12 Invented Road", "answers": answers, "done": done })
    };
    [
        (
            "0000000000a1",
            job(
                "0000000000a1",
                "Invented basement",
                json!({ "adults": 2, "children": 2, "heater_kind": "electric", "place": "us-ma-boston", "room_kind": "basement",
                    "drain_kind": "none", "hardness": { "value": 14, "unit": "gr/gal" } }),
                json!([{ "what": "heater", "is": "heat_pump_50", "at": 1e12 },
                    { "what": "installed", "is": "2026-11-25", "at": 1e12 }, at("start.air_in", 58.0, "degF"),
                    at("start.air_out", 70.0, "degF"), at("start.volts", 240.0, "V"), at("start.amps_pump", 1.9, "A"),
                    at("start.pressure", 60.0, "psi"), at("start.tap", 118.0, "degF")]),
            ),
        ),
        (
            "0000000000a2",
            job(
                "0000000000a2",
                "Invented gas house",
                json!({ "adults": 1, "heater_kind": "gas", "place": "us-fl-miami", "room_kind": "utility",
                    "mixing_valve": "yes", "setpoint": { "value": 140, "unit": "degF" } }),
                json!([{ "what": "heater", "is": "gas_tank", "at": 1e12 },
                    { "what": "installed", "is": "2026-08-31", "at": 1e12 }, at("start.pressure", 55.0, "psi")]),
            ),
        ),
        (
            "0000000000a3",
            job(
                "0000000000a3",
                "Invented closet",
                json!({ "adults": 2, "heater_kind": "gas", "place": "us-tx-houston", "room_kind": "closet", "supply": "120",
                    "recirculation": "always" }),
                json!([{ "what": "heater", "is": "plug_in_50", "at": 1e12 },
                    { "what": "installed", "is": "2026-03-10", "at": 1e12 }]),
            ),
        ),
    ]
}

/// A page's text without gaps.
fn plain(text: &str) -> String {
    // Fonts join letters: the joined ones are written as one sign.
    let apart = [
        ("\u{fb00}", "ff"),
        ("\u{fb01}", "fi"),
        ("\u{fb02}", "fl"),
        ("\u{fb03}", "ffi"),
        ("\u{fb04}", "ffl"),
    ];
    let text = apart.iter().fold(text.to_owned(), |text, (joined, letters)| text.replace(joined, letters));
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

/// What stands on the report, without gaps: each row of a table or entry of a list as its cells. Words that only screen
/// readers get are left out.
const ROWS: &str = "(() => { const shown = (at) => { \
    let text = ''; \
    const texts = document.createTreeWalker(at, NodeFilter.SHOW_TEXT); \
    while (texts.nextNode()) \
        if (texts.currentNode.parentElement.getBoundingClientRect().width > 2) text += texts.currentNode.data; \
    return text; }; \
    return [...document.querySelectorAll('.report tr, .report .checked > li, .report .topic li')]\
    .filter((row) => row.checkVisibility() && !row.closest('details'))\
    .map((row) => (row.matches('tr') ? [...row.cells] : [...row.childNodes].filter((n) => n.nodeName === '#text' || n.nodeName === 'STRONG'))\
        .map((cell) => (cell.nodeType === 1 ? shown(cell) : cell.textContent).replace(/\\s/g, '')).filter((t) => t))\
    .filter((cells) => cells.length); })()";

#[tokio::test]
#[ignore = "needs the built page and Chromium: cargo xtask test runs it"]
async fn the_report_prints_page_by_page() -> Result<()> {
    let page = Page::served().await?;
    let out = std::path::PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("target/printed");
    std::fs::create_dir_all(&out)?;
    page.go("").await?;
    for (id, job) in jobs() {
        page.value(&format!("localStorage.setItem('tankful.job.2.{id}', {})", json!(job.to_string())))
            .await?;
        page.go(&format!("?p=report&j={id}")).await?;
        page.until("the report", "document.querySelector('[data-test=sheet-file]')").await?;
        page.until_advised().await?;
        for (name, size) in [("letter", PrintSize::US_LETTER), ("a4", PrintSize::A4)] {
            let how = PrintConfiguration::builder().size(size).background(true).build();
            let how = how.map_err(|e| anyhow::anyhow!("{e:?}"))?;
            let pdf = page.browser.client.print(how).await?;
            std::fs::write(out.join(format!("{id}-{name}.pdf")), &pdf)?;
            let rows = page.value(ROWS).await?;
            check(&pdf, &rows).with_context(|| format!("{id} on {name}"))?;
        }
    }
    page.close().await
}

/// Holds a printed report to its promises: the household's page is exactly one, pages are numbered, no row is cut.
fn check(pdf: &[u8], rows: &Value) -> Result<()> {
    let pages: Vec<String> =
        pdf_extract::extract_text_from_mem_by_pages(pdf)?.iter().map(|page| plain(page)).collect();
    let count = pages.len();
    println!("{count} pages");
    ensure!((3..=20).contains(&count), "{count} pages");
    let first = pages.first().context("no page")?;
    let (head, foot, rest) = ("Yournewwaterheater", "Localcodeandlicensedtradesdecide.", "Forthefile");
    ensure!(first.contains(head) && first.contains(foot) && !first.contains(rest), "page 1: {first}");
    ensure!(
        pages[1].contains(rest) && pages.iter().skip(1).all(|p| !p.contains(head)),
        "page 2: {}",
        pages[1]
    );
    for (at, text) in pages.iter().enumerate() {
        let number = format!("{}/{count}", at + 1);
        ensure!(text.contains(&number), "page {} has no number {number}: {text}", at + 1);
    }
    let rows = rows.as_array().context("rows")?;
    ensure!(rows.len() > 40, "only {} rows", rows.len());
    for row in rows {
        let cells: Vec<&str> = row.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        let whole = pages.iter().any(|page| cells.iter().all(|cell| page.contains(cell)));
        ensure!(whole, "this row is on no page as a whole: {cells:?}");
    }
    Ok(())
}
