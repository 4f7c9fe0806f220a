//! Asks the worker for advice after every change of the answers, and takes the replies.
//!
//! Changes in quick succession are gathered; a newer question makes older ones stale, in the worker and
//! here. Where no worker can be had, the same service works in the page, a small step at a time, so that
//! the page stays responsive.

use crate::core::message::Message;
use crate::ui::model::{Computed, Notice};
use crate::ui::state::Page;
use crate::worker::clerk::Clerk;
use crate::worker::messages::{Ask, Reply, Request, Told};
use crate::worker::{Link, Service};
use leptos::leptos_dom::helpers::TimeoutHandle;
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;

/// A change that follows the one before closer than this waits as long for more; any other is asked about
/// at once.
const GATHER: Duration = Duration::from_millis(20);

/// Starts asking, and goes on for as long as the page lives.
pub fn follow(page: Page) {
    let desk = Rc::new(RefCell::new(Desk { page, number: 0, asked_ms: 0.0, service: None, timer: None }));
    Desk::hire(&desk);
    follow_errands(desk.clone(), page);
    Effect::new(move |first: Option<()>| {
        // Two jobs may have the same answers; each wants its own advice.
        page.track_case();
        let since = js_sys::Date::now() - desk.borrow().asked_ms;
        // A clock put back makes it negative: then do not wait either.
        if first.is_none() || !(0.0..GATHER.as_millis() as f64).contains(&since) {
            Desk::ask(&desk);
            return;
        }
        let at_desk = desk.clone();
        let timer = set_timeout_with_handle(move || Desk::ask(&at_desk), GATHER).ok();
        if let Some(earlier) = std::mem::replace(&mut desk.borrow_mut().timer, timer) {
            earlier.clear();
        }
    });
}

/// Passes errands on.
fn follow_errands(desk: Rc<RefCell<Desk>>, page: Page) {
    Effect::new(move |_| {
        page.errands.track();
        while let Some(ask) = page.errand_to_send() {
            Desk::send(&desk, Request::Run(ask));
        }
    });
}

/// Who does the computing.
enum Hired {
    /// The worker.
    Worker(Link<Request, Told>),
    /// The page itself, between its other duties; true while at work.
    Here(Box<Clerk>, bool),
}

struct Desk {
    page: Page,
    number: u64,
    /// When the last question was asked, ms since 1970.
    asked_ms: f64,
    service: Option<Hired>,
    timer: Option<TimeoutHandle>,
}

impl Desk {
    /// Gets a worker, or the page to do it.
    fn hire(desk: &Rc<RefCell<Desk>>) {
        let (on_answer, on_failure) = (desk.clone(), desk.clone());
        let link = Link::start(
            move |told| Desk::told(&on_answer, told),
            move |error| {
                leptos::logging::warn!("{error}");
                Desk::do_it_here(&on_failure);
            },
        );
        match link {
            Ok(link) => desk.borrow_mut().service = Some(Hired::Worker(link)),
            Err(error) => {
                leptos::logging::warn!("{error}");
                Desk::do_it_here(desk);
            }
        }
    }

    /// The worker cannot be used: says so, and asks again here.
    fn do_it_here(desk: &Rc<RefCell<Desk>>) {
        let page = desk.borrow().page;
        if matches!(desk.borrow().service, Some(Hired::Here(..))) {
            return;
        }
        // The failed link is called from inside itself: let it return before it is dropped.
        let mut clerk = Box::<Clerk>::default();
        let at_desk = desk.clone();
        clerk.hear(Rc::new(move || Desk::soon(&at_desk)));
        let failed = desk.borrow_mut().service.replace(Hired::Here(clerk, false));
        set_timeout(move || drop(failed), Duration::ZERO);
        page.tell(Notice { code: "no-worker", says: Message::new("page-notice-no-worker"), remedy: None });
        Desk::ask(desk);
        page.send_errands_again();
    }

    fn ask(desk: &Rc<RefCell<Desk>>) {
        let mut at = desk.borrow_mut();
        at.number += 1;
        at.asked_ms = js_sys::Date::now();
        // A gathered question would be older than this one.
        if let Some(waiting) = at.timer.take() {
            waiting.clear();
        }
        let ask = at.page.job.with_untracked(|j| Ask::new(at.number, &j.sheet.answers, &j.sheet.offer));
        at.page.computed.update(|c| c.progress = Some((0, 1)));
        drop(at);
        Desk::send(desk, Request::Advise(ask));
    }

    fn send(desk: &Rc<RefCell<Desk>>, request: Request) {
        let mut at = desk.borrow_mut();
        let failed = match &mut at.service {
            Some(Hired::Worker(link)) => link.send(&request).is_err(),
            Some(Hired::Here(clerk, busy)) => {
                clerk.take(request);
                !std::mem::replace(busy, true) && {
                    Desk::soon(desk);
                    false
                }
            }
            None => false,
        };
        drop(at);
        if failed {
            Desk::do_it_here(desk);
        }
    }

    /// One step of the page's own computing; the next one waits behind whatever the reader does.
    fn step(desk: &Rc<RefCell<Desk>>) {
        let mut replies = Vec::new();
        let more = match &mut desk.borrow_mut().service {
            Some(Hired::Here(clerk, busy)) => {
                *busy = clerk.step(&mut |told| replies.push(told));
                *busy
            }
            _ => false,
        };
        for told in replies {
            Desk::told(desk, told);
        }
        if more {
            Desk::soon(desk);
        }
    }

    /// Has a step done behind whatever waits.
    fn soon(desk: &Rc<RefCell<Desk>>) {
        let desk = desk.clone();
        set_timeout(move || Desk::step(&desk), Duration::ZERO);
    }

    fn told(desk: &Rc<RefCell<Desk>>, told: Told) {
        match told {
            Told::Advice(reply) => Desk::take(desk, reply),
            Told::Ran { ask, result } => {
                let page = desk.borrow().page;
                page.errand_ran(&ask, result);
            }
        }
    }

    fn take(desk: &Rc<RefCell<Desk>>, reply: Reply) {
        let (page, number) = {
            let at = desk.borrow();
            (at.page, at.number)
        };
        // A reply to an older question: the reader has moved on.
        if reply.number() != number {
            return;
        }
        match reply {
            Reply::Progress { done, of, .. } => page.computed.update(|c| c.progress = Some((done, of))),
            Reply::First { outcome, .. } => page.computed.update(|c| c.first = Some(Arc::from(outcome))),
            Reply::Done { outcome, .. } => {
                page.computed.set(Computed { outcome: Some(Arc::from(outcome)), ..Computed::default() });
            }
        }
    }
}
