//! The day of the work for any house: what must come before what, and that nothing is forgotten.

use super::*;
use proptest::prelude::*;
use tankful::core::case::HeaterKind;
use tankful::core::message::{Arg, Message};
use tankful::core::plan::{Act, Part, PartKind, Phase, Plan, Step, StepKind as S, plan};
use tankful::core::units::UnitSystem;
use tankful::core::work::Trade;
use tankful::text::{Language, Words};

/// What each hold point has to come before, said once more and apart from the table the order is made from: a
/// step of the first list must be confirmed before any step of the second is begun.
const HELD: &[(&[S], &[S])] = &[
    // Water off, and let out, before a pipe is opened.
    (
        &[S::WaterOff],
        &[S::Drain, S::Flush, S::Anode, S::CutPipes, S::Shutoff, S::PressureValve, S::ConnectWater],
    ),
    (&[S::Drain], &[S::CutPipes, S::OldOut]),
    // Wires dead before anybody touches them, and before an element may lose its water.
    (
        &[S::PowerOff],
        &[S::UnwireOld, S::NewCircuit, S::Wires, S::Breaker, S::Disconnect, S::ConnectPower, S::PanelSpace],
    ),
    (&[S::PowerOff], &[S::Drain, S::Flush]),
    // Fuel off before flue or line is touched and before a tank over a burner is emptied.
    (&[S::FuelOff], &[S::FlueOff, S::CapFuel, S::FuelConnect, S::ResizeFlue, S::Drain, S::Flush, S::OldOut]),
    // The old one gone before the place is worked on.
    (&[S::OldOut], &[S::Pan, S::Stand, S::FloorSupport, S::CarryIn, S::SetLevel]),
    (
        &[S::SetLevel],
        &[S::Straps, S::ConnectWater, S::ConnectPower, S::CondensatePipe, S::CondensatePump, S::FuelConnect],
    ),
    (&[S::ColdSide], &[S::ConnectWater]),
    (&[S::ConnectWater, S::Relief], &[S::Fill, S::Purge]),
    // Power and flame last: full, purged, dry, bonded, with a drain and a filter.
    (
        &[S::Purge, S::LeakCheck, S::Bond, S::CondensateTest, S::Filter, S::Relief],
        &[S::PowerOn, S::LightBurner],
    ),
    (&[S::FuelTight], &[S::LightBurner]),
    (&[S::PowerOn], &[S::Mode, S::Record]),
];

/// Work that must be finished before what follows it.
const FINISHED: &[(&[S], &[S])] = &[
    (
        &[
            S::CutPipes,
            S::Shutoff,
            S::VacuumRelief,
            S::ExpansionTank,
            S::MixingValve,
            S::PressureValve,
            S::Anode,
        ],
        &[S::Fill],
    ),
    (
        &[S::UnwireOld, S::NewCircuit, S::Wires, S::Breaker, S::NewOutlet, S::ConnectPower, S::EndCircuit],
        &[S::PowerOn],
    ),
    (&[S::FuelConnect, S::VentConnect, S::ResizeFlue, S::BurnerAir], &[S::LightBurner]),
    (&[S::Fill], &[S::Purge]),
    (&[S::Purge], &[S::LeakCheck]),
    (&[S::UnwireOld, S::FlueOff, S::CutPipes, S::MakeWay], &[S::OldOut]),
    (&[S::Pan, S::Stand, S::FloorSupport, S::CarryUpright], &[S::CarryIn]),
    (&[S::Mode], &[S::DraughtTest, S::HandOver]),
];

fn at(plan: &Plan, kind: S) -> Option<usize> {
    plan.steps.iter().position(|s| s.kind == kind)
}

fn step(plan: &Plan, kind: S) -> &Step {
    &plan.steps[at(plan, kind).unwrap_or_else(|| panic!("{kind:?} is missing"))]
}

fn part(plan: &Plan, kind: PartKind) -> &Part {
    plan.parts.iter().find(|p| p.kind == kind).unwrap_or_else(|| panic!("{kind:?} is missing"))
}

/// Each of `first` comes before each of `then`, where both are there.
fn comes_before(plan: &Plan, first: &[S], then: &[S]) -> Result<(), TestCaseError> {
    for a in first {
        for b in then {
            if let (Some(i), Some(j)) = (at(plan, *a), at(plan, *b)) {
                prop_assert!(i < j, "{a:?} after {b:?}");
            }
        }
    }
    Ok(())
}

fn sound(words: &Words, message: &Message) -> Result<(), TestCaseError> {
    prop_assert!(words.faults(message).is_empty(), "{:?}", words.faults(message));
    for (_, arg) in &message.args {
        if let Arg::Quantity(q) = arg {
            prop_assert!(q.value.is_finite() && q.value >= 0.0, "{message:?}");
        }
    }
    Ok(())
}

fn in_order(plan: &Plan) -> Result<(), TestCaseError> {
    for (holds, then) in HELD {
        comes_before(plan, holds, then)?;
        for hold in *holds {
            let Some(i) = at(plan, *hold) else { continue };
            prop_assert!(plan.steps[i].holds(), "{hold:?} holds nothing up");
            for waits in then.iter().filter_map(|t| at(plan, *t)) {
                prop_assert!(
                    plan.steps[waits].waits_for.contains(hold),
                    "{:?} for {hold:?}",
                    plan.steps[waits].kind
                );
            }
        }
    }
    for (first, then) in FINISHED {
        comes_before(plan, first, then)?;
    }
    for (i, s) in plan.steps.iter().enumerate() {
        prop_assert!(plan.steps[..i].iter().all(|other| other.kind != s.kind), "{:?} twice", s.kind);
        prop_assert!(s.waits_for.iter().all(|h| at(plan, *h).is_some_and(|j| j < i)), "{:?}", s.kind);
    }
    prop_assert!(plan.steps.windows(2).all(|w| w[0].kind.rule().phase <= w[1].kind.rule().phase));
    Ok(())
}

/// Nothing of fuel, flue or wires is anybody's work; where something of theirs is there, the step that makes it safe is.
fn in_licensed_hands(plan: &Plan, from: HeaterKind, to: HeaterKind) -> Result<(), TestCaseError> {
    let fuel = |k| matches!(k, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil);
    for s in &plan.steps {
        let acts = s.kind.rule().acts;
        let touches = |a| acts.contains(&a);
        prop_assert!(!(touches(Act::Fuel) || touches(Act::Flue)) || s.trade == Trade::Fuel, "{:?}", s.kind);
        prop_assert!(!touches(Act::Wires) || s.trade == Trade::Electrician, "{:?}", s.kind);
        prop_assert!(!touches(Act::Lifts) || s.people >= 2);
        prop_assert!(s.trade != Trade::Fuel || !s.cautions().is_empty(), "{:?}", s.kind);
    }
    prop_assert_eq!(at(plan, S::FuelOff).is_some(), fuel(from));
    prop_assert_eq!(at(plan, S::LightBurner).is_some(), fuel(to));
    let wires = plan.steps.iter().any(|s| s.kind.rule().acts.contains(&Act::Wires));
    prop_assert!(!wires || at(plan, S::PowerOff).is_some());
    prop_assert!(matches!(to, HeaterKind::Gas | HeaterKind::Propane) || at(plan, S::PowerOn).is_some());
    Ok(())
}

fn complete_list(plan: &Plan, findings: &[Finding]) -> Result<(), TestCaseError> {
    for p in &plan.parts {
        prop_assert!(p.needs.value > 0.0 && p.needs.value.is_finite(), "{p:?}");
        prop_assert!(p.bring.base() >= p.needs.base() - 1e-6 && p.bring.value.is_finite(), "{p:?}");
        prop_assert!(p.needs.unit == Unit::One || p.needs.unit == Unit::Metre);
        prop_assert_eq!(plan.parts.iter().filter(|o| o.kind == p.kind).count(), 1);
        prop_assert!(p.always || !p.checks.is_empty(), "{p:?} for nothing");
        prop_assert!(!p.always || !p.maybe);
        prop_assert!(at(plan, p.step).is_some(), "{p:?} is used in no step");
        // What belongs to wires, fuel or flue is put in by that trade.
        let theirs = matches!(p.kind.trade(), Trade::Electrician | Trade::Fuel);
        prop_assert!(!theirs || step(plan, p.step).trade == p.kind.trade(), "{p:?}");
        prop_assert_eq!(p.says.args.len(), p.kind.sizes().len(), "{:?}", p);
    }
    for f in findings {
        for w in &f.work {
            let done = step(plan, S::of(w.kind));
            if f.fit == Fit::FitsWithWork {
                prop_assert!(!done.maybe, "{:?} of {}", w.kind, f.check);
                let brings = plan.parts.iter().filter(|p| p.checks.contains(&f.check)).all(|p| !p.maybe);
                prop_assert!(brings, "{:?} of {}", w.kind, f.check);
            }
            if !NO_PARTS.contains(&w.kind) {
                prop_assert!(
                    plan.parts.iter().any(|p| p.checks.contains(&f.check)),
                    "{:?} of {}",
                    w.kind,
                    f.check
                );
            }
        }
    }
    Ok(())
}

/// Works for which nothing is carried to the house.
const NO_PARTS: &[WorkKind] = &[
    WorkKind::PanelSpace,
    WorkKind::Service,
    WorkKind::MakeWay,
    WorkKind::CarryUpright,
    WorkKind::Precharge,
    WorkKind::Setpoint,
    WorkKind::DraughtTest,
];

proptest! {
    // Some twelve heaters a house: 3,000 plans.
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_job_is_in_order_and_complete(answers in super::any::house()) {
        let case = complete(&answers);
        let words = Words::new(Language::ENGLISH, UnitSystem::Us);
        for candidate in offered::candidates(&case) {
            let findings = checks::all(&Seen { candidate: &candidate, case: &case, year: year(), opened: None, rules: &US });
            let plan = plan(&case, &candidate, &findings);
            in_order(&plan)?;
            in_licensed_hands(&plan, case.heater.kind.value, candidate.label.kind)?;
            complete_list(&plan, &findings)?;
            for s in &plan.steps {
                sound(&words, &s.says)?;
                prop_assert!(words.say_attr(&s.says, "why").is_some(), "{}", s.says.id);
                prop_assert_eq!(words.say_attr(&s.says, "confirm").is_some(), s.holds(), "{}", s.says.id);
                prop_assert!(s.time.value >= 1.0 && s.time.value < 600.0, "{:?}", s);
                prop_assert!(s.cautions().iter().all(|c| words.has(c)));
            }
            for says in plan.parts.iter().map(|p| &p.says).chain(plan.tools.iter().map(|t| &t.says)) {
                sound(&words, says)?;
            }
            let fewest = if candidate.id == CandidateId::Keep { 1 } else { 2 };
            prop_assert!(plan.people() >= fewest);
        }
    }
}

fn of(list: &[(Id, Value)], id: CandidateId) -> Plan {
    let case = case(list);
    let findings = with_year(&case, id, year());
    plan(&case, &heater(&case, id), &findings)
}

/// Every hold point there is to be.
#[test]
fn a_burner_gives_way_to_a_heat_pump_with_every_hold_point() {
    let plan = of(
        &[
            (Id::HeaterKind, c("gas")),
            (Id::SharesFlue, c("yes")),
            (Id::FuelLeft, c("open")),
            (Id::PipeMaterial, c("copper")),
        ],
        CandidateId::HeatPump50,
    );
    for hold in [
        S::FuelOff,
        S::PowerOff,
        S::WaterOff,
        S::Drain,
        S::OldOut,
        S::SetLevel,
        S::ColdSide,
        S::ConnectWater,
        S::Relief,
        S::CondensateTest,
        S::Filter,
        S::Bond,
        S::Purge,
        S::LeakCheck,
        S::PowerOn,
        S::Mode,
    ] {
        assert!(step(&plan, hold).holds(), "{hold:?}");
    }
    for licensed in [S::FuelOff, S::FlueOff, S::CapFuel, S::ResizeFlue, S::DraughtTest] {
        assert_eq!(step(&plan, licensed).trade, Trade::Fuel);
    }
    assert!(at(&plan, S::LightBurner).is_none());
    assert_eq!(plan.steps.last().map(|s| s.kind), Some(S::HandOver));
    assert_eq!(plan.steps.first().map(|s| s.kind.rule().phase), Some(Phase::Ready));
}

/// By hand: 40 gal of water at 10 °C are 151.4 L · 0.9997; a twentieth stays. Draining at 2 gal/min takes 20 min on
/// top of ten, filling 50 gal at 4 gal/min 12.5 on top of five, rounded up.
#[test]
fn weights_and_times_follow_the_tanks() {
    let list = [(Id::HeaterVolume, n(40.0, Unit::Gallon)), (Id::Recirculation, c("none"))];
    let plan = of(&list, CandidateId::HeatPump50);
    let size = |kind, name: &str| {
        let says = &step(&plan, kind).says;
        match says.args.iter().find(|(n, _)| n == name) {
            Some((_, Arg::Quantity(q))) => q.base(),
            other => panic!("{name}: {other:?}"),
        }
    };
    let left = 0.05 * 40.0 * 3.785_411_784 * 0.9997;
    assert!((size(S::OldOut, "left") - left).abs() < 1e-2, "{}", size(S::OldOut, "left"));
    assert!((size(S::OldOut, "mass") - size(S::OldOut, "empty") - left).abs() < 1e-2);
    // The library of units has seven figures of a pound.
    assert!((size(S::CarryIn, "mass") - 200.0 * 0.453_592_37).abs() < 1e-4);
    assert!((size(S::Drain, "volume") - 0.151_416).abs() < 1e-5);
    assert_eq!(step(&plan, S::Drain).time.value, 30.0);
    assert_eq!(step(&plan, S::Fill).time.value, 18.0);
}

#[test]
fn one_line_for_a_part_that_two_findings_ask_for() {
    // No ground and wires too thin: one cable of the run, of the thicker size; slack of a tenth and two metres.
    let plan = of(
        &[
            (Id::HeaterKind, c("electric")),
            (Id::Breaker, n(30.0, Unit::Ampere)),
            (Id::Supply, c("240")),
            (Id::Wires, c("no_ground")),
            (Id::WireSize, c("12")),
            (Id::WireMetal, c("copper")),
            (Id::RunLength, n(20.0, Unit::Metre)),
            (Id::FixturesBelow, c("yes")),
        ],
        CandidateId::HeatPump50,
    );
    let cable = part(&plan, PartKind::Cable);
    assert!(cable.checks.len() >= 2 && !cable.maybe, "{cable:?}");
    assert!((cable.needs.value - (1.1 * 20.0 + 2.0)).abs() < 1e-9);
    assert!((cable.bring.value - 100.0 * 0.3048).abs() < 1e-9);
    assert_eq!(cable.says.args[0].1, Arg::Quantity(tankful::core::units::Quantity::new(10.0, Unit::One)));
    // The vacuum relief of every job and of the finding: one.
    let relief = part(&plan, PartKind::VacuumRelief);
    assert_eq!((relief.needs.value, relief.always, relief.checks.len()), (1.0, true, 1));
}

/// A closed system: the expansion tank is the next on sale (2, 4.5, 10 gal), its tee and pipe come on top of the others.
#[test]
fn sizes_come_from_the_findings() {
    let closed = |by| {
        of(
            &[
                (Id::ClosedBy, c(by)),
                (Id::ExpansionVolume, n(0.0, Unit::Gallon)),
                (Id::Pressure, n(60.0, Unit::Psi)),
                (Id::Seismic, c("high")),
                (Id::FinishedBelow, c("yes")),
                (Id::Pan, c("none")),
            ],
            CandidateId::HeatPump80,
        )
    };
    let (with, without) = (closed("check"), closed("none"));
    let tank = part(&with, PartKind::ExpansionTank);
    let Arg::Quantity(size) = &tank.says.args[0].1 else { panic!("{tank:?}") };
    let gallons = size.to(Unit::Gallon).expect("a volume").value;
    assert!([2.0, 4.5, 10.0].iter().any(|g| (g - gallons).abs() < 1e-9), "{gallons}");
    assert_eq!(part(&with, PartKind::Tee).needs.value, part(&without, PartKind::Tee).needs.value + 1.0);
    assert!(part(&with, PartKind::CopperPipe).needs.value > part(&without, PartKind::CopperPipe).needs.value);
    // A tank 26.5 in wide asks for 28.5; pans come in 30. Two straps of its girth, four screws.
    let Arg::Quantity(pan) = &part(&with, PartKind::Pan).says.args[0].1 else { panic!() };
    assert_eq!(pan.value, 30.0);
    assert_eq!(part(&with, PartKind::Strap).needs.value, 2.0);
    assert_eq!(part(&with, PartKind::StrapScrew).needs.value, 4.0);
    assert!(without.parts.iter().all(|p| p.kind != PartKind::ExpansionTank));
}

/// A heater that stays is looked after: no tank is carried, nothing is bought but an anode.
#[test]
fn a_heater_that_stays_gets_its_care() {
    let plan = of(&[(Id::HeaterKind, c("electric"))], CandidateId::Keep);
    for kind in
        [S::LookOver, S::PowerOff, S::WaterOff, S::Flush, S::Anode, S::Purge, S::LeakCheck, S::PowerOn]
    {
        assert!(at(&plan, kind).is_some(), "{kind:?}");
    }
    for kind in [S::OldOut, S::CarryIn, S::Drain, S::ConnectWater, S::FuelOff] {
        assert!(at(&plan, kind).is_none(), "{kind:?}");
    }
    assert_eq!(part(&plan, PartKind::Anode).bring.value, 1.0);
}
