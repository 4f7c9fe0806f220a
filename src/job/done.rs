//! What was done on a job and what was read there: which heater was decided on, parts ticked, steps
//! confirmed, start-up readings, bills. One entry a thing, under a code; of two entries of one code the later
//! stands, so that records made in two places join the same way in any order.
//!
//! Codes belong to whoever writes them (`part.…`, `step.…`, `reading.…`, `meter.…`): this room keeps those it
//! does not know. Nothing is taken out: what is taken back is written as an empty text, since a mere
//! gap would be filled again by another copy of the job.

use super::file::{CaseError, Trouble, Wanted};
use super::form::{self, Object, put, put_text};
use super::offer::tidy;
use super::questions::Value;
use super::sheet::LONGEST_WHO;
use crate::core::units::Unit;
use serde_json::Value as Json;

/// Most entries; the oldest make room.
pub const MOST: usize = 1_000;
/// Longest code, letters.
pub const LONGEST_WHAT: usize = 60;
/// Longest text, letters.
pub const LONGEST_IS: usize = 200;
/// Last time there is in a browser, ms since 1970 (ECMAScript, from memory).
const MOST_MS: f64 = 8.64e15;

/// One thing done or read.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// What it is about: `heater`, `part.union`, `step.water_off`, `reading.air_in`.
    pub what: String,
    /// What was chosen, read or confirmed; an empty text where it was taken back.
    pub is: Value,
    /// When, ms since 1970.
    pub at_ms: f64,
    /// Who, as they call themselves; may be empty.
    pub who: String,
}

/// Everything done on a job, by code.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Done(Vec<Entry>);

impl Entry {
    /// An entry, cut to its bounds. `None` where the code is empty or too long, or a number is not finite.
    pub fn new(what: &str, is: Value, at_ms: f64, who: &str) -> Option<Entry> {
        let sound = !what.is_empty() && tidy(what, LONGEST_WHAT) == what;
        let is = match is {
            Value::Number(q) => Some(Value::Number(q)).filter(|_| q.value.is_finite())?,
            Value::Code(text) => Value::Code(tidy(&text, LONGEST_IS)),
        };
        let at_ms = if (0.0..=MOST_MS).contains(&at_ms) { at_ms } else { 0.0 };
        sound.then(|| Entry { what: what.to_owned(), is, at_ms, who: tidy(who, LONGEST_WHO) })
    }

    fn to_json(&self) -> Json {
        let mut one = Object::new();
        put(&mut one, "what", self.what.as_str().into());
        let is = match &self.is {
            Value::Code(text) => text.as_str().into(),
            Value::Number(q) => form::quantity(*q, &[]),
        };
        put(&mut one, "is", is);
        put(&mut one, "at", form::number(self.at_ms));
        put_text(&mut one, "who", &self.who);
        one.into()
    }

    fn text(&self) -> String {
        self.to_json().to_string()
    }

    /// Whether this stands over another of its code: the later one; of the same moment the one whose text is
    /// greater, so that both sides of a merge decide alike.
    fn stands_over(&self, other: &Entry) -> bool {
        self.at_ms > other.at_ms || (self.at_ms == other.at_ms && self.text() > other.text())
    }
}

impl Done {
    /// The entry of a code; one that was taken back counts as none.
    pub fn get(&self, what: &str) -> Option<&Value> {
        self.entry(what).map(|e| &e.is)
    }

    /// The same with when and who.
    pub fn entry(&self, what: &str) -> Option<&Entry> {
        let found = self.0.get(self.place(what)).filter(|e| e.what == what)?;
        Some(found).filter(|e| !matches!(&e.is, Value::Code(text) if text.is_empty()))
    }

    /// Every entry, those taken back too, in the order of codes.
    pub fn all(&self) -> &[Entry] {
        &self.0
    }

    /// Entries whose codes begin with this, without those taken back, in the order of codes.
    pub fn under<'a>(&'a self, stem: &'a str) -> impl Iterator<Item = &'a Entry> {
        self.0.iter().filter(move |e| e.what.starts_with(stem) && self.get(&e.what).is_some())
    }

    /// True where nothing was ever entered.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Enters something done now, over what stood there. An entry never goes back in time, or what was
    /// entered last would not stand once it meets another copy.
    pub fn note(&mut self, what: &str, is: Value, now_ms: f64, who: &str) {
        let before = self.0.get(self.place(what)).filter(|e| e.what == what);
        let at = before.map_or(now_ms, |b| if b.at_ms >= now_ms { b.at_ms + 1.0 } else { now_ms });
        if let Some(entry) = Entry::new(what, is, at, who) {
            self.put(entry);
        }
    }

    /// Takes back what stood under a code.
    pub fn take_back(&mut self, what: &str, now_ms: f64, who: &str) {
        if self.get(what).is_some() {
            self.note(what, Value::code(""), now_ms, who);
        }
    }

    /// Takes over another copy's entries, the later of each code; gives back what gave way.
    pub(super) fn join(&mut self, other: &Done) -> Done {
        let mut gave_way = Done::default();
        for theirs in &other.0 {
            match self.0.get(self.place(&theirs.what)).filter(|ours| ours.what == theirs.what) {
                Some(ours) if ours == theirs => {}
                Some(ours) if ours.stands_over(theirs) => gave_way.put(theirs.clone()),
                ours => {
                    let ours = ours.cloned();
                    ours.into_iter().for_each(|ours| gave_way.put(ours));
                    self.put(theirs.clone());
                }
            }
        }
        gave_way
    }

    /// Without what another copy has just the same.
    pub(super) fn without(mut self, other: &Done) -> Done {
        self.0.retain(|e| !other.0.contains(e));
        self
    }

    /// As kept and exchanged; `None` where there is nothing.
    pub(super) fn to_json(&self) -> Option<Json> {
        (!self.0.is_empty()).then(|| self.0.iter().map(Entry::to_json).collect())
    }

    /// Reads the kept form; what cannot be read is told of.
    pub(super) fn read(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Done {
        let mut all = Done::default();
        for entry in form::list(field, json, MOST, refused, read) {
            match all.0.get(all.place(&entry.what)) {
                Some(ours) if ours.what == entry.what && ours.stands_over(&entry) => {}
                _ => all.put(entry),
            }
        }
        all
    }

    /// Where a code's entry is, or would be.
    fn place(&self, what: &str) -> usize {
        self.0.partition_point(|e| e.what.as_str() < what)
    }

    fn put(&mut self, entry: Entry) {
        let at = self.place(&entry.what);
        match self.0.get_mut(at).filter(|e| e.what == entry.what) {
            Some(place) => *place = entry,
            None => self.0.insert(at, entry),
        }
        if self.0.len() > MOST {
            let mut oldest = 0;
            for (i, e) in self.0.iter().enumerate() {
                if self.0.get(oldest).is_some_and(|o| o.at_ms > e.at_ms) {
                    oldest = i;
                }
            }
            self.0.remove(oldest);
        }
    }
}

fn read(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Option<Entry> {
    let text = |name: &str| json.get(name).and_then(Json::as_str).unwrap_or("");
    let at_ms = json.get("at").and_then(Json::as_f64).unwrap_or(0.0);
    let is = match json.get("is") {
        Some(Json::String(code)) => Ok(Value::code(code)),
        other => form::read_quantity(other.unwrap_or(&Json::Null), Unit::ALL).map(Value::Number),
    };
    let entry = is.and_then(|is| {
        let wrong = || Trouble::Wanted { given: form::short(text("what")), wanted: Wanted::Code };
        Entry::new(text("what"), is, at_ms, text("who")).ok_or_else(wrong)
    });
    entry.map_err(|trouble| refused.push(CaseError::new(field, trouble))).ok()
}
