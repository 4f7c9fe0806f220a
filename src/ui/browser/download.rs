//! Files out of and into the page, without a server.

use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, Url};

/// Largest file of answers that is read. It has some kilobytes; anything larger is something else.
pub const LARGEST: usize = 1_000_000;

/// Offers a text in JSON as a download.
pub fn offer(name: &str, text: &str) {
    offer_as(name, text, "application/json");
}

/// Offers a text of any kind (a media type) as a download.
pub fn offer_as(name: &str, text: &str, kind: &str) {
    // When the browser refuses, nothing happens that the page could put right.
    let _ = try_offer(name, text, kind);
}

fn try_offer(name: &str, text: &str, media_type: &str) -> Result<(), JsValue> {
    let kind = BlobPropertyBag::new();
    kind.set_type(media_type);
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence_and_options(&parts, &kind)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // The browser needs the address until the download has begun.
    set_timeout(
        move || {
            let _ = Url::revoke_object_url(&address);
        },
        std::time::Duration::from_secs(30),
    );
    Ok(())
}

/// Reads a file as text; `None` when it is larger than this or cannot be read.
pub async fn read(file: File, largest: usize) -> Option<String> {
    if file.size() > largest as f64 {
        return None;
    }
    wasm_bindgen_futures::JsFuture::from(file.text()).await.ok()?.as_string()
}
