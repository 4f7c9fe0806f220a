//! Installed prices to start from when nobody has quoted: round figures for an ordinary job in 2025
//! money, from memory, always shown as assumed beside "ask for a quote".

use super::CandidateId;
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

/// Price of a heat pump tank over that of the 50 gal one: size and, for the 120 V kind, a dearer
/// machine. Round figures, from memory.
pub const fn heat_pump_share(id: CandidateId) -> f64 {
    match id {
        CandidateId::HeatPump40 => 0.96,
        CandidateId::HeatPump65 => 1.11,
        CandidateId::HeatPump80 => 1.19,
        CandidateId::PlugIn50 => 1.02,
        _ => 1.0,
    }
}

/// A plain electric tank where fuel was burned before, dollars: the tank without its circuit, which a
/// finding adds.
pub const ELECTRIC_IN_PLACE_OF_FUEL: f64 = 1_900.0;

/// Maintenance a year, dollars: filters and a condensate line; a flue and burner; nothing.
pub const fn maintenance_year(kind: HeaterKind) -> f64 {
    match kind {
        HeaterKind::Electric => 0.0,
        HeaterKind::HeatPump => 15.0,
        HeaterKind::Gas | HeaterKind::Propane => 20.0,
        HeaterKind::Oil => 120.0,
    }
}
