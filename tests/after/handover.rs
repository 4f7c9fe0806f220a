//! The page for the household and the schedule of care.

use super::{EVENING, NORTH, SOUTH};
use tankful::core::after::Date;
use tankful::core::after::care::{Hands, Task, schedule};
use tankful::core::after::handover::{Topic, handover};
use tankful::core::candidates::CandidateId;
use tankful::core::message::Message;
use tankful::core::units::UnitSystem;
use tankful::text::{Language, Words};

fn day(text: &str) -> Date {
    Date::parse(text).expect("a day")
}

fn ids(all: &[Message]) -> Vec<&str> {
    all.iter().map(|m| m.id.as_ref()).collect()
}

/// The months add up to the simulated year, and their money to the year's energy cost.
#[test]
fn months_are_the_simulated_year() {
    for (house, id) in [
        (&*NORTH, CandidateId::HeatPump50),
        (&*SOUTH, CandidateId::GasTank),
        (&*EVENING, CandidateId::ElectricTank),
    ] {
        let (fitted, outcome) = (house.fitted(id), house.outcome.of(id).expect("there"));
        let year = handover(&fitted, day("2026-11-25")).year();
        assert!((year.electricity_kwh - outcome.year.electricity_year_kwh()).abs() < 1e-9);
        assert!((year.fuel_kwh - outcome.year.fuel_year_kwh()).abs() < 1e-9);
        assert!((year.money / outcome.cost.energy_year - 1.0).abs() < 1e-9);
    }
}

/// Where the peak is in winter alone, a kilowatt-hour in July costs what it costs at the other hours.
#[test]
fn a_month_pays_its_own_hours() {
    let fitted = EVENING.fitted(CandidateId::HeatPump50);
    let months = handover(&fitted, day("2026-11-25")).months;
    let price = |m: usize| months[m].money / months[m].electricity_kwh;
    assert!((price(6) - 0.11).abs() < 1e-9 && (price(9) - 0.11).abs() < 1e-9, "{}", price(6));
    for winter in [0, 1, 2, 10, 11] {
        assert!(price(winter) > 0.13 && price(winter) < 0.55, "{winter}: {}", price(winter));
    }
}

#[test]
fn hard_water_and_pumps_bring_their_care() {
    let north = schedule(&NORTH.fitted(CandidateId::HeatPump50), day("2026-11-30"));
    let due = |task| north.iter().find(|d| d.task == task);
    assert_eq!(due(Task::Flush).map(|d| d.every_months), Some(Some(6)), "14 grains are very hard");
    assert_eq!(due(Task::Filter).map(|d| d.first), Some(day("2027-02-28")));
    assert!(due(Task::CondensatePump).is_some(), "no drain: a pump goes in");
    assert!(due(Task::Burner).is_none() && due(Task::MixingValve).is_none());
    assert!(north.windows(2).all(|w| w[0].first <= w[1].first));
    let relief = due(Task::Relief).expect("every tank has one");
    assert_eq!(relief.hands, Hands::Plumber);
    let south = schedule(&SOUTH.fitted(CandidateId::GasTank), day("2026-11-30"));
    let due = |task| south.iter().find(|d| d.task == task);
    assert_eq!(due(Task::Flush).map(|d| d.every_months), Some(Some(24)), "2 grains are soft");
    assert_eq!(due(Task::Burner).map(|d| d.hands), Some(Hands::Fuel));
    assert!(
        due(Task::Filter).is_none() && due(Task::MixingValve).is_some() && due(Task::Expansion).is_some()
    );
}

#[test]
fn the_page_fits_the_heater() {
    let topic = |house: &super::House, id, topic| {
        let page = handover(&house.fitted(id), day("2026-11-25"));
        let (_, says) = page.topics.into_iter().find(|(t, _)| *t == topic).expect("every topic");
        says
    };
    let pump = topic(&NORTH, CandidateId::HeatPump50, Topic::Normal);
    assert!(
        ids(&pump).contains(&"handover-normal-drips-pump") && ids(&pump).contains(&"handover-normal-cool")
    );
    let gas = topic(&SOUTH, CandidateId::GasTank, Topic::Call);
    assert!(ids(&gas).contains(&"handover-call-gas") && !ids(&gas).contains(&"handover-call-noise"));
    let plug = topic(&NORTH, CandidateId::PlugIn50, Topic::PowerCut);
    assert!(ids(&plug).contains(&"handover-power-plug-in"));
    // 140 °F with a valve: says so; the usual setting warns of turning it up.
    let hot = topic(&SOUTH, CandidateId::HeatPump65, Topic::Cautions);
    assert_eq!(ids(&hot)[0], "handover-caution-hot-valve");
}

/// Every sentence has its words and figures, for every kind of heater; none shows a missing key.
#[test]
fn everything_has_words() {
    let words = Words::new(Language::ENGLISH, UnitSystem::Us);
    for house in [&*NORTH, &*SOUTH] {
        for c in &house.outcome.candidates {
            let page = handover(&house.fitted(c.candidate.id), day("2026-11-25"));
            let says = page.topics.iter().flat_map(|(_, says)| says).chain([&page.installed]);
            for m in says.chain(page.care.iter().map(|d| &d.how)) {
                assert_eq!(words.faults(m), Vec::<String>::new());
            }
            assert!(page.topics.iter().all(|(_, says)| !says.is_empty()));
        }
    }
}
