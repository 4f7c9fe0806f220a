//! Questions and their values in words.

use super::words::Words;
use crate::core::case::Provenance;
use crate::core::climate::places::{self, Place};
use crate::core::outcome::Fit;
use crate::job::questions::{Id, Value};

impl Words {
    /// A question's words.
    pub fn question(&self, id: Id) -> String {
        self.key(&id.key())
    }

    /// An option of a question.
    pub fn option(&self, id: Id, code: &str) -> String {
        self.key(&format!("{}-{}", id.key(), code.replace('_', "-")))
    }

    /// A listed place with its state or province.
    pub fn place(&self, place: &Place) -> String {
        format!("{}, {}", place.name, place.region.name())
    }

    /// Where a value came from.
    pub fn provenance(&self, from: Provenance) -> String {
        self.key(match from {
            Provenance::Assumed => "from-assumed",
            Provenance::Answered => "from-answered",
            Provenance::Measured => "from-measured",
        })
    }

    /// How a check came out.
    pub fn fit(&self, fit: Fit) -> String {
        self.key(match fit {
            Fit::Fits => "fit-fits",
            Fit::FitsWithWork => "fit-fits-with-work",
            Fit::MeasureFirst => "fit-measure-first",
            Fit::DoesNotFit => "fit-does-not-fit",
        })
    }

    /// A check's name.
    pub fn check(&self, code: &str) -> String {
        self.key(&format!("check-{}", code.replace('_', "-")))
    }

    /// A value of a question: an option's words, a place's name, or a number in the reader's units.
    pub fn value(&self, id: Id, value: &Value) -> String {
        match value {
            Value::Number(q) => self.quantity(*q),
            Value::Code(code) if id == Id::Place => {
                places::by_id(code).map_or_else(|| code.clone(), |p| self.place(p))
            }
            Value::Code(code) => self.option(id, code),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::{Unit, UnitSystem};
    use crate::text::Language;

    #[test]
    fn values_of_every_kind() {
        let words = Words::new(Language::ENGLISH, UnitSystem::Si);
        assert_eq!(words.value(Id::HeaterKind, &Value::code("heat_pump")), "Heat pump");
        assert_eq!(words.value(Id::Setpoint, &Value::number(120.0, Unit::DegF)), "49\u{a0}°C");
        assert_eq!(words.value(Id::Place, &Value::code("us-pa-philadelphia")), "Philadelphia, Pennsylvania");
    }
}
