//! Combustion safety: a burner that takes its air from a room in which a heat pump cools the air, or from which ducts
//! blow it out, may lose its draught and spill fumes.

use super::Seen;
use super::judge::{Could, at_least, over};
use crate::core::case::{DoorKind, Provenance};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::ventilation;
use crate::core::message::Message;
use crate::core::site::{Ducts, FuelLeft, Ranged};
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// Air a heat pump moves, m³/s (150 to 450 cfm in the class).
const AIR_M3_PER_S: Ranged = Ranged::assumed(0.12, 0.07, 0.21);
/// Openings to the rest of the house by the door, and cracks besides, m²; common practice, no source.
fn openings_m2(door: DoorKind) -> f64 {
    match door {
        DoorKind::Solid => 0.012,
        DoorKind::Undercut => 0.03,
        DoorKind::Louvred => 0.25,
        DoorKind::Open => 1.6,
    }
}
/// A test of the draught with everything running that draws air out, dollars (from memory).
const TEST: f64 = 150.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.candidate.is_heat_pump() {
        return None;
    }
    let (site, rule) = (&s.case.site, s.rules.draught_pa);
    let area = openings_m2(s.case.room.door.value);
    let fall = |air: f64| ventilation::depressurised_pa(air, area);
    let out = matches!(site.ducts.value, Ducts::Outdoors);
    let blown =
        over(&[AIR_M3_PER_S], &|v| at_least(rule.is, fall(v[0]), Fit::DoesNotFit).max(Fit::FitsWithWork));
    let at = |left| match left {
        FuelLeft::None | FuelLeft::Sealed => Could::only(Fit::Fits),
        FuelLeft::Open if out => blown,
        // No air leaves the room: the draught is tested, for a colder room draws less well.
        FuelLeft::Open => Could::only(Fit::FitsWithWork),
    };
    let left = site.fuel_left;
    let assumed = left.is_assumed();
    let could = at(left.value).or(assumed, at(FuelLeft::None)).or(assumed, at(FuelLeft::Open));
    let id = match (could.fit(), left.value) {
        (Fit::Fits, _) => "check-draught-none",
        (Fit::MeasureFirst, _) => "check-draught-look",
        (Fit::DoesNotFit, _) => "check-draught-blown",
        _ => "check-draught-test",
    };
    let pascals = fall(AIR_M3_PER_S.value);
    let says = Message::new(id);
    let mut finding = Finding::new("draught", could, says, rule.cites)
        .let_in_by(Message::new("need-sealed-burner"))
        .chosen("figure-fuel-left", left, format!("q-fuel-left-{}", left.value.code()))
        .chosen("figure-ducts", site.ducts, format!("q-ducts-{}", site.ducts.value.code()))
        .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::DraughtTest, TEST))
        .asking("fuel_left")
        .cautioned("caution-fumes");
    if out {
        finding = finding
            .by("relation-orifice")
            .using(
                "figure-air-out",
                AIR_M3_PER_S.value * 3_600.0,
                Unit::CubicMetrePerHour,
                Provenance::Assumed,
            )
            .using("figure-openings", area, Unit::SquareMetre, s.case.room.door.from)
            .using("figure-pascals", pascals, Unit::One, Provenance::Assumed)
            .using("figure-pascals-most", rule.is, Unit::One, Provenance::Assumed);
    }
    Some(finding)
}
