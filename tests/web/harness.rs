//! A page in a browser of its own, served by a server of its own.
use std::path::PathBuf;
use std::sync::{Arc, Mutex};
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use crate::browser::{Browser, Driver};
use crate::site::Site;

/// Where the page lives on its test server: any static host's sub-folder.
const FOLDER: &str = "/some/folder/";

/// How long anything may take on a busy machine before it counts as broken.
pub const PATIENCE: Duration = Duration::from_secs(20);

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
        let dist = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("dist");
        ensure!(dist.join("index.html").is_file(), "there is no dist/: run `cargo xtask build` first");
        let site = Site::open(dist, FOLDER, 0)?;
        let asked = Arc::new(Mutex::new(Vec::new()));
        let log = asked.clone();
        site.serve_aside(move |path| {
            if let Ok(mut log) = log.lock() {
                log.push(path.to_owned());
            }
        });
        let driver = Driver::start()?;
        let browser = driver.browser().await?;
        Ok(Self { browser, address: site.address(), asked, _driver: driver })
    }

    /// A fresh browser with the page open and drawn.
    pub async fn open() -> Result<Self> {
        let page = Self::served().await?;
        page.load().await?;
        Ok(page)
    }

    /// Opens the page, or opens it anew, and waits until it is drawn.
    pub async fn load(&self) -> Result<()> {
        self.browser.client.goto(&self.address).await?;
        self.until("the page to be drawn", "document.querySelector('main') !== null").await
    }

    /// Waits until a JavaScript expression is true.
    pub async fn until(&self, what: &str, condition: &str) -> Result<()> {
        self.browser.until(what, &format!("return Boolean({condition})"), PATIENCE).await
    }

    /// The value of a JavaScript expression.
    pub async fn value(&self, expression: &str) -> Result<Value> {
        self.browser.script(&format!("return {expression}")).await
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
    /// violations of the content security policy show.
    pub async fn close(self) -> Result<()> {
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
