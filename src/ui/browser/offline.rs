//! The page with no signal: registers the service worker (`public/service-worker.js`), knows how far it is,
//! and tells the reader of a newer release. That one is used only when the reader says so; nothing typed
//! is lost on the way.
//!
//! What can go wrong (no service worker in this browser, storage refused or full, a download that broke
//! off) is said in a line at the foot of the page, which works all the same.

use crate::core::message::Message;
use crate::job::questions::Id;
use crate::ui::model::{Draft, Notice, Remedy};
use crate::ui::state::Page;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::cell::Cell;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{MessageEvent, ServiceWorkerContainer, ServiceWorkerRegistration};

/// The service worker, beside the page.
const SCRIPT: &str = "./service-worker.js";
/// What was typed and is no answer yet, from before the page is loaded anew until after it.
const DRAFTS_KEY: &str = "tankful.drafts.1";
/// The longest text of drafts that is kept and read back, in bytes.
const LONGEST_DRAFTS: usize = 10_000;
/// How long a page that stays open waits before it looks for a newer release again.
const LOOK_AGAIN_MS: f64 = 3_600_000.0;
/// How long a newer release may take to come into force before the page is loaded anew without it.
const PATIENCE: Duration = Duration::from_secs(10);

/// A question's code and what was typed there. Plain enough to be read by another release of the page.
type Typed = (String, String);

/// The key of the words that say how far the page is with working offline.
pub type Standing = RwSignal<&'static str>;

/// Sees to it that the page works with no signal, for as long as it is open.
pub fn follow(page: Page) -> Standing {
    restore_drafts(page);
    let standing = RwSignal::new("offline-preparing");
    if window().location().protocol().is_ok_and(|p| p == "file:") {
        standing.set("offline-file");
        return standing;
    }
    match workers() {
        Some(workers) => spawn_local(register(page, standing, workers)),
        // Browsers give service workers to safe addresses only.
        None if !window().is_secure_context() => standing.set("offline-unsafe"),
        None => standing.set("offline-none"),
    }
    standing
}

/// The browser's service workers, where it has any for this page: asking alone may be forbidden.
fn workers() -> Option<ServiceWorkerContainer> {
    js_sys::Reflect::get(&window().navigator(), &"serviceWorker".into()).ok()?.dyn_into().ok()
}

async fn register(page: Page, standing: Standing, workers: ServiceWorkerContainer) {
    // Listening comes first: a release that cannot be kept says why, before or after it is seen to fail.
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        if event.data() == "full" && standing.get_untracked() != "offline-ready" {
            standing.set("offline-full");
        }
    });
    workers.set_onmessage(Some(on_message.into_js_value().unchecked_ref()));
    // The first controller is only the first release taking up its work.
    let was_controlled = Cell::new(workers.controller().is_some());
    let on_change = Closure::<dyn FnMut()>::new(move || {
        if was_controlled.replace(true) {
            tell(page, "offline-notice-other-tab", Some(Remedy::Renew));
        }
    });
    workers.set_oncontrollerchange(Some(on_change.into_js_value().unchecked_ref()));

    let Some(registration) = wait(&workers.register(SCRIPT)).await else {
        standing.set("offline-refused");
        return;
    };
    let at_change = registration.clone();
    let look = move || {
        if at_change.active().is_some() {
            standing.set("offline-ready");
            if at_change.waiting().is_some() {
                tell(page, "offline-notice-newer", Some(Remedy::Renew));
            }
        } else if at_change.installing().is_none()
            && at_change.waiting().is_none()
            && standing.get_untracked() != "offline-full"
        {
            standing.set("offline-failed");
        }
    };
    look();
    let look = Closure::<dyn FnMut()>::new(look).into_js_value();
    let follow_new = follow_installing(&registration, &look);
    follow_new();
    let on_found = Closure::<dyn FnMut()>::new(follow_new).into_js_value();
    registration.set_onupdatefound(Some(on_found.unchecked_ref()));
    look_again(registration);
}

/// A function that calls back on every step of the release that is being kept now.
fn follow_installing(registration: &ServiceWorkerRegistration, look: &JsValue) -> impl Fn() + 'static {
    let (registration, look) = (registration.clone(), look.clone());
    move || {
        if let Some(installing) = registration.installing() {
            installing.set_onstatechange(Some(look.unchecked_ref()));
        }
    }
}

/// A tablet may have the page open for weeks: coming back to it looks for a newer release.
fn look_again(registration: ServiceWorkerRegistration) {
    let looked = Cell::new(js_sys::Date::now());
    let woken = move |_| {
        let now = js_sys::Date::now();
        if !document().hidden() && (now - looked.get()).abs() > LOOK_AGAIN_MS {
            looked.set(now);
            if let Ok(looking) = registration.update() {
                // With no signal there is nothing to find.
                spawn_local(async move { drop(JsFuture::from(looking).await) });
            }
        }
    };
    // Lives as long as the page.
    let _ = window_event_listener(leptos::ev::Custom::<web_sys::Event>::new("visibilitychange"), woken);
}

async fn wait(promise: &js_sys::Promise) -> Option<ServiceWorkerRegistration> {
    match JsFuture::from(promise.clone()).await {
        Ok(registration) => registration.dyn_into().ok(),
        Err(error) => {
            leptos::logging::warn!("{error:?}");
            None
        }
    }
}

fn tell(page: Page, key: &'static str, remedy: Option<Remedy>) {
    page.tell(Notice { code: "newer", says: Message::new(key), remedy });
}

/// The reader wants the newer release: keeps what is typed, lets it take over, loads the page anew, once.
pub fn renew(page: Page) {
    if !page.is_kept() || !keep_drafts(page) {
        tell(page, "offline-notice-unkept", None);
        return;
    }
    page.dismiss("newer");
    spawn_local(async move {
        let workers = workers();
        let registration = match &workers {
            Some(workers) => wait(&workers.get_registration()).await,
            None => None,
        };
        // Another tab may have put it in force already.
        let Some((workers, waiting)) = workers.zip(registration.and_then(|r| r.waiting())) else {
            reload();
            return;
        };
        let in_force = Closure::<dyn FnMut()>::new(reload).into_js_value();
        workers.set_oncontrollerchange(Some(in_force.unchecked_ref()));
        let _ = waiting.post_message(&"use".into());
        set_timeout(reload, PATIENCE);
    });
}

fn reload() {
    let _ = window().location().reload();
}

/// Keeps what was typed and is no answer yet; false where the browser refuses.
fn keep_drafts(page: Page) -> bool {
    let drafts: Vec<Typed> = page.job.with_untracked(|j| {
        j.drafts.iter().map(|(id, draft)| (id.code().to_owned(), draft.text.clone())).collect()
    });
    if drafts.is_empty() {
        return true;
    }
    let text = serde_json::to_string(&drafts).unwrap_or_default();
    let Ok(Some(storage)) = window().session_storage() else { return false };
    text.len() <= LONGEST_DRAFTS && storage.set_item(DRAFTS_KEY, &text).is_ok()
}

/// Puts back into its fields what was typed before the page was loaded anew.
fn restore_drafts(page: Page) {
    let Ok(Some(storage)) = window().session_storage() else { return };
    let Ok(Some(text)) = storage.get_item(DRAFTS_KEY) else { return };
    let _ = storage.remove_item(DRAFTS_KEY);
    if text.len() > LONGEST_DRAFTS {
        return;
    }
    let drafts: Vec<Typed> = serde_json::from_str(&text).unwrap_or_default();
    for (code, text) in drafts {
        let Some(id) = Id::from_code(&code) else { continue };
        let before = page.answers.with_untracked(|a| a.get(id).cloned());
        let refusal = Some(Message::new("offline-draft"));
        page.job.update(|j| j.set_draft(id, Some(Draft { text, refusal, before })));
    }
}
