//! More workers for work that can be shared out: all cores but one, at least one. Each is a worker like the page's own, with
//! the same compiled module; errands go to whichever is free, in order.
//!
//! Dropping the pool ends its workers at once, and with them what nobody wants any more.

use super::messages::{Request, Told};
use super::{Link, LinkError};
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

/// Cores less one, at least one.
pub fn workers() -> usize {
    let cores = web_sys::window().map_or(1.0, |w| w.navigator().hardware_concurrency());
    (cores as usize).saturating_sub(1).clamp(1, MOST)
}

impl Pool {
    /// Starts the workers.
    ///
    /// # Errors
    /// When the browser refuses the first of them; fewer than wanted are no error.
    pub fn start(count: usize, done: OnDone) -> Result<Pool, LinkError> {
        let shared = Rc::new(RefCell::new(Shared {
            links: Vec::new(),
            busy: Vec::new(),
            waiting: VecDeque::new(),
            done,
        }));
        for place in 0..count.clamp(1, MOST) {
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
            match link {
                Ok(link) => {
                    let mut shared = shared.borrow_mut();
                    shared.links.push(Some(link));
                    shared.busy.push(None);
                }
                Err(error) if place == 0 => return Err(error),
                Err(_) => break,
            }
        }
        Ok(Pool { shared })
    }

    /// Shares errands out.
    pub fn run(&self, errands: impl IntoIterator<Item = Vec<u8>>) {
        self.shared.borrow_mut().waiting.extend(errands);
        Shared::next(&self.shared);
    }

    /// Forgets what waits. What is under way ends soon, and its result is handed on; whoever asked may ignore it.
    pub fn cancel(&self) {
        self.shared.borrow_mut().waiting.clear();
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
        Shared::next(this);
        done(errand, result);
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
