//! Life left of the present heater: the best moment first, then the chances and what a failure costs.

use super::ahead::list;
use super::waiting::WaitingChart;
use crate::core::case::Provenance;
use crate::core::life::replace::LifeLeft;
use crate::core::outlook::says;
use crate::job::questions::Id;
use crate::ui::components::findings::Jump;
use crate::ui::model::Shared;
use crate::ui::state::page;
use leptos::prelude::*;

/// Questions that say how long a heater lives.
const ABOUT_LIFE: [Id; 4] = [Id::HeaterAge, Id::Signs, Id::AnodeChanged, Id::FinishedBelow];

/// Life left.
#[component]
pub fn Life(life: LifeLeft, of: Shared) -> impl IntoView {
    let page = page();
    let moment = says::moment(&life);
    let year = says::a_year(&life, &of.0);
    let waiting = says::waiting(&life);
    let rest = says::life(&life, &of.0);
    let more = life.waiting.len() > 1;
    // What would make it surer, and nobody has said.
    let open = move || {
        let assumed = |id: &Id| page.provenance(*id) == Provenance::Assumed;
        ABOUT_LIFE.into_iter().filter(assumed).map(|id| view! { <Jump id/> }).collect_view()
    };
    view! {
        <section aria-labelledby="sure-life-name" data-test="sure-life">
            <h3 id="sure-life-name">{page.key("sure-life")}</h3>
            <p data-test="sure-moment"><strong>{move || page.say(&moment)}</strong> " " {move || page.say(&year)}</p>
            {list(page, waiting)}
            {more.then(|| view! { <WaitingChart life/> })}
            {list(page, rest)}
            <p class="quiet">{page.key("sure-life-source")}</p>
            {open}
        </section>
    }
}
