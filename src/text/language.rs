//! The languages, as data: a code, a name and the files of words compiled in, in groups.

use super::plurals::{self, Plural};

/// A language the words exist in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Language(usize);

/// One language's entry.
struct Entry {
    /// BCP 47 code; also the folder's name.
    code: &'static str,
    /// Its own name for itself.
    name: &'static str,
    /// Its plural rule.
    plural: Plural,
}

/// Every language; the first is complete and stands in for words another one lacks.
static LANGUAGES: &[Entry] = &[Entry { code: "en", name: "English", plural: plurals::english }];

/// A file of words: its name without ending, and its Fluent text.
pub type File = (&'static str, &'static str);

/// Files of words that are needed together, for each language in their order. The page has those of its first
/// visit at hand; the others come with the part of the page that says them, so only that part may name them.
pub struct Group(&'static [&'static [File]]);

/// One language's files.
macro_rules! files {
    ($code:literal: $($file:literal)*) => {
        &[$(($file, include_str!(concat!("../locales/", $code, "/", $file, ".ftl")))),*]
    };
}

/// The same files of every language: one may be short, not absent.
macro_rules! group {
    ($($file:literal)*) => { Group(&[files!("en": $($file)*)]) };
}

/// Up to the first verdict: questions, refusals, the verdict itself.
pub static FIRST: Group = group!(
    "advice" "candidates" "jobs" "offline" "page" "questions_heater" "questions_household" "questions_money"
    "questions_place" "questions_room" "refusals" "sections"
    "units"
);

/// The advice in full, workings and the rating test.
pub static ADVICE: Group = group!("cautions" "checks" "label" "offer" "questions_further" "questions_site" "questions_water" "questions_wiring" "result" "rules" "send" "test_page" "workings" "works");

/// Questions asked on request, and what only somebody on site can tell.
pub static SITE: Group = group!("questions_further" "questions_site" "questions_water" "questions_wiring");

/// The label to read figures off.
pub static LABEL: Group = group!("label" "label_form" "questions_further" "test_page");

/// Jobs, links and offers.
pub static JOBS: Group = group!("label" "label_form" "links" "offer" "onsite" "questions_further" "questions_site" "questions_water" "questions_wiring" "send" "works");

/// The day of the work: what to load, and what to do in which order.
pub static WORK: Group = group!("cautions" "checks" "parts" "plan");

/// After the work: the start-up record, the page for the household, dates of care, the meter.
pub static AFTER: Group = group!("after" "care" "cautions" "handover" "meter" "start");

/// How sure the advice is, what would change it, and what lies ahead.
pub static SURE: Group = group!("report_futures" "sure");

/// The headless command.
pub static COMMAND: Group = group!("cli" "report" "report_futures");

/// Every group.
static GROUPS: [&Group; 9] = [&FIRST, &ADVICE, &SITE, &LABEL, &JOBS, &COMMAND, &WORK, &AFTER, &SURE];

impl Language {
    /// English: complete, and the fallback of all others.
    pub const ENGLISH: Language = Language(0);

    /// Every language.
    pub fn all() -> impl Iterator<Item = Language> {
        (0..LANGUAGES.len()).map(Language)
    }

    /// The language with this code, or whose code this one begins with (`en-CA` finds `en`).
    pub fn from_code(code: &str) -> Option<Language> {
        let main = code.split('-').next().unwrap_or(code);
        let find = |wanted: &str| LANGUAGES.iter().position(|l| l.code.eq_ignore_ascii_case(wanted));
        find(code).or_else(|| find(main)).map(Language)
    }

    fn entry(self) -> &'static Entry {
        // Only this file makes a `Language`, always from a position in the list.
        LANGUAGES.get(self.0).unwrap_or(&LANGUAGES[0])
    }

    /// The BCP 47 code.
    pub fn code(self) -> &'static str {
        self.entry().code
    }

    /// The language's own name for itself.
    pub fn name(self) -> &'static str {
        self.entry().name
    }

    /// The plural rule.
    pub(super) fn plural(self) -> Plural {
        self.entry().plural
    }

    /// The files of a group.
    pub fn group(self, group: &Group) -> &'static [File] {
        group.0.get(self.0).copied().unwrap_or_default()
    }

    /// Every file.
    pub fn files(self) -> Vec<File> {
        let mut all: Vec<File> = Vec::new();
        for &file in GROUPS.iter().flat_map(|group| self.group(group)) {
            if !all.iter().any(|(name, _)| *name == file.0) {
                all.push(file);
            }
        }
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_find_languages() {
        assert_eq!(Language::from_code("en"), Some(Language::ENGLISH));
        assert_eq!(Language::from_code("EN-ca"), Some(Language::ENGLISH));
        assert_eq!(Language::from_code("xx"), None);
        for l in Language::all() {
            assert_eq!(Language::from_code(l.code()), Some(l));
            assert!(!l.name().is_empty() && !l.files().is_empty());
        }
    }
}
