//! What a check found: how it came out, what it rests on, the work it asks for. Plain data.

use super::case::Input;
use super::message::Message;
use super::work::Work;
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// How a check came out, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fit {
    /// Fits as it is.
    Fits,
    /// Fits after the work named.
    FitsWithWork,
    /// Something must be measured before anyone can say.
    MeasureFirst,
    /// Does not fit.
    DoesNotFit,
}

/// What one check found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Finding {
    /// The check's code (`check-<code>` is its name in the locale files).
    pub check: Cow<'static, str>,
    /// How it came out: where what nobody answered could decide it, [`Fit::MeasureFirst`].
    pub fit: Fit,
    /// How it comes out with the values taken.
    pub likely: Fit,
    /// The worst it could come out.
    pub worst: Fit,
    /// What was found, with figures.
    pub says: Message,
    /// The work it implies; where it must be measured first, the work it may need.
    pub work: Vec<Work>,
    /// What would let the heater in, where it does not fit.
    pub lets_in: Option<Message>,
    /// The rule it rests on: standard and section.
    pub rule: Cow<'static, str>,
    /// The relation between the figures, in words (locale identity), where it is computed.
    pub relation: Option<Cow<'static, str>>,
    /// The figures used.
    pub figures: Vec<Input>,
    /// Questions whose answers or measurements would settle it (their codes), the most telling first.
    pub asks: Vec<Cow<'static, str>>,
    /// The usual caution.
    pub caution: Option<Message>,
}

impl Finding {
    /// The question that would settle it, if one would.
    pub fn ask(&self) -> Option<&Cow<'static, str>> {
        self.asks.first()
    }

    /// Rough price of the work, dollars: nothing where the values taken need none.
    pub fn work_cost(&self) -> f64 {
        if self.likely == Fit::Fits { 0.0 } else { self.work.iter().map(|w| w.cost).sum() }
    }

    /// Whether it stops the job before another: by how it came out, then by the worst it could be.
    pub fn stops_before(&self, other: &Finding) -> bool {
        (self.fit, self.worst) > (other.fit, other.worst)
    }
}
