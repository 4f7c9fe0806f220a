//! One job: a household's answers with everything an installer keeps beside them. Plain data with its
//! bounds; the clock and chance come from whoever calls.

use super::answers::{Answers, Refusal};
use super::done::Done;
use super::offer::{Offer, cut, tidy, turns};
use super::questions::{Id, Value};
use crate::core::case::Provenance;

/// Identity of a job: 48 bits of chance, so that two devices do not give the same one to two jobs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct JobId(u64);

impl JobId {
    /// Bits of an identity.
    pub const BITS: u32 = 48;

    /// An identity from 64 bits of chance.
    pub const fn new(chance: u64) -> JobId {
        JobId(chance & ((1 << JobId::BITS) - 1))
    }

    /// As a number below 2^48.
    pub const fn number(self) -> u64 {
        self.0
    }

    /// The code in keys, files and addresses: twelve hexadecimal digits.
    pub fn code(self) -> String {
        format!("{:012x}", self.0)
    }

    /// The identity with this code, if it is one.
    pub fn from_code(code: &str) -> Option<JobId> {
        let plain = code.len() == 12 && code.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        u64::from_str_radix(code, 16).ok().filter(|_| plain).map(JobId)
    }
}

/// A text that belongs to a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// What the job is called.
    Name,
    /// Where it is: an address, a way to find it.
    Place,
    /// Whatever else: several lines.
    Notes,
}

impl Part {
    /// Every text.
    pub const ALL: [Part; 3] = [Part::Name, Part::Place, Part::Notes];

    /// The code in files.
    pub const fn code(self) -> &'static str {
        match self {
            Part::Name => "name",
            Part::Place => "place",
            Part::Notes => "notes",
        }
    }

    /// Longest text, characters.
    pub const fn longest(self) -> usize {
        match self {
            Part::Name => 80,
            Part::Place => 200,
            Part::Notes => 10_000,
        }
    }
}

/// A value measured on site.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The question it answers.
    pub id: Id,
    /// What was measured.
    pub value: Value,
    /// When, ms since 1970.
    pub at_ms: f64,
    /// Who measured, as they call themselves; may be empty.
    pub who: String,
}

/// Why something was set aside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// It could not be read.
    Unreadable,
    /// Two tabs changed the same thing: this is the older work.
    OtherTab,
    /// Another value was taken when two jobs were merged.
    Merged,
}

impl Why {
    /// Every reason.
    pub const ALL: [Why; 3] = [Why::Unreadable, Why::OtherTab, Why::Merged];

    /// The code in files.
    pub const fn code(self) -> &'static str {
        match self {
            Why::Unreadable => "unreadable",
            Why::OtherTab => "other-tab",
            Why::Merged => "merged",
        }
    }
}

/// Something that has no place in the job any more and is kept beside it: nothing is lost.
#[derive(Clone, Debug, PartialEq)]
pub struct Aside {
    /// What it was: `answers.setpoint`, `offer`, `notes`.
    pub field: String,
    /// As it stood, in JSON.
    pub text: String,
    /// Why it is here.
    pub why: Why,
    /// Since when, ms since 1970.
    pub at_ms: f64,
}

/// Most entries of the log of measured values; the oldest make room.
pub const MOST_MEASURED: usize = 1_000;
/// Most things set aside; the oldest make room.
pub const MOST_ASIDE: usize = 200;
/// Longest text set aside, bytes.
pub const LONGEST_ASIDE: usize = 1 << 16;
/// Longest name of who measured, characters.
pub const LONGEST_WHO: usize = 40;

/// A job.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Job {
    /// Identity.
    pub id: JobId,
    /// Counts changes; the higher one is the newer work.
    pub revision: u64,
    /// When it was begun, ms since 1970.
    pub created_ms: f64,
    /// When it was last changed, ms since 1970.
    pub changed_ms: f64,
    /// Put away: not listed among the open ones.
    pub archived: bool,
    /// What it is called.
    pub name: String,
    /// Where it is.
    pub place: String,
    /// Whatever else.
    pub notes: String,
    /// The answers.
    pub answers: Answers,
    /// The installer's offer.
    pub offer: Offer,
    /// Questions the sender wants answered, in the order of the question list.
    pub asked: Vec<Id>,
    /// Measured values, oldest first.
    pub log: Vec<Measured>,
    /// What was done and read at the work and after it.
    pub done: Done,
    /// What was set aside, oldest first.
    pub aside: Vec<Aside>,
}

impl Job {
    /// A new, empty job.
    pub fn new(id: JobId, now_ms: f64) -> Job {
        Job { id, created_ms: now_ms, changed_ms: now_ms, ..Job::default() }
    }

    /// A copy under an identity of its own, as a new job. The log belongs to the house: it goes along.
    pub fn duplicate(&self, id: JobId, now_ms: f64) -> Job {
        Job { id, created_ms: now_ms, changed_ms: now_ms, revision: 0, archived: false, ..self.clone() }
    }

    /// Counts a change.
    pub fn touch(&mut self, now_ms: f64) {
        self.revision += 1;
        self.changed_ms = now_ms;
    }

    /// Whether this is newer work than that of another revision and time.
    pub fn is_newer_than(&self, revision: u64, changed_ms: f64) -> bool {
        self.revision > revision || (self.revision == revision && self.changed_ms > changed_ms)
    }

    /// A text of the job.
    pub fn text(&self, part: Part) -> &str {
        match part {
            Part::Name => &self.name,
            Part::Place => &self.place,
            Part::Notes => &self.notes,
        }
    }

    /// Writes a text, without control characters, cut to its longest. Notes keep their lines.
    pub fn write(&mut self, part: Part, text: &str) {
        let tidied = if part == Part::Notes { lines(text) } else { tidy(text, part.longest()) };
        match part {
            Part::Name => self.name = tidied,
            Part::Place => self.place = tidied,
            Part::Notes => self.notes = tidied,
        }
    }

    /// Answers a question; a measured value is logged too, unless it is the one measured last.
    ///
    /// # Errors
    /// Refuses a value outside the question's range; the former answer stays and nothing is logged.
    pub fn answer(
        &mut self,
        id: Id,
        value: Value,
        from: Provenance,
        now_ms: f64,
        who: &str,
    ) -> Result<(), Refusal> {
        self.answers.set(id, value.clone(), from)?;
        let last = self.log.iter().rev().find(|m| m.id == id);
        if from == Provenance::Measured && last.is_none_or(|m| m.value != value) {
            self.record(Measured { id, value, at_ms: now_ms, who: tidy(who, LONGEST_WHO) });
        }
        Ok(())
    }

    /// Logs a measured value.
    pub fn record(&mut self, measured: Measured) {
        self.log.push(measured);
        let over = self.log.len().saturating_sub(MOST_MEASURED);
        self.log.drain(..over);
    }

    /// Sets something aside; a text too long is cut.
    pub fn set_aside(&mut self, field: &str, mut text: String, why: Why, at_ms: f64) {
        let mut end = LONGEST_ASIDE.min(text.len());
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        text.truncate(end);
        let aside = Aside { field: tidy(field, 100), text, why, at_ms };
        // The same thing is not kept twice: a job may be read again and again.
        if self.aside.iter().all(|a| a.field != aside.field || a.text != aside.text) {
            self.aside.push(aside);
        }
        let over = self.aside.len().saturating_sub(MOST_ASIDE);
        self.aside.drain(..over);
    }

    /// Asked questions that are still open.
    pub fn open_questions(&self) -> impl Iterator<Item = Id> {
        self.asked.iter().copied().filter(|id| self.answers.get(*id).is_none())
    }
}

/// Several lines without control characters and without marks that turn the writing direction.
fn lines(text: &str) -> String {
    let mut out: String = text.chars().filter(|c| (*c == '\n' || !c.is_control()) && !turns(*c)).collect();
    cut(&mut out, Part::Notes.longest());
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::Unit;

    #[test]
    fn identities_have_codes() {
        for id in [0, 1, 0xabcd_ef01_2345, u64::MAX].map(JobId::new) {
            assert_eq!(JobId::from_code(&id.code()), Some(id));
        }
        for code in ["", "12345678901", "1234567890123", "+23456789012", "12345678901G", "ABCDEF123456"] {
            assert_eq!(JobId::from_code(code), None, "{code}");
        }
    }

    #[test]
    fn measured_values_are_logged_once() {
        let mut job = Job::new(JobId::new(1), 0.0);
        let mut set =
            |v, from, at| job.answer(Id::Setpoint, Value::number(v, Unit::DegF), from, at, " Ann\n");
        set(120.0, Provenance::Answered, 1.0).expect("in range");
        set(122.0, Provenance::Measured, 2.0).expect("in range");
        set(122.0, Provenance::Measured, 3.0).expect("in range");
        set(900.0, Provenance::Measured, 4.0).expect_err("out of range");
        set(124.0, Provenance::Measured, 5.0).expect("in range");
        let log: Vec<_> = job.log.iter().map(|m| (m.at_ms, m.who.as_str())).collect();
        assert_eq!(log, [(2.0, "Ann"), (5.0, "Ann")]);
    }

    #[test]
    fn texts_and_lists_stay_bounded() {
        let mut job = Job::new(JobId::new(1), 0.0);
        job.write(Part::Notes, &format!("a\r\nb\u{202e}\u{7}{}", "x".repeat(20_000)));
        assert!(job.notes.starts_with("a\nbx") && job.notes.len() == 10_000);
        job.write(Part::Name, "two\nlines");
        assert_eq!(job.name, "two lines");
        for i in 0..MOST_ASIDE + 5 {
            job.set_aside("x", format!("{i}"), Why::Merged, 0.0);
            job.set_aside("x", format!("{i}"), Why::Merged, 1.0);
        }
        assert_eq!((job.aside.len(), job.aside[0].text.as_str()), (MOST_ASIDE, "5"));
        job.set_aside("long", "ü".repeat(LONGEST_ASIDE), Why::Merged, 0.0);
        assert_eq!(job.aside[MOST_ASIDE - 1].text.len(), LONGEST_ASIDE);
    }
}
