//! What the questions that make another house could be answered with, where nobody has: kind of heater, room, place.
//!
//! Every kind of heater and of room is plausible. Of places a handful stands for all: those at shares of the listed ones by
//! mean outdoor temperature, from hot to very cold, and by what electricity costs there, since a place sets the prices too.

use super::questions::{Id, Kind, Question};
use super::resolved::Resolved;
use crate::core::case::Known;
use crate::core::climate::places::{self, Place};
use crate::core::climate::prices;
use crate::core::futures::unknowns::Held;
use std::borrow::Cow;

/// The questions, in the order they are tried.
const HOUSES: [Id; 3] = [Id::HeaterKind, Id::RoomKind, Id::Place];
/// Shares of the listed places by outdoor temperature, and by price of electricity. One in ten lies beyond the plausible range of
/// any other question; of climates, of which the list has fewer at its ends than in its middle, one in twenty.
const BY_CLIMATE: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];
const BY_PRICE: [f64; 2] = [0.1, 0.9];

/// The open ones, with what else they could be answered.
pub(super) fn held(resolved: &Resolved) -> Vec<Held> {
    let open = |id: &Id| resolved.get(*id).is_some_and(Known::is_assumed);
    HOUSES
        .into_iter()
        .filter(open)
        .map(|id| {
            let stands = resolved.code(id).value;
            let mut options: Vec<Cow<'static, str>> = match Question::get(id).kind {
                Kind::Choice(options) => options.iter().map(|o| Cow::Borrowed(*o)).collect(),
                Kind::Place => places_from(stands).into_iter().map(|p| Cow::Borrowed(p.id)).collect(),
                Kind::Number { .. } => Vec::new(),
            };
            options.retain(|option| option != stands);
            Held { code: Cow::Borrowed(id.code()), options }
        })
        .collect()
}

/// Places that stand for all, those first whose outdoor mean is nearest to that of the one that stands: the likeliest to be
/// meant by somebody who has not said.
fn places_from(stands: &str) -> Vec<&'static Place> {
    let mean_c = places::by_id(stands).unwrap_or_else(places::typical).annual_mean_c;
    let climates = BY_CLIMATE.into_iter().map(|share| places::at_share(share, |p| p.annual_mean_c));
    let prices =
        BY_PRICE.into_iter().map(|share| places::at_share(share, |p| prices::of(p).electricity_per_kwh));
    let mut all: Vec<&'static Place> = Vec::new();
    for place in climates.chain(prices) {
        if all.iter().all(|known| known.id != place.id) {
            all.push(place);
        }
    }
    let off = |p: &Place| (p.annual_mean_c - mean_c).abs();
    all.sort_by(|a, b| off(a).total_cmp(&off(b)));
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::case::Provenance;
    use crate::job::answers::Answers;
    use crate::job::questions::Value;

    #[test]
    fn what_is_answered_is_not_held() {
        let mut answers = Answers::new();
        let codes = |answers: &Answers| {
            held(&Resolved::of(answers)).into_iter().map(|h| h.code.into_owned()).collect::<Vec<_>>()
        };
        assert_eq!(codes(&answers), ["heater_kind", "room_kind", "place"]);
        for (id, code, left) in [
            (Id::RoomKind, "attic", &["heater_kind", "place"][..]),
            (Id::Place, "us-fl-miami", &["heater_kind"]),
            (Id::HeaterKind, "electric", &[]),
        ] {
            answers.set(id, Value::code(code), Provenance::Answered).expect("an option");
            assert_eq!(codes(&answers), left);
        }
    }

    #[test]
    fn every_option_can_be_answered_and_none_is_what_stands() {
        let resolved = Resolved::of(&Answers::new());
        for question in held(&resolved) {
            let id = Id::from_code(&question.code).expect("a question");
            assert!(question.options.len() >= 4, "{question:?}");
            for (at, option) in question.options.iter().enumerate() {
                assert!(!question.options[..at].contains(option), "{option} twice");
                assert_ne!(option, resolved.code(id).value);
                assert!(
                    Answers::new().set(id, Value::code(option), Provenance::Answered).is_ok(),
                    "{option}"
                );
            }
        }
    }

    /// From hot to very cold, from cheap to dear, and nearest first.
    #[test]
    fn places_span_climates_and_prices() {
        let all = places_from("us-pa-philadelphia");
        println!("{:?}", all.iter().map(|p| p.id).collect::<Vec<_>>());
        assert!(all.len() >= 5 && all.len() <= BY_CLIMATE.len() + BY_PRICE.len());
        let means: Vec<f64> = all.iter().map(|p| p.annual_mean_c).collect();
        assert!(means.iter().any(|m| *m > 20.0) && means.iter().any(|m| *m < 4.0), "{means:?}");
        let here = places::typical().annual_mean_c;
        assert!(means.windows(2).all(|w| (w[0] - here).abs() <= (w[1] - here).abs()), "{means:?}");
        let price = |p: &Place| prices::of(p).electricity_per_kwh;
        let cheaper = places::all().filter(|p| all.iter().all(|a| price(p) < price(a))).count();
        let dearer = places::all().filter(|p| all.iter().all(|a| price(p) > price(a))).count();
        let beyond = places::all().count() / 8;
        assert!(cheaper <= beyond && dearer <= beyond, "{cheaper} {dearer}");
    }
}
