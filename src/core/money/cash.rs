//! What a candidate costs over the horizon: bought now, run, kept up, replaced at the end of its life.
//!
//! Energy is paid at the end of each year and grows at the stated rate; everything in today's money.
//! A heater bought within the horizon is credited at its end with the share of its life that is left, so
//! that short and long horizons compare alike.
//!
//! Where electricity costs more at some hours, each candidate pays by the hours at which it uses it, running by itself:
//! no schedule is assumed ([`crate::core::tariff`]).

use super::energy_price::{cost, electricity, fuel, house_heat, of_heater};

use super::present_value::{cumulated, payback_years, present_value};
use crate::core::candidates::offer::installed_price;
use crate::core::candidates::offered::same_again;
use crate::core::candidates::{Candidate, CandidateId, typical_price};
use crate::core::case::{Case, YesNo};
use crate::core::life::present;
use crate::core::outcome::{Cost, Finding, Fit, YearResult};

/// Electricity a dehumidifier is spared for a litre of condensate, kWh; common practice, no source.
const DEHUMIDIFIER_KWH_PER_L: f64 = 0.5;
/// Heat a house's cooling moves for one of electricity; common practice, no source.
const COOLING_EFFICIENCY: f64 = 3.0;
/// Months in which a dehumidifier runs: May to September.
pub const DAMP_MONTHS: std::ops::Range<usize> = 4..9;
/// Low and high energy prices of the band, as shares of the stated one, and their yearly growth against
/// the stated one: the spreads of the price questions.
const BAND: [(f64, f64); 2] = [(0.8, -0.015), (1.3, 0.02)];

/// What a candidate costs in a year and to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Running {
    /// Energy, first year.
    pub energy: f64,
    /// Heating, cooling and dehumidifier, first year.
    pub interaction: f64,
    /// Maintenance.
    pub maintenance: f64,
    /// Bought now, with the work the findings ask for, less rebate.
    pub upfront: f64,
    /// Bought again at the end of its life: no rebate, no work.
    pub again: f64,
    /// kg CO₂ a year.
    pub emission_kg: f64,
}

/// A candidate's running and buying cost.
pub fn running(c: &Candidate, case: &Case, year: &YearResult, findings: &[Finding]) -> Running {
    let p = &case.prices;
    let (grid, burned) = (of_heater(p, year), fuel(c.label.kind, p));
    let (kwh, fuel_kwh) = (year.electricity_year_kwh(), year.fuel_year_kwh());
    let heat = |peak_share| house_heat(case.room.house_heat.value, p, peak_share);
    // All, and at peak hours.
    let made_up = p.tariff.level(&year.heating_makeup_kwh);
    let mut spared = [0.0; 2];
    if matches!(case.room.house_cooled.value, YesNo::Yes) {
        spared = p.tariff.level(&year.cooling_relief_kwh).map(|kwh| kwh / COOLING_EFFICIENCY);
    }
    if matches!(case.room.dehumidifier.value, YesNo::Yes) {
        let mut damp = [0.0; 12];
        damp[DAMP_MONTHS].copy_from_slice(&year.condensate_l[DAMP_MONTHS]);
        for (spared, litres) in spared.iter_mut().zip(p.tariff.level(&damp)) {
            *spared += litres * DEHUMIDIFIER_KWH_PER_L;
        }
    }
    let buy = installed_price(c, case);
    let work = work(findings);
    let rebate = if c.is_heat_pump() { p.rebate.value } else { 0.0 };
    Running {
        energy: kwh * grid.price + fuel_kwh * burned.price,
        interaction: cost(made_up, heat) - cost(spared, |peak_share| electricity(p, peak_share)),
        maintenance: typical_price::maintenance_year(c.label.kind),
        upfront: if c.id == CandidateId::Keep { 0.0 } else { buy + work - rebate.min(buy + work) },
        again: buy,
        emission_kg: kwh * grid.co2_kg + fuel_kwh * burned.co2_kg + made_up[0] * heat(0.0).co2_kg
            - spared[0] * grid.co2_kg,
    }
}

/// Rough price of the work that the findings ask for, dollars.
pub fn work(findings: &[Finding]) -> f64 {
    findings.iter().filter(|f| f.fit != Fit::DoesNotFit).map(Finding::work_cost).sum()
}

/// Payments by year: the first entry now. `after` is what runs once the present heater has failed.
struct Plan {
    payments: Vec<f64>,
    /// Unused life at the horizon's end, in money.
    left_over: f64,
}

fn plan(
    own: &Running,
    after: Option<(&Running, f64)>,
    horizon: usize,
    growth: f64,
    energy_share: f64,
) -> Plan {
    let life = present::new_heater_years();
    let mut payments = vec![0.0; horizon + 1];
    let end = horizon as f64;
    let (first_bought, price_again, mut next) = match after {
        Some((same, fails)) => (fails, same.again, fails),
        None => (0.0, own.again, life),
    };
    payments[0] += own.upfront;
    let mut last_bought = first_bought;
    while next < end {
        payments[next.ceil() as usize] += price_again;
        last_bought = next;
        next += life;
    }
    let unused = ((last_bought + life - end) / life).clamp(0.0, 1.0);
    let left_over = if last_bought < end { price_again * unused } else { 0.0 };
    let mut grown = 1.0;
    for (y, paid) in payments.iter_mut().enumerate().skip(1) {
        // Within the year in which the present heater fails, each runs its share of it.
        let (before, later) = match after {
            Some((_, fails)) => {
                let share = (fails - (y - 1) as f64).clamp(0.0, 1.0);
                (share, 1.0 - share)
            }
            None => (1.0, 0.0),
        };
        let cost = |r: &Running| (r.energy + r.interaction) * energy_share * grown + r.maintenance;
        *paid += before * cost(own) + after.map_or(0.0, |(same, _)| later * cost(same));
        grown *= 1.0 + growth;
    }
    Plan { payments, left_over }
}

/// Every candidate's money. `runs` are in the order of the candidates; the first is the present heater.
pub fn costs(case: &Case, ids: &[CandidateId], runs: &[Running], years: &[&YearResult]) -> Vec<Cost> {
    let p = &case.prices;
    let horizon = (p.horizon_years.value.round() as usize).max(1);
    let (rate, growth) = (p.discount_rate.value, p.price_growth.value);
    let same = same_again(case);
    let same_run = ids.iter().position(|id| *id == same).and_then(|i| runs.get(i));
    let fails = present::expected_left(&case.heater);
    let after = |id: CandidateId| if id == CandidateId::Keep { same_run.map(|s| (s, fails)) } else { None };
    let plans: Vec<Plan> =
        ids.iter().zip(runs).map(|(id, r)| plan(r, after(*id), horizon, growth, 1.0)).collect();
    let Some(reference) = plans.first() else { return Vec::new() };
    let end = libm::pow(1.0 + rate, horizon as f64);
    let reference_cost = present_value(&reference.payments, rate) - reference.left_over / end;
    let spent_reference = cumulated(&reference.payments, 0.0);
    let discounted_reference = cumulated(&reference.payments, rate);
    let mut costs = Vec::with_capacity(ids.len());
    for ((id, run), (mine, year)) in ids.iter().zip(runs).zip(plans.iter().zip(years)) {
        let spent = cumulated(&mine.payments, 0.0);
        let band = BAND.map(|(share, more)| {
            cumulated(&plan(run, after(*id), horizon, growth + more, share).payments, 0.0)
        });
        let [low, high] = band;
        let drawn_l: f64 = year.drawn_m3.iter().sum::<f64>() * 1e3;
        let net_present_cost = present_value(&mine.payments, rate) - mine.left_over / end;
        // What costs more in the end has not paid for itself, even if it was ahead for a while.
        let pays = *id != CandidateId::Keep && net_present_cost < reference_cost;
        costs.push(Cost {
            upfront: run.upfront,
            energy_year: run.energy,
            interaction_year: run.interaction,
            maintenance_year: run.maintenance,
            net_present_cost,
            payback_years: if pays { payback_years(&spent, &spent_reference) } else { None },
            discounted_payback_years: if pays {
                payback_years(&cumulated(&mine.payments, rate), &discounted_reference)
            } else {
                None
            },
            spent,
            spent_low_high: (low, high),
            per_100_l: if drawn_l > 0.0 { (run.energy + run.interaction) / drawn_l * 100.0 } else { 0.0 },
            emission_kg: run.emission_kg,
        });
    }
    costs
}
