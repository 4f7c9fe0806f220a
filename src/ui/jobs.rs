//! What can be done with jobs: open, new, duplicate, archive, delete, put back; and keeping in step with
//! other tabs. All of it goes through the open job's one signal and the browser's storage.

use super::browser::jobs::{self, Other, Store};
use super::browser::{device, download, storage};
use super::model::{Computed, JobState, Notice, Remedy};
use super::over::Over;
use super::route::Route;
use super::state::Page;
use crate::core::message::Message;
use crate::job::index::Summary;
use crate::job::{Job, JobId, LONGEST_WHO, Part, exchange, merge};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::time::Duration;

/// Under which name this reader measures.
const WHO_KEY: &str = "tankful.who.1";
/// A verdict is written into the list once it has stood this long: typing makes many.
const SETTLED: Duration = Duration::from_secs(1);

/// Under which name this reader measures; empty when never said.
pub fn who() -> String {
    storage::text_at(WHO_KEY).unwrap_or_default()
}

/// Remembers under which name this reader measures.
pub fn set_who(name: &str) {
    storage::put(WHO_KEY, &name.chars().take(LONGEST_WHO).collect::<String>());
}

/// Keeps the list of jobs and other tabs in step with this one, for as long as the page lives.
pub fn follow(page: Page) {
    storage::follow(move |key| {
        if key.as_deref().is_none_or(jobs::is_of_jobs) {
            page.catch_up(key.as_deref());
            page.listed.update(|n| *n += 1);
        }
    });
    // The open job's line follows its verdict.
    Effect::new(move |_| {
        let settled = page.outcome.get().is_some() && page.computed.with(|c| c.progress.is_none());
        let revision = page.job.with(|j| (j.sheet.id, j.sheet.revision));
        if settled {
            let same = move || page.job.with_untracked(|j| (j.sheet.id, j.sheet.revision)) == revision;
            set_timeout(
                move || {
                    if same() {
                        page.note();
                    }
                },
                SETTLED,
            );
        }
    });
    // What nobody has waited for is written when the page goes out of sight.
    let _ = window_event_listener(leptos::ev::Custom::<web_sys::Event>::new("visibilitychange"), move |_| {
        if document().hidden() {
            page.note();
        }
    });
}

impl Page {
    /// Takes over what another tab has kept of the open job, when it is newer; `key` is what changed.
    pub fn catch_up(self, key: Option<&str>) {
        match self.other() {
            Other::Same => self.join(key),
            Other::Newer(theirs) => self.take_over(*theirs),
            // The other tab did not know of this one's newer work yet.
            Other::Older => self.keep(),
            Other::Gone => self.say_notice("job-gone", "jobs-notice-gone", None),
        }
    }

    /// A tab that has begun nothing yet goes along when the first job is begun in another one.
    fn join(self, key: Option<&str>) {
        let untouched = self.job.with_untracked(|j| j.sheet.revision == 0);
        let only = jobs::ids();
        if let ([id], Some(begun), true) = (only.as_slice(), key.and_then(JobId::of_key), untouched)
            && *id == begun
            && *id != self.open.get_untracked()
        {
            self.load(begun);
        }
    }

    fn take_over(self, mut theirs: Job) {
        let mine = self.job.with_untracked(|j| j.sheet.clone());
        let same = mine.answers == theirs.answers && mine.offer == theirs.offer;
        // Two changes at the same time: the later one stands, the other one is kept beside it.
        let split = mine.revision == theirs.revision;
        if split {
            merge::beside(&mut theirs, &mine, js_sys::Date::now());
        }
        self.job.update(|j| j.sheet = theirs);
        if split {
            self.alter(|_| {});
        }
        if !same {
            self.say_notice("other-tab", "page-notice-other-tab", None);
        }
    }

    /// Writes the open job's line into the list, once the job is kept.
    pub fn note(self) {
        let line = self.line();
        if jobs::look(line.id).is_some_and(|kept| kept.revision == line.revision) {
            jobs::note(line);
        }
    }

    /// The open job's line.
    pub fn line(self) -> Summary {
        let settled = self.computed.with_untracked(|c| c.progress.is_none());
        let outcome = self.outcome.get_untracked().filter(|_| settled);
        let verdict = outcome.map(|o| self.words_now().say(&o.0.advice.verdict)).unwrap_or_default();
        self.job.with_untracked(|j| Summary::of(&j.sheet, &verdict))
    }

    /// Makes a job the open one.
    pub fn show(self, job: Job, kept: Option<String>) {
        self.note();
        self.store.update_value(|s| s.opened(&job, kept));
        self.computed.set(Computed::default());
        self.job.set(JobState::of(job));
    }

    /// Opens a kept job. False: it is not there, or cannot be read; the reader is told.
    pub fn load(self, id: JobId) -> bool {
        let mut notices = Vec::new();
        let text = storage::text_at(&id.key());
        let job = self.store.try_update_value(|s: &mut Store| s.load(id, &mut notices)).flatten();
        for notice in notices {
            self.tell(notice);
        }
        let there = job.is_some();
        if let Some(job) = job {
            self.show(job, text);
        }
        there
    }

    /// Begins a new job beside the open one.
    pub fn begin(self) {
        self.show(jobs::new_job(), None);
        // There is more than one household's work to lose now.
        ask_to_persist();
        self.go(Route::Job);
    }

    /// Keeps a job that came from elsewhere; opens it when asked. False: there is no room.
    pub fn add(self, job: Job, open: bool) -> bool {
        let kept = jobs::put(&job);
        if !kept {
            self.say_notice("not-kept", "page-notice-storage-full", None);
        }
        ask_to_persist();
        if open {
            let text = kept.then(|| job.to_text());
            self.show(job, text);
            if !kept {
                // Tried once more as the open job, so that the page knows that its work is not kept.
                self.keep();
            }
        }
        self.listed.update(|n| *n += 1);
        kept
    }

    /// A copy of a job, as a new one.
    pub fn duplicate(self, id: JobId) {
        let Some(job) = self.kept(id) else { return };
        let mut copy = job.duplicate(jobs::new_id(), js_sys::Date::now());
        let name =
            Message::new("jobs-copy-of").with("name", crate::core::message::Arg::Verbatim(job.name.clone()));
        if !job.name.is_empty() {
            copy.write(Part::Name, &self.words_now().say(&name));
        }
        self.add(copy, false);
    }

    /// Puts a job away, or takes it out again.
    pub fn archive(self, id: JobId, away: bool) {
        if id == self.open.get_untracked() {
            self.alter(|job| job.archived = away);
            self.note();
        } else if let Some(mut job) = self.kept(id) {
            job.archived = away;
            job.touch(js_sys::Date::now());
            let verdict = jobs::list().get(id).map(|s| s.verdict.clone()).unwrap_or_default();
            if jobs::put(&job) {
                jobs::note(Summary::of(&job, &verdict));
            }
        }
        self.listed.update(|n| *n += 1);
    }

    /// Deletes a job, and offers to put it back.
    pub fn delete(self, id: JobId) {
        let Some(job) = self.kept(id) else { return };
        let open = id == self.open.get_untracked();
        jobs::remove(id);
        if open {
            self.store.update_value(|s| *s = Store::default());
            self.show(jobs::new_job(), None);
        }
        self.say_notice("job-deleted", "jobs-notice-deleted", Some(Remedy::PutJobBack(Box::new(job))));
        self.listed.update(|n| *n += 1);
    }

    /// Puts a deleted job back.
    pub fn put_back(self, job: Job) {
        self.add(job, false);
        self.dismiss("job-deleted");
    }

    /// A job, open or kept.
    pub fn kept(self, id: JobId) -> Option<Job> {
        if id == self.open.get_untracked() {
            return Some(self.job.with_untracked(|j| j.sheet.clone()));
        }
        jobs::look(id)
    }

    /// Offers every job as one file.
    pub fn save_all(self) {
        let jobs: Vec<Job> = jobs::ids().into_iter().filter_map(|id| self.kept(id)).collect();
        download::offer(&file_name("tankful-jobs"), &exchange::export(jobs.iter()));
    }

    /// Offers a job as a file.
    pub fn save_job(self, id: JobId) {
        if let Some(job) = self.kept(id) {
            download::offer(&file_name("tankful-job"), &exchange::export(std::iter::once(&job)));
        }
    }

    /// Shows what a file of jobs would change.
    pub fn load_jobs(self, file: web_sys::File) {
        spawn_local(async move {
            let text = download::read(file, exchange::MOST_BYTES).await;
            self.over.set(Some(Over::Bring(text)));
        });
    }

    /// Puts up a notice that takes no figures.
    pub fn say_notice(self, code: &'static str, key: &'static str, remedy: Option<Remedy>) {
        self.tell(Notice { code, says: Message::new(key), remedy });
    }
}

/// A file's name with the day in it.
fn file_name(stem: &str) -> String {
    let day = String::from(js_sys::Date::new_0().to_iso_string());
    format!("{stem}-{}.json", day.get(..10).unwrap_or_default())
}

/// Asks the browser to keep what is kept here; most decide without asking the reader.
pub fn ask_to_persist() {
    spawn_local(async {
        if device::is_persisted().await == Some(false) {
            device::persist().await;
        }
    });
}
