//! JSON read without losing anything: unlike a map, it keeps names that are given twice, so that they
//! can be refused.

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use std::fmt;

/// A JSON value.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Node {
    Null,
    Bool,
    /// A whole number that fits a seed.
    Whole(u64),
    Number(f64),
    Text(String),
    /// A list; what is in it was read over.
    List,
    /// Names and values in the order given.
    Object(Vec<(String, Node)>),
}

impl Node {
    /// What it is, for an error: short, and never the whole of a long text.
    pub(super) fn shown(&self) -> String {
        match self {
            Node::Null => String::from("null"),
            Node::Bool => String::from("true/false"),
            Node::Whole(n) => n.to_string(),
            Node::Number(x) => x.to_string(),
            Node::Text(t) => format!("\"{}\"", short(t)),
            Node::List => String::from("[…]"),
            Node::Object(_) => String::from("{…}"),
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

/// At most 40 characters of a text.
pub(super) fn short(text: &str) -> String {
    let mut cut: String = text.chars().take(40).collect();
    if cut.len() < text.len() {
        cut.push('…');
    }
    cut
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
            fn visit_bool<E>(self, _: bool) -> Result<Node, E> {
                Ok(Node::Bool)
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
                while list.next_element::<Node>()?.is_some() {}
                Ok(Node::List)
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
