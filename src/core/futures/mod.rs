//! How sure the advice is, and what would change it: many futures of one case, drawn together.
//!
//! A future is one position of everything that is not known: questions nobody answered, over their spreads
//! ([`unknowns`]), and what nobody can know today. All candidates are seen in the same futures. Points come from
//! an index and a seed ([`points`]), so that results do not depend on how the work is shared out.

pub mod points;
pub mod types;
pub mod unknowns;

pub use types::{
    Axis, Band, BreakEven, BreakEvenMap, CandidateFutures, Changes, FitError, Futures, Sensitivity, Wishes,
    YearsBand,
};
