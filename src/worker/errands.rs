//! What the worker computes besides advice, when somebody asks for it: a part of the program that the worker
//! fetches with the first errand, so that the first visit does not download it.
//!
//! To the clerk and to the line between page and worker an errand and its result are bytes; only the two parts at
//! the ends, the desk here and whoever shows the result, know what they mean. An errand is done in one go, so a
//! long one is cut into several.

use super::futures::{AskFutures, Bench, Did};
use super::messages::Ask;
use crate::core::candidates::Label;
use crate::core::label::{self, Rated};
use crate::core::outlook::{self, Outlook};
use crate::core::pipeline::{Cache, Run};
use crate::job::answers::Answers;
use crate::job::complete::complete_with;
use crate::job::offer::Offer;
use leptos::wasm_split::SplitLoaderError;
use serde::{Deserialize, Serialize};
use std::future::Future;
use std::pin::Pin;

/// What can be asked for.
#[derive(Serialize, Deserialize)]
enum Errand {
    /// A rating test of the heater that scores this label.
    Rate(Label),
    /// What lies ahead of these answers and this offer.
    Outlook(Ask),
    /// A step on the way to the futures of a job.
    Futures(AskFutures),
}

/// The bytes that ask for a step on the way to futures.
pub fn to_foretell(ask: AskFutures) -> Vec<u8> {
    postcard::to_allocvec(&Errand::Futures(ask)).unwrap_or_default()
}

/// What came of the step, out of the bytes that came back.
pub fn foretold(result: &[u8]) -> Option<Did> {
    postcard::from_bytes(result).ok()
}

/// The bytes that ask for a rating test.
pub fn to_rate(label: &Label) -> Vec<u8> {
    // Plain data always has bytes.
    postcard::to_allocvec(&Errand::Rate(label.clone())).unwrap_or_default()
}

/// The rating test out of the bytes that came back.
pub fn rated(result: &[u8]) -> Option<Rated> {
    postcard::from_bytes(result).ok()
}

/// The bytes that ask for the outlook of a job.
pub fn to_look_ahead(answers: &Answers, offer: &Offer) -> Vec<u8> {
    postcard::to_allocvec(&Errand::Outlook(Ask::new(0, answers, offer))).unwrap_or_default()
}

/// The outlook out of the bytes that came back.
pub fn looked_ahead(result: &[u8]) -> Option<Outlook> {
    postcard::from_bytes(result).ok()
}

/// Does errands. A box of it is all that the clerk knows of them.
pub trait Desk {
    /// Does one errand; empty when the bytes ask for nothing known. What is calibrated on the way stays in the
    /// advisor's cache.
    fn run(&mut self, ask: &[u8], cache: &mut Cache) -> Vec<u8>;
}

/// A desk that may still be on its way.
pub type Coming = Pin<Box<dyn Future<Output = Result<Box<dyn Desk>, SplitLoaderError>>>>;

/// Sends for the desk.
pub fn fetch() -> Coming {
    Box::pin(part())
}

#[leptos::wasm_split::wasm_split(errands, wasm_split_path = leptos::wasm_split, fallible)]
fn part() -> Result<Box<dyn Desk>, SplitLoaderError> {
    Ok(Box::new(Worktop::default()))
}

#[derive(Default)]
struct Worktop {
    futures: Bench,
}

impl Desk for Worktop {
    fn run(&mut self, ask: &[u8], cache: &mut Cache) -> Vec<u8> {
        let done = match postcard::from_bytes(ask) {
            Ok(Errand::Outlook(ask)) => {
                let case = complete_with(&ask.answers(), &ask.offer());
                // The years are simulated already: whoever asks has seen their advice.
                let mut run = Run::new(case.clone(), cache);
                while run.step(cache) {}
                postcard::to_allocvec(&outlook::of(&case, &run.finish(), cache))
            }
            Ok(Errand::Rate(label)) => postcard::to_allocvec(&label::rate(&label)),
            Ok(Errand::Futures(ask)) => match self.futures.run(ask, cache) {
                Some(did) => postcard::to_allocvec(&did),
                None => return Vec::new(),
            },
            Err(_) => return Vec::new(),
        };
        done.unwrap_or_default()
    }
}
