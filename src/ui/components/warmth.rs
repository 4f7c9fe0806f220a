//! The colour of water: blue when cold, copper when hot. Used for nothing else.

/// Coldest of the scale, °C.
pub const COLD_C: f64 = 5.0;
/// Hottest of the scale, °C.
pub const HOT_C: f64 = 55.0;

/// The scale from cold over lukewarm to hot, the same in light and dark: a colour here is a figure.
const SCALE: [(f64, [f64; 3]); 3] =
    [(0.0, [42.0, 102.0, 184.0]), (0.5, [190.0, 184.0, 186.0]), (1.0, [196.0, 98.0, 42.0])];

/// The colour of water of this temperature: red, green and blue.
pub fn parts(celsius: f64) -> [u8; 3] {
    let share = ((celsius - COLD_C) / (HOT_C - COLD_C)).clamp(0.0, 1.0);
    let (from, to) = if share < 0.5 { (SCALE[0], SCALE[1]) } else { (SCALE[1], SCALE[2]) };
    let t = (share - from.0) / (to.0 - from.0);
    let part = |i: usize| (from.1[i] + t * (to.1[i] - from.1[i])).round() as u8;
    [part(0), part(1), part(2)]
}

/// The same as a style sheet writes it.
pub fn colour(celsius: f64) -> String {
    let [red, green, blue] = parts(celsius);
    format!("rgb({red},{green},{blue})")
}
