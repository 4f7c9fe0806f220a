//! Pictures of the page, for people who work on its looks: phone, tablet and desk, light and dark.
//!
//! The steps between two pictures are a list in JSON; each step is one of
//! `{"open": "#anything"}`, `{"click": SELECTOR}`, `{"type": [SELECTOR, TEXT]}`, `{"choose": [SELECTOR, VALUE]}`,
//! `{"wait": SELECTOR}`, `{"gone": SELECTOR}`, `{"scroll": SELECTOR}`, `{"pause": MILLISECONDS}`,
//! `{"script": JAVASCRIPT}`, `{"shot": NAME}` and `{"full": NAME}` (the page in its whole length).
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use anyhow::{Context, Result, bail};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use clap::Args;
use fantoccini::{Client, Locator};
use serde::Deserialize;
use serde_json::{Value, json};

use crate::browser::{Browser, Driver};
use crate::site::Site;
use crate::{dist, page, root};

/// A step: what to do before, between and at the pictures.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Step {
    Open(String),
    Click(String),
    Type(String, String),
    Choose(String, String),
    Wait(String),
    Gone(String),
    Scroll(String),
    Pause(u64),
    Script(String),
    Shot(String),
    Full(String),
}

/// What to take pictures of.
#[derive(Args)]
pub struct Options {
    /// Pictures of a page that is already served somewhere, instead of dist/.
    #[arg(long)]
    page_url: Option<String>,
    /// Build first; otherwise dist/ is taken as it is.
    #[arg(long, conflicts_with = "page_url")]
    build: bool,
    /// A JSON file with the steps; without it, one picture of the first screen.
    #[arg(long)]
    steps: Option<PathBuf>,
    /// Sizes, as names (phone, tablet, desk) or WIDTHxHEIGHT.
    #[arg(long, value_delimiter = ',', default_value = "phone,tablet,desk")]
    sizes: Vec<String>,
    /// Colour schemes.
    #[arg(long, value_delimiter = ',', default_value = "light,dark")]
    schemes: Vec<String>,
    /// Where the pictures go.
    #[arg(long)]
    out: Option<PathBuf>,
    /// How long to wait for an element, in seconds.
    #[arg(long, default_value_t = 10)]
    patience: u64,
}

/// Takes the pictures.
pub fn take(options: &Options) -> Result<()> {
    if options.build {
        page::build(false)?;
    }
    let steps = match &options.steps {
        Some(file) => {
            let text =
                fs::read_to_string(file).with_context(|| format!("could not read {}", file.display()))?;
            serde_json::from_str(&text).with_context(|| format!("{} is no list of steps", file.display()))?
        }
        None => vec![Step::Wait("main".to_owned()), Step::Full("page".to_owned())],
    };
    let url = match &options.page_url {
        Some(url) => url.clone(),
        None => {
            let site = Site::open(dist(), "/", 0)?;
            site.serve_aside(|_| ());
            site.address()
        }
    };
    let out = options.out.clone().unwrap_or_else(|| root().join("target/shots"));
    fs::create_dir_all(&out)?;
    let driver = Driver::start()?;
    tokio::runtime::Runtime::new()?.block_on(async {
        for size in &options.sizes {
            for scheme in &options.schemes {
                let browser = driver.browser(&[]).await?;
                let done = session(&browser, options, &steps, &url, size, scheme, &out).await;
                for (level, text) in browser.console().await? {
                    println!("console ({size}, {scheme}) {level}: {text}");
                }
                browser.close().await?;
                done.with_context(|| format!("at size {size}, {scheme}"))?;
            }
        }
        Ok(())
    })
}

async fn session(
    browser: &Browser,
    options: &Options,
    steps: &[Step],
    url: &str,
    size: &str,
    scheme: &str,
    out: &Path,
) -> Result<()> {
    let (width, height) = pixels(size)?;
    // Phones and tablets have dense screens.
    let scale = if width < 1400 { 2.0 } else { 1.0 };
    browser.look(width, height, scale, scheme).await?;
    let patience = Duration::from_secs(options.patience);
    browser.client.goto(url).await?;
    for step in steps {
        if let Some((name, whole)) =
            act(browser, step, url, patience).await.with_context(|| format!("{step:?}"))?
        {
            let png = picture(browser, whole).await?;
            let file = out.join(format!("{name}-{size}-{scheme}.png"));
            fs::write(&file, png)?;
            println!("{}", file.display());
        }
    }
    Ok(())
}

/// Does one step; gives the name of the picture that it asks for, and whether of the whole length.
async fn act<'a>(
    browser: &Browser,
    step: &'a Step,
    url: &str,
    patience: Duration,
) -> Result<Option<(&'a str, bool)>> {
    let client = &browser.client;
    match step {
        Step::Open(address) => client.goto(&format!("{url}{address}")).await?,
        Step::Click(selector) => find(client, selector, patience).await?.click().await?,
        Step::Type(selector, text) => {
            let field = find(client, selector, patience).await?;
            field.clear().await?;
            field.send_keys(text).await?;
        }
        Step::Choose(selector, value) => {
            find(client, selector, patience).await?.select_by_value(value).await?
        }
        Step::Wait(selector) => drop(find(client, selector, patience).await?),
        Step::Gone(selector) => {
            let script = format!("return document.querySelector({}) === null", json!(selector));
            browser.until("it to go", &script, patience).await?;
        }
        Step::Scroll(selector) => {
            let script =
                format!("document.querySelector({}).scrollIntoView({{ block: 'start' }})", json!(selector));
            browser.script(&script).await?;
        }
        Step::Pause(time) => tokio::time::sleep(Duration::from_millis(*time)).await,
        Step::Script(script) => drop(browser.script(script).await?),
        Step::Shot(name) => return Ok(Some((name, false))),
        Step::Full(name) => return Ok(Some((name, true))),
    }
    Ok(None)
}

async fn find(client: &Client, selector: &str, patience: Duration) -> Result<fantoccini::elements::Element> {
    Ok(client.wait().at_most(patience).for_element(Locator::Css(selector)).await?)
}

async fn picture(browser: &Browser, whole: bool) -> Result<Vec<u8>> {
    let params = json!({ "format": "png", "captureBeyondViewport": whole });
    let params = if whole { with_clip(browser, params).await? } else { params };
    let answer = browser.devtools("Page.captureScreenshot", params).await?;
    let data = answer["data"].as_str().context("a picture without data")?;
    Ok(STANDARD.decode(data)?)
}

/// The whole length of the page as the part to picture.
async fn with_clip(browser: &Browser, mut params: Value) -> Result<Value> {
    let metrics = browser.devtools("Page.getLayoutMetrics", json!({})).await?;
    let size = &metrics["cssContentSize"];
    params["clip"] = json!({ "x": 0, "y": 0, "width": size["width"], "height": size["height"], "scale": 1 });
    Ok(params)
}

/// A size by name or as WIDTHxHEIGHT.
fn pixels(size: &str) -> Result<(u32, u32)> {
    match size {
        "phone" => Ok((390, 844)),
        "tablet" => Ok((1024, 768)),
        "desk" => Ok((1440, 900)),
        other => match other.split_once('x').map(|(w, h)| (w.parse(), h.parse())) {
            Some((Ok(width), Ok(height))) => Ok((width, height)),
            _ => bail!("`{other}` is no size: phone, tablet, desk or like 800x600"),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_read_as_documented() {
        let text =
            r##"[{"open": "#x"}, {"click": "a"}, {"type": ["#n", "4"]}, {"pause": 30}, {"full": "all"}]"##;
        let steps: Vec<Step> = serde_json::from_str(text).expect("steps");
        assert!(matches!(&steps[2], Step::Type(selector, text) if selector == "#n" && text == "4"));
        assert!(serde_json::from_str::<Vec<Step>>(r#"[{"jump": "a"}]"#).is_err());
    }

    #[test]
    fn sizes_have_names_or_numbers() {
        assert_eq!(pixels("phone").expect("known"), (390, 844));
        assert_eq!(pixels("800x600").expect("given"), (800, 600));
        assert!(pixels("huge").is_err());
    }
}
