//! Does it fit: one file a check, each a function from candidate, case and simulated year to a finding.
//!
//! A check says what the published rule asks and what was entered; never that something is permitted. What rules ask
//! is data ([`rules`]); the physics is in `core::fit`. What nobody answered is taken over its plausible range: only
//! where the range lies on both sides of the rule does a check ask to measure first.
//!
//! To add one: a file here, a line in the list below, its words in `checks.ftl` (`check-<code>` and what it says).

mod finding;
mod judge;
pub mod rules;

mod air_temperature;
mod air_volume;
mod bonding;
mod burner_air;
mod circuit;
mod conductor;
mod disconnect;
mod drain;
mod drain_frost;
mod draught;
mod expansion;
mod floor;
mod flue;
mod footprint;
mod fuel_line;
mod garage;
mod ground_wire;
mod hardness;
mod headroom;
mod hotter;
mod joints;
pub(in crate::core) mod noise;
mod outlet;
mod overcurrent;
mod pan;
mod panel;
mod pressure;
mod recirculation;
mod relief;
mod scald;
mod service_space;
mod shutoff;
mod stand_up;
mod storage;
mod straps;
mod supply;
mod tank_state;
mod vacuum;
mod voltage_drop;
mod way_in;

use super::candidates::{Candidate, CandidateId};
use super::case::{Case, HeaterKind};
use super::finding::{Finding, Fit};
use super::outcome::YearResult;
use super::site::PipeMaterial;
use judge::Could;
use rules::Rules;

/// A heat pump's years with more air than its room holds, by a sample of days.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// With a louvred door to the next room.
    pub door: YearResult,
    /// With ducts to another room.
    pub ducts: YearResult,
}

/// What a check sees.
pub struct Seen<'a> {
    /// The heater.
    pub candidate: &'a Candidate,
    /// The house.
    pub case: &'a Case,
    /// The heater's year in it.
    pub year: &'a YearResult,
    /// Its years with more air, where those were simulated.
    pub opened: Option<&'a Opened>,
    /// What rules ask.
    pub rules: &'static Rules,
}

impl Seen<'_> {
    /// What metal pipes ask work for and plastic ones do not; nobody having said which, it may be either.
    fn metal_pipes(&self) -> Could {
        let pipes = self.case.site.pipes;
        let at = if matches!(pipes.value, PipeMaterial::Plastic) { Fit::Fits } else { Fit::FitsWithWork };
        Could::only(at).or(pipes.is_assumed(), Could::only(Fit::Fits))
    }

    /// True for the heater that is there already.
    fn keeps(&self) -> bool {
        self.candidate.id == CandidateId::Keep
    }

    /// True for a new heater on a two-pole circuit.
    fn two_pole(&self) -> bool {
        let electric = matches!(self.candidate.label.kind, HeaterKind::Electric | HeaterKind::HeatPump);
        !self.keeps() && electric && !self.candidate.is_plug_in()
    }

    /// True for a new heater with a burner.
    fn new_burner(&self) -> bool {
        !self.keeps() && burns(self.candidate.label.kind)
    }
}

/// Whether a kind of heater has a burner.
const fn burns(kind: HeaterKind) -> bool {
    matches!(kind, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil)
}

/// A check: `None` where it does not apply.
pub type Check = fn(&Seen) -> Option<Finding>;

/// Every check, in the order in which they stop a job.
const ALL: [Check; 40] = [
    tank_state::check,
    headroom::check,
    footprint::check,
    way_in::check,
    stand_up::check,
    air_temperature::check,
    draught::check,
    circuit::check,
    panel::check,
    outlet::check,
    conductor::check,
    ground_wire::check,
    overcurrent::check,
    supply::check,
    voltage_drop::check,
    disconnect::check,
    air_volume::check,
    burner_air::check,
    drain::check,
    drain_frost::check,
    floor::check,
    noise::check,
    flue::check,
    fuel_line::check,
    garage::check,
    service_space::check,
    pressure::check,
    expansion::check,
    relief::check,
    pan::check,
    vacuum::check,
    straps::check,
    scald::check,
    storage::check,
    shutoff::check,
    joints::check,
    bonding::check,
    recirculation::check,
    hotter::check,
    hardness::check,
];

/// Every finding about a heater, what stops the job first.
pub fn all(seen: &Seen) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::with_capacity(ALL.len());
    for finding in ALL.iter().filter_map(|check| check(seen)) {
        // A sorted place by hand: the library's sorting is 4 kB of the page for each kind of list.
        let at = findings.partition_point(|f| !finding.stops_before(f));
        findings.insert(at, finding);
    }
    findings
}

/// Whether a heater may lack air, so that its year with the room opened is worth simulating.
pub fn wants_opening(candidate: &Candidate, case: &Case) -> bool {
    air_volume::short(candidate, case)
}
