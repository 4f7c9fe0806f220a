//! An offer on its way to advice.

use crate::any::{self, gal};
use proptest::prelude::*;
use tankful::core::candidates::CandidateId;
use tankful::core::candidates::offered::{candidates, same_again};
use tankful::core::case::{HeaterKind, Provenance};
use tankful::core::outcome::Outcome;
use tankful::core::pipeline::advise;
use tankful::core::units::{Quantity, Unit};
use tankful::job::answers::Answers;
use tankful::job::complete::complete_with;
use tankful::job::offer::{AdderKind, Figure, Heater, Offer};
use tankful::job::questions::{Id, Value};

fn heater(kind: HeaterKind, name: &str, volume: f64, factor: f64, price: Option<f64>) -> Heater {
    let mut h = Heater::new(kind);
    h.call(name);
    let dollars = price.map(|p| Quantity::new(p, Unit::Dollar));
    for (figure, value) in [
        (Figure::Volume, Some(gal(volume))),
        (Figure::Factor, Some(Quantity::new(factor, Unit::One))),
        (Figure::Price, dollars),
    ] {
        h.set(figure, value).expect("within the range");
    }
    h
}

fn ids(answers: &Answers, offer: &Offer) -> Vec<CandidateId> {
    candidates(&complete_with(answers, offer)).iter().map(|c| c.id).collect()
}

fn says(id: Id, code: &str) -> Answers {
    let mut answers = Answers::new();
    answers.set(id, Value::code(code), Provenance::Answered).expect("an option");
    answers
}

#[test]
fn offered_heaters_stand_in_for_the_classes_of_their_kind() {
    use CandidateId::{ElectricTank, GasTank, HeatPump40, HeatPump80, Keep, Offer1, Offer2, PlugIn50};
    let pump = || heater(HeaterKind::HeatPump, "Pump", 50.0, 3.5, None);
    let tank = || heater(HeaterKind::Electric, "Tank", 50.0, 0.93, None);
    let of = |heaters| Offer { heaters, ..Offer::default() };
    let electric = Answers::new();
    assert_eq!(ids(&electric, &of(vec![pump()])), [Keep, ElectricTank, Offer1]);
    assert_eq!(ids(&electric, &of(vec![pump(), tank()])), [Keep, Offer2, Offer1]);
    let with_tank = ids(&electric, &of(vec![tank()]));
    assert!(
        with_tank.starts_with(&[Keep, Offer1, HeatPump40]) && with_tank.ends_with(&[HeatPump80, PlugIn50])
    );
    let gas = says(Id::HeaterKind, "gas");
    assert_eq!(ids(&gas, &of(vec![pump()])), [Keep, GasTank, Offer1, ElectricTank]);
    // A heater that lacks a figure nothing can be computed without waits, and the others keep their place.
    assert_eq!(
        ids(&electric, &of(vec![Heater::new(HeaterKind::HeatPump), pump()])),
        [Keep, ElectricTank, Offer2]
    );
    // Whatever is offered is compared, also another fuel.
    let propane = heater(HeaterKind::Propane, "", 40.0, 0.6, None);
    assert!(ids(&electric, &of(vec![propane])).contains(&Offer1));
}

#[test]
fn the_same_again_is_the_nearest_in_volume() {
    let offer = Offer {
        heaters: [40.0, 52.0, 80.0].map(|v| heater(HeaterKind::HeatPump, "", v, 3.5, None)).to_vec(),
        ..Offer::default()
    };
    let case = complete_with(&says(Id::HeaterKind, "heat_pump"), &offer);
    assert_eq!(same_again(&case), CandidateId::Offer2);
}

fn upfront(outcome: &Outcome, id: CandidateId) -> f64 {
    outcome.of(id).expect("simulated").cost.upfront
}

/// By hand: installed price and labour and what belongs to every job; and the work a finding asks for at
/// the offer's price.
#[test]
fn the_price_is_the_offers() {
    let mut answers = says(Id::DrainKind, "none");
    answers.set(Id::Breaker, Value::number(30.0, Unit::Ampere), Provenance::Measured).expect("in range");
    let mut offer = Offer {
        heaters: vec![heater(HeaterKind::HeatPump, "<b>{ $x }</b>", 50.0, 3.5, Some(4_000.0))],
        labour: 300.0,
        ..Offer::default()
    };
    for (kind, price) in
        [(AdderKind::Permit, 85.0), (AdderKind::CondensatePump, 222.0), (AdderKind::NewCircuit, 999.0)]
    {
        offer.price_adder(kind, "", price).expect("a price");
    }
    let case = complete_with(&answers, &offer);
    let outcome = advise(&case);
    let rough: f64 =
        outcome.of(CandidateId::Offer1).expect("simulated").findings.iter().map(|f| f.work_cost()).sum();
    assert!(rough >= 222.0, "the pump is asked for: {rough}");
    let other = rough - 222.0;
    assert_eq!(upfront(&outcome, CandidateId::Offer1), 4_000.0 + 300.0 + 85.0 + 222.0 + other);
    let findings = &outcome.of(CandidateId::Offer1).expect("simulated").findings;
    let possible: Vec<_> = case.offer.possible(findings).map(|a| a.kind).collect();
    assert_eq!(possible, [AdderKind::NewCircuit]);
    let words = tankful::text::Words::new(tankful::text::Language::ENGLISH, Default::default());
    let extras: Vec<_> = outcome.advice.extras.iter().map(|m| words.say(m)).collect();
    let keeps = outcome.advice.best == CandidateId::Keep;
    assert_eq!(extras, if keeps { vec![] } else { vec!["New circuit: $999"] }, "{:?}", outcome.advice.best);
    // Its name goes into messages as it is.
    assert_eq!(words.say(&outcome.name_of(CandidateId::Offer1)), "<b>{ $x }</b>");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    /// Whatever is offered becomes candidates that can be told apart, the present heater first.
    #[test]
    fn any_offer_makes_candidates(offer in any::offer()) {
        let case = complete_with(&Answers::new(), &offer);
        let all = candidates(&case);
        prop_assert_eq!(all[0].id, CandidateId::Keep);
        for (i, c) in all.iter().enumerate() {
            prop_assert!(all[..i].iter().all(|other| other.id != c.id));
            prop_assert!(c.label.first_hour_rating.value > 0.0 && c.body.height.value > 0.0);
        }
        for o in &case.offer.heaters {
            prop_assert!(all.iter().any(|c| c.id == o.candidate.id));
        }
    }
}
