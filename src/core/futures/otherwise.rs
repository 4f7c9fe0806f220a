//! What the advice would be in another house: with another kind of heater, in another room, in another place, where nobody
//! has said which.
//!
//! These questions move everything at once, candidates and defaults too, so they are never drawn and no response knows of
//! them. Each plausible option is tried by really simulating it: a first look ([`Run::look_anew`]) at the house as it would be
//! had somebody answered so, and the advice's own rules. It is set against a first look at the house as it stands, so that the
//! sample's error mostly drops out; the advice by whole years stays the reference, and where the first look at the house as it
//! stands does not come to the same, nothing is said.
//!
//! **What is the same advice.** Another house has other candidates, so advice is compared by the part that its heater plays
//! ([`Part`]): keeping what there is; buying again what there is, whatever that burns; changing to a heat pump, or to another
//! kind. A new gas tank where there is gas goes on as before, just like a new electric tank where there are elements: the same
//! advice. So is another size of one kind: what is nearest to a tie, and what a first look tells least surely.

use super::study::Study;
use super::types::{Changes, Sensitivity};
use crate::core::candidates::{CandidateId, offered};
use crate::core::case::{Case, HeaterKind};
use crate::core::outcome::Outcome;
use crate::core::pipeline::{Cache, Run};
use serde::{Deserialize, Serialize};

/// What the advised heater is to its house.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) enum Part {
    /// The present one stays until it fails.
    Keeps,
    /// A new one is bought.
    Buys {
        /// What it heats with.
        kind: HeaterKind,
        /// The present one heats with the same.
        again: bool,
    },
}

impl Part {
    /// Of a candidate; `None` where it is none of the outcome's.
    pub(super) fn of(outcome: &Outcome, id: CandidateId) -> Option<Part> {
        let of = outcome.of(id)?;
        if id == CandidateId::Keep {
            return Some(Part::Keeps);
        }
        let kind = of.candidate.label.kind;
        let present = outcome.of(CandidateId::Keep)?.candidate.label.kind;
        Some(Part::Buys { kind, again: kind == present })
    }

    /// Whether two candidates of an outcome come to the same advice.
    pub(super) fn are_alike(outcome: &Outcome, one: CandidateId, other: CandidateId) -> bool {
        Part::of(outcome, one).zip(Part::of(outcome, other)).is_some_and(|(one, other)| one.is_like(other))
    }

    /// Whether both come to the same advice: a heat pump after a heat pump is both going on as before and a heat pump.
    fn is_like(self, other: Part) -> bool {
        match (self, other) {
            (Part::Keeps, Part::Keeps) => true,
            (Part::Buys { kind, again }, Part::Buys { kind: other, again: there }) => {
                kind == other || again && there
            }
            _ => false,
        }
    }
}

/// The advice on one house by a first look.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FirstLook {
    /// Which house: see [`Study::first_look`].
    pub index: u32,
    /// Who is advised, and what that is.
    best: CandidateId,
    part: Part,
    /// Which candidate is the same again there.
    same: CandidateId,
    /// Net present cost of each candidate, dollars.
    costs: Vec<(CandidateId, f64)>,
}

impl FirstLook {
    fn of(index: u32, case: Case, cache: &mut Cache) -> Option<FirstLook> {
        let same = offered::same_again(&case);
        let mut run = Run::new(case, cache);
        // Not what is known of whole years: all houses are seen alike.
        while run.look_anew(cache) {}
        let outcome = run.first()?;
        let costs = outcome.candidates.iter().map(|c| (c.candidate.id, c.cost.net_present_cost)).collect();
        Some(FirstLook {
            index,
            best: outcome.advice.best,
            part: Part::of(&outcome, outcome.advice.best)?,
            same,
            costs,
        })
    }

    /// What the second of a pair of candidates costs more than the first; `None` where one is missing, or both are the same.
    fn difference(&self, (a, b): (CandidateId, CandidateId)) -> Option<f64> {
        let cost = |of: CandidateId| self.costs.iter().find(|(id, _)| *id == of).map(|(_, cost)| *cost);
        if a == b { None } else { Some(cost(b)? - cost(a)?) }
    }
}

impl Study<'_> {
    /// How many houses there are to look at: the one that stands, and one for each option of each open question that makes
    /// another; 0 where none is open.
    pub fn houses(&self) -> u32 {
        let options: usize = self.unknowns.held().iter().map(|held| held.options.len()).sum();
        if options == 0 { 0 } else { 1 + options as u32 }
    }

    /// Takes a first look at a house: 0 is the one that stands, then come the options in order. `None` where there is no such
    /// house.
    pub fn first_look(&self, index: u32, cache: &mut Cache) -> Option<FirstLook> {
        let case = match index.checked_sub(1) {
            None => self.base.clone(),
            Some(at) => {
                let held = self.unknowns.held().iter().enumerate();
                let mut options = held.flat_map(|(q, held)| (0..held.options.len()).map(move |o| (q, o)));
                let (question, option) = options.nth(at as usize)?;
                self.unknowns.otherwise(question, option)?
            }
        };
        FirstLook::of(index, case, cache)
    }

    /// Whether a first look at the house that stands comes to the advice on it: only then do others tell anything.
    pub fn agrees(&self, look: &FirstLook, outcome: &Outcome) -> bool {
        look.index == 0 && Part::of(outcome, outcome.advice.best).is_some_and(|part| part.is_like(look.part))
    }

    /// Puts the questions whose options turn the advice first: whatever else is found rests on what they stand at. `looks` are
    /// those at all houses, in any order; without the one at the house that stands nothing is added.
    pub fn with_other_houses(&self, changes: Changes, outcome: &Outcome, looks: &[FirstLook]) -> Changes {
        let Changes { advised, next, mut sensitivities } = changes;
        let here = looks.iter().find(|look| self.agrees(look, outcome));
        if let (Some(here), Some(part)) = (here, Part::of(outcome, outcome.advice.best)) {
            let cost = |id| outcome.of(id).map_or(0.0, |c| c.cost.net_present_cost);
            let whole = cost(next) - cost(advised);
            let mut first = 1;
            let mut found = Vec::new();
            for held in self.unknowns.held() {
                let options = (first..).zip(&held.options);
                first += held.options.len() as u32;
                let mut flip = None;
                let mut difference = (whole, whole);
                for (index, option) in options {
                    let Some(there) = looks.iter().find(|look| look.index == index) else { continue };
                    let again = |id| if id == here.same { there.same } else { id };
                    let pair = there.difference((again(advised), again(next)));
                    if let Some((there, seen)) = pair.zip(here.difference((advised, next))) {
                        let moved = whole + (there - seen);
                        let (low, high) = difference;
                        difference =
                            (if moved < low { moved } else { low }, if moved > high { moved } else { high });
                    }
                    if flip.is_none() && !part.is_like(there.part) {
                        flip = Some((there.best, option.clone()));
                    }
                }
                found.extend(flip.map(|(heater, option)| Sensitivity {
                    open: true,
                    difference,
                    flips_to: Some(heater),
                    alternative: Some(option),
                    ..Sensitivity::unknowable(held.code.clone())
                }));
            }
            sensitivities.splice(0..0, found);
        }
        Changes { advised, next, sensitivities }
    }
}
