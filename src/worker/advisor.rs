//! Gives advice: takes a question, takes a first look at one candidate a step, replies, then simulates one
//! candidate's whole year a step, and replies again. A newer question takes the place of the one under way at
//! any step; what was simulated for that one stays of use in the cache.

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
    /// The first look is still being taken.
    looking: bool,
}

impl Advisor {
    /// What was simulated and calibrated so far.
    pub fn cache(&mut self) -> &mut Cache {
        &mut self.cache
    }

    /// Takes a question, in the place of the one under way.
    pub fn take(&mut self, ask: &Ask) {
        let run = Run::new(complete_with(&ask.answers(), &ask.offer()), &mut self.cache);
        self.work = Some(Work { number: ask.number, run, looking: true });
    }

    /// Does one step of the question under way; false when there is nothing left to do.
    pub fn step(&mut self, post: &mut dyn FnMut(Reply)) -> bool {
        let Some(work) = &mut self.work else { return false };
        let (number, run) = (work.number, &mut work.run);
        if work.looking {
            work.looking = run.look(&mut self.cache);
            if !work.looking
                && let Some(outcome) = run.first()
            {
                post(Reply::First { number, outcome: Box::new(outcome) });
            }
            return true;
        }
        if run.step(&mut self.cache) {
            post(Reply::Progress { number, done: run.done() as u32, of: run.len() as u32 });
            return true;
        }
        if let Some(Work { number, run, .. }) = self.work.take() {
            post(Reply::Done { number, outcome: Box::new(run.finish()) });
        }
        false
    }
}
