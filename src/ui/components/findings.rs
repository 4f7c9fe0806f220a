//! Whether a heater fits: what each check found, what stops the job first. Each opens to its working, the drawing that
//! explains it, how to measure, and the fields to put a measurement in; the list follows as answers come.

use super::candidates::fit_key;
use super::link::GoTo;
use super::provenance::ProvenanceMark;
use super::question::{HeadingLevel, QuestionField};
use super::sketches;
use crate::core::candidates::CandidateId;
use crate::core::case::Input;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit, Outcome};
use crate::core::units::Unit;
use crate::job::questions::{Id, Question};
use crate::ui::browser::focus;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::borrow::Cow;

/// How findings are counted above the list, the worst first.
const WORST_FIRST: [Fit; 4] = [Fit::DoesNotFit, Fit::MeasureFirst, Fit::FitsWithWork, Fit::Fits];

/// A check's code.
type Code = Cow<'static, str>;

/// What the list shows.
#[derive(Clone, Copy)]
struct List {
    /// The findings on the heater looked at, as of the newest outcome.
    all: Memo<Vec<Finding>>,
    /// The one that stands open.
    open: RwSignal<Option<Code>>,
    /// The heater chosen; the recommended one until somebody chooses or opens a finding.
    chosen: RwSignal<Option<CandidateId>>,
    /// The heater looked at.
    looked: Memo<Option<CandidateId>>,
}

impl List {
    fn find(self, code: &str) -> Option<Finding> {
        self.all.with(|all| all.iter().find(|f| f.check == code).cloned())
    }
}

/// The findings on a heater, what stops the job first. It stays while outcomes come and go, so that a measurement
/// can be put in right there.
#[component]
pub fn Findings() -> impl IntoView {
    let page = page();
    let chosen = RwSignal::new(None::<CandidateId>);
    let of = move |o: &Outcome| chosen.get().filter(|id| o.of(*id).is_some()).unwrap_or(o.advice.best);
    let looked = Memo::new(move |_| page.outcome.with(|o| o.as_ref().map(|o| of(&o.0))));
    let all = Memo::new(move |_| {
        let id = looked.get()?;
        page.outcome.with(|o| o.as_ref()?.0.of(id).map(|c| c.findings.clone()))
    });
    let all = Memo::new(move |_| all.get().unwrap_or_default());
    let list = List { all, open: RwSignal::new(None), chosen, looked };
    // While one stands open the order stays: what is being read or typed in must not move away.
    let order = Memo::new(move |before: Option<&Vec<Code>>| {
        let now: Vec<Code> = all.with(|all| all.iter().map(|f| f.check.clone()).collect());
        match before.filter(|_| list.open.get().is_some()) {
            Some(before) => {
                let stays = before.iter().filter(|code| now.contains(*code)).cloned();
                stays.chain(now.iter().filter(|code| !before.contains(*code)).cloned()).collect()
            }
            None => now,
        }
    });
    let items = move || {
        let codes = order.get();
        if codes.is_empty() {
            return view! { <li>{page.key("page-findings-none")}</li> }.into_any();
        }
        codes.into_iter().map(|code| one(page, list, code)).collect_view().into_any()
    };
    let heading = move || {
        let id = looked.get().unwrap_or(CandidateId::Keep);
        page.say(&Message::new("page-findings").with("heater", page.heater(id)))
    };
    view! {
        <section class="findings" aria-labelledby="findings-name" data-test="findings">
            <h2 id="findings-name">{heading}</h2>
            <p class="quiet">{page.key("page-findings-about")}</p>
            <Chooser chosen looked/>
            <p class="tally" role="status" data-test="findings-tally">{move || tally(page, all)}</p>
            <ul>{items}</ul>
        </section>
    }
}

/// How many findings came out how.
fn tally(page: Page, all: Memo<Vec<Finding>>) -> String {
    let count = |fit: Fit| all.with(|all| all.iter().filter(|f| f.fit == fit).count());
    let said = WORST_FIRST.map(|fit| (count(fit), fit));
    let said = said.into_iter().filter(|(n, _)| *n > 0);
    said.map(|(n, fit)| format!("{}: {n}", page.key(fit_key(fit)))).collect::<Vec<_>>().join(" · ")
}

/// The heaters to choose from.
#[component]
fn Chooser(chosen: RwSignal<Option<CandidateId>>, looked: Memo<Option<CandidateId>>) -> impl IntoView {
    let page = page();
    let ids = Memo::new(move |_| {
        page.outcome.with(|o| {
            o.as_ref().map_or_else(Vec::new, |o| o.0.candidates.iter().map(|c| c.candidate.id).collect())
        })
    });
    let choose = move |event| chosen.set(CandidateId::from_code(&event_target_value(&event)));
    let options = move || {
        let option = |id: CandidateId| {
            let name = page.words_now().say(&page.heater(id));
            view! { <option value=id.code() selected=move || looked.get() == Some(id)>{name}</option> }
        };
        ids.get().into_iter().map(option).collect_view()
    };
    view! {
        <label class="choose-heater">
            {page.key("page-findings-heater")} " "
            <select data-test="findings-heater" on:change=choose>{options}</select>
        </label>
    }
}

/// One finding: a button that opens it.
fn one(page: Page, list: List, code: Code) -> AnyView {
    let name = page.key(&format!("check-{code}"));
    let test = format!("check-{code}");
    let (of, open, press) = (code.clone(), code.clone(), code.clone());
    let finding = Memo::new(move |_| list.find(&of));
    let is_open = Memo::new(move |_| list.open.with(|o| o.as_ref() == Some(&open)));
    let fit = Memo::new(move |_| finding.with(|f| f.as_ref().map_or(Fit::Fits, |f| f.fit)));
    let toggle = move |_| {
        // A measurement may change what is recommended; what is being looked at stays.
        list.chosen.set(list.looked.get_untracked());
        let opens = !is_open.get_untracked();
        list.open.set(opens.then(|| press.clone()));
        if opens {
            // What stood open above it has closed, and the page moved.
            focus::to(format!("open-{press}"));
        }
    };
    let says = move || finding.with(|f| f.as_ref().map(|f| page.say(&f.says)));
    let inside = move || is_open.get().then(|| opened_finding(page, finding));
    view! {
        <li data-test=test>
            <h3>
                <button type="button" class="finding-name" id=format!("open-{code}") aria-expanded=move || is_open.get().to_string() on:click=toggle
                    data-test=format!("open-{code}")>
                    <span>{name}</span>
                    <span class="fit" data-fit=move || fit_key(fit.get())>{move || page.key(fit_key(fit.get()))}</span>
                </button>
            </h3>
            <p>{says}</p>
            {inside}
        </li>
    }
    .into_any()
}

/// What a finding opens to: the work, what would let the heater in, the fields to measure into, the drawing, the
/// working, the rule and the caution.
pub fn opened_finding(page: Page, finding: Memo<Option<Finding>>) -> AnyView {
    let Some(first) = finding.get_untracked() else { return ().into_any() };
    provide_context(HeadingLevel("5"));
    // The questions stay as they are while it stands open: one is being answered.
    let fields = first.asks.iter().filter_map(|code| Id::from_code(code)).map(|id| {
        view! { <QuestionField question=Question::get(id)/> }
    });
    let fields = fields.collect_view();
    let measure = (!first.asks.is_empty()).then(|| {
        view! {
            <div class="measure" role="group" aria-label=page.key("page-findings-measure")>
                <h4>{page.key("page-findings-measure")}</h4>
                {fields}
            </div>
        }
    });
    let with = move |look: fn(Page, &Finding) -> AnyView| {
        move || finding.with(|f| f.as_ref().map_or_else(|| ().into_any(), |f| look(page, f)))
    };
    view! {
        <div class="opened">
            {with(work)}
            {with(sketches::of)}
            {measure}
            {with(working)}
        </div>
    }
    .into_any()
}

/// The work it asks for, or may ask for, and what would let the heater in.
fn work(page: Page, f: &Finding) -> AnyView {
    let head = if f.fit == Fit::MeasureFirst { "page-findings-maybe" } else { "page-findings-work" };
    let cost: f64 = f.work.iter().map(|w| w.cost).sum();
    let cost =
        (cost > 0.0).then(|| Message::new("page-findings-cost").quantity("amount", cost, Unit::Dollar));
    let said: Vec<String> = f.work.iter().map(|w| page.say(&w.says)).collect();
    let items = said.into_iter().map(|text| view! { <li>{text}</li> }).collect_view();
    let list = (!f.work.is_empty()).then(|| {
        view! {
            <p>
                <strong>{page.key(head)}</strong> " " {cost.map(|c| page.say(&c))}
            </p>
            <ul class="work">{items}</ul>
        }
    });
    let lets_in = f.lets_in.as_ref().map(|m| view! { <p>{page.say(m)}</p> });
    view! { {lets_in} {list} }.into_any()
}

/// How its figures hang together, each with what it rests on; the rule; the caution.
fn working(page: Page, f: &Finding) -> AnyView {
    let relation = f.relation.as_ref().map(|key| view! { <p>{page.key(key)}</p> });
    let row = |input: &Input| {
        view! {
            <tr>
                <th scope="row">{page.key(&input.label)}</th>
                <td>{page.words().arg(&input.value)}</td>
                <td><ProvenanceMark from=Signal::stored(input.from)/></td>
            </tr>
        }
    };
    let rows = f.figures.iter().map(row).collect_view();
    let caution = f.caution.as_ref().map(|c| view! { <p class="caution">{page.say(c)}</p> });
    view! {
        {caution}
        <div class="data">
            {relation}
            <table><caption>{page.key("page-findings-rule")}</caption><tbody>{rows}</tbody></table>
            <p class="quiet">{page.key("page-findings-source")} " " {page.key(&f.rule)}</p>
        </div>
    }
    .into_any()
}

/// The way to a question, named by its words, with what its value rests on now.
#[component]
pub fn Jump(id: Id) -> impl IntoView {
    let page = page();
    let from = Signal::derive(move || page.provenance(id));
    view! {
        <p class="jump">
            <GoTo route=Route::question(id) test=format!("jump-{}", id.code())>{page.key(&id.key())}</GoTo>
            " " <ProvenanceMark from/>
        </p>
    }
}
