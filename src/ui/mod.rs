//! The page: what a person sees and touches. Asks the questions, keeps the answers, shows the advice.
//!
//! Leptos, rendered in the browser, WebAssembly only. The page does no sums of its own beyond putting
//! figures of an [`Outcome`](crate::core::outcome::Outcome) side by side: the simulation runs in the
//! worker, words come from [`crate::text`], questions and their rules from [`crate::job`].
//!
//! | here | what it is for |
//! | --- | --- |
//! | [`model`] | what the page knows, as plain data |
//! | [`state`] | that data in signals, and the operations on it |
//! | [`errands`] | what the worker computes besides advice, when asked
//! | [`jobs`] | what can be done with jobs, and keeping in step with other tabs |
//! | [`route`] | which page is shown, and its address |
//! | [`reading`] | figures drawn from an outcome: savings, differences, one-sentence readings |
//! | [`mod@lazy`] | parts of the page that are fetched when first shown |
//! | [`browser`] | one file a browser capability: storage, worker, history, media, download |
//! | [`over`] | what lies over the page: sending, opening links, files of jobs |
//! | [`pages`] | start, a section of questions, the result |
//! | [`sure`] | how sure the advice is, what would change it, what lies ahead |
//! | [`components`] | the parts they are made of |
//! | [`charts`] | the charts on canvas |

mod after;
mod app;
mod browser;
mod charts;
mod components;
mod errands;
mod jobs;
mod lazy;
mod model;
mod over;
mod pages;
mod reading;
mod route;
mod state;
mod sure;

use crate::worker;
use leptos::prelude::*;

/// Serves as the Web Worker when started in one; otherwise mounts the page.
pub fn start() {
    console_error_panic_hook::set_once();
    if worker::in_worker() {
        if let Err(error) = worker::run(worker::clerk::Clerk::default()) {
            leptos::logging::error!("the worker could not start: {error:?}");
        }
        return;
    }
    mount_to_body(app::App);
}
