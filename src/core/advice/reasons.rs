//! What to say for and against a candidate: identities of words with their figures.

use crate::core::candidates::CandidateId;
use crate::core::case::{Case, TankSigns};
use crate::core::life::present;
use crate::core::message::Message;
use crate::core::outcome::{CandidateOutcome, Finding, Fit};
use crate::core::units::{Quantity, Unit};
use uom::si::time::minute;
use uom::si::volume::cubic_meter;

fn name(c: &CandidateOutcome) -> Message {
    c.candidate.name()
}

fn dollars(v: f64) -> Quantity {
    Quantity::new(v, Unit::Dollar)
}

/// Money as a sentence may say it: two figures or so, for no simulated dollar is surer than that.
fn about(v: f64) -> Quantity {
    let step = if v.abs() < 1_000.0 { 10.0 } else { 100.0 };
    dollars((v / step).round() * step)
}

/// What running a candidate costs in its first year.
fn running(c: &CandidateOutcome) -> f64 {
    c.cost.energy_year + c.cost.interaction_year + c.cost.maintenance_year
}

/// One sentence.
pub(super) fn verdict(
    case: &Case,
    best: Option<&CandidateOutcome>,
    keep: Option<&CandidateOutcome>,
) -> Message {
    let (Some(best), Some(keep)) = (best, keep) else { return Message::new("verdict-nothing-fits") };
    if best.fit() == Fit::DoesNotFit {
        return Message::new("verdict-nothing-fits");
    }
    if best.candidate.id == CandidateId::Keep {
        let years = present::expected_left(&case.heater);
        return Message::new("verdict-keep").with("years", Quantity::new(years.round(), Unit::Year));
    }
    let saves = keep.cost.net_present_cost - best.cost.net_present_cost;
    let id = match (best.candidate.is_heat_pump(), saves > 0.0) {
        (true, true) => "verdict-heat-pump",
        (true, false) => "verdict-heat-pump-dearer",
        (false, true) => "verdict-same",
        (false, false) => "verdict-same-dearer",
    };
    Message::new(id)
        .with("heater", name(best))
        .with("saves", about(saves.abs()))
        .with("years", Quantity::new(case.prices.horizon_years.value, Unit::Year))
}

/// Three reasons: money, hot water, and what the house or the old tank says. `cheapest`: whether nothing at all
/// would cost less.
pub(super) fn three(
    case: &Case,
    best: Option<&CandidateOutcome>,
    keep: Option<&CandidateOutcome>,
    cheapest: bool,
) -> Vec<Message> {
    let (Some(best), Some(keep)) = (best, keep) else { return Vec::new() };
    if best.fit() == Fit::DoesNotFit {
        // What stops the likeliest one, as the checks say it.
        return best
            .findings
            .iter()
            .filter(|f| f.fit == Fit::DoesNotFit)
            .flat_map(|f| [f.says.clone()].into_iter().chain(f.lets_in.clone()))
            .take(3)
            .collect();
    }
    vec![money(case, best, keep, cheapest), water(best, keep), third(case, best)]
}

fn money(case: &Case, best: &CandidateOutcome, keep: &CandidateOutcome, cheapest: bool) -> Message {
    if best.candidate.id == CandidateId::Keep {
        let id = if cheapest {
            Message::new("reason-money-keep")
        } else {
            Message::new("reason-money-keep-serves")
        };
        return id.with("cost", about(running(keep)));
    }
    let saved = running(keep) - running(best);
    let base = |id| {
        Message::new(id)
            .with("before", about(running(keep)))
            .with("after", about(running(best)))
            .with("saved", about(saved.abs()))
            .with("upfront", about(best.cost.upfront))
            .with("horizon", Quantity::new(case.prices.horizon_years.value, Unit::Year))
    };
    match best.cost.payback_years {
        _ if saved <= 0.0 => base("reason-money-dearer"),
        Some(years) => base("reason-money-payback").with("payback", Quantity::new(years, Unit::Year)),
        None => base("reason-money-saves"),
    }
}

fn water(best: &CandidateOutcome, keep: &CandidateOutcome) -> Message {
    let short = best.morning.shortfall.get::<cubic_meter>() * 1e3;
    let base = |id| {
        Message::new(id)
            .quantity("short", short, Unit::Litre)
            .quantity("asked", best.morning.asked.get::<cubic_meter>() * 1e3, Unit::Litre)
            .quantity("first-hour", best.label.first_hour.get::<cubic_meter>() * 1e3, Unit::Litre)
    };
    match (best.morning.carries(), keep.morning.carries()) {
        (true, false) => base("reason-water-better"),
        (true, true) => base("reason-water-carries"),
        (false, _) => base("reason-water-short"),
    }
}

fn third(case: &Case, best: &CandidateOutcome) -> Message {
    let age = case.heater.age_years.value;
    let chance = present::fails_within(&case.heater, 1.0);
    if matches!(case.heater.signs.value, TankSigns::Leaking) {
        return Message::new("reason-leaks");
    }
    let with_life = |id| {
        Message::new(id).with("age", Quantity::new(age, Unit::Year)).quantity(
            "chance",
            chance * 100.0,
            Unit::Percent,
        )
    };
    if best.candidate.id == CandidateId::Keep {
        return with_life("reason-life-keep");
    }
    match best.fit() {
        Fit::Fits => Message::new("reason-fits"),
        _ if chance > 0.12 => with_life("reason-life-old"),
        Fit::FitsWithWork => Message::new("reason-fits-with-work")
            .with("work", dollars(best.findings.iter().map(Finding::work_cost).sum())),
        Fit::MeasureFirst | Fit::DoesNotFit => Message::new("reason-measure-first"),
    }
}

/// Why a candidate is not first, and what it would need.
pub(super) fn needs(c: &CandidateOutcome, best: Option<&CandidateOutcome>, carries: bool) -> Vec<Message> {
    let mut needs: Vec<Message> = Vec::new();
    for f in &c.findings {
        match f.fit {
            // What stops it, and what would let it in.
            Fit::DoesNotFit => needs.extend([f.says.clone()].into_iter().chain(f.lets_in.clone())),
            // Work that an ordinary job's price has already is not worth a word here.
            Fit::FitsWithWork => {
                needs.extend(f.work.iter().filter(|w| w.cost > 0.0).map(|w| w.says.clone()));
            }
            Fit::Fits | Fit::MeasureFirst => {}
        }
    }
    if !c.morning.carries() {
        let short = c.morning.shortfall.get::<cubic_meter>() * 1e3;
        needs.insert(0, Message::new("need-hot-water").quantity("short", short, Unit::Litre));
    } else if !carries {
        let minutes = c.year.shortfall_time.get::<minute>() / 365.0;
        needs.insert(0, Message::new("need-hot-water-year").quantity("minutes", minutes, Unit::Minute));
    }
    if let Some(best) = best {
        let extra = c.cost.net_present_cost - best.cost.net_present_cost;
        let id = if extra >= 0.0 { "need-costs-more" } else { "need-costs-less" };
        needs.push(Message::new(id).with("extra", about(extra.abs())));
    }
    needs
}
