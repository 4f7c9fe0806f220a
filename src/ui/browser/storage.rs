//! The browser's own storage: the answers and the reader's choices, through gloo-storage.
//!
//! Storage may be forbidden (private browsing, a policy), full, or hold what somebody else wrote. The
//! page works in every case and says what it cannot do. What cannot be read is moved to a key of its
//! own and offered for download; nothing of the reader's is dropped in silence.

use crate::core::message::Message;
use crate::job::answers::Answers;
use crate::job::record::{Reading, Record};
use crate::ui::model::{Notice, Remedy, Settings};
use gloo_storage::{LocalStorage, Storage as _};
use leptos::ev;
use leptos::prelude::*;

/// Where the answers are kept.
pub const JOB_KEY: &str = "tankful.job.1";
/// Where the reader's choices are kept.
pub const SETTINGS_KEY: &str = "tankful.settings.1";
/// Where unreadable texts are moved, with a number after it.
pub const ASIDE_KEY: &str = "tankful.aside.";
/// How many unreadable texts are kept before the page stops making room for more.
const MOST_ASIDE: u32 = 20;

/// What was found when the page opened, or in another tab's keeping.
#[derive(Clone, Debug, Default)]
pub struct Kept {
    /// The answers.
    pub answers: Answers,
    /// Their revision.
    pub revision: u64,
    /// What the reader must be told.
    pub notices: Vec<Notice>,
}

/// How keeping an answer went.
pub enum Keeping {
    /// It is kept.
    Done,
    /// It is not, and the reader has not been told.
    Trouble(Notice),
    /// It is not, and the reader knows.
    Known,
}

/// The place where answers are kept.
#[derive(Clone, Debug, Default)]
pub struct Store {
    /// Revision and time of what this tab last read or wrote.
    last: (u64, f64),
    /// Something unreadable lies where the answers belong and could not be moved: do not write over it.
    blocked: bool,
    /// The reader has been told that nothing is kept.
    told: bool,
}

/// The storage, unless it is forbidden.
fn storage() -> Option<web_sys::Storage> {
    // gloo's `raw` panics where the browser forbids storage, so ask first.
    matches!(window().local_storage(), Ok(Some(_))).then(LocalStorage::raw)
}

fn text_at(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

impl Store {
    /// Reads what is kept.
    pub fn open() -> (Store, Kept) {
        let mut store = Store::default();
        let mut kept = Kept::default();
        if storage().is_none() {
            store.told = true;
            kept.notices.push(not_kept(Message::new("page-notice-storage-forbidden")));
            return (store, kept);
        }
        let Some(text) = text_at(JOB_KEY) else { return (store, kept) };
        match Record::read(&text) {
            Reading::Whole(record) => store.adopt(&mut kept, record),
            Reading::Part(record) => {
                store.blocked = !set_aside(&text);
                store.adopt(&mut kept, record);
                kept.notices.push(aside("page-notice-damaged-part", text));
            }
            Reading::Foreign => {
                store.blocked = !set_aside(&text);
                kept.notices.push(aside("page-notice-damaged", text));
            }
        }
        (store, kept)
    }

    fn adopt(&mut self, kept: &mut Kept, record: Record) {
        self.last = (record.revision, record.kept_at_ms);
        kept.revision = record.revision;
        kept.answers = record.answers;
    }

    /// What another tab has kept since, if it is newer work than this tab knows.
    pub fn newer(&mut self) -> Option<Kept> {
        // A tab that is not ours may have written there: only a whole record counts as newer work.
        let Reading::Whole(record) = Record::read(&text_at(JOB_KEY)?) else { return None };
        if !record.is_newer_than(self.last.0, self.last.1) {
            return None;
        }
        let mut kept = Kept::default();
        self.adopt(&mut kept, record);
        Some(kept)
    }

    /// Whether what was last to be kept is kept.
    pub fn keeps(&self) -> bool {
        !self.told
    }

    /// Keeps the answers.
    pub fn keep(&mut self, answers: &Answers, revision: u64) -> Keeping {
        let record = Record::new(answers.clone(), revision, js_sys::Date::now());
        let words = if storage().is_none() {
            "page-notice-storage-forbidden"
        } else if self.blocked {
            "page-notice-storage-blocked"
        } else if LocalStorage::set(JOB_KEY, &record).is_err() {
            "page-notice-storage-full"
        } else {
            self.last = (revision, record.kept_at_ms);
            self.told = false;
            return Keeping::Done;
        };
        if std::mem::replace(&mut self.told, true) {
            return Keeping::Known;
        }
        Keeping::Trouble(not_kept(Message::new(words)))
    }
}

fn not_kept(says: Message) -> Notice {
    Notice { code: "not-kept", says, remedy: None }
}

fn aside(words: &'static str, text: String) -> Notice {
    Notice { code: "set-aside", says: Message::new(words), remedy: Some(Remedy::Download(text)) }
}

/// Moves an unreadable text to a key of its own. False when it could not be moved; it then stays where
/// it is.
fn set_aside(text: &str) -> bool {
    let Some(storage) = storage() else { return false };
    let free = (1..=MOST_ASIDE).map(|n| format!("{ASIDE_KEY}{n}")).find(|k| text_at(k).is_none());
    let Some(key) = free else { return false };
    if storage.set_item(&key, text).is_ok() {
        let _ = storage.remove_item(JOB_KEY);
        return true;
    }
    // No room for a second copy: make room by taking the first one away, or put it back.
    let _ = storage.remove_item(JOB_KEY);
    if storage.set_item(&key, text).is_ok() {
        return true;
    }
    let _ = storage.set_item(JOB_KEY, text);
    false
}

/// The reader's choices; the usual ones when none are kept or readable.
pub fn settings() -> Settings {
    text_at(SETTINGS_KEY).and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default()
}

/// Keeps the reader's choices. They are small and easily made again: trouble is not worth a notice.
pub fn keep_settings(settings: &Settings) {
    if storage().is_some() {
        let _ = LocalStorage::set(SETTINGS_KEY, settings);
    }
}

/// Calls back when another tab has changed the answers, or may have while this one slept.
pub fn follow(changed: impl Fn() + Clone + 'static) {
    let at_once = changed.clone();
    let handle = window_event_listener(ev::Custom::<web_sys::StorageEvent>::new("storage"), move |event| {
        // No key: everything was cleared.
        if event.key().is_none_or(|key| key == JOB_KEY) {
            at_once();
        }
    });
    let woken = window_event_listener(ev::Custom::<web_sys::Event>::new("pageshow"), move |_| changed());
    on_cleanup(move || {
        handle.remove();
        woken.remove();
    });
}
