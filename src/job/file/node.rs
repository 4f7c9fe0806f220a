//! JSON read without losing anything: unlike a map, it keeps names that are given twice, so that they
//! can be refused.

use super::error::{CaseError, Trouble};
use crate::job::form::{number, short};
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value as Json};
use std::fmt;

/// A JSON value.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Node {
    Null,
    Bool(bool),
    /// A whole number that fits a seed.
    Whole(u64),
    Number(f64),
    Text(String),
    List(Vec<Node>),
    /// Names and values in the order given.
    Object(Vec<(String, Node)>),
}

impl Node {
    /// What it is, for an error: short, and never the whole of a long text.
    pub(super) fn shown(&self) -> String {
        match self {
            Node::Null => String::from("null"),
            Node::Bool(_) => String::from("true/false"),
            Node::Whole(n) => n.to_string(),
            Node::Number(x) => x.to_string(),
            Node::Text(t) => format!("\"{}\"", short(t)),
            Node::List(_) => String::from("[…]"),
            Node::Object(_) => String::from("{…}"),
        }
    }

    /// The same value in the usual form; names given twice are told of.
    pub(super) fn plain(&self, field: &str, twice: &mut Vec<CaseError>) -> Json {
        match self {
            Node::Null => Json::Null,
            Node::Bool(yes) => (*yes).into(),
            Node::Whole(n) => (*n).into(),
            Node::Number(x) => number(*x),
            Node::Text(t) => t.as_str().into(),
            Node::List(entries) => {
                entries.iter().enumerate().map(|(i, e)| e.plain(&format!("{field}[{i}]"), twice)).collect()
            }
            Node::Object(pairs) => {
                let mut all = Map::new();
                for (name, node) in pairs {
                    let field = format!("{field}.{}", short(name));
                    let plain = node.plain(&field, twice);
                    if all.insert(name.clone(), plain).is_some() {
                        twice.push(CaseError::new(field, Trouble::Twice));
                    }
                }
                all.into()
            }
        }
    }

    /// The number, if it is one.
    pub(super) fn number(&self) -> Option<f64> {
        match self {
            // Whole numbers beyond 2^53 are far outside every question's range: rounding them is harmless.
            Node::Whole(n) => Some(*n as f64),
            Node::Number(x) => Some(*x),
            _ => None,
        }
    }
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;

        impl<'de> Visitor<'de> for Reader {
            type Value = Node;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("JSON")
            }
            fn visit_unit<E>(self) -> Result<Node, E> {
                Ok(Node::Null)
            }
            fn visit_bool<E>(self, yes: bool) -> Result<Node, E> {
                Ok(Node::Bool(yes))
            }
            fn visit_u64<E>(self, n: u64) -> Result<Node, E> {
                Ok(Node::Whole(n))
            }
            fn visit_i64<E>(self, n: i64) -> Result<Node, E> {
                Ok(Node::Number(n as f64))
            }
            fn visit_f64<E>(self, x: f64) -> Result<Node, E> {
                Ok(Node::Number(x))
            }
            fn visit_str<E>(self, t: &str) -> Result<Node, E> {
                Ok(Node::Text(t.to_owned()))
            }
            fn visit_string<E>(self, t: String) -> Result<Node, E> {
                Ok(Node::Text(t))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Node, A::Error> {
                let mut entries = Vec::new();
                while let Some(entry) = list.next_element()? {
                    entries.push(entry);
                }
                Ok(Node::List(entries))
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Node, A::Error> {
                let mut pairs = Vec::new();
                while let Some(pair) = map.next_entry::<String, Node>()? {
                    pairs.push(pair);
                }
                Ok(Node::Object(pairs))
            }
        }

        deserializer.deserialize_any(Reader)
    }
}
