//! Gives advice: takes a question, simulates one candidate a step, replies. A newer question takes the
//! place of the one under way; what was simulated for that one stays of use in the cache.

use super::Service;
use super::messages::{Ask, Reply};
use crate::core::pipeline::{Cache, Run};
use crate::job::complete::complete_with;

/// The advisor. The same one works in the worker, and in the page where no worker can be had.
#[derive(Default)]
pub struct Advisor {
    cache: Cache,
    work: Option<Work>,
}

/// A question under way.
struct Work {
    number: u64,
    run: Run,
}

impl Service for Advisor {
    type Ask = Ask;
    type Answer = Reply;

    fn take(&mut self, ask: Ask, _post: &mut dyn FnMut(&Reply)) {
        let run = Run::new(complete_with(&ask.answers(), &ask.offer()), &mut self.cache);
        self.work = Some(Work { number: ask.number, run });
    }

    fn step(&mut self, post: &mut dyn FnMut(&Reply)) -> bool {
        let Some(Work { number, mut run }) = self.work.take() else { return false };
        let more = run.step(&mut self.cache);
        if more {
            post(&Reply::Progress { number, done: run.done() as u32, of: run.len() as u32 });
            self.work = Some(Work { number, run });
        } else {
            post(&Reply::Done { number, outcome: Box::new(run.finish()) });
        }
        more
    }
}
