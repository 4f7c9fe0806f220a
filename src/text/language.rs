//! The languages, as data: a code, a name and the files of words compiled in.

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
    /// File names and their contents.
    files: &'static [(&'static str, &'static str)],
}

/// The files of a language's folder. The same list for every language: a file may be short, not absent.
macro_rules! language {
    ($code:literal, $name:literal, $plural:expr) => {
        language!(@files $code, $name, $plural,
            "advice", "candidates", "cautions", "checks", "jobs", "label", "label_form", "links", "offer", "offline", "onsite",
            "page",
            "questions_heater", "questions_household", "questions_money", "questions_place", "questions_room", "questions_site", "questions_water", "questions_wiring",
            "refusals", "rules", "sections", "send", "test_page", "units", "workings", "works";
            "cli", "report")
    };
    (@files $code:literal, $name:literal, $plural:expr, $($file:literal),*; $($native:literal),*) => {
        Entry {
            code: $code,
            name: $name,
            plural: $plural,
            files: &[
                $(($file, include_str!(concat!("../locales/", $code, "/", $file, ".ftl"))),)*
                // Words of the headless command alone: the page need not download them.
                $(#[cfg(not(target_arch = "wasm32"))]
                ($native, include_str!(concat!("../locales/", $code, "/", $native, ".ftl"))),)*
            ],
        }
    };
}

/// Every language; the first is complete and stands in for words another one lacks.
static LANGUAGES: &[Entry] = &[language!("en", "English", plurals::english)];

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

    /// File names (without ending) and their Fluent text.
    pub fn files(self) -> &'static [(&'static str, &'static str)] {
        self.entry().files
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
