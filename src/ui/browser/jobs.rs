//! Jobs in the browser's storage: one key a job, and a list of their lines that is only a memory aid.
//!
//! A change is written at once, the whole job under its key: the browser takes all of it or leaves the
//! former text, so a tab killed in mid-edit loses nothing. What cannot be read is moved to a key of its
//! own and offered for download; what a newer program wrote is left alone. Nothing is dropped in silence.

use super::storage::{self, text_at};
use crate::core::message::Message;
use crate::job::index::{Index, KEY as LIST_KEY, Order, Summary};
use crate::job::kept::{FIRST_KEY, Reading};
use crate::job::offer::Templates;
use crate::job::{Job, JobId};
use crate::ui::model::{Notice, Remedy};
use leptos::prelude::window;

/// The job this tab has open, and the one opened last in any tab.
const OPEN_KEY: &str = "tankful.open.1";
/// Offers to start from.
const OFFERS_KEY: &str = "tankful.offers.1";
/// UTF-16 units that browsers let a page keep; a little below what they say.
const ROOM: usize = 5_000_000;

/// How keeping a job went.
pub enum Keeping {
    /// It is kept.
    Done,
    /// It is not, and the reader has not been told.
    Trouble(Notice),
    /// It is not, and the reader knows.
    Known,
}

/// What stands in the storage, seen from the job as this tab has it.
pub enum Other {
    /// The same, or nothing that counts.
    Same,
    /// Newer work of another tab.
    Newer(Box<Job>),
    /// Work that is no newer than this tab's, and another.
    Older,
    /// Nothing any more: it was deleted.
    Gone,
}

/// The place where jobs are kept.
#[derive(Clone, Debug, Default)]
pub struct Store {
    /// What this tab last read or wrote of the open job; `None` while it is not kept.
    last: Option<String>,
    /// The reader has been told that nothing is kept.
    told: bool,
}

impl Store {
    /// The job to begin with, and what the reader must be told.
    pub fn open() -> (Store, Job, Vec<Notice>) {
        let mut store = Store::default();
        let mut notices = Vec::new();
        if storage::is_forbidden() {
            store.told = true;
            notices.push(not_kept("page-notice-storage-forbidden"));
            return (store, new_job(), notices);
        }
        let first = migrate(&mut notices);
        let asked = window().location().search().ok().and_then(|query| {
            JobId::from_code(query.trim_start_matches('?').split('&').find_map(|p| p.strip_prefix("j="))?)
        });
        let marked = || {
            let code = storage::of_tab(OPEN_KEY).or_else(|| text_at(OPEN_KEY));
            JobId::from_code(&code?).filter(|id| text_at(&id.key()).is_some())
        };
        let last = || list().search("", false, Order::Changed).first().map(|s| s.id);
        let here = asked.or(first.as_ref().map(|job| job.id)).or_else(marked).or_else(last);
        let kept = here.and_then(|id| store.load(id, &mut notices));
        let job = kept.or(first).unwrap_or_else(new_job);
        (store, job, notices)
    }

    /// Opens a kept job; `None` when it is not there or cannot be read.
    pub fn load(&mut self, id: JobId, notices: &mut Vec<Notice>) -> Option<Job> {
        let text = text_at(&id.key())?;
        let job = read(&id.key(), &text, id, notices)?;
        self.opened(&job, Some(text));
        Some(job)
    }

    /// A job that this tab has open from now on; `text` is what is kept of it.
    pub fn opened(&mut self, job: &Job, text: Option<String>) {
        self.last = text;
        storage::put_in_tab(OPEN_KEY, &job.id.code());
        if self.last.is_some() {
            storage::put(OPEN_KEY, &job.id.code());
        }
    }

    /// What another tab has made of the open job since.
    pub fn other(&self, mine: &Job) -> Other {
        let Some(text) = text_at(&mine.id.key()) else {
            return if self.last.is_some() { Other::Gone } else { Other::Same };
        };
        if self.last.as_ref() == Some(&text) {
            return Other::Same;
        }
        // A program that is not ours may have written there: only a whole record counts as newer work.
        match Job::read(&text, mine.id) {
            Reading::Job(job, refused) if refused.is_empty() && *job != *mine => {
                // Changed in the same instant, the texts themselves decide, so that both tabs agree.
                let tie = (job.revision, job.changed_ms) == (mine.revision, mine.changed_ms);
                if job.is_newer_than(mine.revision, mine.changed_ms) || (tie && text > mine.to_text()) {
                    Other::Newer(job)
                } else {
                    Other::Older
                }
            }
            _ => Other::Same,
        }
    }

    /// Whether what was last to be kept is kept.
    pub fn keeps(&self) -> bool {
        !self.told
    }

    /// Keeps the open job.
    pub fn keep(&mut self, job: &Job) -> Keeping {
        let (key, text) = (job.id.key(), job.to_text());
        let words = if storage::is_forbidden() {
            "page-notice-storage-forbidden"
        } else if !self.may_write(&key, job.id) {
            "page-notice-storage-blocked"
        } else if !storage::put(&key, &text) {
            "page-notice-storage-full"
        } else {
            if self.last.is_none() {
                self.opened(job, Some(text));
            } else {
                self.last = Some(text);
            }
            self.told = false;
            return Keeping::Done;
        };
        if std::mem::replace(&mut self.told, true) {
            return Keeping::Known;
        }
        Keeping::Trouble(not_kept(words))
    }

    /// What a newer program wrote there, or what cannot be moved away, is not written over.
    fn may_write(&self, key: &str, id: JobId) -> bool {
        (self.last.is_some() && self.last == text_at(key)) || may_write(key, id)
    }
}

fn may_write(key: &str, id: JobId) -> bool {
    let Some(text) = text_at(key) else { return true };
    match Job::read(&text, id) {
        Reading::Job(..) => true,
        Reading::Newer => false,
        Reading::Foreign => storage::set_aside(key, &text),
    }
}

/// A new, empty job that is not kept yet.
pub fn new_job() -> Job {
    Job::new(new_id(), js_sys::Date::now())
}

/// An identity by chance.
pub fn new_id() -> JobId {
    JobId::new((js_sys::Math::random() * (1u64 << JobId::BITS) as f64) as u64)
}

/// The single record of the first version, as a job of its own. It is taken away only once the job is kept:
/// a tab killed in between finds the same identity again.
fn migrate(notices: &mut Vec<Notice>) -> Option<Job> {
    let text = text_at(FIRST_KEY)?;
    let mut job = read(FIRST_KEY, &text, JobId::default(), notices)?;
    job.id = JobId::new(job.changed_ms as u64);
    let key = job.id.key();
    if text_at(&key).is_some() || storage::put(&key, &job.to_text()) {
        storage::remove(FIRST_KEY);
    }
    Some(job)
}

/// Reads a job; what cannot be read is set aside, and told.
fn read(key: &str, text: &str, id: JobId, notices: &mut Vec<Notice>) -> Option<Job> {
    let (words, job) = match Job::read(text, id) {
        Reading::Job(job, refused) if refused.is_empty() => return Some(*job),
        Reading::Job(job, _) => ("page-notice-damaged-part", Some(*job)),
        Reading::Newer => ("jobs-notice-newer", None),
        Reading::Foreign => {
            storage::set_aside(key, text);
            ("page-notice-damaged", None)
        }
    };
    let remedy = Some(Remedy::Download(text.to_owned()));
    notices.push(Notice { code: "set-aside", says: Message::new(words), remedy });
    job
}

/// A job that need not be open.
pub fn look(id: JobId) -> Option<Job> {
    match Job::read(&text_at(&id.key())?, id) {
        Reading::Job(job, _) => Some(*job),
        _ => None,
    }
}

/// Whether anything lies where a job of this identity is kept, readable or not.
pub fn is_there(id: JobId) -> bool {
    text_at(&id.key()).is_some()
}

/// Keeps a job that this tab has not open; its line in the list is made when the list is shown. False: there is
/// no room, or something of a newer program lies there.
pub fn put(job: &Job) -> bool {
    let key = job.id.key();
    may_write(&key, job.id) && storage::put(&key, &job.to_text())
}

/// Takes a job away.
pub fn remove(id: JobId) {
    storage::remove(&id.key());
}

/// Writes a job's line into the kept list.
pub fn note(line: Summary) {
    let mut index = kept_list();
    index.put(line);
    // A list that finds no room is made again from the jobs.
    storage::put(LIST_KEY, &index.to_text());
}

/// The list as it is kept, right or wrong.
pub fn kept_list() -> Index {
    text_at(LIST_KEY).map(|text| Index::read(&text)).unwrap_or_default()
}

/// The jobs that are kept.
pub fn ids() -> Vec<JobId> {
    storage::keys().iter().filter_map(|key| JobId::of_key(key)).collect()
}

/// The list, put right by the jobs themselves: a line that is missing or of another revision is made again.
pub fn list() -> Index {
    list_on(kept_list(), usize::MAX).0
}

/// Goes on with the list, `kept_list` to begin with, making at most so many lines anew; whether it is whole then.
/// Reading a thousand jobs takes some tenths of a second: a page makes them in turns.
pub fn list_on(mut index: Index, most: usize) -> (Index, bool) {
    let ids = ids();
    let mut changed = !index.settle(&ids).is_empty();
    let mut made = 0;
    for id in ids {
        let Some(text) = text_at(&id.key()) else { continue };
        if index.get(id).is_some_and(|line| revision_in(&text) == Some(line.revision)) {
            continue;
        }
        if made >= most {
            return (index, false);
        }
        made += 1;
        if let Reading::Job(job, _) = Job::read(&text, id) {
            // Said of other answers, an older verdict may be wrong now.
            index.put(Summary::of(&job, ""));
            changed = true;
        }
    }
    if changed {
        storage::put(LIST_KEY, &index.to_text());
    }
    (index, true)
}

/// The revision in a job's text, without reading the rest: a thousand jobs are looked through at once. Inside
/// a text the marks around the name would be escaped.
fn revision_in(text: &str) -> Option<u64> {
    let (_, after) = text.rsplit_once("\"revision\":")?;
    after.split(|c: char| !c.is_ascii_digit()).next()?.parse().ok()
}

/// The share of the browser's room that is taken, from 0 to about 1.
pub fn taken() -> f64 {
    let units = |text: &str| text.encode_utf16().count();
    let of = |key: &String| units(key) + text_at(key).map_or(0, |text| units(&text));
    storage::keys().iter().map(of).sum::<usize>() as f64 / ROOM as f64
}

/// Whether a key of the storage has to do with jobs.
pub fn is_of_jobs(key: &str) -> bool {
    key == LIST_KEY || JobId::of_key(key).is_some()
}

fn not_kept(words: &'static str) -> Notice {
    Notice { code: "not-kept", says: Message::new(words), remedy: None }
}

/// The offers kept to start from.
pub fn templates() -> Templates {
    text_at(OFFERS_KEY).and_then(|text| Templates::read(&text)).map(|(all, _)| all).unwrap_or_default()
}

/// Changes the templates and keeps them. False: the change says so, there is no room, or a newer program wrote there.
pub fn change_templates(change: impl FnOnce(&mut Templates) -> bool) -> bool {
    let text = text_at(OFFERS_KEY);
    if text.as_deref().is_some_and(Templates::is_newer) {
        return false;
    }
    let mut all = match text.as_deref().map(Templates::read) {
        None => Templates::default(),
        Some(Some((all, refused))) if refused.is_empty() => all,
        // Something in there could not be read: a copy stays, so that nothing is lost.
        Some(read) => {
            if !storage::set_aside(OFFERS_KEY, text.as_deref().unwrap_or_default()) {
                return false;
            }
            read.map(|(all, _)| all).unwrap_or_default()
        }
    };
    change(&mut all) && storage::put(OFFERS_KEY, &all.to_text())
}
