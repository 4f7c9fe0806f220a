//! Air to breathe: the free volume a heat pump asks for, or openings to more. What a small closed room costs a year is
//! simulated: as it is, with a louvred door, and with ducts.

use super::Seen;
use super::judge::{Could, at_least, over};
use crate::core::case::{DoorKind, Provenance};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::Ducts;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};
use uom::si::volume::cubic_meter;

use crate::core::candidates::Candidate;
use crate::core::case::Case;
use crate::core::money::energy_price;
use crate::core::outcome::YearResult;

/// A louvred door or two grilles, dollars (from memory).
const LOUVRED_DOOR: f64 = 350.0;

/// Whether the room may be smaller than the heat pump asks for, and is closed.
pub(super) fn short(candidate: &Candidate, case: &Case) -> bool {
    let open = matches!(case.room.door.value, DoorKind::Louvred | DoorKind::Open);
    let ducted = !matches!(case.site.ducts.value, Ducts::None);
    let needs = candidate.body.free_air.get::<cubic_meter>();
    candidate.is_heat_pump() && !open && !ducted && case.site.volume_m3.low < needs
}

/// What a year costs, dollars: electricity, at the hours at which it is used in the room as it is, and what the house's
/// heating makes up.
fn cost(s: &Seen, year: &YearResult) -> f64 {
    let prices = &s.case.prices;
    let heat = |peak_share| energy_price::house_heat(s.case.room.house_heat.value, prices, peak_share);
    year.electricity_year_kwh() * energy_price::of_heater(prices, s.year).price
        + energy_price::cost(prices.tariff.level(&year.heating_makeup_kwh), heat)
}

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let needs = s.candidate.body.free_air.get::<cubic_meter>();
    if !s.candidate.is_heat_pump() || needs <= 0.0 {
        return None;
    }
    let (has, door) = (s.case.site.volume_m3, s.case.room.door);
    let open = matches!(door.value, DoorKind::Louvred | DoorKind::Open);
    let ducted = !matches!(s.case.site.ducts.value, Ducts::None);
    let could = if open || ducted {
        Could::only(Fit::Fits)
    } else {
        over(&[has], &|v| at_least(v[0], needs, Fit::FitsWithWork))
    };
    let id = if could.fit() == Fit::Fits && has.value < needs {
        if ducted { "check-air-volume-ducts" } else { "check-air-volume-open" }
    } else {
        could.say([
            "check-air-volume-fits",
            "check-air-volume-small",
            "check-air-volume-measure",
            "check-air-volume-small",
        ])
    };
    let says = Message::new(id).quantity("has", has.value, Unit::CubicMetre).quantity(
        "needs",
        needs,
        Unit::CubicMetre,
    );
    let mut finding = Finding::new("air-volume", could, says, "rule-nameplate-air")
        .given("figure-room-volume", has, Unit::CubicMetre)
        .using("figure-free-air", needs, Unit::CubicMetre, Provenance::Assumed)
        .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::LouvredDoor, LOUVRED_DOOR))
        .asking("room_volume")
        .asking("door");
    if let Some(opened) = s.opened {
        finding = finding
            .by("relation-room-year")
            .using("figure-shut-cost", cost(s, s.year), Unit::Dollar, Provenance::Assumed)
            .using("figure-opened-cost", cost(s, &opened.door), Unit::Dollar, Provenance::Assumed)
            .using("figure-ducted-cost", cost(s, &opened.ducts), Unit::Dollar, Provenance::Assumed)
            .using("figure-shut-coldest", to_celsius(s.year.room_coldest), Unit::DegC, Provenance::Assumed)
            .using(
                "figure-opened-coldest",
                to_celsius(opened.door.room_coldest),
                Unit::DegC,
                Provenance::Assumed,
            );
    }
    Some(finding)
}
