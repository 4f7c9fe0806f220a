//! Dates of care as a calendar file: iCalendar, RFC 5545, whole days, each task once with its rule of repetition.
//!
//! The same input gives the same file: the moment of making (DTSTAMP) is the day given, and each event's identity is
//! made of the job's and the task's, so that a file taken in twice changes the events instead of doubling them.
//!
//! Lines are written here: of the libraries, `icalendar` needs a clock and chance and brings 80 kB, and `ics` folds
//! lines to 76 octets where the standard says 75. Other libraries read the file back in `tests/after/calendar.rs`.

use super::Date;
use super::care::{Due, Task};

/// Years that dates repeat for: a heater's life.
const YEARS: u32 = 15;
/// Longest line, octets without its end (RFC 5545, 3.1).
const LONGEST: usize = 75;

/// An event's words.
#[derive(Clone, Debug, PartialEq)]
pub struct EventWords {
    /// Its name.
    pub summary: String,
    /// Who and how.
    pub description: String,
}

/// A calendar file. `job` is the code in the identities of events; `made` stands as the day of making; `words`
/// gives each task's.
pub fn calendar(job: &str, made: Date, dues: &[Due], words: &dyn Fn(&Due) -> EventWords) -> String {
    let mut out = String::new();
    let mut line = |name: &str, value: &str| fold(&mut out, &format!("{name}:{value}"));
    line("BEGIN", "VCALENDAR");
    line("VERSION", "2.0");
    line("PRODID", "-//Tankful//Care of a water heater//EN");
    line("CALSCALE", "GREGORIAN");
    for due in dues {
        let said = words(due);
        line("BEGIN", "VEVENT");
        line("UID", &escaped(&uid(job, due.task)));
        line("DTSTAMP", &format!("{}T000000Z", basic(made)));
        line("DTSTART;VALUE=DATE", &basic(due.first));
        if let Some(months) = due.every_months {
            line("RRULE", &rule(due.first, months));
        }
        line("SUMMARY", &escaped(&said.summary));
        line("DESCRIPTION", &escaped(&said.description));
        // A day of care does not make anybody busy.
        line("TRANSP", "TRANSPARENT");
        line("END", "VEVENT");
    }
    line("END", "VCALENDAR");
    out
}

/// Every so many months, for a heater's life. A month that lacks the day would be left out: its last day stands for
/// it.
fn rule(first: Date, months: u32) -> String {
    let mut rule = format!("FREQ=MONTHLY;INTERVAL={months};UNTIL={}", basic(first.plus_months(12 * YEARS)));
    if first.day() > 28 {
        rule += ";BYMONTHDAY=28";
        for day in 29..=first.day() {
            rule += &format!(",{day}");
        }
        rule += ";BYSETPOS=-1";
    }
    rule
}

/// The identity of a task's event.
fn uid(job: &str, task: Task) -> String {
    format!("{job}-{}@tankful.invalid", task.code().replace('_', "-"))
}

/// `20261125`.
fn basic(date: Date) -> String {
    date.iso().replace('-', "")
}

/// A text as the standard has it (3.3.11): signs that part values are marked, line ends spelt out, other control
/// characters left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | ',' | ';' => {
                out.push('\\');
                out.push(c);
            }
            '\n' => out.push_str("\\n"),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// A line, folded (3.1) between letters, and never beside a space: some readers lose one at a line's end.
fn fold(out: &mut String, line: &str) {
    let mut rest = line;
    let mut room = LONGEST;
    while rest.len() > room {
        let breaks = |at: &usize| {
            let (before, after) = (rest.get(..*at).unwrap_or(" "), rest.get(*at..).unwrap_or(" "));
            !before.ends_with(' ') && !after.starts_with(' ')
        };
        // A run of spaces as long as a line is no text: cut it between letters then.
        let whole = |at: &usize| rest.is_char_boundary(*at);
        let at = (1..=room).rev().find(breaks).or((1..=room).rev().find(whole)).unwrap_or(rest.len());
        let (head, tail) = rest.split_at(at);
        out.push_str(head);
        out.push_str("\r\n ");
        rest = tail;
        // The space that marks the rest counts.
        room = LONGEST - 1;
    }
    out.push_str(rest);
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Any text folds to lines of 75 octets at most, whole letters each, and comes back when they are joined.
        #[test]
        fn any_text_comes_back(text in "(.| |ü|語){0,400}") {
            let mut out = String::new();
            let plain = escaped(&text);
            fold(&mut out, &plain);
            let body = out.strip_suffix("\r\n").expect("an end");
            prop_assert!(body.split("\r\n").all(|line| line.len() <= LONGEST));
            prop_assert_eq!(body.replace("\r\n ", ""), plain);
        }
    }

    #[test]
    fn signs_are_marked() {
        assert_eq!(escaped("a,b;c\\d\ne\r\u{7}"), "a\\,b\\;c\\\\d\\ne");
    }
}
