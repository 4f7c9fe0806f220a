//! What a room is like when nobody has measured it: documented guesses, every one replaceable by an
//! answer. Common practice, no source, unless said otherwise.

use crate::core::case::{DoorKind, RoomKind};

/// Temperature a lived-in house is kept at in winter, °C (68 °F).
pub const HOUSE_WINTER_C: f64 = 20.0;
/// Temperature of a lived-in house in summer, °C (76 °F).
pub const HOUSE_SUMMER_C: f64 = 24.4;

/// Free air volume, cubic feet: a 30 by 30 ft basement less its contents, a two-car garage, and so on.
pub const fn volume_ft3(kind: RoomKind) -> f64 {
    match kind {
        RoomKind::Basement => 7_000.0,
        RoomKind::Garage => 3_600.0,
        RoomKind::Utility => 700.0,
        RoomKind::Closet => 100.0,
        RoomKind::Crawlspace => 3_000.0,
        RoomKind::Attic => 4_500.0,
    }
}

/// Floor to the lowest thing overhead, inches.
pub const fn headroom_in(kind: RoomKind) -> f64 {
    match kind {
        RoomKind::Basement => 86.0,
        RoomKind::Garage | RoomKind::Utility | RoomKind::Closet => 94.0,
        RoomKind::Crawlspace => 48.0,
        RoomKind::Attic => 72.0,
    }
}

/// How the room is joined to the house.
pub const fn door(kind: RoomKind) -> DoorKind {
    match kind {
        RoomKind::Utility => DoorKind::Undercut,
        _ => DoorKind::Solid,
    }
}

/// Weights of the house's and the outdoors' temperature, and of the year's mean outdoors as the ground.
const fn weights(kind: RoomKind) -> (f64, f64, f64) {
    // house, outdoors of the season, ground (outdoor annual mean)
    match kind {
        RoomKind::Basement => (0.50, 0.05, 0.45),
        RoomKind::Garage => (0.40, 0.50, 0.10),
        RoomKind::Utility => (0.95, 0.05, 0.0),
        RoomKind::Closet => (1.0, 0.0, 0.0),
        RoomKind::Crawlspace => (0.30, 0.30, 0.40),
        RoomKind::Attic => (0.20, 0.80, 0.0),
    }
}

/// Share of the outdoors' daily swing that reaches the room.
pub const fn outdoor_share(kind: RoomKind) -> f64 {
    weights(kind).1
}

/// Coldest month's mean in the room, °C, from the outdoor annual mean and monthly range.
pub fn winter_c(kind: RoomKind, outdoor_mean_c: f64, outdoor_range_k: f64) -> f64 {
    let (house, out, ground) = weights(kind);
    house * HOUSE_WINTER_C + out * (outdoor_mean_c - 0.5 * outdoor_range_k) + ground * outdoor_mean_c
}

/// Warmest month's mean in the room, °C. An attic gains what the sun puts into it, taken as 6 K.
pub fn summer_c(kind: RoomKind, outdoor_mean_c: f64, outdoor_range_k: f64) -> f64 {
    let (house, out, ground) = weights(kind);
    let sun = if matches!(kind, RoomKind::Attic) { 6.0 } else { 0.0 };
    house * HOUSE_SUMMER_C + out * (outdoor_mean_c + 0.5 * outdoor_range_k) + ground * outdoor_mean_c + sun
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rooms_lie_between_the_house_and_the_outdoors() {
        for kind in
            [RoomKind::Basement, RoomKind::Garage, RoomKind::Utility, RoomKind::Closet, RoomKind::Crawlspace]
        {
            let (mean, range) = (9.0, 28.0);
            let w = winter_c(kind, mean, range);
            assert!(w <= HOUSE_WINTER_C + 1e-9 && w >= mean - 0.5 * range, "{kind:?} {w}");
            assert!(summer_c(kind, mean, range) >= w, "{kind:?}");
        }
    }

    /// Basements of the cold north-east are commonly 55 to 62 °F in winter: common practice, no source.
    #[test]
    fn a_boston_basement_is_cool() {
        let w = winter_c(RoomKind::Basement, 11.0, 24.0);
        assert!((12.8..=16.7).contains(&w), "{w}");
    }
}
