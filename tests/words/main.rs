//! The words: every file parses, every key that is used has words, all words are used, and they read
//! easily.

mod easy;
mod sources;

use fluent_bundle::FluentResource;
use std::collections::{BTreeMap, BTreeSet};
use tankful::core::candidates::CandidateId;
use tankful::core::units::{Unit, UnitSystem};
use tankful::job::offer::{AdderKind, Figure};
use tankful::job::questions::{self, Kind, Section};
use tankful::text::{Language, Words};

fn words(language: Language) -> Words {
    Words::new(language, UnitSystem::Us)
}

fn dashed(code: &str) -> String {
    code.replace('_', "-")
}

/// Keys that are composed while the program runs, with the attributes they must have.
fn composed() -> BTreeMap<String, &'static [&'static str]> {
    let mut keys = BTreeMap::new();
    for q in questions::all() {
        keys.insert(q.id.key(), &["find", "default"][..]);
        if let Kind::Choice(options) = q.kind {
            for option in options {
                keys.insert(format!("{}-{}", q.id.key(), dashed(option)), &[][..]);
            }
        }
    }
    for s in Section::ALL {
        keys.insert(format!("section-{}", s.code()), &["about"][..]);
    }
    for id in CandidateId::ALL {
        keys.insert(id.key(), &["about"][..]);
    }
    for figure in Figure::ALL {
        keys.insert(figure.key(), &[][..]);
    }
    for kind in AdderKind::ALL {
        keys.insert(kind.key(), &[][..]);
    }
    for &unit in Unit::ALL {
        keys.insert(tankful::text::unit_key(unit), &["sign", "name"][..]);
    }
    for code in ["assumed", "answered", "measured"] {
        keys.insert(format!("from-{code}"), &["about"][..]);
    }
    for (family, codes) in [
        ("fit", &["fits", "fits-with-work", "measure-first", "does-not-fit"][..]),
        ("who", &["householder", "on-site", "installer"]),
        ("report-future", &["lives", "prices", "household", "weather"]),
        ("affects", &["energy", "comfort", "fit", "cost", "timing"]),
    ] {
        for code in codes {
            keys.insert(format!("{family}-{code}"), &[][..]);
        }
    }
    keys
}

/// Families whose keys end in a code that stands in the source as a literal (`check-<code>`).
const CODED: &[&str] = &["check-"];

#[test]
fn every_file_parses_and_no_key_is_given_twice() {
    for language in Language::all() {
        let mut seen = BTreeSet::new();
        for (name, text) in language.files() {
            if let Err((_, errors)) = FluentResource::try_new((*text).to_owned()) {
                panic!("{}/{name}.ftl: {errors:?}", language.code());
            }
            for key in sources::keys_of(text) {
                assert!(seen.insert(key.clone()), "{}/{name}.ftl: {key} again", language.code());
            }
        }
    }
}

#[test]
fn every_file_of_the_folder_is_compiled_in() {
    for language in Language::all() {
        let folder = sources::root().join("src/locales").join(language.code());
        for entry in std::fs::read_dir(folder).expect("the language's folder") {
            let path = entry.expect("an entry").path();
            let stem = path.file_stem().and_then(|s| s.to_str()).expect("a name").to_owned();
            assert!(
                language.files().iter().any(|(n, _)| *n == stem),
                "{stem}.ftl is not in the language list"
            );
        }
    }
}

#[test]
fn everything_composed_has_words() {
    for language in Language::all() {
        let words = words(language);
        for (key, attributes) in composed() {
            assert!(words.has(&key), "{}: no words for {key}", language.code());
            for attribute in attributes {
                assert!(
                    words.attr(&key, attribute).is_some(),
                    "{}: {key} lacks .{attribute}",
                    language.code()
                );
            }
        }
    }
}

#[test]
fn every_literal_key_has_words() {
    let words = words(Language::ENGLISH);
    let mut wanting = Vec::new();
    for used in sources::literal_keys() {
        let there = match &used.attribute {
            Some(attribute) => words.attr(&used.key, attribute).is_some(),
            None => words.has(&used.key),
        };
        if !there {
            wanting.push(format!("{}: {} {:?}", used.file, used.key, used.attribute));
        }
    }
    assert!(wanting.is_empty(), "keys without words:\n{}", wanting.join("\n"));
}

#[test]
fn all_words_are_used() {
    let composed = composed();
    let literals = sources::literals();
    let mut idle = Vec::new();
    for (name, text) in Language::ENGLISH.files() {
        let mentioned: BTreeSet<String> = sources::mentions_of(text).collect();
        for key in sources::keys_of(text) {
            let coded = CODED
                .iter()
                .filter_map(|family| key.strip_prefix(family))
                .any(|code| literals.contains(code) || literals.contains(code.replace('-', "_").as_str()));
            if !composed.contains_key(&key) && !literals.contains(&key) && !mentioned.contains(&key) && !coded
            {
                idle.push(format!("{name}.ftl: {key}"));
            }
        }
    }
    assert!(idle.is_empty(), "words nobody uses:\n{}", idle.join("\n"));
}

/// Words that ask for a figure nobody gives show a gap. Whoever names a key also names its figures, in
/// the same file.
#[test]
fn every_figure_asked_for_is_given() {
    let files = sources::literals_by_file();
    let composed = composed();
    let mut wanting = Vec::new();
    for (name, text) in Language::ENGLISH.files() {
        for (key, variables) in sources::variables_of(text) {
            if composed.contains_key(&key) {
                continue;
            }
            for variable in variables {
                let named = files.iter().filter(|(_, literals)| literals.contains(&key));
                if !named.clone().all(|(_, literals)| literals.contains(&variable)) {
                    wanting.push(format!("{name}.ftl: {key} asks for ${variable}"));
                }
            }
        }
    }
    assert!(wanting.is_empty(), "figures nobody gives:\n{}", wanting.join("\n"));
}

/// Text that people read in sentences should suit a reader of about 12.
#[test]
fn the_words_read_easily() {
    let mut hard = Vec::new();
    for (name, text) in Language::ENGLISH.files() {
        let mut whole = String::new();
        for (key, said) in sources::texts_of(text) {
            let grade = easy::grade(&said);
            // One text alone is a small sample: only plain outliers are refused.
            // Names of published works are as long as they are.
            let names = key.starts_with("source-") || key.starts_with("rule-");
            if easy::words(&said) >= 12 && grade > 10.0 && !names {
                hard.push(format!("{name}.ftl: {key}: grade {grade:.1}: {said}"));
            }
            if let Some(long) = easy::longest_sentence(&said).filter(|n| *n > 28) {
                hard.push(format!("{name}.ftl: {key}: a sentence of {long} words: {said}"));
            }
            if easy::words(&said) >= 5 && !names {
                whole.push_str(&said);
                whole.push_str(". ");
            }
        }
        let grade = easy::grade(&whole);
        if easy::words(&whole) > 60 && grade > 6.5 {
            hard.push(format!("{name}.ftl as a whole: grade {grade:.1}"));
        }
    }
    assert!(hard.is_empty(), "hard to read:\n{}", hard.join("\n"));
}

#[test]
fn the_measure_of_ease_can_tell_hard_from_easy() {
    let easy_text = "The tank is old. It may leak soon. Ask a plumber to look at it.";
    let hard_text = "Notwithstanding considerable methodological uncertainty regarding anticipated degradation, \
                     immediate replacement of deteriorating installations demonstrably constitutes the economically preferable alternative.";
    assert!(easy::grade(easy_text) < 4.0, "{}", easy::grade(easy_text));
    assert!(easy::grade(hard_text) > 14.0, "{}", easy::grade(hard_text));
}
