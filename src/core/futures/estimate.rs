//! The year of a household in one future, in strokes ([`crate::core::strokes`]), with the busiest morning as it is simulated.
//!
//! Heaters on offer have the same label in every future: they are calibrated once. The present heater's label is drawn
//! with everything else, and a calibration for each future would cost more than its year: its model is that of the case as
//! it stands, brought to the other label by the relations that the calibration rests on. What that misses is learned with
//! the rest ([`super::response`]).

use super::features::standby_w_per_k;
use crate::core::calendar::DayOfYear;
use crate::core::candidates::{Candidate, CandidateId, Label, offered};
use crate::core::case::Case;
use crate::core::climate::{mains::Mains, outdoor::OutdoorYear};
use crate::core::draws::{DrawYear, HouseholdUse};
use crate::core::heater::{Element, Model, Source};
use crate::core::label::ageing::Wear;
use crate::core::label::calibration::calibrate;
use crate::core::label::class;
use crate::core::pipeline::Cache;
use crate::core::room::model::RoomModel;
use crate::core::simulate::morning;
use crate::core::strokes::machine::Map;
use crate::core::strokes::{Climate, Demand, Strokes};
use crate::core::units::to_celsius;
use std::sync::{Arc, Mutex, PoisonError};
use uom::si::power::watt;
use uom::si::volume::cubic_meter;

/// Heaters as they are simulated, by label: those of the case as it stands, others when first asked for.
pub struct Heaters {
    /// The present one as it was when new, with the label it has in the case as it stands.
    kept: (Label, Model),
    offered: Mutex<Vec<Arc<Heater>>>,
}

/// A heater, and its heat pump's table.
struct Heater {
    label: Label,
    pressure_pa: f64,
    /// At some setpoint.
    model: Model,
    map: Option<Map>,
}

/// A heater as it stands in a case, at its setpoint and worn.
pub(super) struct Standing {
    model: Model,
    heater: Arc<Heater>,
}

/// A household that lives through a year: what all candidates share.
pub(super) struct Lived {
    demand: Demand,
    climate: Climate,
    room: RoomModel,
    coldest_c: f64,
    coldest_day: usize,
}

impl Heaters {
    /// Of a case as it stands; what the cache has need not be calibrated again.
    pub fn of(case: &Case, cache: &mut Cache) -> Heaters {
        let setpoint_c = to_celsius(case.heater.setpoint.value);
        let mut model = |candidate: &Candidate| cache.new_heater(candidate, setpoint_c);
        let present = offered::present_heater(case);
        let kept = (present.label.clone(), model(&present));
        let pressure_pa = RoomModel::of(&case.room, &case.place, 0.0).pressure_pa;
        let offered = offered::candidates(case)
            .iter()
            .filter(|c| c.id != CandidateId::Keep)
            .map(|c| Arc::new(Heater::of(c.label.clone(), model(c), pressure_pa)))
            .collect();
        Heaters { kept, offered: Mutex::new(offered) }
    }

    /// Whether these are the heaters of a case as it stands.
    pub fn are_of(&self, case: &Case) -> bool {
        self.kept.0 == offered::present_heater(case).label
    }

    /// A candidate as it stands in a case, in air of a pressure.
    fn heater(&self, candidate: &Candidate, case: &Case, pressure_pa: f64) -> (Model, Arc<Heater>) {
        let setpoint_c = to_celsius(case.heater.setpoint.value);
        if candidate.id == CandidateId::Keep {
            let model = self.kept_in(case);
            let heater = Heater::of(candidate.label.clone(), model.clone(), pressure_pa);
            return (model, Arc::new(heater));
        }
        let heater = self.offered(&candidate.label, setpoint_c, pressure_pa);
        (heater.model.at_setpoint(setpoint_c), heater)
    }

    fn offered(&self, label: &Label, setpoint_c: f64, pressure_pa: f64) -> Arc<Heater> {
        let mut known = self.offered.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(heater) = known.iter().find(|h| h.label == *label && h.pressure_pa == pressure_pa) {
            return Arc::clone(heater);
        }
        let model = calibrate(label, setpoint_c).model;
        let made = Arc::new(Heater::of(label.clone(), model, pressure_pa));
        known.push(Arc::clone(&made));
        made
    }

    /// The present heater in a case, worn as it is there.
    fn kept_in(&self, case: &Case) -> Model {
        let label = offered::present_heater(case).label;
        let new = self.kept_with(&label);
        let recovery = if let Source::Burner(b) = &new.source { b.recovery } else { 1.0 };
        let worn = Wear::of(&case.heater, recovery).on(&new, label.kind);
        worn.at_setpoint(to_celsius(case.heater.setpoint.value))
    }

    /// The present heater as it was when new, with another label.
    fn kept_with(&self, label: &Label) -> Model {
        let (was, kept) = &self.kept;
        if was.kind != label.kind {
            return class::model(label, &class::Build::usual(label.kind), kept.setpoint_c);
        }
        let mut model = kept.clone();
        let larger = label.nominal_volume.get::<cubic_meter>() / was.nominal_volume.get::<cubic_meter>();
        model.volume_m3 *= larger;
        model.height_m *= libm::cbrt(larger);
        let recovery = |l: &Label| class::recovery_efficiency(l.kind, l.uniform_energy_factor);
        model.standby_w_per_k *=
            standby_w_per_k(label, recovery(label)) / standby_w_per_k(was, recovery(was));
        let input_w = label.input.get::<watt>();
        let powered = |e: &mut Element| e.power_w = input_w;
        match &mut model.source {
            Source::Elements(e) => {
                powered(&mut e.upper);
                powered(&mut e.lower);
            }
            Source::Burner(b) => {
                b.input_w = input_w;
                b.recovery *= recovery(label) / recovery(was);
            }
            Source::HeatPump { pump, backup, .. } => {
                if let Some(e) = backup {
                    powered(&mut e.upper);
                    powered(&mut e.lower);
                }
                let costs = 1.0 / label.uniform_energy_factor - 1.0 / was.uniform_energy_factor;
                let poorer = class::poorness(pump) + costs / class::POORNESS_COSTS;
                class::set_poorness(pump, poorer.clamp(0.0, class::POOREST));
            }
        }
        model
    }
}

impl Heater {
    fn of(label: Label, model: Model, pressure_pa: f64) -> Heater {
        let map = model.pump().map(|pump| Map::of(pump, pressure_pa));
        Heater { label, pressure_pa, model, map }
    }
}

impl Lived {
    /// The household of a case.
    pub fn of(case: &Case, heaters: &Heaters) -> Lived {
        let draws = DrawYear::generate(&HouseholdUse::of(&case.household), case.seed);
        let outdoor = OutdoorYear::new(case.place.outdoor_mean.value, case.place.outdoor_range.value);
        let mains = Mains::from_outdoor(case.place.outdoor_mean.value, case.place.outdoor_range.value)
            .shifted(case.place.cold_water_shift.value);
        let mains_c: Vec<f32> = DayOfYear::all().map(|d| to_celsius(mains.on(d)) as f32).collect();
        let outdoor_c: Vec<f32> = DayOfYear::all().map(|d| to_celsius(outdoor.on(d)) as f32).collect();
        let mut room = RoomModel::of(&case.room, &case.place, 0.0);
        room.ducts = case.site.ducts.value;
        room.has_its_heater(&heaters.kept_in(case));
        let coldest = mains.coldest_day();
        Lived {
            demand: Demand::of(&draws),
            climate: Climate::of(&mains_c, &outdoor_c, &room),
            coldest_c: to_celsius(mains.on(coldest)),
            coldest_day: coldest.index(),
            room,
        }
    }

    /// A candidate as it stands there.
    pub fn heater(&self, case: &Case, candidate: &Candidate, heaters: &Heaters) -> Standing {
        let (model, heater) = heaters.heater(candidate, case, self.room.pressure_pa);
        Standing { model, heater }
    }

    /// A heater's year there; `days`: only those that stand for it, as a first look simulates them.
    pub fn year(&self, standing: &Standing, days: Option<&[(DayOfYear, f64)]>) -> Strokes {
        let (model, map) = (&standing.model, standing.heater.map.as_ref());
        match days {
            None => Strokes::year(model, map, &self.demand, &self.climate, &self.room),
            Some(days) => {
                // The first of them is run in.
                let run_in = days.first().map(|(day, _)| (*day, 0.0));
                let days = run_in.into_iter().chain(days.iter().copied());
                Strokes::of(model, map, &self.demand, &self.climate, &self.room, days)
            }
        }
    }

    /// Share of the busiest morning's water that falls short.
    pub fn short(&self, case: &Case, standing: &Standing) -> f64 {
        let (cold_c, day) = (self.coldest_c, self.coldest_day);
        morning::simulate(&standing.model, &case.household, cold_c, day, &self.room).short_share()
    }
}
