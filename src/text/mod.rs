//! Messages to words.
