//! Storing hotter behind a mixing valve: how much more hot water the same tank then gives.

use super::Seen;
use super::judge::Could;
use crate::core::case::{Provenance, YesNo};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::burns;
use crate::core::heat_pump::machine;
use crate::core::message::Message;
use crate::core::money::energy_price;
use crate::core::units::{Unit, to_celsius};
use uom::si::{energy::kilowatt_hour, volume::cubic_meter};

/// Evaporating temperature in a room of usual warmth, °C; common practice, no source.
const EVAPORATING_C: f64 = 8.0;

/// What storing hotter adds to a year's energy bill, dollars, by what the simulated year took: the jacket loses in
/// proportion to the tank's temperature above the room's, and a heat pump's efficiency falls by its map. The
/// simulation at the other setpoint comes within a third of it (`tests/checks/water.rs`), hence "about".
fn costs(s: &Seen, stored_c: f64, hot_c: f64) -> f64 {
    let year = s.year;
    let room_c = 0.5 * (to_celsius(s.case.room.winter.value) + to_celsius(s.case.room.summer.value));
    let standby_kwh = year.standby.get::<kilowatt_hour>();
    let more_kwh = standby_kwh * (hot_c - stored_c) / (stored_c - room_c).max(5.0);
    let heat_kwh = standby_kwh + year.delivered_kwh.iter().sum::<f64>();
    let harder = if s.candidate.is_heat_pump() {
        machine::of_carnot(EVAPORATING_C, stored_c) / machine::of_carnot(EVAPORATING_C, hot_c)
    } else {
        1.0
    };
    let prices = &s.case.prices;
    let kind = s.candidate.label.kind;
    let bill = year.electricity_year_kwh() * energy_price::of_heater(prices, year).price
        + year.fuel_year_kwh() * energy_price::fuel(kind, prices).price;
    if heat_kwh > 0.0 { bill * ((1.0 + more_kwh / heat_kwh) * harder - 1.0) } else { 0.0 }
}

/// The coldest water that comes in, °C (40 °F).
const COLD_C: f64 = 4.444;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let (setpoint, valve) = (s.case.heater.setpoint, s.case.site.mixing_valve);
    let (stored, hot, mixed) = (to_celsius(setpoint.value), s.rules.storage_c.is, s.rules.tap_c.is);
    let more = burns::mixed_share(hot, mixed, COLD_C) - 1.0;
    let litres = s.candidate.label.nominal_volume.get::<cubic_meter>() * 1e3 * more;
    let now = stored >= hot - 0.05 && matches!(valve.value, YesNo::Yes);
    let id = if now { "check-hotter-now" } else { "check-hotter-could" };
    let says = Message::new(id)
        .quantity("hot", hot, Unit::DegC)
        .quantity("mixed", mixed, Unit::DegC)
        .quantity("more", more * 100.0, Unit::Percent)
        .quantity("litres", litres, Unit::Litre);
    let mut finding = Finding::new("hotter", Could::only(Fit::Fits), says, s.rules.storage_c.cites)
        .by("relation-mixing")
        .using("figure-setpoint", stored, Unit::DegC, setpoint.from)
        .using("figure-hotter", hot, Unit::DegC, Provenance::Assumed)
        .using("figure-mixed", mixed, Unit::DegC, Provenance::Assumed)
        .using("figure-gain", litres, Unit::Litre, Provenance::Assumed)
        .asking("setpoint")
        .asking("mixing_valve");
    if hot > stored + 0.05 {
        let cost = costs(s, stored, hot);
        finding = finding.using("figure-hotter-cost", cost, Unit::Dollar, Provenance::Assumed);
    }
    Some(finding)
}
