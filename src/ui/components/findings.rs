//! Whether a heater fits: what each check found, the work it asks for, the rule behind it, the caution.

use super::candidates::fit_key;
use super::link::GoTo;
use super::pair::pair;
use super::provenance::ProvenanceMark;
use crate::core::message::Message;
use crate::core::outcome::{Finding, Fit};
use crate::core::units::Unit;
use crate::job::questions::Id;
use crate::ui::route::Route;
use crate::ui::state::page;
use leptos::prelude::*;

/// What needs doing or measuring comes first.
const WORST_FIRST: [Fit; 4] = [Fit::DoesNotFit, Fit::MeasureFirst, Fit::FitsWithWork, Fit::Fits];

/// The findings on the heater looked at, the worst first.
#[component]
pub fn Findings() -> impl IntoView {
    let page = page();
    let pair = pair();
    let findings = move || {
        let all = pair.with(|c, _| c.findings.clone()).unwrap_or_default();
        if all.is_empty() {
            return view! { <li>{page.key("page-findings-none")}</li> }.into_any();
        }
        WORST_FIRST
            .iter()
            .flat_map(|&fit| all.iter().filter(move |f| f.fit == fit))
            .map(|finding| view! { <OneFinding finding=finding.clone()/> })
            .collect_view()
            .into_any()
    };
    let heading =
        move || page.say(&Message::new("page-findings").with("heater", page.heater(pair.chosen.get())));
    view! {
        <section class="findings" aria-labelledby="findings-name" data-test="findings">
            <h2 id="findings-name">{heading}</h2>
            <p class="quiet">{page.key("page-findings-about")}</p>
            <ul>{findings}</ul>
        </section>
    }
}

#[component]
fn OneFinding(finding: Finding) -> impl IntoView {
    let page = page();
    let work_cost = finding.work_cost();
    let Finding { check, fit, says, work, rule, figures, asks, caution, .. } = finding;
    let cost = (work_cost > 0.0)
        .then(|| Message::new("page-findings-cost").quantity("amount", work_cost, Unit::Dollar));
    let work = (!work.is_empty()).then(|| {
        let each = work.into_iter().map(|w| view! { {move || page.say(&w.says)} " " }).collect_view();
        view! { <p><strong>{page.key("page-findings-work")}</strong> " " {each} {cost.map(|c| page.words_now().say(&c))}</p> }
    });
    let jump = asks.into_iter().next().and_then(|code| Id::from_code(&code)).map(|id| view! { <Jump id/> });
    let caution = caution.map(|c| view! { <p class="caution">{move || page.say(&c)}</p> });
    let inputs = figures.into_iter().map(|input| {
        let from = Signal::stored(input.from);
        view! {
            <tr>
                <th scope="row">{page.key(&input.label)}</th>
                <td>{move || page.words().arg(&input.value)}</td>
                <td><ProvenanceMark from/></td>
            </tr>
        }
    });
    view! {
        <li data-test=format!("check-{check}")>
            <h3>
                {page.key(&format!("check-{}", check.replace('_', "-")))} " "
                <span class="fit" data-fit=fit_key(fit)>{page.key(fit_key(fit))}</span>
            </h3>
            <p>{move || page.say(&says)}</p>
            {work}
            {jump}
            {caution}
            <details class="data">
                <summary>{page.key("page-findings-rule")}</summary>
                <p>{rule.into_owned()}</p>
                <table><tbody>{inputs.collect_view()}</tbody></table>
            </details>
        </li>
    }
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
