//! More workers for work that can be shared out. All cores but one compute: the page's own worker is one of them, so with
//! two cores there is none more. Each is a worker like that one, with the same compiled module; errands go to whichever is
//! free, in order.
//!
//! Whoever shares out gives a worker its next errand when it is free, and so has nothing to take back when the answers
//! change: what is under way is short, and its result may be ignored. Dropping the pool ends its workers at once.

use super::Link;
use super::messages::{Request, Told};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

/// Most workers started, whatever a browser says of its cores.
const MOST: usize = 16;

/// Hands an errand's bytes and its result on; `None` for a result that could not be had.
pub type OnDone = Rc<dyn Fn(Vec<u8>, Option<Vec<u8>>)>;

/// Workers with the errands that wait for one.
pub struct Pool {
    shared: Rc<RefCell<Shared>>,
}

struct Shared {
    links: Vec<Option<Link<Request, Told>>>,
    /// What each is at.
    busy: Vec<Option<Vec<u8>>>,
    waiting: VecDeque<Vec<u8>>,
    done: OnDone,
}

/// How many to start: cores, less the one that the page runs on and the one of its own worker.
pub fn workers() -> usize {
    let cores = web_sys::window().map_or(1.0, |w| w.navigator().hardware_concurrency());
    (cores as usize).saturating_sub(2).min(MOST)
}

impl Pool {
    /// Starts the workers, or as many of them as the browser gives.
    pub fn start(count: usize, done: OnDone) -> Pool {
        let shared = Rc::new(RefCell::new(Shared {
            links: Vec::new(),
            busy: Vec::new(),
            waiting: VecDeque::new(),
            done,
        }));
        for place in 0..count.min(MOST) {
            let (at, failed) = (Rc::downgrade(&shared), Rc::downgrade(&shared));
            let link = Link::start(
                move |told| {
                    if let (Some(shared), Told::Ran { ask, result }) = (at.upgrade(), told) {
                        Shared::ended(&shared, place, ask, result);
                    }
                },
                move |_| {
                    if let Some(shared) = failed.upgrade() {
                        Shared::failed(&shared, place);
                    }
                },
            );
            let Ok(link) = link else { break };
            let mut shared = shared.borrow_mut();
            shared.links.push(Some(link));
            shared.busy.push(None);
        }
        Pool { shared }
    }

    /// How many workers have nothing to do.
    pub fn free(&self) -> usize {
        let shared = self.shared.borrow();
        shared.links.iter().zip(&shared.busy).filter(|(link, busy)| link.is_some() && busy.is_none()).count()
    }

    /// Has an errand done by a worker that is free.
    pub fn run(&self, errand: Vec<u8>) {
        self.shared.borrow_mut().waiting.push_back(errand);
        Shared::next(&self.shared);
    }
}

impl Shared {
    /// Gives every idle worker something to do.
    fn next(this: &Rc<RefCell<Shared>>) {
        let mut failed = Vec::new();
        {
            let mut shared = this.borrow_mut();
            for place in 0..shared.links.len() {
                if shared.busy[place].is_some() || shared.links[place].is_none() {
                    continue;
                }
                let Some(errand) = shared.waiting.pop_front() else { break };
                let sent = match &shared.links[place] {
                    Some(link) => link.send(&Request::Run(errand.clone())).is_ok(),
                    None => false,
                };
                if sent {
                    shared.busy[place] = Some(errand);
                } else {
                    failed.push(errand);
                }
            }
            if shared.links.iter().all(Option::is_none) {
                failed.extend(std::mem::take(&mut shared.waiting));
            }
        }
        let done = this.borrow().done.clone();
        for errand in failed {
            done(errand, None);
        }
    }

    fn ended(this: &Rc<RefCell<Shared>>, place: usize, errand: Vec<u8>, result: Option<Vec<u8>>) {
        let done = {
            let mut shared = this.borrow_mut();
            shared.busy[place] = None;
            shared.done.clone()
        };
        done(errand, result);
        Shared::next(this);
    }

    /// A worker failed: what it was at goes back to the front, for another.
    fn failed(this: &Rc<RefCell<Shared>>, place: usize) {
        {
            let mut shared = this.borrow_mut();
            shared.links[place] = None;
            if let Some(errand) = shared.busy[place].take() {
                shared.waiting.push_front(errand);
            }
        }
        Shared::next(this);
    }
}
