//! Water at the fixture: what mixed water asks of the tank, and what falls short.

use crate::core::draws::Draw;
use crate::core::draws::daily_use::USE_C;
use crate::core::heater::{Sim, Surroundings};

/// How far below the protocols' use temperature (110 °F, pipes included) water still counts as warm, K:
/// down to a shower of 105 °F. Common practice, no source.
pub const UNNOTICED_K: f64 = 5.0 * 5.0 / 9.0;

/// What a draw gave.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Served {
    /// Mixed water asked for, m³.
    pub asked_m3: f64,
    /// Mixed water below use temperature, m³.
    pub short_m3: f64,
    /// Time below use temperature, s.
    pub short_s: f64,
}

/// One piece of a draw, at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Time it took, s.
    pub seconds: f64,
    /// Water at the fixture, m³.
    pub volume_m3: f64,
    /// Temperature at the fixture, °C.
    pub tap_c: f64,
    /// Temperature at the tank's outlet, °C.
    pub outlet_c: f64,
}

/// Serves a draw in pieces of one outlet temperature, none longer than `longest_s`; `each` sees them.
pub fn serve(
    sim: &mut Sim,
    draw: &Draw,
    cold_c: f64,
    longest_s: f64,
    around: &mut impl Surroundings,
    mut each: impl FnMut(&Sim, &Piece),
) -> Served {
    let asked_m3 = if draw.fixture.is_mixed() { draw.volume_m3 } else { 0.0 };
    let mut served = Served { asked_m3, ..Served::default() };
    let mut left = draw.volume_m3;
    // A billionth of the draw is rounding.
    let done = 1e-9 * draw.volume_m3;
    while left > done {
        let out_c = sim.outlet_c();
        let share = hot_share(draw.fixture.is_mixed(), out_c, cold_c);
        if share <= 0.0 {
            // The cold tap is warm enough: no hot water is drawn.
            sim.advance(left / draw.flow_m3_per_s, around);
            return served;
        }
        let most = longest_s * draw.flow_m3_per_s;
        let wanted = if left < most { left } else { most };
        let (hot_m3, outlet_c) =
            sim.draw_some(wanted * share, 1.0 / (draw.flow_m3_per_s * share), cold_c, around);
        let volume_m3 = hot_m3 / share;
        left -= volume_m3;
        let piece = Piece {
            seconds: volume_m3 / draw.flow_m3_per_s,
            volume_m3,
            tap_c: cold_c + share * (outlet_c - cold_c),
            outlet_c,
        };
        if draw.fixture.is_mixed() && piece.tap_c < USE_C - UNNOTICED_K {
            served.short_m3 += volume_m3;
            served.short_s += piece.seconds;
        }
        each(sim, &piece);
    }
    served
}

/// Share of hot water in what leaves the fixture.
fn hot_share(mixed: bool, out_c: f64, cold_c: f64) -> f64 {
    if !mixed || out_c <= USE_C {
        1.0
    } else if cold_c >= USE_C {
        0.0
    } else {
        (USE_C - cold_c) / (out_c - cold_c)
    }
}

impl Served {
    /// As much as this many such draws gave.
    #[must_use]
    pub fn times(self, n: f64) -> Served {
        Served { asked_m3: n * self.asked_m3, short_m3: n * self.short_m3, short_s: n * self.short_s }
    }

    /// Adds what another draw gave.
    pub fn add(&mut self, more: &Served) {
        self.asked_m3 += more.asked_m3;
        self.short_m3 += more.short_m3;
        self.short_s += more.short_s;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mixing_keeps_heat() {
        for (out, cold) in [(50.0, 10.0), (60.0, 5.0), (44.0, 20.0)] {
            let s = hot_share(true, out, cold);
            assert!((s * out + (1.0 - s) * cold - USE_C).abs() < 1e-12);
        }
        assert_eq!(hot_share(true, 30.0, 10.0), 1.0);
        assert_eq!(hot_share(false, 60.0, 10.0), 1.0);
        assert_eq!(hot_share(true, 60.0, 45.0), 0.0);
    }
}
