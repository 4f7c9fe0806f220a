//! What a field of a number reads and writes, as data: a question's answer, or a figure kept elsewhere.

use crate::core::case::{HeaterKind, Provenance};
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit, UnitSystem};
use crate::job::answers::{self, Answer};
use crate::job::questions::{Id, Kind, Question, Value};
use crate::ui::model::Draft;
use crate::ui::state::Page;
use leptos::prelude::*;

/// The two ends of a field. Range, step and the words of a refusal are those of a question, so that a
/// figure kept elsewhere is checked like the question it resembles.
#[derive(Clone, Copy)]
pub struct Bound {
    /// Stem of the field's identities and of its `data-test`; once on a page.
    pub code: StoredValue<String>,
    /// Its name in words.
    pub name: StoredValue<String>,
    /// The question whose range it has.
    pub id: Id,
    /// What it takes: range and step.
    pub kind: Kind,
    /// The unit typed in.
    pub unit: Signal<Unit>,
    /// What was given, if anything.
    pub answer: Signal<Option<Answer>>,
    /// The value in force: what was given, or what stands in.
    pub now: Signal<Option<Quantity>>,
    /// What was typed and is no answer yet.
    pub draft: Signal<Option<Draft>>,
    /// Keeps or forgets what was typed.
    pub keep: Callback<Option<Draft>>,
    /// Gives, or takes back; says why it refuses.
    pub write: Callback<Option<Answer>, Result<(), Message>>,
    /// What a new answer rests on; `None` keeps that of the one before.
    pub from: Option<Provenance>,
    /// Key of the words for "nobody knows".
    pub unknown: &'static str,
}

impl Bound {
    /// A question's answer.
    pub fn question(page: Page, question: &'static Question) -> Bound {
        let id = question.id;
        Bound {
            code: StoredValue::new(String::from(id.code())),
            name: StoredValue::new(page.key(&id.key())),
            id,
            kind: question.kind,
            unit: Signal::derive(move || asked_in(page, question)),
            answer: Signal::derive(move || page.answers.with(|a| a.get(id).cloned())),
            now: Signal::derive(move || page.resolved.with(|r| r.quantity(id)).map(|k| k.value)),
            draft: Signal::derive(move || page.job.with(|j| j.draft(id).cloned())),
            keep: Callback::new(move |draft| page.job.update(|j| j.set_draft(id, draft))),
            write: Callback::new(move |answer: Option<Answer>| {
                let Some(Answer { value, from }) = answer else {
                    page.forget(id);
                    return Ok(());
                };
                page.answer(id, value, from).map_err(|refusal| refusal.message())
            }),
            from: None,
            unknown: "page-unknown",
        }
    }

    /// The same, read off a label: what is typed there counts as read off the thing itself.
    #[must_use]
    pub fn off_label(self) -> Bound {
        Bound { from: Some(Provenance::Measured), unknown: "spot-unreadable", ..self }
    }

    /// The year something was made, for a question about its age.
    #[must_use]
    pub fn as_year(self, this_year: f64) -> Bound {
        let Bound { id, answer, now, write, .. } = self;
        let turned = move |q: Quantity| Quantity::new(this_year - q.value, Unit::One);
        let oldest = match self.kind {
            Kind::Number { high, .. } => this_year - high.value,
            _ => this_year,
        };
        let one = |value| Quantity::new(value, Unit::One);
        Bound {
            kind: Kind::Number {
                low: one(oldest),
                high: one(this_year),
                us: Unit::One,
                si: Unit::One,
                step: 1.0,
            },
            unit: Signal::stored(Unit::One),
            answer: Signal::derive(move || {
                answer.get().map(|a| match a.value {
                    Value::Number(q) => Answer { value: Value::Number(turned(q)), ..a },
                    Value::Code(_) => a,
                })
            }),
            now: Signal::derive(move || now.get().map(turned)),
            write: Callback::new(move |given: Option<Answer>| {
                let age = given.map(|a| match a.value {
                    Value::Number(q) => Answer { value: Value::number(turned(q).value, Unit::Year), ..a },
                    Value::Code(_) => a,
                });
                if let Some(age) = &age
                    && answers::check(id, &age.value).is_err()
                {
                    // Years are written without marks between thousands.
                    return Err(Message::new("spot-year-refused")
                        .with("low", crate::core::message::Arg::Verbatim(oldest.to_string()))
                        .with("high", crate::core::message::Arg::Verbatim(this_year.to_string())));
                }
                write.run(age)
            }),
            ..self
        }
    }
}

/// The unit a question is asked in: the system's, but a burner's input as nameplates have it.
fn asked_in(page: Page, question: &Question) -> Unit {
    let system = page.units();
    if question.id == Id::HeaterInput && system == UnitSystem::Us {
        let kind = page.resolved.with(|r| HeaterKind::from_code(r.code(Id::HeaterKind).value));
        if matches!(kind, Some(HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil)) {
            return Unit::BtuPerHour;
        }
    }
    match (question.kind, system) {
        (Kind::Number { us, .. }, UnitSystem::Us) => us,
        (Kind::Number { si, .. }, UnitSystem::Si) => si,
        _ => Unit::One,
    }
}
