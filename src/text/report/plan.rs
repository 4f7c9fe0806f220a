//! The day of the work in its lasting forms: a [`PlanReport`] for programs, and a text for people.

use super::super::csv;
use super::super::words::Words;
use super::plain::Sheet;
use super::{Said, VERSION, figure};
use crate::core::message::{Arg, Message};
use crate::core::plan::{Part, Plan, Shelf, Step};
use crate::core::units::{Quantity, Unit};
use serde::Serialize;
use std::collections::BTreeMap;

/// The day of the work. Quantities are given with their unit and do not follow the reader's choice; texts do.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PlanReport {
    /// Version of the report's form.
    pub tankful: u32,
    /// The case's name, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Code of the heater that is put in.
    pub heater: &'static str,
    /// What kind of job it is.
    pub job: Said,
    /// Most people that a step takes.
    pub people: u8,
    /// Working time by trade, everybody's together, minutes.
    pub minutes: BTreeMap<&'static str, f64>,
    /// What to bring.
    pub parts: Vec<PartReport>,
    /// What to work with.
    pub tools: Vec<ToolReport>,
    /// What to do, in order.
    pub steps: Vec<StepReport>,
}

/// A part.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PartReport {
    /// Its code.
    pub code: &'static str,
    /// Where it stands on the list.
    pub shelf: &'static str,
    /// In words, with its sizes.
    pub text: String,
    /// Its sizes, by name.
    pub sizes: BTreeMap<String, Quantity>,
    /// How much is needed.
    pub needs: Quantity,
    /// How much to bring, as it is sold.
    pub bring: Quantity,
    /// Who puts it in.
    pub trade: &'static str,
    /// Code of the step that uses it first.
    pub step: &'static str,
    /// Any such job needs it.
    pub always: bool,
    /// Checks whose findings ask for it.
    pub checks: Vec<String>,
    /// Only needed if a measurement says so.
    pub maybe: bool,
}

/// A tool.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ToolReport {
    /// Its code.
    pub code: &'static str,
    /// In words.
    pub text: String,
}

/// A step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StepReport {
    /// Its code.
    pub code: &'static str,
    /// Part of the day.
    pub phase: &'static str,
    /// What to do.
    pub text: String,
    /// Why.
    pub why: String,
    /// What is confirmed before going on; absent where nothing waits for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub confirm: Option<String>,
    /// Hold points that must be confirmed before it.
    pub waits_for: Vec<&'static str>,
    /// Who does it.
    pub trade: &'static str,
    /// Codes and licences say who may do it.
    pub regulated: bool,
    /// How long it takes, minutes.
    pub minutes: f64,
    /// How many people it takes.
    pub people: u8,
    /// With what.
    pub tools: Vec<&'static str>,
    /// Parts that are used in it first.
    pub parts: Vec<&'static str>,
    /// Cautions that belong to it.
    pub cautions: Vec<Said>,
    /// Only if a measurement says so.
    pub maybe: bool,
}

impl PlanReport {
    /// The report of a plan for a heater.
    pub fn new(words: &Words, name: Option<String>, heater: &'static str, plan: &Plan) -> PlanReport {
        PlanReport {
            tankful: VERSION,
            name,
            heater,
            job: Said::new(words, &plan.job),
            people: plan.people(),
            minutes: plan
                .hours()
                .into_iter()
                .map(|(trade, time)| (trade.code(), figure(time.value)))
                .collect(),
            parts: plan.parts.iter().map(|p| PartReport::new(words, p)).collect(),
            tools: plan
                .tools
                .iter()
                .map(|t| ToolReport { code: t.tool.code(), text: words.say(&t.says) })
                .collect(),
            steps: plan.steps.iter().map(|s| StepReport::new(words, plan, s)).collect(),
        }
    }
}

fn rounded(q: Quantity) -> Quantity {
    Quantity::new(figure(q.value), q.unit)
}

impl PartReport {
    fn new(words: &Words, part: &Part) -> PartReport {
        let size = |(name, arg): &(std::borrow::Cow<str>, Arg)| match arg {
            Arg::Quantity(q) => Some((name.to_string(), rounded(*q))),
            _ => None,
        };
        PartReport {
            code: part.kind.code(),
            shelf: part.kind.shelf().code(),
            text: words.say(&part.says),
            sizes: part.says.args.iter().filter_map(size).collect(),
            needs: rounded(part.needs),
            bring: rounded(part.bring),
            trade: part.kind.trade().code(),
            step: part.step.code(),
            always: part.always,
            checks: part.checks.iter().map(ToString::to_string).collect(),
            maybe: part.maybe,
        }
    }
}

impl StepReport {
    fn new(words: &Words, plan: &Plan, step: &Step) -> StepReport {
        StepReport {
            code: step.kind.code(),
            phase: step.kind.rule().phase.code(),
            text: words.say(&step.says),
            why: words.say_attr(&step.says, "why").unwrap_or_default(),
            confirm: words.say_attr(&step.says, "confirm"),
            waits_for: step.waits_for.iter().map(|k| k.code()).collect(),
            trade: step.trade.code(),
            regulated: step.trade.is_regulated(),
            minutes: step.time.value,
            people: step.people,
            tools: step.tools.iter().map(|t| t.code()).collect(),
            parts: step.parts(plan).map(|p| p.kind.code()).collect(),
            cautions: step.cautions().into_iter().map(|c| Said::new(words, &Message::new(c))).collect(),
            maybe: step.maybe,
        }
    }
}

/// The day of the work for people. Ends with a line break.
pub fn plain_plan(words: &Words, name: Option<&str>, heater: &Message, plan: &Plan) -> String {
    let mut page = Sheet::new(words);
    page.line(&match name {
        Some(name) => words.say(&Message::new("plan-title-of").with("name", Arg::Verbatim(name.to_owned()))),
        None => words.key("plan-title"),
    });
    page.line("");
    page.wrapped("", &words.say(heater));
    page.wrapped("", &words.say(&plan.job));
    let people = Message::new("plan-people").with("people", i64::from(plan.people()));
    page.wrapped("", &words.say(&people));
    for (trade, time) in plan.hours() {
        let hours = Quantity::new(time.value / 60.0, Unit::One);
        let said = Message::new("plan-hours")
            .with("hours", Arg::Number(hours.value, 1))
            .with("trade", Message::new(trade.key()));
        page.wrapped("  ", &words.say(&said));
    }
    for shelf in Shelf::ALL {
        let on = plan.parts.iter().filter(|p| p.kind.shelf() == shelf);
        page.list(shelf.key(), on.map(|p| part_line(words, p)));
    }
    page.list("plan-tools", plan.tools.iter().map(|t| words.say(&t.says)));
    let mut phase = None;
    for (i, step) in plan.steps.iter().enumerate() {
        let of = step.kind.rule().phase;
        if phase != Some(of) {
            phase = Some(of);
            page.line("");
            page.line(&words.key(of.key()));
        }
        page.wrapped(&format!("  {:>2}. ", i + 1), &step_line(words, step));
        if let Some(confirm) = words.say_attr(&step.says, "confirm") {
            page.wrapped("      [ ] ", &confirm);
        }
        for caution in step.cautions() {
            page.wrapped("      ! ", &words.key(caution));
        }
    }
    page.done()
}

/// A part in one line: how much to bring, what, why.
fn part_line(words: &Words, part: &Part) -> String {
    let said = Message::new(if part.maybe { "plan-part-maybe" } else { "plan-part" })
        .with("bring", part.bring)
        .with("part", part.says.clone())
        .with("why", Arg::Verbatim(csv::why(words, part)));
    words.say(&said)
}

/// A step in one line: what, why, who, how long.
fn step_line(words: &Words, step: &Step) -> String {
    let why = words.say_attr(&step.says, "why").unwrap_or_default();
    let said = Message::new(if step.maybe { "plan-step-maybe" } else { "plan-step" })
        .with("what", step.says.clone())
        .with("why", Arg::Verbatim(why))
        .with("trade", Message::new(step.trade.key()))
        .with("time", step.time)
        .with("people", i64::from(step.people));
    words.say(&said)
}
