//! An installer's offer as the core sees it: complete heaters with an installed price, prices of the work
//! that findings may ask for, labour. Built from an offer's label figures by the `job` room.

use super::offered::{heat_pump_class, plain};
use super::{Candidate, CandidateId, typical_price};
use crate::core::case::{Case, HeaterKind};
use crate::core::outcome::{Finding, Fit};
use crate::core::units::GALLON_M3;
use crate::core::work::WorkKind;
use serde::{Deserialize, Serialize};
use uom::si::f64::Volume;
use uom::si::volume::cubic_meter;

/// Work beside the heater itself that an offer prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AdderKind {
    /// A new circuit, or room made for one.
    NewCircuit,
    /// A pump for condensate.
    CondensatePump,
    /// A louvred door or grilles.
    LouvredDoor,
    /// An expansion tank.
    ExpansionTank,
    /// Taking the old heater away.
    HaulAway,
    /// The permit.
    Permit,
    /// Something the installer names.
    Own,
}

impl AdderKind {
    /// Every kind, in the order shown. Only ever appended to: links carry the position.
    pub const ALL: [AdderKind; 7] = [
        AdderKind::NewCircuit,
        AdderKind::CondensatePump,
        AdderKind::LouvredDoor,
        AdderKind::ExpansionTank,
        AdderKind::HaulAway,
        AdderKind::Permit,
        AdderKind::Own,
    ];

    /// The code in files and locale keys (`adder-<code with dashes>`).
    pub const fn code(self) -> &'static str {
        match self {
            AdderKind::NewCircuit => "new_circuit",
            AdderKind::CondensatePump => "condensate_pump",
            AdderKind::LouvredDoor => "louvred_door",
            AdderKind::ExpansionTank => "expansion_tank",
            AdderKind::HaulAway => "haul_away",
            AdderKind::Permit => "permit",
            AdderKind::Own => "own",
        }
    }

    /// The key of its words.
    pub fn key(self) -> String {
        format!("adder-{}", self.code().replace('_', "-"))
    }

    /// Whether this is the work that a finding asks for.
    fn does(self, work: WorkKind) -> bool {
        match self {
            AdderKind::NewCircuit => {
                matches!(work, WorkKind::NewCircuit | WorkKind::NewOutlet | WorkKind::PanelSpace)
            }
            AdderKind::CondensatePump => work == WorkKind::CondensatePump,
            AdderKind::LouvredDoor => work == WorkKind::LouvredDoor,
            AdderKind::ExpansionTank => work == WorkKind::ExpansionTank,
            AdderKind::HaulAway | AdderKind::Permit | AdderKind::Own => false,
        }
    }
}

/// A priced piece of work.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Adder {
    /// What it is.
    pub kind: AdderKind,
    /// The installer's own name for it; empty where the kind says it.
    pub name: String,
    /// Price, dollars.
    pub price: f64,
    /// Part of every job, not only where a finding asks for it.
    pub always: bool,
}

/// A heater of an offer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Offered {
    /// The heater, with a class-typical figure wherever the label was silent.
    pub candidate: Candidate,
    /// Installed price, dollars; `None` where none was given.
    pub price: Option<f64>,
}

/// An offer; empty where nobody made one.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct CaseOffer {
    /// Its heaters.
    pub heaters: Vec<Offered>,
    /// Its further work.
    pub adders: Vec<Adder>,
    /// Labour added to each installed price, dollars.
    pub labour: f64,
}

impl CaseOffer {
    /// Its heaters of a kind.
    pub fn of_kind(&self, kind: HeaterKind) -> impl Iterator<Item = &Offered> + Clone {
        self.heaters.iter().filter(move |o| o.candidate.label.kind == kind)
    }

    /// What an offered heater costs before the work its findings ask for: its installed price, labour and
    /// what belongs to every job. `None` for a heater that is not in the offer or has no price there.
    pub fn price(&self, id: CandidateId) -> Option<f64> {
        let price = self.heaters.iter().find(|o| o.candidate.id == id)?.price?;
        Some(price + self.labour + self.adders.iter().filter(|a| a.always).map(|a| a.price).sum::<f64>())
    }

    /// Puts the offer's prices in the place of the rough ones where it prices the work a finding asks for.
    /// Work that is part of every job is paid with the heater and costs nothing more here.
    pub fn price_work(&self, findings: &mut [Finding]) {
        for work in findings.iter_mut().flat_map(|f| &mut f.work) {
            if let Some(adder) = self.adders.iter().find(|a| a.kind.does(work.kind)) {
                work.cost = if adder.always { 0.0 } else { adder.price };
            }
        }
    }

    /// Work of the offer that no finding asks for and that is not part of every job: a possible extra.
    pub fn possible<'a>(&'a self, findings: &'a [Finding]) -> impl Iterator<Item = &'a Adder> {
        let needed = |f: &&Finding| f.likely != Fit::Fits;
        let asked = move |a: &Adder| {
            findings.iter().filter(needed).flat_map(|f| &f.work).any(|w| a.kind.does(w.kind))
        };
        self.adders.iter().filter(move |a| !a.always && !asked(a))
    }
}

/// The heater typical of a kind, volume and voltage: what stands in for figures that a label does not say.
/// `volts` is 0 where nobody said.
pub fn typical(id: CandidateId, kind: HeaterKind, volume: Volume, volts: f64) -> Candidate {
    let gal = volume.get::<cubic_meter>() / GALLON_M3;
    if kind != HeaterKind::HeatPump {
        return plain(id, kind, gal);
    }
    let mut typical = heat_pump_class(gal, if volts > 0.0 { volts } else { 240.0 });
    typical.id = id;
    // A larger tank holds more hot water and burns no less: in proportion to the class's.
    typical.label.first_hour_rating *= volume.value / typical.label.nominal_volume.value;
    typical.label.nominal_volume = volume;
    typical
}

/// Installed price of a candidate, before rebate and the work its findings ask for, dollars.
pub fn installed_price(c: &Candidate, case: &Case) -> f64 {
    let p = &case.prices;
    let same = super::offered::same_again(case);
    // Keeping means buying the same again later.
    let id = if c.id == CandidateId::Keep { same } else { c.id };
    if let Some(price) = case.offer.price(id) {
        price
    } else if id == same {
        p.installed_same.value
    } else if c.is_heat_pump() {
        p.installed_heat_pump.value * typical_price::heat_pump_share(c.id)
    } else {
        typical_price::ELECTRIC_IN_PLACE_OF_FUEL
    }
}
