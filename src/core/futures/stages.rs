//! What is simulated for the futures of a case, piece by piece, and after which pieces there is something to tell.
//!
//! A piece is named by its number: whoever simulates it, in whatever order, gives the same. Design points ([`DesignYears`])
//! teach how far the years in strokes are off; households ([`Lives`]) are what futures are made of. A future takes its
//! household from the first of them, over and over: as many futures are drawn as are asked for, on fewer simulated
//! households, each with prices, lives and moves of its own.

use super::study::{DesignYears, Lives};
use serde::{Deserialize, Serialize};

/// What there is to tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stage {
    /// Design points.
    pub designs: u32,
    /// Households.
    pub households: u32,
    /// Of all futures wanted, one in so many is drawn.
    pub one_in: u32,
}

/// First bands soon; all futures; the last word, on more households and more design points.
pub const STAGES: [Stage; 4] = [
    Stage { designs: 0, households: 10, one_in: 25 },
    Stage { designs: 8, households: 48, one_in: 5 },
    Stage { designs: 24, households: 128, one_in: 1 },
    Stage { designs: 64, households: 500, one_in: 1 },
];

/// The last stage.
pub const LAST: usize = STAGES.len() - 1;

impl Stage {
    /// Pieces that it needs.
    pub const fn pieces(&self) -> u32 {
        self.designs + self.households
    }
}

/// All pieces there are.
pub const PIECES: u32 = STAGES[LAST].pieces();

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Task {
    Design(u32),
    Household(u32),
}

/// The task of a piece: those of each stage before those of the next, design points first.
pub(super) fn task(piece: u32) -> Task {
    let (mut left, mut before) = (piece, Stage { designs: 0, households: 0, one_in: 1 });
    for stage in STAGES {
        let designs = stage.designs - before.designs;
        if left < designs {
            return Task::Design(before.designs + left);
        }
        left -= designs;
        let households = stage.households - before.households;
        if left < households {
            return Task::Household(before.households + left);
        }
        left -= households;
        before = stage;
    }
    Task::Household(before.households + left)
}

/// A piece that was simulated.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Piece {
    /// A design point.
    Design(DesignYears),
    /// A household.
    Household(Lives),
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each stage's pieces are the first ones, and every design point and household comes once.
    #[test]
    fn each_stage_has_what_it_needs() {
        for stage in STAGES {
            let tasks: Vec<Task> = (0..stage.pieces()).map(task).collect();
            for design in 0..stage.designs {
                assert_eq!(tasks.iter().filter(|t| **t == Task::Design(design)).count(), 1);
            }
            for household in 0..stage.households {
                assert_eq!(tasks.iter().filter(|t| **t == Task::Household(household)).count(), 1);
            }
        }
    }
}
