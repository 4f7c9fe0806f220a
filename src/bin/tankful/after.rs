//! `handover` and `calendar`: what comes after the work, for cases or for jobs of a file. A job brings the heater that
//! was decided on, the day it was put in, and what was read at the start; for a case, options say so.

use crate::command::{self, DATE, HEATER};
use crate::{Ended, Stop};
use serde_json::{Value as Json, json};
use std::io::{Read, Write};
use std::path::Path;
use tankful::core::after::care::Due;
use tankful::core::after::handover::{Handover, handover};
use tankful::core::after::meter::{Against, compare};
use tankful::core::after::start::{Expected, Reading, Standing, Start, Taken, causes, expected};
use tankful::core::after::{Date, Fitted};
use tankful::core::candidates::CandidateId;
use tankful::core::case::Case;
use tankful::core::message::{Arg, Message};
use tankful::core::outcome::{CandidateOutcome, Outcome};
use tankful::core::pipeline;
use tankful::job::complete::{DEFAULT_SEED, case_of};
use tankful::job::file::{CaseError, parse_case};
use tankful::job::resolved::Resolved;
use tankful::job::{Job, JobId, after as kept, exchange};
use tankful::text::{Words, after as said};

/// Runs `handover`, or `calendar`.
pub fn run(
    words: &Words,
    arguments: &clap::ArgMatches,
    calendar: bool,
    out: &mut impl Write,
) -> Result<Ended, Stop> {
    let path = arguments.get_one::<std::path::PathBuf>(command::FILE).map_or(Path::new("-"), |p| p.as_path());
    let text = read(path)?;
    let heater = arguments.get_one::<String>(HEATER).and_then(|code| CandidateId::from_code(code));
    let date = arguments.get_one::<String>(DATE);
    let date = match date.map(|text| Date::parse(text)) {
        Some(None) => return Err(Stop::Says(Message::new("cli-bad-date"))),
        other => other.flatten(),
    };
    let in_text = !calendar && arguments.get_flag(command::TEXT);
    let (mut all, mut bad) = (0, 0);
    for found in jobs(&text) {
        all += 1;
        let job = match found {
            Ok(job) => job,
            Err(error) => {
                bad += 1;
                let says = format!("{}: {}", error.field, words.say(&error.message()));
                eprintln!("{}", says.trim_start_matches(": "));
                continue;
            }
        };
        let Some(installed) = kept::date(&job.done, kept::INSTALLED).or(date) else {
            return Err(Stop::Says(Message::new("cli-no-date")));
        };
        let case = case_of(&Resolved::of(&job.answers), &job.offer, DEFAULT_SEED);
        let outcome = pipeline::advise(&case);
        let wanted = heater.or_else(|| kept::heater(&job.done)).unwrap_or(outcome.advice.best);
        let Some(chosen) = outcome.of(wanted) else {
            return Err(Stop::Says(Message::new("cli-no-heater")));
        };
        let made = Made { words, job: &job, case: &case, outcome: &outcome, chosen, installed };
        let written = match (calendar, in_text) {
            (true, _) => said::calendar(words, &job.id.code(), &made.fitted(), installed),
            (false, true) => made.plain(),
            (false, false) => made.json().to_string() + "\n",
        };
        out.write_all(written.as_bytes())?;
    }
    if all == 0 {
        eprintln!("{}", words.key("cli-no-records"));
    }
    Ok(if all == 0 || bad > 0 { Ended::WithBadRecords } else { Ended::Well })
}

fn read(path: &Path) -> Result<String, Stop> {
    let unreadable = |e: std::io::Error| {
        Stop::Says(
            Message::new("cli-unreadable")
                .with("file", Arg::Verbatim(path.display().to_string()))
                .with("detail", Arg::Verbatim(e.to_string())),
        )
    };
    let mut text = String::new();
    let most = exchange::MOST_BYTES as u64 + 1;
    if path == Path::new("-") {
        std::io::stdin().take(most).read_to_string(&mut text).map_err(unreadable)?;
    } else {
        let file = std::fs::File::open(path).map_err(unreadable)?;
        file.take(most).read_to_string(&mut text).map_err(unreadable)?;
    }
    Ok(text)
}

/// The jobs of a text: a file of jobs, one case, or a case a line. A case has no identity: it gets none's.
fn jobs(text: &str) -> Vec<Result<Job, CaseError>> {
    let json: Option<Json> = serde_json::from_str(text).ok();
    if json.as_ref().is_some_and(|j| j.get("tankful_jobs").is_some() || j.get("tankful_job").is_some()) {
        return match exchange::import(text, || 0) {
            Ok(found) => found.jobs.into_iter().map(Ok).chain(found.refused.into_iter().map(Err)).collect(),
            Err(error) => vec![Err(error)],
        };
    }
    let records: Vec<&str> =
        if json.is_some() { vec![text] } else { text.lines().filter(|l| !l.trim().is_empty()).collect() };
    let one = |record: &str| match parse_case(record) {
        Ok(case) => {
            let mut job = Job::new(JobId::new(0), 0.0);
            job.name = case.name.unwrap_or_default();
            (job.answers, job.offer) = (case.answers, case.offer);
            vec![Ok(job)]
        }
        Err(errors) => errors.into_iter().take(1).map(Err).collect(),
    };
    records.into_iter().flat_map(one).collect()
}

/// All that one job's answer is made of.
struct Made<'a> {
    words: &'a Words,
    job: &'a Job,
    case: &'a Case,
    outcome: &'a Outcome,
    chosen: &'a CandidateOutcome,
    installed: Date,
}

impl Made<'_> {
    fn fitted(&self) -> Fitted<'_> {
        Fitted::of(self.case, self.outcome, self.chosen)
    }

    fn page(&self) -> Handover {
        handover(&self.fitted(), self.installed)
    }

    fn readings(&self) -> (Taken, Vec<Expected>) {
        let taken = kept::taken(&self.job.done);
        let all = expected(&Start::new(self.fitted(), self.installed), &taken);
        (taken, all)
    }

    fn json(&self) -> Json {
        let page = self.page();
        let say = |m: &Message| json!({ "id": m.id, "text": self.words.say(m) });
        let topics: serde_json::Map<String, Json> = page
            .topics
            .iter()
            .map(|(topic, says)| (topic.code().to_owned(), says.iter().map(say).collect()))
            .collect();
        let months: Vec<Json> = page
            .months
            .iter()
            .map(|m| json!({ "electricity_kwh": m.electricity_kwh, "fuel_kwh": m.fuel_kwh, "usd": m.money }))
            .collect();
        let care: Vec<Json> = page
            .care
            .iter()
            .map(|due| {
                json!({ "task": due.task.code(), "first": due.first.iso(), "every_months": due.every_months,
                    "by": self.words.key(due.hands.key()), "says": say(&due.how) })
            })
            .collect();
        json!({
            "tankful": 1,
            "name": self.job.name,
            "heater": self.chosen.candidate.id.code(),
            "installed": self.installed.iso(),
            "says": say(&page.installed),
            "topics": topics,
            "months": months,
            "care": care,
            "startup": self.startup(),
            "meter": self.meter(),
        })
    }

    /// Each reading with its range, in SI; with what was measured, how it stands and the likely causes.
    fn startup(&self) -> Vec<Json> {
        let (taken, all) = self.readings();
        let kind = self.chosen.candidate.label.kind;
        let one = |e: &Expected| {
            let unit = e.reading.base_unit();
            let shown = |base: f64| unit.from_base(base);
            let (standing, why) = match e.standing(&taken) {
                Standing::Open => ("open", Vec::new()),
                Standing::Within => ("as_expected", Vec::new()),
                Standing::Off(side) => {
                    let keys = causes(e.reading, side, kind).iter();
                    ("off", keys.map(|key| json!({ "id": key, "text": self.words.key(key) })).collect())
                }
            };
            json!({ "reading": e.reading.code(), "unit": unit.code(), "low": shown(e.low), "likely": shown(e.likely),
                "high": shown(e.high), "why": self.words.say(&e.reason), "measured": taken.get(e.reading).map(shown),
                "standing": standing, "causes": why })
        };
        all.iter().map(one).collect()
    }

    /// The meter's verdict, where readings are kept; what is wrong with them otherwise.
    fn meter(&self) -> Json {
        let Some(readings) = kept::readings(&self.job.done, self.case.heater.kind.value) else {
            return Json::Null;
        };
        let Some(before) = self.outcome.of(CandidateId::Keep) else { return Json::Null };
        match compare(&self.fitted(), &before.year, &readings) {
            Err(bad) => json!({ "error": self.words.say(&bad.message()) }),
            Ok(c) => json!({
                "days": c.days, "expected_kwh": c.expected_kwh, "measured_kwh": c.measured_kwh,
                "low_kwh": c.band_kwh.0, "high_kwh": c.band_kwh.1,
                "against": match c.against {
                    Against::Less => "less",
                    Against::AsExpected => "as_expected",
                    Against::More => "more",
                },
                "reasons": c.reasons.iter().map(|key| self.words.key(key)).collect::<Vec<_>>(),
            }),
        }
    }

    fn plain(&self) -> String {
        let (page, words) = (self.page(), self.words);
        let mut out = format!("{}\n", words.say(&page.installed));
        for (topic, says) in &page.topics {
            out += &format!("\n{}\n", words.key(topic.key()));
            for m in says {
                out += &format!("  - {}\n", words.say(m));
            }
        }
        out += &format!("\n{}\n", words.key("care-heading"));
        let care = |due: &Due| format!("  - {}: {}\n", words.key(due.task.key()), said::when(words, due));
        out.extend(page.care.iter().map(care));
        out += &format!("\n{}\n", words.key("after-startup"));
        let (_, all) = self.readings();
        let reading = |e: &Expected| {
            let name = words.key(Reading::key(e.reading));
            format!("  - {name}: {} {}\n", said::range(words, e), words.say(&e.reason))
        };
        out.extend(all.iter().map(reading));
        out
    }
}
