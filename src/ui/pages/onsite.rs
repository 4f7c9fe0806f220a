//! On site: what to measure, most telling first, one thing at a time in large letters. Everything that is pressed lies
//! at the foot of the screen, where a thumb reaches; the verdict stands above and moves as figures come.

use crate::core::case::Provenance;
use crate::core::message::{Arg, Message};
use crate::core::units::UnitSystem;
use crate::job::asking;
use crate::job::questions::{Id, Kind, Question, Value};
use crate::ui::browser::focus::{self, HEADING};
use crate::ui::browser::wake::{self, Awake};
use crate::ui::components::bound::Bound;
use crate::ui::components::find::HowToFind;
use crate::ui::components::link::GoTo;
use crate::ui::components::number::NumberField;
use crate::ui::components::parts::{button, tick};
use crate::ui::components::provenance::ProvenanceMark;
use crate::ui::components::question::{option_key, value_words};
use crate::ui::components::tape;
use crate::ui::lazy::Part;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// Things to measure that stand in the open, unless the advice wants more of them.
const FEW: usize = 8;

/// On site, as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&crate::text::JOBS);
    Ok(on_site(page()))
}

/// What is measured and what is still to be.
#[derive(Clone, Copy)]
struct Round {
    page: Page,
    list: Memo<Vec<Id>>,
    /// There is an advice. Before that the list is not shown: the advice takes its room above it, and orders it.
    advised: Memo<bool>,
    /// How many of them stand in the open.
    shown: Memo<usize>,
    /// The one being measured.
    at: RwSignal<Option<Id>>,
    /// The screen stays on from list to field and back.
    awake: Awake,
}

fn on_site(page: Page) -> AnyView {
    // Where the advice does not say anything new, the list stays as it is.
    let settle = Memo::new(move |_| {
        page.outcome.with(|o| {
            let first = o.iter().flat_map(|o| &o.0.advice.settle_first);
            first.filter_map(|s| Id::from_code(s.ask.as_deref()?)).collect::<Vec<_>>()
        })
    });
    let list = Memo::new(move |_| page.answers.with(|a| settle.with(|settle| asking::to_measure(a, settle))));
    let shown = Memo::new(move |_| settle.with(Vec::len).max(FEW));
    let advised = Memo::new(move |_| page.outcome.with(Option::is_some));
    let round = Round { page, list, advised, shown, at: RwSignal::new(None), awake: Awake::new() };
    let verdict = move || match page.outcome.get() {
        Some(shared) => page.say(&shared.0.advice.verdict),
        None => page.key("page-verdict-wait"),
    };
    view! {
        <div class="onsite" data-test="onsite">
            <p class="onsite-verdict" role="status" data-test="onsite-verdict">{verdict}</p>
            {move || match round.at.get() {
                Some(id) => round.one(id),
                None => round.all(),
            }}
        </div>
    }
    .into_any()
}

impl Round {
    fn to(self, id: Option<Id>) {
        self.at.set(id);
        focus::to_heading();
    }

    /// The list.
    fn all(self) -> AnyView {
        let page = self.page;
        let measured = move || {
            page.answers.with(|a| {
                a.iter().filter(|(_, a)| a.from == Provenance::Measured).map(|(id, _)| id).collect::<Vec<_>>()
            })
        };
        let line = move |id: Id| {
            let value = move || {
                page.resolved.with(|r| r.get(id).map(|k| k.value.clone())).map(|v| value_words(page, id, &v))
            };
            let from = Signal::derive(move || page.provenance(id));
            view! {
                <li>
                    <button type="button" class="measure" data-test=format!("measure-{}", id.code()) on:click=move |_| self.to(Some(id))>
                        <strong>{page.key(&id.key())}</strong>
                        <span>{value} " " <ProvenanceMark from/></span>
                    </button>
                </li>
            }
            .into_any()
        };
        let rest = move || {
            let rest: Vec<Id> = self.list.get().into_iter().skip(self.shown.get()).collect();
            (!rest.is_empty()).then(|| {
                let says = Message::new("onsite-rest").with("count", rest.len() as i64);
                view! {
                    <details class="data">
                        <summary data-test="onsite-rest">{page.say(&says)}</summary>
                        <ol class="measures">{rest.into_iter().map(line).collect_view()}</ol>
                    </details>
                }
            })
        };
        let done = move || {
            let all = measured();
            (!all.is_empty()).then(|| {
                let says = Message::new("onsite-measured").with("count", all.len() as i64);
                view! {
                    <details class="data">
                        <summary data-test="onsite-measured">{page.say(&says)}</summary>
                        <ul class="measures">{all.into_iter().map(line).collect_view()}</ul>
                    </details>
                }
            })
        };
        view! {
            <h1 id=HEADING tabindex="-1">{page.key("onsite-heading")}</h1>
            <p>{page.key("onsite-about")}</p>
            <div hidden=move || !self.advised.get()>
                {screen(page, self.awake)}
                <ol class="measures" data-test="measures">
                    {move || self.list.get().into_iter().take(self.shown.get()).map(line).collect_view()}
                </ol>
                {rest}
                {done}
            </div>
            <p class="caution">{page.key("onsite-caution")}</p>
            <nav class="thumb" aria-label=page.key("page-steps")>
                <GoTo route=Route::Job class="button" test="onsite-leave">{page.key("onsite-leave")}</GoTo>
                {move || self.list.with(|l| l.first().copied()).map(|first| {
                    button(page.key("onsite-begin"), "button main", "onsite-begin", move || self.to(Some(first)))
                })}
            </nav>
        }
        .into_any()
    }

    /// One thing to measure.
    fn one(self, id: Id) -> AnyView {
        let page = self.page;
        let question = Question::get(id);
        let left = move || self.list.with(|l| l.iter().filter(|of| **of != id).count());
        let says = move || page.say(&Message::new("onsite-left").with("count", left() as i64));
        let stands = move || {
            let value = page.resolved.with(|r| r.get(id).map(|k| k.value.clone()));
            let value = value.map(|v| value_words(page, id, &v)).unwrap_or_default();
            page.say(&Message::new("page-taken").with("value", Arg::Verbatim(value)))
        };
        let from = Signal::derive(move || page.provenance(id));
        let code = id.code();
        // The one after this in the list as it stands when it is pressed.
        let next = move || {
            self.to(self.list.with_untracked(|l| {
                let here = l.iter().position(|of| *of == id);
                let after = here.and_then(|i| l.get(i + 1)).or_else(|| l.iter().find(|of| **of != id));
                after.copied()
            }));
        };
        view! {
            <p class="quiet">{says}</p>
            <div class="question-head">
                <h1 id=HEADING tabindex="-1"><span id=format!("{code}-name")>{page.key(&id.key())}</span></h1>
                <ProvenanceMark from/>
            </div>
            <p class="standing" id=format!("{code}-standing") hidden=move || from.get() != Provenance::Assumed>{stands}</p>
            <HowToFind question/>
            <div class="hand" data-test="onsite-field">{self.field(question)}</div>
            <nav class="thumb" aria-label=page.key("page-steps")>
                {button(page.key("onsite-list"), "button", "onsite-list", move || self.to(None))}
                {button(page.key("page-next"), "button main", "onsite-next", next)}
            </nav>
        }
        .into_any()
    }

    fn field(self, question: &'static Question) -> AnyView {
        let (page, id) = (self.page, question.id);
        match question.kind {
            Kind::Number { us, .. } if tape::fits(us) && page.units() == UnitSystem::Us => {
                tape::field(page, id, us)
            }
            Kind::Number { .. } => {
                let bound = Bound { from: Some(Provenance::Measured), ..Bound::question(page, question) };
                view! { <NumberField bound steps=true/> }.into_any()
            }
            Kind::Choice(options) => {
                options.iter().map(|&option| self.option(id, option)).collect_view().into_any()
            }
            // A place is no thing to measure: it is not on the list.
            Kind::Place => ().into_any(),
        }
    }

    /// An option: pressed, it counts as seen on the thing itself.
    fn option(self, id: Id, option: &'static str) -> AnyView {
        let page = self.page;
        let chosen = move || {
            page.answers
                .with(|a| matches!(a.get(id).map(|a| &a.value), Some(Value::Code(code)) if code == option))
        };
        // An option of the list is never refused.
        let choose = move |_| drop(page.answer(id, Value::code(option), Provenance::Measured));
        view! {
            <button type="button" class="unknown" data-test=format!("onsite-{option}") aria-pressed=move || chosen().to_string() on:click=choose>
                {page.key(&option_key(id, option))}
            </button>
        }
        .into_any()
    }
}

/// The switch that keeps the screen awake; a device that cannot says so.
fn screen(page: Page, awake: Awake) -> AnyView {
    if !wake::can() {
        return view! { <p class="quiet" data-test="onsite-no-wake">{page.key("onsite-no-wake")}</p> }
            .into_any();
    }
    let refused = move || awake.wanted.get() && !awake.holds.get();
    let set = Callback::new(move |on| awake.set(on));
    view! {
        {tick(page.key("onsite-wake"), String::from("onsite-wake"), awake.wanted.into(), set)}
        <p role="status" class="quiet" data-test="onsite-wake-said">
            {move || (awake.wanted.get()).then(|| page.key(if refused() { "onsite-wake-refused" } else { "onsite-wake-on" }))}
        </p>
    }
    .into_any()
}
