//! What the page knows, as plain data: the household's work, the reader's choices, the newest outcome,
//! notices.

use super::browser::media::Theme;
use super::components::present_label;
use crate::core::candidates::CandidateId;
use crate::core::message::Message;
use crate::core::outcome::Outcome;
use crate::core::units::UnitSystem;
use crate::job::Job;
use crate::job::answers::{Answer, Answers};
use crate::job::questions::{Id, Section};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// The household's work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JobState {
    /// The job itself: what is kept and sent.
    pub sheet: Job,
    /// What was typed and is no answer yet, by question: it stays in its field until put right. Few at a
    /// time, so a list does (each kind of map is some kilobytes of WebAssembly).
    pub drafts: Vec<(Id, Draft)>,
    /// Sections whose further questions are unfolded.
    pub unfolded: Vec<Section>,
    /// Whether the present heater's label is unfolded.
    pub label: bool,
}

impl JobState {
    /// A job as it is opened: nothing typed, a label that was read unfolded.
    pub fn of(sheet: Job) -> JobState {
        let label = present_label::was_read(&sheet.answers);
        JobState { sheet, label, ..JobState::default() }
    }

    /// What was typed and is no answer yet.
    pub fn draft(&self, id: Id) -> Option<&Draft> {
        self.drafts.iter().find(|(of, _)| *of == id).map(|(_, draft)| draft)
    }

    /// Keeps what was typed, or forgets it.
    pub fn set_draft(&mut self, id: Id, draft: Option<Draft>) {
        self.drafts.retain(|(of, _)| *of != id);
        self.drafts.extend(draft.map(|draft| (id, draft)));
    }

    /// Unfolds or folds the further questions of a section.
    pub fn unfold(&mut self, section: Section, open: bool) {
        self.unfolded.retain(|&of| of != section);
        self.unfolded.extend(open.then_some(section));
    }
}

/// Something typed that is no answer yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// As typed.
    pub text: String,
    /// Why it is refused, once the person has left the field.
    pub refusal: Option<Message>,
    /// The answer from before the typing began; it stays in force while what is typed is no answer.
    pub before: Option<Answer>,
}

/// The reader's own choices.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Settings {
    /// US customary or SI.
    pub units: UnitSystem,
    /// Light, dark, or as the system has it.
    pub theme: Theme,
}

/// How far the computing is.
#[derive(Clone, Debug, Default)]
pub struct Computed {
    /// The newest outcome; while a newer one is computed, the one before.
    pub outcome: Option<Arc<Outcome>>,
    /// A first look that is newer than it, while the whole outcome is being computed: for the verdict only.
    pub first: Option<Arc<Outcome>>,
    /// Candidates done and in all, while a newer outcome is being computed.
    pub progress: Option<(u32, u32)>,
}

/// An outcome, told from another by being the same one, not by its figures.
#[derive(Clone, Debug)]
pub struct Shared(pub Arc<Outcome>);

impl PartialEq for Shared {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

/// A working to show: whose, and the name of the figure; `None` shows all of that heater's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    /// The heater.
    pub candidate: CandidateId,
    /// The figure's name.
    pub figure: Option<&'static str>,
}

/// What the reader is told beside the pages.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// What it is about: a newer notice of the same code replaces it.
    pub code: &'static str,
    /// The words.
    pub says: Message,
    /// What can be done about it.
    pub remedy: Option<Remedy>,
}

/// What can be done about a notice.
#[derive(Clone, Debug, PartialEq)]
pub enum Remedy {
    /// Download what was set aside.
    Download(String),
    /// Put these answers back.
    PutBack(Answers),
    /// Put this job back.
    PutJobBack(Box<Job>),
    /// Change to a newer release of the page.
    Renew,
}
