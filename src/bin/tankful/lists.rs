//! The schema and the question list.

use crate::Stop;
use serde_json::{Map, Value as Json, json};
use std::io::Write;
use tankful::core::climate::places;
use tankful::core::message::{Arg, Message};
use tankful::core::units::Quantity;
use tankful::job::answers::Answers;
use tankful::job::file::{self, bare_unit, units_of};
use tankful::job::questions::{self, Kind, Question, Section, Spread, Value};
use tankful::job::resolved::Resolved;
use tankful::text::Words;

/// Writes JSON for people to look through.
pub fn pretty(out: &mut impl Write, json: &Json) -> Result<(), Stop> {
    serde_json::to_writer_pretty(&mut *out, json).map_err(std::io::Error::from)?;
    out.write_all(b"\n")?;
    Ok(())
}

/// The JSON Schema of a case, or of a file of jobs.
pub fn schema(words: &Words, jobs: bool, out: &mut impl Write) -> Result<(), Stop> {
    let of = if jobs { file::schema_of_jobs } else { file::schema };
    pretty(out, &of(&|q| words.question(q.id)))
}

/// The question list with words, ranges and defaults. Defaults are those of a case in which nothing is
/// answered; many follow earlier answers.
pub fn questions(words: &Words, text: bool, out: &mut impl Write) -> Result<(), Stop> {
    let resolved = Resolved::of(&Answers::new());
    if !text {
        let all: Vec<Json> = questions::all().map(|q| question(words, q, &resolved)).collect();
        return pretty(out, &json!(all));
    }
    for section in Section::ALL {
        writeln!(out, "{}", words.key(&format!("section-{}", section.code())))?;
        for q in questions::all().filter(|q| q.section == section) {
            in_text(words, q, &resolved, out)?;
        }
        writeln!(out)?;
    }
    Ok(())
}

fn number(q: Quantity) -> Json {
    json!({ "value": file::number(q.value), "unit": q.unit.code() })
}

fn value(value: &Value) -> Json {
    match value {
        Value::Number(q) => number(*q),
        Value::Code(code) => code.as_str().into(),
    }
}

fn question(words: &Words, q: &Question, resolved: &Resolved) -> Json {
    let mut entry = Map::new();
    let mut put = |name: &str, json: Json| {
        entry.insert(name.to_owned(), json);
    };
    put("id", q.id.code().into());
    put("section", json!(q.section));
    put("text", words.question(q.id).into());
    put("find", words.attr(&q.id.key(), "find").into());
    if let Some(known) = resolved.get(q.id) {
        put("default", value(&known.value));
    }
    put("default_from", words.attr(&q.id.key(), "default").into());
    match q.kind {
        Kind::Number { low, high, step, .. } => {
            put("kind", "number".into());
            put("low", number(low));
            put("high", number(high));
            put("step", file::number(step));
            put("units", units_of(q).iter().map(|u| u.code()).collect());
            put("bare_unit", bare_unit(q).map(|u| u.code()).into());
        }
        Kind::Choice(options) => {
            put("kind", "choice".into());
            let option = |code: &&str| json!({ "code": code, "text": words.option(q.id, code) });
            put("options", options.iter().map(option).collect());
        }
        Kind::Place => {
            put("kind", "place".into());
            put("options", places::all().map(|p| json!({ "code": p.id, "text": words.place(p) })).collect());
        }
    }
    put("spread", spread(q.spread));
    put("who", json!(q.who));
    put("affects", json!(q.affects));
    put("first", q.first.into());
    Json::Object(entry)
}

fn spread(spread: Spread) -> Json {
    match spread {
        Spread::Factor(low, high) => json!({ "times": [file::number(low), file::number(high)] }),
        Spread::Plus(below, above, unit) => {
            json!({ "below": file::number(below), "above": file::number(above), "unit": unit.code() })
        }
        Spread::AnyOption => json!("any_option"),
        Spread::None => Json::Null,
    }
}

fn in_text(words: &Words, q: &Question, resolved: &Resolved, out: &mut impl Write) -> Result<(), Stop> {
    writeln!(out, "  {} [{}]", words.question(q.id), q.id.code())?;
    match q.kind {
        Kind::Number { low, high, .. } => {
            let range = Message::new("cli-range").with("low", low).with("high", high);
            writeln!(out, "      {}", words.say(&range))?;
        }
        Kind::Choice(options) => {
            for code in options {
                writeln!(out, "      {code}: {}", words.option(q.id, code))?;
            }
        }
        Kind::Place => writeln!(out, "      {}", words.key("cli-place"))?,
    }
    if let Some(find) = words.attr(&q.id.key(), "find") {
        writeln!(out, "      {find}")?;
    }
    if let Some(known) = resolved.get(q.id) {
        let value = Arg::Verbatim(words.value(q.id, &known.value));
        let unknown = words.say(&Message::new("cli-default").with("value", value));
        writeln!(out, "      {unknown} {}", words.attr(&q.id.key(), "default").unwrap_or_default())?;
    }
    Ok(())
}
