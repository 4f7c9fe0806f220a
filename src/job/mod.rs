//! One household's job: the question list, answers with provenance, and their completion into a case.
//! Serde but no browser; uses the core, never the page.

pub mod after;
pub mod answers;
pub mod asking;
pub mod complete;
pub mod done;
pub mod exchange;
pub mod file;
mod form;
pub mod index;
pub mod kept;
pub mod link;
pub mod merge;
pub mod offer;
pub mod open;
mod otherwise;
pub mod qr;
pub mod questions;
pub mod resolved;
mod sheet;
pub mod site;
pub mod tape;

pub use sheet::{Aside, Job, JobId, LONGEST_WHO, Measured, Part, Why};
