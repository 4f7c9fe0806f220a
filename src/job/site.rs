//! What only the checks ask of a case: resolved values with the ranges their questions state.

use super::complete::{option, yes_no};
use super::questions::{Id, Kind, Question, Spread};
use super::resolved::Resolved;
use crate::core::case::Provenance;
use crate::core::site::{
    CableKind, ClosedBy, Ducts, FloorKind, FuelLeft, Pan, PipeMaterial, Ranged, Recirculation, ReliefPipe,
    Seismic, Site, WallKind, WireMetal, WireSize, Wires,
};
use crate::core::units::Unit;

/// A number with the range in which the truth plausibly lies: the question's spread about a default, within what
/// the question accepts; a point where somebody answered.
pub fn ranged(r: &Resolved, id: Id) -> Ranged {
    let known = r.base(id);
    let question = Question::get(id);
    let Kind::Number { low, high, .. } = question.kind else { return Ranged::exact(known.value, known.from) };
    if known.from != Provenance::Assumed {
        return Ranged::exact(known.value, known.from);
    }
    let step = |size: f64, unit: Unit| unit.to_base(size) - unit.to_base(0.0);
    let (from, to) = match question.spread {
        Spread::Factor(a, b) => (known.value * a, known.value * b),
        Spread::Plus(a, b, unit) => (known.value - step(a, unit), known.value + step(b, unit)),
        Spread::AnyOption => (low.base(), high.base()),
        Spread::None => (known.value, known.value),
    };
    Ranged::assumed(known.value, from.max(low.base()), to.min(high.base()))
}

/// The site of resolved values.
pub(super) fn of(r: &Resolved) -> Site {
    let number = |id| ranged(r, id);
    Site {
        volume_m3: number(Id::RoomVolume),
        headroom_m: number(Id::Headroom),
        way_in_m: number(Id::WayIn),
        stair_turn_m: number(Id::StairTurn),
        stand_up_m: number(Id::StandUp),
        footprint_m: number(Id::Footprint),
        service_m: number(Id::ServiceSpace),
        floor: option(r, Id::Floor, FloorKind::from_code, FloorKind::Slab),
        finished_below: yes_no(r, Id::FinishedBelow),
        quiet_room: yes_no(r, Id::QuietRoom),
        quiet_wall: option(r, Id::QuietWall, WallKind::from_code, WallKind::Stud),
        quiet_distance_m: number(Id::QuietDistance),
        fuel_left: option(r, Id::FuelLeft, FuelLeft::from_code, FuelLeft::None),
        ducts: option(r, Id::Ducts, Ducts::from_code, Ducts::None),
        seismic: option(r, Id::Seismic, Seismic::from_code, Seismic::Low),
        drain_run_m: number(Id::DrainDistance),
        drain_rise_m: number(Id::DrainRise),
        drain_freezes: yes_no(r, Id::DrainFreezes),
        breaker_a: number(Id::Breaker),
        free_spaces: number(Id::FreeSpaces),
        wire_size: option(r, Id::WireSize, WireSize::from_code, WireSize::Awg10),
        wire_metal: option(r, Id::WireMetal, WireMetal::from_code, WireMetal::Copper),
        cable_kind: option(r, Id::CableKind, CableKind::from_code, CableKind::Sheathed),
        run_m: number(Id::RunLength),
        wires: option(r, Id::Wires, Wires::from_code, Wires::Ground),
        disconnect: yes_no(r, Id::Disconnect),
        service_a: number(Id::ServiceRating),
        large_loads_w: number(Id::LargeLoads),
        house_m2: number(Id::HouseArea),
        pressure_pa: number(Id::Pressure),
        closed_by: option(r, Id::ClosedBy, ClosedBy::from_code, ClosedBy::None),
        expansion_m3: number(Id::ExpansionVolume),
        precharge_pa: number(Id::ExpansionPrecharge),
        pipes: option(r, Id::PipeMaterial, PipeMaterial::from_code, PipeMaterial::Copper),
        shutoff_works: yes_no(r, Id::ShutoffWorks),
        relief_pipe: option(r, Id::ReliefPipe, ReliefPipe::from_code, ReliefPipe::Good),
        pan: option(r, Id::Pan, Pan::from_code, Pan::None),
        fixtures_below: yes_no(r, Id::FixturesBelow),
        mixing_valve: yes_no(r, Id::MixingValve),
        recirculation: option(r, Id::Recirculation, Recirculation::from_code, Recirculation::None),
        loop_m: number(Id::LoopLength),
        loop_covered: yes_no(r, Id::LoopCovered),
    }
}
