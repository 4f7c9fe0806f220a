//! Gives advice: takes a question, simulates one candidate a step, replies. A newer question takes the
//! place of the one under way; what was simulated for that one stays of use in the cache.

use super::Service;
use super::messages::{Ask, Reply};
use crate::core::case::Case;
use crate::core::pipeline::{Cache, Run};
use crate::job::complete::complete;

/// The advisor. The same one works in the worker, and in the page where no worker can be had.
#[derive(Default)]
pub struct Advisor {
    cache: Cache,
    work: Option<Work>,
}

/// A question under way.
struct Work {
    number: u64,
    case: Case,
    /// Candidates done; they are in the cache.
    done: usize,
}

impl Service for Advisor {
    type Ask = Ask;
    type Answer = Reply;

    fn take(&mut self, ask: Ask, _post: &mut dyn FnMut(&Reply)) {
        self.work = Some(Work { number: ask.number, case: complete(&ask.answers()), done: 0 });
    }

    fn step(&mut self, post: &mut dyn FnMut(&Reply)) -> bool {
        let Some(Work { number, case, done }) = &mut self.work else { return false };
        let number = *number;
        // A run borrows its case, so it cannot be kept between two steps. Starting again costs little:
        // everything simulated before comes out of the cache.
        let mut run = Run::new(case, &mut self.cache);
        let mut more = true;
        while more && run.done() <= *done {
            more = run.step();
        }
        *done = run.done();
        if more {
            let progress = Reply::Progress { number, done: run.done() as u32, of: run.len() as u32 };
            post(&progress);
            return true;
        }
        post(&Reply::Done { number, outcome: Box::new(run.finish()) });
        self.work = None;
        false
    }
}
