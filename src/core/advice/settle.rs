//! What must be settled before the work, and the cautions that belong to it.

use crate::core::candidates::CandidateId;
use crate::core::candidates::offer::Adder;
use crate::core::case::{Case, HeaterKind};
use crate::core::message::{Arg, Message};
use crate::core::outcome::{CandidateOutcome, Fit, Settle};
use crate::core::units::{Unit, to_celsius};

/// Stored water below this lets Legionella grow on; advised storage is 60 °C (140 °F) with mixing
/// (ASHRAE guideline 12 and the national academies' report of 2019, from memory).
const ADVISED_STORAGE_C: f64 = 60.0;
/// From here a tap can burn within seconds (Moritz and Henriques 1947: 140 °F, about 5 s; from memory).
const SCALDS_FAST_C: f64 = 54.0;

/// What to settle for the recommended candidate: findings that want measuring, then work.
pub(super) fn first(case: &Case, best: Option<&CandidateOutcome>) -> Vec<Settle> {
    let Some(best) = best else { return Vec::new() };
    let of = |fit: Fit| best.findings.iter().filter(move |f| f.fit == fit);
    let mut list: Vec<Settle> =
        of(Fit::MeasureFirst).map(|f| Settle { says: f.says.clone(), ask: f.ask().cloned() }).collect();
    for f in of(Fit::FitsWithWork) {
        // Small parts that belong to any job are no matter to settle.
        let large = f.work.iter().filter(|w| w.cost > 0.0);
        list.extend(large.map(|w| Settle { says: w.says.clone(), ask: f.ask().cloned() }));
    }
    if best.candidate.id != CandidateId::Keep {
        let quoted = case.offer.price(best.candidate.id).is_some();
        if best.candidate.is_heat_pump() && !quoted && case.prices.installed_heat_pump.is_assumed() {
            list.push(Settle { says: Message::new("settle-quote"), ask: Some("installed_heat_pump".into()) });
        }
        list.push(Settle { says: Message::new("settle-permit"), ask: None });
    }
    list
}

/// Work of the offer that nothing found so far asks for, with its price. Keeping the heater needs none of it.
pub(super) fn extras(case: &Case, best: Option<&CandidateOutcome>) -> Vec<Message> {
    let Some(best) = best.filter(|b| b.candidate.id != CandidateId::Keep) else { return Vec::new() };
    let say = |a: &Adder| {
        let what: Arg = match a.name.as_str() {
            "" => Message::new(a.kind.key()).into(),
            name => Arg::Verbatim(name.to_owned()),
        };
        Message::new("offer-extra").with("what", what).quantity("amount", a.price, Unit::Dollar)
    };
    case.offer.possible(&best.findings).map(say).collect()
}

/// The usual cautions.
pub(super) fn cautions(case: &Case, best: Option<&CandidateOutcome>) -> Vec<Message> {
    let mut ids = Vec::new();
    let burns = |k| matches!(k, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil);
    let keeps = best.is_none_or(|b| b.candidate.id == CandidateId::Keep);
    if !keeps {
        ids.extend(["caution-mains", "caution-lifting", "caution-drain-hot"]);
        if burns(case.heater.kind.value) {
            ids.push("caution-fuel");
        }
    }
    let setpoint_c = to_celsius(case.heater.setpoint.value);
    ids.push(if setpoint_c >= SCALDS_FAST_C { "caution-scald-fast" } else { "caution-scald" });
    if setpoint_c < ADVISED_STORAGE_C {
        ids.push("caution-legionella");
    }
    ids.push("caution-local-code");
    ids.into_iter().map(Message::new).collect()
}
