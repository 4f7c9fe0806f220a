//! What a plan is made from: the house, the heater that goes, the one that comes, and the works its findings ask for.

use super::step::StepKind;
use crate::core::candidates::{Candidate, CandidateId, offered};
use crate::core::case::{Case, HeaterKind};
use crate::core::finding::{Finding, Fit};
use crate::core::site::{Outlet, PipeMaterial};
use crate::core::work::{Work, WorkKind};
use std::borrow::Cow;

/// A work that a finding asks for, or may ask for.
pub(super) struct Wanted<'a> {
    /// The work.
    pub work: &'a Work,
    /// The finding's check.
    pub check: &'a Cow<'static, str>,
    /// With the values taken; otherwise only if measuring says so.
    pub sure: bool,
}

/// Everything a plan looks at.
pub(super) struct Scene<'a> {
    pub case: &'a Case,
    pub new: &'a Candidate,
    /// The heater that stands there.
    pub old: Candidate,
    pub wanted: Vec<Wanted<'a>>,
}

/// Whether a kind of heater has a burner.
pub(super) const fn burns(kind: HeaterKind) -> bool {
    matches!(kind, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil)
}

/// Whether a kind of heater has wires: an oil burner has, for its pump.
const fn wired(kind: HeaterKind) -> bool {
    matches!(kind, HeaterKind::Electric | HeaterKind::HeatPump | HeaterKind::Oil)
}

impl<'a> Scene<'a> {
    pub fn of(case: &'a Case, new: &'a Candidate, findings: &'a [Finding]) -> Scene<'a> {
        let mut wanted = Vec::new();
        for f in findings {
            for work in &f.work {
                // A finding that it fits names only work that belongs to any such job; a pipe by gravity stands beside
                // the pump that may be needed instead.
                let gravity = work.kind == WorkKind::CondensatePipe && f.likely == Fit::Fits;
                let sure = f.likely != Fit::Fits || f.fit == Fit::Fits || gravity;
                wanted.push(Wanted { work, check: &f.check, sure });
            }
        }
        Scene { case, new, old: offered::present_heater(case), wanted }
    }

    /// The heater stays.
    pub fn keeps(&self) -> bool {
        self.new.id == CandidateId::Keep
    }

    /// What heats the heater that goes, or stays.
    pub fn from(&self) -> HeaterKind {
        self.case.heater.kind.value
    }

    /// What heats the one that will stand there.
    pub fn to(&self) -> HeaterKind {
        self.new.label.kind
    }

    /// The one that will stand there has wires to connect.
    pub fn new_wires(&self) -> bool {
        wired(self.to()) && !self.new.is_plug_in()
    }

    /// The one that goes has a circuit that the new one has no use for.
    pub fn circuit_ends(&self) -> bool {
        !self.keeps() && self.old_wires() && !self.new_wires()
    }

    /// The one that goes has wires.
    pub fn old_wires(&self) -> bool {
        wired(self.from())
    }

    /// New pipe is plastic.
    pub fn plastic(&self) -> bool {
        matches!(self.case.site.pipes.value, PipeMaterial::Plastic)
    }

    /// Works of a kind.
    pub fn works(&self, kind: WorkKind) -> impl Iterator<Item = &Wanted<'a>> {
        self.wanted.iter().filter(move |w| w.work.kind == kind)
    }

    /// Works done in a step.
    pub fn works_of(&self, step: StepKind) -> impl Iterator<Item = &Wanted<'a>> {
        self.wanted.iter().filter(move |w| StepKind::of(w.work.kind) == step)
    }

    /// Whether a pump for condensate needs an outlet that is not there, and whether that is certain.
    pub fn pump_outlet(&self) -> Option<bool> {
        let none = matches!(self.case.circuit.own_120v.value, Outlet::No);
        (none && self.wants(WorkKind::CondensatePump))
            .then(|| self.works(WorkKind::CondensatePump).any(|w| w.sure))
    }

    /// Whether a kind of work is asked for, or may be.
    pub fn wants(&self, kind: WorkKind) -> bool {
        self.works(kind).next().is_some()
    }
}
