//! The page's Web Worker: the simulations run there, so that the page never waits for them.
//!
//! The worker runs the very same WebAssembly as the page: the page hands it the compiled module, so
//! nothing is downloaded or compiled twice ([`spawn`]). Both sides talk in bytes (postcard); what the
//! bytes mean is up to the types they are opened with.
//!
//! May use [`crate::core`], [`crate::job`] and browser interfaces; knows nothing of the page's looks.
pub mod service;
pub mod spawn;

pub use service::{Service, in_worker, run};
pub use spawn::{Link, LinkError};

/// The worker's entry: serves the page until the page ends it.
pub fn serve() {
    console_error_panic_hook::set_once();
    if let Err(error) = run(Greeter) {
        // Thrown, it reaches the page as the worker's failure.
        wasm_bindgen::throw_val(error);
    }
}

/// Says which release is working.
struct Greeter;

impl Service for Greeter {
    type Ask = ();
    type Answer = String;

    fn take(&mut self, (): (), post: &mut dyn FnMut(&String)) {
        post(&env!("CARGO_PKG_VERSION").to_owned());
    }

    fn step(&mut self, _: &mut dyn FnMut(&String)) -> bool {
        false
    }
}
