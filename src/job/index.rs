//! The list of jobs: a line of each, quick to read, search and sort for a thousand of them. It is only a
//! memory aid, made again from the jobs whenever it is missing or wrong; nothing stands here alone.

use super::form::{self, Object, put, put_text};
use super::offer::{cut, tidy};
use super::questions::Id;
use super::sheet::{Job, JobId, Part};
use crate::core::letters::lower;
use serde_json::Value as Json;

/// Version of the kept form.
const VERSION: u64 = 1;
/// Key the list is kept under.
pub const KEY: &str = "tankful.jobs.1";
/// Most of a job's notes that a search looks through, characters.
const SEARCHED_NOTES: usize = 400;
/// Longest verdict line, characters.
const LONGEST_VERDICT: usize = 200;

/// A job's line in the list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Summary {
    /// Which.
    pub id: JobId,
    /// Its revision when the line was written.
    pub revision: u64,
    /// What it is called.
    pub name: String,
    /// Where it is.
    pub place: String,
    /// How many questions are answered; of how many: [`Summary::TOTAL`].
    pub answered: usize,
    /// The verdict in a sentence, as it was said last; empty when none was computed yet.
    pub verdict: String,
    /// When the job was last changed, ms since 1970.
    pub changed_ms: f64,
    /// Put away.
    pub archived: bool,
    /// What a search looks through, in small letters.
    found_by: String,
}

impl Summary {
    /// Questions in all.
    pub const TOTAL: usize = Id::ALL.len();

    /// A job's line.
    pub fn of(job: &Job, verdict: &str) -> Summary {
        let mut notes = job.notes.clone();
        cut(&mut notes, SEARCHED_NOTES);
        let found_by = lower(&[job.name.as_str(), &job.place, &notes].join(" "));
        Summary {
            id: job.id,
            revision: job.revision,
            name: job.name.clone(),
            place: job.place.clone(),
            answered: job.answers.len(),
            verdict: tidy(verdict, LONGEST_VERDICT),
            changed_ms: job.changed_ms,
            archived: job.archived,
            found_by,
        }
    }
}

/// How a list of jobs is sorted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Order {
    /// The one changed last first.
    #[default]
    Changed,
    /// By name.
    Name,
    /// By place.
    Place,
    /// The one with the fewest answers first.
    Answered,
}

/// What lines are sorted by.
#[derive(PartialEq, PartialOrd)]
struct Key {
    /// Those without a name or place come last.
    nameless: bool,
    text: String,
    answered: usize,
    /// Of equals the one changed last comes first.
    age: f64,
    id: JobId,
}

impl Key {
    fn of(s: &Summary, order: Order) -> Key {
        let text = match order {
            Order::Name => lower(&s.name),
            Order::Place => lower(&s.place),
            Order::Changed | Order::Answered => String::new(),
        };
        let answered = if order == Order::Answered { s.answered } else { 0 };
        Key { nameless: text.is_empty(), text, answered, age: -s.changed_ms, id: s.id }
    }
}

/// The list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Index(Vec<Summary>);

impl Index {
    /// Every line, in no particular order.
    pub fn all(&self) -> &[Summary] {
        &self.0
    }

    /// The line of a job.
    pub fn get(&self, id: JobId) -> Option<&Summary> {
        self.0.iter().find(|s| s.id == id)
    }

    /// Puts in a job's line, in place of an older one.
    pub fn put(&mut self, summary: Summary) {
        match self.0.iter_mut().find(|s| s.id == summary.id) {
            Some(place) => *place = summary,
            None => self.0.push(summary),
        }
    }

    /// Takes a job's line out.
    pub fn remove(&mut self, id: JobId) {
        self.0.retain(|s| s.id != id);
    }

    /// Drops the lines of jobs that are not there; the jobs that have no line yet.
    pub fn settle(&mut self, there: &[JobId]) -> Vec<JobId> {
        self.0.retain(|s| there.contains(&s.id));
        // A thousand times a thousand comparisons of numbers take a millisecond.
        there.iter().copied().filter(|id| self.get(*id).is_none()).collect()
    }

    /// The lines of jobs in whose name, place or notes every one of the words stands, sorted.
    pub fn search(&self, words: &str, archived: bool, order: Order) -> Vec<&Summary> {
        let words = lower(words);
        let has = |s: &&Summary| {
            s.archived == archived && words.split_whitespace().all(|word| s.found_by.contains(word))
        };
        let mut found: Vec<(Key, &Summary)> = Vec::new();
        for s in self.0.iter().filter(has) {
            let key = Key::of(s, order);
            // Sorting by hand: the library's is 4 kB of the page for each kind of list.
            found.insert(found.partition_point(|(before, _)| *before <= key), (key, s));
        }
        found.into_iter().map(|(_, s)| s).collect()
    }

    /// As text to keep.
    pub fn to_text(&self) -> String {
        let line = |s: &Summary| {
            let mut all = Object::new();
            put(&mut all, "id", s.id.code().into());
            put(&mut all, "revision", s.revision.into());
            put_text(&mut all, "name", &s.name);
            put_text(&mut all, "place", &s.place);
            put(&mut all, "answered", s.answered.into());
            put_text(&mut all, "verdict", &s.verdict);
            put(&mut all, "changed", form::number(s.changed_ms));
            if s.archived {
                put(&mut all, "archived", true.into());
            }
            put_text(&mut all, "find", &s.found_by);
            Json::from(all)
        };
        let mut all = Object::new();
        put(&mut all, "tankful_index", VERSION.into());
        put(&mut all, "jobs", self.0.iter().map(line).collect());
        Json::from(all).to_string()
    }

    /// Reads a kept text. What is no list, or no line, is left out: the jobs themselves have it all.
    pub fn read(text: &str) -> Index {
        let json: Json = serde_json::from_str(text).unwrap_or_default();
        if json.get("tankful_index").and_then(Json::as_u64) != Some(VERSION) {
            return Index::default();
        }
        let lines = json.get("jobs").and_then(Json::as_array);
        Index(lines.into_iter().flatten().filter_map(read_line).collect())
    }
}

fn read_line(json: &Json) -> Option<Summary> {
    let text = |name: &str, most| {
        let mut text = json.get(name).and_then(Json::as_str).unwrap_or("").to_owned();
        cut(&mut text, most);
        text
    };
    Some(Summary {
        id: JobId::from_code(json.get("id")?.as_str()?)?,
        revision: json.get("revision")?.as_u64()?,
        name: text("name", Part::Name.longest()),
        place: text("place", Part::Place.longest()),
        answered: usize::try_from(json.get("answered")?.as_u64()?).ok()?.min(Summary::TOTAL),
        verdict: text("verdict", LONGEST_VERDICT),
        changed_ms: json.get("changed")?.as_f64()?,
        archived: json.get("archived").and_then(Json::as_bool).unwrap_or(false),
        found_by: text("find", 4 * SEARCHED_NOTES),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn summary(n: u64, name: &str, place: &str, notes: &str) -> Summary {
        let mut job = Job::new(JobId::new(n), n as f64);
        for (part, text) in [(Part::Name, name), (Part::Place, place), (Part::Notes, notes)] {
            job.write(part, text);
        }
        Summary::of(&job, "Keep it")
    }

    fn names(found: &[&Summary]) -> Vec<String> {
        found.iter().map(|s| s.name.clone()).collect()
    }

    #[test]
    fn jobs_are_found_by_every_word_and_sorted() {
        let mut index = Index::default();
        for s in [
            summary(1, "Øst, Ann", "12 Example Road", "crawlspace"),
            summary(2, "Bert", "3 Example Lane", "Key under the MAT"),
            summary(3, "", "9 Other Road", ""),
        ] {
            index.put(s);
        }
        let mut away = summary(4, "Away", "", "");
        away.archived = true;
        index.put(away);
        assert_eq!(names(&index.search("", false, Order::Changed)), ["", "Bert", "Øst, Ann"]);
        assert_eq!(names(&index.search("", false, Order::Name)), ["Bert", "Øst, Ann", ""]);
        assert_eq!(names(&index.search("ROAD øst", false, Order::Place)), ["Øst, Ann"]);
        assert_eq!(names(&index.search("mat", false, Order::Name)), ["Bert"]);
        assert_eq!(names(&index.search("", true, Order::Name)), ["Away"]);
        assert_eq!(Index::read(&index.to_text()), index);
    }

    #[test]
    fn the_list_is_settled_with_what_is_there() {
        let mut index = Index::default();
        for n in 1..=3 {
            index.put(summary(n, "x", "", ""));
        }
        let wanting = index.settle(&[2, 3, 4].map(JobId::new));
        assert_eq!(wanting, [JobId::new(4)]);
        assert_eq!(index.all().len(), 2);
    }

    #[test]
    fn junk_is_an_empty_list() {
        for text in [
            "",
            "[]",
            "{\"tankful_index\":9,\"jobs\":[]}",
            "{\"tankful_index\":1,\"jobs\":[1,{\"id\":\"x\"}]}",
        ] {
            assert_eq!(Index::read(text), Index::default(), "{text}");
        }
    }
}
