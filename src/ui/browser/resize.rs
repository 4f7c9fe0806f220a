//! The size of an element, followed.

use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, ResizeObserver};

/// Calls back with width and height in CSS pixels, at once and after each change, until the owner is
/// cleaned up.
pub fn follow(element: &Element, mut changed: impl FnMut(f64, f64) + 'static) {
    let watched = element.clone();
    let told: Rc<RefCell<(f64, f64)>> = Rc::default();
    let on_change = Closure::<dyn FnMut()>::new(move || {
        let rect = watched.get_bounding_client_rect();
        let now = (rect.width(), rect.height());
        if told.replace(now) != now {
            changed(now.0, now.1);
        }
    });
    let Ok(observer) = ResizeObserver::new(on_change.as_ref().unchecked_ref()) else { return };
    observer.observe(element);
    let kept = StoredValue::new_local((observer, on_change));
    on_cleanup(move || {
        // The observer goes first, so that the closure is never called after it is gone.
        let _ = kept.try_with_value(|(observer, _)| observer.disconnect());
    });
}
