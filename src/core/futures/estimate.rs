//! The year of a household in one future, at a brisk pace ([`year::brisk`]), with the busiest morning as it is simulated.
//!
//! Heaters on offer have the same label in every future: they are calibrated once. The present heater's label is drawn
//! with everything else, and calibrated in every future.

use crate::core::candidates::{Candidate, CandidateId, Label, offered};
use crate::core::case::{Case, Tariff};
use crate::core::climate::days::Days;
use crate::core::draws::{DrawYear, HouseholdUse};
use crate::core::heat_pump::table::Table;
use crate::core::heater::Model;
use crate::core::label::ageing::Wear;
use crate::core::label::calibration::calibrate;
use crate::core::outcome::YearResult;
use crate::core::pipeline::Cache;
use crate::core::room::model::RoomModel;
use crate::core::simulate::morning;
use crate::core::simulate::year::{self, House};
use crate::core::tariff::hours::Meter;
use crate::core::units::to_celsius;
use std::sync::{Arc, Mutex, PoisonError};

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
    table: Option<Table>,
}

/// A heater as it stands in a case, at its setpoint and worn.
pub(super) struct Standing {
    model: Model,
    heater: Arc<Heater>,
}

/// A household that lives through a year: what all candidates share.
pub(super) struct Lived {
    draws: DrawYear,
    days: Days,
    room: RoomModel,
    kept: Arc<Standing>,
    /// Where the price goes by the hour.
    tariff: Option<Tariff>,
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
    fn kept_in(&self, case: &Case, pressure_pa: f64) -> Standing {
        let label = offered::present_heater(case).label;
        let setpoint_c = to_celsius(case.heater.setpoint.value);
        let new =
            if label == self.kept.0 { self.kept.1.clone() } else { calibrate(&label, setpoint_c).model };
        let worn = Wear::since_new(&case.heater, &new).on(&new, label.kind);
        let model = worn.at_setpoint(setpoint_c);
        let heater = Arc::new(Heater::of(label, model.clone(), pressure_pa));
        Standing { model, heater }
    }
}

impl Heater {
    fn of(label: Label, model: Model, pressure_pa: f64) -> Heater {
        let table = model.pump().map(|pump| Table::of(pump, pressure_pa));
        Heater { label, pressure_pa, model, table }
    }
}

impl Lived {
    /// The household of a case.
    pub fn of(case: &Case, heaters: &Heaters) -> Lived {
        let place = &case.place;
        let mut room = RoomModel::of(&case.room, place, 0.0);
        room.ducts = case.site.ducts.value;
        let kept = heaters.kept_in(case, room.pressure_pa);
        room.has_its_heater(&kept.model);
        Lived {
            draws: DrawYear::generate(&HouseholdUse::of(&case.household), case.seed).gathered(),
            days: Days::of(place.outdoor_mean.value, place.outdoor_range.value, place.cold_water_shift.value),
            room,
            kept: Arc::new(kept),
            tariff: case.prices.tariff.is_by_hour().then(|| case.prices.tariff.clone()),
        }
    }

    /// A candidate as it stands there.
    pub fn heater(&self, case: &Case, candidate: &Candidate, heaters: &Heaters) -> Arc<Standing> {
        if candidate.id == CandidateId::Keep {
            return Arc::clone(&self.kept);
        }
        let setpoint_c = to_celsius(case.heater.setpoint.value);
        let heater = heaters.offered(&candidate.label, setpoint_c, self.room.pressure_pa);
        Arc::new(Standing { model: heater.model.at_setpoint(setpoint_c), heater })
    }

    /// A heater's year there.
    pub fn year(&self, standing: &Standing) -> YearResult {
        let Days { mains_c, outdoor_c, .. } = &self.days;
        let house = House { draws: &self.draws, mains_c, outdoor_c, room: &self.room };
        let table = standing.heater.table.as_ref();
        let Some(tariff) = &self.tariff else { return year::brisk(&standing.model, table, &house) };
        let (mut year, meter) = year::brisk_watched(&standing.model, table, &house, Some(Meter::default()));
        year.peak_share = meter.map_or([0.0; 12], |m| tariff.shares(&m.hours()));
        year
    }

    /// Share of the busiest morning's water that falls short.
    pub fn short(&self, case: &Case, standing: &Standing) -> f64 {
        let (cold_c, day) = (self.days.coldest_c, self.days.coldest.index());
        let table = standing.heater.table.as_ref();
        morning::short_share(&standing.model, table, &case.household, cold_c, day, &self.room)
    }
}
