//! The advice of one case in its two lasting forms: a [`Report`] for programs (JSON) and a page of
//! text for people. The headless command writes both.

mod candidate;
pub mod futures;
mod outlook;
mod plain;
mod plan;

pub use candidate::{CandidateReport, FindingReport};
pub use outlook::OutlookReport;
pub use plain::plain;
pub use plan::{PartReport, PlanReport, StepReport, ToolReport, plain_plan};

use super::words::Words;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::outcome::Outcome;
use crate::core::outlook::Outlook;
use crate::core::units::to_celsius;
use crate::job::resolved::Resolved;
use serde::Serialize;

/// Version of the report's form.
pub const VERSION: u32 = 1;

/// The advice of one case. Figures carry their unit in the name and do not follow the reader's choice
/// of units; texts do.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// Version of this form.
    pub tankful: u32,
    /// The case's name, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Seed of the synthetic year.
    pub seed: u64,
    /// Code of the recommended candidate.
    pub best: &'static str,
    /// One sentence.
    pub verdict: Said,
    /// Why.
    pub reasons: Vec<Said>,
    /// The others, in order.
    pub runners_up: Vec<RunnerUpReport>,
    /// What to settle before the work.
    pub settle_first: Vec<SettleReport>,
    /// The usual cautions.
    pub cautions: Vec<Said>,
    /// Work that the offer prices and nothing found so far asks for; absent where there is none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub possible_extras: Vec<Said>,
    /// What nobody answered, and the value taken instead.
    pub assumed: Vec<Assumed>,
    /// Every candidate that was simulated, in the order shown.
    pub candidates: Vec<CandidateReport>,
    /// Cold water at its coldest, °C.
    pub coldest_mains_c: f64,
    /// How far the recommended heater cools its room, at most, K.
    pub room_drop_k: f64,
    /// What lies ahead: life left, electricity by the hour, CO₂.
    pub outlook: OutlookReport,
}

/// A message: its stable identity, and its words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Said {
    /// Identity, for programs.
    pub id: String,
    /// Words, for people.
    pub text: String,
}

/// A candidate that was not chosen.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RunnerUpReport {
    /// Its code.
    pub id: &'static str,
    /// Its net present cost less the recommended one's, dollars.
    pub extra_cost_usd: f64,
    /// Why it is not first, and what it would need.
    pub needs: Vec<Said>,
}

/// Something to settle first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SettleReport {
    /// What to do.
    #[serde(flatten)]
    pub says: Said,
    /// Code of the question that settles it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ask: Option<String>,
}

/// A question nobody answered.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Assumed {
    /// Its code.
    pub question: &'static str,
    /// Its words.
    pub text: String,
    /// The value taken, in words.
    pub value: String,
}

impl Said {
    fn new(words: &Words, message: &Message) -> Said {
        Said { id: message.id.to_string(), text: words.say(message) }
    }

    fn all(words: &Words, messages: &[Message]) -> Vec<Said> {
        messages.iter().map(|m| Said::new(words, m)).collect()
    }
}

/// A figure to write down: rounded to six decimals, so that files stay short; no minus zero, nothing
/// that JSON cannot hold.
fn figure(value: f64) -> f64 {
    let rounded = (value * 1e6).round() / 1e6;
    if !rounded.is_finite() {
        return if value.is_finite() { value } else { 0.0 };
    }
    rounded + 0.0
}

impl Report {
    /// The report of an outcome. `resolved` are the values the case was made of.
    pub fn new(
        words: &Words,
        name: Option<String>,
        seed: u64,
        resolved: &Resolved,
        outcome: &Outcome,
        outlook: &Outlook,
        series: bool,
    ) -> Report {
        let advice = &outcome.advice;
        Report {
            tankful: VERSION,
            name,
            seed,
            best: advice.best.code(),
            verdict: Said::new(words, &advice.verdict),
            reasons: Said::all(words, &advice.reasons),
            runners_up: advice
                .runners_up
                .iter()
                .map(|r| RunnerUpReport {
                    id: r.id.code(),
                    extra_cost_usd: figure(r.extra_cost),
                    needs: Said::all(words, &r.needs),
                })
                .collect(),
            settle_first: advice
                .settle_first
                .iter()
                .map(|s| SettleReport {
                    says: Said::new(words, &s.says),
                    ask: s.ask.as_ref().map(ToString::to_string),
                })
                .collect(),
            cautions: Said::all(words, &advice.cautions),
            possible_extras: Said::all(words, &advice.extras),
            assumed: resolved
                .iter()
                .filter(|(_, known)| known.from == Provenance::Assumed)
                .map(|(id, known)| Assumed {
                    question: id.code(),
                    text: words.question(id),
                    value: words.value(id, &known.value),
                })
                .collect(),
            candidates: outcome.candidates.iter().map(|c| CandidateReport::new(words, c, series)).collect(),
            coldest_mains_c: figure(to_celsius(outcome.coldest_mains)),
            room_drop_k: figure(outcome.room_drop.value),
            outlook: OutlookReport::new(words, outlook, outcome),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::figure;

    #[test]
    fn figures_are_short_and_finite() {
        assert_eq!(figure(0.1 + 0.2), 0.3);
        assert!(figure(-1e-9).is_sign_positive());
        assert_eq!(figure(f64::NAN), 0.0);
        assert_eq!(figure(1e305), 1e305);
    }
}
