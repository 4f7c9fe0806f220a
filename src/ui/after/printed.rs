//! All of a job for print and PDF: one page for the household, the rest for the file. On screen it reads the same.

use super::household::{about, care_table, energy};
use super::startup::{expectations, summary};
use super::{After, Site};
use crate::core::after::handover::handover;
use crate::core::after::start::{Expected, Standing, causes};
use crate::core::candidates::CandidateId;
use crate::core::finding::Finding;
use crate::core::message::{Arg, Message};
use crate::core::plan::plan;
use crate::job::Measured;
use crate::job::after as kept;
use crate::job::questions::Value;
use crate::text::after as words;
use crate::ui::browser::device;
use crate::ui::browser::focus::HEADING;
use crate::ui::charts::{money::MoneyChart, months::MonthsChart, morning::MorningChart, room::RoomChart};
use crate::ui::components::candidates::{CandidatesTable, fit_key};
use crate::ui::components::link::GoTo;
use crate::ui::components::morning::BusiestMorning;
use crate::ui::components::pair::Pair;
use crate::ui::components::parts::{heads, waiting};
use crate::ui::components::question::value_words;
use crate::ui::components::sketches;
use crate::ui::components::working::Marks;
use crate::ui::lazy;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// The report, as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(work, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> lazy::Part {
    let page = page();
    for group in [&crate::text::ADVICE, &crate::text::JOBS, &crate::text::WORK, &crate::text::AFTER] {
        page.learn(group);
    }
    Ok(report(page))
}

fn report(page: Page) -> AnyView {
    let after = After::new(page);
    let print = move |_| {
        // A browser that cannot print says so itself.
        let _ = window().print();
    };
    let body = move || match after.site.get() {
        Some(site) => view! { {first(after, &site)} {file(after, &site)} }.into_any(),
        None => waiting(page.key("page-verdict-wait")),
    };
    view! {
        <div class="report result" data-test="report">
            <div class="ways">
                <button type="button" class="button main" data-test="print" on:click=print>{page.key("page-print")}</button>
                <GoTo route=Route::After class="button" test="to-after">{page.key("after-heading")}</GoTo>
            </div>
            {body}
        </div>
    }
    .into_any()
}

/// What the job is called, or where it is.
fn title(page: Page) -> String {
    let (name, place) = page.job.with(|j| (j.sheet.name.clone(), j.sheet.place.clone()));
    [name, place].into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>().join(", ")
}

/// The page for the household: exactly one.
fn first(after: After, site: &Site) -> AnyView {
    let page = after.page;
    let made = site.fitted().map(|f| handover(&f, after.installed.get()));
    let body = made.map(
        |h| view! { {about(page, &h)} <div class="below">{energy(page, &h)} {care_table(page, &h)}</div> },
    );
    view! {
        <section class="leaf" data-test="sheet-household" aria-labelledby=HEADING>
            <p class="quiet">{title(page)}</p>
            <h1 id=HEADING tabindex="-1">{page.key("print-household")}</h1>
            {body}
            <p class="quiet">{page.key("print-foot")}</p>
        </section>
    }
    .into_any()
}

/// The rest, for the file.
fn file(after: After, site: &Site) -> AnyView {
    let page = after.page;
    let Some(chosen) = site.chosen() else { return ().into_any() };
    let outcome = site.shared.0.clone();
    let pair = Pair::of(&outcome);
    pair.chosen.set(site.id);
    if pair.beside.get_untracked() == site.id {
        pair.beside.set(if site.id == CandidateId::Keep { outcome.advice.best } else { CandidateId::Keep });
    }
    provide_context(pair);
    provide_context(Marks::of_all(page, outcome.candidates.iter().map(|c| c.candidate.id)));
    let reasons = outcome.advice.reasons.iter().map(|m| view! { <li>{page.say(m)}</li> }).collect_view();
    view! {
        <section class="leaf" data-test="sheet-file">
            <p class="quiet">{title(page)}</p>
            <h1>{page.key("print-file")}</h1>
            <p class="lead">{page.say(&outcome.advice.verdict)}</p>
            <ul>{reasons}</ul>
            {started(after)}
            {metered(after)}
            <BusiestMorning/>
            <div class="charts"><MorningChart/> <MoneyChart/> <MonthsChart/> <RoomChart/></div>
            <CandidatesTable outcome=outcome.clone()/>
            {checked(page, &chosen.findings)}
            {work(page, site)}
            {log(page)}
            <p class="quiet">{page.key("caution-local-code")}</p>
        </section>
    }
    .into_any()
}

/// The start-up record; nothing before the first reading.
fn started(after: After) -> Option<AnyView> {
    let page = after.page;
    let all = expectations(after).get();
    let says = summary(after, &all)?;
    let rows = all.iter().filter_map(|e| reading_row(after, e)).collect_view();
    let keys = ["print-reading", "print-measured", "start-expected", "print-who"];
    Some(
        view! {
            <h2>{page.key("after-startup")}</h2>
            <p>{page.say(&says)}</p>
            <table data-test="print-startup">
                {heads(keys.map(|key| page.key(key)).into())}
                <tbody>{rows}</tbody>
            </table>
        }
        .into_any(),
    )
}

fn reading_row(after: After, e: &Expected) -> Option<AnyView> {
    let page = after.page;
    let entry = after.done.with(|d| d.entry(&kept::code(e.reading)).cloned())?;
    let Value::Number(q) = entry.is else { return None };
    let off = match e.standing(&after.done.with(kept::taken)) {
        Standing::Off(side) => {
            let kind = after.with(|s| Some(s.chosen()?.candidate.label.kind))?;
            let first = causes(e.reading, side, kind).first().map(|key| page.key(key));
            Some(view! { <br/> <strong>{page.key("start-off-short")}</strong> " " {first} })
        }
        _ => None,
    };
    let when =
        [device::when(entry.at_ms), entry.who].into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>();
    Some(
        view! {
            <tr>
                <th scope="row">{page.key(e.reading.key())}</th>
                <td>{words::reading(&page.words(), e.reading, q)}</td>
                <td>{words::range(&page.words(), e)} {off}</td>
                <td>{when.join(", ")}</td>
            </tr>
        }
        .into_any(),
    )
}

/// What the meter said, once it did.
fn metered(after: After) -> Option<AnyView> {
    let page = after.page;
    let found = super::meter::compared(after)?.ok()?;
    Some(view! { <h2>{page.key("after-meter")}</h2> {super::meter::says(page, &found)} }.into_any())
}

/// Everything that was checked, with the drawings of what asks for work.
fn checked(page: Page, findings: &[Finding]) -> AnyView {
    let one = |f: &Finding| {
        let work = f.work.iter().map(|w| view! { <li>{page.say(&w.says)}</li> }).collect_view();
        let drawing = (f.fit > crate::core::finding::Fit::Fits).then(|| sketches::of(page, f));
        view! {
            <li>
                <strong>{page.words().check(&f.check)}</strong>
                " (" {page.key(fit_key(f.fit))} ") "
                {page.say(&f.says)}
                <ul>{work}</ul>
                {drawing}
                <span class="quiet">{page.key(&f.rule)}</span>
            </li>
        }
    };
    view! {
        <h2>{page.key("print-checked")}</h2>
        <ul class="checked">{findings.iter().map(one).collect_view()}</ul>
    }
    .into_any()
}

/// What was loaded, and the work in order.
fn work(page: Page, site: &Site) -> Option<AnyView> {
    let chosen = site.chosen()?;
    let plan = plan(&site.case, &chosen.candidate, &chosen.findings);
    let parts = plan
        .parts
        .iter()
        .map(|p| view! { <tr><td>{page.say(&p.says)}</td><td>{page.quantity(p.bring)}</td></tr> });
    let steps = plan.steps.iter().map(|s| view! { <li>{page.say(&s.says)}</li> });
    Some(
        view! {
            <h2>{page.key("print-parts")}</h2>
            <table data-test="print-parts"><tbody>{parts.collect_view()}</tbody></table>
            <h2>{page.key("print-steps")}</h2>
            <ol>{steps.collect_view()}</ol>
        }
        .into_any(),
    )
}

/// What was measured on site.
fn log(page: Page) -> Option<AnyView> {
    let log = page.job.with(|j| j.sheet.log.clone());
    let one = |m: &Measured| {
        let said = Message::new("print-logged")
            .with("what", Message::new(m.id.key()))
            .with("value", Arg::Verbatim(value_words(page, m.id, &m.value)))
            .with("when", Arg::Verbatim(device::when(m.at_ms)))
            .with("who", Arg::Verbatim(m.who.clone()));
        view! { <li>{page.say(&said)}</li> }
    };
    (!log.is_empty()).then(|| {
        view! { <h2>{page.key("job-log")}</h2> <ul>{log.iter().map(one).collect_view()}</ul> }.into_any()
    })
}
