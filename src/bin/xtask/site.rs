//! A file server for the finished page, on this machine only: a request a connection, a thread each, so that no
//! file ever waits for another.
use std::fs;
use std::io::{self, BufRead, BufReader, Read as _, Write as _};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use anyhow::{Context, Result};

/// How many ports to try.
const TRIES: u16 = 50;

/// The longest head of a request that is read, in bytes.
const LONGEST_HEAD: u64 = 64 * 1024;

/// How long a connection may stay silent.
const SILENCE: Duration = Duration::from_secs(30);

/// The status of a file that is there.
const FOUND: &str = "200 OK";

/// A page being served.
#[derive(Clone)]
pub struct Site {
    listener: Arc<TcpListener>,
    port: u16,
    shelf: Shelf,
    /// Once set, the next connection is turned away and ends the serving.
    pub closed: Arc<AtomicBool>,
}

/// What is served, and how.
#[derive(Clone)]
struct Shelf {
    dir: PathBuf,
    folder: String,
    long_lives: bool,
}

impl Site {
    /// Takes `port`, or the next free one; `folder` is where on the site the page lives ("/" or "/a/b/").
    /// Port 0 takes any.
    pub fn open(dir: PathBuf, folder: &str, port: u16) -> Result<Self> {
        let last = if port == 0 { 0 } else { port.saturating_add(TRIES) };
        let listener =
            (port..=last).find_map(|port| TcpListener::bind((Ipv4Addr::LOCALHOST, port)).ok()).with_context(
                || format!("no port from {port} to {last} is free on 127.0.0.1: give another with --port"),
            )?;
        let port = listener.local_addr()?.port();
        Ok(Self {
            listener: Arc::new(listener),
            port,
            shelf: Shelf { dir, folder: folder.to_owned(), long_lives: false },
            closed: Arc::default(),
        })
    }

    /// Lets browsers keep what never changes, as a good host does: the files whose names carry a hash.
    pub fn with_long_lives(self) -> Self {
        Self { shelf: Shelf { long_lives: true, ..self.shelf }, ..self }
    }

    /// Where the page is.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{}", self.port, self.shelf.folder)
    }

    /// Answers requests for good; `seen` is told each path asked for.
    pub fn serve(&self, seen: impl Fn(&str) + Send + Sync + 'static) {
        let seen = Arc::new(seen);
        for stream in self.listener.incoming().filter_map(Result::ok) {
            if self.closed.load(Ordering::Relaxed) {
                return;
            }
            let (shelf, seen) = (self.shelf.clone(), seen.clone());
            std::thread::spawn(move || {
                // A browser that went away in the middle is no reason to stop.
                let _ = shelf.reply(stream, &*seen);
            });
        }
    }

    /// Answers requests in the background.
    pub fn serve_aside(&self, seen: impl Fn(&str) + Send + Sync + 'static) {
        let site = self.clone();
        std::thread::spawn(move || site.serve(seen));
    }
}

impl Shelf {
    fn reply(&self, mut stream: TcpStream, seen: impl Fn(&str)) -> io::Result<()> {
        stream.set_read_timeout(Some(SILENCE))?;
        stream.set_write_timeout(Some(SILENCE))?;
        let mut lines = BufReader::new(&stream).take(LONGEST_HEAD).lines();
        // A browser may open a connection ahead of need and never use it.
        let Some(first) = lines.next() else { return Ok(()) };
        let first = first?;
        for line in lines {
            if line?.is_empty() {
                break;
            }
        }
        let mut words = first.split(' ');
        let (method, url) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
        let path = url.split(['?', '#']).next().unwrap_or_default();
        seen(path);
        let (status, kind, body) = self.answer(method, path);
        write!(
            stream,
            "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nX-Content-Type-Options: nosniff\r\n\
             Cache-Control: {}\r\nConnection: close\r\n\r\n",
            body.len(),
            // A miss is not for ever: the file may come.
            if status == FOUND { self.life(path) } else { "no-store" }
        )?;
        if method != "HEAD" {
            stream.write_all(&body)?;
        }
        stream.flush()
    }

    /// How long a browser may keep a file. Unless asked for otherwise not at all: what is on the disk is what
    /// is seen, and a second download shows.
    fn life(&self, path: &str) -> &'static str {
        match (self.long_lives, has_hash(path)) {
            (false, _) => "no-store",
            (true, false) => "no-cache",
            (true, true) => "max-age=31536000, immutable",
        }
    }

    /// Status, media type and content.
    fn answer(&self, method: &str, path: &str) -> (&'static str, &'static str, Vec<u8>) {
        if !matches!(method, "GET" | "HEAD") {
            return ("405 Method Not Allowed", "text/plain", b"only GET and HEAD".to_vec());
        }
        let file = path.strip_prefix(&self.folder).and_then(|rest| inside(&self.dir, rest));
        match file.and_then(|file| Some((mime(&file), fs::read(&file).ok()?))) {
            Some((kind, bytes)) => (FOUND, kind, bytes),
            None => ("404 Not Found", "text/plain", b"not found".to_vec()),
        }
    }
}

/// Whether a file's name carries a hash of its content.
fn has_hash(path: &str) -> bool {
    let stem = path.rsplit_once('.').map_or(path, |(stem, _)| stem);
    let hash = stem.rsplit_once('-').map_or("", |(_, hash)| hash);
    hash.len() == 10 && hash.bytes().all(|byte| byte.is_ascii_hexdigit())
}

/// The file a path names, as long as it stays inside the folder.
fn inside(dir: &Path, path: &str) -> Option<PathBuf> {
    let path =
        if path.is_empty() || path.ends_with('/') { format!("{path}index.html") } else { path.to_owned() };
    let plain = Path::new(&path).components().all(|part| matches!(part, Component::Normal(_)));
    plain.then(|| dir.join(path))
}

/// The media type of a file, by its ending.
fn mime(file: &Path) -> &'static str {
    match file.extension().and_then(|ending| ending.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("webmanifest") => "application/manifest+json",
        Some("json") => "application/json",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_stays_inside_the_folder() {
        let dir = Path::new("/dist");
        assert_eq!(inside(dir, ""), Some("/dist/index.html".into()));
        assert_eq!(inside(dir, "a/b.js"), Some("/dist/a/b.js".into()));
        for bad in ["../x", "/etc/passwd", "a/../../x"] {
            assert_eq!(inside(dir, bad), None, "{bad}");
        }
    }

    #[test]
    fn only_names_with_a_hash_live_long() {
        assert!(has_hash("/a/page_bg-0123456789.wasm"));
        for short in ["/index.html", "/icon-192.png", "/a-0123456789/index.html", "/page-012345678x.js"] {
            assert!(!has_hash(short), "{short}");
        }
    }

    #[test]
    fn a_busy_port_gives_the_next_one() {
        let first = Site::open("/".into(), "/", 0).expect("a port");
        let second = Site::open("/".into(), "/", first.port).expect("another port");
        assert!(second.port > first.port);
    }

    #[test]
    fn browsers_want_the_right_type_for_wasm_and_modules() {
        assert_eq!(mime(Path::new("a/page_bg-1.wasm")), "application/wasm");
        assert_eq!(mime(Path::new("boot.js")), "text/javascript; charset=utf-8");
    }
}
