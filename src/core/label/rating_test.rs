//! The federal rating test for storage water heaters, run on a simulated heater.
//!
//! Source: 10 CFR part 430, subpart B, appendix E (as amended 2023; conditions, draw patterns and
//! relations from memory). Draws are taken as volumes; the volumetric heat is the simulation's constant.
//!
//! The simulated-use test of one day moves by 2 % with the thermostat's phase. The procedure starts
//! after a cut-out; here too ([`Sim::new`] is a tank at its cut-out), and so that the day ends as it
//! began, its stored-energy correction is applied as the procedure has it.

use super::patterns::{Pattern, Withdrawal};
use crate::core::heater::{Constant, Model, Sim, Surroundings, Totals};
use crate::core::moist_air::{STANDARD_PRESSURE_PA, humidity_ratio_from_relative_humidity};
use crate::core::units::GALLON_M3;
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Inlet water, °C (58 °F).
pub const INLET_C: f64 = (58.0 - 32.0) * 5.0 / 9.0;
/// Delivered water and setpoint, °C (125 °F).
pub const DELIVERED_C: f64 = (125.0 - 32.0) * 5.0 / 9.0;
/// Nominal rise, K (67 °F).
pub const RISE_K: f64 = 67.0 * 5.0 / 9.0;
/// Air, °C (67.5 °F).
pub const AIR_C: f64 = (67.5 - 32.0) * 5.0 / 9.0;
/// Relative humidity of the air for heat pumps.
pub const AIR_RH: f64 = 0.5;
/// Flow of the first-hour test, m³/s (3 US gal a minute).
const FIRST_HOUR_FLOW: f64 = 3.0 * GALLON_M3 / 60.0;
/// A draw of the first-hour test ends when the outlet has fallen this far, K (15 °F).
const OUTLET_DROP_K: f64 = 15.0 * 5.0 / 9.0;
/// Longest heating step of a heat pump under test, s.
const PUMP_STEP_S: f64 = 300.0;
const HOUR_S: f64 = 3_600.0;
const DAY_S: f64 = 86_400.0;

/// Air of the test room.
pub fn test_air() -> Constant {
    let w = humidity_ratio_from_relative_humidity(AIR_C, AIR_RH, STANDARD_PRESSURE_PA);
    Constant::new(AIR_C, w, STANDARD_PRESSURE_PA)
}

/// Result of the 24-hour simulated-use test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SimulatedUse {
    /// Uniform energy factor.
    pub uniform_energy_factor: f64,
    /// Recovery efficiency, from the first recovery.
    pub recovery_efficiency: f64,
    /// Electricity and fuel used in the day, J.
    pub used_j: f64,
    /// Pattern drawn.
    pub pattern: Pattern,
}

/// Rates a heater: first-hour test, pattern by its result, simulated use. The heater is run at the
/// test's setpoint whatever its own.
pub fn rate(model: &Model) -> (f64, SimulatedUse) {
    let at_test = model.at_setpoint(DELIVERED_C);
    let first_hour_m3 = first_hour_rating_m3(&at_test);
    let pattern = Pattern::for_first_hour_rating(first_hour_m3 / GALLON_M3);
    (first_hour_m3, simulated_use(&at_test, pattern))
}

/// First-hour rating, m³: draws at 3 gal/min, each until the outlet has fallen by 15 °F; the next when
/// the top is hot again; for an hour, a draw under way being finished; when none is under way at the
/// hour, a last one counts by how warm it is.
pub fn first_hour_rating_m3(model: &Model) -> f64 {
    let mut air = test_air();
    let mut sim = Sim::new(model).with_pump_step(PUMP_STEP_S);
    let mut now = 0.0;
    let mut total = 0.0;
    loop {
        let d = deplete(&mut sim, &mut air);
        now += d.seconds;
        total += d.volume_m3;
        if now >= HOUR_S {
            return total;
        }
        // The thermostats answer to the draw just made, then the top is waited for.
        sim.advance(1.0, &mut air);
        now += 1.0;
        while now < HOUR_S && !sim.top_is_satisfied() {
            let step = if HOUR_S - now < 10.0 { HOUR_S - now } else { 10.0 };
            sim.advance(step, &mut air);
            now += step;
        }
        if now >= HOUR_S {
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

/// The 24-hour simulated-use test.
pub fn simulated_use(model: &Model, pattern: Pattern) -> SimulatedUse {
    let mut air = test_air();
    let mut sim = Sim::new(model).with_pump_step(PUMP_STEP_S);
    let start_j = sim.stored_j();
    let mut now = 0.0;
    let mut nominal_j = 0.0;
    let mut recovery: Option<f64> = None;
    for w in pattern.withdrawals() {
        advance_watching(&mut sim, &mut air, w.start_s - now, start_j, &mut recovery);
        now = w.start_s + withdraw(&mut sim, &mut air, w);
        nominal_j += RHO_C * w.volume_m3() * RISE_K;
    }
    advance_watching(&mut sim, &mut air, DAY_S - now, start_j, &mut recovery);
    let t = sim.totals();
    let used_j = t.electricity_j + t.fuel_j;
    let efficiency = recovery.unwrap_or_else(|| recovered(t, sim.stored_j() - start_j));
    // Stored energy brought back to what it was, and delivery and inlet brought to their nominal rise,
    // both at the recovery efficiency.
    let day = used_j - (sim.stored_j() - start_j) / efficiency;
    let corrected = day + (nominal_j - t.delivered_j) / efficiency;
    SimulatedUse {
        uniform_energy_factor: if corrected > 0.0 { nominal_j / corrected } else { 0.0 },
        recovery_efficiency: efficiency,
        used_j,
        pattern,
    }
}

/// Heat drawn and stored for what was used.
fn recovered(t: &Totals, stored_change_j: f64) -> f64 {
    let used = t.electricity_j + t.fuel_j;
    if used > 0.0 { (t.delivered_j + stored_change_j) / used } else { 1.0 }
}

/// Lets time pass; notes the recovery efficiency when the first recovery after a draw has ended.
fn advance_watching(
    sim: &mut Sim,
    air: &mut impl Surroundings,
    time_s: f64,
    start_j: f64,
    recovery: &mut Option<f64>,
) {
    let mut left = time_s;
    while left > 1e-9 {
        let step = if recovery.is_none() && left > 60.0 { 60.0 } else { left };
        sim.advance(step, air);
        left -= step;
        if recovery.is_none() && sim.is_idle() && sim.totals().heat_in_j > 0.0 {
            *recovery = Some(recovered(sim.totals(), sim.stored_j() - start_j));
        }
    }
}

fn withdraw(sim: &mut Sim, air: &mut impl Surroundings, w: &Withdrawal) -> f64 {
    let mut left = w.volume_m3();
    let seconds_per_m3 = 1.0 / w.flow_m3_per_s();
    while left > 1e-12 {
        let (v, _) = sim.draw_some(left, seconds_per_m3, INLET_C, air);
        left -= v;
    }
    w.volume_m3() * seconds_per_m3
}
