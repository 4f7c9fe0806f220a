//! Offers kept to start the next one from.

use super::{CaseError, Offer, read, to_json};
use crate::job::form::{self, put};
use serde_json::{Map, Value as Json};

/// Version of the kept form.
const VERSION: u64 = 1;
/// Most templates kept.
pub const MOST_TEMPLATES: usize = 50;

/// The templates, in the order kept; each offer's name is its own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Templates {
    /// Counts changes; the higher one is the newer work.
    pub revision: u64,
    /// The offers.
    pub offers: Vec<Offer>,
}

impl Templates {
    /// Keeps an offer under its name, in place of the one that had it. False when there is no room.
    pub fn keep(&mut self, offer: Offer) -> bool {
        self.revision += 1;
        if let Some(place) = self.offers.iter_mut().find(|o| o.name == offer.name) {
            *place = offer;
            return true;
        }
        let room = self.offers.len() < MOST_TEMPLATES;
        if room {
            self.offers.push(offer);
        }
        room
    }

    /// Forgets the offer of this name.
    pub fn forget(&mut self, name: &str) {
        self.revision += 1;
        self.offers.retain(|o| o.name != name);
    }

    /// As text to keep.
    pub fn to_text(&self) -> String {
        let mut all = Map::new();
        put(&mut all, "tankful_offers", VERSION.into());
        put(&mut all, "revision", self.revision.into());
        put(&mut all, "offers", self.offers.iter().map(to_json).collect());
        Json::from(all).to_string()
    }

    /// Whether a newer program wrote it: leave it as it is.
    pub fn is_newer(text: &str) -> bool {
        let json: Json = serde_json::from_str(text).unwrap_or_default();
        json.get("tankful_offers").and_then(Json::as_u64).is_some_and(|version| version > VERSION)
    }

    /// Reads a kept text: what could be read, and what could not. `None`: it is none of ours, or of
    /// another version.
    pub fn read(text: &str) -> Option<(Templates, Vec<CaseError>)> {
        let json: Json = serde_json::from_str(text).ok()?;
        if json.get("tankful_offers").and_then(Json::as_u64) != Some(VERSION) {
            return None;
        }
        let mut refused = Vec::new();
        let revision = json.get("revision").and_then(Json::as_u64).unwrap_or(0);
        let offers = json.get("offers").map_or_else(Vec::new, |list| {
            form::list("offers", list, MOST_TEMPLATES, &mut refused, |field, json, refused| {
                Some(read(field, json, refused))
            })
        });
        Some((Templates { revision, offers }, refused))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn templates_are_kept_by_name_and_come_back() {
        let named = |name: &str, labour| Offer { name: name.into(), labour, ..Offer::default() };
        let mut all = Templates::default();
        assert!(all.keep(named("A", 1.0)) && all.keep(named("B", 2.0)) && all.keep(named("A", 3.0)));
        assert_eq!(all.offers.iter().map(|o| o.labour).collect::<Vec<_>>(), [3.0, 2.0]);
        assert_eq!(Templates::read(&all.to_text()), Some((all.clone(), Vec::new())));
        all.forget("A");
        assert_eq!((all.offers.len(), all.revision), (1, 4));
        for i in 0..MOST_TEMPLATES - 1 {
            assert!(all.keep(named(&i.to_string(), 0.0)));
        }
        assert!(!all.keep(named("one too many", 0.0)));
    }

    #[test]
    fn junk_is_none_of_ours() {
        for text in ["", "[]", "{}", "{\"tankful_offers\":2}", "nonsense"] {
            assert_eq!(Templates::read(text), None, "{text}");
            assert_eq!(Templates::is_newer(text), text.ends_with("2}"), "{text}");
        }
        let (read, refused) = Templates::read("{\"tankful_offers\":1,\"offers\":[3]}").expect("ours");
        assert_eq!((read.offers.len(), refused.len()), (1, 1));
    }
}
