//! The worker's front desk: rating tests asked for by somebody who waits for them come before the next
//! step of an advice under way.

use super::Service;
use super::advisor::Advisor;
use super::messages::{Request, Told};
use crate::core::candidates::Label;
use crate::core::label;

/// Most labels that wait for their test; the oldest is dropped, since newer typing replaced it.
const WAITING: usize = 4;

/// The clerk. The same one works in the worker, and in the page where no worker can be had.
#[derive(Default)]
pub struct Clerk {
    advisor: Advisor,
    tests: Vec<Label>,
}

impl Service for Clerk {
    type Ask = Request;
    type Answer = Told;

    fn take(&mut self, ask: Request, post: &mut dyn FnMut(Told)) {
        match ask {
            Request::Advise(ask) => {
                self.advisor.take(ask, &mut |reply| post(Told::Advice(reply)));
            }
            Request::Rate(label) => {
                self.tests.retain(|waiting| *waiting != *label);
                if self.tests.len() >= WAITING {
                    self.tests.remove(0);
                }
                self.tests.push(*label);
            }
        }
    }

    fn step(&mut self, post: &mut dyn FnMut(Told)) -> bool {
        // The newest first: it is the one looked at.
        if let Some(label) = self.tests.pop() {
            post(Told::Rated(Box::new(label::rate(&label))));
            return true;
        }
        self.advisor.step(&mut |reply| post(Told::Advice(reply)))
    }
}
