//! `advise`, `plan`, `rate`, `calibrate`: cases or heaters in, advice out, a record at a time and in order, on every core, in bounded memory.

use crate::heater::{Ask, answer as answer_heater};
use crate::records::{Content, Record, Records};
use crate::{Ended, Stop, command, futures, plan};
use indicatif::{ProgressBar, ProgressStyle};
use rayon::prelude::*;
use serde::Serialize;
use std::cell::RefCell;
use std::fs::File;
use std::io::{self, BufReader, BufWriter, IsTerminal, Read, Write};
use std::path::Path;
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use tankful::core::case::Case;
use tankful::core::futures::Wishes as FutureWishes;
use tankful::core::message::{Arg, Message};
use tankful::core::outcome::Outcome;
use tankful::core::outlook;
use tankful::core::pipeline::{Cache, Run};
use tankful::job::complete::{DEFAULT_SEED, case_of};
use tankful::job::file::{CaseError, MOST_BYTES, parse_case, parse_heater};
use tankful::job::open::Open;
use tankful::job::resolved::Resolved;
use tankful::text::Words;
use tankful::text::report::{Report, plain};

/// Records computed together, for each core: enough to even out quick and slow ones, few enough that
/// advice on a slow stream is not held back.
const RECORDS_A_CORE: usize = 4;
/// Bad records told of on standard error; all of them stand in the output.
const TOLD: u64 = 100;
/// From how many records on a progress bar is worth its line.
const MANY: u64 = 8;

/// What the options ask for.
#[derive(Clone, Copy)]
struct Wishes {
    text: bool,
    series: bool,
    /// Futures to draw of each case.
    futures: Option<FutureWishes>,
    /// Heaters are asked about, not cases.
    heater: Option<Ask>,
    /// The day of the work is asked about, not the advice.
    plan: Option<plan::Ask>,
}

/// The advice on one record, ready to write.
struct Answered {
    /// Bytes of input read up to its end.
    read: u64,
    /// What goes to standard output.
    out: String,
    /// What is wrong with the record; empty when nothing is.
    errors: Vec<String>,
}

/// The report on a good record, with the line it began on.
#[derive(Serialize)]
struct GoodReport {
    line: u64,
    #[serde(flatten)]
    report: Report,
    #[serde(flatten)]
    futures: Option<futures::Answer>,
}

/// A bad record, as it stands in the output.
#[derive(Serialize)]
struct BadReport<'a> {
    line: u64,
    error: Vec<ErrorReport<'a>>,
}

/// One thing wrong with a record, as it stands in the output.
#[derive(Serialize)]
struct ErrorReport<'a> {
    field: &'a str,
    code: &'static str,
    text: String,
}

/// Runs the subcommand.
pub fn run(
    words: &Words,
    arguments: &clap::ArgMatches,
    heater: Option<Ask>,
    plan: Option<plan::Ask>,
) -> Result<Ended, Stop> {
    let series = matches!(arguments.try_get_one::<bool>(command::SERIES), Ok(Some(true)));
    let number = |name| arguments.try_get_one::<u32>(name).ok().flatten().copied();
    let futures = number(command::FUTURES)
        .map(|futures| FutureWishes { futures, seed: number(command::SEED).unwrap_or_default() });
    let wishes = Wishes { text: arguments.get_flag(command::TEXT), series, futures, heater, plan };
    let path = arguments.get_one::<std::path::PathBuf>(command::FILE).map_or(Path::new("-"), |p| p.as_path());
    let (input, size): (Box<dyn Read + Send>, Option<u64>) = if path == Path::new("-") {
        (Box::new(io::stdin()), None)
    } else {
        let unreadable = |e: io::Error| {
            Stop::Says(
                Message::new("cli-unreadable")
                    .with("file", Arg::Verbatim(path.display().to_string()))
                    .with("detail", Arg::Verbatim(e.to_string())),
            )
        };
        let file = File::open(path).map_err(unreadable)?;
        let about = file.metadata().map_err(unreadable)?;
        if about.is_dir() {
            return Err(unreadable(io::ErrorKind::IsADirectory.into()));
        }
        (Box::new(file), about.is_file().then_some(about.len()))
    };
    let together = RECORDS_A_CORE * rayon::current_num_threads();
    let (sender, records) = sync_channel(together);
    std::thread::spawn(move || read(Records::new(BufReader::with_capacity(1 << 16, input)), &sender));
    write(words, wishes, &records, together, size)
}

/// Reads ahead until the input ends or nobody wants more.
fn read(mut records: Records<impl io::BufRead>, sender: &SyncSender<io::Result<Record>>) {
    while let Some(next) = records.next().transpose() {
        let failed = next.is_err();
        if sender.send(next).is_err() || failed {
            return;
        }
    }
}

fn write(
    words: &Words,
    wishes: Wishes,
    records: &Receiver<io::Result<Record>>,
    together: usize,
    size: Option<u64>,
) -> Result<Ended, Stop> {
    let mut out = BufWriter::new(io::stdout().lock());
    let mut progress = Progress::new(words, size);
    let (mut done, mut bad) = (0u64, 0u64);
    // One is waited for; those that are there already go with it.
    while let Ok(first) = records.recv() {
        let mut chunk = vec![first?];
        while chunk.len() < together
            && let Ok(next) = records.try_recv()
        {
            chunk.push(next?);
        }
        let answered: Vec<Answered> = chunk.into_par_iter().map(|r| answer(words, wishes, r)).collect();
        for record in answered {
            if wishes.text && done > 0 {
                out.write_all(b"\n")?;
            }
            out.write_all(record.out.as_bytes())?;
            done += 1;
            if !record.errors.is_empty() {
                bad += 1;
                if bad <= TOLD {
                    progress.tell(&record.errors);
                }
            }
            progress.at(done, record.read);
        }
        out.flush()?;
    }
    progress.end();
    let summary = match (done, bad) {
        (0, _) => Some(Message::new("cli-no-records")),
        (_, 0) => None,
        _ => Some(Message::new("cli-bad-records").with("bad", count(bad)).with("all", count(done))),
    };
    let Some(summary) = summary else { return Ok(Ended::Well) };
    progress.tell(&[words.say(&summary)]);
    Ok(Ended::WithBadRecords)
}

fn count(n: u64) -> Arg {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

fn answer(words: &Words, wishes: Wishes, record: Record) -> Answered {
    let Record { line, read, content } = record;
    let refused = |errors: Vec<(String, &'static str, Message)>| {
        let said: Vec<ErrorReport> = errors
            .iter()
            .map(|(field, code, message)| ErrorReport { field, code, text: words.say(message) })
            .collect();
        let told = said.iter().map(|e| located(words, line, e)).collect::<Vec<_>>();
        let out = if wishes.text {
            told.iter().map(|t| format!("{t}\n")).collect()
        } else {
            json_line(&BadReport { line, error: said })
        };
        Answered { read, out, errors: told }
    };
    let text = match content {
        Content::Text(text) => text,
        Content::TooLong => return refused(vec![whole(&CaseError::too_long(MOST_BYTES))]),
        Content::NotText => return refused(vec![whole(&CaseError::not_text())]),
    };
    if let Some(ask) = wishes.heater {
        return match parse_heater(&text, ask == Ask::Calibrate) {
            Ok(file) => Answered {
                read,
                out: answer_heater(words, ask, line, &file, wishes.text, wishes.series),
                errors: Vec::new(),
            },
            Err(errors) => refused(errors.iter().map(whole).collect()),
        };
    }
    let case = match parse_case(&text) {
        Ok(case) => case,
        Err(errors) => return refused(errors.iter().map(whole).collect()),
    };
    let resolved = Resolved::of(&case.answers);
    let seed = case.seed.unwrap_or(DEFAULT_SEED);
    let whole_case = case_of(&resolved, &case.offer, seed);
    let outcome = outcome(&whole_case);
    if let Some(ask) = wishes.plan {
        return match plan::answer(words, ask, line, wishes.text, case.name, &whole_case, &outcome) {
            Ok(out) => Answered { read, out, errors: Vec::new() },
            Err(error) => refused(vec![error]),
        };
    }
    let ahead = || CACHE.with_borrow_mut(|cache| outlook::of(&whole_case, &outcome, cache));
    let futures = wishes.futures.and_then(|wished| {
        futures::answer(&Open::seeded(&case.answers, &case.offer, seed), &outcome, wished)
    });
    let out = if wishes.text {
        let more = futures.map(|f| futures::plain(words, &f, &outcome)).unwrap_or_default();
        plain(words, case.name.as_deref(), &resolved, &outcome, &ahead()) + &more
    } else {
        let report = Report::new(words, case.name, seed, &resolved, &outcome, &ahead(), wishes.series);
        json_line(&GoodReport { line, report, futures })
    };
    Answered { read, out, errors: Vec::new() }
}

thread_local! {
    /// Heaters calibrated and years simulated on this thread: most cases offer the same heaters.
    static CACHE: RefCell<Cache> = RefCell::default();
}

/// The outcome of a case; what is kept from earlier cases saves time and changes nothing.
fn outcome(case: &Case) -> Outcome {
    CACHE.with_borrow_mut(|cache| {
        let mut run = Run::new(case.clone(), cache);
        while run.step(cache) {}
        run.finish()
    })
}

/// One line of JSON. Structs of text and finite numbers always have a form in JSON.
pub fn json_line(record: &impl Serialize) -> String {
    serde_json::to_string(record).unwrap_or_default() + "\n"
}

fn whole(error: &CaseError) -> (String, &'static str, Message) {
    (error.field.clone(), error.trouble.code(), error.message())
}

/// An error with its place before it.
fn located(words: &Words, line: u64, error: &ErrorReport) -> String {
    let place = if error.field.is_empty() { "cli-at-line" } else { "cli-at-field" };
    words.say(
        &Message::new(place)
            .with("line", count(line))
            .with("field", Arg::Verbatim(error.field.to_owned()))
            .with("text", Arg::Verbatim(error.text.clone())),
    )
}

/// The progress bar: on standard error, when that is a terminal and there are many records.
struct Progress {
    bar: Option<ProgressBar>,
    wanted: bool,
    size: Option<u64>,
    template: String,
}

impl Progress {
    fn new(words: &Words, size: Option<u64>) -> Self {
        let template = words.key(if size.is_some() { "cli-progress" } else { "cli-progress-endless" });
        Self { bar: None, wanted: io::stderr().is_terminal(), size, template }
    }

    fn at(&mut self, done: u64, read: u64) {
        if self.wanted && self.bar.is_none() && done > MANY {
            let bar = self.size.map_or_else(ProgressBar::new_spinner, ProgressBar::new);
            if let Ok(style) = ProgressStyle::with_template(&self.template) {
                bar.set_style(style);
            }
            self.bar = Some(bar);
        }
        if let Some(bar) = &self.bar {
            bar.set_position(read);
            bar.set_message(done.to_string());
        }
    }

    fn tell(&self, lines: &[String]) {
        let tell = || {
            let mut err = io::stderr().lock();
            for line in lines {
                // Nobody listening is no reason to stop.
                let _ = writeln!(err, "{line}");
            }
        };
        match &self.bar {
            Some(bar) => bar.suspend(tell),
            None => tell(),
        }
    }

    fn end(&self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}
