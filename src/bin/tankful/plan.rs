//! `plan`: what to load and what to do in which order, for the advised heater or another one of the case.

use crate::advise::json_line;
use crate::command;
use serde::Serialize;
use tankful::core::candidates::CandidateId;
use tankful::core::case::Case;
use tankful::core::message::{Arg, Message};
use tankful::core::outcome::Outcome;
use tankful::core::plan::plan;
use tankful::text::report::{PlanReport, plain_plan};
use tankful::text::{Words, csv};

/// What is asked.
#[derive(Clone, Copy)]
pub struct Ask {
    /// For this heater; none: for the advised one.
    heater: Option<CandidateId>,
    /// Only the list of parts, for a spreadsheet.
    csv: bool,
}

impl Ask {
    /// What the options say.
    pub fn of(arguments: &clap::ArgMatches) -> Ask {
        let code = arguments.get_one::<String>(command::HEATER);
        Ask { heater: code.and_then(|c| CandidateId::from_code(c)), csv: arguments.get_flag(command::CSV) }
    }
}

/// The plan of a good record, with the line it began on.
#[derive(Serialize)]
struct GoodPlan {
    line: u64,
    #[serde(flatten)]
    plan: PlanReport,
}

/// Answers a record; or says what is wrong with it: a field, a code, words.
pub fn answer(
    words: &Words,
    ask: Ask,
    line: u64,
    text: bool,
    name: Option<String>,
    case: &Case,
    outcome: &Outcome,
) -> Result<String, (String, &'static str, Message)> {
    let id = ask.heater.unwrap_or(outcome.advice.best);
    let Some(of) = outcome.of(id) else {
        let says = Message::new("cli-no-such-heater").with("heater", Arg::Verbatim(id.code().to_owned()));
        return Err((String::from("heater"), "no_such_heater", says));
    };
    let plan = plan(case, &of.candidate, &of.findings);
    Ok(if ask.csv {
        csv::parts(words, &plan, &|_| String::new())
    } else if text {
        plain_plan(words, name.as_deref(), &of.candidate.name(), &plan)
    } else {
        json_line(&GoodPlan { line, plan: PlanReport::new(words, name, id.code(), &plan) })
    })
}
