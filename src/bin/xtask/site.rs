//! A file server for the finished page, on this machine only.
use std::fs;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Component, Path, PathBuf};
use std::sync::Arc;

use anyhow::{Context, Result};
use tiny_http::{Header, Method, Request, Response, Server};

/// How many ports to try.
const TRIES: u16 = 50;

/// A page being served.
#[derive(Clone)]
pub struct Site {
    server: Arc<Server>,
    dir: PathBuf,
    folder: String,
    port: u16,
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
        let server = Server::from_listener(listener, None).map_err(|error| anyhow::anyhow!("{error}"))?;
        Ok(Self { server: Arc::new(server), dir, folder: folder.to_owned(), port })
    }

    /// Where the page is.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{}", self.port, self.folder)
    }

    /// Answers requests for good; `seen` is told each path asked for.
    pub fn serve(&self, seen: impl Fn(&str)) {
        for request in self.server.incoming_requests() {
            let path = request.url().split(['?', '#']).next().unwrap_or_default().to_owned();
            seen(&path);
            // A browser that went away in the middle is no reason to stop.
            let _ = self.reply(request, &path);
        }
    }

    /// Answers requests in the background.
    pub fn serve_aside(&self, seen: impl Fn(&str) + Send + 'static) {
        let site = self.clone();
        std::thread::spawn(move || site.serve(seen));
    }

    fn reply(&self, request: Request, path: &str) -> std::io::Result<()> {
        if !matches!(request.method(), Method::Get | Method::Head) {
            return request.respond(Response::from_string("only GET and HEAD").with_status_code(405));
        }
        let file = path.strip_prefix(&self.folder).and_then(|rest| inside(&self.dir, rest));
        let Some((file, bytes)) = file.and_then(|file| fs::read(&file).ok().map(|bytes| (file, bytes)))
        else {
            return request.respond(Response::from_string("not found").with_status_code(404));
        };
        let mut response = Response::from_data(bytes);
        for (name, value) in [
            ("Content-Type", mime(&file)),
            ("X-Content-Type-Options", "nosniff"),
            // Nothing kept: what is on the disk is what is seen, and a second download would show.
            ("Cache-Control", "no-store"),
        ] {
            if let Ok(header) = Header::from_bytes(name, value) {
                response.add_header(header);
            }
        }
        request.respond(response)
    }
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
