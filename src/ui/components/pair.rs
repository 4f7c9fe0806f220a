//! The two heaters shown beside each other in the picture and the charts.

use crate::core::candidates::CandidateId;
use crate::core::outcome::{CandidateOutcome, Outcome};
use crate::ui::reading;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use std::sync::Arc;

/// The two, from context on the result page.
#[derive(Clone, Copy)]
pub struct Pair {
    outcome: StoredValue<Arc<Outcome>>,
    /// The one looked at; at first the recommended one.
    pub chosen: RwSignal<CandidateId>,
    /// The one beside it.
    pub beside: RwSignal<CandidateId>,
}

impl Pair {
    /// The recommended heater and its rival.
    pub fn of(outcome: &Arc<Outcome>) -> Pair {
        Pair {
            outcome: StoredValue::new(outcome.clone()),
            chosen: RwSignal::new(outcome.advice.best),
            beside: RwSignal::new(reading::rival(outcome)),
        }
    }

    /// Looks at both; `None` when one of them is not in the outcome.
    pub fn with<R>(self, look: impl FnOnce(&CandidateOutcome, &CandidateOutcome) -> R) -> Option<R> {
        let (chosen, beside) = (self.chosen.get(), self.beside.get());
        self.outcome.with_value(|o| Some(look(o.of(chosen)?, o.of(beside)?)))
    }

    /// The name of the one looked at, or of the one beside it.
    pub fn name(self, page: Page, beside: bool) -> String {
        page.say(&page.heater(if beside { self.beside.get() } else { self.chosen.get() }))
    }
}

/// The pair, from context.
pub fn pair() -> Pair {
    expect_context::<Pair>()
}

/// Two lists to choose the pair from.
#[component]
pub fn PairPicker() -> impl IntoView {
    let page = page();
    let pair = pair();
    view! {
        <div class="pair" role="group" aria-label=page.key("page-pair")>
            <label>
                <span class="sign" data-sign="solid" aria-hidden="true"></span>
                {page.key("page-pair-chosen")}
                <Chooser of=pair.chosen test="pair-chosen"/>
            </label>
            <label>
                <span class="sign" data-sign="dashed" aria-hidden="true"></span>
                {page.key("page-pair-beside")}
                <Chooser of=pair.beside test="pair-beside"/>
            </label>
        </div>
    }
}

#[component]
fn Chooser(of: RwSignal<CandidateId>, test: &'static str) -> impl IntoView {
    let page = page();
    let all: Vec<CandidateId> =
        pair().outcome.with_value(|o| o.candidates.iter().map(|c| c.candidate.id).collect());
    let list = all.clone();
    let choose = move |event| {
        let code = event_target_value(&event);
        if let Some(&id) = all.iter().find(|id| id.code() == code) {
            of.set(id);
        }
    };
    view! {
        <select data-test=test on:change=choose prop:value=move || of.get().code()>
            {list
                .into_iter()
                .map(|id| view! {
                    <option value=id.code() selected=move || of.get() == id>{page.words_now().say(&page.heater(id))}</option>
                })
                .collect_view()}
        </select>
    }
}
