//! How long the present heater still lives, and when it is best replaced.
//!
//! [`weibull`] is the distribution of lives, the only one in the project; [`parameters`] its figures with their
//! spreads and where they come from; [`present`] the life of the heater that stands there; [`replace`] what an
//! emergency costs and the best moment to act. Pure figures: words are made elsewhere.

pub mod parameters;
pub mod present;
pub mod replace;
pub mod weibull;

pub use weibull::Weibull;
