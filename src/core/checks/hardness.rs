//! Hard water: it drops lime where it is heated, and eats the anode sooner or later.

use super::Seen;
use super::judge::Could;
use super::rules::practice;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;

use super::burns as has_burner;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let hard = s.case.heater.hardness_kg_per_m3;
    let very = hard.value >= practice::VERY_HARD_KG_PER_M3;
    let id = match (very, has_burner(s.candidate.label.kind)) {
        (false, _) => "check-hardness-fits",
        (true, true) => "check-hardness-burner",
        (true, false) => "check-hardness-element",
    };
    let grains = Unit::GrainPerGallon.from_base(hard.value);
    let says = Message::new(id).quantity("hard", grains, Unit::GrainPerGallon);
    Some(
        Finding::new("hardness", Could::only(Fit::Fits), says, "rule-common-practice")
            .using("figure-hardness", grains, Unit::GrainPerGallon, hard.from)
            .asking("hardness"),
    )
}
