//! The worker's side: takes messages as they come, works in small steps between them.
use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::{Array, Uint8Array};
use serde::{Serialize, de::DeserializeOwned};
use wasm_bindgen::{JsCast, JsValue, prelude::Closure};
use web_sys::{DedicatedWorkerGlobalScope, MessageChannel, MessageEvent, MessagePort};

/// What the worker says once it listens; until then the page keeps its messages back.
pub(super) const READY: &str = "ready";

/// Work that is done in steps short enough (some milliseconds) to notice a newer message in between.
pub trait Service {
    /// What the page sends.
    type Ask: DeserializeOwned;
    /// What goes back to the page.
    type Answer: Serialize;

    /// Is told, once and first, how to have [`Service::step`] called again when something it waits for has come.
    fn hear(&mut self, ring: Rc<dyn Fn()>);

    /// Takes note of a message; a newer one may make the work under way stale. Does no long work itself.
    fn take(&mut self, ask: Self::Ask);

    /// Does one step of the work under way; false when there is nothing left to do.
    fn step(&mut self, post: &mut dyn FnMut(Self::Answer)) -> bool;
}

/// Whether this code runs in the worker rather than in the page.
pub fn in_worker() -> bool {
    js_sys::global().is_instance_of::<DedicatedWorkerGlobalScope>()
}

/// Serves the page for as long as the worker lives.
///
/// # Errors
/// When this is not a worker, or the browser refuses a message channel.
pub fn run<S: Service + 'static>(service: S) -> Result<(), JsValue> {
    let scope: DedicatedWorkerGlobalScope = js_sys::global().dyn_into()?;
    let channel = MessageChannel::new()?;
    let bench = Rc::new(Bench {
        service: RefCell::new(service),
        scope: scope.clone(),
        bell: channel.port2(),
        rung: Cell::new(false),
    });

    // The bench lives as long as the worker, and so may the ring around.
    let at_ring = bench.clone();
    bench.service.borrow_mut().hear(Rc::new(move || at_ring.ring()));
    let at_bell = bench.clone();
    let step = Closure::<dyn FnMut()>::new(move || at_bell.step());
    channel.port1().set_onmessage(Some(step.into_js_value().unchecked_ref()));

    let at_door = bench;
    let take = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| at_door.take(&event));
    scope.set_onmessage(Some(take.into_js_value().unchecked_ref()));
    scope.post_message(&JsValue::from_str(READY))
}

/// The service with what it needs to work on: the way out, and a bell to call itself back with.
struct Bench<S> {
    service: RefCell<S>,
    scope: DedicatedWorkerGlobalScope,
    /// A message through this port comes back as a task of its own, behind those already waiting: the
    /// way to let newer messages in between two steps (a timer would add milliseconds to each).
    bell: MessagePort,
    rung: Cell<bool>,
}

impl<S: Service> Bench<S> {
    fn take(&self, event: &MessageEvent) {
        let bytes = Uint8Array::new(&event.data()).to_vec();
        match postcard::from_bytes(&bytes) {
            Ok(ask) => {
                self.service.borrow_mut().take(ask);
                self.ring();
            }
            Err(error) => self.complain(&format!("unreadable message: {error}")),
        }
    }

    fn step(&self) {
        self.rung.set(false);
        if self.service.borrow_mut().step(&mut |answer| self.post(&answer)) {
            self.ring();
        }
    }

    fn ring(&self) {
        if self.rung.replace(true) {
            return;
        }
        if let Err(error) = self.bell.post_message(&JsValue::NULL) {
            self.complain(&format!("{error:?}"));
        }
    }

    fn post(&self, answer: &S::Answer) {
        let sent = postcard::to_allocvec(answer).map_err(|error| error.to_string()).and_then(|bytes| {
            let array = Uint8Array::from(bytes.as_slice());
            self.scope
                .post_message_with_transfer(&array, &Array::of1(&array.buffer()))
                .map_err(|error| format!("{error:?}"))
        });
        if let Err(reason) = sent {
            self.complain(&reason);
        }
    }

    /// Words instead of bytes tell the page that the worker has failed.
    fn complain(&self, reason: &str) {
        // When even words do not get through there is nobody left to tell.
        let _ = self.scope.post_message(&JsValue::from_str(reason));
    }
}
