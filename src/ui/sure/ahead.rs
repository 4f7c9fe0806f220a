//! What lies ahead: life left and when to act, power by the hour, CO₂.

use super::Ahead;
use super::emissions::emissions_chart;
use super::hours::hours_chart;
use super::life::Life;
use crate::core::message::Message;
use crate::core::outlook::says;
use crate::job::questions::Id;
use crate::ui::components::findings::Jump;
use crate::ui::state::{Page, page};
use leptos::prelude::*;

/// All of it.
#[component]
pub fn WhatLiesAhead(ahead: Ahead) -> impl IntoView {
    let life = ahead.outlook.life.clone().map(|life| view! { <Life life of=ahead.of.clone()/> });
    view! {
        {life}
        <Tariff ahead=ahead.clone()/>
        <Emissions ahead/>
    }
}

/// Sentences as a list.
pub fn list(page: Page, all: Vec<Message>) -> AnyView {
    let all = all.into_iter().map(|m| view! { <li>{move || page.say(&m)}</li> }).collect_view();
    view! { <ul>{all}</ul> }.into_any()
}

/// Power by the hour.
#[component]
fn Tariff(ahead: Ahead) -> impl IntoView {
    let page = page();
    let (t, outcome) = (&ahead.outlook.time_of_use, &ahead.of.0);
    let mut all: Vec<Message> = Vec::new();
    for of in says::shown(t, outcome) {
        for say in says::by_hour(t, of, outcome) {
            if !all.contains(&say) {
                all.push(say);
            }
        }
    }
    let by_hour = t.by_hour;
    view! {
        <section aria-labelledby="sure-tariff-name" data-test="sure-tariff">
            <h3 id="sure-tariff-name">{page.key("sure-tariff")}</h3>
            {list(page, all)}
            {by_hour.then(|| view! {
                {hours_chart(&ahead)}
                <p class="quiet">{page.key("sure-tariff-verdict")}</p>
            })}
            {(!by_hour).then(|| view! { <Jump id=Id::Tariff/> })}
        </section>
    }
}

/// CO₂ over the years.
#[component]
fn Emissions(ahead: Ahead) -> impl IntoView {
    let page = page();
    view! {
        <section aria-labelledby="sure-emissions-name" data-test="sure-emissions">
            <h3 id="sure-emissions-name">{page.key("sure-emissions")}</h3>
            {emissions_chart(&ahead)}
            <p class="quiet">{page.key("sure-emissions-about")}</p>
            <Jump id=Id::GridChange/>
        </section>
    }
}
