//! The order of the work, proved from what steps do: a step comes after the hold points that guard what it does, after
//! whatever must be finished before its own act, and after the steps named for it.
//!
//! What lies before a step is worked out once over all kinds of steps, so that leaving one out of a job never loses an
//! order that went through it. Then the steps of the job are taken in the order wished for, each as soon as everything
//! before it has been taken (a stable topological sort).

use super::rule::{Act, Rule};
use super::step::StepKind;
use super::table::TABLE;

/// A set of kinds of steps, a bit each.
type Set = u128;

const _: () = assert!(StepKind::ALL.len() <= Set::BITS as usize, "a set has a bit for each kind");

const fn bit(kind: StepKind) -> Set {
    1 << kind as u32
}

/// What lies before each kind, near and far.
pub(super) struct Before([Set; StepKind::ALL.len()]);

impl Before {
    /// Worked out for all kinds.
    pub(super) fn new() -> Before {
        let mut before = [0; StepKind::ALL.len()];
        for (set, step) in before.iter_mut().zip(&TABLE) {
            for other in TABLE.iter().filter(|other| comes_before(other, step)) {
                *set |= bit(other.kind);
            }
        }
        // Through each kind in turn (Warshall): what lies before it lies before everything after it.
        for through in 0..before.len() {
            let (passing, beyond): (Set, Set) = (1 << through, before[through]);
            for set in before.iter_mut().filter(|set| **set & passing != 0) {
                *set |= beyond;
            }
        }
        Before(before)
    }

    /// Whether one kind comes before another wherever both are done.
    pub(super) fn is(&self, first: StepKind, then: StepKind) -> bool {
        self.0.get(then as usize).is_some_and(|set| set & bit(first) != 0)
    }

    /// Sorts kinds, each once. Every kind comes out: no kind lies before itself (a test holds that).
    pub(super) fn sort(&self, wanted: &[StepKind]) -> Vec<StepKind> {
        let mut left: Set = wanted.iter().fold(0, |set, kind| set | bit(*kind));
        let mut order = Vec::with_capacity(wanted.len());
        while let Some(next) = StepKind::ALL.iter().copied().find(|kind| {
            left & bit(*kind) != 0 && self.0.get(*kind as usize).is_some_and(|set| set & left == 0)
        }) {
            left &= !bit(next);
            order.push(next);
        }
        order
    }
}

/// Whether a step directly comes before another.
fn comes_before(first: &Rule, then: &Rule) -> bool {
    let does = |rule: &Rule, act: Act| rule.acts.contains(&act);
    first.kind != then.kind
        && (then.after.contains(&first.kind)
            || first.guards.iter().any(|act| does(then, *act))
            // Pipes are shut again before water comes, wires covered before power, fuel and flue whole before a flame.
            || (does(first, Act::Water) && does(then, Act::Fills))
            || (does(first, Act::Empties) && does(then, Act::Fills))
            || (does(first, Act::Wires) && then.kind == StepKind::PowerOn)
            || ((does(first, Act::Fuel) || does(first, Act::Flue)) && then.kind == StepKind::LightBurner))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// No kind lies before itself: every job, being some of them, has an order.
    #[test]
    fn nothing_waits_for_itself() {
        let before = Before::new();
        for kind in StepKind::ALL {
            assert!(!before.is(*kind, *kind), "{kind:?}");
        }
        assert_eq!(before.sort(StepKind::ALL).len(), StepKind::ALL.len());
    }

    /// The order wished for is one that is allowed, so that the parts of the day never fall apart.
    #[test]
    fn the_list_is_in_a_possible_order() {
        assert_eq!(Before::new().sort(StepKind::ALL), StepKind::ALL);
        assert!(TABLE.windows(2).all(|w| w[0].phase <= w[1].phase));
    }

    #[test]
    fn order_survives_what_is_left_out() {
        let before = Before::new();
        // With no filling and no leak check between them, opening pipes still comes before power.
        assert!(before.is(StepKind::CutPipes, StepKind::PowerOn));
        let some = [StepKind::PowerOn, StepKind::CutPipes, StepKind::WaterOff, StepKind::PowerOn];
        assert_eq!(before.sort(&some), [StepKind::WaterOff, StepKind::CutPipes, StepKind::PowerOn]);
    }
}
