//! What the page and the worker say to each other.

use crate::core::outcome::Outcome;
use crate::job::answers::Answers;
use crate::job::offer::{self, Offer};
use serde::{Deserialize, Serialize};

/// The page asks for advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ask {
    /// Counts the page's questions; replies carry it back, and a higher one makes lower ones stale.
    pub number: u64,
    /// The answers as JSON: their form describes itself, which the bytes between page and worker do not.
    answers: String,
    /// The offer, likewise; empty when there is none.
    offer: String,
}

impl Ask {
    /// Asks for advice on these answers and this offer.
    pub fn new(number: u64, answers: &Answers, offer: &Offer) -> Ask {
        let offer = if offer.is_empty() { String::new() } else { offer::to_json(offer).to_string() };
        // Plain data with string keys always has a JSON form.
        Ask { number, answers: serde_json::to_string(answers).unwrap_or_default(), offer }
    }

    /// The offer asked about; empty when there is none or it cannot be read.
    pub fn offer(&self) -> Offer {
        let json = serde_json::from_str(&self.offer).unwrap_or_default();
        offer::read("offer", &json, &mut Vec::new())
    }

    /// The answers asked about; none when they cannot be read.
    pub fn answers(&self) -> Answers {
        serde_json::from_str(&self.answers).unwrap_or_default()
    }
}

/// What the worker reports on the question of this number.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Reply {
    /// Some candidates are computed.
    Progress {
        /// The question's number.
        number: u64,
        /// Candidates done.
        done: u32,
        /// Candidates in all.
        of: u32,
    },
    /// The advice by a first look, while the whole years are being simulated.
    First {
        /// The question's number.
        number: u64,
        /// The advice, without the series that only pictures need.
        outcome: Box<Outcome>,
    },
    /// The advice.
    Done {
        /// The question's number.
        number: u64,
        /// The advice.
        outcome: Box<Outcome>,
    },
}

impl Reply {
    /// The number of the question replied to.
    pub fn number(&self) -> u64 {
        match self {
            Reply::Progress { number, .. } | Reply::First { number, .. } | Reply::Done { number, .. } => {
                *number
            }
        }
    }
}

/// What the page asks for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Request {
    /// Advice.
    Advise(Ask),
    /// An errand ([`super::errands`]).
    Run(Vec<u8>),
}

/// What the worker tells the page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Told {
    /// On the advice.
    Advice(Reply),
    /// An errand is done.
    Ran {
        /// The errand.
        ask: Vec<u8>,
        /// What came of it; `None` when the part of the program that does errands could not be fetched.
        result: Option<Vec<u8>>,
    },
}
