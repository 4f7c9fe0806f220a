//! Offers kept to start the next one from.

use super::change;
use crate::job::offer::Templates;
use crate::ui::browser::jobs;
use crate::ui::components::parts::{button, pick};
use crate::ui::state::Page;
use leptos::prelude::*;

/// The templates to start from; nothing where there are none.
pub fn chooser(page: Page) -> AnyView {
    let chosen = RwSignal::new(String::new());
    let view = move || {
        page.listed.track();
        let Templates { offers, .. } = jobs::templates();
        if offers.is_empty() {
            return ().into_any();
        }
        let mut options = vec![(String::new(), page.key("offer-template-none"))];
        options.extend(offers.iter().map(|o| (o.name.clone(), o.name.clone())));
        let use_it = move || {
            let name = chosen.get_untracked();
            if let Some(offer) = jobs::templates().offers.into_iter().find(|o| o.name == name) {
                change(page, |o| *o = offer);
            }
        };
        let forget = move || {
            jobs::change_templates(|all| {
                all.forget(&chosen.get_untracked());
                true
            });
            chosen.set(String::new());
            page.listed.update(|n| *n += 1);
        };
        view! {
            {pick(page.key("offer-template"), "offer-template", options, chosen.into(), Callback::new(move |name| chosen.set(name)))}
            <div class="ways">
                {button(page.key("offer-template-use"), "button", "offer-template-use", use_it)}
                {button(page.key("offer-template-forget"), "button", "offer-template-forget", forget)}
            </div>
        }
        .into_any()
    };
    view! { <div class="templates">{view}</div> }.into_any()
}

/// Keeps the open job's offer as a template under its name.
pub fn keeper(page: Page) -> AnyView {
    let said = RwSignal::new("");
    let keep = move || {
        let offer = page.offer.get_untracked();
        if offer.name.is_empty() {
            said.set("offer-template-nameless");
            return;
        }
        let kept = jobs::change_templates(|all| all.keep(offer));
        said.set(if kept { "offer-template-kept" } else { "offer-template-full" });
        page.listed.update(|n| *n += 1);
    };
    view! {
        <div class="ways">{button(page.key("offer-template-keep"), "button", "offer-template-keep", keep)}</div>
        <p role="status" data-test="offer-template-said">{move || (!said.get().is_empty()).then(|| page.key(said.get()))}</p>
    }
    .into_any()
}
