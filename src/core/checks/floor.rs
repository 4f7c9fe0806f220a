//! The floor under a full tank. A slab on the ground carries it. Wooden joists are built for a load spread over the
//! floor: the tank is counted over the four feet square around it, which joists share by the boards on them (common
//! practice, no source); and what stands there now shows what the floor carries.

use super::Seen;
use super::judge::{Could, at_least};
use crate::core::case::{Provenance, RoomKind};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::carrying;
use crate::core::message::Message;
use crate::core::site::FloorKind;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::{mass::kilogram, volume::cubic_meter};

/// Floor that shares the load, m².
const SHARED_M2: f64 = 4.0 * 0.3048 * 4.0 * 0.3048;
/// A tank so much heavier than the present one asks nothing new of the floor.
const LIKE_THE_PRESENT: f64 = 1.1;
/// Blocking or a sheet of plywood across joists, dollars (from memory).
const SUPPORT: f64 = 250.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let (site, rule) = (&s.case.site, s.rules.floor_kg_per_m2);
    let water = s.candidate.label.nominal_volume.get::<cubic_meter>();
    let full = carrying::full_mass_kg(s.candidate.body.empty_mass.get::<kilogram>(), water);
    let present = carrying::full_mass_kg(60.0, s.case.heater.nominal_volume.value.get::<cubic_meter>());
    let carries = rule.is * SHARED_M2;
    let wood = at_least(
        if carries > LIKE_THE_PRESENT * present { carries } else { LIKE_THE_PRESENT * present },
        full,
        Fit::FitsWithWork,
    );
    // Basements and garages stand on the ground.
    let ground =
        matches!(s.case.room.kind.value, RoomKind::Basement | RoomKind::Garage | RoomKind::Crawlspace);
    let could = match site.floor.value {
        FloorKind::Slab => Could::only(Fit::Fits).or(site.floor.is_assumed() && !ground, Could::only(wood)),
        FloorKind::Wood => Could::only(wood).or(site.floor.is_assumed(), Could::only(Fit::Fits)),
    };
    let id = could.say(["check-floor-fits", "check-floor-heavy", "check-floor-measure", "check-floor-heavy"]);
    let says =
        Message::new(id).quantity("full", full, Unit::Kilogram).quantity("carries", carries, Unit::Kilogram);
    let support = Work::new(WorkKind::FloorSupport, SUPPORT).sized("mass", full, Unit::Kilogram);
    Some(
        Finding::new("floor", could, says, rule.cites)
            .by("relation-floor")
            .using("figure-full-weight", full, Unit::Kilogram, Provenance::Assumed)
            .using("figure-present-weight", present, Unit::Kilogram, s.case.heater.nominal_volume.from)
            .using("figure-floor-carries", carries, Unit::Kilogram, Provenance::Assumed)
            .chosen("figure-floor", site.floor, format!("q-floor-{}", site.floor.value.code()))
            .with_work_if(could.worst >= Fit::FitsWithWork, support)
            .asking("floor"),
    )
}
