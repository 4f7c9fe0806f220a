//! What a kilowatt-hour costs and emits, by fuel.
//!
//! Where the case's tariff goes by the hour, nothing pays the flat price of electricity any more. A heater pays the mean
//! price of the hours at which it uses its electricity, by its simulated year. What the house's heating, cooling and
//! dehumidifier use more or less because of it is not simulated by the hour: it is taken as used evenly round the clock
//! (common practice, no source), month by month, and pays the mean price of a month's hours. So nobody who said their two
//! prices and no flat one pays a typical one of their state for a part of the house's electricity.

use crate::core::case::{HeaterKind, HouseHeat, Prices};
use crate::core::climate::prices::{GAS_KG_CO2_PER_THERM, OIL_KG_CO2_PER_GAL, PROPANE_KG_CO2_PER_GAL};
use crate::core::outcome::YearResult;
use crate::core::units::{BTU_J, KWH_J, THERM_J};

/// Higher heating value of propane, kWh a US gallon (91,500 Btu; US energy statistics, from memory).
pub const PROPANE_KWH_PER_GAL: f64 = 91_500.0 * BTU_J / KWH_J;
/// Higher heating value of heating oil, kWh a US gallon (138,500 Btu; the same, from memory).
pub const OIL_KWH_PER_GAL: f64 = 138_500.0 * BTU_J / KWH_J;
/// Kilowatt-hours a therm.
pub const THERM_KWH: f64 = THERM_J / KWH_J;

/// Price and emission of one kilowatt-hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PerKwh {
    /// Dollars.
    pub price: f64,
    /// kg CO₂.
    pub co2_kg: f64,
}

/// Electricity of which a share is used at peak hours: where the tariff goes by the hour that counts, else all of it is at
/// the flat price.
pub fn electricity(p: &Prices, peak_share: f64) -> PerKwh {
    let price = if p.tariff.is_by_hour() { p.tariff.mean_price(peak_share) } else { p.electricity.value };
    PerKwh { price, co2_kg: p.grid_emission.value }
}

/// Electricity of a heater, over its simulated year.
pub fn of_heater(p: &Prices, year: &YearResult) -> PerKwh {
    electricity(p, year.peak_share_year())
}

/// What energy costs, dollars, given all of it and how much of that is used at peak hours ([`Tariff::level`]); `per` is
/// the price of one of which a share is used at peak hours. At one price that is all of it at this price, to the bit.
///
/// [`Tariff::level`]: crate::core::case::Tariff::level
pub fn cost([all, at_peak]: [f64; 2], per: impl Fn(f64) -> PerKwh) -> f64 {
    let low = per(0.0).price;
    all * low + at_peak * (per(1.0).price - low)
}

/// The fuel a heater burns; electricity, outside the peak, for those that burn none.
pub fn fuel(kind: HeaterKind, p: &Prices) -> PerKwh {
    match kind {
        HeaterKind::Gas => {
            PerKwh { price: p.gas.value / THERM_KWH, co2_kg: GAS_KG_CO2_PER_THERM / THERM_KWH }
        }
        HeaterKind::Propane => PerKwh {
            price: p.propane.value / PROPANE_KWH_PER_GAL,
            co2_kg: PROPANE_KG_CO2_PER_GAL / PROPANE_KWH_PER_GAL,
        },
        HeaterKind::Oil => {
            PerKwh { price: p.oil.value / OIL_KWH_PER_GAL, co2_kg: OIL_KG_CO2_PER_GAL / OIL_KWH_PER_GAL }
        }
        HeaterKind::Electric | HeaterKind::HeatPump => electricity(p, 0.0),
    }
}

/// A kilowatt-hour of heat from the house's heating, of which a share is made at peak hours: the fuel's over the usual
/// efficiency of ordinary equipment in place (furnace or boiler 0.80 to 0.85, heat pump 2.7 over a season); common
/// practice, no source.
pub fn house_heat(heat: HouseHeat, p: &Prices, peak_share: f64) -> PerKwh {
    let (per, efficiency) = match heat {
        HouseHeat::Gas => (fuel(HeaterKind::Gas, p), 0.85),
        HouseHeat::Propane => (fuel(HeaterKind::Propane, p), 0.85),
        HouseHeat::Oil => (fuel(HeaterKind::Oil, p), 0.82),
        HouseHeat::Electric => (electricity(p, peak_share), 1.0),
        HouseHeat::HeatPump => (electricity(p, peak_share), 2.7),
        HouseHeat::Free => (PerKwh { price: 0.0, co2_kg: 0.0 }, 1.0),
    };
    PerKwh { price: per.price / efficiency, co2_kg: per.co2_kg / efficiency }
}
