//! Workings of energy and hot water.

use super::Draft;
use crate::core::candidates::CandidateId;
use crate::core::case::{Case, Provenance};
use crate::core::label::{ageing::Wear, class};
use crate::core::message::Arg;
use crate::core::outcome::{CandidateOutcome, Working};
use crate::core::units::{Unit, to_celsius};
use uom::si::time::minute;
use uom::si::volume::cubic_meter;
use uom::si::volume_rate::liter_per_minute;

fn litres(m3: f64) -> f64 {
    m3 * 1e3
}

/// Energy of the year: what the simulation was given and what it used.
pub(super) fn energy(case: &Case, c: &CandidateOutcome) -> Working {
    let y = &c.year;
    let h = &case.household;
    let simulated = h.showers_per_day.from.min(case.room.winter.from).min(super::label_provenance(case, c));
    let drawn_l_a_day = litres(y.drawn_m3.iter().sum::<f64>()) / 365.0;
    let mut draft = Draft::new("figure-energy", "relation-energy", "source-simulation")
        .known("input-people", h.adults.map(|_| h.people()), Unit::One)
        .quantity(
            "input-setpoint",
            to_celsius(case.heater.setpoint.value),
            Unit::DegC,
            case.heater.setpoint.from,
        )
        .quantity("input-room-winter", to_celsius(case.room.winter.value), Unit::DegC, case.room.winter.from)
        .put("input-label-factor", Arg::Number(c.label.factor, 2), super::label_provenance(case, c))
        .quantity("input-drawn-a-day", drawn_l_a_day, Unit::Litre, simulated)
        .quantity("input-heat-delivered", y.delivered_kwh.iter().sum(), Unit::KilowattHour, simulated)
        .quantity("input-electricity", y.electricity_year_kwh(), Unit::KilowattHour, simulated);
    if y.fuel_year_kwh() > 0.0 {
        draft = draft.quantity("input-fuel", y.fuel_year_kwh(), Unit::KilowattHour, simulated);
    }
    if c.candidate.id == CandidateId::Keep {
        let h = &case.heater;
        let new = class::recovery_efficiency(h.kind.value, c.label.factor);
        let lost = 100.0 * (1.0 - Wear::of(h, new).recovery);
        if lost > 0.0 {
            let from = h.age_years.from.min(h.hardness_kg_per_m3.from).min(h.signs.from);
            draft = draft.quantity("input-flue-dirt", lost, Unit::Percent, from);
        }
    }
    if c.candidate.is_heat_pump() {
        draft = draft.quantity("input-elements", y.elements_kwh.iter().sum(), Unit::KilowattHour, simulated);
    }
    draft.gives(y.electricity_year_kwh() + y.fuel_year_kwh(), Unit::KilowattHour)
}

/// First-hour rating: the label's figure, and what the model of that heater gives in the test.
pub(super) fn first_hour(c: &CandidateOutcome, from: Provenance) -> Working {
    let model = litres(c.label.model_first_hour.get::<cubic_meter>());
    Draft::new("figure-first-hour", "relation-first-hour", "source-rating-test")
        .quantity(
            "input-label-first-hour",
            litres(c.label.first_hour.get::<cubic_meter>()),
            Unit::Litre,
            from,
        )
        .put("input-label-factor", Arg::Number(c.label.factor, 2), from)
        .put("input-model-factor", Arg::Number(c.label.model_factor, 2), from)
        .gives(model, Unit::Litre)
}

/// The busiest morning: what was asked and what fell short.
pub(super) fn busiest_morning(case: &Case, c: &CandidateOutcome) -> Working {
    let h = &case.household;
    let asked = litres(c.morning.asked.get::<cubic_meter>());
    Draft::new("figure-morning", "relation-morning", "source-simulation")
        .known("input-showers-in-a-row", h.showers_in_a_row, Unit::One)
        .known("input-shower-time", h.shower_time.map(|t| t.get::<minute>()), Unit::Minute)
        .known("input-shower-flow", h.shower_flow.map(|f| f.get::<liter_per_minute>()), Unit::LitrePerMinute)
        .quantity(
            "input-setpoint",
            to_celsius(case.heater.setpoint.value),
            Unit::DegC,
            case.heater.setpoint.from,
        )
        .quantity("input-asked", asked, Unit::Litre, h.showers_in_a_row.from)
        .gives(litres(c.morning.shortfall.get::<cubic_meter>()), Unit::Litre)
}
