//! The short path: which few questions to ask a householder.
//!
//! From the question list alone: open ones that a householder can answer, those asked at once first, then by
//! how much of the advice they move and whether the offer has settled them already.

use super::answers::Answers;
use super::offer::Offer;
use super::questions::{self, Affects, Id, Question, Section, Spread, Who};

/// How many to ask.
pub const USUAL: usize = 8;

/// The questions to ask by default, most telling first picked, in the order of the list.
pub fn suggest(answers: &Answers, offer: &Offer, most: usize) -> Vec<Id> {
    let mut picked: Vec<(u32, Id)> = Vec::new();
    for q in questions::all() {
        let weight = weight(q, offer);
        if weight == 0 || answers.get(q.id).is_some() {
            continue;
        }
        // The first of equals stays first.
        picked.insert(picked.partition_point(|(before, _)| *before >= weight), (weight, q.id));
        picked.truncate(most);
    }
    questions::all().map(|q| q.id).filter(|id| picked.iter().any(|(_, p)| p == id)).collect()
}

/// How much an answer would tell; 0: do not ask.
fn weight(q: &Question, offer: &Offer) -> u32 {
    let priced = !offer.heaters.is_empty() && matches!(q.id, Id::InstalledSame | Id::InstalledHeatPump);
    if q.who != Who::Householder || q.spread == Spread::None || priced {
        return 0;
    }
    let moves: u32 = q
        .affects
        .iter()
        .map(|a| match a {
            Affects::Fit => 4,
            Affects::Energy | Affects::Comfort => 2,
            Affects::Cost | Affects::Timing => 1,
        })
        .sum();
    // Where somebody lives gives the climate and every price.
    let basis = if q.section == Section::Place { 4 } else { 0 };
    let open = u32::from(matches!(q.spread, Spread::AnyOption));
    if q.first { 10 + moves + basis + open } else { moves }
}
