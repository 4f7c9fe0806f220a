//! The list of jobs: found by their words, opened, copied, put away, deleted. A thousand of them are drawn
//! in pieces, as the reader comes to them.

use crate::core::message::{Arg, Message};
use crate::job::JobId;
use crate::job::index::{Index, Order, Summary};
use crate::text;
use crate::ui::browser::focus::HEADING;
use crate::ui::browser::{device, jobs};
use crate::ui::components::parts::{button, file_button, pick, tick};
use crate::ui::lazy::Part;
use crate::ui::over::Over;
use crate::ui::route::Route;
use crate::ui::state::{Page, page};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::sync::Arc;

/// Lines drawn at once: few enough for one frame of a phone.
const PIECE: usize = 12;
/// Lines made anew from their jobs between two frames.
const LINES_A_TURN: usize = 100;
/// From this share of the browser's room on, the reader is told.
const NEARLY_FULL: f64 = 0.7;
/// The orders, their codes and keys of their words.
const ORDERS: [(Order, &str, &str); 4] = [
    (Order::Changed, "changed", "jobs-order-changed"),
    (Order::Name, "name", "jobs-order-name"),
    (Order::Place, "place", "jobs-order-place"),
    (Order::Answered, "answered", "jobs-order-answered"),
];

/// What is looked for, and how much of it is drawn.
#[derive(Clone, Copy)]
struct Wanted {
    words: RwSignal<String>,
    archived: RwSignal<bool>,
    order: RwSignal<usize>,
    pieces: RwSignal<usize>,
    /// The line whose further buttons are shown.
    unfolded: RwSignal<Option<JobId>>,
}

/// The list of jobs as a part of the page that is fetched when first shown.
#[leptos::wasm_split::wasm_split(jobs, wasm_split_path = leptos::wasm_split, fallible)]
pub fn part() -> Part {
    page().learn(&text::JOBS);
    Ok(view! { <JobsPage/> }.into_any())
}

/// The list of jobs.
#[component]
fn JobsPage() -> impl IntoView {
    let page = page();
    let wanted = Wanted {
        words: RwSignal::default(),
        archived: RwSignal::default(),
        order: RwSignal::default(),
        pieces: RwSignal::new(1),
        unfolded: RwSignal::default(),
    };
    page.note();
    let index = RwSignal::new(Index::default());
    Effect::new(move |_| {
        page.listed.track();
        fill(index, jobs::kept_list());
    });
    let found = Memo::new(move |_| {
        let order = ORDERS.get(wanted.order.get()).map_or(Order::Changed, |o| o.0);
        let (words, archived) = (wanted.words.get(), wanted.archived.get());
        index.with(|index| index.search(&words, archived, order).into_iter().cloned().collect::<Vec<_>>())
    });
    draw_more_on_scroll(wanted);
    let none = move || {
        let key = if index.with(|i| i.all().is_empty()) { "jobs-none" } else { "jobs-none-found" };
        found.with(Vec::is_empty).then(|| view! { <p data-test="jobs-none">{page.key(key)}</p> })
    };
    let count = move || page.say(&Message::new("jobs-count").with("count", found.with(Vec::len) as i64));
    view! {
        <div class="jobs" data-test="jobs">
            <h1 id=HEADING tabindex="-1">{page.key("jobs-heading")}</h1>
            <p class="lead">{page.key("jobs-lead")}</p>
            <div class="ways">
                {button(page.key("jobs-new"), "button main", "job-new", move || page.begin())}
                {button(page.key("jobs-save-all"), "button", "jobs-save-all", move || page.save_all())}
                {file_button(page.key("jobs-load"), "jobs-load", Callback::new(move |file| page.load_jobs(file)))}
            </div>
            <Finding wanted/>
            <p class="quiet" role="status" data-test="jobs-count">{count}</p>
            {none}
            {move || piece(page, wanted, Arc::new(found.get()), 0)}
            {pasted(page)}
            <Safety/>
        </div>
    }
}

/// Fills the list in turns between two frames, so that the page stays quick while a thousand lines are made.
fn fill(index: RwSignal<Index>, begun: Index) {
    let (lines, whole) = jobs::list_on(begun, LINES_A_TURN);
    // A page that was left meanwhile takes no more.
    let gone = index.try_set(lines.clone()).is_some();
    if !whole && !gone {
        request_animation_frame(move || fill(index, lines));
    }
}

/// The search, the order, and whether the archived ones are shown.
#[component]
fn Finding(wanted: Wanted) -> impl IntoView {
    let page = page();
    let afresh = move || wanted.pieces.set(1);
    let typed = move |event| {
        afresh();
        wanted.words.set(event_target_value(&event));
    };
    let orders = ORDERS.iter().map(|(_, code, key)| (String::from(*code), page.key(key))).collect::<Vec<_>>();
    let chosen =
        Signal::derive(move || ORDERS.get(wanted.order.get()).map(|o| String::from(o.1)).unwrap_or_default());
    let choose = Callback::new(move |code: String| {
        afresh();
        wanted.order.set(ORDERS.iter().position(|o| o.1 == code).unwrap_or(0));
    });
    let archived = Callback::new(move |on| {
        afresh();
        wanted.archived.set(on);
    });
    view! {
        <div class="finding" role="search">
            <label class="text">
                {page.key("jobs-search")}
                <input type="search" autocomplete="off" data-test="jobs-search" on:input=typed/>
            </label>
            {pick(page.key("jobs-order"), "jobs-order", orders, chosen, choose)}
            {tick(page.key("jobs-archived"), String::from("jobs-archived"), wanted.archived.into(), archived)}
        </div>
    }
}

/// A piece of the list, and after it the next one once the reader has come there: what is drawn already stays
/// as it is.
fn piece(page: Page, wanted: Wanted, all: Arc<Vec<Summary>>, number: usize) -> AnyView {
    let lines = all.iter().skip(number * PIECE).take(PIECE).map(|s| line(page, wanted, s)).collect_view();
    let more = all.len() > (number + 1) * PIECE;
    let open = Memo::new(move |_| wanted.pieces.get() > number + 1);
    let next = move || match (more, open.get()) {
        (true, true) => piece(page, wanted, all.clone(), number + 1),
        (true, false) => button(page.key("jobs-more"), "button", "jobs-more", move || {
            wanted.pieces.update(|n| *n += 1);
        }),
        _ => ().into_any(),
    };
    view! {
        <ul class="job-list">{lines}</ul>
        {next}
    }
    .into_any()
}

fn line(page: Page, wanted: Wanted, s: &Summary) -> AnyView {
    let id = s.id;
    let name = if s.name.is_empty() { page.key("jobs-nameless") } else { s.name.clone() };
    let open = move |event: leptos::ev::MouseEvent| {
        // With a key held or another button the browser opens a tab or window: leave that to it.
        if event.ctrl_key() || event.meta_key() || event.shift_key() || event.button() != 0 {
            return;
        }
        event.prevent_default();
        if id == page.open.get_untracked() || page.load(id) {
            page.go(Route::Result);
        }
    };
    let state = Message::new("jobs-state")
        .with("answered", s.answered as i64)
        .with("all", Summary::TOTAL as i64)
        .with("when", Arg::Verbatim(device::when(s.changed_ms)));
    let verdict = if s.verdict.is_empty() { page.key("jobs-no-verdict") } else { s.verdict.clone() };
    let here = page.open.get_untracked() == id;
    let label = page.say(&Message::new("jobs-unfold").with("name", Arg::Verbatim(name.clone())));
    let unfolded = Memo::new(move |_| wanted.unfolded.get() == Some(id));
    let unfold = move |_| wanted.unfolded.update(|u| *u = if *u == Some(id) { None } else { Some(id) });
    let archived = s.archived;
    let place = (!s.place.is_empty()).then(|| view! { <span class="quiet">{s.place.clone()}</span> });
    view! {
        <li class="job" class:here=here data-test=format!("job-{}", id.code())>
            <a href=format!("?p=result&j={}", id.code()) data-test="job-open" on:click=open>
                <strong>{name}</strong>
                {here.then(|| view! { <span class="tag">{page.key("jobs-here")}</span> })}
                {place}
                <span>{verdict}</span>
                <span class="quiet">{page.say(&state)}</span>
            </a>
            <button type="button" class="stepper" data-test="job-unfold" aria-label=label aria-expanded=move || unfolded.get().to_string() on:click=unfold>
                <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
                    <path d="M5 12h.01M12 12h.01M19 12h.01" stroke="currentColor" stroke-width="4" stroke-linecap="round"></path>
                </svg>
            </button>
            {move || unfolded.get().then(|| further(page, id, archived))}
        </li>
    }
    .into_any()
}

/// A link that came in a message, where the browser does not open it by itself.
fn pasted(page: Page) -> AnyView {
    let text = RwSignal::new(String::new());
    let open = move || {
        let link = text.get_untracked();
        if !link.trim().is_empty() {
            page.over.set(Some(Over::Open(link)));
        }
    };
    view! {
        <details class="data">
            <summary>{page.key("jobs-paste")}</summary>
            <div class="paste">
                <label class="text">
                    {page.key("jobs-paste-here")}
                    <textarea rows="3" data-test="jobs-paste" prop:value=text on:input=move |event| text.set(event_target_value(&event))></textarea>
                </label>
                {button(page.key("jobs-paste-open"), "button", "jobs-paste-open", open)}
            </div>
        </details>
    }
    .into_any()
}

/// What else can be done with a job.
fn further(page: Page, id: JobId, archived: bool) -> AnyView {
    let away = if archived { "jobs-take-out" } else { "jobs-archive" };
    view! {
        <div class="ways">
            {button(page.key("jobs-save"), "button", "job-save", move || page.save_job(id))}
            {button(page.key("jobs-duplicate"), "button", "job-duplicate", move || page.duplicate(id))}
            {button(page.key(away), "button", "job-archive", move || page.archive(id, !archived))}
            {button(page.key("jobs-delete"), "button", "job-delete", move || page.delete(id))}
        </div>
    }
    .into_any()
}

/// Draws on when the end of what is drawn comes near.
fn draw_more_on_scroll(wanted: Wanted) {
    let handle = window_event_listener(leptos::ev::scroll, move |_| {
        let Some(list) = document().document_element() else { return };
        let below = f64::from(list.scroll_height() - list.scroll_top() - list.client_height());
        if below < 2.0 * f64::from(list.client_height()) {
            // Beyond the last piece this counts on, and nothing comes of it.
            wanted.pieces.update(|n| *n = (*n + 1).min(1_000));
        }
    });
    on_cleanup(move || handle.remove());
}

/// How safe what is kept here is, and how much room is left.
#[component]
fn Safety() -> impl IntoView {
    let page = page();
    let promised = RwSignal::new(Some(true));
    spawn_local(async move { promised.set(device::is_persisted().await) });
    let ask = move || {
        spawn_local(async move { promised.set(device::persist().await) });
    };
    let evict = move || {
        (promised.get() != Some(true)).then(|| {
            let help = promised
                .get_untracked()
                .is_some()
                .then(|| button(page.key("jobs-persist"), "button", "jobs-persist", ask));
            view! {
                <p data-test="jobs-may-be-cleared">{page.key("jobs-may-be-cleared")}</p>
                {help}
            }
        })
    };
    let room = move || {
        page.listed.track();
        let taken = jobs::taken();
        (taken > NEARLY_FULL).then(|| {
            let percent = Arg::Number((taken * 100.0).min(100.0), 0);
            let says = page.say(&Message::new("jobs-nearly-full").with("percent", percent));
            view! { <p class="caution" data-test="jobs-nearly-full">{says}</p> }
        })
    };
    view! { <div class="safety">{room} {evict}</div> }
}
