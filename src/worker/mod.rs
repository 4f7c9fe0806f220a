//! The page's Web Worker: the simulations run there, so that the page never waits for them.
//!
//! The worker runs the very same WebAssembly as the page: the page hands it the compiled module, so
//! nothing is downloaded or compiled twice ([`spawn`]). Both sides talk in bytes (postcard); what the
//! bytes mean is up to the types they are opened with.
//!
//! May use [`crate::core`], [`crate::job`] and browser interfaces; knows nothing of the page's looks.
pub mod advisor;
pub mod clerk;
pub mod errands;
pub mod futures;
pub mod messages;
pub mod pool;
pub mod service;
pub mod spawn;

pub use service::{Service, in_worker, run};
pub use spawn::{Link, LinkError};
