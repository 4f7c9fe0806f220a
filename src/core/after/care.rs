//! What a heater asks for through the years, and when. Common practice of the trade, no source; the heater's own
//! instructions come first.

use super::{Date, Fitted};
use crate::core::candidates::CandidateId;
use crate::core::case::{HeaterKind, RoomKind, YesNo};
use crate::core::checks::rules::practice;
use crate::core::finding::Fit;
use crate::core::message::Message;
use crate::core::site::Recirculation;
use crate::core::units::Unit;
use crate::core::work::WorkKind;

/// Soft enough that a tank needs flushing half as often, kg/m³ (60 mg/L, "soft" on the usual scale).
const SOFT_KG_PER_M3: f64 = 0.06;

/// Who sees to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hands {
    /// The household.
    Household,
    /// A licensed plumber.
    Plumber,
    /// Whoever is licensed for fuel and flues.
    Fuel,
}

/// Something to see to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Task {
    /// The air filter.
    Filter,
    /// The condensate's way.
    Condensate,
    /// The condensate pump and its overflow switch.
    CondensatePump,
    /// A first look for drips.
    Drips,
    /// The tank flushed.
    Flush,
    /// The anode.
    Anode,
    /// The relief valve.
    Relief,
    /// The expansion tank's cushion.
    Expansion,
    /// The mixing valve.
    MixingValve,
    /// The recirculation pump.
    Loop,
    /// Burner and flue.
    Burner,
    /// The meter against what was said.
    Meter,
}

/// A task with its dates.
#[derive(Clone, Debug, PartialEq)]
pub struct Due {
    /// Which.
    pub task: Task,
    /// The first time.
    pub first: Date,
    /// Months from one time to the next; `None`: once.
    pub every_months: Option<u32>,
    /// Who does it.
    pub hands: Hands,
    /// How, and why this often.
    pub how: Message,
}

impl Task {
    /// Every task.
    pub const ALL: [Task; 12] = [
        Task::Filter,
        Task::Condensate,
        Task::CondensatePump,
        Task::Drips,
        Task::Flush,
        Task::Anode,
        Task::Relief,
        Task::Expansion,
        Task::MixingValve,
        Task::Loop,
        Task::Burner,
        Task::Meter,
    ];

    /// The code in files and calendars.
    pub const fn code(self) -> &'static str {
        match self {
            Task::Filter => "filter",
            Task::Condensate => "condensate",
            Task::CondensatePump => "condensate_pump",
            Task::Drips => "drips",
            Task::Flush => "flush",
            Task::Anode => "anode",
            Task::Relief => "relief",
            Task::Expansion => "expansion",
            Task::MixingValve => "mixing_valve",
            Task::Loop => "loop",
            Task::Burner => "burner",
            Task::Meter => "meter",
        }
    }

    /// The key of its name.
    pub const fn key(self) -> &'static str {
        match self {
            Task::Filter => "care-filter",
            Task::Condensate => "care-condensate",
            Task::CondensatePump => "care-condensate-pump",
            Task::Drips => "care-drips",
            Task::Flush => "care-flush",
            Task::Anode => "care-anode",
            Task::Relief => "care-relief",
            Task::Expansion => "care-expansion",
            Task::MixingValve => "care-mixing-valve",
            Task::Loop => "care-loop",
            Task::Burner => "care-burner",
            Task::Meter => "care-meter",
        }
    }
}

impl Hands {
    /// The key of its words.
    pub const fn key(self) -> &'static str {
        match self {
            Hands::Household => "care-by-household",
            Hands::Plumber => "care-by-plumber",
            Hands::Fuel => "care-by-fuel",
        }
    }
}

impl Due {
    /// The dates up to a day, the first one first.
    pub fn dates(&self, until: Date) -> Vec<Date> {
        let mut all = Vec::new();
        let mut months = 0;
        loop {
            let date = self.first.plus_months(months);
            if date > until {
                return all;
            }
            all.push(date);
            match self.every_months {
                Some(every) if every > 0 => months += every,
                _ => return all,
            }
        }
    }
}

/// Whether work of a kind is there once the heater stands: asked for with the values taken.
fn put_in(fitted: &Fitted, kind: WorkKind) -> bool {
    let asked = |f: &&crate::core::finding::Finding| f.work.iter().any(|w| w.kind == kind);
    fitted.findings.iter().filter(asked).any(|f| f.likely > Fit::Fits)
}

/// Everything to see to, in the order of the first dates.
pub fn schedule(fitted: &Fitted, installed: Date) -> Vec<Due> {
    let (case, label) = (fitted.case, &fitted.candidate.label);
    let pump = matches!(label.kind, HeaterKind::HeatPump);
    let burns = matches!(label.kind, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil);
    let hardness = case.heater.hardness_kg_per_m3.value;
    let (hard, soft) = (hardness >= practice::VERY_HARD_KG_PER_M3, hardness < SOFT_KG_PER_M3);
    let grains = Unit::GrainPerGallon.from_base(hardness);
    let mut all: Vec<Due> = Vec::new();
    let mut add = |task, first_months: u32, every_months, hands, how: Message| {
        let due = Due { task, first: installed.plus_months(first_months), every_months, hands, how };
        let at = all.partition_point(|before| before.first <= due.first);
        all.insert(at, due);
    };
    let new = fitted.candidate.id != CandidateId::Keep;
    if new {
        let how = Message::new("care-drips-how");
        add(Task::Drips, 1, Some(12), Hands::Household, how);
    }
    if pump {
        // Dryers and cars make dust.
        let dusty = matches!(case.room.kind.value, RoomKind::Utility | RoomKind::Garage);
        let every = if dusty { 2 } else { 3 };
        let id = if dusty { "care-filter-how-dusty" } else { "care-filter-how" };
        add(Task::Filter, every, Some(every), Hands::Household, Message::new(id));
        add(Task::Condensate, 6, Some(6), Hands::Household, Message::new("care-condensate-how"));
        if put_in(fitted, WorkKind::CondensatePump) {
            let how = Message::new("care-condensate-pump-how");
            add(Task::CondensatePump, 6, Some(6), Hands::Household, how);
        }
    }
    let (every, id) = match (hard, soft) {
        (true, _) => (6, "care-flush-how-hard"),
        (false, true) => (24, "care-flush-how-soft"),
        (false, false) => (12, "care-flush-how"),
    };
    let how = Message::new(id).quantity("hard", grains, Unit::GrainPerGallon);
    add(Task::Flush, every, Some(every), Hands::Household, how);
    let (first, every, id) = if hard { (24, 24, "care-anode-how-hard") } else { (36, 24, "care-anode-how") };
    let how = Message::new(id).quantity("hard", grains, Unit::GrainPerGallon);
    add(Task::Anode, first, Some(every), Hands::Plumber, how);
    add(Task::Relief, 12, Some(12), Hands::Plumber, Message::new("care-relief-how"));
    if case.site.expansion_m3.value > 0.0 || put_in(fitted, WorkKind::ExpansionTank) {
        add(Task::Expansion, 12, Some(12), Hands::Plumber, Message::new("care-expansion-how"));
    }
    if matches!(case.site.mixing_valve.value, YesNo::Yes) || put_in(fitted, WorkKind::MixingValve) {
        add(Task::MixingValve, 12, Some(12), Hands::Plumber, Message::new("care-mixing-valve-how"));
    }
    if !matches!(case.site.recirculation.value, Recirculation::None) {
        add(Task::Loop, 12, Some(12), Hands::Household, Message::new("care-loop-how"));
    }
    if burns {
        add(Task::Burner, 12, Some(12), Hands::Fuel, Message::new("care-burner-how"));
    }
    if new {
        add(Task::Meter, 3, Some(12), Hands::Household, Message::new("care-meter-how"));
    }
    all
}
