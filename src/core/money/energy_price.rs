//! What a kilowatt-hour costs and emits, by fuel.

use crate::core::case::{HeaterKind, HouseHeat, Prices};
use crate::core::climate::prices::{GAS_KG_CO2_PER_THERM, OIL_KG_CO2_PER_GAL, PROPANE_KG_CO2_PER_GAL};
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

/// Electricity.
pub fn electricity(p: &Prices) -> PerKwh {
    PerKwh { price: p.electricity.value, co2_kg: p.grid_emission.value }
}

/// The fuel a heater burns; electricity for those that burn none.
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
        HeaterKind::Electric | HeaterKind::HeatPump => electricity(p),
    }
}

/// A kilowatt-hour of heat from the house's heating: the fuel's over the usual efficiency of ordinary
/// equipment in place (furnace or boiler 0.80 to 0.85, heat pump 2.7 over a season); common practice, no source.
pub fn house_heat(heat: HouseHeat, p: &Prices) -> PerKwh {
    let (per, efficiency) = match heat {
        HouseHeat::Gas => (fuel(HeaterKind::Gas, p), 0.85),
        HouseHeat::Propane => (fuel(HeaterKind::Propane, p), 0.85),
        HouseHeat::Oil => (fuel(HeaterKind::Oil, p), 0.82),
        HouseHeat::Electric => (electricity(p), 1.0),
        HouseHeat::HeatPump => (electricity(p), 2.7),
        HouseHeat::Free => (PerKwh { price: 0.0, co2_kg: 0.0 }, 1.0),
    };
    PerKwh { price: per.price / efficiency, co2_kg: per.co2_kg / efficiency }
}
