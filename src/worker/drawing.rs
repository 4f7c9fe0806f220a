//! The futures of a job as errands: a few simulated years at a time, so that an advice that is asked for meanwhile does
//! not wait, and whoever looks sees them refine. What comes out does not depend on how the years are cut up.

use super::messages::Ask;
use crate::core::futures::study::STAGES;
use crate::core::futures::{BreakEvenMap, Changes, DesignYears, Futures, Study, Wishes};
use crate::core::outcome::Outcome;
use crate::core::pipeline::{Cache, Run};
use crate::core::units::Unit;
use crate::job::complete::complete_with;
use crate::job::open::Open;
use serde::{Deserialize, Serialize};

/// Design points simulated in one errand: about a tenth of a second.
pub const TOGETHER: u32 = 4;
/// Points of the map along each side.
const MAP: usize = 12;

/// What an errand has come to.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Step {
    /// Design points simulated so far.
    pub done: u32,
    /// How many there will be.
    pub of: u32,
    /// What they come to, where a stage is complete.
    pub seen: Option<Seen>,
}

/// Futures and what they say.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Seen {
    /// The futures.
    pub futures: Futures,
    /// What would change the advice: from the second stage on, where something else fits.
    pub changes: Option<Changes>,
    /// Who is cheapest over the two numbers that matter most: with the last stage.
    pub map: Option<BreakEvenMap>,
}

/// A drawing under way.
pub struct Drawing {
    ask: Ask,
    open: Open,
    outcome: Outcome,
    designs: Vec<DesignYears>,
}

/// Goes on with the drawing of a job by some design points; begins it where another one was under way.
pub fn go_on(desk: &mut Option<Drawing>, ask: Ask, cache: &mut Cache) -> Step {
    let mut drawing = match desk.take() {
        Some(drawing) if drawing.ask == ask => drawing,
        _ => {
            let (answers, offer) = (ask.answers(), ask.offer());
            let mut run = Run::new(complete_with(&answers, &offer), cache);
            while run.step(cache) {}
            Drawing { open: Open::of(&answers, &offer), outcome: run.finish(), designs: Vec::new(), ask }
        }
    };
    let last = STAGES[STAGES.len() - 1];
    let study = Study::new(&drawing.open, Wishes::default());
    let from = drawing.designs.len() as u32;
    let to = if from + TOGETHER < last { from + TOGETHER } else { last };
    drawing.designs.extend((from..to).map(|index| study.design(index, cache)));
    let seen = STAGES
        .iter()
        .position(|stage| *stage == to)
        .and_then(|stage| see(&study, &drawing, stage > 0, to == last));
    *desk = Some(drawing);
    Step { done: to, of: last, seen }
}

fn see(study: &Study, drawing: &Drawing, deeper: bool, settled: bool) -> Option<Seen> {
    let outcome = &drawing.outcome;
    let fitted = study.fit(&drawing.designs, outcome)?;
    let drawn = study.draw(&fitted, outcome, 0, study.wishes().futures);
    let futures = study.summary(&fitted, outcome, &drawn, settled);
    let changes = if deeper { study.changes(&fitted, outcome) } else { None };
    // The two numbers that the choice hangs on most.
    let numbers: Vec<&str> = changes
        .iter()
        .flat_map(|c| &c.sensitivities)
        // People come whole: a map of them is a few stripes.
        .filter(|s| s.range.is_some_and(|(low, _)| low.unit != Unit::One))
        .map(|s| s.code.as_ref())
        .collect();
    let map = match numbers.as_slice() {
        [x, y, ..] if settled => study.map(&fitted, outcome, (x, y), MAP),
        _ => None,
    };
    Some(Seen { futures, changes, map })
}
