//! One household's job: the question list, answers with provenance, and their completion into a case.
//! Serde but no browser; uses the core, never the page.

pub mod answers;
pub mod complete;
pub mod file;
pub mod questions;
pub mod record;
pub mod resolved;
