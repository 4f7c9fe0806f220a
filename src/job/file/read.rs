//! JSON to a case.

use super::error::{CaseError, Trouble, Wanted};
use super::near::nearest;
use super::node::Node;
use super::{CaseFile, LONGEST_NAME, MOST_BYTES, VERSION, bare_unit, units_of};
use crate::core::case::Provenance;
use crate::core::climate::places;
use crate::core::units::Unit;
use crate::job::form::short;
use crate::job::offer;
use crate::job::questions::{Id, Kind, Question, Value};

const FIELDS: [&str; 5] = ["tankful", "name", "seed", "answers", "offer"];
const PARTS: [&str; 3] = ["value", "unit", "from"];

/// Reads one case.
///
/// # Errors
/// Everything that is wrong with the record, each with its field. Nothing is passed over, and nothing of
/// a record with an error is used.
pub fn parse_case(text: &str) -> Result<CaseFile, Vec<CaseError>> {
    let whole = |trouble| vec![CaseError::new("", trouble)];
    if text.len() > MOST_BYTES {
        return Err(whole(Trouble::TooLong { most: MOST_BYTES }));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let node: Node = serde_json::from_str(text)
        .map_err(|e| whole(Trouble::NotJson { line: e.line(), column: e.column() }))?;
    let Node::Object(pairs) = node else {
        return Err(whole(wanted(&node, Wanted::Object)));
    };
    let mut reader = Reader { case: CaseFile::default(), errors: Vec::new() };
    reader.record(&pairs);
    if reader.errors.is_empty() { Ok(reader.case) } else { Err(reader.errors) }
}

fn wanted(given: &Node, wanted: Wanted) -> Trouble {
    Trouble::Wanted { given: given.shown(), wanted }
}

struct Reader {
    case: CaseFile,
    errors: Vec<CaseError>,
}

impl Reader {
    fn refuse(&mut self, field: &str, trouble: Trouble) {
        self.errors.push(CaseError::new(field, trouble));
    }

    /// Goes through pairs, refusing names that come twice; `known` handles one.
    fn each(&mut self, prefix: &str, pairs: &[(String, Node)], known: impl Fn(&mut Self, &str, &str, &Node)) {
        for (i, (name, node)) in pairs.iter().enumerate() {
            let field = format!("{prefix}{}", short(name));
            if pairs.iter().take(i).any(|(before, _)| before == name) {
                self.refuse(&field, Trouble::Twice);
            } else {
                known(self, &field, name, node);
            }
        }
    }

    fn record(&mut self, pairs: &[(String, Node)]) {
        if !pairs.iter().any(|(name, _)| name == "tankful") {
            self.refuse("tankful", Trouble::Missing);
        }
        self.each("", pairs, |r, field, name, node| match name {
            "tankful" if *node == Node::Whole(VERSION) => {}
            "tankful" => r.refuse(field, Trouble::Version { given: node.shown(), known: VERSION }),
            "name" => match node {
                Node::Text(text) if text.chars().count() <= LONGEST_NAME => r.case.name = Some(text.clone()),
                other => r.refuse(field, wanted(other, Wanted::Name)),
            },
            "seed" => match node {
                Node::Whole(seed) => r.case.seed = Some(*seed),
                other => r.refuse(field, wanted(other, Wanted::Seed)),
            },
            "answers" => match node {
                Node::Object(answers) => r.answers(answers),
                other => r.refuse(field, wanted(other, Wanted::Object)),
            },
            "offer" => r.offer(field, node),
            _ => r.unknown(field, name, FIELDS.into_iter()),
        });
    }

    fn offer(&mut self, field: &str, node: &Node) {
        let json = node.plain(field, &mut self.errors);
        self.case.offer = offer::read(field, &json, &mut self.errors);
        for (i, heater) in self.case.offer.heaters.iter().enumerate() {
            for figure in heater.wanting() {
                let field = format!("{field}.heaters[{i}].{}", figure.code());
                // Told of already when it was given and could not be read.
                if self.errors.iter().all(|e| e.field != field) {
                    self.errors.push(CaseError::new(field, Trouble::Missing));
                }
            }
        }
    }

    fn unknown<'a>(&mut self, field: &str, name: &str, names: impl Iterator<Item = &'a str>) {
        let near = nearest(name, names).map(str::to_owned);
        self.refuse(field, Trouble::Unknown { given: short(name), near });
    }

    fn answers(&mut self, pairs: &[(String, Node)]) {
        self.each("answers.", pairs, |r, field, name, node| match Id::from_code(name) {
            Some(id) => r.answer(field, id, node),
            None => r.unknown(field, name, Id::ALL.iter().map(|id| id.code())),
        });
    }

    fn answer(&mut self, field: &str, id: Id, node: &Node) {
        let before = self.errors.len();
        let (mut value, mut unit, mut from) = (Some(node), None, Provenance::Answered);
        if let Node::Object(parts) = node {
            value = None;
            // Names first, so that a name given twice is refused before its values are looked at.
            self.each(&format!("{field}."), parts, |r, part, name, _| {
                if !PARTS.contains(&name) {
                    r.unknown(part, name, PARTS.into_iter());
                }
            });
            for (name, part) in parts {
                match name.as_str() {
                    "value" => value = Some(part),
                    "unit" => unit = Some(part),
                    "from" => match self.provenance(field, part) {
                        Some(p) => from = p,
                        None => return,
                    },
                    _ => {}
                }
            }
        }
        if self.errors.len() > before {
            return;
        }
        let Some(value) = value else { return self.refuse(&format!("{field}.value"), Trouble::Missing) };
        let question = Question::get(id);
        let value = match question.kind {
            Kind::Number { .. } => self.number(field, question, value, unit),
            Kind::Choice(_) => self.code(field, value, unit),
            Kind::Place => self.code(field, value, unit).and_then(|value| self.place(field, value)),
        };
        if let Some(value) = value
            && let Err(refusal) = self.case.answers.set(id, value, from)
        {
            self.refuse(field, refusal.into());
        }
    }

    fn provenance(&mut self, field: &str, node: &Node) -> Option<Provenance> {
        match node {
            Node::Text(t) if t == "answered" => Some(Provenance::Answered),
            Node::Text(t) if t == "measured" => Some(Provenance::Measured),
            other => {
                let options = ["answered", "measured"].map(str::to_owned).to_vec();
                self.refuse(&format!("{field}.from"), Trouble::NotAnOption { given: other.shown(), options });
                None
            }
        }
    }

    fn number(
        &mut self,
        field: &str,
        question: &Question,
        value: &Node,
        unit: Option<&Node>,
    ) -> Option<Value> {
        let Some(number) = value.number() else {
            self.refuse(field, wanted(value, Wanted::Quantity));
            return None;
        };
        let unit = match unit {
            None => bare_unit(question).or_else(|| {
                self.refuse(field, Trouble::NeedsUnit { given: value.shown(), units: units_of(question) });
                None
            })?,
            Some(Node::Text(code)) => {
                match Unit::from_code(code).filter(|u| units_of(question).contains(u)) {
                    Some(unit) => unit,
                    None => {
                        let units = units_of(question);
                        self.refuse(
                            &format!("{field}.unit"),
                            Trouble::WrongUnit { given: short(code), units },
                        );
                        return None;
                    }
                }
            }
            Some(other) => {
                self.refuse(&format!("{field}.unit"), wanted(other, Wanted::Unit));
                return None;
            }
        };
        Some(Value::number(number, unit))
    }

    fn code(&mut self, field: &str, value: &Node, unit: Option<&Node>) -> Option<Value> {
        if unit.is_some() {
            self.refuse(
                &format!("{field}.unit"),
                Trouble::Unknown { given: String::from("unit"), near: None },
            );
            return None;
        }
        match value {
            Node::Text(code) => Some(Value::code(code)),
            other => {
                self.refuse(field, wanted(other, Wanted::Code));
                None
            }
        }
    }

    /// A listed place; the one that may have been meant when the code is not on the list.
    fn place(&mut self, field: &str, value: Value) -> Option<Value> {
        let Value::Code(code) = &value else { return Some(value) };
        if places::by_id(code).is_some() {
            return Some(value);
        }
        self.unknown(field, code, places::all().map(|p| p.id));
        None
    }
}
