//! The futures of a case against full simulation, closed forms and limits.

mod accuracy;
mod brisk;
mod houses;
mod limits;
mod otherwise;
