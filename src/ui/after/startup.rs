//! The start-up record: a field a reading, each with what it should be, why, and what to look for when it is not.

use super::After;
use super::field::{Number, shown};
use crate::core::after::start::{Expected, Reading, Standing, causes, expected};
use crate::core::candidates::Candidate;
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit, UnitSystem};
use crate::job::after as kept;
use crate::job::questions::Value;
use crate::text::after as words;
use leptos::prelude::*;

/// The form.
pub fn form(after: After) -> AnyView {
    let page = after.page;
    let all = expectations(after);
    let readings = after.with(|s| Some(s.start(after.installed.get_untracked())?.readings()));
    let fields = readings.unwrap_or_default().into_iter().map(|r| field(after, all, r)).collect_view();
    view! {
        <section class="startup" aria-labelledby="startup-name" data-test="startup">
            <h2 id="startup-name">{page.key("after-startup")}</h2>
            <p>{page.key("after-startup-about")}</p>
            <p class="caution">{page.key("caution-mains")}</p>
            <div class="readings">{fields}</div>
        </section>
    }
    .into_any()
}

/// What each reading should be, by the readings noted so far.
pub fn expectations(after: After) -> Memo<Vec<Expected>> {
    Memo::new(move |_| {
        let (taken, day) = (after.done.with(kept::taken), after.installed.get());
        after.with(|s| Some(expected(&s.start(day)?, &taken))).unwrap_or_default()
    })
}

/// The unit a reading is typed in. Condensate is read off a measuring cup, in thousandths of a litre.
fn typed_in(reading: Reading, system: UnitSystem) -> (Unit, f64) {
    let (us, si) = reading.units();
    let unit = if system == UnitSystem::Us { us } else { si };
    (unit, if reading == Reading::Condensate { 1e3 } else { 1.0 })
}

fn field(after: After, all: Memo<Vec<Expected>>, reading: Reading) -> AnyView {
    let page = after.page;
    let code = kept::code(reading);
    let test = code.replace(['.', '_'], "-");
    let noted = {
        let code = code.clone();
        Memo::new(move |_| after.done.with(|d| kept::number(d, &code)))
    };
    let sign = Signal::derive(move || {
        let (unit, many) = typed_in(reading, page.units());
        if many > 1.0 { page.key("start-mL") } else { page.words().unit_sign(unit) }
    });
    let now = Signal::derive(move || {
        let (unit, many) = typed_in(reading, page.units());
        let q = noted.get().and_then(|q| q.to(unit));
        q.map(|q| shown(q.value * many, 2)).unwrap_or_default()
    });
    let write = Callback::new(move |given: Option<f64>| {
        let (unit, many) = typed_in(reading, page.units());
        let Some(value) = given else {
            after.note_or_not(&code, None);
            return Ok(());
        };
        let q = Quantity::new(value / many, unit);
        reading.check(q).map_err(|refusal| refusal.message())?;
        after.note(&code, Value::Number(q));
        Ok(())
    });
    let number = Number { name: page.key(reading.key()), code: test.clone(), sign, now, write };
    let mine = Memo::new(move |_| all.with(|all| all.iter().find(|e| e.reading == reading).cloned()));
    let beside = (reading != Reading::CondensateTime).then(|| {
        view! {
            {move || expected_line(after, mine)}
            <div role="status" data-test=format!("{test}-flag")>{move || flag(after, mine)}</div>
        }
    });
    view! {
        <div class="reading" data-reading=test>
            {number.field(after)}
            {beside}
            <details class="find">
                <summary>{page.key("page-find")}</summary>
                <p>{page.attr(reading.key(), "find")}</p>
            </details>
        </div>
    }
    .into_any()
}

fn expected_line(after: After, mine: Memo<Option<Expected>>) -> AnyView {
    let page = after.page;
    let Some(e) = mine.get() else {
        return view! { <p class="quiet">{page.key("start-nothing-expected")}</p> }.into_any();
    };
    let range = words::range(&page.words(), &e);
    view! {
        <p class="range">
            {page.key("start-expected")} " " <strong>{range}</strong>
            <br/>
            <span class="quiet">{page.say(&e.reason)}</span>
        </p>
    }
    .into_any()
}

/// How a reading stands: nothing while it is open.
fn flag(after: After, mine: Memo<Option<Expected>>) -> AnyView {
    let page = after.page;
    let Some(e) = mine.get() else { return ().into_any() };
    match e.standing(&after.done.with(kept::taken)) {
        Standing::Open => ().into_any(),
        Standing::Within => view! { <p class="within">{page.key("start-within")}</p> }.into_any(),
        Standing::Off(side) => {
            let kind = after.with(|s| Some(kind_of(&s.chosen()?.candidate)));
            let found = kind.map_or(&[][..], |kind| causes(e.reading, side, kind));
            let list = found.iter().map(|key| view! { <li>{page.key(key)}</li> }).collect_view();
            view! {
                <div class="off">
                    <p><strong>{page.key("start-off")}</strong></p>
                    <ol>{list}</ol>
                </div>
            }
            .into_any()
        }
    }
}

fn kind_of(candidate: &Candidate) -> crate::core::case::HeaterKind {
    candidate.label.kind
}

/// How many readings are taken and how many of them are off, in words; `None` before the first.
pub fn summary(after: After, all: &[Expected]) -> Option<Message> {
    let taken = after.done.with(kept::taken);
    let standing: Vec<Standing> = all.iter().map(|e| e.standing(&taken)).collect();
    let count = |f: fn(&Standing) -> bool| standing.iter().filter(|s| f(s)).count() as i64;
    let done = count(|s| *s != Standing::Open);
    (done > 0).then(|| {
        Message::new("start-summary")
            .with("done", done)
            .with("all", standing.len() as i64)
            .with("off", count(|s| matches!(s, Standing::Off(_))))
    })
}
