//! How sure the advice is, what would change it, and what lies ahead: below the advice, fetched with it, computed in the
//! worker while the rest can be read.

mod ahead;
mod bands;
pub mod changes;
mod drawing;
mod emissions;
mod futures;
mod hours;
mod life;
mod map;
mod steps;
mod waiting;

pub use self::drawing::Drawing;
use super::components::parts::waiting;
use super::errands::Came;
use super::lazy;
use super::model::Shared;
use super::state::{Page, page};
use crate::core::futures::Changes;
use crate::core::outlook::Outlook;
use crate::worker::errands;
use leptos::prelude::*;
use std::sync::Arc;

/// An outlook with the outcome that it belongs to.
#[derive(Clone)]
pub struct Ahead {
    /// The outcome.
    pub of: Shared,
    /// What lies ahead of it.
    pub outlook: Arc<Outlook>,
}

impl PartialEq for Ahead {
    fn eq(&self, other: &Self) -> bool {
        self.of == other.of && Arc::ptr_eq(&self.outlook, &other.outlook)
    }
}

/// What would change the advice, with the outcome that it belongs to, once it is found: from context, for other lists of
/// open questions.
#[derive(Clone, Copy)]
pub struct Weighed(pub RwSignal<Option<(Shared, Arc<Changes>)>>);

/// Asks for the outlook of whatever is advised, and gives the last one that came: an older one stays while a newer
/// is worked out, so that nothing jumps. First bands come before it.
fn look_ahead(page: Page, drawing: Drawing) -> (Memo<Vec<u8>>, RwSignal<Option<Ahead>>) {
    // An outcome is of the answers as they stood when it came; they are asked about once it is there.
    let ask = Memo::new(move |_| {
        page.outcome.track();
        page.answers.with(|answers| page.offer.with(|offer| errands::to_look_ahead(answers, offer)))
    });
    let last = RwSignal::new(None);
    Effect::new(move |_| {
        // A newer answer may still be on its way to its advice: the outlook comes after it.
        let settled = page.outcome.get();
        let seen = drawing.view.with(|view| view.as_ref().map(|view| view.of.clone()));
        if settled.is_some() && (seen == settled || drawing.stopped.get()) {
            page.send_errand(ask.get());
        }
    });
    Effect::new(move |_| {
        let Came::Done(bytes) = page.errand(&ask.get()) else { return };
        if let (Some(of), Some(outlook)) = (page.outcome.get(), errands::looked_ahead(&bytes)) {
            last.set(Some(Ahead { of, outlook: Arc::new(outlook) }));
        }
    });
    (ask, last)
}

/// The section. Whoever shows it has had the drawing started.
#[component]
pub fn Sure(drawing: Drawing) -> impl IntoView {
    let page = page();
    let (ask, last) = look_ahead(page, drawing);
    let missing = move || page.errand(&ask.get()) == Came::Missing;
    let waits = move || last.with(Option::is_none) && !missing();
    view! {
        <section class="result sure" aria-labelledby="sure-title" data-test="sure" aria-busy=move || waits().to_string()>
            <h2 id="sure-title">{page.key("sure-name")}</h2>
            <p class="quiet">{page.key("sure-about")}</p>
            // Said once when it begins; what comes is read by whoever goes there.
            {move || waits().then(|| waiting(page.key("sure-wait")))}
            {move || missing().then(|| lazy::missing(move || page.send_errand(ask.get_untracked())))}
            <futures::HowSure drawing/>
            {move || last.get().map(|ahead| view! { <ahead::WhatLiesAhead ahead/> })}
        </section>
    }
}
