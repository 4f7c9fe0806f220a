//! The page's side: starts the worker with the page's own module and exchanges messages with it.
use std::cell::RefCell;
use std::marker::PhantomData;
use std::rc::Rc;

use js_sys::{Array, Object, Reflect, Uint8Array};
use serde::{Serialize, de::DeserializeOwned};
use wasm_bindgen::{JsCast, JsValue, prelude::*};
use web_sys::{ErrorEvent, Event, MessageEvent, Url, Worker, WorkerOptions, WorkerType};

use super::service::READY;

#[wasm_bindgen]
extern "C" {
    /// Where the glue script that wasm-bindgen made was loaded from.
    #[wasm_bindgen(thread_local_v2, js_namespace = ["import", "meta"], js_name = url)]
    static GLUE: String;
}

/// Where `public/single.js` puts the address of the worker that the page in one file brings along.
const BROUGHT: &str = "tankfulWorker";

/// Why the worker cannot be used. The texts are for the console; the page has words of its own.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LinkError {
    /// The worker did not start: no worker support, a blocked or missing file.
    #[error("the worker did not start: {0}")]
    Start(String),
    /// The worker stopped while working: it ran out of memory or has a fault.
    #[error("the worker stopped: {0}")]
    Stopped(String),
    /// A message could not be put into bytes or read back from them.
    #[error("a message could not be carried: {0}")]
    Message(String),
}

/// The line to a worker that is asked `Q` and answers `A`. Dropping it ends the worker at once.
pub struct Link<Q, A> {
    worker: Worker,
    line: Rc<RefCell<Line>>,
    /// Kept alive for as long as the browser may call them.
    _on_message: Closure<dyn FnMut(MessageEvent)>,
    _on_error: Closure<dyn FnMut(Event)>,
    types: PhantomData<fn(Q) -> A>,
}

/// Messages wait here until the worker listens.
struct Line {
    ready: bool,
    waiting: Vec<Vec<u8>>,
}

impl<Q: Serialize, A: DeserializeOwned + 'static> Link<Q, A> {
    /// Starts a worker. `on_answer` gets each answer; `on_failure` is told when the worker fails, after
    /// which nothing more comes and the page may start another link.
    ///
    /// # Errors
    /// [`LinkError::Start`] when the browser refuses a worker outright; failures that show later (a
    /// worker file that is missing) go to `on_failure`.
    pub fn start(
        mut on_answer: impl FnMut(A) + 'static,
        on_failure: impl FnMut(LinkError) + 'static,
    ) -> Result<Self, LinkError> {
        let worker = spawn().map_err(|error| LinkError::Start(describe(&error)))?;
        let line = Rc::new(RefCell::new(Line { ready: false, waiting: Vec::new() }));
        let on_failure = Rc::new(RefCell::new(on_failure));

        let (failure, at_line, out) = (on_failure.clone(), line.clone(), worker.clone());
        let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            let data = event.data();
            let Some(words) = data.as_string() else {
                match postcard::from_bytes(&Uint8Array::new(&data).to_vec()) {
                    Ok(answer) => on_answer(answer),
                    Err(error) => (failure.borrow_mut())(LinkError::Message(error.to_string())),
                }
                return;
            };
            let was_ready = at_line.borrow().ready;
            if words != READY {
                let error = if was_ready { LinkError::Stopped(words) } else { LinkError::Start(words) };
                (failure.borrow_mut())(error);
                return;
            }
            let waiting = {
                let mut line = at_line.borrow_mut();
                line.ready = true;
                std::mem::take(&mut line.waiting)
            };
            for bytes in waiting {
                if let Err(error) = post(&out, &bytes) {
                    (failure.borrow_mut())(error);
                }
            }
        });
        worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));

        let at_line = line.clone();
        let on_error = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
            let reason = match event.dyn_ref::<ErrorEvent>() {
                Some(error) => error.message(),
                None => "its file could not be loaded".to_owned(),
            };
            let ready = at_line.borrow().ready;
            let error = if ready { LinkError::Stopped(reason) } else { LinkError::Start(reason) };
            (on_failure.borrow_mut())(error);
        });
        worker.set_onerror(Some(on_error.as_ref().unchecked_ref()));

        Ok(Self { worker, line, _on_message: on_message, _on_error: on_error, types: PhantomData })
    }

    /// Sends a message, or keeps it until the worker has started. Messages arrive in order.
    ///
    /// # Errors
    /// [`LinkError::Message`] when it cannot be put into bytes or the browser refuses it.
    pub fn send(&self, ask: &Q) -> Result<(), LinkError> {
        let bytes = postcard::to_allocvec(ask).map_err(|error| LinkError::Message(error.to_string()))?;
        let mut line = self.line.borrow_mut();
        if !line.ready {
            line.waiting.push(bytes);
            return Ok(());
        }
        post(&self.worker, &bytes)
    }
}

impl<Q, A> Drop for Link<Q, A> {
    fn drop(&mut self) {
        self.worker.set_onmessage(None);
        self.worker.set_onerror(None);
        self.worker.terminate();
    }
}

/// Starts the worker and hands it the module. `worker.js` lies beside the glue script, wherever the page
/// is served from; the page in one file brings its worker along (which is no module: browsers refuse those
/// to pages opened from a disk).
fn spawn() -> Result<Worker, JsValue> {
    let glue = GLUE.with(String::clone);
    let options = WorkerOptions::new();
    let brought = Reflect::get(&js_sys::global(), &BROUGHT.into())?.as_string();
    let address = match brought {
        Some(address) => address,
        None => {
            options.set_type(WorkerType::Module);
            Url::new_with_base("worker.js", &glue)?.href()
        }
    };
    let worker = Worker::new_with_options(&address, &options)?;
    let hello = Object::new();
    Reflect::set(&hello, &"glue".into(), &glue.into())?;
    Reflect::set(&hello, &"module".into(), &wasm_bindgen::module())?;
    worker.post_message(&hello)?;
    Ok(worker)
}

/// Sends bytes without copying them a second time.
fn post(worker: &Worker, bytes: &[u8]) -> Result<(), LinkError> {
    let array = Uint8Array::from(bytes);
    worker
        .post_message_with_transfer(&array, &Array::of1(&array.buffer()))
        .map_err(|error| LinkError::Message(describe(&error)))
}

/// A thrown value in words, for the console.
fn describe(error: &JsValue) -> String {
    match error.dyn_ref::<js_sys::Error>() {
        Some(error) => String::from(error.message()),
        None => format!("{error:?}"),
    }
}
