//! The way in: the narrowest door or hatch, and the tightest turn of the stairs, against the tank's diameter.
//!
//! A tank carried upright is round from above: it turns on the spot, so a landing has to be as wide as the tank and the
//! hands on it both ways, and its corner asks no more. The narrower of both ways is what is asked for. Common practice, no
//! source.

use super::Seen;
use super::judge::{Could, at_least, over};
use super::rules::practice;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};
use uom::si::{length::meter, mass::kilogram};

/// What taking a door off its hinges and its stop gains, m; common practice, no source.
const DOOR_OFF_M: f64 = 1.5 * 0.0254;
/// Taking a door out and putting it back, dollars (from memory).
const DOOR_WORK: f64 = 60.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let site = &s.case.site;
    let wide = s.candidate.body.diameter.get::<meter>();
    let needs = wide + practice::HANDS_M;
    let door = over(&[site.way_in_m], &|v| {
        if v[0] >= needs - 1e-9 {
            Fit::Fits
        } else {
            at_least(v[0] + DOOR_OFF_M, needs, Fit::DoesNotFit).max(Fit::FitsWithWork)
        }
    });
    // No turn on the way: nothing to turn round.
    let turns = site.stair_turn_m.value > 0.0;
    let turn = over(&[site.stair_turn_m], &|v| at_least(v[0], needs, Fit::DoesNotFit));
    let could = if turns {
        Could {
            likely: door.likely.max(turn.likely),
            best: door.best.max(turn.best),
            worst: door.worst.max(turn.worst),
        }
    } else {
        door
    };
    let narrow = if turns && site.stair_turn_m.value < site.way_in_m.value {
        site.stair_turn_m
    } else {
        site.way_in_m
    };
    let id =
        could.say(["check-way-in-fits", "check-way-in-door", "check-way-in-measure", "check-way-in-narrow"]);
    let weight = s.candidate.body.empty_mass.get::<kilogram>();
    let says = Message::new(id)
        .quantity("has", narrow.value / 0.0254, Unit::Inch)
        .quantity("needs", needs / 0.0254, Unit::Inch)
        .quantity("weight", weight, Unit::Kilogram);
    let most = (narrow.value - practice::HANDS_M) / 0.0254;
    let make_way = Work::new(WorkKind::MakeWay, DOOR_WORK).sized("needs", needs / 0.0254, Unit::Inch);
    let mut finding = Finding::new("way-in", could, says, "rule-common-practice")
        .let_in_by(Message::new("need-narrower-heater").quantity("most", most, Unit::Inch))
        .using("figure-way-in", site.way_in_m.value / 0.0254, Unit::Inch, site.way_in_m.from)
        .using("figure-tank-diameter", wide / 0.0254, Unit::Inch, Provenance::Assumed)
        .using("figure-hands", practice::HANDS_M / 0.0254, Unit::Inch, Provenance::Assumed)
        .using("figure-empty-weight", weight, Unit::Kilogram, Provenance::Assumed)
        .with_work_if(could.fit() == Fit::FitsWithWork, make_way)
        .asking("way_in")
        .asking("stair_turn")
        .cautioned("caution-lifting");
    if turns {
        finding = finding.using(
            "figure-stair-turn",
            site.stair_turn_m.value / 0.0254,
            Unit::Inch,
            site.stair_turn_m.from,
        );
    }
    Some(finding)
}
