//! One household's job.
