//! Workings of money and emission.

use super::Draft;
use crate::core::candidates::CandidateId;
use crate::core::candidates::offer::installed_price;
use crate::core::candidates::offered::same_again;
use crate::core::case::{Case, HeaterKind, Known, Prices, Provenance};
use crate::core::life::present;
use crate::core::money::cash;
use crate::core::money::energy_price::{self, fuel, of_heater};
use crate::core::outcome::{CandidateOutcome, Working};
use crate::core::units::Unit;

/// What running a candidate costs in its first year.
fn year(c: &CandidateOutcome) -> f64 {
    c.cost.energy_year + c.cost.interaction_year + c.cost.maintenance_year
}

/// The bill's own price of a fuel, with its unit.
fn fuel_price(case: &Case, kind: HeaterKind) -> Option<(Known<f64>, Unit)> {
    match kind {
        HeaterKind::Gas => Some((case.prices.gas, Unit::DollarPerTherm)),
        HeaterKind::Propane => Some((case.prices.propane, Unit::DollarPerGallon)),
        HeaterKind::Oil => Some((case.prices.oil, Unit::DollarPerGallon)),
        HeaterKind::Electric | HeaterKind::HeatPump => None,
    }
}

/// What the price of electricity rests on: where it goes by the hour, both prices and the hours.
fn electricity_from(p: &Prices) -> Provenance {
    let t = &p.tariff;
    if !t.is_by_hour() {
        return p.electricity.from;
    }
    let hours = t.from_hour.from.min(t.to_hour.from).min(t.weekdays_only.from).min(t.season.from);
    t.peak.from.min(t.low.from).min(hours)
}

/// Running cost of the first year.
pub(super) fn running(case: &Case, c: &CandidateOutcome) -> Working {
    let p = &case.prices;
    let simulated = Provenance::Assumed;
    let by_hour = p.tariff.is_by_hour();
    let relation = if by_hour { "relation-running-by-hour" } else { "relation-running" };
    let mut draft = Draft::new("figure-running", relation, "source-prices").quantity(
        "input-electricity",
        c.year.electricity_year_kwh(),
        Unit::KilowattHour,
        simulated,
    );
    draft = if by_hour {
        draft
            .quantity("input-peak-share", 100.0 * c.year.peak_share_year(), Unit::Percent, simulated)
            .known("input-price-peak", p.tariff.peak, Unit::DollarPerKwh)
            .known("input-price-low", p.tariff.low, Unit::DollarPerKwh)
            .quantity(
                "input-price-mean",
                of_heater(p, &c.year).price,
                Unit::DollarPerKwh,
                electricity_from(p),
            )
    } else {
        draft.known("input-price-electricity", p.electricity, Unit::DollarPerKwh)
    };
    if let Some((price, unit)) = fuel_price(case, c.candidate.label.kind) {
        draft = draft
            .quantity("input-fuel", c.year.fuel_year_kwh(), Unit::KilowattHour, simulated)
            .known("input-price-fuel", price, unit)
            .quantity(
                "input-price-fuel-kwh",
                fuel(c.candidate.label.kind, p).price,
                Unit::DollarPerKwh,
                price.from,
            );
    }
    draft
        .quantity("input-energy-cost", c.cost.energy_year, Unit::Dollar, electricity_from(p))
        .quantity("input-interaction", c.cost.interaction_year, Unit::Dollar, case.room.house_heat.from)
        .quantity("input-maintenance", c.cost.maintenance_year, Unit::Dollar, Provenance::Assumed)
        .gives(year(c), Unit::Dollar)
}

/// Paid at the start.
pub(super) fn upfront(case: &Case, c: &CandidateOutcome) -> Working {
    let p = &case.prices;
    let draft = Draft::new("figure-upfront", "relation-upfront", "source-prices");
    if c.candidate.id == CandidateId::Keep {
        return draft
            .quantity("input-installed", 0.0, Unit::Dollar, Provenance::Answered)
            .gives(0.0, Unit::Dollar);
    }
    let from = if case.offer.price(c.candidate.id).is_some() {
        Provenance::Answered
    } else if c.candidate.is_heat_pump() {
        p.installed_heat_pump.from
    } else if c.candidate.id == same_again(case) {
        p.installed_same.from
    } else {
        Provenance::Assumed
    };
    let work = cash::work(&c.findings);
    let mut draft = draft
        .quantity("input-installed", installed_price(&c.candidate, case), Unit::Dollar, from)
        .quantity("input-work", work, Unit::Dollar, Provenance::Assumed);
    if c.candidate.is_heat_pump() {
        draft = draft.known("input-rebate", p.rebate, Unit::Dollar);
    }
    draft.gives(c.cost.upfront, Unit::Dollar)
}

/// Everything over the horizon.
pub(super) fn net_present_cost(case: &Case, c: &CandidateOutcome) -> Working {
    let p = &case.prices;
    let mut draft =
        Draft::new("figure-net-present-cost", "relation-net-present-cost", "source-present-value")
            .quantity("input-upfront", c.cost.upfront, Unit::Dollar, p.installed_heat_pump.from)
            .quantity("input-running", year(c), Unit::Dollar, electricity_from(p))
            .known("input-horizon", p.horizon_years, Unit::Year)
            .known("input-discount", p.discount_rate.map(|r| 100.0 * r), Unit::Percent)
            .known("input-growth", p.price_growth.map(|g| 100.0 * g), Unit::Percent)
            .quantity("input-new-life", present::new_heater_years(), Unit::Year, Provenance::Assumed);
    if c.candidate.id == CandidateId::Keep {
        draft = draft
            .known("input-age", case.heater.age_years, Unit::Year)
            .quantity(
                "input-years-left",
                present::expected_left(&case.heater),
                Unit::Year,
                case.heater.age_years.from,
            )
            .known("input-installed-same", p.installed_same, Unit::Dollar);
    }
    draft.gives(c.cost.net_present_cost, Unit::Dollar)
}

/// Saved a year against keeping the present heater.
pub(super) fn saved(case: &Case, c: &CandidateOutcome, keep: &CandidateOutcome) -> Working {
    let from = electricity_from(&case.prices);
    Draft::new("figure-saved", "relation-saved", "source-prices")
        .quantity("input-running-keep", year(keep), Unit::Dollar, from)
        .quantity("input-running", year(c), Unit::Dollar, from)
        .gives(year(keep) - year(c), Unit::Dollar)
}

/// Years until it has cost no more than keeping.
pub(super) fn payback(c: &CandidateOutcome, keep: &CandidateOutcome) -> Working {
    let at = |series: &[f64], y: usize| series.get(y).copied().unwrap_or(0.0);
    let y = c.cost.payback_years.map_or(c.cost.spent.len().saturating_sub(1), |y| y.ceil() as usize);
    let draft = Draft::new("figure-payback", "relation-payback", "source-payback")
        .quantity("input-upfront", c.cost.upfront, Unit::Dollar, Provenance::Assumed)
        .quantity("input-compared-year", y as f64, Unit::Year, Provenance::Assumed)
        .quantity("input-spent", at(&c.cost.spent, y), Unit::Dollar, Provenance::Assumed)
        .quantity("input-spent-keep", at(&keep.cost.spent, y), Unit::Dollar, Provenance::Assumed);
    match c.cost.payback_years {
        Some(years) => draft.gives(years, Unit::Year),
        None => {
            let mut working = draft.gives(0.0, Unit::Year);
            working.result = crate::core::message::Message::new("working-no-payback").into();
            working
        }
    }
}

/// CO₂ of a year.
pub(super) fn emission(case: &Case, c: &CandidateOutcome) -> Working {
    let p = &case.prices;
    let grams = |kg: f64| crate::core::message::Arg::Number(kg, 3);
    let mut draft = Draft::new("figure-emission", "relation-emission", "source-emission")
        .quantity("input-electricity", c.year.electricity_year_kwh(), Unit::KilowattHour, Provenance::Assumed)
        .put("input-grid-emission", grams(p.grid_emission.value), p.grid_emission.from);
    if c.year.fuel_year_kwh() > 0.0 {
        draft = draft
            .quantity("input-fuel", c.year.fuel_year_kwh(), Unit::KilowattHour, Provenance::Assumed)
            .put("input-fuel-emission", grams(fuel(c.candidate.label.kind, p).co2_kg), Provenance::Assumed);
    }
    // Emission is the same at every hour.
    let heat = energy_price::house_heat(case.room.house_heat.value, p, 0.0);
    draft
        .quantity(
            "input-made-up",
            c.year.heating_makeup_kwh.iter().sum(),
            Unit::KilowattHour,
            Provenance::Assumed,
        )
        .put("input-heat-emission", grams(heat.co2_kg), case.room.house_heat.from)
        .gives(c.cost.emission_kg, Unit::Kilogram)
}
