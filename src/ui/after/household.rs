//! The page for the household: what was installed, what is normal, what to do when, the year's expected energy, and
//! the dates of care with their calendar file.

use super::{After, Site};
use crate::core::after::handover::{Handover, MonthExpected, handover};
use crate::core::units::{Quantity, Unit};
use crate::text::after as words;
use crate::ui::browser::download;
use crate::ui::charts::months::short_month;
use crate::ui::components::parts::{button, heads};
use crate::ui::state::Page;
use leptos::prelude::*;

/// The page.
pub fn page(after: After) -> AnyView {
    let page = after.page;
    let body = move || {
        let day = after.installed.get();
        let made = after.with(|s| Some(handover(&s.fitted()?, day)));
        made.map(|h| view! { {about(page, &h)} {energy(page, &h)} {care(page, &h)} })
    };
    let save = move || {
        let day = after.installed.get_untracked();
        let job = page.open.get_untracked().code();
        let text = after.with(|s: &Site| Some(words::calendar(&page.words_now(), &job, &s.fitted()?, day)));
        if let Some(text) = text {
            download::offer_as("tankful-care.ics", &text, "text/calendar");
        }
    };
    view! {
        <section class="household" aria-labelledby="household-name" data-test="household">
            <h2 id="household-name">{page.key("after-household")}</h2>
            {body}
            <div class="ways">{button(page.key("care-download"), "button main", "calendar", save)}</div>
        </section>
    }
    .into_any()
}

/// What was installed, and everything said about it.
pub fn about(page: Page, h: &Handover) -> AnyView {
    let topics = h.topics.iter().map(|(topic, says)| {
        let says = says.iter().map(|m| view! { <li>{page.say(m)}</li> }).collect_view();
        view! {
            <div class="topic" data-test=format!("topic-{}", topic.code())>
                <h3>{page.key(topic.key())}</h3>
                <ul>{says}</ul>
            </div>
        }
    });
    view! {
        <p><strong data-test="installed-line">{page.say(&h.installed)}</strong></p>
        <div class="topics">{topics.collect_view()}</div>
    }
    .into_any()
}

fn kwh(page: Page, value: f64) -> String {
    page.quantity(Quantity::new(value, Unit::KilowattHour))
}

fn money(page: Page, value: f64) -> String {
    page.quantity(Quantity::new(value, Unit::Dollar))
}

/// The year's expected energy, month by month.
pub fn energy(page: Page, h: &Handover) -> AnyView {
    let fuel = h.year().fuel_kwh > 0.0;
    let row = |name: String, m: &MonthExpected| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{kwh(page, m.electricity_kwh)}</td>
                {fuel.then(|| view! { <td>{kwh(page, m.fuel_kwh)}</td> })}
                <td>{money(page, m.money)}</td>
            </tr>
        }
    };
    let rows = h.months.iter().enumerate().map(|(i, m)| row(short_month(page, i), m)).collect_view();
    let keys = ["handover-month", "handover-electricity"].into_iter();
    let keys = keys.chain(fuel.then_some("handover-fuel")).chain(["handover-money"]);
    view! {
        <div class="energy">
            <h3>{page.key("handover-energy")}</h3>
            <p class="quiet">{page.key("handover-energy-about")}</p>
            <table data-test="months">
                {heads(keys.map(|key| page.key(key)).collect())}
                <tbody>{rows}</tbody>
                <tfoot>{row(page.key("handover-year"), &h.year())}</tfoot>
            </table>
        </div>
    }
    .into_any()
}

/// What to see to, and when.
pub fn care(page: Page, h: &Handover) -> AnyView {
    let one = |due: &crate::core::after::care::Due| {
        view! {
            <li>
                <strong>{page.key(due.task.key())}</strong>
                " " <span class="quiet">{words::when(&page.words(), due)}</span>
                <p>{page.say(&due.how)}</p>
            </li>
        }
    };
    view! {
        <div class="care">
            <h3>{page.key("care-heading")}</h3>
            <ul data-test="care">{h.care.iter().map(one).collect_view()}</ul>
        </div>
    }
    .into_any()
}

/// The same in a table, short, for paper.
pub fn care_table(page: Page, h: &Handover) -> AnyView {
    let row = |due: &crate::core::after::care::Due| {
        view! {
            <tr>
                <th scope="row">{page.key(due.task.key())}</th>
                <td>{due.first.iso()}</td>
                <td>{words::every(&page.words(), due)}</td>
                <td>{page.key(due.hands.key())}</td>
            </tr>
        }
    };
    let keys = ["care-what", "care-first", "care-often", "care-who"];
    view! {
        <div class="care">
            <h3>{page.key("care-heading")}</h3>
            <table>
                {heads(keys.map(|key| page.key(key)).into())}
                <tbody>{h.care.iter().map(row).collect_view()}</tbody>
            </table>
        </div>
    }
    .into_any()
}
