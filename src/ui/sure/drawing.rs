//! Has the futures of a job drawn ([`crate::worker::futures`]), for as long as somebody looks, does not stop it and gives no
//! newer answer.
//!
//! Years go to whichever worker is free. The page's own worker tells what they come to, so it tells the futures of a stage as
//! soon as the stage's years are all there; meanwhile the others go on with the next stage. Nothing depends on who did
//! what: the figures do not either.

use super::futures::View;
use super::steps::{Steps, YEARS};
use crate::job::JobId;
use crate::ui::errands::Came;
use crate::ui::state::Page;
use crate::worker::errands;
use crate::worker::messages::Ask;
use crate::worker::pool::{self, Pool};
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;

thread_local! {
    /// What was seen last: it is there at once when somebody comes back to it, and newer answers are compared with it.
    static LAST: RefCell<Option<Seen>> = const { RefCell::new(None) };
}

/// A view with the job and the answers that it belongs to.
#[derive(Clone)]
struct Seen {
    job: JobId,
    ask: Ask,
    view: View,
    /// Nothing better follows.
    whole: bool,
}

/// What a drawing shows of itself.
#[derive(Clone, Copy)]
pub struct Drawing {
    /// Years simulated, of [`YEARS`].
    pub done: RwSignal<u32>,
    /// Somebody has stopped it.
    pub stopped: RwSignal<bool>,
    /// The part of the program that simulates could not be fetched.
    pub missing: RwSignal<bool>,
    /// There is nothing more to come.
    pub whole: RwSignal<bool>,
    /// What was seen last.
    pub view: RwSignal<Option<View>>,
    /// The errand that the page's own worker is at.
    own: RwSignal<Option<Vec<u8>>>,
    steps: StoredValue<Option<Steps>, LocalStorage>,
    pool: StoredValue<Option<Pool>, LocalStorage>,
    page: Page,
}

impl Drawing {
    /// Begins with what is advised, and follows it.
    pub fn start(page: Page) -> Drawing {
        // Without a worker the page itself would simulate: only where somebody wants that.
        let alone = page.notices.with_untracked(|all| all.iter().any(|n| n.code == "no-worker"));
        let drawing = Drawing {
            done: RwSignal::new(0),
            stopped: RwSignal::new(alone),
            missing: RwSignal::new(false),
            whole: RwSignal::new(false),
            view: RwSignal::new(None),
            own: RwSignal::new(None),
            steps: StoredValue::new_local(None),
            pool: StoredValue::new_local(None),
            page,
        };
        // An answer makes what is under way stale at once; its futures are drawn when its advice stands.
        Effect::new(move |before: Option<()>| {
            page.track_case();
            if before.is_some() {
                drawing.steps.set_value(None);
                drawing.whole.set(false);
                drawing.done.set(0);
            }
        });
        Effect::new(move |_| {
            if page.outcome.with(Option::is_some) {
                drawing.begin();
            }
        });
        Effect::new(move |_| {
            if !drawing.stopped.get() {
                drawing.share_out();
            }
        });
        Effect::new(move |_| {
            let Some(errand) = drawing.own.get() else { return };
            match page.errand(&errand) {
                Came::NotYet => {}
                Came::Missing => {
                    drawing.own.set(None);
                    drawing.missing.set(true);
                    drawing.update(|steps| steps.own_failed(&errand));
                }
                Came::Done(bytes) => {
                    drawing.own.set(None);
                    drawing.own_did(&errand, &bytes);
                    drawing.share_out();
                }
            }
        });
        drawing
    }

    /// Tries once more to fetch what was missing.
    pub fn again(self) {
        self.missing.set(false);
        self.share_out();
    }

    /// The answers have their advice: begins with their futures.
    fn begin(self) {
        let page = self.page;
        let Some(of) = page.outcome.get_untracked() else { return };
        let (answers, offer) = (page.answers.get_untracked(), page.offer.get_untracked());
        let (job, ask) = (page.open.get_untracked(), Ask::new(0, &answers, &offer));
        // The same answers advised on once more: what is under way goes on.
        if self.update(|steps| steps.advised_anew(job, &ask, &of)) == Some(true) {
            return;
        }
        let mut before = None;
        if let Some(seen) = LAST.with_borrow(Clone::clone).filter(|seen| seen.job == job) {
            let same = seen.ask == ask;
            before = if same { seen.view.before.clone() } else { Some(seen.view.futures.clone()) };
            if same {
                self.whole.set(seen.whole);
                self.view.set(Some(View { of: of.clone(), ..seen.view }));
                if seen.whole {
                    return self.done.set(YEARS);
                }
            }
        } else {
            self.view.set(None);
        }
        self.steps.set_value(Some(Steps::of(job, ask, of, before)));
        self.share_out();
    }

    fn update<T>(self, change: impl FnOnce(&mut Steps) -> T) -> Option<T> {
        // None where nobody looks any more, or the answers have no advice yet.
        self.steps.try_update_value(|steps| steps.as_mut().map(change)).flatten()
    }

    /// Gives everybody who is free something to do.
    fn share_out(self) {
        if self.stopped.get_untracked() || self.missing.get_untracked() {
            return;
        }
        if self.own.with_untracked(Option::is_none)
            && let Some(errand) = self.update(Steps::for_own).flatten()
        {
            self.own.set(Some(errand.clone()));
            self.page.send_errand(errand);
        }
        // The first errand is under way before other workers are started.
        if self.pool.try_with_value(Option::is_none) == Some(true) {
            let pool =
                Pool::start(pool::workers(), Rc::new(move |errand, years| self.other_did(&errand, years)));
            self.pool.set_value(Some(pool));
        }
        let free = || self.pool.try_with_value(|pool| pool.as_ref().map_or(0, Pool::free)).unwrap_or(0);
        while free() > 0
            && let Some(errand) = self.update(Steps::for_other).flatten()
        {
            self.pool.try_with_value(|pool| pool.as_ref().map(|pool| pool.run(errand)));
        }
    }

    fn other_did(self, errand: &[u8], years: Option<Vec<u8>>) {
        let done = self.update(|steps| {
            steps.other_did(errand, years);
            steps.done()
        });
        if let Some(done) = done {
            self.done.set(done);
            self.share_out();
        }
    }

    fn own_did(self, errand: &[u8], bytes: &[u8]) {
        let last = self.view.get_untracked();
        let known = self.update(|steps| {
            let view = steps.own_did(errand, errands::foretold(bytes), last);
            (view, steps.done(), steps.whole, steps.job, steps.ask.clone())
        });
        let Some((view, done, whole, job, ask)) = known else { return };
        self.done.set(done);
        if let Some(view) = view {
            LAST.set(Some(Seen { job, ask, view: view.clone(), whole }));
            self.view.set(Some(view));
        }
        self.whole.set(whole);
    }
}
