//! Keeping the screen awake, where the device can (Screen Wake Lock, W3C).

use super::device;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsValue;

/// A screen that is to stay awake.
#[derive(Clone, Copy)]
pub struct Awake {
    /// Whether it is wanted.
    pub wanted: RwSignal<bool>,
    /// Whether it holds: a device may refuse, short of power for one.
    pub holds: RwSignal<bool>,
    lock: StoredValue<Option<JsValue>, LocalStorage>,
}

/// Whether the device has such a thing.
pub fn can() -> bool {
    device::thing("wakeLock").is_some()
}

impl Awake {
    /// Not wanted yet; lets go when the page that asked for it goes.
    pub fn new() -> Awake {
        let awake = Awake {
            wanted: RwSignal::new(false),
            holds: RwSignal::new(false),
            lock: StoredValue::new_local(None),
        };
        // The device lets go when the page goes out of sight; back in sight it is asked again.
        let seen =
            window_event_listener(leptos::ev::Custom::<web_sys::Event>::new("visibilitychange"), move |_| {
                if !document().hidden() && awake.wanted.get_untracked() {
                    awake.ask();
                }
            });
        on_cleanup(move || {
            seen.remove();
            awake.let_go();
        });
        awake
    }

    /// Wants it, or no more.
    pub fn set(self, wanted: bool) {
        self.wanted.set(wanted);
        if wanted { self.ask() } else { self.let_go() }
    }

    fn ask(self) {
        spawn_local(async move {
            let Some(thing) = device::thing("wakeLock") else { return };
            let lock = device::ask(&thing, "request", &JsValue::from_str("screen")).await;
            let still = self.wanted.try_get_untracked() == Some(true);
            match lock {
                Some(lock) if still => {
                    self.holds.set(true);
                    self.lock.set_value(Some(lock));
                }
                // Taken back, or the page left, while it was asked for.
                Some(lock) => release(lock),
                None if still => self.holds.set(false),
                None => {}
            }
        });
    }

    fn let_go(self) {
        if let Some(lock) = self.lock.try_update_value(Option::take).flatten() {
            release(lock);
        }
        let _ = self.holds.try_set(false);
    }
}

fn release(lock: JsValue) {
    spawn_local(async move {
        device::ask(&lock, "release", &JsValue::UNDEFINED).await;
    });
}
