//! Two versions of a job into one, without loss: what is not taken is set aside in the job.
//!
//! Between two jobs ([`differences`], [`apply`]): field by field; measured beats answered beats nothing, of
//! equals the newer one wins, and a person may choose otherwise. What the other one lacks never takes anything
//! away. Between two tabs ([`tabs`]): against what both had before, each side's changes are taken; where both
//! changed the same thing the newer revision wins. Where that is not known ([`beside`]), one stands as it is.
//! What was done ([`super::done`]) is joined entry by entry, the later one standing; what gives way is set aside.

use super::answers::Answer;
use super::done::Done;
use super::file::value as value_json;
use super::offer;
use super::questions::{self, Id};
use super::sheet::{Job, Part, Why};
use crate::core::case::Provenance;
use serde_json::Value as Json;

/// Something that two versions of a job may have differently.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// An answer.
    Answer(Id),
    /// A text.
    Text(Part),
    /// The offer.
    Offer,
    /// The questions asked.
    Asked,
    /// What was done.
    Done,
}

/// Which version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The job here.
    Ours,
    /// The one that came.
    Theirs,
}

/// A difference, and which side is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Difference {
    /// Where.
    pub field: Field,
    /// The side taken: a proposal that a person may change.
    pub take: Side,
}

impl Field {
    /// Every field that is taken from one side; what was done is joined.
    pub fn all() -> impl Iterator<Item = Field> {
        let answers = questions::all().map(|q| Field::Answer(q.id));
        answers.chain(Part::ALL.map(Field::Text)).chain([Field::Offer, Field::Asked])
    }

    /// The name under which it is set aside.
    fn name(self) -> String {
        match self {
            Field::Answer(id) => format!("answers.{}", id.code()),
            Field::Text(part) => part.code().to_owned(),
            Field::Offer => String::from("offer"),
            Field::Asked => String::from("asked"),
            Field::Done => String::from("done"),
        }
    }

    /// What a job has there, in JSON; `None` for nothing.
    fn of(self, job: &Job) -> Option<Json> {
        match self {
            Field::Answer(id) => job.answers.get(id).map(|a| value_json(id, a)),
            Field::Text(part) => Some(job.text(part)).filter(|t| !t.is_empty()).map(Json::from),
            Field::Offer => (!job.offer.is_empty()).then(|| offer::to_json(&job.offer)),
            Field::Asked => (!job.asked.is_empty()).then(|| job.asked.iter().map(|id| id.code()).collect()),
            Field::Done => job.done.to_json(),
        }
    }

    /// What an answer there rests on; nothing and everything else rests on the weakest.
    fn rests_on(self, job: &Job) -> Provenance {
        match self {
            Field::Answer(id) => job.answers.get(id).map_or(Provenance::Assumed, |a| a.from),
            _ => Provenance::Assumed,
        }
    }

    fn copy(self, from: &Job, to: &mut Job) {
        match self {
            Field::Answer(id) => match from.answers.get(id) {
                Some(Answer { value, from }) => {
                    // It was an answer before: it cannot be refused.
                    let _ = to.answers.set(id, value.clone(), *from);
                }
                None => to.answers.clear(id),
            },
            Field::Text(part) => to.write(part, from.text(part)),
            Field::Offer => to.offer = from.offer.clone(),
            Field::Asked => to.asked.clone_from(&from.asked),
            Field::Done => to.done.clone_from(&from.done),
        }
    }
}

/// Where another version of a job has something else than ours, each with the side to take.
pub fn differences(ours: &Job, theirs: &Job) -> Vec<Difference> {
    let newer = theirs.changed_ms > ours.changed_ms;
    let different = |field: &Field| field.of(theirs).is_some_and(|t| field.of(ours) != Some(t));
    let take = |field: Field| {
        let (our, their) = (field.rests_on(ours), field.rests_on(theirs));
        let theirs = field.of(ours).is_none() || their > our || (their == our && newer);
        Difference { field, take: if theirs { Side::Theirs } else { Side::Ours } }
    };
    let mut all: Vec<Difference> = Field::all().filter(different).map(take).collect();
    let mut joined = ours.done.clone();
    joined.join(&theirs.done);
    if joined != ours.done {
        all.push(Difference { field: Field::Done, take: Side::Theirs });
    }
    all
}

/// Takes over what the differences say; the other side of each is set aside, the logs are joined. Taking
/// what was done from theirs joins it; what is ours is never dropped for it.
pub fn apply(ours: &mut Job, theirs: &Job, differences: &[Difference], now_ms: f64) {
    for Difference { field, take } in differences {
        let left = match take {
            // Joined below.
            Side::Theirs if *field == Field::Done => None,
            Side::Ours => field.of(theirs),
            Side::Theirs => {
                let left = field.of(ours);
                field.copy(theirs, ours);
                left
            }
        };
        if let Some(left) = left {
            ours.set_aside(&field.name(), left.to_string(), Why::Merged, now_ms);
        }
    }
    let joins = |d: &Difference| d.field != Field::Done || d.take == Side::Theirs;
    let done = if differences.iter().all(joins) { &theirs.done } else { &Done::default() };
    join(ours, theirs);
    join_done(ours, done, &Done::default(), Why::Merged, now_ms);
    ours.touch(now_ms);
}

/// One job of what two tabs made of the same one. `base`: as both had it before.
pub fn tabs(base: &Job, ours: &Job, theirs: &Job, now_ms: f64) -> Job {
    let (newer, older) =
        if theirs.is_newer_than(ours.revision, ours.changed_ms) { (theirs, ours) } else { (ours, theirs) };
    let mut merged = newer.clone();
    for field in Field::all() {
        let (b, n, o) = (field.of(base), field.of(newer), field.of(older));
        if n == o || o == b {
            continue;
        }
        if n == b {
            field.copy(older, &mut merged);
        } else if let Some(left) = o {
            merged.set_aside(&field.name(), left.to_string(), Why::OtherTab, now_ms);
        }
    }
    if newer.archived == base.archived {
        merged.archived = older.archived;
    }
    join(&mut merged, older);
    join_done(&mut merged, &older.done, &base.done, Why::OtherTab, now_ms);
    merged.revision = newer.revision + 1;
    merged.changed_ms = now_ms;
    merged
}

/// Keeps beside a job, which stands, what another tab made of it at the same time; for where nobody knows any more
/// what both had before.
pub fn beside(stands: &mut Job, other: &Job, now_ms: f64) {
    for field in Field::all() {
        let left = field.of(other);
        if left != field.of(stands)
            && let Some(left) = left
        {
            stands.set_aside(&field.name(), left.to_string(), Why::OtherTab, now_ms);
        }
    }
    join(stands, other);
    join_done(stands, &other.done, &Done::default(), Why::OtherTab, now_ms);
}

/// Joins what was done; what gives way to a later entry is set aside, unless both sides had it `before`.
fn join_done(to: &mut Job, from: &Done, before: &Done, why: Why, now_ms: f64) {
    if let Some(left) = to.done.join(from).without(before).to_json() {
        to.set_aside(&Field::Done.name(), left.to_string(), why, now_ms);
    }
}

/// Joins the logs and what was set aside.
fn join(to: &mut Job, from: &Job) {
    for m in &from.log {
        if !to.log.contains(m) {
            to.record(m.clone());
        }
    }
    for a in &from.aside {
        to.set_aside(&a.field, a.text.clone(), a.why, a.at_ms);
    }
}
