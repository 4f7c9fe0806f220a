//! Futures as errands: some years of the design, some futures told from them, what would change the advice.
//!
//! The page shares the steps out (`src/ui/sure/drawing.rs`). Years are simulated by whichever worker is free; the page's
//! own one keeps its part, is brought what the others simulated, and tells the futures of a stage from all of them. Each step
//! is short, so that a newer answer need not wait for long. An errand repeats the answers: a worker remembers one job, and
//! does anew whatever it has lost, so that what comes out depends on nothing but answers and seed.

use super::messages::Ask;
use crate::core::futures::demand::Luck;
use crate::core::futures::study::STAGES;
use crate::core::futures::summary::Cell;
use crate::core::futures::{BreakEvenMap, Changes, DesignYears, Fitted, Futures, Study, Wishes};
use crate::core::outcome::Outcome;
use crate::core::pipeline::{Cache, Run};
use crate::core::units::Unit;
use crate::job::complete::complete_with;
use crate::job::open::Open;
use serde::{Deserialize, Serialize};

/// Futures drawn in one errand.
const DRAWN_AT_ONCE: u32 = 200;
/// Of all the futures wanted, a stage draws one in so many: the first bands are soon there, the last are all of them.
const ONE_IN: [u32; STAGES.len()] = [5, 4, 2, 1];
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
        /// How many are drawn already: tells one errand from the next.
        from: u32,
        /// Years that other workers simulated, as they gave them back.
        brought: Vec<Vec<u8>>,
    },
    /// Find what would change the advice, from all years.
    Weigh,
    /// Find who is cheapest over the two numbers that matter most, from all years.
    Map,
}

/// What came of a step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Did {
    /// These years.
    Years(Vec<DesignYears>),
    /// Years are kept.
    Kept,
    /// So many futures of the stage are drawn.
    Drawn(u32),
    /// All futures of the stage are drawn.
    Told(Box<Futures>),
    /// What would change the advice; `None` where nothing else fits.
    Weighed(Option<Changes>),
    /// The map; `None` where fewer than two numbers matter.
    Mapped(Option<BreakEvenMap>),
}

/// The bench for this work: remembers the job worked on last.
#[derive(Default)]
pub(super) struct Bench {
    luck: Option<(u64, Luck)>,
    at: Option<Work>,
}

/// A job under way.
struct Work {
    ask: Ask,
    wishes: Wishes,
    open: Open,
    luck: Luck,
    outcome: Option<Outcome>,
    /// In the order of their index.
    years: Vec<DesignYears>,
    /// What the years of a stage taught.
    fitted: Option<(usize, Fitted)>,
    drawn: Vec<Vec<Cell>>,
    changes: Option<Changes>,
}

impl Bench {
    /// Does a step; `None` where it cannot be done at all.
    pub fn run(&mut self, ask: AskFutures, cache: &mut Cache) -> Option<Did> {
        let AskFutures { ask, wishes, step } = ask;
        let work = match self.at.take() {
            Some(work) if work.ask == ask && work.wishes == wishes => work,
            _ => self.begin(ask, wishes),
        };
        self.at.insert(work).step(step, cache)
    }

    fn begin(&mut self, ask: Ask, wishes: Wishes) -> Work {
        let (answers, offer) = (ask.answers(), ask.offer());
        let open = Open::of(&answers, &offer);
        let seed = complete_with(&answers, &offer).seed;
        let luck = match self.luck.take() {
            Some((of, luck)) if of == seed => luck,
            _ => Luck::of(seed),
        };
        self.luck = Some((seed, luck.clone()));
        let (years, drawn) = (Vec::new(), Vec::new());
        Work { ask, wishes, open, luck, outcome: None, years, fitted: None, drawn, changes: None }
    }
}

impl Work {
    fn step(&mut self, step: Step, cache: &mut Cache) -> Option<Did> {
        match step {
            Step::Years(from, to) => Some(Did::Years(self.simulated(from, to, cache))),
            Step::Keep(from, to) => {
                let years = self.simulated(from, to, cache);
                self.keep(years);
                Some(Did::Kept)
            }
            Step::Tell { stage, brought, .. } => {
                for years in brought {
                    if let Ok(Did::Years(years)) = postcard::from_bytes(&years) {
                        self.keep(years);
                    }
                }
                self.tell(stage as usize, cache)
            }
            Step::Weigh => {
                self.learn(STAGES.len() - 1, cache)?;
                let (study, outcome, fitted) = self.learned()?;
                let changes = study.changes(fitted, outcome);
                self.changes.clone_from(&changes);
                Some(Did::Weighed(changes))
            }
            Step::Map => {
                self.learn(STAGES.len() - 1, cache)?;
                Some(Did::Mapped(self.map()))
            }
        }
    }

    fn simulated(&self, from: u32, to: u32, cache: &mut Cache) -> Vec<DesignYears> {
        let study = Study::with_luck(&self.open, self.wishes, self.luck.clone());
        let last = STAGES[STAGES.len() - 1];
        let to = if to < last { to } else { last };
        (from..to).map(|index| study.design(index, cache)).collect()
    }

    fn keep(&mut self, years: Vec<DesignYears>) {
        self.years.extend(years);
        self.years.sort_unstable_by_key(|y| y.index);
        self.years.dedup_by_key(|y| y.index);
    }

    /// Learns from the years of a stage, unless that is done.
    fn learn(&mut self, stage: usize, cache: &mut Cache) -> Option<()> {
        if self.fitted.as_ref().is_some_and(|(of, _)| *of == stage) {
            return Some(());
        }
        let count = *STAGES.get(stage)?;
        // Nothing is missing unless a worker was lost with what it kept.
        let missing = |index: &u32| self.years.binary_search_by_key(index, |y| y.index).is_err();
        let missing: Vec<u32> = (0..count).filter(missing).collect();
        for index in missing {
            let years = self.simulated(index, index + 1, cache);
            self.keep(years);
        }
        if self.outcome.is_none() {
            // The years are simulated already: whoever asks has seen their advice.
            let mut run = Run::new(complete_with(&self.ask.answers(), &self.ask.offer()), cache);
            while run.step(cache) {}
            self.outcome = Some(run.finish());
        }
        let study = Study::with_luck(&self.open, self.wishes, self.luck.clone());
        let fitted = study.fit(self.years.get(..count as usize)?, self.outcome.as_ref()?)?;
        self.fitted = Some((stage, fitted));
        self.drawn.clear();
        Some(())
    }

    fn learned(&self) -> Option<(Study<'_>, &Outcome, &Fitted)> {
        let study = Study::with_luck(&self.open, self.wishes, self.luck.clone());
        Some((study, self.outcome.as_ref()?, &self.fitted.as_ref()?.1))
    }

    fn tell(&mut self, stage: usize, cache: &mut Cache) -> Option<Did> {
        self.learn(stage, cache)?;
        let (study, outcome, fitted) = self.learned()?;
        let wanted = study.wishes().futures.div_ceil(*ONE_IN.get(stage)?);
        let from = self.drawn.len() as u32;
        let to = if from + DRAWN_AT_ONCE < wanted { from + DRAWN_AT_ONCE } else { wanted };
        let more = study.draw(fitted, outcome, from, to);
        self.drawn.extend(more);
        if to < wanted {
            return Some(Did::Drawn(to));
        }
        let (study, outcome, fitted) = self.learned()?;
        let settled = stage + 1 == STAGES.len();
        Some(Did::Told(Box::new(study.summary(fitted, outcome, &self.drawn, settled))))
    }

    fn map(&self) -> Option<BreakEvenMap> {
        let (study, outcome, fitted) = self.learned()?;
        let changes = self.changes.clone().or_else(|| study.changes(fitted, outcome))?;
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
