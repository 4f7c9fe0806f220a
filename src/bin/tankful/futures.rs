//! `advise --futures N --seed S`: how sure the advice is, and what would change it. The years are simulated on every core;
//! what comes out does not depend on how many there are.

use rayon::prelude::*;
use serde::Serialize;
use tankful::core::futures::stages::HOUSEHOLDS;
use tankful::core::futures::{Changes, FirstLook, Futures, Lives, Study, Wishes};
use tankful::core::message::{Arg, Message};
use tankful::core::outcome::Outcome;
use tankful::core::pipeline::Cache;
use tankful::job::open::Open;
use tankful::text::Words;
use tankful::text::report::futures as said;

/// Futures drawn and told in one piece.
const TOGETHER: u32 = 16;

/// What is added to a case's report.
#[derive(Serialize)]
pub struct Answer {
    /// The futures.
    pub futures: Futures,
    /// What would change the advice; absent where nothing else fits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changes: Option<Changes>,
}

/// The futures of a case, as the page comes to them in the end.
pub fn answer(open: &Open, outcome: &Outcome, wishes: Wishes) -> Option<Answer> {
    let study = Study::new(open, wishes);
    let lives: Vec<Lives> = (0..HOUSEHOLDS).into_par_iter().map(|number| study.lives(number)).collect();
    let fitted = study.fit(&study.as_it_stands(), &lives, outcome)?;
    let count = study.wishes().futures;
    let drawn: Vec<_> = (0..count.div_ceil(TOGETHER))
        .into_par_iter()
        .flat_map_iter(|piece| {
            let from = piece * TOGETHER;
            study.draw(&fitted, outcome, from, count.min(from + TOGETHER))
        })
        .collect();
    let futures = study.summary(&fitted, outcome, &drawn, true);
    let changes = study.changes(&fitted, outcome).map(|changes| {
        let looks: Vec<FirstLook> = (0..study.houses())
            .into_par_iter()
            .map_init(Cache::default, |cache, index| study.first_look(index, cache))
            .flatten()
            .collect();
        study.with_other_houses(changes, outcome, &looks)
    });
    Some(Answer { futures, changes })
}

/// The same as lines of text, to follow the report.
pub fn plain(words: &Words, answer: &Answer, outcome: &Outcome) -> String {
    let count = Arg::Count(i64::from(answer.futures.wishes.futures));
    let mut text = format!("\n{}\n", words.say(&Message::new("report-futures").with("count", count)));
    if let Some(message) = said::advised(&answer.futures, outcome) {
        text.push_str(&format!("  {}\n", words.say(&message)));
    }
    for line in said::candidates(words, &answer.futures, outcome) {
        text.push_str(&format!("  - {line}\n"));
    }
    if let Some(changes) = &answer.changes {
        let title = Message::new("report-changes")
            .with("advised", outcome.name_of(changes.advised))
            .with("next", outcome.name_of(changes.next));
        let lines = said::changes(words, changes, outcome);
        text.push_str(&format!("\n{}\n", words.say(&title)));
        for line in lines {
            text.push_str(&format!("  - {line}\n"));
        }
    }
    text
}
