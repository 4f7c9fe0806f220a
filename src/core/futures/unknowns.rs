//! What is not known of a case, as coordinates. The questions with their spreads belong to the `job` room; here
//! is only what the futures need of them.

use crate::core::case::Case;
use crate::core::units::Quantity;
use std::borrow::Cow;

/// Something that a case may be varied by.
#[derive(Clone, Debug, PartialEq)]
pub struct Coordinate {
    /// Code of the question.
    pub code: Cow<'static, str>,
    /// Nobody answered: it is drawn. What was answered or measured is taken as it was said.
    pub open: bool,
    /// It moves energy, hot water, money or time, and so is drawn where it is open; the others decide only whether a
    /// heater fits.
    pub drawn: bool,
    /// It moves the simulated year of some heater; the others move money or time alone.
    pub lived: bool,
    /// A number; otherwise one of several options.
    pub number: bool,
}

/// A question that makes another house, and that nobody has answered: never drawn, but tried option by option.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// Code of the question.
    pub code: Cow<'static, str>,
    /// Its plausible options other than the one that stands in the case, in the order to try them.
    pub options: Vec<Cow<'static, str>>,
}

/// A case with what is not known of it.
///
/// A position is one standard normal number for each coordinate; at 0 each is what stands in the case, and
/// plausible values (about 80 % of houses) lie between −[`PLAUSIBLE_Z`] and [`PLAUSIBLE_Z`].
pub trait Unknowns: Sync {
    /// The coordinates, always in the same order.
    fn coordinates(&self) -> &[Coordinate];

    /// The case at a position; what is missing of it counts as 0. Answered coordinates are varied too.
    fn case(&self, z: &[f64]) -> Case;

    /// The case as it would be had somebody answered one coordinate with its value at a position; all else as it stands.
    fn answered(&self, coordinate: usize, z: f64) -> Case;

    /// The value of a number at a position of its own, all else as it stands; `None` for options.
    fn value(&self, coordinate: usize, z: f64) -> Option<Quantity>;

    /// The open questions that make another house, always in the same order; none that is answered.
    fn held(&self) -> &[Held];

    /// The case as it would be had somebody answered a held question with one of its options, by their positions: defaults
    /// that derive from the answer follow it. `None` where there is no such option.
    fn otherwise(&self, question: usize, option: usize) -> Option<Case>;
}

/// The standard normal number that one in ten exceeds.
pub const PLAUSIBLE_Z: f64 = 1.281_551_565_544_600_4;
