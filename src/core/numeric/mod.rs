//! Small numerical tools: a bracketed root, a tridiagonal solve, an exponential decay, numbers from text.
//!
//! Deterministic to the bit on every platform (additions, multiplications, divisions, and the portable library's exponential), no
//! allocation, and no knowledge of what the numbers mean.
pub mod cholesky;
pub mod decay;
pub mod parse;
pub mod root;
pub mod tridiagonal;

pub use decay::decay_factor;
pub use parse::number;
pub use root::{Root, RootError, RootStatus, root_in_bracket};
pub use tridiagonal::{TridiagonalError, solve_tridiagonal};
