//! What stays true from one case to the next: calibrated heaters by label, the draw year by household, simulated years by
//! everything that moves them.

use crate::core::candidates::{Candidate, CandidateId, Label};
use crate::core::case::{Case, Household};
use crate::core::checks::Opened;
use crate::core::draws::{DrawYear, HouseholdUse};
use crate::core::heater::Model;
use crate::core::label::ageing::Wear;
use crate::core::label::calibration::{Calibrated, calibrate};
use crate::core::outcome::{Morning, YearResult};
use crate::core::room::model::RoomModel;
use crate::core::tariff::hours::Hours;
use std::sync::Arc;

/// Most heaters and years kept; a page's worth of changes of mind.
const KEPT: usize = 64;

/// What stays true from one case to the next.
#[derive(Default)]
pub struct Cache {
    calibrated: Vec<(Label, Calibrated)>,
    pub(super) draws: Option<(HouseholdUse, u64, Arc<DrawYear>)>,
    pub(super) simulated: Vec<(Key, Lived)>,
    /// Years with more air.
    pub(super) opened: Vec<((Candidate, Conditions), Opened)>,
}

/// Everything that moves a simulated year and morning, besides the heater.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Conditions {
    pub seed: u64,
    pub household: Household,
    pub mains_c: Vec<f32>,
    pub outdoor_c: Vec<f32>,
    pub room: RoomModel,
    pub setpoint_c: f64,
}

pub(super) type Key = (Candidate, Wear, Conditions);

/// A year and a morning as they were lived through, whatever the tariff.
#[derive(Clone)]
pub(super) struct Lived {
    pub year: YearResult,
    /// When it used its electricity; `None` where no tariff asked for that yet.
    pub hours: Option<Hours>,
    pub morning: Morning,
}

impl Cache {
    /// A candidate's heater as it is when new.
    pub fn new_heater(&mut self, candidate: &Candidate, setpoint_c: f64) -> Model {
        self.calibrated(candidate, setpoint_c).model
    }

    /// A heater as it stands in the house, with what age has changed: the present one is not new any more.
    pub(super) fn heater(
        &mut self,
        candidate: &Candidate,
        case: &Case,
        setpoint_c: f64,
    ) -> (Calibrated, Wear) {
        let new = self.calibrated(candidate, setpoint_c);
        if candidate.id != CandidateId::Keep {
            return (new, Wear::NONE);
        }
        let wear = Wear::since_new(&case.heater, &new.model);
        let model = wear.on(&new.model, candidate.label.kind);
        (Calibrated { model, ..new }, wear)
    }

    /// A calibrated heater at a setpoint. The rating test has a setpoint of its own: the household's moves the
    /// thermostat only.
    fn calibrated(&mut self, candidate: &Candidate, setpoint_c: f64) -> Calibrated {
        if let Some(at) = self.calibrated.iter().position(|(label, _)| *label == candidate.label) {
            // Last used, last dropped.
            let known = self.calibrated.remove(at);
            let found = known.1.clone();
            self.calibrated.push(known);
            return Calibrated { model: found.model.at_setpoint(setpoint_c), ..found };
        }
        let made = calibrate(&candidate.label, setpoint_c);
        keep(&mut self.calibrated, (candidate.label.clone(), made.clone()));
        made
    }

    /// What is known of a candidate's year and morning, with its hours where the case's tariff asks for them.
    pub(super) fn simulated(
        &self,
        candidate: &Candidate,
        wear: Wear,
        conditions: &Conditions,
        case: &Case,
    ) -> Option<Lived> {
        let by_hour = case.prices.tariff.is_by_hour();
        let known = self.simulated.iter().find(|((c, worn, of), lived)| {
            c == candidate && *worn == wear && of == conditions && (lived.hours.is_some() || !by_hour)
        });
        known.map(|(_, lived)| lived.clone())
    }
}

/// Puts an entry in, the oldest out when full.
pub(super) fn keep<T>(list: &mut Vec<T>, entry: T) {
    if list.len() >= KEPT {
        list.remove(0);
    }
    list.push(entry);
}
