//! The pages: the way in, a section of questions, the advice.

pub mod result;
pub mod section;
pub mod start;
