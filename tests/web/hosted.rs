//! A static host whose files can be swapped for those of another release, and which can go away.
use std::collections::BTreeMap;
use std::fs;
use std::net::TcpStream;
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use anyhow::{Context, Result, ensure};

use crate::harness::{FOLDER, dist};
use crate::precache;
use crate::site::Site;

/// A folder of its own that goes when dropped.
pub struct Folder(pub PathBuf);

impl Folder {
    /// An empty folder.
    pub fn new() -> Result<Self> {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name = format!("tankful-web-{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
        let path = std::env::temp_dir().join(name);
        fs::create_dir_all(&path)?;
        Ok(Self(path))
    }

    /// The browser's flag to have its profile here, so that another start finds what the first one kept.
    pub fn as_profile(&self) -> [String; 1] {
        [format!("--user-data-dir={}", self.0.display())]
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// The files of a release.
pub type Release = BTreeMap<String, Vec<u8>>;

/// The built page.
pub fn first_release() -> Result<Release> {
    let mut files = Release::new();
    for entry in fs::read_dir(dist()?)? {
        let path = entry?.path();
        let name = path.file_name().context("a file without a name")?.to_string_lossy().into_owned();
        files.insert(name, fs::read(&path)?);
    }
    Ok(files)
}

/// The release after it: its start script has another content, and so another name, and says which
/// release it is.
pub fn second_release() -> Result<Release> {
    let mut files = first_release()?;
    let old = boot(&files)?.to_owned();
    let mut script = files.remove(&old).context("no start script")?;
    script.extend(b"document.documentElement.dataset.release = '2';\n");
    let new = "boot-2222222222.js";
    files.insert(new.to_owned(), script);
    let html = files.get_mut("index.html").context("no index.html")?;
    *html = String::from_utf8(html.clone())?.replace(&old, new).into_bytes();
    files.insert(precache::SCRIPT.to_owned(), include_bytes!("../../public/service-worker.js").to_vec());
    precache::fill_in(&mut files)?;
    Ok(files)
}

/// The name of a release's start script.
pub fn boot(files: &Release) -> Result<&str> {
    let name = files.keys().find(|name| name.starts_with("boot-"));
    Ok(name.context("a release without a start script")?)
}

/// A host that keeps to what a good one does with browsers' caches.
pub struct Host {
    /// Where it serves the page.
    pub address: String,
    folder: Folder,
    closed: Arc<AtomicBool>,
    asked: Arc<Mutex<Vec<String>>>,
}

impl Host {
    /// Serves a release.
    pub fn of(release: &Release) -> Result<Self> {
        Self::of_folders(FOLDER, &[""], release)
    }

    /// Serves copies of a release in these folders of the site below `top`.
    pub fn of_folders(top: &str, folders: &[&str], release: &Release) -> Result<Self> {
        let folder = Folder::new()?;
        let site = Site::open(folder.0.clone(), top, 0)?.with_long_lives();
        let (address, closed) = (site.address(), site.closed.clone());
        let asked = Arc::new(Mutex::new(Vec::new()));
        let log = asked.clone();
        site.serve_aside(move |path| {
            if let Ok(mut log) = log.lock() {
                log.push(path.to_owned());
            }
        });
        let host = Self { address, folder, closed, asked };
        for below in folders {
            host.put(below, release)?;
        }
        Ok(host)
    }

    /// Puts a release in place of what a folder held.
    pub fn put(&self, below: &str, release: &Release) -> Result<()> {
        let folder = self.folder.0.join(below);
        if folder.exists() {
            fs::remove_dir_all(&folder)?;
        }
        fs::create_dir_all(&folder)?;
        for (name, bytes) in release {
            fs::write(folder.join(name), bytes)?;
        }
        Ok(())
    }

    /// The paths it was asked for so far.
    pub fn asked(&self) -> Vec<String> {
        self.asked.lock().map(|asked| asked.clone()).unwrap_or_default()
    }

    /// Goes away: from here on nobody answers at its address.
    pub fn close(&self) -> Result<()> {
        self.closed.store(true, Ordering::Relaxed);
        let host = self.address.trim_start_matches("http://").split('/').next().unwrap_or_default();
        for _ in 0..100 {
            if TcpStream::connect(host).is_err() {
                return Ok(());
            }
            std::thread::sleep(Duration::from_millis(20));
        }
        ensure!(TcpStream::connect(host).is_err(), "the host is still there");
        Ok(())
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        let _ = self.close();
    }
}
