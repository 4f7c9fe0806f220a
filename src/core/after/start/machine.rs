//! The heat pump at one moment: given air and water, what it draws, blows and drips; and the whole tank from cold.

use crate::core::heat_pump::coil::{Coil, CoilInlet};
use crate::core::heat_pump::machine::{HeatPump, Running};
use crate::core::heater::{Constant, Model, Sim, Source};
use crate::core::moist_air::{DRY_AIR_HEAT_J_PER_KG_K, VAPOUR_HEAT_J_PER_KG_K};

/// Air at the heater.
#[derive(Clone, Copy, Debug)]
pub(super) struct Air {
    /// Temperature, °C.
    pub t_c: f64,
    /// Humidity ratio, kg/kg.
    pub w: f64,
    /// Pressure, Pa.
    pub pressure_pa: f64,
}

/// What a heat pump does at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Moment {
    /// Air that leaves it, °C.
    pub air_out_c: f64,
    /// Compressor, fan and electronics, W.
    pub power_w: f64,
    /// Condensate, m³/s.
    pub condensate_m3_per_s: f64,
}

/// The heat pump in this air with the water around its condenser at one temperature; `None` for air that locks it
/// out.
pub(super) fn moment(pump: &HeatPump, idle_w: f64, air: Air, water_c: f64) -> Option<Moment> {
    if air.t_c < pump.coldest_air_c || air.t_c > pump.warmest_air_c {
        return None;
    }
    let inlet = CoilInlet::new(air.t_c, air.w, air.pressure_pa);
    let flow = inlet.dry_air_kg_per_s(pump.air_m3_per_s);
    let coil = Coil::new(flow, pump.bypass_factor).ok()?;
    let mut run = Running { heat_w: pump.output_w, evaporating_c: air.t_c - 10.0, ..Running::default() };
    // The condenser is as much warmer as its heat needs; heat falls by half a per cent a kelvin of that, so that
    // the search contracts fast.
    for _ in 0..8 {
        let condensing_c = water_c + run.heat_w / pump.condenser_w_per_k;
        run = pump.run(&inlet, &coil, condensing_c, run.evaporating_c);
    }
    // The fan's work warms the air that it moves.
    let heat_per_k = flow * (DRY_AIR_HEAT_J_PER_KG_K + air.w * VAPOUR_HEAT_J_PER_KG_K);
    Some(Moment {
        air_out_c: air.t_c - (run.sensible_w - pump.fan_w) / heat_per_k,
        power_w: run.compressor_w + pump.fan_w + idle_w,
        condensate_m3_per_s: run.condensate_kg_per_s * 1e-3,
    })
}

/// Longest time looked at, s: two days.
const LONGEST_S: f64 = 172_800.0;

/// Seconds until a tank full of cold water first cuts out; the longest looked at where it never does.
pub(super) fn heat_time_s(model: &Model, air: Air, cold_c: f64) -> f64 {
    let cold = model.at_setpoint(cold_c);
    let mut sim = Sim::new(&cold);
    sim.go_on_as(model);
    let mut around = Constant::new(air.t_c, air.w, air.pressure_pa);
    let mut t = 0.0;
    while t < LONGEST_S {
        sim.advance(60.0, &mut around);
        t += 60.0;
        if sim.is_idle() {
            break;
        }
    }
    t
}

/// The same heater without its elements, as in the mode that uses the heat pump alone.
pub(super) fn without_elements(model: &Model) -> Model {
    let mut alone = model.clone();
    if let Source::HeatPump { backup, .. } = &mut alone.source {
        *backup = None;
    }
    alone
}
