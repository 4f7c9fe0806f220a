//! Errands of the worker ([`crate::worker::errands`]) as the page has them: wanted, on their way, done. Bytes here;
//! the part of the page that sent one knows what they mean.

use super::state::Page;
use leptos::prelude::*;
use std::sync::Arc;

/// Most errands of a kind that are remembered with what came of them. Of a kind, since a drawing takes hundreds of
/// steps, and must not push out a result that stands on the page.
const KEPT: usize = 16;

/// An errand.
#[derive(Clone)]
pub struct Errand {
    ask: Vec<u8>,
    sent: bool,
    came: Came,
}

/// How far an errand is.
#[derive(Clone, PartialEq)]
pub enum Came {
    /// Under way.
    NotYet,
    /// Done; what came of it.
    Done(Arc<[u8]>),
    /// The part of the program that does errands could not be fetched.
    Missing,
}

impl Page {
    /// Sends an errand, unless it was done already or is under way.
    pub fn send_errand(self, ask: Vec<u8>) {
        let known = |e: &Errand| e.ask == ask && e.came != Came::Missing;
        if self.errands.with_untracked(|all| all.iter().any(known)) {
            return;
        }
        self.errands.update(|all| {
            all.retain(|e| e.ask != ask);
            // Bytes that ask for the same kind of thing begin alike.
            let alike = |e: &Errand| e.ask.first() == ask.first();
            if all.iter().filter(|e| alike(e)).count() >= KEPT
                && let Some(oldest) = all.iter().position(alike)
            {
                all.remove(oldest);
            }
            all.push(Errand { ask, sent: false, came: Came::NotYet });
        });
    }

    /// How far an errand is.
    pub fn errand(self, ask: &[u8]) -> Came {
        self.errands.with(|all| all.iter().find(|e| e.ask == ask).map_or(Came::NotYet, |e| e.came.clone()))
    }

    /// An errand that nobody has taken to the worker yet; it counts as taken from now on.
    pub fn errand_to_send(self) -> Option<Vec<u8>> {
        // Not a change for anybody who waits.
        let mut all = self.errands.write_untracked();
        let errand = all.iter_mut().find(|e| !e.sent)?;
        errand.sent = true;
        Some(errand.ask.clone())
    }

    /// Has errands under way taken once more: whoever had them is gone.
    pub fn send_errands_again(self) {
        self.errands.update(|all| all.iter_mut().for_each(|e| e.sent &= e.came != Came::NotYet));
    }

    /// Takes what came of an errand.
    pub fn errand_ran(self, ask: &[u8], result: Option<Vec<u8>>) {
        let came = result.map_or(Came::Missing, |result| Came::Done(result.into()));
        self.errands.update(|all| {
            for errand in all.iter_mut().filter(|e| e.ask == ask) {
                errand.came = came.clone();
            }
        });
    }
}
