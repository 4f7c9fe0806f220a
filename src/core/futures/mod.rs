//! How sure the advice is, and what would change it: many futures of one case, drawn together.
//!
//! A future is one position of everything that is not known: questions nobody answered, over their spreads
//! ([`unknowns`]), and what nobody can know today ([`ahead`]). All candidates are seen in the same futures. Points come from
//! an index and a seed ([`points`]), so that results do not depend on how the work is shared out.
//!
//! Where the price goes by the hour, a future pays the peak and low prices it draws, at the hours of its own household's use:
//! the months of the case as it stands ([`crate::core::outcome::YearResult::peak_share`]), brought to the share of that year.
//! The hours of the peak themselves are not drawn.
//!
//! A thousand whole years are too dear. Futures ([`summary`]) share some households ([`study`]), each lived through at a brisk
//! pace ([`estimate`]); what would change the advice ([`change`], step by step in [`weigh`]) rests on a response to them
//! ([`response`]) in physical coordinates ([`features`]). How far both are off is held in `tests/futures`.
//!
//! What makes another house (kind of heater, room, place) no response knows of: each other house is simulated ([`otherwise`]).

pub mod ahead;
pub mod change;
pub mod cost;
pub mod estimate;
pub mod features;
pub mod otherwise;
pub mod points;
pub mod response;
pub mod shares;
pub mod stages;
pub mod study;
pub mod summary;
pub mod told;
pub mod types;
pub mod unknowns;
pub mod weigh;

pub use otherwise::FirstLook;
pub use study::{Fitted, Lives, Study};
pub use types::{
    Axis, Band, BreakEven, BreakEvenMap, CandidateFutures, Changes, FitError, Futures, Sensitivity, Wishes,
    YearsBand,
};
pub use weigh::Weighing;
