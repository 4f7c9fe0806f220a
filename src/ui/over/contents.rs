//! What a job that travels holds, word for word: every answer, text, price and question.

use crate::core::case::Provenance;
use crate::core::message::{Arg, Message};
use crate::core::units::{Quantity, Unit};
use crate::job::merge::Field;
use crate::job::offer::{Adder, Figure, Heater, Offer};
use crate::job::questions::Id;
use crate::job::{Job, Part};
use crate::ui::components::provenance::ProvenanceMark;
use crate::ui::components::question::{option_key, value_words};
use crate::ui::state::Page;
use leptos::prelude::*;

/// Longest text shown whole, characters.
const SHOWN: usize = 400;

/// The name of something a job has.
pub fn name_of(page: Page, field: Field) -> String {
    page.key(&match field {
        Field::Answer(id) => id.key(),
        Field::Text(Part::Name) => String::from("job-name"),
        Field::Text(Part::Place) => String::from("job-place"),
        Field::Text(Part::Notes) => String::from("job-notes"),
        Field::Offer => String::from("offer-heading"),
        Field::Asked => String::from("send-asked"),
        Field::Done => String::from("done-name"),
    })
}

/// What a job has there, a line each, and what it rests on; no line where it has nothing.
pub fn lines_of(page: Page, job: &Job, field: Field) -> (Vec<String>, Option<Provenance>) {
    match field {
        Field::Answer(id) => match job.answers.get(id) {
            Some(a) => (vec![value_words(page, id, &a.value)], Some(a.from)),
            None => (Vec::new(), None),
        },
        Field::Text(part) => {
            let text: String = job.text(part).chars().take(SHOWN).collect();
            (Some(text).filter(|t| !t.is_empty()).into_iter().collect(), None)
        }
        Field::Offer => (offer_lines(page, &job.offer), None),
        Field::Asked => (job.asked.iter().map(|id| page.key(&id.key())).collect(), None),
        Field::Done => {
            let says = Message::new("done-count").with("count", count(job.done.all().len()));
            (
                Some(says)
                    .filter(|_| !job.done.is_empty())
                    .map(|m| page.words_now().say(&m))
                    .into_iter()
                    .collect(),
                None,
            )
        }
    }
}

/// An offer in words: a line for each heater, each piece of work, and labour.
pub fn offer_lines(page: Page, offer: &Offer) -> Vec<String> {
    let name = Some(offer.name.clone()).filter(|n| !n.is_empty());
    let labour = (offer.labour != 0.0).then(|| {
        format!("{}: {}", page.key("offer-labour"), page.quantity(Quantity::new(offer.labour, Unit::Dollar)))
    });
    let heaters = offer.heaters.iter().map(|h| heater_line(page, h));
    let adders = offer.adders.iter().map(|a| adder_line(page, a));
    name.into_iter().chain(heaters).chain(adders).chain(labour).collect()
}

/// What an offered heater is called: its name, or what heats the water.
pub fn heater_name(page: Page, heater: &Heater) -> String {
    if heater.name.is_empty() {
        page.key(&option_key(Id::HeaterKind, heater.kind.code()))
    } else {
        heater.name.clone()
    }
}

fn heater_line(page: Page, heater: &Heater) -> String {
    let figures = Figure::ALL.into_iter().filter_map(|f| {
        let says = page.words_now().exact(heater.get(f)?);
        Some(format!("{} {says}", page.key(&f.key())))
    });
    let kind = page.key(&option_key(Id::HeaterKind, heater.kind.code()));
    let name = heater.name.clone();
    let all: Vec<String> = [name, kind].into_iter().filter(|t| !t.is_empty()).chain(figures).collect();
    all.join(", ")
}

/// What a piece of work is called.
pub fn adder_name(page: Page, adder: &Adder) -> String {
    if adder.name.is_empty() { page.key(&adder.kind.key()) } else { adder.name.clone() }
}

fn adder_line(page: Page, adder: &Adder) -> String {
    let price = page.quantity(Quantity::new(adder.price, Unit::Dollar));
    let when = page.key(if adder.always { "offer-in-every-job" } else { "offer-where-needed" });
    format!("{}: {price} ({when})", adder_name(page, adder))
}

/// Everything a job holds, folded behind its own words.
pub fn all_of(page: Page, job: &Job) -> AnyView {
    let rows: Vec<AnyView> = Field::all()
        .chain([Field::Done])
        .filter_map(|field| {
            let (lines, from) = lines_of(page, job, field);
            (!lines.is_empty()).then(|| row(page, field, lines, from))
        })
        .collect();
    view! {
        <details class="data" data-test="over-all">
            <summary>{page.key("over-all")}</summary>
            <dl class="held">{rows}</dl>
        </details>
    }
    .into_any()
}

fn row(page: Page, field: Field, lines: Vec<String>, from: Option<Provenance>) -> AnyView {
    let measured = (from == Some(Provenance::Measured))
        .then(|| view! { <ProvenanceMark from=Signal::stored(Provenance::Measured)/> });
    let lines = lines.into_iter().map(|line| view! { <span>{line}</span> }).collect_view();
    view! {
        <div>
            <dt>{name_of(page, field)}</dt>
            <dd>{lines} {measured}</dd>
        </div>
    }
    .into_any()
}

/// Sentences as a list.
pub fn says(page: Page, all: Vec<Message>, test: &'static str) -> AnyView {
    let one = |m: Message| view! { <li>{page.words_now().say(&m)}</li> };
    view! { <ul class="says-all" data-test=test>{all.iter().cloned().map(one).collect_view()}</ul> }
        .into_any()
}

/// A count, for a message.
pub fn count(n: usize) -> Arg {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

/// What an offer asks for each heater that has a price, in words.
pub fn prices(page: Page, offer: &Offer) -> Vec<String> {
    let one =
        |h: &Heater| Some(format!("{}: {}", heater_name(page, h), page.quantity(h.get(Figure::Price)?)));
    offer.heaters.iter().filter_map(one).collect()
}
