//! A job as text: what the browser keeps under one key, and what an exchange file holds of each job.
//! Reading never fails and never guesses: what cannot be read is set aside in the job itself and told.
//!
//! ```json
//! { "tankful_job": 3, "id": "00c0ffee1234", "revision": 7, "created": 1767225600000, "changed": 1767229200000,
//!   "name": "Example", "place": "12 Example Road", "notes": "Key under the mat",
//!   "answers": { "adults": 2, "room_volume": { "value": 1000, "unit": "ft3", "from": "measured" } },
//!   "offer": {}, "asked": ["heater_age"],
//!   "log": [{ "question": "room_volume", "value": { "value": 1000, "unit": "ft3" }, "at": 1767229200000, "who": "Ann" }],
//!   "done": [{ "what": "step.water_off", "is": "yes", "at": 1767229200000, "who": "Ann" }] }
//! ```
//!
//! Times are ms since 1970. Answers are written as in a case ([`super::file`]), the offer as in
//! [`super::offer`], what was done as in [`super::done`]. Version 1, a single nameless record of answers, is read
//! too, and version 2, which had no `done`: a job with nothing done is still written so, for older programs.

use super::answers::Answer;
use super::done::Done;
use super::file::{CaseError, Trouble, Wanted, answers as answers_json, units_of, value as value_json};
use super::form::{self, Object, put, put_text};
use super::offer;
use super::questions::{Id, Question, Value};
use super::sheet::{Job, JobId, LONGEST_WHO, MOST_ASIDE, MOST_MEASURED, Measured, Part, Why};
use crate::core::case::Provenance;
use serde_json::Value as Json;

/// The newest version written.
pub const VERSION: u64 = 3;
/// The version written of a job that has nothing new in it.
pub const BEFORE_DONE: u64 = 2;
/// Longest text read, bytes.
pub const MOST_BYTES: usize = 4 << 20;
/// Key of the single record of version 1.
pub const FIRST_KEY: &str = "tankful.job.1";
/// Last time there is in a browser, ms since 1970 (ECMAScript, from memory).
const MOST_MS: f64 = 8.64e15;
/// Keys of jobs: this and the identity's code.
pub const KEY: &str = "tankful.job.2.";

/// What a kept text turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Reading {
    /// A job, and what could not be read of it (set aside in the job, and told): empty when it is whole.
    Job(Box<Job>, Vec<CaseError>),
    /// Written by a newer program: leave it as it is.
    Newer,
    /// No job.
    Foreign,
}

impl JobId {
    /// The key a job is kept under.
    pub fn key(self) -> String {
        format!("{KEY}{}", self.code())
    }

    /// The job kept under a key; `None` for other keys.
    pub fn of_key(key: &str) -> Option<JobId> {
        JobId::from_code(key.strip_prefix(KEY)?)
    }
}

impl Job {
    /// As text to keep; [`Job::read`] gives the same job back.
    pub fn to_text(&self) -> String {
        self.to_json().to_string()
    }

    /// As JSON.
    pub fn to_json(&self) -> Json {
        let mut all = Object::new();
        let done = self.done.to_json();
        put(&mut all, "tankful_job", if done.is_some() { VERSION } else { BEFORE_DONE }.into());
        put(&mut all, "id", self.id.code().into());
        put(&mut all, "revision", self.revision.into());
        put(&mut all, "created", form::number(self.created_ms));
        put(&mut all, "changed", form::number(self.changed_ms));
        if self.archived {
            put(&mut all, "archived", true.into());
        }
        for part in Part::ALL {
            put_text(&mut all, part.code(), self.text(part));
        }
        put(&mut all, "answers", answers_json(&self.answers));
        if !self.offer.is_empty() {
            put(&mut all, "offer", offer::to_json(&self.offer));
        }
        if !self.asked.is_empty() {
            put(&mut all, "asked", self.asked.iter().map(|id| id.code()).collect());
        }
        if !self.log.is_empty() {
            put(&mut all, "log", self.log.iter().map(measured).collect());
        }
        if let Some(done) = done {
            put(&mut all, "done", done);
        }
        if !self.aside.is_empty() {
            let aside = self.aside.iter().map(|a| {
                let mut one = Object::new();
                put(&mut one, "field", a.field.as_str().into());
                put(&mut one, "text", a.text.as_str().into());
                put(&mut one, "why", a.why.code().into());
                put(&mut one, "at", form::number(a.at_ms));
                Json::from(one)
            });
            put(&mut all, "aside", aside.collect());
        }
        all.into()
    }

    /// Reads a kept text. `id` is taken where the text has none (version 1).
    pub fn read(text: &str, id: JobId) -> Reading {
        if text.len() > MOST_BYTES {
            return Reading::Foreign;
        }
        match serde_json::from_str::<Json>(text) {
            Ok(json) => Job::read_json(&json, id),
            Err(_) => Reading::Foreign,
        }
    }

    /// Reads a job from JSON.
    pub fn read_json(json: &Json, id: JobId) -> Reading {
        let Json::Object(all) = json else { return Reading::Foreign };
        let whole = |name: &str| all.get(name).and_then(Json::as_u64);
        let first = whole("version") == Some(1) && !all.contains_key("tankful_job");
        match whole("tankful_job") {
            Some(BEFORE_DONE | VERSION) => {}
            Some(newer) if newer > VERSION => return Reading::Newer,
            _ if first => {}
            _ => return Reading::Foreign,
        }
        // Without a revision nobody knows which work is newer.
        let (Some(revision), Some(Json::Object(_))) = (whole("revision"), all.get("answers")) else {
            return Reading::Foreign;
        };
        let mut reader = Reader { job: Job { id, revision, ..Job::default() }, refused: Vec::new() };
        for (name, json) in all {
            reader.field(name, json);
        }
        if first {
            reader.job.created_ms = reader.job.changed_ms;
        }
        Reading::Job(Box::new(reader.job), reader.refused)
    }
}

fn measured(m: &Measured) -> Json {
    let mut one = Object::new();
    put(&mut one, "question", m.id.code().into());
    put(&mut one, "value", value_json(m.id, &Answer { value: m.value.clone(), from: Provenance::Answered }));
    put(&mut one, "at", form::number(m.at_ms));
    put_text(&mut one, "who", &m.who);
    one.into()
}

struct Reader {
    job: Job,
    refused: Vec<CaseError>,
}

impl Reader {
    fn field(&mut self, name: &str, json: &Json) {
        let before = self.refused.len();
        let said = json.as_str();
        match name {
            // Read before.
            "tankful_job" | "version" | "revision" => {}
            "id" => match said.and_then(JobId::from_code) {
                Some(id) => self.job.id = id,
                None => self.refuse(name, json, Wanted::Code),
            },
            "created" => self.time(name, json, |job, ms| job.created_ms = ms),
            "changed" | "kept_at_ms" => self.time(name, json, |job, ms| job.changed_ms = ms),
            "archived" => match json.as_bool() {
                Some(archived) => self.job.archived = archived,
                None => self.refuse(name, json, Wanted::TrueFalse),
            },
            "answers" => self.answers(json),
            "offer" => self.job.offer = offer::read(name, json, &mut self.refused),
            "asked" => {
                let asked = form::list(name, json, Id::ALL.len(), &mut self.refused, id);
                for id in asked {
                    if !self.job.asked.contains(&id) {
                        self.job.asked.push(id);
                    }
                }
            }
            "log" => self.job.log = form::list(name, json, MOST_MEASURED, &mut self.refused, read_measured),
            "done" => self.job.done = Done::read(name, json, &mut self.refused),
            "aside" => self.aside(json),
            _ => match (Part::ALL.into_iter().find(|p| p.code() == name), said) {
                (Some(part), Some(text)) => {
                    self.job.write(part, text);
                    if text.chars().count() > part.longest() {
                        self.refused.push(CaseError::new(name, Trouble::LongText { most: part.longest() }));
                    }
                }
                (Some(_), None) => self.refuse(name, json, Wanted::Text),
                (None, _) => self.refused.push(form::unknown(&form::short(name), name)),
            },
        }
        // Answers are set aside one by one; of the rest, the whole field that has a fault.
        if self.refused.len() > before && name != "answers" {
            self.set_aside(name, json);
        }
    }

    fn set_aside(&mut self, field: &str, json: &Json) {
        let at = self.job.changed_ms;
        self.job.set_aside(field, json.to_string(), Why::Unreadable, at);
    }

    fn refuse(&mut self, field: &str, json: &Json, what: Wanted) {
        self.refused.push(form::wanted(field, json, what));
    }

    fn time(&mut self, field: &str, json: &Json, put: fn(&mut Job, f64)) {
        match json.as_f64().filter(|ms| (0.0..=MOST_MS).contains(ms)) {
            Some(ms) => put(&mut self.job, ms),
            None => self.refuse(field, json, Wanted::Number),
        }
    }

    fn answers(&mut self, json: &Json) {
        for (code, entry) in json.as_object().into_iter().flatten() {
            let field = format!("answers.{}", form::short(code));
            let set = match Id::from_code(code) {
                None => Err(form::unknown(&field, code)),
                Some(id) => read_answer(id, entry)
                    .and_then(|a| self.job.answers.set(id, a.value, a.from).map_err(Trouble::from))
                    .map_err(|trouble| CaseError::new(&*field, trouble)),
            };
            if let Err(error) = set {
                self.refused.push(error);
                self.set_aside(&field, entry);
            }
        }
    }

    fn aside(&mut self, json: &Json) {
        let text = |json: &Json, name: &str| json.get(name).and_then(Json::as_str).unwrap_or("").to_owned();
        for one in json.as_array().into_iter().flatten().take(MOST_ASIDE) {
            let why = Why::ALL.into_iter().find(|w| w.code() == text(one, "why")).unwrap_or(Why::Unreadable);
            let at = one.get("at").and_then(Json::as_f64).unwrap_or(0.0);
            self.job.set_aside(&text(one, "field"), text(one, "text"), why, at);
        }
    }
}

/// An answer as a case or as version 1 writes it: there, the number with its unit was nested.
fn read_answer(id: Id, json: &Json) -> Result<Answer, Trouble> {
    let from = match json.get("from").map(|f| f.as_str()) {
        None | Some(Some("answered")) => Provenance::Answered,
        Some(Some("measured")) => Provenance::Measured,
        Some(other) => {
            let options = ["answered", "measured"].map(str::to_owned).to_vec();
            return Err(Trouble::NotAnOption { given: form::short(other.unwrap_or("…")), options });
        }
    };
    let nested = json.get("value").filter(|v| v.is_object() || v.is_string());
    Ok(Answer { value: read_value(id, nested.unwrap_or(json))?, from })
}

fn read_value(id: Id, json: &Json) -> Result<Value, Trouble> {
    match json {
        Json::String(code) => Ok(Value::code(code)),
        number => form::read_quantity(number, &units_of(Question::get(id))).map(Value::Number),
    }
}

fn id(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Option<Id> {
    let code = json.as_str().unwrap_or("");
    let found = Id::from_code(code);
    if found.is_none() {
        refused.push(form::unknown(field, code));
    }
    found
}

fn read_measured(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Option<Measured> {
    let id = id(field, json.get("question").unwrap_or(&Json::Null), refused)?;
    let value = json.get("value").unwrap_or(&Json::Null);
    let checked =
        read_value(id, value).and_then(|v| super::answers::check(id, &v).map(|()| v).map_err(Trouble::from));
    let at_ms = json.get("at").and_then(Json::as_f64).unwrap_or(0.0);
    let who = offer::tidy(json.get("who").and_then(Json::as_str).unwrap_or(""), LONGEST_WHO);
    match checked {
        Ok(value) => Some(Measured { id, value, at_ms, who }),
        Err(trouble) => {
            refused.push(CaseError::new(field, trouble));
            None
        }
    }
}
