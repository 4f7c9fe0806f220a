//! The steps of a job: which kinds it has, with their figures.

use super::order::Before;
use super::rule::Act;
use super::scene::{Scene, burns};
use super::step::StepKind;
use super::{Step, pipe, weights};
use crate::core::message::{Arg, Message};
use crate::core::site::{Ducts, PipeMaterial, Recirculation};
use crate::core::units::{Quantity, Unit, to_celsius};
use crate::core::work::{Trade, WorkKind};

use super::tool::Tool;

/// The steps of a job, in order.
pub(super) fn steps(s: &Scene) -> Vec<Step> {
    let before = Before::new();
    let kinds = before.sort(&kinds(s));
    let held =
        |then: StepKind| kinds.iter().copied().filter(move |k| k.rule().holds).filter(move |k| *k != then);
    kinds
        .iter()
        .map(|kind| {
            let rule = kind.rule();
            Step {
                kind: *kind,
                says: says(s, *kind),
                trade: trade(s, *kind),
                time: Quantity::new((minutes(s, *kind) - 1e-6).ceil(), Unit::Minute),
                people: rule.people,
                tools: tools(s, *kind),
                waits_for: held(*kind).filter(|hold| before.is(*hold, *kind)).collect(),
                maybe: maybe(s, *kind),
            }
        })
        .collect()
}

/// The kinds of steps that a job has.
fn kinds(s: &Scene) -> Vec<StepKind> {
    let outlet = |kind: StepKind| kind == StepKind::NewOutlet && s.pump_outlet().is_some();
    let wanted = |kind: &StepKind| usual(s, *kind) || s.works_of(*kind).next().is_some() || outlet(*kind);
    let mut kinds: Vec<StepKind> = StepKind::ALL.iter().copied().filter(wanted).collect();
    // Whatever wires are touched, they are dead.
    if kinds.iter().any(|k| touches_wires(*k)) {
        kinds.push(StepKind::PowerOff);
    }
    kinds
}

fn touches_wires(kind: StepKind) -> bool {
    kind.rule().acts.contains(&Act::Wires)
}

/// Steps that such a job always has. Every job lets water out, of a tank that goes or that is flushed, and in again.
fn usual(s: &Scene, kind: StepKind) -> bool {
    let (new, wires) = (!s.keeps(), s.new_wires());
    match kind {
        StepKind::LookOver | StepKind::Flush | StepKind::Anode => s.keeps(),
        StepKind::Permit
        | StepKind::LookNew
        | StepKind::Protect
        | StepKind::Drain
        | StepKind::CutPipes
        | StepKind::OldOut
        | StepKind::CarryIn
        | StepKind::SetLevel
        | StepKind::Pieces
        | StepKind::Shutoff
        | StepKind::VacuumRelief
        | StepKind::ColdSide
        | StepKind::ConnectWater
        | StepKind::Relief
        | StepKind::Record
        | StepKind::CoverPipes => new,
        StepKind::WaterOff
        | StepKind::Fill
        | StepKind::Purge
        | StepKind::LeakCheck
        | StepKind::Mode
        | StepKind::HandOver => true,
        StepKind::FuelOff => burns(s.from()),
        StepKind::PowerOff => s.old_wires() || (new && wires),
        StepKind::UnwireOld => new && s.old_wires(),
        StepKind::FlueOff => new && burns(s.from()),
        StepKind::EndCircuit => s.circuit_ends(),
        StepKind::CapFuel => new && burns(s.from()) && !burns(s.to()),
        StepKind::CondensateTest | StepKind::Filter => s.new.is_heat_pump(),
        StepKind::Ducts => s.new.is_heat_pump() && !matches!(s.case.site.ducts.value, Ducts::None),
        StepKind::FuelConnect | StepKind::VentConnect | StepKind::FuelTight => new && burns(s.to()),
        StepKind::ConnectPower => new && wires,
        StepKind::PowerOn => wires || s.new.is_plug_in(),
        StepKind::LightBurner => burns(s.to()),
        _ => false,
    }
}

/// Whether a step is only needed if a measurement says so.
fn maybe(s: &Scene, kind: StepKind) -> bool {
    let outlet = |kind: StepKind| kind == StepKind::NewOutlet && s.pump_outlet() == Some(true);
    let sure = |kind: StepKind| usual(s, kind) || s.works_of(kind).any(|w| w.sure) || outlet(kind);
    !sure(kind) && (kind != StepKind::PowerOff || !kinds(s).iter().any(|k| touches_wires(*k) && sure(*k)))
}

/// A step in words, with its figures.
fn says(s: &Scene, kind: StepKind) -> Message {
    let message = Message::new(key(s, kind));
    let (mass, volume) = (Unit::Kilogram, Unit::Litre);
    match kind {
        StepKind::OldOut => message
            .quantity("empty", weights::empty_kg(&s.old), mass)
            .quantity("left", weights::left_kg(&s.old), mass)
            .quantity("mass", weights::empty_kg(&s.old) + weights::left_kg(&s.old), mass),
        StepKind::Drain => message.quantity("volume", weights::water_m3(&s.old) * 1e3, volume),
        StepKind::Flush => message.quantity("volume", flushed_m3(s) * 1e3, volume),
        StepKind::CarryIn => message.quantity("mass", weights::empty_kg(s.new), mass),
        StepKind::SetLevel => message.quantity("full", weights::full_kg(s.new), mass),
        StepKind::Fill => message.quantity("volume", filled_m3(s) * 1e3, volume),
        StepKind::Relief => message.quantity("end", RELIEF_END_IN, Unit::Inch),
        StepKind::Mode => message.quantity("setting", setting_c(s), Unit::DegC),
        _ => kind.sizes().iter().fold(message, |m, name| match largest(s, kind, name) {
            Some(q) => m.with(name, Arg::Quantity(q)),
            None => m,
        }),
    }
}

/// Where the relief valve's pipe ends, at most, above the floor (the rule of the checks).
const RELIEF_END_IN: f64 = 6.0;

/// The largest of a size that the works of a step state.
fn largest(s: &Scene, kind: StepKind, name: &str) -> Option<Quantity> {
    let mut most: Option<Quantity> = None;
    for size in s.works_of(kind).filter_map(|w| w.work.size(name)) {
        if most.is_none_or(|m| size.base() > m.base()) {
            most = Some(size);
        }
    }
    most
}

/// The temperature to set, °C: as the household has it, or as findings ask.
fn setting_c(s: &Scene) -> f64 {
    let asked = s.works(WorkKind::Setpoint).filter(|w| w.sure).find_map(|w| w.work.size("setting"));
    asked.and_then(|q| q.to(Unit::DegC)).map_or(to_celsius(s.case.heater.setpoint.value), |q| q.value)
}

/// The key of a step's words: some are said in another way in some jobs.
fn key(s: &Scene, kind: StepKind) -> &'static str {
    let pump = s.new.is_heat_pump();
    match kind {
        StepKind::WaterOff if s.wants(WorkKind::Shutoff) => "step-water-off-house",
        StepKind::PowerOff if !s.old_wires() => "step-power-off-new",
        StepKind::NewOutlet if !s.wants(WorkKind::NewOutlet) => "step-pump-outlet",
        StepKind::CarryIn if pump => "step-carry-in-heat-pump",
        StepKind::SetLevel if pump => "step-set-level-heat-pump",
        StepKind::Pieces if s.plastic() => "step-pieces-plastic",
        StepKind::Pieces if matches!(s.case.site.pipes.value, PipeMaterial::Steel) => "step-pieces-steel",
        StepKind::PowerOn if s.new.is_plug_in() => "step-plug-in",
        StepKind::Mode if pump => "step-mode-heat-pump",
        StepKind::Mode if burns(s.to()) => "step-mode-burner",
        _ => kind.key(),
    }
}

/// Whoever does it: a plug is anybody's.
fn trade(s: &Scene, kind: StepKind) -> Trade {
    if kind == StepKind::PowerOn && s.new.is_plug_in() { Trade::Builder } else { kind.rule().trade }
}

/// How long it takes: what the table says, and as long as the water runs.
fn minutes(s: &Scene, kind: StepKind) -> f64 {
    let water = match kind {
        StepKind::Drain => weights::drain_minutes(weights::water_m3(&s.old)),
        StepKind::Fill => weights::fill_minutes(filled_m3(s)),
        _ => 0.0,
    };
    kind.rule().minutes + water
}

/// A quarter of the tank is run off to flush it; common practice, no source.
fn flushed_m3(s: &Scene) -> f64 {
    0.25 * weights::water_m3(&s.old)
}

/// Water that goes in: the tank's, and a loop's, whose pipe was emptied with it.
fn filled_m3(s: &Scene) -> f64 {
    let site = &s.case.site;
    if s.keeps() {
        return flushed_m3(s);
    }
    let looped = !matches!(site.recirculation.value, Recirculation::None);
    let loop_m3 = if looped { pipe::water_m3(site.pipes.value, site.loop_m.value) } else { 0.0 };
    weights::water_m3(s.new) + loop_m3
}

/// What a step is done with: the table's, and what the pipes ask for.
fn tools(s: &Scene, kind: StepKind) -> Vec<Tool> {
    let mut tools = kind.rule().tools.to_vec();
    match kind {
        StepKind::Pieces if s.plastic() => tools.extend([Tool::Cutter, Tool::Crimper, Tool::Tape]),
        StepKind::Pieces => tools.extend([Tool::Cutter, Tool::Torch, Tool::Tape]),
        _ => {}
    }
    tools
}

/// Keys of the cautions at a step.
pub(super) fn cautions(step: StepKind, tools: &[Tool]) -> Vec<&'static str> {
    let mut keys = step.rule().cautions.to_vec();
    if tools.contains(&Tool::Torch) {
        keys.push("caution-fire");
    }
    keys
}
