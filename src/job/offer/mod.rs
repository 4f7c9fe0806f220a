//! An installer's offer: heaters by the figures of their labels with an installed price, prices of further
//! work, labour. It travels in files and links and is kept as a template.
//!
//! A heater is a name, a kind and a row of figures; every figure is an entry of one table
//! ([`Figure`]), so that the page, the forms and the links go through them alike.

mod complete;
mod figure;
mod json;
mod templates;

pub use crate::core::candidates::offer::AdderKind;
pub use figure::Figure;
pub use json::{read, to_json};
pub use templates::{MOST_TEMPLATES, Templates};

use super::file::{CaseError, Trouble, units_like};
use crate::core::case::HeaterKind;
use crate::core::units::{Quantity, Unit};

/// Most heaters of an offer.
pub const MOST_HEATERS: usize = 6;
/// Most priced pieces of further work.
pub const MOST_ADDERS: usize = 12;
/// Longest name of a heater, a piece of work or an offer, characters.
pub const LONGEST_NAME: usize = 60;
/// Highest price, dollars.
pub const MOST_DOLLARS: f64 = 100_000.0;

/// A heater as offered.
#[derive(Clone, Debug, PartialEq)]
pub struct Heater {
    /// What the installer calls it; may be empty.
    pub name: String,
    /// What heats the water.
    pub kind: HeaterKind,
    figures: [Option<Quantity>; Figure::ALL.len()],
}

impl Heater {
    /// A heater of which only the kind is known yet.
    pub fn new(kind: HeaterKind) -> Heater {
        Heater { name: String::new(), kind, figures: [None; Figure::ALL.len()] }
    }

    /// A figure, as it was written; `None` where the label is silent.
    pub fn get(&self, figure: Figure) -> Option<Quantity> {
        self.figures.get(figure as usize).copied().flatten()
    }

    /// Puts in a figure, or takes it away.
    ///
    /// # Errors
    /// Refuses what lies outside the figure's range or measures something else; the former figure stays.
    pub fn set(&mut self, figure: Figure, value: Option<Quantity>) -> Result<(), CaseError> {
        if let Some(value) = value {
            figure.check(value)?;
        }
        if let Some(place) = self.figures.get_mut(figure as usize) {
            *place = value;
        }
        Ok(())
    }

    /// Calls it by another name: trimmed, without control characters, cut to [`LONGEST_NAME`].
    pub fn call(&mut self, name: &str) {
        self.name = tidy(name, LONGEST_NAME);
    }

    /// Figures without which nothing can be computed, that are still wanting.
    pub fn wanting(&self) -> impl Iterator<Item = Figure> {
        Figure::ALL.into_iter().filter(|f| f.is_required() && self.get(*f).is_none())
    }
}

/// A priced piece of further work.
#[derive(Clone, Debug, PartialEq)]
pub struct Adder {
    /// What it is.
    pub kind: AdderKind,
    /// The installer's own name for it; may be empty, but for [`AdderKind::Own`].
    pub name: String,
    /// Price, dollars.
    pub price: f64,
    /// Part of every job, not only where a finding asks for it.
    pub always: bool,
}

/// An offer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Offer {
    /// What its owner calls it; as a template it is found by this.
    pub name: String,
    /// Its heaters, at most [`MOST_HEATERS`].
    pub heaters: Vec<Heater>,
    /// Its further work, at most [`MOST_ADDERS`].
    pub adders: Vec<Adder>,
    /// Labour added to every installed price, dollars.
    pub labour: f64,
}

impl Offer {
    /// True when nothing is offered, and it has no name either: then there is nothing to keep.
    pub fn is_empty(&self) -> bool {
        self.name.is_empty() && self.heaters.is_empty() && self.adders.is_empty() && self.labour == 0.0
    }

    /// Puts a price on a piece of work: 0 takes the piece away.
    ///
    /// # Errors
    /// Refuses a price outside 0 to [`MOST_DOLLARS`], and more pieces than [`MOST_ADDERS`].
    pub fn price_adder(&mut self, kind: AdderKind, name: &str, price: f64) -> Result<(), CaseError> {
        check_price("price", price)?;
        let name = tidy(name, LONGEST_NAME);
        let at =
            self.adders.iter().position(|a| a.kind == kind && (kind != AdderKind::Own || a.name == name));
        match at {
            Some(at) if price == 0.0 => {
                self.adders.remove(at);
            }
            Some(at) => {
                if let Some(adder) = self.adders.get_mut(at) {
                    (adder.price, adder.name) = (price, name);
                }
            }
            None if price == 0.0 => {}
            None if self.adders.len() >= MOST_ADDERS => {
                return Err(CaseError::new("adders", Trouble::TooMany { most: MOST_ADDERS }));
            }
            None => self.adders.push(Adder { kind, name, price, always: kind.usually_always() }),
        }
        Ok(())
    }
}

impl AdderKind {
    /// The kind with this code, if there is one.
    pub fn from_code(code: &str) -> Option<AdderKind> {
        AdderKind::ALL.into_iter().find(|kind| kind.code() == code)
    }

    /// Whether it usually belongs to every job; common practice, no source.
    pub const fn usually_always(self) -> bool {
        matches!(self, AdderKind::HaulAway | AdderKind::Permit)
    }
}

/// Whether a number is a price.
///
/// # Errors
/// Refuses what lies outside 0 to [`MOST_DOLLARS`].
pub fn check_price(field: &str, price: f64) -> Result<(), CaseError> {
    within(field, Quantity::new(price, Unit::Dollar), 0.0, MOST_DOLLARS)
}

/// Whether a number lies within limits given in its own unit.
fn within(field: &str, given: Quantity, low: f64, high: f64) -> Result<(), CaseError> {
    if given.value >= low && given.value <= high {
        return Ok(());
    }
    let (low, high) = (Quantity::new(low, given.unit), Quantity::new(high, given.unit));
    Err(CaseError::new(field, Trouble::OutOfRange { given, low, high }))
}

/// A name as it may be kept and shown: without control characters and marks that turn the writing
/// direction, runs of spaces as one, at most `most` characters.
pub fn tidy(text: &str, most: usize) -> String {
    let mut out = String::new();
    for word in text.split(|c: char| c.is_whitespace() || c.is_control()) {
        let word: String = word.chars().filter(|c| !turns(*c)).collect();
        if !word.is_empty() {
            if !out.is_empty() {
                out.push(' ');
            }
            out.push_str(&word);
        }
    }
    cut(&mut out, most);
    out.truncate(out.trim_end().len());
    out
}

/// The first `most` characters.
pub(super) fn cut(text: &mut String, most: usize) {
    if let Some((at, _)) = text.char_indices().nth(most) {
        text.truncate(at);
    }
}

/// Invisible marks that could make a name read as something else.
pub(super) const fn turns(c: char) -> bool {
    matches!(c, '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_outside_their_range_are_refused_and_the_former_stays() {
        let mut h = Heater::new(HeaterKind::HeatPump);
        h.set(Figure::Volume, Some(Quantity::new(50.0, Unit::Gallon))).expect("in range");
        h.set(Figure::Volume, Some(Quantity::new(190.0, Unit::Litre))).expect("the other system's unit");
        for bad in [(5_000.0, Unit::Gallon), (f64::NAN, Unit::Gallon), (50.0, Unit::Pound)] {
            assert!(h.set(Figure::Volume, Some(Quantity::new(bad.0, bad.1))).is_err(), "{bad:?}");
        }
        assert_eq!(h.get(Figure::Volume), Some(Quantity::new(190.0, Unit::Litre)));
        assert_eq!(h.wanting().collect::<Vec<_>>(), [Figure::Factor]);
    }

    #[test]
    fn prices_are_put_on_and_taken_off() {
        let mut offer = Offer::default();
        offer.price_adder(AdderKind::Permit, "", 90.0).expect("a price");
        offer.price_adder(AdderKind::Own, "Attic hoist", 120.0).expect("a price");
        offer.price_adder(AdderKind::Own, "Second hoist", 60.0).expect("a price");
        offer.price_adder(AdderKind::Permit, "", 95.0).expect("a price");
        assert!(offer.price_adder(AdderKind::Permit, "", -1.0).is_err());
        assert!(offer.price_adder(AdderKind::Permit, "", f64::INFINITY).is_err());
        assert_eq!(offer.adders.len(), 3);
        assert!(offer.adders[0].always && offer.adders[0].price == 95.0 && !offer.adders[1].always);
        offer.price_adder(AdderKind::Permit, "", 0.0).expect("taken off");
        assert_eq!(offer.adders.len(), 2);
    }

    #[test]
    fn names_carry_no_tricks() {
        assert_eq!(tidy("  Tank\n\u{202e}\"<b>&{ $x }\u{0}\t 50 ", 60), "Tank \"<b>&{ $x } 50");
        assert_eq!(tidy("äöü-long", 3), "äöü");
    }
}
