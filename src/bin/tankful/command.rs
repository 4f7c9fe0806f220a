//! What the command takes: its subcommands and options, with the words of the locale files.

use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use std::path::PathBuf;
use tankful::core::candidates::CandidateId;
use tankful::core::futures::Wishes;
use tankful::core::units::UnitSystem;
use tankful::text::Words;

/// Subcommands.
pub const ADVISE: &str = "advise";
/// See [`ADVISE`].
pub const PLAN: &str = "plan";
/// See [`ADVISE`].
pub const RATE: &str = "rate";
/// See [`ADVISE`].
pub const CALIBRATE: &str = "calibrate";
/// See [`ADVISE`].
pub const HANDOVER: &str = "handover";
/// See [`ADVISE`].
pub const CALENDAR: &str = "calendar";
/// See [`ADVISE`].
pub const SCHEMA: &str = "schema";
/// See [`ADVISE`].
pub const QUESTIONS: &str = "questions";
/// See [`ADVISE`].
pub const EXAMPLE: &str = "example";
/// Not in the help: for measuring instructions of one simulated year.
pub const MEASURE_YEAR: &str = "measure-year";

/// Options.
pub const FILE: &str = "file";
/// See [`FILE`].
pub const TEXT: &str = "text";
/// See [`FILE`].
pub const FUTURES: &str = "futures";
/// See [`FILE`].
pub const SEED: &str = "seed";
/// See [`FILE`].
pub const SERIES: &str = "series";
/// See [`FILE`].
pub const CSV: &str = "csv";
/// See [`FILE`].
pub const HEATER: &str = "heater";
/// See [`FILE`].
pub const JOBS: &str = "jobs";
/// See [`FILE`].
pub const OFFER: &str = "offer";
/// See [`FILE`].
pub const CANDIDATE: &str = "candidate";
/// See [`FILE`].
pub const DATE: &str = "date";
const UNITS: &str = "units";

/// The command.
pub fn build(words: &Words) -> Command {
    let text = || Arg::new(TEXT).long(TEXT).action(ArgAction::SetTrue).help(words.key("cli-text"));
    let units = || {
        let choices = clap::builder::PossibleValuesParser::new(["us", "si"]);
        Arg::new(UNITS).long(UNITS).value_parser(choices).default_value("us").help(words.key("cli-units"))
    };
    let file = || {
        Arg::new(FILE)
            .required(true)
            .value_name("FILE")
            .value_parser(value_parser!(PathBuf))
            .help(words.key("cli-file"))
    };
    let of_heaters = |name: &'static str, about: &str| {
        let after = words.key("cli-heater-after");
        Command::new(name).about(words.key(about)).after_help(after).arg(file()).arg(text()).arg(units())
    };
    let series = |help: &str| {
        Arg::new(SERIES).long(SERIES).action(ArgAction::SetTrue).conflicts_with(TEXT).help(words.key(help))
    };
    let after = |name: &'static str, about: &str| {
        let heaters = clap::builder::PossibleValuesParser::new(CandidateId::ALL.map(CandidateId::code));
        let heater = Arg::new(HEATER).long(HEATER).value_parser(heaters).hide_possible_values(true);
        Command::new(name)
            .about(words.key(about))
            .after_help(words.key("cli-after-after"))
            .arg(file())
            .arg(heater.help(words.key("cli-heater")))
            .arg(Arg::new(DATE).long(DATE).value_name("YYYY-MM-DD").help(words.key("cli-date")))
            .arg(units())
    };
    Command::new("tankful")
        .version(env!("CARGO_PKG_VERSION"))
        .about(words.key("cli-about"))
        .after_help(words.key("cli-after"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommand(
            Command::new(ADVISE)
                .about(words.key("cli-advise"))
                .after_help(words.key("cli-advise-after"))
                .arg(file())
                .arg(text())
                .arg(units())
                .arg(series("cli-series"))
                .arg(
                    Arg::new(FUTURES)
                        .long(FUTURES)
                        .value_name("N")
                        .value_parser(value_parser!(u32).range(1..=i64::from(Wishes::MOST)))
                        .help(words.key("cli-futures")),
                )
                .arg(
                    Arg::new(SEED)
                        .long(SEED)
                        .value_name("S")
                        .value_parser(value_parser!(u32))
                        .default_value("1")
                        .requires(FUTURES)
                        .help(words.key("cli-seed")),
                ),
        )
        .subcommand(
            Command::new(PLAN)
                .about(words.key("cli-plan"))
                .after_help(words.key("cli-plan-after"))
                .arg(file())
                .arg(text())
                .arg(units())
                .arg(
                    Arg::new(CSV)
                        .long(CSV)
                        .action(ArgAction::SetTrue)
                        .conflicts_with(TEXT)
                        .help(words.key("cli-plan-csv")),
                )
                .arg(
                    Arg::new(HEATER)
                        .long(HEATER)
                        .value_name("CODE")
                        .value_parser(clap::builder::PossibleValuesParser::new(
                            CandidateId::ALL.map(CandidateId::code),
                        ))
                        .hide_possible_values(true)
                        .help(words.key("cli-plan-heater")),
                ),
        )
        .subcommand(of_heaters(RATE, "cli-rate").arg(series("cli-rate-series")))
        .subcommand(of_heaters(CALIBRATE, "cli-calibrate"))
        .subcommand(after(HANDOVER, "cli-handover").arg(text()))
        .subcommand(after(CALENDAR, "cli-calendar"))
        .subcommand(
            Command::new(SCHEMA)
                .about(words.key("cli-schema"))
                .arg(Arg::new(JOBS).long(JOBS).action(ArgAction::SetTrue).help(words.key("cli-schema-jobs"))),
        )
        .subcommand(Command::new(QUESTIONS).about(words.key("cli-questions")).arg(text()).arg(units()))
        .subcommand(
            Command::new(EXAMPLE).about(words.key("cli-example")).arg(
                Arg::new(OFFER).long(OFFER).action(ArgAction::SetTrue).help(words.key("cli-example-offer")),
            ),
        )
        .subcommand(Command::new(MEASURE_YEAR).hide(true).arg(
            Arg::new(CANDIDATE).required(true).value_parser(clap::builder::PossibleValuesParser::new(
                CandidateId::ALL.map(CandidateId::code),
            )),
        ))
}

/// The units asked for; US customary where a subcommand has no such option.
pub fn units(arguments: &ArgMatches) -> UnitSystem {
    match arguments.try_get_one::<String>(UNITS) {
        Ok(Some(code)) if code == "si" => UnitSystem::Si,
        _ => UnitSystem::Us,
    }
}
