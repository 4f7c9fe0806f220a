//! How many households are simulated for the futures of a case, and after how many there is something to tell.
//!
//! Households ([`super::study::Lives`]) are what futures are made of. A future takes its household from the first of them,
//! over and over: as many futures are drawn as are asked for, on fewer simulated households, each with prices, lives and
//! moves of its own. Only the first bands, on very few households, are told otherwise ([`TOO_FEW`]). A household is known by
//! its number: whoever simulates it, in whatever order, gives the same.

/// What there is to tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stage {
    /// Households.
    pub households: u32,
    /// Of all futures wanted, one in so many is drawn.
    pub one_in: u32,
}

/// First bands soon; all futures; the last word, on more households.
pub const STAGES: [Stage; 4] = [
    Stage { households: 2, one_in: 25 },
    Stage { households: 10, one_in: 5 },
    Stage { households: 24, one_in: 1 },
    Stage { households: 256, one_in: 1 },
];

/// With fewer households than this, futures are told by the response to them, each at a position of its own: so few
/// households would be no band.
pub const TOO_FEW: u32 = 8;

/// The last stage.
pub const LAST: usize = STAGES.len() - 1;

/// All households there are.
pub const HOUSEHOLDS: u32 = STAGES[LAST].households;
