//! Which page is shown, and its address: `?p=…`, relative, so that the page works from any folder.

use crate::job::questions::{Id, Question, Section};

/// A page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Route {
    /// The way in.
    #[default]
    Start,
    /// One section of questions, and the question to go to there, if any.
    Section(Section, Option<Id>),
    /// The advice in full.
    Result,
    /// The list of jobs.
    Jobs,
    /// The open job: its name, place, notes and log.
    Job,
    /// The questions somebody asked, one after another, and the way back to them.
    Asked,
    /// The installer's offer.
    Offer,
    /// On site: measuring, in large letters.
    Onsite,
    /// The day of the work: what to load, what to do in which order.
    Work,
    /// After the work: start-up record, the page for the household, the meter.
    After,
    /// All of it for print.
    Report,
}

/// Pages that are one alone; their codes are no section's.
const PAGES: [Route; 9] = [
    Route::Result,
    Route::Jobs,
    Route::Job,
    Route::Asked,
    Route::Offer,
    Route::Onsite,
    Route::Work,
    Route::After,
    Route::Report,
];

impl Route {
    /// The page that asks a question, at that question.
    pub fn question(id: Id) -> Route {
        Route::Section(Question::get(id).section, Some(id))
    }

    /// The page's code in the style sheet and in tests.
    pub const fn code(self) -> &'static str {
        match self {
            Route::Start => "start",
            Route::Section(..) => "section",
            Route::Result => "result",
            Route::Jobs => "jobs",
            Route::Job => "job",
            Route::Asked => "asked",
            Route::Offer => "offer",
            Route::Onsite => "onsite",
            Route::Work => "work",
            Route::After => "after",
            Route::Report => "report",
        }
    }

    /// The relative address.
    pub fn address(self) -> String {
        match self {
            Route::Start => String::from("?"),
            Route::Section(section, None) => format!("?p={}", section.code()),
            Route::Section(section, Some(id)) => format!("?p={}&q={}", section.code(), id.code()),
            other => format!("?p={}", other.code()),
        }
    }

    /// The page of an address's query; anything unknown leads to the start.
    pub fn from_query(query: &str) -> Route {
        let find = |name: &str| {
            query
                .trim_start_matches('?')
                .split('&')
                .find_map(|part| part.strip_prefix(name)?.strip_prefix('='))
        };
        match find("p") {
            Some(code) if let Some(page) = PAGES.iter().find(|page| page.code() == code) => *page,
            Some(code) => match Section::ALL.iter().find(|s| s.code() == code) {
                Some(&section) => Route::Section(
                    section,
                    find("q").and_then(Id::from_code).filter(|&id| Question::get(id).section == section),
                ),
                None => Route::Start,
            },
            None => Route::Start,
        }
    }

    /// Where the section stands in the order, from 0; `None` for other pages.
    pub fn step(self) -> Option<usize> {
        match self {
            Route::Section(section, _) => Section::ALL.iter().position(|&s| s == section),
            _ => None,
        }
    }

    /// The page after this one.
    pub fn next(self) -> Route {
        match self {
            Route::Start => Route::Section(Section::ALL[0], None),
            Route::Section(..) => match self.step().and_then(|i| Section::ALL.get(i + 1)) {
                Some(&section) => Route::Section(section, None),
                None => Route::Result,
            },
            other => other,
        }
    }

    /// The page before this one.
    pub fn back(self) -> Route {
        match self {
            Route::Start => Route::Start,
            Route::Section(..) => match self.step().and_then(|i| i.checked_sub(1)) {
                Some(before) => Route::Section(Section::ALL[before], None),
                None => Route::Start,
            },
            Route::Result => Route::Section(Section::ALL[Section::ALL.len() - 1], None),
            _ => Route::Start,
        }
    }
}
