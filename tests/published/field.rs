//! Simulated years against what has been measured in homes (published ranges, from memory).
//!
//! The field studies' own units were rated 2 to 3; today's best are rated higher than any of them. So the ranges
//! bind heaters with labels of that time, and today's are held to their own rating.
use rayon::prelude::*;
use tankful::core::candidates::{Candidate, CandidateId, Label, offered};
use tankful::core::case::{Case, Provenance};
use tankful::core::climate::mains::Mains;
use tankful::core::heater::{Sim, Source};
use tankful::core::label::calibration::calibrate;
use tankful::core::outcome::{CandidateOutcome, Outcome};
use tankful::core::pipeline::advise;
use tankful::core::room::{air::RoomAir, model::RoomModel};
use tankful::core::simulate::fixture::serve;
use tankful::core::units::{GALLON_M3, Unit, to_celsius};
use tankful::core::{calendar::DayOfYear, draws::DrawYear, draws::HouseholdUse};
use tankful::job::questions::{Id, Value};
use tankful::job::{answers::Answers, complete::complete};

/// Coefficient of performance over a year in measured homes.
const HOMES: std::ops::RangeInclusive<f64> = 1.5..=3.0;
/// The same of older units in cool basements of the north-east.
const COOL_BASEMENTS: std::ops::RangeInclusive<f64> = 1.6..=2.4;

/// A home with a heat pump of some factor in it.
fn home(place: &str, room: &str, adults: f64, children: f64, factor: f64) -> Case {
    let mut answers = Answers::new();
    let mut set = |id, value| answers.set(id, value, Provenance::Answered).expect("a plausible answer");
    set(Id::Place, Value::code(place));
    set(Id::RoomKind, Value::code(room));
    set(Id::Adults, Value::number(adults, Unit::One));
    set(Id::Children, Value::number(children, Unit::One));
    set(Id::HeaterKind, Value::code("heat_pump"));
    set(Id::HeaterFactor, Value::number(factor, Unit::One));
    set(Id::LabelScale, Value::code("uef"));
    complete(&answers)
}

fn efficiency(c: &CandidateOutcome) -> f64 {
    c.year.efficiency().expect("water was heated")
}

fn present(outcome: &Outcome) -> f64 {
    efficiency(outcome.of(CandidateId::Keep).expect("the present heater"))
}

#[test]
fn units_of_the_field_studies_lie_in_their_range() {
    let mut homes = Vec::new();
    for place in ["us-ma-boston", "us-me-portland", "us-wa-seattle", "us-tx-houston"] {
        for room in ["basement", "garage", "utility"] {
            for (adults, children) in [(1.0, 0.0), (2.0, 1.0), (2.0, 3.0)] {
                for factor in [2.3, 2.9] {
                    homes.push((place, room, adults, children, factor));
                }
            }
        }
    }
    let all: Vec<_> =
        homes.par_iter().map(|h| (h, present(&advise(&home(h.0, h.1, h.2, h.3, h.4))))).collect();
    let lowest = all.iter().map(|(_, cop)| *cop).fold(f64::MAX, f64::min);
    let highest = all.iter().map(|(_, cop)| *cop).fold(0.0, f64::max);
    println!("{} homes with units rated 2.3 to 2.9: yearly {lowest:.2} to {highest:.2}", all.len());
    for (home, cop) in all {
        assert!(HOMES.contains(&cop), "{home:?}: {cop}");
        let cool = home.1 == "basement" && ["us-ma-boston", "us-me-portland"].contains(&home.0);
        assert!(!cool || home.4 > 2.5 || COOL_BASEMENTS.contains(&cop), "{home:?}: {cop}");
    }
}

/// In a basement cooler than the test room, with a setpoint 5 °F below the test's and cold water as warm as the
/// test's, no unit does much better than its label; the plug-in kind, rated with few draws and so with much standby,
/// by a tenth.
#[test]
fn todays_units_do_no_better_than_their_labels_in_a_cool_basement() {
    let outcome = advise(&complete(&Answers::new()));
    let (mut sum, mut count) = (0.0, 0.0);
    for c in outcome.candidates.iter().filter(|c| c.candidate.is_heat_pump()) {
        let (yearly, rated) = (efficiency(c), c.candidate.label.uniform_energy_factor);
        println!("{}: {yearly:.2} in the year, rated {rated:.2}", c.candidate.id.code());
        let most = if c.candidate.id == CandidateId::PlugIn50 { 1.1 * rated } else { rated };
        assert!((*HOMES.start()..=most).contains(&yearly), "{:?}: {yearly}", c.candidate.id);
        sum += yearly;
        count += 1.0;
    }
    // "About 3.0" is the upper end; units rated 3 to 3.55 may pass it by a tenth on the mean.
    assert!(sum / count < 1.1 * HOMES.end(), "{}", sum / count);
}

/// Elements stand by for high demand (common practice, no source): in the two hours before one comes on more than 25 gal
/// of hot water have been drawn, on the mean (two long showers), and the larger the tank, the rarer they come on.
///
/// They take 25, 17, 9 and 3 % of the yearly electricity of 40, 50, 65 and 80 gal for three people at 120 °F, which
/// looks like much beside "only in high demand". It is the demand: with baths of the default 35 gal left out it
/// is 17, 9, 4 and 1 %. Layers do not matter (48 give the same), nor does the inlet's stirring (0.02 to 0.30: a point);
/// a threshold of 20 K in the place of 12 takes it to 17, 10, 3 and 0 %, at twice the time of lukewarm water. And
/// the yearly coefficients of performance are at the upper end of the measured range as it is.
#[test]
fn elements_come_on_in_high_demand_only() {
    let case = complete(&Answers::new());
    let of = |id: CandidateId| -> Candidate {
        offered::candidates(&case).into_iter().find(|c| c.id == id).expect("offered")
    };
    let mut last = usize::MAX;
    for id in
        [CandidateId::HeatPump40, CandidateId::HeatPump50, CandidateId::HeatPump65, CandidateId::HeatPump80]
    {
        let firings = firings(&case, &of(id).label);
        let drawn_gal = firings.iter().sum::<f64>() / GALLON_M3 / firings.len() as f64;
        println!(
            "{}: elements come on {} times a year, after {drawn_gal:.0} gal have been drawn in two hours",
            id.code(),
            firings.len()
        );
        assert!(drawn_gal > 25.0, "{id:?}: {drawn_gal}");
        assert!(firings.len() < last);
        last = firings.len();
    }
}

/// Hot water drawn in the two hours before, m³, for each time that an element comes on.
fn firings(case: &Case, label: &Label) -> Vec<f64> {
    let model = calibrate(label, to_celsius(case.heater.setpoint.value)).model;
    assert!(matches!(model.source, Source::HeatPump { backup: Some(_), .. }));
    let mains = Mains::from_outdoor(case.place.outdoor_mean.value, case.place.outdoor_range.value);
    let room = RoomModel::of(&case.room, &case.place, 0.0);
    let draws = DrawYear::generate(&HouseholdUse::of(&case.household), case.seed);
    let mut air = RoomAir::new(&room, 0.0, 0.0);
    let mut sim = Sim::new(&model);
    let (mut now_s, mut elements_j, mut on) = (0.0, 0.0, false);
    let mut recent: Vec<(f64, f64)> = Vec::new();
    let mut found = Vec::new();
    for day in DayOfYear::all() {
        air.at(day.index() as f64, 0.0);
        for draw in draws.day(day.index()) {
            while draw.start_s - now_s > 1e-6 {
                let step_s = f64::min(draw.start_s - now_s, 300.0);
                sim.advance(step_s, &mut air);
                now_s += step_s;
                let fires = sim.totals().elements_j > elements_j;
                elements_j = sim.totals().elements_j;
                if fires && !on {
                    recent.retain(|(at_s, _)| *at_s > now_s - 7_200.0);
                    found.push(recent.iter().map(|(_, m3)| m3).sum::<f64>());
                }
                on = fires;
            }
            let before_m3 = sim.totals().drawn_m3;
            serve(&mut sim, draw, to_celsius(mains.on(day)), 120.0, &mut air, |_, _| ());
            recent.push((draw.start_s, sim.totals().drawn_m3 - before_m3));
            now_s = draw.start_s + draw.duration_s();
        }
    }
    found
}
