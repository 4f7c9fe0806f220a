//! The steps to the futures of one job, as plain data: what can be done next, what is under way, what has come.

use super::futures::View;
use crate::core::futures::stages::{HOUSEHOLDS, STAGES};
use crate::core::futures::{Futures, Wishes};
use crate::job::JobId;
use crate::ui::model::Shared;
use crate::worker::errands;
use crate::worker::futures::{AskFutures, Did, Step};
use crate::worker::messages::Ask;
use std::sync::Arc;

/// Years simulated in one errand: so few that a newer answer need not wait for long.
const PIECE: u32 = 2;
/// All years there are.
pub const YEARS: u32 = HOUSEHOLDS;

/// What somebody is at: the first year of a piece, or something else.
type Doing = Option<u32>;

/// What follows the futures of all years, in this order, with how far it is.
#[derive(Clone, Copy)]
enum Then {
    /// What would change the advice.
    Weigh(u32),
    /// What would change it in other houses.
    LookElsewhere(u32),
    /// The map.
    Map,
}

/// A job's steps and how far they are.
pub struct Steps {
    /// The job.
    pub job: JobId,
    /// Its answers.
    pub ask: Ask,
    /// Their advice.
    of: Shared,
    /// What was seen of the same job before.
    before: Option<Arc<Futures>>,
    /// The first year not given out yet.
    next: u32,
    /// Pieces that came back undone.
    again: Vec<u32>,
    /// Errands under way with other workers.
    away: Vec<(Vec<u8>, u32)>,
    /// The errand that the page's own worker is at.
    own: Option<(Vec<u8>, Doing)>,
    there: [bool; YEARS as usize],
    /// Years that others simulated and the page's own worker has not been brought yet.
    brought: Vec<Vec<u8>>,
    /// The next stage to tell, and how many of its futures are drawn.
    stage: usize,
    drawn: u32,
    /// What follows the last stage.
    then: Then,
    /// Nothing more follows.
    pub whole: bool,
}

impl Steps {
    /// Of a job with its answers and their advice; nothing done yet.
    pub fn of(job: JobId, ask: Ask, of: Shared, before: Option<Arc<Futures>>) -> Steps {
        Steps {
            job,
            ask,
            of,
            before,
            next: 0,
            again: Vec::new(),
            away: Vec::new(),
            own: None,
            there: [false; YEARS as usize],
            brought: Vec::new(),
            stage: 0,
            drawn: 0,
            then: Then::Weigh(0),
            whole: false,
        }
    }

    /// Takes a newer outcome of the same answers; whether they are the same.
    pub fn advised_anew(&mut self, job: JobId, ask: &Ask, of: &Shared) -> bool {
        let same = self.job == job && self.ask == *ask;
        if same {
            self.of = of.clone();
        }
        same
    }

    /// Years simulated.
    pub fn done(&self) -> u32 {
        self.there.iter().filter(|there| **there).count() as u32
    }

    fn piece(&mut self) -> Option<u32> {
        self.again.pop().or_else(|| {
            let from = self.next;
            self.next += PIECE;
            (from < YEARS).then_some(from)
        })
    }

    fn came(&mut self, from: u32) {
        let to = from + PIECE;
        self.there.iter_mut().take(to as usize).skip(from as usize).for_each(|there| *there = true);
    }

    fn errand(&self, step: Step) -> Vec<u8> {
        errands::to_foretell(AskFutures { ask: self.ask.clone(), wishes: Wishes::default(), step })
    }

    /// The next errand for the page's own worker, where it is free and there is one.
    pub fn for_own(&mut self) -> Option<Vec<u8>> {
        if self.own.is_some() || self.whole {
            return None;
        }
        let (step, doing) = match STAGES.get(self.stage) {
            Some(stage) if self.there.iter().take(stage.households as usize).all(|there| *there) => {
                let brought = std::mem::take(&mut self.brought);
                (Step::Tell { stage: self.stage as u32, from: self.drawn, brought }, None)
            }
            Some(_) => {
                let from = self.piece()?;
                (Step::Keep(from, from + PIECE), Some(from))
            }
            None => {
                let step = match self.then {
                    Then::Weigh(from) => Step::Weigh { from },
                    Then::LookElsewhere(from) => Step::LookElsewhere { from },
                    Then::Map => Step::Map,
                };
                (step, None)
            }
        };
        let errand = self.errand(step);
        self.own = Some((errand.clone(), doing));
        Some(errand)
    }

    /// The next errand for another worker that is free.
    pub fn for_other(&mut self) -> Option<Vec<u8>> {
        let from = self.piece()?;
        let errand = self.errand(Step::Years(from, from + PIECE));
        self.away.push((errand.clone(), from));
        Some(errand)
    }

    /// Takes what another worker did; `None` for what it could not.
    pub fn other_did(&mut self, errand: &[u8], years: Option<Vec<u8>>) {
        let Some(at) = self.away.iter().position(|(away, _)| away == errand) else { return };
        let (_, from) = self.away.swap_remove(at);
        match years.filter(|years| !years.is_empty()) {
            Some(years) => {
                self.brought.push(years);
                self.came(from);
            }
            // The page's own worker may be able to.
            None => self.again.push(from),
        }
    }

    /// The page's own worker could not do its errand: it waits to be given out once more.
    pub fn own_failed(&mut self, errand: &[u8]) {
        if self.own.as_ref().is_some_and(|(own, _)| own == errand) {
            self.again.extend(self.own.take().and_then(|(_, doing)| doing));
        }
    }

    /// Takes what the page's own worker did. What there is to see now, where that is something new; `last` is what was
    /// seen before it.
    pub fn own_did(&mut self, errand: &[u8], did: Option<Did>, last: Option<View>) -> Option<View> {
        // Of older answers: of no interest.
        let (_, doing) = self.own.take_if(|(own, _)| own == errand)?;
        match did {
            Some(Did::Kept) => {
                self.came(doing?);
                None
            }
            Some(Did::Drawn(count)) => {
                self.drawn = count;
                None
            }
            Some(Did::Told(futures)) => {
                (self.stage, self.drawn) = (self.stage + 1, 0);
                let futures = Arc::new(*futures);
                // What would change older answers stays until that of these is found: nothing jumps.
                let (changes, map) = last.map_or((None, None), |last| (last.changes, last.map));
                Some(View { of: self.of.clone(), futures, changes, map, before: self.before.clone() })
            }
            Some(Did::Weighing(done)) => {
                self.then = Then::Weigh(done);
                None
            }
            Some(Did::Weighed(changes)) => {
                self.then = Then::LookElsewhere(0);
                // A list that stands already is replaced once, by a whole one.
                let last = last.filter(|last| last.changes.is_none() || changes.is_none())?;
                Some(View { changes: changes.map(Arc::new), ..last })
            }
            Some(Did::Looked(done)) => {
                self.then = Then::LookElsewhere(done);
                None
            }
            Some(Did::LookedElsewhere(changes)) => {
                self.then = Then::Map;
                Some(View { changes: changes.map(Arc::new), ..last? })
            }
            Some(Did::Mapped(map)) => {
                self.whole = true;
                Some(View { map: map.map(Arc::new), ..last? })
            }
            Some(Did::Years(_)) | None => {
                self.whole = true;
                None
            }
        }
    }
}
