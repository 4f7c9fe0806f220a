//! Sound in the next room: from the heat pump's sound power, the distance to the wall, and the wall.

use super::Seen;
use super::judge::{Could, at_least, over};
use crate::core::case::{Provenance, RoomKind, YesNo};
use crate::core::finding::{Finding, Fit};
use crate::core::fit::noise;
use crate::core::message::Message;
use crate::core::site::{Ranged, WallKind};
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

/// Sound power of the class, dB(A), may be lower or higher by this; labels decide.
const OFF_DB: f64 = 4.0;
/// Sound reduction in dB of an opening or a door, a wall of studs, the same filled, masonry (laboratory values as
/// for sound transmission class; from memory).
const REDUCTION_DB: [f64; 4] = [15.0, 33.0, 39.0, 45.0];
/// Wall between the rooms, m², and absorption of a furnished bedroom, m²; common practice, no source.
const WALL_M2: f64 = 10.0;
const BEDROOM_M2: f64 = 12.0;
/// Mean absorption of a room of concrete or plasterboard; common practice, no source.
const BARE: f64 = 0.08;
/// Feet of rubber, a tighter door, grilles to the other side, dollars (from memory).
const QUIETEN: f64 = 150.0;

/// Sound reduction of what lies between, dB.
const fn reduction_db(wall: WallKind) -> f64 {
    match wall {
        WallKind::Door => REDUCTION_DB[0],
        WallKind::Stud => REDUCTION_DB[1],
        WallKind::Filled => REDUCTION_DB[2],
        WallKind::Masonry => REDUCTION_DB[3],
    }
}

/// Level in dB(A) at a distance from a heater of this sound power in its room.
pub(in crate::core) fn near_db(power_db: f64, distance_m: f64, volume_m3: f64) -> f64 {
    noise::level_db(power_db, distance_m, noise::absorption_m2(volume_m3, BARE))
}

/// Level in dB(A) in the room behind a wall, the heater standing this far from it.
pub(in crate::core) fn next_db(power_db: f64, distance_m: f64, volume_m3: f64, wall: WallKind) -> f64 {
    noise::next_room_db(near_db(power_db, distance_m, volume_m3), reduction_db(wall), WALL_M2, BEDROOM_M2)
}

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let power = s.candidate.body.sound_power_db;
    if !s.candidate.is_heat_pump() || power <= 0.0 {
        return None;
    }
    let (site, rule) = (&s.case.site, s.rules.bedroom_db);
    let next = |power: f64, distance: f64, wall| next_db(power, distance, site.volume_m3.value, wall);
    let sound = Ranged::assumed(power, power - OFF_DB, power + OFF_DB);
    let through = |wall| {
        over(&[sound, site.quiet_distance_m], &|v| {
            at_least(rule.is, next(v[0], v[1], wall), Fit::FitsWithWork)
        })
    };
    let wall = site.quiet_wall;
    let quiet = site.quiet_room;
    // Rooms under the house or beside it seldom touch a bedroom.
    let apart =
        matches!(s.case.room.kind.value, RoomKind::Basement | RoomKind::Garage | RoomKind::Crawlspace);
    let near = through(wall.value)
        .or(wall.is_assumed(), through(WallKind::Door))
        .or(wall.is_assumed(), through(WallKind::Masonry));
    let could = match quiet.value {
        YesNo::No => Could::only(Fit::Fits).or(quiet.is_assumed() && !apart, near),
        YesNo::Yes => near.or(quiet.is_assumed(), Could::only(Fit::Fits)),
    };
    let level = next(power, site.quiet_distance_m.value, wall.value);
    let id = if could.fit() == Fit::Fits && matches!(quiet.value, YesNo::No) {
        "check-noise-none"
    } else {
        could.say(["check-noise-fits", "check-noise-loud", "check-noise-measure", "check-noise-loud"])
    };
    let says =
        Message::new(id).quantity("level", level, Unit::Decibel).quantity("most", rule.is, Unit::Decibel);
    let quieten = Work::new(WorkKind::Quieten, QUIETEN).sized("level", level, Unit::Decibel);
    Some(
        Finding::new("noise", could, says, rule.cites)
            .by("relation-noise")
            .using("figure-sound-power", power, Unit::Decibel, Provenance::Assumed)
            .given("figure-quiet-distance", site.quiet_distance_m, Unit::Metre)
            .chosen("figure-wall", wall, format!("q-quiet-wall-{}", wall.value.code()))
            .using("figure-reduction", reduction_db(wall.value), Unit::Decibel, wall.from)
            .using("figure-next-room", level, Unit::Decibel, quiet.from)
            .with_work_if(could.worst >= Fit::FitsWithWork, quieten)
            .asking("quiet_room")
            .asking("quiet_wall")
            .asking("quiet_distance"),
    )
}
