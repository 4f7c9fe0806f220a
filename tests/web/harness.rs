//! A page in a browser of its own, served by a server of its own.
//!
//! Elements are found by their `data-test`, which says what they are for and stays when looks change.
use std::path::PathBuf;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};
use fantoccini::Locator;
use fantoccini::elements::Element;
use fantoccini::error::{CmdError, ErrorStatus};
use fantoccini::key::Key;
use serde_json::{Value, json};

use crate::browser::{Browser, Driver};
use crate::site::Site;

/// Where the page lives on its test server: any static host's sub-folder.
pub const FOLDER: &str = "/some/folder/";

/// All that is kept of jobs.
pub const KEPT: &str =
    "Object.entries(localStorage).filter(([k]) => k.startsWith('tankful.job.2.')).map(([, v]) => v).join()";

/// How long anything may take on a busy machine before it counts as broken.
const PATIENCE: Duration = Duration::from_secs(20);

/// The release page.
pub fn dist() -> Result<PathBuf> {
    let dist = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("dist");
    ensure!(dist.join("index.html").is_file(), "there is no dist/: run `cargo xtask build` first");
    Ok(dist)
}

/// A page in a browser.
pub struct Page {
    /// The browser's window.
    pub browser: Browser,
    /// The page's address.
    pub address: String,
    asked: Arc<Mutex<Vec<String>>>,
    _driver: Driver,
}

impl Page {
    /// A fresh browser, the page served but not yet opened.
    pub async fn served() -> Result<Self> {
        let site = Site::open(dist()?, FOLDER, 0)?;
        let asked = Arc::new(Mutex::new(Vec::new()));
        let log = asked.clone();
        site.serve_aside(move |path| {
            if let Ok(mut log) = log.lock() {
                log.push(path.to_owned());
            }
        });
        Ok(Self { asked, ..Self::at(&site.address(), &[]).await? })
    }

    /// A browser with these flags, for a page that is served elsewhere; its requests are not counted.
    pub async fn at(address: &str, flags: &[String]) -> Result<Self> {
        let driver = Driver::start()?;
        let browser = driver.browser(flags).await?;
        Ok(Self { browser, address: address.to_owned(), asked: Arc::default(), _driver: driver })
    }

    /// A fresh browser with the page open and drawn.
    pub async fn open() -> Result<Self> {
        let page = Self::served().await?;
        page.go("").await?;
        Ok(page)
    }

    /// Opens the page at an address below its own, and waits until it is drawn.
    pub async fn go(&self, below: &str) -> Result<()> {
        self.browser.client.goto(&format!("{}{below}", self.address)).await?;
        self.until("the page to be drawn", "document.querySelector('main') !== null").await
    }

    /// Loads the page anew.
    pub async fn reload(&self) -> Result<()> {
        self.browser.client.refresh().await?;
        self.until("the page to be drawn", "document.querySelector('main') !== null").await
    }

    /// Waits until a JavaScript expression is true.
    pub async fn until(&self, what: &str, condition: &str) -> Result<()> {
        self.until_brings(what, &format!("Boolean({condition})")).await
    }

    /// Waits until an advice that fits the answers is shown.
    pub async fn until_advised(&self) -> Result<()> {
        let done = "document.querySelector('[data-test=verdict][aria-busy=false] .key-figures')";
        self.until("the verdict", done).await
    }

    /// Waits until what a JavaScript promise brings is true.
    pub async fn until_brings(&self, what: &str, promise: &str) -> Result<()> {
        let waited = self.browser.until(what, &format!("return {promise}"), PATIENCE).await;
        match waited {
            Ok(()) => Ok(()),
            Err(late) => Err(late.context(self.stands().await)),
        }
    }

    /// What the page shows, for the report of a test that waited in vain.
    async fn stands(&self) -> String {
        let shown = "return `${location.search} ${document.querySelector('main')?.innerText.slice(0, 600)}`";
        match self.browser.script(shown).await {
            Ok(shown) => format!("the page stood at {shown}"),
            Err(silent) => format!("the page does not say where it stood: {silent}"),
        }
    }

    /// Waits until the page says that it works with no signal.
    pub async fn until_ready(&self) -> Result<()> {
        self.until_standing("offline-ready").await
    }

    /// Waits until the page says this of its work with no signal.
    pub async fn until_standing(&self, standing: &str) -> Result<()> {
        self.until(standing, &format!("document.querySelector('[data-standing={standing}]')")).await
    }

    /// Waits until a word stands in a kept job.
    pub async fn until_kept(&self, word: &str) -> Result<()> {
        self.until("it to be kept", &format!("({KEPT}).includes('{word}')")).await
    }

    /// The value of a JavaScript expression, or of the promise that it is.
    pub async fn value(&self, expression: &str) -> Result<Value> {
        self.browser.script(&format!("return {expression}")).await
    }

    /// Runs a script before anything else in every page from now on.
    pub async fn before_each_page(&self, script: &str) -> Result<()> {
        self.browser.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script })).await?;
        Ok(())
    }

    /// The element for a purpose, once it is there.
    pub async fn find(&self, test: &str) -> Result<Element> {
        let selector = format!("[data-test='{test}']");
        let wait = self.browser.client.wait().at_most(PATIENCE);
        match wait.for_element(Locator::Css(&selector)).await {
            Ok(element) => Ok(element),
            Err(missing) => {
                Err(missing).with_context(|| format!("nothing for {test}")).context(self.stands().await)
            }
        }
    }

    /// Clicks the element for a purpose, in the middle of the window, once it stands still there, and again where the
    /// click did not reach it: the page may move it in the very moment, when an outcome comes or when it brings its
    /// reader to the question it opened at, and on a busy machine that may be late.
    pub async fn click(&self, test: &str) -> Result<()> {
        let start = Instant::now();
        let element = self.find(test).await?;
        let still = format!(
            "(async () => {{
                const find = () => document.querySelector('[data-test={test}]');
                const top = () => find()?.getBoundingClientRect().top;
                find()?.scrollIntoView({{ block: 'center', behavior: 'instant' }});
                const before = top();
                for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
                if (before !== top()) return false;
                window.reached = false;
                const reach = (event) => {{ window.reached = event.composedPath().includes(find()); }};
                window.addEventListener('click', reach, {{ capture: true, once: true }});
                return true;
            }})()"
        );
        loop {
            self.until_brings(&format!("{test} to stand still"), &still).await?;
            match element.click().await {
                // A page that the click led to knows nothing of it.
                Ok(()) if self.value("window.reached !== false").await? == true => return Ok(()),
                Err(CmdError::Standard(fault)) if fault.error != ErrorStatus::ElementClickIntercepted => {
                    return Err(CmdError::Standard(fault).into());
                }
                Ok(()) | Err(CmdError::Standard(_)) => {}
                Err(other) => return Err(other.into()),
            }
            ensure!(start.elapsed() < PATIENCE, "no click reaches {test}");
        }
    }

    /// Types into a question's field and leaves it.
    pub async fn answer(&self, question: &str, text: &str) -> Result<()> {
        let field = self.find(&format!("q-{question}-input")).await?;
        // As a person does it: mark everything, then type over it.
        let mark_all = format!("{}a{}", char::from(Key::Control), char::from(Key::Null));
        field.send_keys(&format!("{mark_all}{text}")).await?;
        self.value("document.activeElement.blur()").await?;
        Ok(())
    }

    /// What stands in a question's field.
    pub async fn answered(&self, question: &str) -> Result<String> {
        let field = self.find(&format!("q-{question}-input")).await?;
        Ok(field.prop("value").await?.unwrap_or_default())
    }

    /// The paths that the server was asked for so far.
    pub fn asked(&self) -> Vec<String> {
        self.asked.lock().map(|asked| asked.clone()).unwrap_or_default()
    }

    /// The addresses that the page asked for since the last call, answered or not.
    pub async fn requests(&self) -> Result<Vec<String>> {
        let mut requests = Vec::new();
        for entry in self.browser.log("performance").await? {
            let event: Value =
                serde_json::from_str(entry["message"].as_str().context("an entry without a message")?)?;
            if event["message"]["method"] == "Network.requestWillBeSent" {
                let url = event["message"]["params"]["request"]["url"].as_str();
                requests.push(url.context("a request without an address")?.to_owned());
            }
        }
        Ok(requests)
    }

    /// Ends the test: the console must have stayed empty of warnings and errors, which is also where
    /// violations of the content security policy show; and all keys must have had words.
    pub async fn close(self) -> Result<()> {
        let unsaid = self.value("document.body?.innerText.match(/⟨.*?⟩/g) ?? []").await?;
        ensure!(unsaid.as_array().is_none_or(Vec::is_empty), "there are no words for {unsaid}");
        let complaints: Vec<_> = self
            .browser
            .console()
            .await?
            .into_iter()
            .filter(|(level, _)| level != "INFO" && level != "DEBUG")
            .collect();
        self.browser.close().await?;
        ensure!(complaints.is_empty(), "the console is not clean: {complaints:#?}");
        Ok(())
    }
}
