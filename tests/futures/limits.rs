//! Limits: nothing open gives the advice's own figures, answers narrow the bands, and nothing depends on how the work is
//! shared out.

use crate::houses::{self, fitted};
use tankful::core::case::Provenance;
use tankful::core::futures::stages::STAGES;
use tankful::core::futures::study::Position;
use tankful::core::futures::unknowns::Unknowns;
use tankful::core::futures::{Changes, Futures, Lives, Sensitivity, Study, Weighing, Wishes};
use tankful::core::outcome::Outcome;
use tankful::core::pipeline::advise;
use tankful::core::units::Unit;
use tankful::job::answers::Answers;
use tankful::job::offer::Offer;
use tankful::job::open::Open;
use tankful::job::questions::{Id, Value};
use tankful::job::resolved::Resolved;

/// Households simulated: as many as all futures are drawn on at first, and more.
const FEW: u32 = STAGES[2].households;
const MORE: u32 = 128;

fn told(open: &Open, wishes: Wishes, years: u32) -> (Outcome, Futures, Option<Changes>) {
    let outcome = advise(&open.case(&[]));
    let study = Study::new(open, wishes);
    let fitted = fitted(&study, &outcome, years);
    let drawn = study.draw(&fitted, &outcome, 0, study.wishes().futures);
    let changes = study.changes(&fitted, &outcome);
    (outcome.clone(), study.summary(&fitted, &outcome, &drawn, true), changes)
}

/// Without uncertainty: the advice's own energy, payments and net present cost, to the bit.
#[test]
fn what_stands_comes_out_as_the_advice_has_it() {
    for open in [
        houses::silent("us-ma-boston", "basement", "electric"),
        houses::silent("us-tx-houston", "garage", "gas"),
        houses::settled("us-mn-minneapolis", "oil"),
        houses::settled("us-fl-miami", "heat_pump"),
        Open::of(&houses::hourly("us-ma-boston", "electric", "year"), &Offer::default()),
        Open::of(&houses::hourly("us-tx-houston", "gas", "summer"), &Offer::default()),
        houses::all_settled(houses::hourly("us-mn-minneapolis", "electric", "winter")),
    ] {
        let outcome = advise(&open.case(&[]));
        let study = Study::new(&open, Wishes::default());
        let fitted = fitted(&study, &outcome, 4);
        let cells = study.cells(&fitted, &outcome, &Position { questions: Vec::new(), ahead: None });
        for (cell, c) in cells.iter().zip(&outcome.candidates) {
            assert_eq!(cell.energy_kwh, c.year.electricity_year_kwh() + c.year.fuel_year_kwh());
            // The two add the same payments in another order: rounding.
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * (1.0 + b.abs());
            assert!(near(cell.net_present_cost, c.cost.net_present_cost), "{:?}", c.candidate.id);
            assert!(near(cell.energy_year, c.cost.energy_year + c.cost.interaction_year));
            assert!(cell.spent.iter().zip(&c.cost.spent).all(|(a, b)| near(*a, *b)));
            assert_eq!(cell.payback_years.is_some(), c.cost.payback_years.is_some());
        }
    }
}

/// Prices move no simulation: a future in which only prices by the hour are others is the advice on that case.
#[test]
fn prices_by_the_hour_come_out_as_the_advice_has_them() {
    let answers = houses::hourly("us-ca-sacramento", "electric", "summer");
    let open = Open::of(&answers, &Offer::default());
    let at = |id: Id| open.coordinates().iter().position(|c| c.code == id.code()).expect("a coordinate");
    let (peak, low, flat) = (at(Id::PricePeak), at(Id::PriceLow), at(Id::PriceElectricity));
    let outcome = advise(&open.case(&[]));
    let study = Study::new(&open, Wishes::default());
    let fitted = fitted(&study, &outcome, 4);
    for (on_peak, on_low, on_flat) in [(1.2, 0.0, 0.0), (0.0, -1.0, 0.0), (-0.5, 0.7, 0.0), (0.4, 0.2, 1.0)] {
        let mut questions = vec![0.0; open.coordinates().len()];
        (questions[peak], questions[low], questions[flat]) = (on_peak, on_low, on_flat);
        let there = advise(&open.case(&questions));
        let cells = study.cells(&fitted, &outcome, &Position { questions, ahead: None });
        for ((cell, c), as_it_stands) in cells.iter().zip(&there.candidates).zip(&outcome.candidates) {
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * (1.0 + b.abs());
            assert!(near(cell.net_present_cost, c.cost.net_present_cost), "{:?}", c.candidate.id);
            assert!(near(cell.energy_year, c.cost.energy_year + c.cost.interaction_year));
            assert!(c.cost.energy_year != as_it_stands.cost.energy_year, "{:?}", c.candidate.id);
        }
    }
}

/// What peak and low hours cost is open where there are such hours and nobody said it, and moves the choice; the one price
/// is open as long as one of them follows it.
#[test]
fn unknown_prices_by_the_hour_are_open() {
    let price = [Id::PricePeak, Id::PriceLow, Id::PriceElectricity];
    let open_of = |open: &Open| {
        price.map(|id| {
            let c = open.coordinates().iter().find(|c| c.code == id.code()).expect("a coordinate");
            (c.open, c.drawn)
        })
    };
    let (yes, no, answered) = ((true, true), (false, false), (false, true));
    assert_eq!(open_of(&houses::silent("us-ma-boston", "basement", "electric")), [no, no, yes]);
    let mut answers = houses::hourly("us-ma-boston", "electric", "year");
    let unsaid = Open::of(&answers, &Offer::default());
    assert_eq!(open_of(&unsaid), [yes, yes, yes]);
    let mut moved = Vec::new();
    for (id, dollars, then) in
        [(Id::PricePeak, 0.5, [answered, yes, yes]), (Id::PriceLow, 0.2, [answered, answered, no])]
    {
        let open = Open::of(&answers, &Offer::default());
        let (outcome, _, changes) = told(&open, Wishes { futures: 8, seed: 5 }, FEW);
        let changes = changes.expect("there is another heater");
        let share = changes.sensitivities.iter().find(|s| s.code == id.code());
        // A dearer hour speaks for the one of the two that uses less.
        let used = |id| outcome.of(id).map_or(0.0, |c| c.year.electricity_year_kwh());
        let more = used(changes.next) - used(changes.advised);
        let right = |s: &Sensitivity| (s.difference.1 - s.difference.0) * more > 0.0;
        moved.push(share.is_some_and(|s| s.open && s.total > 0.0 && right(s)));
        let said = Value::number(dollars, Unit::DollarPerKwh);
        answers.set(id, said, Provenance::Answered).expect("in range");
        assert_eq!(open_of(&Open::of(&answers, &Offer::default())), then);
    }
    assert_eq!(moved, [true, true]);
    let (_, _, changes) = told(&Open::of(&answers, &Offer::default()), Wishes { futures: 8, seed: 5 }, FEW);
    let changes = changes.expect("there is another heater");
    assert!(changes.sensitivities.iter().all(|s| s.code != Id::PriceElectricity.code()));
}

/// With everything measured only the years ahead are left: no question has a share, and energy of the first year hangs on the
/// weather alone.
#[test]
fn everything_measured_leaves_the_years_ahead() {
    let open = houses::settled("us-ma-boston", "electric");
    let (_, futures, changes) = told(&open, Wishes { futures: 60, seed: 3 }, FEW);
    let changes = changes.expect("there is another heater");
    for s in &changes.sensitivities {
        assert!(s.total == 0.0 || s.code.starts_with("future_"), "{}", s.code);
        assert!(!s.open && s.flips_to.is_none());
    }
    for c in &futures.candidates {
        assert!(c.energy_kwh.high - c.energy_kwh.low < 0.05 * c.energy_kwh.middle, "{:?}", c.id);
        assert!(c.net_present_cost.high > c.net_present_cost.low);
    }
}

/// Answers as they come, each as it stands: the bands narrow, on average and in the end by far.
#[test]
fn answers_narrow_the_bands() {
    let order = [
        [Id::Adults, Id::Teenagers, Id::Children, Id::ShowersPerDay].as_slice(),
        &[Id::ShowerTime, Id::ShowerFlow, Id::BathsPerWeek, Id::TubVolume, Id::Setpoint],
        &[
            Id::PriceElectricity,
            Id::InstalledHeatPump,
            Id::InstalledSame,
            Id::HeaterAge,
            Id::Signs,
            Id::PriceGrowth,
        ],
    ];
    let mut answers = Answers::new();
    let mut widths = Vec::new();
    for step in 0..=order.len() {
        let open = Open::of(&answers, &Offer::default());
        let (_, futures, _) = told(&open, Wishes { futures: 500, seed: 2 }, MORE);
        let width = |c: &tankful::core::futures::CandidateFutures| {
            (c.net_present_cost.high - c.net_present_cost.low) / c.net_present_cost.middle
        };
        widths.push(futures.candidates.iter().map(width).sum::<f64>() / futures.candidates.len() as f64);
        for id in order.get(step).copied().unwrap_or_default() {
            let stands = Resolved::of(&answers).get(*id).cloned().expect("a value");
            answers.set(*id, stands.value, Provenance::Answered).expect("in range");
        }
    }
    println!("mean width of the bands as answers come: {widths:.3?}");
    // A band's ends, tenths of 500 futures, have an error of some two per cent of its width.
    assert!(widths.windows(2).all(|w| w[1] < 1.02 * w[0]), "{widths:?}");
    assert!(widths[order.len()] < 0.6 * widths[0], "{widths:?}");
}

/// Whoever simulates and draws which, in whatever order: the same to the bit.
#[test]
fn nothing_depends_on_how_the_work_is_shared() {
    let open = houses::silent("us-ca-sacramento", "closet", "gas");
    let outcome = advise(&open.case(&[]));
    let study = Study::new(&open, Wishes { futures: 40, seed: 9 });
    let straight: Vec<Lives> = houses::lives(&study, 10);
    let mut shared: Vec<Lives> = (0..10).rev().map(|index| study.lives(index)).collect();
    shared.reverse();
    assert_eq!(straight, shared);
    let fitted = study.fit(&study.as_it_stands(), &straight, &outcome).expect("years");
    let whole = study.draw(&fitted, &outcome, 0, 40);
    let mut pieces = study.draw(&fitted, &outcome, 0, 7);
    pieces.extend(study.draw(&fitted, &outcome, 7, 40));
    assert_eq!(whole, pieces);
    // And it crosses to another worker as it is.
    let bytes = postcard::to_allocvec(&straight).expect("plain data");
    assert_eq!(postcard::from_bytes::<Vec<Lives>>(&bytes).expect("the same"), straight);
}

/// What would change the advice, found in steps of any size, with other work in between: the same to the bit.
#[test]
fn nothing_depends_on_how_weighing_is_cut() {
    let opens =
        [houses::silent("us-ca-sacramento", "closet", "gas"), houses::settled("us-ma-boston", "electric")];
    let outcomes = opens.each_ref().map(|open| advise(&open.case(&[])));
    let studies = opens.each_ref().map(|open| Study::new(open, Wishes { futures: 40, seed: 9 }));
    let fitted = [0, 1].map(|n| fitted(&studies[n], &outcomes[n], 8));
    let whole = [0, 1].map(|n| studies[n].changes(&fitted[n], &outcomes[n]).expect("another heater"));
    let mut begun = [0, 1].map(|n| studies[n].weighing(&outcomes[n]).expect("another heater"));
    // By turns, each step counted; asked once more at the end, nothing moves.
    let mut more = [true, true];
    while more.contains(&true) {
        for n in 0..2 {
            let before = begun[n].done();
            more[n] = studies[n].weigh(&mut begun[n], &fitted[n], &outcomes[n]);
            let after = if before < begun[n].steps() { before + 1 } else { before };
            assert_eq!(begun[n].done(), after);
            assert_eq!(more[n], after < begun[n].steps());
        }
    }
    assert_ne!(begun[0].steps(), begun[1].steps(), "they end at the same time");
    assert_eq!(begun.map(Weighing::changes), whole);
    // Nothing else to choose: nothing to weigh.
    let mut alone = outcomes[0].clone();
    alone.advice.runners_up.clear();
    assert!(studies[0].weighing(&alone).is_none() && studies[0].changes(&fitted[0], &alone).is_none());
}

/// What is said to move money or time alone leaves the year as it is: futures that share a household may differ in it.
#[test]
fn money_leaves_the_year_alone() {
    let open = houses::silent("us-ma-boston", "basement", "gas");
    let outcome = advise(&open.case(&[]));
    let study = Study::new(&open, Wishes { futures: 40, seed: 9 });
    let fitted = fitted(&study, &outcome, STAGES[0].households);
    let years = |z: &[f64]| {
        let told = study.live(&fitted, &open.case(z));
        told.iter().map(|t| (t.year.electricity_kwh, t.year.fuel_kwh, t.short)).collect::<Vec<_>>()
    };
    let as_it_stands = years(&[]);
    let money: Vec<usize> =
        (0..open.coordinates().len()).filter(|at| !open.coordinates()[*at].lived).collect();
    assert!(money.len() > 5);
    for at in money {
        for z in [-1.5, 1.5] {
            let mut position = vec![0.0; at + 1];
            position[at] = z;
            assert_eq!(years(&position), as_it_stands, "{}", open.coordinates()[at].code);
        }
    }
}
