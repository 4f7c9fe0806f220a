//! Installed prices to start from when nobody has quoted: round figures for an ordinary job in 2025
//! money, from memory, always shown as assumed beside "ask for a quote".

use crate::core::case::HeaterKind;

/// A 50 gal, 240 V heat pump tank, installed where a circuit and a drain are at hand, dollars.
pub const HEAT_PUMP_50: f64 = 4_200.0;

/// The same kind again, installed, dollars.
pub const fn installed_same(kind: HeaterKind) -> f64 {
    match kind {
        HeaterKind::Electric => 1_900.0,
        HeaterKind::Gas => 2_400.0,
        HeaterKind::Propane => 2_600.0,
        HeaterKind::Oil => 4_500.0,
        HeaterKind::HeatPump => HEAT_PUMP_50,
    }
}
