//! Tankful: what to do about an old water heater, computed.
//!
//! The rooms, in the order the work flows; each may use those above it and none below:
//!
//! | room | what it is for |
//! | --- | --- |
//! | [`core`] | physics, equipment, simulation, money, advice: pure, no clock, no browser, no text |
//! | [`job`] | one household's answers: the question list, provenance, completion into a case, the saved form |
//! | [`text`] | messages to words: the locale files, units and numbers on screen |
//! | `worker` | the page's Web Worker and its messages (wasm only) |
//! | `ui` | the page (wasm only) |
#![forbid(unsafe_code)]
#![warn(missing_docs)]
// The manual is made with its private items.
#![allow(rustdoc::private_intra_doc_links)]

pub mod core;
pub mod job;
pub mod text;
#[cfg(all(target_arch = "wasm32", feature = "page"))]
pub mod ui;
#[cfg(all(target_arch = "wasm32", feature = "page"))]
pub mod worker;
