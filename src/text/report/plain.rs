//! A report as plain text for a terminal or a printer: verdict, reasons, the candidates side by side,
//! what to settle first, cautions, and what was assumed.

use super::super::words::Words;
use crate::core::candidates::CandidateId;
use crate::core::case::Provenance;
use crate::core::message::{Arg, Message};
use crate::core::outcome::{CandidateOutcome, Fit, Outcome};
use crate::core::outlook::{Outlook, says};
use crate::core::units::{Quantity, Unit};
use crate::job::questions::Id;
use crate::job::resolved::Resolved;
use std::fmt::Write;

/// Longest line, in characters.
const WIDTH: usize = 100;

/// The report of an outcome for people. Ends with a line break.
pub fn plain(
    words: &Words,
    name: Option<&str>,
    resolved: &Resolved,
    outcome: &Outcome,
    outlook: &Outlook,
) -> String {
    let mut page = Sheet::new(words);
    let advice = &outcome.advice;
    page.line(&match name {
        Some(name) => {
            words.say(&Message::new("report-title-of").with("name", Arg::Verbatim(name.to_owned())))
        }
        None => words.key("report-title"),
    });
    page.line("");
    page.wrapped("", &words.say(&advice.verdict));
    page.list("report-reasons", advice.reasons.iter().map(|m| words.say(m)));
    page.table(resolved, outcome);
    page.findings(outcome);
    let needs = advice.runners_up.iter().filter(|r| !r.needs.is_empty()).map(|r| {
        let said: Vec<String> = r.needs.iter().map(|m| words.say(m)).collect();
        format!("{}: {}", words.say(&outcome.name_of(r.id)), said.join(" "))
    });
    page.list("report-runners-up", needs);
    page.list("report-settle-first", advice.settle_first.iter().map(|s| words.say(&s.says)));
    page.list("report-extras", advice.extras.iter().map(|m| words.say(m)));
    for (title, said) in says::all(outlook, outcome) {
        page.list(title, said.iter().map(|m| words.say(m)));
    }
    page.list("report-cautions", advice.cautions.iter().map(|m| words.say(m)));
    let assumed = resolved
        .iter()
        .filter(|(_, known)| known.from == Provenance::Assumed)
        .map(|(id, known)| format!("{} {}", words.question(id), words.value(id, &known.value)));
    page.list("report-assumed", assumed);
    page.done()
}

/// A page of text as it is written, line by line.
pub(super) struct Sheet<'a> {
    words: &'a Words,
    text: String,
}

impl<'a> Sheet<'a> {
    /// An empty page.
    pub(super) fn new(words: &'a Words) -> Sheet<'a> {
        Sheet { words, text: String::new() }
    }

    /// What was written.
    pub(super) fn done(self) -> String {
        self.text
    }

    /// A line as it is.
    pub(super) fn line(&mut self, text: &str) {
        self.text.push_str(text.trim_end());
        self.text.push('\n');
    }

    /// A paragraph broken at gaps; further lines are set in as far as the first one's mark.
    pub(super) fn wrapped(&mut self, mark: &str, text: &str) {
        let indent = mark.chars().count();
        let mut line = mark.to_owned();
        let mut used = indent;
        // A gap that must not break is no place to break at: split at plain spaces only.
        for word in text.split([' ', '\n']).filter(|w| !w.is_empty()) {
            let long = word.chars().count();
            if used > indent && used + 1 + long > WIDTH {
                self.line(&line);
                line = " ".repeat(indent);
                used = indent;
            }
            if used > indent {
                line.push(' ');
                used += 1;
            }
            line.push_str(word);
            used += long;
        }
        self.line(&line);
    }

    /// A titled list; nothing at all when it is empty.
    pub(super) fn list(&mut self, title: &str, items: impl Iterator<Item = String>) {
        let mut items = items.peekable();
        if items.peek().is_none() {
            return;
        }
        self.line("");
        let title = self.words.key(title);
        self.line(&title);
        for item in items {
            self.wrapped("  - ", &item);
        }
    }

    fn table(&mut self, resolved: &Resolved, outcome: &Outcome) {
        let words = self.words;
        let years = resolved.quantity(Id::Horizon).map_or(Quantity::new(0.0, Unit::Year), |k| k.value);
        self.line("");
        let title = words.say(&Message::new("report-table").with("years", years));
        self.line(&title);
        let mut rows = vec![
            [
                "report-column-heater",
                "report-column-upfront",
                "report-column-energy",
                "report-column-energy-cost",
                "report-column-total",
                "report-column-payback",
                "report-column-morning",
                "report-column-fit",
            ]
            .map(|key| words.key(key)),
        ];
        rows.extend(outcome.candidates.iter().map(|c| row(words, c)));
        let widths: Vec<usize> = (0..rows[0].len())
            .map(|column| rows.iter().map(|r| r[column].chars().count()).max().unwrap_or(0))
            .collect();
        for (i, row) in rows.iter().enumerate() {
            let mut line = String::from("  ");
            for (column, (cell, width)) in row.iter().zip(&widths).enumerate() {
                let gap = " ".repeat(width - cell.chars().count());
                // Words to the left, figures to the right.
                let figures = (1..=5).contains(&column);
                let _ = if figures { write!(line, "{gap}{cell}  ") } else { write!(line, "{cell}{gap}  ") };
            }
            self.line(&line);
            if i == 0 {
                let rule: usize = widths.iter().map(|w| w + 2).sum();
                self.line(&format!("  {}", "-".repeat(rule.saturating_sub(2))));
            }
        }
    }

    /// What the checks ask of the recommended heater.
    fn findings(&mut self, outcome: &Outcome) {
        let words = self.words;
        let Some(best) = outcome.of(outcome.advice.best) else { return };
        let items = best.findings.iter().filter(|f| f.fit != Fit::Fits).map(|f| {
            let mut said =
                format!("{} ({}): {}", words.check(&f.check), words.fit(f.fit), words.say(&f.says));
            // A caution that stands with the others below is not said twice.
            let caution = f.caution.iter().filter(|c| !outcome.advice.cautions.contains(c));
            let maybe = f.fit == Fit::MeasureFirst && !f.work.is_empty();
            let maybe = maybe.then(|| Message::new("report-work-maybe"));
            let more = f.lets_in.iter().chain(&maybe).chain(f.work.iter().map(|w| &w.says)).chain(caution);
            for more in more {
                said.push(' ');
                said.push_str(&words.say(more));
            }
            let rule = Message::new("report-rule").with("rule", Message::new(f.rule.clone()));
            format!("{said} {}", words.say(&rule))
        });
        self.list("report-findings", items);
    }
}

fn row(words: &Words, c: &CandidateOutcome) -> [String; 8] {
    let money = |value: f64| words.quantity(Quantity::new(value, Unit::Dollar));
    let used = c.year.electricity_year_kwh() + c.year.fuel_year_kwh();
    [
        words.say(&c.candidate.name()),
        money(c.cost.upfront),
        words.quantity(Quantity::new(used, Unit::KilowattHour)),
        money(c.cost.energy_year),
        money(c.cost.net_present_cost),
        match c.cost.payback_years {
            // The one that the others are measured against.
            _ if c.candidate.id == CandidateId::Keep => words.key("report-none"),
            Some(years) => words.quantity_to(Quantity::new(years, Unit::Year), 1),
            None => words.key("report-no-payback"),
        },
        words.key(if c.morning.carries() { "report-morning-warm" } else { "report-morning-cold" }),
        words.fit(c.fit()),
    ]
}
