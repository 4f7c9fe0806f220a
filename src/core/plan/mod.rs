//! The day of the work: what to load and what to do in which order, made from the house, the chosen heater and the works
//! its findings ask for. Plain data and functions; words stand in `parts.ftl` and `plan.ftl`.
//!
//! The list of parts says sizes and quantities, and why each is there ([`Part`]). The steps come in an order that is
//! proved from what they do ([`Act`]): see `order`. A hold point is a step that must be confirmed before whatever waits
//! for it goes on ([`Step::waits_for`]).

mod order;
mod part;
mod parts;
mod pipe;
mod rule;
mod scene;
mod sold;
mod step;
mod steps;
mod table;
mod tool;
mod weights;
mod works;

pub use part::{PartKind, Shelf};
pub use pipe::water_m3;
pub use rule::{Act, Phase, Rule};
pub use sold::Sold;
pub use step::StepKind;
pub use tool::Tool;

use super::candidates::Candidate;
use super::case::{Case, HeaterKind};
use super::finding::Finding;
use super::message::Message;
use super::units::{Quantity, Unit};
use super::work::Trade;
use scene::Scene;
use std::borrow::Cow;

/// A part to bring.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What kind.
    pub kind: PartKind,
    /// In words, with its sizes.
    pub says: Message,
    /// How much is needed: pieces ([`Unit::One`]) or a length.
    pub needs: Quantity,
    /// How much to bring, as it is sold.
    pub bring: Quantity,
    /// The step that uses it first.
    pub step: StepKind,
    /// Any such job needs it.
    pub always: bool,
    /// Checks whose findings ask for it.
    pub checks: Vec<Cow<'static, str>>,
    /// Only needed if a measurement says so.
    pub maybe: bool,
}

/// A tool to bring, and how long it has to be, where that matters.
#[derive(Clone, Debug, PartialEq)]
pub struct ToolNeed {
    /// Which.
    pub tool: Tool,
    /// In words.
    pub says: Message,
}

/// A step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What kind.
    pub kind: StepKind,
    /// What to do, with figures. `.why` of its words says why, `.confirm` of a hold point's what is confirmed.
    pub says: Message,
    /// Who does it.
    pub trade: Trade,
    /// How long it takes.
    pub time: Quantity,
    /// How many people it takes.
    pub people: u8,
    /// With what.
    pub tools: Vec<Tool>,
    /// Hold points that must be confirmed before it, in order.
    pub waits_for: Vec<StepKind>,
    /// Only if a measurement says so.
    pub maybe: bool,
}

/// The day of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What kind of job it is, in words.
    pub job: Message,
    /// What to bring, by shelf.
    pub parts: Vec<Part>,
    /// What to work with.
    pub tools: Vec<ToolNeed>,
    /// What to do, in order.
    pub steps: Vec<Step>,
}

impl Step {
    /// Whether it must be confirmed before going on.
    pub fn holds(&self) -> bool {
        self.kind.rule().holds
    }

    /// Keys of the cautions that belong to it.
    pub fn cautions(&self) -> Vec<&'static str> {
        steps::cautions(self.kind, &self.tools)
    }

    /// Parts that are used in it first.
    pub fn parts<'a>(&self, plan: &'a Plan) -> impl Iterator<Item = &'a Part> {
        let kind = self.kind;
        plan.parts.iter().filter(move |p| p.step == kind)
    }
}

impl Plan {
    /// The most people that a step takes.
    pub fn people(&self) -> u8 {
        self.steps.iter().map(|s| s.people).max().unwrap_or(1)
    }

    /// Working time of each trade, everybody's together, without what may not be needed.
    pub fn hours(&self) -> Vec<(Trade, Quantity)> {
        let trades = [Trade::Plumber, Trade::Electrician, Trade::Fuel, Trade::Builder];
        let of = |trade: Trade| -> f64 {
            let steps = self.steps.iter().filter(|s| s.trade == trade && !s.maybe);
            steps.map(|s| s.time.value * f64::from(s.people)).sum()
        };
        trades
            .into_iter()
            .map(|t| (t, Quantity::new(of(t), Unit::Minute)))
            .filter(|(_, time)| time.value > 0.0)
            .collect()
    }
}

/// The day of the work for a heater in a house, with what the checks found about it. A heater that stays gets its
/// maintenance instead.
pub fn plan(case: &Case, heater: &Candidate, findings: &[Finding]) -> Plan {
    let scene = Scene::of(case, heater, findings);
    let steps = steps::steps(&scene);
    Plan { job: job(&scene), parts: parts::parts(&scene), tools: tools(case, &steps), steps }
}

/// What kind of job it is.
fn job(s: &Scene) -> Message {
    let (from, to) = (s.from(), s.to());
    let burns = scene::burns;
    Message::new(if s.keeps() {
        "job-keep"
    } else if from == to {
        "job-same"
    } else {
        match (burns(from), to) {
            (true, HeaterKind::HeatPump) => "job-fuel-to-heat-pump",
            (false, HeaterKind::HeatPump) => "job-electric-to-heat-pump",
            (true, HeaterKind::Electric) => "job-fuel-to-electric",
            (_, to) if burns(to) => "job-to-fuel",
            _ => "job-other",
        }
    })
}

/// The tools of the steps, each once, in the order of the list of tools.
fn tools(case: &Case, steps: &[Step]) -> Vec<ToolNeed> {
    let used = |tool: &Tool| steps.iter().any(|s| s.tools.contains(tool));
    let need = |tool: Tool| ToolNeed { tool, says: tool.says(case.site.drain_run_m.value) };
    Tool::ALL.iter().copied().filter(used).map(need).collect()
}
