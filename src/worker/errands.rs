//! What the worker computes besides advice, when somebody asks for it: a part of the program that the worker
//! fetches with the first errand, so that the first visit does not download it.
//!
//! To the clerk and to the line between page and worker an errand and its result are bytes; only the two parts at
//! the ends, the desk here and whoever shows the result, know what they mean. An errand is done in one go, so a
//! long one is cut into several.

use super::drawing::{self, Drawing, Step};
use super::futures::{self, AskFutures, AskYears, Foretold};
use super::messages::Ask;
use crate::core::candidates::Label;
use crate::core::futures::DesignYears;
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
    /// Years that futures are told from.
    Years(AskYears),
    /// Futures told from years.
    Foretell(Box<AskFutures>),
    /// The next futures of these answers and this offer; the number tells one step from the next.
    Draw(Ask, u32),
}

/// The bytes that ask for years of a design.
pub fn to_years(ask: AskYears) -> Vec<u8> {
    postcard::to_allocvec(&Errand::Years(ask)).unwrap_or_default()
}

/// The years out of the bytes that came back.
pub fn years(result: &[u8]) -> Option<Vec<DesignYears>> {
    postcard::from_bytes(result).ok()
}

/// The bytes that ask for futures.
pub fn to_foretell(ask: AskFutures) -> Vec<u8> {
    postcard::to_allocvec(&Errand::Foretell(Box::new(ask))).unwrap_or_default()
}

/// The futures out of the bytes that came back.
pub fn foretold(result: &[u8]) -> Option<Foretold> {
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

/// The bytes that ask for a step of the futures of a job.
pub fn to_draw(answers: &Answers, offer: &Offer, step: u32) -> Vec<u8> {
    postcard::to_allocvec(&Errand::Draw(Ask::new(0, answers, offer), step)).unwrap_or_default()
}

/// The step out of the bytes that came back.
pub fn drawn(result: &[u8]) -> Option<Step> {
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
    drawing: Option<Drawing>,
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
            Ok(Errand::Years(ask)) => postcard::to_allocvec(&futures::years(&ask, cache)),
            Ok(Errand::Foretell(ask)) => match futures::foretold(*ask, cache) {
                Some(foretold) => postcard::to_allocvec(&foretold),
                None => return Vec::new(),
            },
            Ok(Errand::Draw(ask, _)) => postcard::to_allocvec(&drawing::go_on(&mut self.drawing, ask, cache)),
            Err(_) => return Vec::new(),
        };
        done.unwrap_or_default()
    }
}
