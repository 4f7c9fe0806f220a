//! The page in a real browser: headless Chromium over WebDriver, at the release page in dist/.
//!
//! `cargo xtask test` builds the page and runs these; by hand: `cargo test --test web -- --ignored`.
//! The page is served from a folder, not from the top of the site, and every request is counted.

mod after;
mod answers;
#[path = "../../src/bin/xtask/browser.rs"]
mod browser;
mod crowded;
mod findings;
mod harness;
mod hosted;
mod jobs;
mod label;
mod links;
mod offline;
mod onsite;
mod parts;
#[path = "../../src/bin/xtask/precache.rs"]
mod precache;
mod reach;
mod single;
#[path = "../../src/bin/xtask/site.rs"]
mod site;
mod start;
mod storage;
mod sure;
mod update;
mod work;
mod worker;
