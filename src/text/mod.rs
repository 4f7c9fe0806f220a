//! Messages to words: the locale files, units and numbers as people read them. Pure: no clock, no
//! browser. Uses the core's messages and the job's question list; used by the page and the headless
//! command, so that both say the same thing.
//!
//! Words are Project Fluent files, one folder a language under `src/locales/`, one small file a room.
//! [`Words`] finds them by key. Keys:
//!
//! | key | what |
//! | --- | --- |
//! | `q-<question>` | the question (its code with dashes for underscores) |
//! | `q-<question>.find` | how to find out |
//! | `q-<question>.default` | what is taken when nobody knows, and how that was derived |
//! | `q-<question>-<option>` | an option of a question |
//! | `section-<code>`, `.about` | a section's title, and one sentence on why it is asked |
//! | `candidate-<code>`, `.about` | a heater's name, and what it is |
//! | `unit-<code>`, `.sign`, `.name` | a number with its unit; the unit's sign alone; its name in full |
//! | `from-<code>`, `fit-<code>`, `who-<code>`, `affects-<code>` | provenance and the like |
//! | `refusal-…` | why an answer is not taken |
//! | `check-<code>` | a check's name |
//!
//! Everything else is found by a literal key in the source: `Message::new("…")`, `words.key("…")`,
//! `words.attr("…", "…")`. A test (`tests/words`) reads the sources and fails when a key has no words,
//! or words have no use. A key that is composed while the program runs begins with one of the
//! prefixes above.
//!
//! A language is a folder beside `en`, its line in the language list and its files in the groups and, where
//! English's will not do, a plural rule. A group is what a part of the page has at hand ([`Group`]).

pub mod after;
pub mod csv;
mod fluent;
mod language;
mod numbers;
mod plurals;
pub mod report;
mod values;
mod words;

pub use language::{ADVICE, AFTER, COMMAND, FIRST, File, Group, JOBS, LABEL, Language, SITE, SURE, WORK};
pub use numbers::decimals_of;
pub use words::{Words, unit_key};
