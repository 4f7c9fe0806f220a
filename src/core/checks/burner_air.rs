//! Air for burners: a new burner and one that stays draw on the same room; where none is left, openings for their air
//! have no use any more.

use super::Seen;
use super::judge::{Could, at_least, over};
use crate::core::case::{DoorKind, Provenance};
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::{FuelLeft, Ranged};
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::power::watt;

use super::burns as has_burner;

/// Input of a furnace or boiler that stays, W (40,000 to 120,000 Btu/h); common practice, no source.
const LEFT_W: Ranged = Ranged::assumed(23_400.0, 11_700.0, 35_200.0);
/// Two openings to a larger space or outdoors, dollars (from memory).
const OPENINGS: f64 = 250.0;
/// Area of openings for each W of input, m²: a square inch for each 1,000 Btu/h (the same chapter, from memory).
const OPENING_M2_PER_W: f64 = 0.0254 * 0.0254 / 293.07;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let (site, rule) = (&s.case.site, s.rules.burner_air_m3_per_w);
    let goes = has_burner(s.case.heater.kind.value) && !s.keeps() && !s.new_burner();
    if goes && matches!(site.fuel_left.value, FuelLeft::None | FuelLeft::Sealed) {
        let says = Message::new("check-burner-air-none");
        return Some(
            Finding::new("burner-air", Could::only(Fit::Fits), says, rule.cites)
                .chosen(
                    "figure-fuel-left",
                    site.fuel_left,
                    format!("q-fuel-left-{}", site.fuel_left.value.code()),
                )
                .asking("fuel_left"),
        );
    }
    if !s.new_burner() {
        return None;
    }
    let own = s.candidate.label.input.get::<watt>();
    let open = matches!(s.case.room.door.value, DoorKind::Louvred | DoorKind::Open);
    let of = |left: Ranged| {
        over(&[site.volume_m3, left], &|v| at_least(v[0], rule.is * (own + v[1]), Fit::FitsWithWork))
    };
    let nothing = Ranged::exact(0.0, site.fuel_left.from);
    let left = if matches!(site.fuel_left.value, FuelLeft::Open) { LEFT_W } else { nothing };
    let assumed = site.fuel_left.is_assumed();
    let could =
        if open { Could::only(Fit::Fits) } else { of(left).or(assumed, of(nothing)).or(assumed, of(LEFT_W)) };
    let needs = rule.is * (own + left.value);
    let id = could.say([
        "check-burner-air-fits",
        "check-burner-air-small",
        "check-burner-air-measure",
        "check-burner-air-small",
    ]);
    let says = Message::new(id).quantity("has", site.volume_m3.value, Unit::CubicMetre).quantity(
        "needs",
        needs,
        Unit::CubicMetre,
    );
    let area = OPENING_M2_PER_W * (own + left.value);
    let openings = Work::new(WorkKind::BurnerAir, OPENINGS).sized("area", area, Unit::SquareMetre);
    Some(
        Finding::new("burner-air", could, says, rule.cites)
            .by("relation-burner-air")
            .using("figure-input", own, Unit::Watt, Provenance::Assumed)
            .using("figure-input-left", left.value, Unit::Watt, left.from)
            .given("figure-room-volume", site.volume_m3, Unit::CubicMetre)
            .using("figure-burner-air", needs, Unit::CubicMetre, Provenance::Assumed)
            .with_work_if(could.worst >= Fit::FitsWithWork, openings)
            .asking("room_volume")
            .asking("fuel_left")
            .cautioned("caution-fuel"),
    )
}
