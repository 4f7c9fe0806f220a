//! One household's job: the question list, answers with provenance, and their completion into a case.
//! Serde but no browser; uses the core, never the page.
// The rooms below join the build when the climate room has landed:
// pub mod answers; pub mod complete; pub mod questions; pub mod resolved;
