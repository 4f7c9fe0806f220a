//! A heat pump's sound in its own room and through a wall into the next.

use std::f64::consts::PI;

/// Sound pressure level in dB(A) at a distance from a source on a hard floor (half space) in a room: direct and
/// diffuse field, `L_w + 10 lg (Q / 4πr² + 4 / A)` with Q = 2 (any text on room acoustics; ISO 3744 and 12354, from
/// memory). `absorption_m2` is the room's equivalent absorption area.
pub fn level_db(power_db: f64, distance_m: f64, absorption_m2: f64) -> f64 {
    let r = if distance_m > 0.3 { distance_m } else { 0.3 };
    power_db + 10.0 * libm::log10(2.0 / (4.0 * PI * r * r) + 4.0 / absorption_m2)
}

/// Level in dB(A) in the next room: `L_1 − R + 10 lg (S / A_2)`, with the wall's sound reduction in dB, its area and
/// the next room's absorption in m² (ISO 12354-1, from memory).
pub fn next_room_db(level_db: f64, reduction_db: f64, wall_m2: f64, absorption_m2: f64) -> f64 {
    level_db - reduction_db + 10.0 * libm::log10(wall_m2 / absorption_m2)
}

/// Equivalent absorption area in m² of a room of this volume with a mean absorption coefficient, taken as a square
/// plan 2.3 m high.
pub fn absorption_m2(volume_m3: f64, coefficient: f64) -> f64 {
    let floor = volume_m3 / 2.3;
    coefficient * (2.0 * floor + 4.0 * 2.3 * libm::sqrt(floor))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Closed forms: on a hard floor in the open the level at 1 m is 8 dB below the power's (10 lg 2π = 7.98), and
    /// twice the distance takes 6.02 dB.
    #[test]
    fn the_free_field() {
        assert!((level_db(50.0, 1.0, 1e12) - (50.0 - 10.0 * libm::log10(2.0 * PI))).abs() < 1e-6);
        let off = level_db(50.0, 1.0, 1e12) - level_db(50.0, 2.0, 1e12);
        assert!((off - 6.0206).abs() < 1e-3, "{off}");
    }

    #[test]
    fn a_wall_takes_its_reduction() {
        assert!((next_room_db(50.0, 33.0, 10.0, 10.0) - 17.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn farther_and_softer_is_quieter(w in 40.0..60.0f64, r in 0.5..10.0f64, a in 1.0..50.0f64, k in 1.01..3.0f64) {
            prop_assert!(level_db(w, r * k, a) < level_db(w, r, a));
            prop_assert!(level_db(w, r, a * k) < level_db(w, r, a));
        }
    }
}
