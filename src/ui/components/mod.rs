//! The parts pages are made of.

pub mod bound;
pub mod candidates;
pub mod chart_looks;
pub mod choice;
pub mod drawn_label;
pub mod find;
pub mod findings;
pub mod head;
pub mod kept;
pub mod link;
pub mod morning;
pub mod notices;
pub mod number;
pub mod pair;
pub mod place;
pub mod present_label;
pub mod provenance;
pub mod question;
pub mod rating;
pub mod reasons;
pub mod tank;
pub mod tiles;
pub mod verdict;
pub mod warmth;
pub mod way;
pub mod working;
