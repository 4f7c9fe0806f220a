//! The worker's front desk: errands of somebody who waits for them come before the next step of an advice under
//! way. What does them is fetched with the first one ([`super::errands`]); the advice goes on meanwhile.

use super::Service;
use super::advisor::Advisor;
use super::errands::{self, Desk};
use super::messages::{Request, Told};
use std::cell::RefCell;
use std::rc::Rc;

/// The clerk. The same one works in the worker, and in the page where no worker can be had.
#[derive(Default)]
pub struct Clerk {
    advisor: Advisor,
    waiting: Vec<Vec<u8>>,
    desk: Rc<RefCell<Place>>,
    ring: Option<Rc<dyn Fn()>>,
}

/// Where errands are done.
#[derive(Default)]
enum Place {
    #[default]
    NotFetched,
    Coming,
    Missing,
    Here(Box<dyn Desk>),
}

impl Clerk {
    /// Does an errand, if one waits and there is a desk; sends for the desk where there is none.
    fn run(&mut self, post: &mut dyn FnMut(Told)) -> bool {
        if self.waiting.is_empty() {
            return false;
        }
        match &mut *self.desk.borrow_mut() {
            Place::Here(desk) => {
                let ask = self.waiting.remove(0);
                let result = desk.run(&ask, self.advisor.cache());
                post(Told::Ran { ask, result: Some(result) });
                return true;
            }
            place @ Place::Missing => {
                // The next errand tries again.
                *place = Place::NotFetched;
                for ask in std::mem::take(&mut self.waiting) {
                    post(Told::Ran { ask, result: None });
                }
                return true;
            }
            Place::Coming => return false,
            place @ Place::NotFetched => *place = Place::Coming,
        }
        let (desk, ring) = (self.desk.clone(), self.ring.clone());
        wasm_bindgen_futures::spawn_local(async move {
            let came = errands::fetch().await;
            *desk.borrow_mut() = came.map_or(Place::Missing, Place::Here);
            if let Some(ring) = ring {
                ring();
            }
        });
        false
    }
}

impl Service for Clerk {
    type Ask = Request;
    type Answer = Told;

    fn hear(&mut self, ring: Rc<dyn Fn()>) {
        self.ring = Some(ring);
    }

    fn take(&mut self, ask: Request) {
        match ask {
            Request::Advise(ask) => self.advisor.take(&ask),
            Request::Run(errand) => self.waiting.push(errand),
        }
    }

    fn step(&mut self, post: &mut dyn FnMut(Told)) -> bool {
        self.run(post) || self.advisor.step(&mut |reply| post(Told::Advice(reply)))
    }
}
