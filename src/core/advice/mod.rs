//! Findings and figures to advice: which heater, why, what first. Ranking is here; the words' identities
//! and figures in `reasons`.
//!
//! Drop what does not fit; of the rest take those that give enough hot water (or do no worse than the
//! present heater, where nobody runs out now); rank by net present cost, but a busiest morning that stays
//! warm is worth a little. Keeping the present heater wins
//! when the best alternative is not clearly cheaper: doing nothing disrupts nobody.

mod reasons;
mod settle;

use super::candidates::CandidateId;
use super::case::{Case, YesNo};
use super::outcome::{Advice, CandidateOutcome, Fit, RunnerUp};
use super::units::seconds;
use uom::si::f64::Time;

/// An alternative must be cheaper than keeping by this much over the horizon, dollars, and by this share.
const CLEARLY_CHEAPER: (f64, f64) = (150.0, 0.02);

/// A morning is like the present heater's up to this share of its shortfall and this share of the water
/// asked for.
const LIKE_THE_PRESENT: (f64, f64) = (1.1, 0.02);

/// What a busiest morning that stays warm may cost more over the horizon, as a share of what the cheapest
/// costs: a year or two of the differences that prices make anyway. Common practice (the next size up for a
/// small difference in price), no source.
const WORTH_A_WARM_MORNING: f64 = 0.02;

/// Cool water for longer than this a day for each person, over a year, is not enough hot water, s: one shower
/// in ten that ends cool. Common practice, no source.
const COOL_S_A_DAY: f64 = 36.0;

/// The advice on simulated, checked and priced candidates; the first is the present heater.
pub fn of(case: &Case, candidates: &[CandidateOutcome]) -> Advice {
    let mut order: Vec<&CandidateOutcome> = Vec::with_capacity(candidates.len());
    for c in candidates {
        // Equal ones stay in the order shown. (The library's sorting is 4 kB of the page for each kind of list.)
        let at = order.partition_point(|before| {
            let ranks = rank(case, candidates, before).cmp(&rank(case, candidates, c));
            ranks.then(before.cost.net_present_cost.total_cmp(&c.cost.net_present_cost)).is_le()
        });
        order.insert(at, c);
    }
    warm_for_little(case, candidates, &mut order);
    keep_unless_clearly_beaten(case, candidates, &mut order);
    let best = order.first().copied();
    let best_id = best.map_or(CandidateId::Keep, |b| b.candidate.id);
    let keep = candidates.first();
    Advice {
        best: best_id,
        verdict: reasons::verdict(case, best, keep),
        reasons: reasons::three(case, best, keep, cheapest_id(candidates) == Some(best_id)),
        runners_up: order
            .iter()
            .skip(1)
            .map(|c| RunnerUp {
                id: c.candidate.id,
                extra_cost: best.map_or(0.0, |b| c.cost.net_present_cost - b.cost.net_present_cost),
                needs: reasons::needs(c, best, carries(case, candidates, c)),
            })
            .collect(),
        settle_first: settle::first(case, best),
        cautions: settle::cautions(case, best),
        extras: settle::extras(case, best),
    }
}

/// 0: fits and carries the morning; 1: fits but falls short; 2: does not fit.
fn rank(case: &Case, all: &[CandidateOutcome], c: &CandidateOutcome) -> u8 {
    if c.fit() == Fit::DoesNotFit {
        2
    } else if carries(case, all, c) {
        0
    } else {
        1
    }
}

/// Whether a candidate gives the household the hot water it needs: on the busiest morning and over the
/// year. Where nobody says that they run out now, about what the present heater gives will do (the model's
/// morning is a hard one, and a household that is content with its tank is no worse off with a like one).
fn carries(case: &Case, all: &[CandidateOutcome], c: &CandidateOutcome) -> bool {
    let content = matches!(case.household.runs_out_now.value, YesNo::No);
    let keep = all.first().filter(|_| content);
    let (share, slack) = LIKE_THE_PRESENT;
    let morning = c.morning.carries()
        || keep.is_some_and(|k| c.morning.shortfall <= share * k.morning.shortfall + slack * c.morning.asked);
    let present = keep.map_or_else(Time::default, |k| k.year.shortfall_time);
    let bearable = seconds(COOL_S_A_DAY * 365.0 * case.household.people());
    morning && c.year.shortfall_time <= share * present + bearable
}

/// The cheapest of all, whether or not it fits or serves.
fn cheapest_id(all: &[CandidateOutcome]) -> Option<CandidateId> {
    all.iter()
        .min_by(|a, b| a.cost.net_present_cost.total_cmp(&b.cost.net_present_cost))
        .map(|c| c.candidate.id)
}

/// Puts first, of those that will do, the cheapest whose busiest morning stays warm, where the first one's does
/// not and it costs hardly more.
fn warm_for_little(case: &Case, all: &[CandidateOutcome], order: &mut Vec<&CandidateOutcome>) {
    let Some(first) = order.first().copied().filter(|c| !c.morning.carries()) else { return };
    let most = first.cost.net_present_cost * (1.0 + WORTH_A_WARM_MORNING);
    let warm = order.iter().position(|c| {
        c.morning.carries()
            && c.cost.net_present_cost <= most
            && rank(case, all, c) == 0
            && c.candidate.id != CandidateId::Keep
    });
    if let Some(at) = warm {
        let warm = order.remove(at);
        order.insert(0, warm);
    }
}

fn keep_unless_clearly_beaten(case: &Case, all: &[CandidateOutcome], order: &mut Vec<&CandidateOutcome>) {
    let Some(at) = order.iter().position(|c| c.candidate.id == CandidateId::Keep) else { return };
    let keep = order[at];
    if at == 0 || rank(case, all, keep) > rank(case, all, order[0]) {
        return;
    }
    let saved = keep.cost.net_present_cost - order[0].cost.net_present_cost;
    let (dollars, share) = CLEARLY_CHEAPER;
    if saved < dollars || saved < share * keep.cost.net_present_cost {
        order.remove(at);
        order.insert(0, keep);
    }
}
