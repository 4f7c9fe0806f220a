//! A count that goes up when colours may have changed, for what is drawn on canvas.

use leptos::prelude::*;

/// From context: read it to be redrawn after a change of theme.
#[derive(Clone, Copy)]
pub struct Looks(pub RwSignal<u32>);

/// Tracks changes of colours.
pub fn track() {
    if let Some(Looks(count)) = use_context::<Looks>() {
        count.track();
    }
}
