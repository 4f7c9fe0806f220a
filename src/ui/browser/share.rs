//! Ways by which a link leaves the device: the share sheet, the clipboard, addresses of mail and messages.

use super::device;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

/// The page's own address with this after the `#`; without the page shown and whatever else stands behind.
pub fn address_with(fragment: &str) -> String {
    let here = window().location().href().unwrap_or_default();
    let end = here.find(['?', '#']).unwrap_or(here.len());
    format!("{}#{fragment}", here.get(..end).unwrap_or_default())
}

/// Whether the page was opened from a file: its address means nothing to anybody else.
pub fn is_from_file() -> bool {
    window().location().protocol().is_ok_and(|p| p == "file:")
}

/// Whether the device has a sheet to share by.
pub fn can_share() -> bool {
    device::method(&window().navigator(), "share").is_some()
}

/// Opens the device's sheet with words and an address. False: it was shut again, or refuses.
pub async fn share(words: &str, address: &str) -> bool {
    let what = js_sys::Object::new();
    for (name, value) in [("text", words), ("url", address)] {
        let _ = js_sys::Reflect::set(&what, &name.into(), &value.into());
    }
    device::ask(&window().navigator(), "share", &what).await.is_some()
}

/// Puts a text on the clipboard. False: the browser does not let the page.
pub async fn copy(text: &str) -> bool {
    match device::thing("clipboard") {
        Some(clipboard) => device::ask(&clipboard, "writeText", &JsValue::from_str(text)).await.is_some(),
        None => false,
    }
}

/// A text as a part of an address.
pub fn escaped(text: &str) -> String {
    js_sys::encode_uri_component(text).into()
}
