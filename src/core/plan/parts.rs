//! The list of parts of a job: computed from the house, the heaters and the works, each with its size, how much is
//! needed and how much to bring.
//!
//! Lengths and numbers of fittings that no rule gives are common practice, no source.

use super::part::{Merge, PartKind};
use super::scene::{Scene, burns};
use super::sold::{PANS_IN, size_up};
use super::step::StepKind;
use super::works::of_works;
use super::{Part, PartKind as K};
use crate::core::case::DrainKind;
use crate::core::message::{Arg, Message};
use crate::core::site::{Ducts, FuelLeft, PipeMaterial};
use crate::core::units::{Quantity, Unit};
use std::borrow::Cow;
use uom::si::length::meter;

/// Pipe from the tank's top to the house's, each side, where both tanks are as high, m.
const EACH_SIDE_M: f64 = 0.6;
/// Pipe that is covered on each side of the tank, m.
const COVERED_M: f64 = 1.8;
/// Ducts to another room, or one outdoors, m each; nobody is asked how far it is.
const DUCT_M: f64 = 3.0;

/// The list as it grows.
pub(super) struct List {
    parts: Vec<Part>,
}

/// Why a part is wanted: by which finding, and whether that is certain.
#[derive(Clone, Copy)]
pub(super) struct Why<'a> {
    /// The finding's check; none: any such job.
    pub check: Option<&'a Cow<'static, str>>,
    /// With the values taken.
    pub sure: bool,
    /// The step that uses it.
    pub step: StepKind,
}

/// Any such job needs it, for this step.
const fn always(step: StepKind) -> Why<'static> {
    Why { check: None, sure: true, step }
}

impl List {
    /// Wants pieces of a part.
    pub fn pieces(&mut self, kind: PartKind, count: f64, why: Why) {
        self.want(kind, Quantity::new(count, Unit::One), &[], why);
    }

    /// Wants a length of a part, m.
    pub fn metres(&mut self, kind: PartKind, run_m: f64, why: Why) {
        self.want(kind, Quantity::new(run_m, Unit::Metre), &[], why);
    }

    /// Wants so much of a part of these sizes, merged with what is wanted of it already. Nothing where none is needed.
    pub fn want(&mut self, kind: PartKind, needs: Quantity, sizes: &[(&'static str, Arg)], why: Why) {
        if !(needs.value > 0.0 && needs.value.is_finite()) {
            return;
        }
        let mut says = Message::new(kind.key());
        for (name, size) in sizes {
            says = says.with(name, size.clone());
        }
        match self.parts.iter_mut().find(|p| p.kind == kind) {
            Some(there) => merge(there, needs, says, &why),
            None => self.parts.push(Part {
                kind,
                says,
                needs,
                bring: needs,
                step: why.step,
                always: why.check.is_none(),
                checks: why.check.into_iter().cloned().collect(),
                maybe: !why.sure,
            }),
        }
    }
}

/// Two wants for one part.
fn merge(there: &mut Part, needs: Quantity, says: Message, why: &Why) {
    let how = there.kind.merge();
    // What is only perhaps needed adds nothing to what is needed for certain, and gives way to it.
    match (there.maybe, why.sure) {
        (true, true) => {
            there.needs = needs;
            there.says = says;
            there.step = why.step;
        }
        (false, false) => {}
        _ => {
            there.needs.value = match how {
                Merge::Sum => there.needs.value + needs.value,
                Merge::Most | Merge::Thickest => there.needs.value.max(needs.value),
            };
            for ((_, size), (_, other)) in there.says.args.iter_mut().zip(says.args) {
                if let (Arg::Quantity(a), Arg::Quantity(b)) = (&size, &other)
                    && (b.base() > a.base()) == (how != Merge::Thickest)
                {
                    *size = other;
                }
            }
        }
    }
    there.maybe = there.maybe && !why.sure;
    match why.check {
        None => there.always = true,
        Some(check) if !there.checks.contains(check) => there.checks.push(check.clone()),
        Some(_) => {}
    }
}

/// The parts of a job, by shelf.
pub(super) fn parts(s: &Scene) -> Vec<Part> {
    let mut list = List { parts: Vec::new() };
    if s.keeps() {
        list.pieces(K::Anode, 1.0, always(StepKind::Anode));
        list.pieces(K::ThreadTape, 1.0, always(StepKind::Anode));
    } else {
        heater(s, &mut list);
        water(s, &mut list);
        around(s, &mut list);
    }
    for wanted in &s.wanted {
        let step = StepKind::of(wanted.work.kind);
        of_works(s, wanted.work, Why { check: Some(wanted.check), sure: wanted.sure, step }, &mut list);
    }
    // The kinds stand by shelf.
    let mut parts = Vec::with_capacity(list.parts.len());
    for kind in PartKind::ALL {
        parts.extend(list.parts.iter().find(|p| p.kind == *kind).cloned());
    }
    for part in &mut parts {
        part.bring = brought(part.kind, part.needs);
    }
    parts
}

/// What to bring of a need, as it is sold.
fn brought(kind: PartKind, needs: Quantity) -> Quantity {
    Quantity::new(needs.unit.from_base(kind.sold().bring(needs.base())), needs.unit)
}

fn heater(s: &Scene, list: &mut List) {
    list.want(
        K::Heater,
        Quantity::new(1.0, Unit::One),
        &[("name", Arg::from(s.new.name()))],
        always(StepKind::CarryIn),
    );
}

/// Pipe and fittings between the house's pipes and the tank.
fn water(s: &Scene, list: &mut List) {
    let pipe = new_pipe(s);
    // A lower tank needs more pipe; a higher one has the old pipe cut back.
    let lower = s.old.body.height.get::<meter>() - s.new.body.height.get::<meter>();
    let each = EACH_SIDE_M + if lower > 0.0 { lower } else { 0.0 };
    list.metres(pipe, 2.0 * each, always(StepKind::Pieces));
    list.pieces(K::Elbow, 4.0, always(StepKind::Pieces));
    list.pieces(K::Coupling, 2.0, always(StepKind::Pieces));
    list.pieces(K::Clamp, 2.0, always(StepKind::ConnectWater));
    // Unions for service; kinds that keep metals apart where a pipe is metal.
    list.pieces(if s.plastic() { K::Union } else { K::DielectricUnion }, 2.0, always(StepKind::ConnectWater));
    list.pieces(K::Shutoff, 1.0, always(StepKind::Shutoff));
    list.pieces(K::VacuumRelief, 1.0, always(StepKind::VacuumRelief));
    list.pieces(K::Tee, 1.0, always(StepKind::Pieces));
    list.pieces(K::Adapter, 1.0, always(StepKind::Pieces));
    // The new tank's valve sits elsewhere than the old one's: its pipe is made anew.
    list.metres(K::ReliefPipe, relief_m(s), always(StepKind::Relief));
    list.pieces(K::ReliefFitting, 3.0, always(StepKind::Relief));
    list.metres(K::PipeCover, 2.0 * COVERED_M, always(StepKind::CoverPipes));
    list.pieces(K::ThreadTape, 1.0, always(StepKind::ConnectWater));
    if s.plastic() {
        // Two for each elbow and coupling, three for the tee.
        list.pieces(K::Rings, 2.0 * 6.0 + 3.0, always(StepKind::Pieces));
    } else {
        for kind in [K::Solder, K::Flux, K::Emery] {
            list.pieces(kind, 1.0, always(StepKind::Pieces));
        }
    }
}

/// What the kind of heater and the room ask for.
fn around(s: &Scene, list: &mut List) {
    if s.new_wires() {
        list.pieces(K::CableClamp, 1.0, always(StepKind::ConnectPower));
        // Two hot wires and the ground.
        list.pieces(K::WireJoint, 3.0, always(StepKind::ConnectPower));
    }
    if s.circuit_ends() {
        list.pieces(K::EndBox, 1.0, always(StepKind::EndCircuit));
    }
    if s.new.is_heat_pump() {
        list.pieces(K::Filter, 1.0, always(StepKind::Filter));
        list.pieces(K::DrainTrap, 1.0, always(StepKind::CondensateTest));
        let ducts = match s.case.site.ducts.value {
            Ducts::None => 0.0,
            Ducts::Indoors => 2.0,
            Ducts::Outdoors => 1.0,
        };
        list.metres(K::Duct, ducts * DUCT_M, always(StepKind::Ducts));
        list.pieces(K::DuctCollar, 2.0 * ducts, always(StepKind::Ducts));
    }
    if burns(s.to()) {
        list.pieces(K::VentPipe, 1.0, always(StepKind::VentConnect));
    }
    if burns(s.to()) || matches!(s.case.site.fuel_left.value, FuelLeft::Open | FuelLeft::Sealed) {
        list.pieces(K::FumeAlarm, 1.0, always(StepKind::HandOver));
    }
}

/// The kind of new pipe: steel is not cut and threaded any more, copper goes on from it.
pub(super) fn new_pipe(s: &Scene) -> PartKind {
    match s.case.site.pipes.value {
        PipeMaterial::Copper | PipeMaterial::Steel => K::CopperPipe,
        PipeMaterial::Plastic => K::PlasticPipe,
    }
}

/// Pipe from a relief valve at the tank's top to where it ends, m.
fn relief_m(s: &Scene) -> f64 {
    (s.new.body.height.get::<meter>() - 6.0 * 0.0254).max(0.3)
}

/// A pan for a tank: the size on sale that is large enough, inches.
pub(super) fn pan_in(at_least_in: f64) -> f64 {
    size_up(PANS_IN, at_least_in)
}

/// Whether a pan has somewhere to drain to.
pub(super) fn pan_drains(s: &Scene) -> bool {
    !matches!(s.case.drain.kind.value, DrainKind::None)
}
