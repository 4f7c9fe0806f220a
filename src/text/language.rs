//! The languages, as data: a code, a name and the files of words compiled in.

use super::plurals::{self, Plural};

/// A language the words exist in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Language(usize);

/// File names and their contents.
type Files = &'static [(&'static str, &'static str)];

/// One language's entry.
struct Entry {
    /// BCP 47 code; also the folder's name.
    code: &'static str,
    /// Its own name for itself.
    name: &'static str,
    /// Its plural rule.
    plural: Plural,
    /// What the page says up to a verdict.
    first: Files,
}

/// Files of a language's folder. The same lists for every language: a file may be short, not absent.
macro_rules! files {
    ($code:literal, $($file:literal),*) => {
        &[$(($file, include_str!(concat!("../locales/", $code, "/", $file, ".ftl")))),*]
    };
}

/// What the page says up to a verdict, and in the parts that are not the advice.
macro_rules! first {
    ($code:literal) => {
        files!(
            $code,
            "advice",
            "candidates",
            "jobs",
            "label",
            "label_form",
            "links",
            "offer",
            "offline",
            "onsite",
            "page",
            "questions_heater",
            "questions_household",
            "questions_money",
            "questions_place",
            "questions_room",
            "questions_site",
            "questions_water",
            "questions_wiring",
            "refusals",
            "sections",
            "send",
            "units"
        )
    };
}

/// What only the advice in full says: the page fetches these words with that part.
macro_rules! later {
    ($code:literal) => {
        files!($code, "cautions", "checks", "rules", "test_page", "workings", "works")
    };
}

/// What only the headless command says.
macro_rules! command {
    ($code:literal) => {
        files!($code, "cli", "report")
    };
}

/// Every language; the first is complete and stands in for words another one lacks.
static LANGUAGES: &[Entry] =
    &[Entry { code: "en", name: "English", plural: plurals::english, first: first!("en") }];

/// The same languages' words for the advice. Apart from the entries, so that a program that does not reach for
/// them does not carry them.
static LATER: &[Files] = &[later!("en")];

/// The same languages' words for the headless command.
static COMMAND: &[Files] = &[command!("en")];

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

    /// File names (without ending) and texts of what the page says up to a verdict.
    pub(super) fn first(self) -> Files {
        self.entry().first
    }

    /// The same of what only the advice in full says.
    pub(super) fn later(self) -> Files {
        LATER.get(self.0).unwrap_or(&LATER[0])
    }

    /// File names (without ending) and their Fluent text, all of them.
    pub fn files(self) -> impl Iterator<Item = &'static (&'static str, &'static str)> {
        let command = COMMAND.get(self.0).unwrap_or(&COMMAND[0]);
        self.first().iter().chain(self.later()).chain(*command)
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
            assert!(!l.name().is_empty() && l.files().next().is_some());
        }
    }
}
