//! What is known of a kind of step: the part of the day, what it does, what it guards, who does it and with what.

use super::step::StepKind;
use super::tool::Tool;
use crate::core::work::Trade;

/// Part of the day a step belongs to, in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Phase {
    /// Before anything is shut off.
    Ready,
    /// Made safe.
    Safe,
    /// The old one out.
    Out,
    /// The place made ready.
    Place,
    /// The new one in.
    In,
    /// Connected.
    Join,
    /// Filled.
    Fill,
    /// Started.
    Start,
}

impl Phase {
    /// The code in files.
    pub const fn code(self) -> &'static str {
        match self {
            Phase::Ready => "ready",
            Phase::Safe => "safe",
            Phase::Out => "out",
            Phase::Place => "place",
            Phase::In => "in",
            Phase::Join => "join",
            Phase::Fill => "fill",
            Phase::Start => "start",
        }
    }

    /// The key of its name.
    pub const fn key(self) -> &'static str {
        match self {
            Phase::Ready => "phase-ready",
            Phase::Safe => "phase-safe",
            Phase::Out => "phase-out",
            Phase::Place => "phase-place",
            Phase::In => "phase-in",
            Phase::Join => "phase-join",
            Phase::Fill => "phase-fill",
            Phase::Start => "phase-start",
        }
    }
}

/// What a step does that makes others wait, or waits for others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Opens a water pipe.
    Water,
    /// Takes water out of a tank.
    Empties,
    /// Touches wires.
    Wires,
    /// Touches a fuel line or burner.
    Fuel,
    /// Touches a flue.
    Flue,
    /// Moves the old tank.
    Lifts,
    /// Needs the place to be free.
    Place,
    /// Works on the new tank where it stands.
    Tank,
    /// Lets water in.
    Fills,
    /// Lets heat in: power, or a flame.
    Heats,
}

/// What is known of a kind of step.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// Which.
    pub kind: StepKind,
    /// Part of the day.
    pub phase: Phase,
    /// Who does it.
    pub trade: Trade,
    /// How long it takes, minutes.
    pub minutes: f64,
    /// How many people it takes.
    pub people: u8,
    /// It must be confirmed before going on.
    pub holds: bool,
    /// What it does that makes others wait.
    pub acts: &'static [Act],
    /// Acts that wait until this is confirmed.
    pub guards: &'static [Act],
    /// Steps that come before it, beside those that guard it.
    pub after: &'static [StepKind],
    /// What it is done with.
    pub tools: &'static [Tool],
    /// Keys of the cautions that belong to it.
    pub cautions: &'static [&'static str],
}

impl Rule {
    /// A step of one person, that holds nothing up.
    pub(super) const fn new(kind: StepKind, phase: Phase, trade: Trade, minutes: f64) -> Rule {
        Rule {
            kind,
            phase,
            trade,
            minutes,
            people: 1,
            holds: false,
            acts: &[],
            guards: &[],
            after: &[],
            tools: &[],
            cautions: &[],
        }
    }

    pub(super) const fn two(mut self) -> Rule {
        self.people = 2;
        self
    }

    /// A hold point, and what waits for it.
    pub(super) const fn holding(mut self, guards: &'static [Act]) -> Rule {
        self.holds = true;
        self.guards = guards;
        self
    }

    pub(super) const fn does(mut self, acts: &'static [Act]) -> Rule {
        self.acts = acts;
        self
    }

    pub(super) const fn after(mut self, after: &'static [StepKind]) -> Rule {
        self.after = after;
        self
    }

    pub(super) const fn with(mut self, tools: &'static [Tool]) -> Rule {
        self.tools = tools;
        self
    }

    pub(super) const fn careful(mut self, cautions: &'static [&'static str]) -> Rule {
        self.cautions = cautions;
        self
    }
}
