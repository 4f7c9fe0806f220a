//! The parts of each kind of work that findings ask for.

use super::PartKind as K;
use super::parts::{List, Why, new_pipe, pan_drains, pan_in};
use super::scene::Scene;
use super::step::StepKind;
use crate::core::message::Arg;
use crate::core::units::{Quantity, Unit};
use crate::core::work::{Work, WorkKind};
use std::f64::consts::PI;
use uom::si::length::meter;

/// Bonding wire across hot and cold, m.
const BOND_M: f64 = 0.9;
/// Condensate pipe from heater to pump, m.
const TO_PUMP_M: f64 = 0.9;
/// Wire from the pump's switch to the heater, m.
const SWITCH_WIRE_M: f64 = 3.0;
/// Pipe that a mixing valve takes, from cold to hot, m.
const MIXING_M: f64 = 0.6;
/// Pipe to an expansion tank, m.
const EXPANSION_M: f64 = 0.3;
/// Between two clamps of plastic pipe or tube, m (4 ft).
const CLAMPED_M: f64 = 1.2;
/// Even a drain right beside the heater takes a piece of pipe, m.
const LEAST_RUN_M: f64 = 0.5;
/// Cable beyond the straight run: a tenth, and this at both ends together, m.
const SLACK: (f64, f64) = (1.1, 2.0);

/// Wants the parts of a work.
pub(super) fn of_works(s: &Scene, work: &Work, why: Why, list: &mut List) {
    // Every kind of work states the sizes of its kind.
    let size = |name: &str| work.size(name).unwrap_or(Quantity::new(0.0, Unit::One));
    let run_m = size("run").base().max(LEAST_RUN_M);
    let one = Quantity::new(1.0, Unit::One);
    let sized = |name: &'static str, q: Quantity| [(name, Arg::Quantity(q))];
    let cable = |list: &mut List| {
        let long = Quantity::new(cable_m(run_m), Unit::Metre);
        list.want(K::Cable, long, &sized("wire", size("wire")), why);
    };
    match work.kind {
        WorkKind::NewCircuit => {
            cable(list);
            list.want(K::Breaker, one, &sized("breaker", size("breaker")), why);
        }
        WorkKind::Wires => cable(list),
        WorkKind::Breaker => list.want(K::Breaker, one, &sized("breaker", size("breaker")), why),
        WorkKind::NewOutlet => {
            list.pieces(K::Outlet, 1.0, why);
            list.metres(K::OutletCable, cable_m(s.case.site.run_m.value), why);
            list.pieces(K::OutletBreaker, 1.0, why);
        }
        WorkKind::Disconnect => {
            let amps = if s.new.body.breaker_a > 0.0 { s.new.body.breaker_a } else { 30.0 };
            list.want(K::Switch, one, &sized("amps", Quantity::new(amps, Unit::Ampere)), why);
        }
        WorkKind::Bonding => {
            list.metres(K::BondWire, BOND_M, why);
            list.pieces(K::BondClamp, 2.0, why);
        }
        WorkKind::CondensatePipe => {
            list.metres(K::DrainPipe, 1.1 * run_m, why);
            list.pieces(K::DrainFitting, 4.0, why);
            list.pieces(K::Clamp, (run_m / CLAMPED_M).ceil(), why);
            list.pieces(K::Cement, 1.0, why);
        }
        WorkKind::CondensatePump => {
            list.want(K::Pump, one, &sized("lift", size("lift")), why);
            list.metres(K::PumpTube, run_m + size("lift").base(), why);
            list.metres(K::SwitchWire, SWITCH_WIRE_M, why);
            list.metres(K::DrainPipe, TO_PUMP_M, why);
            list.pieces(K::DrainFitting, 3.0, why);
            list.pieces(K::Cement, 1.0, why);
            list.pieces(K::Clamp, ((run_m + size("lift").base()) / CLAMPED_M).ceil(), why);
            if s.pump_outlet().is_some() {
                list.pieces(K::PumpOutlet, 1.0, Why { step: StepKind::NewOutlet, ..why });
            }
        }
        WorkKind::FrostGuard => list.metres(K::FrostCover, run_m, why),
        WorkKind::LouvredDoor => list.pieces(K::Louvre, 1.0, why),
        WorkKind::BurnerAir => {
            list.want(K::AirOpening, Quantity::new(2.0, Unit::One), &sized("area", size("area")), why);
        }
        WorkKind::FloorSupport => list.want(K::Timber, one, &sized("mass", size("mass")), why),
        WorkKind::Stand => list.want(K::Stand, one, &sized("height", size("height")), why),
        WorkKind::Quieten => list.pieces(K::Feet, 4.0, why),
        WorkKind::ExpansionTank => {
            let sizes =
                [("size", Arg::Quantity(size("size"))), ("precharge", Arg::Quantity(size("precharge")))];
            list.want(K::ExpansionTank, one, &sizes, why);
            list.pieces(K::Bracket, 1.0, why);
            list.pieces(K::Tee, 1.0, why);
            list.pieces(K::Adapter, 1.0, why);
            list.metres(new_pipe(s), EXPANSION_M, why);
        }
        WorkKind::PressureValve => {
            list.want(K::PressureValve, one, &sized("pressure", size("pressure")), why);
        }
        WorkKind::ReliefPipe => {
            list.metres(K::ReliefPipe, size("length").base(), why);
            list.pieces(K::ReliefFitting, 3.0, why);
        }
        WorkKind::Pan => {
            let wide = size("diameter").to(Unit::Inch).map_or(0.0, |q| q.value);
            list.want(K::Pan, one, &sized("diameter", Quantity::new(pan_in(wide), Unit::Inch)), why);
            if pan_drains(s) {
                list.metres(K::PanPipe, s.case.site.drain_run_m.value.max(LEAST_RUN_M), why);
                list.pieces(K::Cement, 1.0, why);
            } else {
                list.pieces(K::PanSwitch, 1.0, why);
            }
        }
        WorkKind::VacuumRelief => list.pieces(K::VacuumRelief, 1.0, why),
        WorkKind::Straps => {
            let count = size("count").value;
            let around = PI * s.new.body.diameter.get::<meter>();
            let long = sized("around", Quantity::new(around / 0.0254, Unit::Inch));
            list.want(K::Strap, Quantity::new(count, Unit::One), &long, why);
            list.pieces(K::StrapScrew, 2.0 * count, why);
        }
        WorkKind::Shutoff => list.pieces(K::Shutoff, size("count").value, why),
        WorkKind::Joints => list.pieces(K::DielectricUnion, size("count").value, why),
        WorkKind::MixingValve => {
            list.want(K::MixingValve, one, &sized("mixed", size("mixed")), why);
            list.pieces(K::Tee, 1.0, why);
            list.pieces(K::Elbow, 2.0, why);
            list.metres(new_pipe(s), MIXING_M, why);
        }
        WorkKind::LoopControl => {
            list.pieces(K::LoopSwitch, 1.0, why);
            list.metres(K::PipeCover, size("length").base(), why);
        }
        WorkKind::CapFuel => {
            list.pieces(K::FuelCap, 1.0, why);
            list.pieces(K::FlueCap, 1.0, why);
        }
        WorkKind::ResizeFlue => list.pieces(K::FlueLiner, 1.0, why),
        WorkKind::FuelConnection => list.pieces(K::FuelValve, 1.0, why),
        // Nothing to bring, or nothing that could be named before somebody looked.
        WorkKind::PanelSpace
        | WorkKind::Service
        | WorkKind::MakeWay
        | WorkKind::CarryUpright
        | WorkKind::Precharge
        | WorkKind::Setpoint
        | WorkKind::DraughtTest => {}
    }
}

/// Cable to cut from for a run, m.
fn cable_m(run_m: f64) -> f64 {
    SLACK.0 * run_m + SLACK.1
}
