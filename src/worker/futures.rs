//! Futures as errands: some pieces simulated, some futures told from them, some of what would change the advice, a look at
//! another house.
//!
//! The page shares the steps out (`src/ui/sure/drawing.rs`). Years are simulated by whichever worker is free; the page's
//! own one keeps its part, is brought what the others simulated, and tells the futures of a stage from all of them. Each step
//! is short, so that a newer answer need not wait for long. An errand repeats the answers: a worker remembers one job, and
//! does anew whatever it has lost, so that what comes out depends on nothing but answers and seed.

use super::messages::Ask;
use crate::core::futures::estimate::Heaters;
use crate::core::futures::stages::{HOUSEHOLDS, LAST, STAGES};
use crate::core::futures::summary::Cell;
use crate::core::futures::unknowns::Unknowns;
use crate::core::futures::{
    BreakEvenMap, Changes, FirstLook, Fitted, Futures, Lives, Study, Weighing, Wishes,
};
use crate::core::outcome::Outcome;
use crate::core::pipeline::{Cache, Run};
use crate::core::units::Unit;
use crate::job::complete::complete_with;
use crate::job::open::Open;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Futures drawn in one errand.
const DRAWN_AT_ONCE: u32 = 200;
/// Steps of [`Weighing`] taken in one errand: each tells some dozens of positions.
const WEIGHED_AT_ONCE: u32 = 4;
/// Points of a map along each side.
const MAP: usize = 25;

/// A step on the way to the futures of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AskFutures {
    /// The answers and the offer.
    pub ask: Ask,
    /// How many futures, from which seed.
    pub wishes: Wishes,
    /// Which step.
    pub step: Step,
}

/// The steps. Years are those from one index to before another.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Step {
    /// Simulate years and give them back.
    Years(u32, u32),
    /// Simulate years and keep them.
    Keep(u32, u32),
    /// Draw some more futures of a stage.
    Tell {
        /// Position in [`STAGES`].
        stage: u32,
        /// How many are drawn already.
        from: u32,
        /// Years that other workers simulated, as they gave them back.
        brought: Vec<Vec<u8>>,
    },
    /// Find some more of what would change the advice, from all years.
    Weigh {
        /// How much is found already.
        from: u32,
    },
    /// Take a first look at another house, where nobody has said which it is.
    LookElsewhere {
        /// How many were looked at already.
        from: u32,
    },
    /// Find who is cheapest over the two numbers that matter most, from all years.
    Map,
}

/// What came of a step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Did {
    /// These years.
    Years(Vec<(u32, Lives)>),
    /// Years are kept.
    Kept,
    /// So many futures of the stage are drawn.
    Drawn(u32),
    /// All futures of the stage are drawn.
    Told(Box<Futures>),
    /// So much is found of what would change the advice.
    Weighing(u32),
    /// What would change the advice, in this house; `None` where nothing else fits.
    Weighed(Option<Changes>),
    /// So many houses were looked at.
    Looked(u32),
    /// The same with what would change it in other houses; `None` where nothing else fits.
    LookedElsewhere(Option<Changes>),
    /// The map; `None` where fewer than two numbers matter.
    Mapped(Option<BreakEvenMap>),
}

/// The bench for this work: remembers the job worked on last.
#[derive(Default)]
pub(super) struct Bench {
    heaters: Option<Arc<Heaters>>,
    at: Option<Work>,
}

/// A job under way.
struct Work {
    ask: Ask,
    wishes: Wishes,
    open: Open,
    heaters: Arc<Heaters>,
    outcome: Option<Outcome>,
    /// The household of the case as it stands.
    here: Option<Lives>,
    /// In the order of their index.
    years: Vec<(u32, Lives)>,
    /// What the years of a stage taught.
    fitted: Option<(usize, Fitted)>,
    drawn: Vec<Vec<Cell>>,
    weighing: Option<Weighing>,
    changes: Option<Changes>,
    looks: Vec<FirstLook>,
}

impl Bench {
    /// Does a step; `None` where it cannot be done at all.
    pub fn run(&mut self, ask: AskFutures, cache: &mut Cache) -> Option<Did> {
        let AskFutures { ask, wishes, step } = ask;
        let work = match self.at.take() {
            Some(work) if work.ask == ask && work.wishes == wishes => work,
            _ => self.begin(ask, wishes, cache),
        };
        self.at.insert(work).step(step, cache)
    }

    fn begin(&mut self, ask: Ask, wishes: Wishes, cache: &mut Cache) -> Work {
        let (answers, offer) = (ask.answers(), ask.offer());
        let open = Open::of(&answers, &offer);
        let case = open.case(&[]);
        let heaters = match self.heaters.take() {
            Some(heaters) if heaters.are_of(&case) => heaters,
            _ => Arc::new(Heaters::of(&case, cache)),
        };
        self.heaters = Some(Arc::clone(&heaters));
        Work {
            ask,
            wishes,
            open,
            heaters,
            outcome: None,
            here: None,
            years: Vec::new(),
            fitted: None,
            drawn: Vec::new(),
            weighing: None,
            changes: None,
            looks: Vec::new(),
        }
    }
}

impl Work {
    fn step(&mut self, step: Step, cache: &mut Cache) -> Option<Did> {
        match step {
            Step::Years(from, to) => Some(Did::Years(self.simulated(from, to))),
            Step::Keep(from, to) => {
                let years = self.simulated(from, to);
                self.keep(years);
                Some(Did::Kept)
            }
            Step::Tell { stage, from, brought } => {
                for years in brought {
                    if let Ok(Did::Years(years)) = postcard::from_bytes(&years) {
                        self.keep(years);
                    }
                }
                self.tell(stage as usize, from, cache)
            }
            Step::Weigh { from } => {
                self.learn(LAST, cache)?;
                self.weigh(from)
            }
            Step::LookElsewhere { from } => {
                self.learn(LAST, cache)?;
                self.look_elsewhere(from, cache)
            }
            Step::Map => {
                self.learn(LAST, cache)?;
                Some(Did::Mapped(self.map()))
            }
        }
    }

    fn simulated(&self, from: u32, to: u32) -> Vec<(u32, Lives)> {
        let study = Study::with_heaters(&self.open, self.wishes, Arc::clone(&self.heaters));
        let to = if to < HOUSEHOLDS { to } else { HOUSEHOLDS };
        (from..to).map(|number| (number, study.lives(number))).collect()
    }

    fn keep(&mut self, years: Vec<(u32, Lives)>) {
        self.years.extend(years);
        self.years.sort_unstable_by_key(|(number, _)| *number);
        self.years.dedup_by_key(|(number, _)| *number);
    }

    /// Learns from the years of a stage, unless that is done.
    fn learn(&mut self, stage: usize, cache: &mut Cache) -> Option<()> {
        if self.fitted.as_ref().is_some_and(|(of, _)| *of == stage) {
            return Some(());
        }
        let count = STAGES.get(stage)?.households;
        // Nothing is missing unless a worker was lost with what it kept.
        let missing = |index: &u32| self.years.binary_search_by_key(index, |(number, _)| *number).is_err();
        let missing: Vec<u32> = (0..count).filter(missing).collect();
        for index in missing {
            let years = self.simulated(index, index + 1);
            self.keep(years);
        }
        if self.outcome.is_none() {
            // The years are simulated already: whoever asks has seen their advice.
            let mut run = Run::new(complete_with(&self.ask.answers(), &self.ask.offer()), cache);
            while run.step(cache) {}
            self.outcome = Some(run.finish());
        }
        let study = Study::with_heaters(&self.open, self.wishes, Arc::clone(&self.heaters));
        let here = &*self.here.get_or_insert_with(|| study.as_it_stands());
        let fitted = study.fit(
            here,
            self.years.get(..count as usize)?.iter().map(|(_, lives)| lives),
            self.outcome.as_ref()?,
        )?;
        self.fitted = Some((stage, fitted));
        self.drawn.clear();
        self.weighing = None;
        Some(())
    }

    fn learned(&self) -> Option<(Study<'_>, &Outcome, &Fitted)> {
        let study = Study::with_heaters(&self.open, self.wishes, Arc::clone(&self.heaters));
        Some((study, self.outcome.as_ref()?, &self.fitted.as_ref()?.1))
    }

    fn tell(&mut self, stage: usize, from: u32, cache: &mut Cache) -> Option<Did> {
        self.learn(stage, cache)?;
        let (study, outcome, fitted) = self.learned()?;
        let wanted = study.wishes().futures.div_ceil(STAGES.get(stage)?.one_in);
        let (from, to) = piece(self.drawn.len() as u32, from, DRAWN_AT_ONCE, wanted);
        let more = study.draw(fitted, outcome, from, to);
        self.drawn.extend(more);
        if to < wanted {
            return Some(Did::Drawn(to));
        }
        let (study, outcome, fitted) = self.learned()?;
        let settled = stage == LAST;
        Some(Did::Told(Box::new(study.summary(fitted, outcome, &self.drawn, settled))))
    }

    /// Weighs on, and says how far that is; what came of it once all is weighed.
    fn weigh(&mut self, from: u32) -> Option<Did> {
        let known = self.weighing.take();
        let (study, outcome, fitted) = self.learned()?;
        let Some(mut found) = known.or_else(|| study.weighing(outcome)) else {
            return Some(Did::Weighed(None));
        };
        let (_, to) = piece(found.done(), from, WEIGHED_AT_ONCE, found.steps());
        while found.done() < to && study.weigh(&mut found, fitted, outcome) {}
        if to < found.steps() {
            self.weighing = Some(found);
            return Some(Did::Weighing(to));
        }
        let changes = found.changes();
        self.changes = Some(changes.clone());
        Some(Did::Weighed(Some(changes)))
    }

    /// What would change the advice, in this house: known, or found once more where it was lost.
    fn changes(&self) -> Option<Changes> {
        let (study, outcome, fitted) = self.learned()?;
        self.changes.clone().or_else(|| study.changes(fitted, outcome))
    }

    /// Looks at the next house, and says how many that makes; what comes of them once there are no more, or where the first
    /// shows that they would tell nothing.
    fn look_elsewhere(&mut self, from: u32, cache: &mut Cache) -> Option<Did> {
        let Some(changes) = self.changes() else { return Some(Did::LookedElsewhere(None)) };
        let (study, outcome, _) = self.learned()?;
        let (there, to) = piece(self.looks.len() as u32, from, 1, study.houses());
        let more: Vec<FirstLook> = (there..to).map_while(|index| study.first_look(index, cache)).collect();
        let first = self.looks.first().or(more.first());
        let whole = to == study.houses() || !first.is_some_and(|look| study.agrees(look, outcome));
        self.looks.extend(more);
        if !whole {
            return Some(Did::Looked(to));
        }
        let (study, outcome, _) = self.learned()?;
        Some(Did::LookedElsewhere(Some(study.with_other_houses(changes, outcome, &self.looks))))
    }

    fn map(&self) -> Option<BreakEvenMap> {
        let (study, outcome, fitted) = self.learned()?;
        let changes = self.changes()?;
        let numbers: Vec<&str> = changes
            .sensitivities
            .iter()
            // People come whole: a map of them is a few stripes.
            .filter(|s| s.range.is_some_and(|(low, _)| low.unit != Unit::One))
            .map(|s| s.code.as_ref())
            .collect();
        let [x, y, ..] = numbers.as_slice() else { return None };
        study.map(fitted, outcome, (x, y), MAP)
    }
}

/// From where to where to work on: by a piece from where the page has it, or from where it is here, if that is further. Less
/// is here than the page has where a worker was lost with it: then it is done at once, so that the page never waits for the
/// same twice.
fn piece(here: u32, page: u32, piece: u32, all: u32) -> (u32, u32) {
    let to = (if here > page { here } else { page }).saturating_add(piece);
    (here, if to < all { to } else { all })
}
