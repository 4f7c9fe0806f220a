//! Which few questions to ask a householder, and what to measure on site.
//!
//! From the question list alone: open ones that a householder can answer, those asked at once first, then by
//! how much of the advice they move and whether the offer has settled them already.

use super::answers::Answers;
use super::offer::Offer;
use super::questions::{self, Affects, Id, Kind, Question, Section, Spread, Value, Who};
use crate::core::case::{Provenance, TariffKind};
use crate::core::units::Dimension;

/// How many to ask.
pub const USUAL: usize = 8;

/// The questions to ask by default, most telling first picked, in the order of the list.
pub fn suggest(answers: &Answers, offer: &Offer, most: usize) -> Vec<Id> {
    let mut picked: Vec<(u32, Id)> = Vec::new();
    for q in questions::all() {
        let weight = weight(q, answers, offer);
        if weight == 0 || answers.get(q.id).is_some() {
            continue;
        }
        // The first of equals stays first.
        picked.insert(picked.partition_point(|(before, _)| *before >= weight), (weight, q.id));
        picked.truncate(most);
    }
    questions::all().map(|q| q.id).filter(|id| picked.iter().any(|(_, p)| p == id)).collect()
}

/// What is worth measuring on site, most telling first: what the advice wants settled, then the rest by how much of
/// it they move; what somebody answered comes after what nobody knows. Without what is measured already.
pub fn to_measure(answers: &Answers, settle: &[Id]) -> Vec<Id> {
    let mut picked: Vec<(u32, Id)> = Vec::new();
    for q in questions::all().filter(|q| measurable(q) && q.who != Who::Installer && q.spread != Spread::None)
    {
        let known = match answers.get(q.id).map(|a| a.from) {
            Some(Provenance::Measured) => continue,
            Some(_) => 0,
            None => 20,
        };
        let wanted = settle.iter().position(|id| *id == q.id).map_or(0, |at| 100 - at.min(50) as u32);
        let on_site = if q.who == Who::OnSite { 2 } else { 0 };
        let weight = wanted + known + moves(q) + on_site;
        // The first of equals stays first.
        picked.insert(picked.partition_point(|(before, _)| *before >= weight), (weight, q.id));
    }
    picked.into_iter().map(|(_, id)| id).collect()
}

/// Whether a tape, a thermometer or a nameplate can tell; counts of people and prices are just known.
pub fn measurable(question: &Question) -> bool {
    let Kind::Number { us, .. } = question.kind else { return question.who == Who::OnSite };
    let known = matches!(
        us.dimension(),
        Dimension::Number
            | Dimension::Money
            | Dimension::EnergyPrice
            | Dimension::FuelPrice
            | Dimension::Years
    );
    !known || question.who == Who::OnSite
}

/// How much of the advice an answer moves.
fn moves(q: &Question) -> u32 {
    let one = |a: &Affects| match a {
        Affects::Fit => 4,
        Affects::Energy | Affects::Comfort => 2,
        Affects::Cost | Affects::Timing => 1,
    };
    q.affects.iter().map(one).sum()
}

/// How much an answer would tell; 0: do not ask.
fn weight(q: &Question, answers: &Answers, offer: &Offer) -> u32 {
    // Prices by the hour count for all or for nothing.
    let of_hours = matches!(q.id, Id::PricePeak | Id::PriceLow);
    let by_hour = answers.get(Id::Tariff).is_some_and(|a| a.value == Value::code(TariffKind::Time.code()));
    if of_hours && !by_hour {
        return 0;
    }
    let priced = !offer.heaters.is_empty() && matches!(q.id, Id::InstalledSame | Id::InstalledHeatPump);
    if q.who != Who::Householder || q.spread == Spread::None || priced {
        return 0;
    }
    let moves = moves(q);
    // Where somebody lives gives the climate and every price.
    let basis = if q.section == Section::Place { 4 } else { 0 };
    let open = u32::from(matches!(q.spread, Spread::AnyOption));
    if q.first || of_hours { 10 + moves + basis + open } else { moves }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::Unit;

    #[test]
    fn prices_by_the_hour_are_asked_of_those_who_pay_by_the_hour() {
        let prices = [Id::PricePeak, Id::PriceLow];
        let asked = |answers: &Answers| {
            let all = suggest(answers, &Offer::default(), USUAL);
            prices.map(|id| all.contains(&id))
        };
        let mut answers = Answers::new();
        let first: Vec<Id> = questions::all().filter(|q| q.first).map(|q| q.id).collect();
        for id in first {
            let stands = crate::job::resolved::Resolved::of(&answers).get(id).cloned().expect("a value");
            answers.set(id, stands.value, Provenance::Answered).expect("in range");
        }
        assert_eq!(asked(&answers), [false; 2], "there is one price");
        answers.set(Id::Tariff, Value::code("time"), Provenance::Answered).expect("an option");
        assert_eq!(asked(&answers), [true; 2]);
        answers
            .set(Id::PricePeak, Value::number(0.4, Unit::DollarPerKwh), Provenance::Answered)
            .expect("in range");
        assert_eq!(asked(&answers), [false, true]);
    }

    #[test]
    fn what_changes_the_answer_is_measured_first() {
        let mut answers = Answers::new();
        let all = to_measure(&answers, &[Id::ColdTap, Id::Headroom]);
        assert_eq!(all[..2], [Id::ColdTap, Id::Headroom]);
        let later = |id: Id, all: &[Id]| all.iter().position(|of| *of == id).expect("it is there");
        let before = later(Id::RoomVolume, &all);
        answers
            .set(Id::RoomVolume, Value::number(900.0, Unit::CubicFoot), Provenance::Answered)
            .expect("in range");
        answers.set(Id::ColdTap, Value::number(50.0, Unit::DegF), Provenance::Measured).expect("in range");
        let all = to_measure(&answers, &[Id::ColdTap, Id::Headroom]);
        assert_eq!(all[0], Id::Headroom, "the one measured is done with");
        assert!(!all.contains(&Id::ColdTap) && later(Id::RoomVolume, &all) > before);
        assert!(
            !all.contains(&Id::Adults) && !all.contains(&Id::InstalledHeatPump),
            "no tape can tell these"
        );
    }
}
