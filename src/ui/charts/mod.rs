//! The charts, on canvas: sharp on dense screens, redrawn when size, colours or units change; each with
//! a one-sentence reading, and its figures as a table.

pub mod axis;
pub mod cop;
pub mod frame;
pub mod money;
pub mod months;
pub mod morning;
pub mod plot;
pub mod rating;
pub mod room;
pub mod sheet;
pub mod years;
