//! Futures as errands: some years of the design, or the futures told from years that were simulated.
//!
//! Years come in pieces, shared out among workers ([`super::pool`]) or done one after another by the page's own; each piece
//! is the same whoever does it. An errand repeats the answers, so that no worker has to remember any.

use super::messages::Ask;
use crate::core::futures::study::STAGES;
use crate::core::futures::{BreakEvenMap, Changes, DesignYears, Futures, Study, Wishes};
use crate::core::pipeline::{Cache, Run};
use crate::job::open::Open;
use serde::{Deserialize, Serialize};

/// Design points simulated in one errand: some ten milliseconds each, so that a newer question need not wait for long.
pub const PIECE: u32 = 4;
/// Steps of a map on either axis.
const MAP_STEPS: usize = 21;

/// Years of the design wanted, from one index to before another.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AskYears {
    /// The answers and the offer.
    pub ask: Ask,
    /// What futures they are for.
    pub wishes: Wishes,
    /// The first index.
    pub from: u32,
    /// The one after the last.
    pub to: u32,
}

/// Futures wanted, from years simulated.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AskFutures {
    /// The answers and the offer.
    pub ask: Ask,
    /// How many.
    pub wishes: Wishes,
    /// The years, in any order.
    pub years: Vec<DesignYears>,
    /// Codes of two numbers to draw a map of.
    pub map: Option<(String, String)>,
}

/// What came of them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Foretold {
    /// The futures.
    pub futures: Futures,
    /// What would change the advice; only with the last stage's years, and where something else fits.
    pub changes: Option<Changes>,
    /// The map asked for.
    pub map: Option<BreakEvenMap>,
}

/// Simulates years.
pub(super) fn years(ask: &AskYears, cache: &mut Cache) -> Vec<DesignYears> {
    let open = Open::of(&ask.ask.answers(), &ask.ask.offer());
    let study = Study::new(&open, ask.wishes);
    let last = STAGES[STAGES.len() - 1];
    let to = if ask.to < last { ask.to } else { last };
    (ask.from..to).map(|index| study.design(index, cache)).collect()
}

/// Tells the futures; `None` where there are no years to learn from. The advice itself comes out of the advisor's cache.
pub(super) fn foretold(mut ask: AskFutures, cache: &mut Cache) -> Option<Foretold> {
    let open = Open::of(&ask.ask.answers(), &ask.ask.offer());
    let study = Study::new(&open, ask.wishes);
    let mut run = Run::new(study.base().clone(), cache);
    while run.step(cache) {}
    let outcome = run.finish();
    ask.years.sort_unstable_by_key(|y| y.index);
    ask.years.dedup_by_key(|y| y.index);
    let settled = ask.years.len() >= STAGES[STAGES.len() - 1] as usize;
    let fitted = study.fit(&ask.years, &outcome)?;
    let drawn = study.draw(&fitted, &outcome, 0, study.wishes().futures);
    let changes = if settled { study.changes(&fitted, &outcome) } else { None };
    let map = ask.map.and_then(|(x, y)| study.map(&fitted, &outcome, (&x, &y), MAP_STEPS));
    Some(Foretold { futures: study.summary(&fitted, &outcome, &drawn, settled), changes, map })
}
