//! What the device may offer and may lack: promises of the browser that are called by name, so that one that
//! is not there is told apart from one that refuses.

use leptos::prelude::window;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// A thing of the browser's navigator (`storage`, `clipboard`, `wakeLock`), if this browser has it.
pub fn thing(name: &str) -> Option<JsValue> {
    let found = js_sys::Reflect::get(&window().navigator(), &name.into()).ok()?;
    found.is_object().then_some(found)
}

/// A method of a thing, if it has it.
pub fn method(of: &JsValue, name: &str) -> Option<js_sys::Function> {
    js_sys::Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}

/// Calls a method with one argument and waits for what it promises. `None` where it is missing or refuses.
pub async fn ask(of: &JsValue, name: &str, argument: &JsValue) -> Option<JsValue> {
    let promise = method(of, name)?.call1(of, argument).ok()?;
    JsFuture::from(js_sys::Promise::resolve(&promise)).await.ok()
}

/// Whether the browser has promised to keep what this page keeps; `None` where it cannot be asked.
pub async fn is_persisted() -> Option<bool> {
    ask(&thing("storage")?, "persisted", &JsValue::UNDEFINED).await?.as_bool()
}

/// Asks the browser to keep what this page keeps, even when room runs short.
pub async fn persist() -> Option<bool> {
    ask(&thing("storage")?, "persist", &JsValue::UNDEFINED).await?.as_bool()
}

/// A time as people write it here, from ms since 1970: `Nov 25, 2026, 1:11 PM`.
pub fn when(ms: f64) -> String {
    thread_local! {
        /// Making one takes the browser about a millisecond; a long list asks a thousand times.
        static FORMAT: js_sys::Function = {
            let how = js_sys::Object::new();
            let _ = js_sys::Reflect::set(&how, &"dateStyle".into(), &"medium".into());
            let _ = js_sys::Reflect::set(&how, &"timeStyle".into(), &"short".into());
            js_sys::Intl::DateTimeFormat::new(&js_sys::Array::of1(&"en".into()), &how).format()
        };
    }
    let written = FORMAT.with(|format| format.call1(&JsValue::UNDEFINED, &ms.into()));
    written.ok().and_then(|text| text.as_string()).unwrap_or_default()
}
