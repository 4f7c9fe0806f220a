//! The first-hour test: how much hot water a hot tank gives in an hour.
//!
//! Source: 10 CFR part 430, subpart B, appendix E, section 5.3.3 (from memory).

use super::rating_test::{INLET_C, PUMP_STEP_S, test_air};
use crate::core::heater::{Model, Sim, Source, Surroundings};
use crate::core::units::GALLON_M3;

/// Flow, m³/s (3 US gal a minute).
const FIRST_HOUR_FLOW: f64 = 3.0 * GALLON_M3 / 60.0;
/// A draw ends when the outlet has fallen this far, K (15 °F).
const OUTLET_DROP_K: f64 = 15.0 * 5.0 / 9.0;
/// Layers of the first-hour test. Draws are whole events, and an element's heat enters at a layer's face: with the
/// year's twelve layers the rating jumps by several gallons as layers move by. Layers that move with the
/// water deliver the same volume at every count (`tests/published/tank_draws.rs`), so that the finer tank is
/// the same heater.
const SLOTS: usize = 96;
const HOUR_S: f64 = 3_600.0;

/// First-hour rating, m³: draws at 3 gal/min, each until the outlet has fallen by 15 °F; the next when
/// the top is hot again; for an hour, a draw under way being finished; when none is under way at the
/// hour, a last one counts by how warm it is.
pub fn first_hour_rating_m3(model: &Model) -> f64 {
    let mut air = test_air();
    let fine = Model { slots: SLOTS, ..model.clone() };
    // A heat pump alone is what the next draw waits for: it is slow, what it gives in a minute is a cup.
    let alone = matches!(model.source, Source::HeatPump { backup: None, .. });
    let mut sim = Sim::new(&fine).with_pump_step(if alone { 60.0 } else { PUMP_STEP_S });
    let mut now = 0.0;
    let mut total = 0.0;
    loop {
        let d = deplete(&mut sim, &mut air);
        now += d.seconds;
        total += d.volume_m3;
        if now >= HOUR_S {
            return total;
        }
        // The thermostats answer to the draw just made, then the top is waited for; one that is satisfied at once lets time
        // pass all the same.
        sim.advance(1.0, &mut air);
        now += 1.0;
        now += sim.wait_for_top(HOUR_S - now, &mut air);
        if now >= HOUR_S - 1e-6 {
            let extra = deplete_to(&mut sim, &mut air, d.coldest_c);
            let span = d.mean_c - d.coldest_c;
            let warmth = if span > 0.0 { (extra.mean_c - d.coldest_c) / span } else { 0.0 };
            return total + extra.volume_m3 * warmth.clamp(0.0, 1.0);
        }
    }
}

/// One draw of the first-hour test.
#[derive(Clone, Copy, Debug, Default)]
struct Depletion {
    seconds: f64,
    volume_m3: f64,
    mean_c: f64,
    coldest_c: f64,
}

/// Draws until the outlet has fallen 15 °F below its highest.
fn deplete(sim: &mut Sim, air: &mut impl Surroundings) -> Depletion {
    draw_until(sim, air, |highest| highest - OUTLET_DROP_K)
}

/// Draws until the outlet has fallen to a temperature.
fn deplete_to(sim: &mut Sim, air: &mut impl Surroundings, stop_c: f64) -> Depletion {
    draw_until(sim, air, |_| stop_c)
}

/// The outlet's temperature is that of a layer, but a real outlet's falls smoothly: the piece in which
/// the limit is passed counts by where a straight line between two layers' middles passes it.
/// So the rating does not jump by a layer's volume.
fn draw_until(sim: &mut Sim, air: &mut impl Surroundings, stop: impl Fn(f64) -> f64) -> Depletion {
    let mut d = Depletion::default();
    let mut heat = 0.0;
    let mut highest = f64::NEG_INFINITY;
    let (mut last_c, mut last_m3) = (sim.outlet_c(), 0.0);
    // No tank gives more than this in one draw: an hour's flow.
    while d.seconds < HOUR_S {
        let out_c = sim.outlet_c();
        if out_c > highest {
            highest = out_c;
        }
        let limit = stop(highest);
        if out_c <= limit {
            let share = if last_c > out_c { (last_c - limit) / (last_c - out_c) } else { 0.0 };
            // From the middle of the last piece to the middle of this one; half a piece is drawn already.
            let next_m3 = sim.layers().top_m3();
            let more = share * 0.5 * (last_m3 + next_m3) - 0.5 * last_m3;
            if more > 0.0 {
                let (v, _) = sim.draw_some(more, 1.0 / FIRST_HOUR_FLOW, INLET_C, air);
                d.volume_m3 += v;
                d.seconds += v / FIRST_HOUR_FLOW;
                heat += v * 0.5 * (last_c + limit);
            } else {
                d.volume_m3 += more;
                heat += more * last_c;
            }
            d.coldest_c = limit;
            break;
        }
        let (v, t) = sim.draw_some(sim.layers().top_m3(), 1.0 / FIRST_HOUR_FLOW, INLET_C, air);
        d.volume_m3 += v;
        d.seconds += v / FIRST_HOUR_FLOW;
        heat += v * t;
        d.coldest_c = t;
        (last_c, last_m3) = (t, v);
    }
    d.mean_c = if d.volume_m3 > 0.0 { heat / d.volume_m3 } else { d.coldest_c };
    d
}
