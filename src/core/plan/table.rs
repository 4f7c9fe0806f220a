//! What is known of each kind of step. Common practice, no source, where the checks' rules do not say otherwise: a tap
//! upstairs open while draining, pipe cleaned with emery before soldering, no soldering heat on the tank's own
//! connections, cold feed through a vacuum relief into the dip tube, unions for service, new shutoffs while the water is
//! off, two people to move a tank, a condensate pump with a float. Minutes and people too.

use super::rule::Act::{Empties, Fills, Flue, Fuel, Heats, Lifts, Place, Tank, Water, Wires};
use super::rule::{Phase, Rule};
use super::step::StepKind;
use super::tool::Tool;
use crate::core::work::Trade;

const MAINS: &[&str] = &["caution-mains"];
const FUEL: &[&str] = &["caution-fuel"];

const fn ready(kind: StepKind, minutes: f64) -> Rule {
    Rule::new(kind, Phase::Ready, Trade::Builder, minutes)
}

const fn plumbing(kind: StepKind, phase: Phase, minutes: f64) -> Rule {
    Rule::new(kind, phase, Trade::Plumber, minutes)
}

/// Work at wires.
const fn wiring(kind: StepKind, phase: Phase, minutes: f64) -> Rule {
    Rule::new(kind, phase, Trade::Electrician, minutes)
        .does(&[Wires])
        .with(&[Tool::Tester, Tool::Drivers])
        .careful(MAINS)
}

/// Work at fuel or flue: whoever is licensed, nobody else.
const fn licensed(kind: StepKind, phase: Phase, minutes: f64) -> Rule {
    Rule::new(kind, phase, Trade::Fuel, minutes).careful(FUEL)
}

const fn building(kind: StepKind, minutes: f64) -> Rule {
    Rule::new(kind, Phase::Place, Trade::Builder, minutes)
}

/// Every kind, in their order.
pub(super) static TABLE: [Rule; StepKind::ALL.len()] = [
    ready(StepKind::Permit, 10.0).careful(&["caution-local-code"]),
    ready(StepKind::LookNew, 15.0).with(&[Tool::Tape]),
    ready(StepKind::LookOver, 10.0).with(&[Tool::Lamp]).careful(&["caution-leak"]),
    ready(StepKind::MakeWay, 30.0).with(&[Tool::Tape, Tool::Drivers]),
    ready(StepKind::Protect, 10.0).with(&[Tool::Covers, Tool::Lamp, Tool::Gloves]),
    licensed(StepKind::FuelOff, Phase::Safe, 10.0)
        .holding(&[Fuel, Flue, Empties])
        .does(&[Fuel])
        .careful(&["caution-fuel", "caution-fumes"]),
    Rule::new(StepKind::PowerOff, Phase::Safe, Trade::Electrician, 10.0)
        .holding(&[Wires, Empties])
        .with(&[Tool::Lock, Tool::Tester])
        .careful(MAINS),
    plumbing(StepKind::WaterOff, Phase::Safe, 10.0)
        .holding(&[Water, Empties])
        .with(&[Tool::Gauge])
        .careful(&["caution-water-off"]),
    plumbing(StepKind::Drain, Phase::Safe, 10.0)
        .holding(&[Water, Lifts])
        .does(&[Empties])
        .with(&[Tool::Hose, Tool::DrainPump, Tool::Bucket, Tool::Gloves])
        .careful(&["caution-drain-hot"]),
    plumbing(StepKind::Flush, Phase::Safe, 20.0)
        .does(&[Empties])
        .with(&[Tool::Hose, Tool::Bucket, Tool::Gloves])
        .careful(&["caution-drain-hot"]),
    plumbing(StepKind::Anode, Phase::Safe, 20.0)
        .does(&[Water])
        .after(&[StepKind::Flush])
        .with(&[Tool::AnodeSocket])
        .careful(&["caution-pressure"]),
    wiring(StepKind::UnwireOld, Phase::Out, 10.0),
    licensed(StepKind::FlueOff, Phase::Out, 15.0).does(&[Flue]).with(&[Tool::Gloves]),
    plumbing(StepKind::CutPipes, Phase::Out, 15.0)
        .does(&[Water])
        .with(&[Tool::Cutter, Tool::Wrenches, Tool::Bucket])
        .careful(&["caution-water-off"]),
    Rule::new(StepKind::OldOut, Phase::Out, Trade::Builder, 20.0)
        .two()
        .holding(&[Place])
        .does(&[Lifts])
        .after(&[
            StepKind::UnwireOld,
            StepKind::FlueOff,
            StepKind::CutPipes,
            StepKind::MakeWay,
            StepKind::Protect,
        ])
        .with(&[Tool::HandTruck, Tool::Gloves])
        .careful(&["caution-lifting"]),
    wiring(StepKind::EndCircuit, Phase::Place, 20.0).after(&[StepKind::OldOut]),
    licensed(StepKind::CapFuel, Phase::Place, 30.0)
        .does(&[Fuel, Flue])
        .after(&[StepKind::FlueOff, StepKind::OldOut])
        .with(&[Tool::Wrenches, Tool::FuelTester]),
    licensed(StepKind::ResizeFlue, Phase::Place, 180.0)
        .does(&[Flue])
        .after(&[StepKind::FlueOff, StepKind::OldOut])
        .careful(&["caution-fuel", "caution-fumes"]),
    licensed(StepKind::BurnerAir, Phase::Place, 60.0)
        .after(&[StepKind::OldOut])
        .with(&[Tool::Saw, Tool::Drill])
        .careful(&["caution-fumes"]),
    wiring(StepKind::Service, Phase::Place, 240.0).after(&[StepKind::OldOut]),
    wiring(StepKind::PanelSpace, Phase::Place, 45.0).after(&[StepKind::OldOut]),
    wiring(StepKind::NewCircuit, Phase::Place, 150.0)
        .after(&[StepKind::OldOut, StepKind::PanelSpace, StepKind::Service])
        .with(&[Tool::Tester, Tool::Drivers, Tool::Drill]),
    wiring(StepKind::Wires, Phase::Place, 90.0).after(&[StepKind::OldOut]).with(&[
        Tool::Tester,
        Tool::Drivers,
        Tool::Drill,
    ]),
    wiring(StepKind::Breaker, Phase::Place, 20.0).after(&[StepKind::OldOut]),
    wiring(StepKind::NewOutlet, Phase::Place, 120.0)
        .after(&[StepKind::OldOut, StepKind::PanelSpace])
        .with(&[Tool::Tester, Tool::Drivers, Tool::Drill]),
    wiring(StepKind::Disconnect, Phase::Place, 40.0).after(&[StepKind::OldOut]),
    building(StepKind::FloorSupport, 120.0)
        .does(&[Place])
        .with(&[Tool::Saw, Tool::Drill, Tool::Level])
        .careful(&["caution-lifting"]),
    building(StepKind::Stand, 30.0)
        .does(&[Place])
        .after(&[StepKind::FloorSupport])
        .with(&[Tool::Level, Tool::Drill]),
    building(StepKind::Quieten, 30.0).does(&[Place]).after(&[StepKind::Stand]),
    plumbing(StepKind::Pan, Phase::Place, 30.0)
        .does(&[Place])
        .after(&[StepKind::Stand, StepKind::FloorSupport])
        .with(&[Tool::Saw, Tool::Level]),
    building(StepKind::LouvredDoor, 60.0).after(&[StepKind::OldOut]).with(&[Tool::Saw, Tool::Drill]),
    Rule::new(StepKind::CarryUpright, Phase::In, Trade::Builder, 15.0)
        .two()
        .after(&[StepKind::MakeWay, StepKind::OldOut])
        .with(&[Tool::HandTruck])
        .careful(&["caution-lifting"]),
    Rule::new(StepKind::CarryIn, Phase::In, Trade::Builder, 20.0)
        .two()
        .does(&[Place])
        .after(&[
            StepKind::LookNew,
            StepKind::CarryUpright,
            StepKind::FloorSupport,
            StepKind::Stand,
            StepKind::Quieten,
            StepKind::Pan,
            StepKind::CapFuel,
        ])
        .with(&[Tool::HandTruck, Tool::Gloves])
        .careful(&["caution-lifting"]),
    Rule::new(StepKind::SetLevel, Phase::In, Trade::Builder, 10.0)
        .two()
        .holding(&[Tank])
        .does(&[Place])
        .after(&[StepKind::CarryIn])
        .with(&[Tool::Level, Tool::Tape]),
    plumbing(StepKind::Straps, Phase::In, 30.0).does(&[Tank]).with(&[Tool::Drill, Tool::Tape]),
    plumbing(StepKind::Pieces, Phase::Join, 45.0).after(&[StepKind::CutPipes, StepKind::SetLevel]),
    plumbing(StepKind::Shutoff, Phase::Join, 15.0).does(&[Water]).after(&[StepKind::Pieces]),
    plumbing(StepKind::PressureValve, Phase::Join, 45.0)
        .does(&[Water])
        .after(&[StepKind::Pieces])
        .with(&[Tool::Gauge, Tool::Wrenches]),
    plumbing(StepKind::Precharge, Phase::Join, 10.0)
        .does(&[Water])
        .with(&[Tool::Gauge, Tool::AirPump])
        .careful(&["caution-pressure"]),
    plumbing(StepKind::ExpansionTank, Phase::Join, 30.0)
        .does(&[Water])
        .after(&[StepKind::Pieces, StepKind::Shutoff, StepKind::PressureValve])
        .with(&[Tool::Gauge, Tool::AirPump])
        .careful(&["caution-pressure"]),
    plumbing(StepKind::VacuumRelief, Phase::Join, 10.0)
        .does(&[Water])
        .after(&[StepKind::Pieces, StepKind::Shutoff])
        .with(&[Tool::Wrenches]),
    plumbing(StepKind::ColdSide, Phase::Join, 5.0).holding(&[]).does(&[Tank]),
    plumbing(StepKind::ConnectWater, Phase::Join, 30.0)
        .holding(&[Fills])
        .does(&[Water, Tank])
        .after(&[
            StepKind::ColdSide,
            StepKind::Pieces,
            StepKind::Shutoff,
            StepKind::VacuumRelief,
            StepKind::ExpansionTank,
            StepKind::PressureValve,
        ])
        .with(&[Tool::Wrenches]),
    plumbing(StepKind::MixingValve, Phase::Join, 45.0)
        .does(&[Water])
        .after(&[StepKind::Pieces, StepKind::ConnectWater])
        .with(&[Tool::Wrenches, Tool::Thermometer])
        .careful(&["caution-scald-fast"]),
    plumbing(StepKind::LoopControl, Phase::Join, 45.0)
        .after(&[StepKind::ConnectWater])
        .with(&[Tool::Drivers]),
    plumbing(StepKind::Relief, Phase::Join, 25.0)
        .holding(&[Fills])
        .does(&[Water])
        .after(&[StepKind::ConnectWater])
        .with(&[Tool::Wrenches, Tool::Cutter])
        .careful(&["caution-relief", "caution-pressure"]),
    plumbing(StepKind::CondensatePipe, Phase::Join, 40.0).does(&[Tank]).with(&[
        Tool::Saw,
        Tool::Level,
        Tool::Drill,
    ]),
    plumbing(StepKind::CondensatePump, Phase::Join, 45.0).does(&[Tank]).with(&[Tool::Drill, Tool::Drivers]),
    plumbing(StepKind::CondensateTest, Phase::Join, 10.0)
        .holding(&[Heats])
        .does(&[Tank])
        .after(&[StepKind::CondensatePipe, StepKind::CondensatePump])
        .with(&[Tool::Bucket]),
    plumbing(StepKind::FrostGuard, Phase::Join, 30.0).after(&[StepKind::CondensateTest]),
    Rule::new(StepKind::Ducts, Phase::Join, Trade::Builder, 120.0)
        .does(&[Tank])
        .with(&[Tool::Saw, Tool::Drill]),
    Rule::new(StepKind::Filter, Phase::Join, Trade::Builder, 5.0)
        .holding(&[Heats])
        .does(&[Tank])
        .after(&[StepKind::Ducts]),
    licensed(StepKind::FuelConnect, Phase::Join, 60.0).does(&[Fuel, Tank]).with(&[Tool::Wrenches]),
    licensed(StepKind::VentConnect, Phase::Join, 60.0)
        .does(&[Flue, Tank])
        .with(&[Tool::Drill])
        .careful(&["caution-fuel", "caution-fumes"]),
    wiring(StepKind::ConnectPower, Phase::Join, 30.0).does(&[Wires, Tank]).after(&[
        StepKind::NewCircuit,
        StepKind::Wires,
        StepKind::Breaker,
        StepKind::Disconnect,
    ]),
    // A wire from pipe to pipe: no live part is touched.
    Rule::new(StepKind::Bond, Phase::Join, Trade::Electrician, 20.0)
        .holding(&[Heats])
        .after(&[StepKind::ConnectWater])
        .with(&[Tool::Drivers])
        .careful(MAINS),
    plumbing(StepKind::Fill, Phase::Fill, 5.0)
        .does(&[Fills])
        .after(&[StepKind::Flush, StepKind::Anode, StepKind::Precharge, StepKind::SetLevel])
        .careful(&["caution-pressure"]),
    plumbing(StepKind::Purge, Phase::Fill, 10.0)
        .holding(&[Heats])
        .after(&[StepKind::Fill])
        .with(&[Tool::Bucket]),
    plumbing(StepKind::LeakCheck, Phase::Fill, 15.0)
        .holding(&[Heats])
        .after(&[StepKind::Purge])
        .with(&[Tool::Paper, Tool::Gauge, Tool::Lamp])
        .careful(&["caution-leak"]),
    licensed(StepKind::FuelTight, Phase::Fill, 20.0)
        .holding(&[])
        .does(&[Fuel])
        .after(&[StepKind::FuelConnect, StepKind::VentConnect, StepKind::BurnerAir])
        .with(&[Tool::FuelTester]),
    Rule::new(StepKind::PowerOn, Phase::Start, Trade::Electrician, 5.0)
        .holding(&[])
        .does(&[Heats])
        .with(&[Tool::Tester, Tool::ClampMeter])
        .careful(MAINS),
    licensed(StepKind::LightBurner, Phase::Start, 20.0)
        .does(&[Heats, Fuel])
        .after(&[StepKind::FuelTight, StepKind::PowerOn])
        .with(&[Tool::FumeMeter])
        .careful(&["caution-fuel", "caution-fumes"]),
    plumbing(StepKind::Mode, Phase::Start, 5.0)
        .holding(&[])
        .after(&[StepKind::PowerOn, StepKind::LightBurner, StepKind::LeakCheck])
        .with(&[Tool::Thermometer])
        .careful(&["caution-scald"]),
    licensed(StepKind::DraughtTest, Phase::Start, 30.0)
        .after(&[StepKind::Mode])
        .with(&[Tool::FumeMeter])
        .careful(&["caution-fumes"]),
    plumbing(StepKind::Record, Phase::Start, 20.0).after(&[StepKind::Mode]).with(&[
        Tool::Thermometer,
        Tool::ClampMeter,
        Tool::Gauge,
    ]),
    Rule::new(StepKind::CoverPipes, Phase::Start, Trade::Builder, 15.0)
        .after(&[StepKind::LeakCheck, StepKind::Mode]),
    Rule::new(StepKind::HandOver, Phase::Start, Trade::Plumber, 20.0).after(&[
        StepKind::Record,
        StepKind::CoverPipes,
        StepKind::DraughtTest,
        StepKind::FrostGuard,
    ]),
];

#[cfg(test)]
mod tests {
    use super::super::rule::Act;
    use super::*;

    #[test]
    fn the_table_has_each_kind_in_its_place() {
        for (at, kind) in StepKind::ALL.iter().enumerate() {
            assert_eq!(TABLE[at].kind, *kind);
            assert_eq!(*kind as usize, at);
            let rule = kind.rule();
            assert!(rule.minutes > 0.0 && rule.people >= 1);
            assert!(rule.holds || rule.guards.is_empty());
        }
    }

    /// Nobody but whoever is licensed touches fuel or flue, and no electric work is anybody's.
    #[test]
    fn regulated_work_is_in_licensed_hands() {
        for rule in &TABLE {
            if rule.acts.iter().any(|a| matches!(a, Act::Fuel | Act::Flue)) {
                assert_eq!(rule.trade, Trade::Fuel, "{:?}", rule.kind);
            }
            if rule.acts.contains(&Act::Wires) {
                assert_eq!(rule.trade, Trade::Electrician, "{:?}", rule.kind);
            }
            if rule.acts.contains(&Act::Lifts) {
                assert!(rule.people >= 2);
            }
        }
    }
}
