//! Small numerical tools shared by the physics: a bracketed root and a tridiagonal solve.
//!
//! Deterministic to the bit on every platform (additions, multiplications, divisions only), no
//! allocation, and no knowledge of what the numbers mean.
pub mod root;
pub mod tridiagonal;

pub use root::{Root, RootError, RootStatus, root_in_bracket};
pub use tridiagonal::{TridiagonalError, solve_tridiagonal};
