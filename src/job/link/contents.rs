//! What a link contains, said before it is sent.

use super::With;
use crate::core::case::Provenance;
use crate::core::message::{Arg, Message};
use crate::job::offer::Heater;
use crate::job::questions::{Id, Value};
use crate::job::{Job, Part};

fn count(n: usize) -> Arg {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

fn listed(names: impl Iterator<Item = String>) -> Arg {
    Arg::Verbatim(names.collect::<Vec<_>>().join(", "))
}

/// Everything a link of this job would tell, a sentence each; what stays out is said last.
pub fn contents(job: &Job, with: With) -> Vec<Message> {
    let measured = job.answers.iter().filter(|(_, a)| a.from == Provenance::Measured).count();
    let mut all = vec![
        Message::new("link-has-answers")
            .with("answers", count(job.answers.len()))
            .with("measured", count(measured)),
    ];
    // The nearest listed town tells about where they live.
    if let Some(Value::Code(code)) = job.answers.get(Id::Place).map(|a| &a.value)
        && let Some(place) = crate::core::climate::places::by_id(code)
    {
        all.push(Message::new("link-has-town").with("town", Arg::Verbatim(place.name.to_owned())));
    }
    if with.offer && !job.offer.is_empty() {
        let name = |h: &Heater| h.name.clone();
        all.push(
            Message::new("link-has-offer")
                .with("count", count(job.offer.heaters.len()))
                .with("names", listed(job.offer.heaters.iter().map(name).filter(|n| !n.is_empty()))),
        );
    }
    if !job.asked.is_empty() {
        all.push(Message::new("link-has-asked").with("count", count(job.asked.len())));
    }
    let mut out = Vec::new();
    for part in Part::ALL.into_iter().filter(|p| !job.text(*p).is_empty()) {
        if with.has(part) {
            let text = Arg::Verbatim(job.text(part).chars().take(200).collect());
            all.push(Message::new("link-has-text").with("what", what(part)).with("text", text));
        } else {
            out.push(what(part));
        }
    }
    if !job.done.is_empty() {
        out.push(Message::new("link-what-done"));
    }
    all.extend(out.into_iter().map(|what| Message::new("link-leaves-out").with("what", what)));
    all
}

fn what(part: Part) -> Message {
    Message::new(match part {
        Part::Name => "link-what-name",
        Part::Place => "link-what-place",
        Part::Notes => "link-what-notes",
    })
}
