//! The headless command: one case or a stream of them in, advice out. It reads and writes; everything
//! that is computed or said comes from the library.

mod advise;
mod after;
mod command;
mod example;
mod futures;
mod heater;
mod lists;
mod measure;
mod plan;
mod records;

use std::io::{self, Write};
use std::process::ExitCode;
use tankful::core::message::Message;
use tankful::core::units::UnitSystem;
use tankful::text::{Language, Words};

/// Something that stops the whole command.
#[derive(Debug)]
enum Stop {
    /// Whoever reads the output has had enough: no error.
    Closed,
    /// Anything else, in words.
    Says(Message),
}

impl From<io::Error> for Stop {
    fn from(error: io::Error) -> Self {
        if error.kind() == io::ErrorKind::BrokenPipe {
            return Stop::Closed;
        }
        let detail = tankful::core::message::Arg::Verbatim(error.to_string());
        Stop::Says(Message::new("cli-io").with("detail", detail))
    }
}

/// How a command that came to its end ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Ended {
    /// All good.
    Well,
    /// At least one record was bad, or there was none.
    WithBadRecords,
}

fn main() -> ExitCode {
    let words = Words::new(Language::ENGLISH, UnitSystem::Us);
    let matches = command::build(&words).get_matches();
    match run(&words, &matches) {
        Ok(Ended::Well) | Err(Stop::Closed) => ExitCode::SUCCESS,
        Ok(Ended::WithBadRecords) => ExitCode::from(1),
        Err(Stop::Says(message)) => {
            // With standard error closed too there is nobody left to tell.
            let _ = writeln!(io::stderr(), "{}", words.say(&message));
            ExitCode::from(2)
        }
    }
}

fn run(words: &Words, matches: &clap::ArgMatches) -> Result<Ended, Stop> {
    let Some((name, arguments)) = matches.subcommand() else { return Ok(Ended::Well) };
    let words = words.with_units(command::units(arguments));
    let mut out = io::BufWriter::new(io::stdout().lock());
    match name {
        command::ADVISE | command::PLAN | command::RATE | command::CALIBRATE => {
            drop(out);
            let heater = match name {
                command::RATE => Some(heater::Ask::Rate),
                command::CALIBRATE => Some(heater::Ask::Calibrate),
                _ => None,
            };
            let plan = (name == command::PLAN).then(|| plan::Ask::of(arguments));
            return advise::run(&words, arguments, heater, plan);
        }
        command::HANDOVER | command::CALENDAR => {
            let ended = after::run(&words, arguments, name == command::CALENDAR, &mut out)?;
            out.flush()?;
            return Ok(ended);
        }
        command::SCHEMA => lists::schema(&words, arguments.get_flag(command::JOBS), &mut out)?,
        command::QUESTIONS => lists::questions(&words, arguments.get_flag(command::TEXT), &mut out)?,
        command::EXAMPLE => {
            let with = arguments.get_flag(command::OFFER);
            let offer = if with { example::offer(&words) } else { Default::default() };
            lists::pretty(&mut out, &tankful::job::file::to_json(&example::case(&words, offer)))?;
        }
        _ => measure::run(&words, arguments, &mut out)?,
    }
    out.flush()?;
    Ok(Ended::Well)
}
