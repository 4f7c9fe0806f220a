//! Everything the page knows, and what can be done to it.
//!
//! The household's work is plain data in one signal ([`JobState`]); what follows from it are memos. A
//! [`Page`] holds the signals; it is small, `Copy`, and handed down by context.

use super::browser::jobs::{Keeping, Other, Store};
use super::browser::{history, storage};
use super::errands::Errand;
use super::model::{Asked, Computed, JobState, Notice, Remedy, Settings, Shared};
use super::over::Over;
use super::route::Route;
use crate::core::candidates::CandidateId;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::outcome::Working;
use crate::core::units::{Quantity, UnitSystem};
use crate::core::workings;
use crate::job::answers::{Answers, Refusal};
use crate::job::complete::complete_with;
use crate::job::offer::Offer;
use crate::job::questions::{Id, Question, Section, Value};
use crate::job::resolved::Resolved;
use crate::job::{Job, JobId};
use crate::text::{Group, Language, Words};
use leptos::prelude::*;

/// A value measured again within this time takes the place of the one before, ms.
const SAME_MEASUREMENT_MS: f64 = 60_000.0;

/// The signals of the page.
#[derive(Clone, Copy)]
pub struct Page {
    /// The household's work.
    pub job: RwSignal<JobState>,
    /// The reader's choices.
    pub settings: RwSignal<Settings>,
    /// The page shown.
    pub route: RwSignal<Route>,
    /// The advice.
    pub computed: RwSignal<Computed>,
    /// The newest outcome.
    pub outcome: Memo<Option<Shared>>,
    /// Notices, oldest first.
    pub notices: RwSignal<Vec<Notice>>,
    /// The working shown, if one is.
    pub asked: RwSignal<Option<Asked>>,
    /// What is shown over the page, if anything is.
    pub over: RwSignal<Option<Over>>,
    /// Errands of the worker with what came of them, the newest last.
    pub errands: RwSignal<Vec<Errand>>,
    /// The answers.
    pub answers: Memo<Answers>,
    /// The installer's offer.
    pub offer: Memo<Offer>,
    /// Which job is open.
    pub open: Memo<JobId>,
    /// A value for every question.
    pub resolved: Memo<Resolved>,
    /// Counts changes to the kept jobs, in this tab or another.
    pub listed: RwSignal<u32>,
    words: StoredValue<Words>,
    pub(super) store: StoredValue<Store>,
}

impl Page {
    /// Reads what is kept in this browser and starts from there.
    pub fn open() -> Page {
        let (store, sheet, notices) = Store::open();
        let job = RwSignal::new(JobState::of(sheet));
        let computed = RwSignal::<Computed>::default();
        let answers = Memo::new(move |_| job.with(|j| j.sheet.answers.clone()));
        Page {
            job,
            settings: RwSignal::new(storage::settings()),
            route: RwSignal::new(history::current()),
            computed,
            outcome: Memo::new(move |_| computed.with(|c| c.outcome.clone().map(Shared))),
            notices: RwSignal::new(notices),
            asked: RwSignal::new(None),
            over: RwSignal::new(None),
            errands: RwSignal::new(Vec::new()),
            answers,
            offer: Memo::new(move |_| job.with(|j| j.sheet.offer.clone())),
            open: Memo::new(move |_| job.with(|j| j.sheet.id)),
            listed: RwSignal::new(0),
            resolved: Memo::new(move |_| answers.with(Resolved::of)),
            words: StoredValue::new(Words::first(Language::ENGLISH, UnitSystem::Us)),
            store: StoredValue::new(store),
        }
    }

    /// The words, in the reader's units; tracks the choice of units.
    #[cfg_attr(debug_assertions, track_caller)]
    pub fn words(self) -> Words {
        let units = self.units();
        self.words.with_value(|w| w.with_units(units))
    }

    /// Adds the words of a part of the page that came.
    pub fn learn(self, group: &Group) {
        self.words.with_value(|w| w.add(group));
    }

    /// The words as the reader has them now; for what is said once.
    pub fn words_now(self) -> Words {
        untrack(|| self.words())
    }

    /// The reader's units.
    #[cfg_attr(debug_assertions, track_caller)]
    pub fn units(self) -> UnitSystem {
        self.settings.with(|s| s.units)
    }

    /// Words that take no figures.
    pub fn key(self, key: &str) -> String {
        self.words.with_value(|w| w.key(key))
    }

    /// Further words of a key; empty when there are none.
    pub fn attr(self, key: &str, attr: &str) -> String {
        self.words.with_value(|w| w.attr(key, attr)).unwrap_or_default()
    }

    /// A message in words; tracks the choice of units.
    #[cfg_attr(debug_assertions, track_caller)]
    pub fn say(self, message: &Message) -> String {
        self.words().say(message)
    }

    /// A quantity in words; tracks the choice of units.
    #[cfg_attr(debug_assertions, track_caller)]
    pub fn quantity(self, q: Quantity) -> String {
        self.words().quantity(q)
    }

    /// Where a question's value comes from.
    pub fn provenance(self, id: Id) -> Provenance {
        self.resolved.with(|r| r.get(id).map_or(Provenance::Assumed, |k| k.from))
    }

    /// Goes to a page, as a new entry in the browser's history.
    pub fn go(self, route: Route) {
        if self.route.get_untracked() != route {
            history::push(route);
        }
        self.route.set(route);
    }

    /// Unfolds the further questions of a section when this one is among them.
    pub fn unfold_for(self, section: Section, id: Id) {
        if !Question::get(id).first {
            self.job.update(|j| {
                j.unfold(section, true);
            });
        }
    }

    /// Answers a question. A refused value leaves the former answer in force.
    ///
    /// # Errors
    /// Says why the value is refused.
    pub fn answer(self, id: Id, value: Value, from: Provenance) -> Result<(), Refusal> {
        crate::job::answers::check(id, &value)?;
        let (now, who) = (js_sys::Date::now(), super::jobs::who());
        self.alter(|job| {
            // A number counts while it is typed: of "12", "120" only the last is what was measured.
            job.log.retain(|m| m.id != id || (now - m.at_ms).abs() > SAME_MEASUREMENT_MS);
            // Checked above; a refusal here would change nothing.
            let _ = job.answer(id, value, from, now, &who);
        });
        Ok(())
    }

    /// "I don't know": takes an answer back.
    pub fn forget(self, id: Id) {
        self.job.update(|j| {
            j.set_draft(id, None);
        });
        if self.job.with_untracked(|j| j.sheet.answers.get(id).is_some()) {
            self.change(|answers| answers.clear(id));
        }
    }

    /// Tracks what advice is about: which job is open, its answers and its offer. Reads them too: a memo that nobody has
    /// read yet takes its first reading, whoever's it is, for a change.
    pub fn track_case(self) {
        self.open.with(|_| ());
        self.answers.with(|_| ());
        self.offer.with(|_| ());
    }

    /// Changes the answers and keeps them.
    pub fn change(self, change: impl FnOnce(&mut Answers)) {
        self.alter(|job| change(&mut job.answers));
    }

    /// Changes the job and keeps it. Newer work of another tab is taken over first, so that neither tab's
    /// work is lost.
    pub fn alter(self, change: impl FnOnce(&mut Job)) {
        if let Other::Newer(newer) = self.other() {
            self.job.update(|j| j.sheet = *newer);
        }
        self.job.update(|j| {
            change(&mut j.sheet);
            j.sheet.touch(js_sys::Date::now());
        });
        self.keep();
    }

    /// Puts other answers in the place of all there are.
    pub fn replace(self, answers: Answers) {
        self.job.update(|j| j.drafts.clear());
        self.change(|a| *a = answers);
    }

    /// Forgets every answer, and offers to put them back.
    pub fn start_over(self) {
        let before = self.answers.get_untracked();
        self.replace(Answers::new());
        self.tell(Notice {
            code: "started-over",
            says: Message::new("page-notice-started-over"),
            remedy: Some(Remedy::PutBack(before)),
        });
        self.go(Route::Start);
    }

    /// What another tab has made of the open job.
    pub(super) fn other(self) -> Other {
        self.store.with_value(|store| self.job.with_untracked(|j| store.other(&j.sheet)))
    }

    /// Keeps the open job as it is now.
    pub(super) fn keep(self) {
        match self.store.try_update_value(|s| self.job.with_untracked(|j| s.keep(&j.sheet))) {
            Some(Keeping::Trouble(notice)) => self.tell(notice),
            Some(Keeping::Done) => self.dismiss("not-kept"),
            Some(Keeping::Known) | None => {}
        }
    }

    /// Whether the answers are kept in this browser.
    pub fn is_kept(self) -> bool {
        self.store.with_value(Store::keeps)
    }

    /// How the figures of a heater were worked out.
    pub fn workings(self, candidate: CandidateId) -> Vec<Working> {
        let case = self.job.with_untracked(|j| complete_with(&j.sheet.answers, &j.sheet.offer));
        self.outcome
            .with_untracked(|o| o.as_ref().map_or_else(Vec::new, |o| workings::of(&case, &o.0, candidate)))
    }

    /// A heater's name, as a part of a message.
    pub fn heater(self, id: CandidateId) -> Message {
        self.outcome
            .with_untracked(|o| o.as_ref().map_or_else(|| Message::new(id.key()), |o| o.0.name_of(id)))
    }

    /// Puts a notice up, in place of an older one of the same code.
    pub fn tell(self, notice: Notice) {
        self.notices.update(|all| {
            all.retain(|n| n.code != notice.code);
            all.push(notice);
        });
    }

    /// Takes a notice down.
    pub fn dismiss(self, code: &str) {
        if self.notices.with_untracked(|all| all.iter().any(|n| n.code == code)) {
            self.notices.update(|all| all.retain(|n| n.code != code));
        }
    }

    /// Changes the reader's choices and keeps them.
    pub fn set(self, change: impl FnOnce(&mut Settings)) {
        self.settings.update(change);
        storage::keep_settings(&self.settings.get_untracked());
    }
}

/// The page, from context. Every component of the page is inside it.
pub fn page() -> Page {
    expect_context::<Page>()
}
