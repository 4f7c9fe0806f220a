//! Jobs in a file: one or all, to keep or to hand on, and what a file would change before it does.
//!
//! ```json
//! { "tankful_jobs": 1, "jobs": [ { "tankful_job": 3, … } ] }
//! ```
//!
//! Each job stands as it is kept ([`super::kept`]); a file with a single job may be that job alone.

use super::file::{CaseError, Trouble, Wanted};
use super::form::{self, Object, put};
use super::kept::Reading;
use super::merge::{self, Difference};
use super::sheet::{Job, JobId};
use serde_json::Value as Json;

/// Version of the form.
pub const VERSION: u64 = 1;
/// Largest file that is read, bytes.
pub const MOST_BYTES: usize = 50_000_000;
/// Most jobs read from a file.
pub const MOST_JOBS: usize = 5_000;

/// A file of these jobs.
pub fn export<'a>(jobs: impl Iterator<Item = &'a Job>) -> String {
    let mut all = Object::new();
    put(&mut all, "tankful_jobs", VERSION.into());
    put(&mut all, "jobs", jobs.map(Job::to_json).collect());
    Json::from(all).to_string()
}

/// What a file holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// Its jobs.
    pub jobs: Vec<Job>,
    /// What could not be read, with its field; parts of a job are set aside in it.
    pub refused: Vec<CaseError>,
}

/// Reads a file. `chance` gives an identity to each job that has none.
///
/// # Errors
/// Says why nothing of it can be read.
pub fn import(text: &str, mut chance: impl FnMut() -> u64) -> Result<Found, CaseError> {
    if text.len() > MOST_BYTES {
        return Err(CaseError::too_long(MOST_BYTES));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // The reader goes 128 levels deep and no deeper.
    let json: Json = serde_json::from_str(text)
        .map_err(|e| CaseError::new("", Trouble::NotJson { line: e.line(), column: e.column() }))?;
    let list = match json.get("tankful_jobs") {
        // A single job, as it is kept.
        None => vec![json],
        Some(version) if version.as_u64() != Some(VERSION) => {
            let trouble = Trouble::Version { given: form::shown(version), known: VERSION };
            return Err(CaseError::new("tankful_jobs", trouble));
        }
        Some(_) => match json {
            Json::Object(mut all) => match all.remove("jobs") {
                Some(Json::Array(list)) => list,
                other => return Err(form::wanted("jobs", &other.unwrap_or_default(), Wanted::List)),
            },
            other => return Err(form::wanted("", &other, Wanted::Object)),
        },
    };
    let mut found = Found::default();
    if list.len() > MOST_JOBS {
        found.refused.push(CaseError::new("jobs", Trouble::TooMany { most: MOST_JOBS }));
    }
    for (i, json) in list.iter().enumerate().take(MOST_JOBS) {
        let field = format!("jobs[{i}]");
        match Job::read_json(json, JobId::new(chance())) {
            Reading::Job(job, refused) => {
                found.refused.extend(refused.into_iter().map(|mut error| {
                    error.field = format!("{field}.{}", error.field);
                    error
                }));
                found.jobs.push(*job);
            }
            Reading::Newer => {
                let given = json.get("tankful_job").map_or_else(String::new, form::shown);
                let trouble = Trouble::Version { given, known: super::kept::VERSION };
                found.refused.push(CaseError::new(field, trouble));
            }
            Reading::Foreign => found.refused.push(form::wanted(&field, json, Wanted::Object)),
        }
    }
    if list.len() == 1
        && found.jobs.is_empty()
        && let Some(error) = found.refused.pop()
    {
        return Err(error);
    }
    Ok(found)
}

/// What a job of a file would do to the jobs here.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// It is not here yet.
    New,
    /// It is here and says the same.
    Same,
    /// It is here and says something else.
    Differs(Vec<Difference>),
}

/// What taking a job over would change; `here` is the job of the same identity, if there is one.
pub fn preview(job: &Job, here: Option<&Job>) -> Change {
    match here {
        None => Change::New,
        Some(here) => match merge::differences(here, job) {
            all if all.is_empty() => Change::Same,
            all => Change::Differs(all),
        },
    }
}
