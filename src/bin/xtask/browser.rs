//! Headless Chromium over WebDriver: for the page's tests and its pictures.
use std::io::{BufRead, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};

/// A browser with nothing of its own: no network chatter, no sandbox (it may run as root in a container).
const FLAGS: [&str; 12] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--force-color-profile=srgb",
    "--hide-scrollbars",
    // Whatever asks for another host than this one fails, and shows in the log.
    "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
];

/// How often ChromeDriver is started before it counts as broken.
const STARTS: u32 = 4;

/// A running ChromeDriver; ends when dropped.
pub struct Driver {
    /// Its process.
    pub process: Child,
    address: String,
}

impl Driver {
    /// Starts ChromeDriver on a free port.
    pub fn start() -> Result<Self> {
        // Another one that starts at the same moment may take the port it found, and then it gives up.
        (1..STARTS).find_map(|_| Self::started().ok()).map_or_else(Self::started, Ok)
    }

    fn started() -> Result<Self> {
        let mut process = Command::new("chromedriver")
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("could not start chromedriver (Debian: apt-get install chromium chromium-driver)")?;
        let out = process.stdout.take().context("chromedriver without output")?;
        let mut lines = BufReader::new(out).lines();
        let port = lines.by_ref().map_while(Result::ok).find_map(|line| port_in(&line));
        let Some(port) = port else {
            let _ = process.kill();
            bail!("chromedriver ended without naming its port");
        };
        // It goes on talking; somebody has to listen, or it stops.
        std::thread::spawn(move || lines.for_each(drop));
        Ok(Self { process, address: format!("http://127.0.0.1:{port}") })
    }

    /// Opens a browser with a new empty profile, and these flags besides its usual ones; of two that
    /// contradict each other the later one holds.
    pub async fn browser(&self, flags: &[String]) -> Result<Browser> {
        Browser::open(&self.address, flags).await
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Asked to end, it takes its browsers along; killed, it would leave them behind.
        if self.shut_down().is_err() {
            let _ = self.process.kill();
        }
        let _ = self.process.wait();
    }
}

impl Driver {
    fn shut_down(&self) -> std::io::Result<()> {
        let host = self.address.trim_start_matches("http://");
        let mut stream = TcpStream::connect(host)?;
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        write!(stream, "GET /shutdown HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n")?;
        stream.read_exact(&mut [0])
    }
}

fn port_in(line: &str) -> Option<u16> {
    line.split_once("successfully on port ")?.1.trim_end_matches('.').parse().ok()
}

/// One browser window.
pub struct Browser {
    /// The WebDriver session.
    pub client: Client,
}

impl Browser {
    /// Opens a browser at a ChromeDriver that is running.
    pub async fn open(driver: &str, flags: &[String]) -> Result<Self> {
        let flags: Vec<&str> = FLAGS.into_iter().chain(flags.iter().map(String::as_str)).collect();
        let wanted = json!({
            "goog:chromeOptions": { "args": flags },
            "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
        });
        let Value::Object(wanted) = wanted else { bail!("capabilities are an object") };
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(wanted)
            .connect(driver)
            .await
            .context("could not open Chromium")?;
        Ok(Self { client })
    }

    /// Sends a command of Chromium's own protocol.
    pub async fn devtools(&self, command: &str, params: Value) -> Result<Value> {
        let body = json!({ "cmd": command, "params": params });
        Ok(self.client.issue_cmd(Vendor { path: "goog/cdp/execute", body }).await?)
    }

    /// Takes and empties one of the browser's logs ("browser", "performance").
    pub async fn log(&self, kind: &str) -> Result<Vec<Value>> {
        let body = json!({ "type": kind });
        match self.client.issue_cmd(Vendor { path: "se/log", body }).await? {
            Value::Array(entries) => Ok(entries),
            other => bail!("a log that is no list: {other}"),
        }
    }

    /// What the page said on its console since the last call, as (level, text).
    pub async fn console(&self) -> Result<Vec<(String, String)>> {
        let word = |entry: &Value, key: &str| entry[key].as_str().unwrap_or_default().to_owned();
        Ok(self
            .log("browser")
            .await?
            .iter()
            .map(|entry| (word(entry, "level"), word(entry, "message")))
            .collect())
    }

    /// Gives the page a size in CSS pixels and a colour scheme ("light", "dark").
    pub async fn look(&self, width: u32, height: u32, scale: f64, scheme: &str) -> Result<()> {
        let size =
            json!({ "width": width, "height": height, "deviceScaleFactor": scale, "mobile": width < 600 });
        self.devtools("Emulation.setDeviceMetricsOverride", size).await?;
        let media = json!({ "media": "", "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        self.devtools("Emulation.setEmulatedMedia", media).await?;
        Ok(())
    }

    /// Runs a script in the page and returns what it returns.
    pub async fn script(&self, script: &str) -> Result<Value> {
        Ok(self.client.execute(script, Vec::new()).await?)
    }

    /// Waits until a script's result is true.
    pub async fn until(&self, what: &str, script: &str, limit: Duration) -> Result<()> {
        let start = Instant::now();
        while self.script(script).await? != Value::Bool(true) {
            if start.elapsed() > limit {
                bail!("waited {} s for {what}", limit.as_secs());
            }
            tokio::time::sleep(Duration::from_millis(15)).await;
        }
        Ok(())
    }

    /// Closes the window and its profile.
    pub async fn close(self) -> Result<()> {
        Ok(self.client.close().await?)
    }
}

/// A command that ChromeDriver adds to the standard's.
#[derive(Debug)]
struct Vendor {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Vendor {
    fn endpoint(&self, base: &url::Url, session: Option<&str>) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
