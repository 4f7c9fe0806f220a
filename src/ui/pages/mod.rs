//! The pages: the way in, a section of questions, the advice; the list of jobs and what an installer does
//! with one; the short path of questions somebody asked.

pub mod asked;
pub mod job;
pub mod jobs;
pub mod offer;
pub mod onsite;
pub mod result;
pub mod section;
pub mod start;
pub mod work;
