//! Coefficient of performance of a heat pump over the air of its room and the water in its tank.

use super::rating_test::AIR_RH;
use crate::core::heat_pump::coil::{Coil, CoilInlet};
use crate::core::heat_pump::machine::{HeatPump, Running};
use crate::core::moist_air::{STANDARD_PRESSURE_PA, humidity_ratio_from_relative_humidity};
use serde::{Deserialize, Serialize};

/// Air temperatures of the map, °C.
pub const ROOM_C: [f64; 8] = [4.0, 8.0, 12.0, 16.0, 20.0, 24.0, 28.0, 32.0];
/// Water temperatures of the map, °C.
pub const WATER_C: [f64; 11] = [10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0];

/// A calibrated heat pump's map. Values lie row by row: `cop[room · water_c.len() + water]`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CopMap {
    /// Temperatures of the room, °C.
    pub room_c: Vec<f32>,
    /// Temperatures of the tank's water, mixed through, °C.
    pub water_c: Vec<f32>,
    /// Relative humidity of the room, 0 to 1.
    pub relative_humidity: f64,
    /// Heat to the water over electricity of compressor and fan.
    pub cop: Vec<f32>,
    /// Heat to the water, W.
    pub heat_w: Vec<f32>,
    /// Electricity of compressor and fan, W.
    pub electric_w: Vec<f32>,
}

/// Works out the map, at the relative humidity of the rating test and sea level.
pub fn cop_map(pump: &HeatPump) -> CopMap {
    let mut map = CopMap {
        room_c: ROOM_C.map(|t| t as f32).to_vec(),
        water_c: WATER_C.map(|t| t as f32).to_vec(),
        relative_humidity: AIR_RH,
        cop: Vec::new(),
        heat_w: Vec::new(),
        electric_w: Vec::new(),
    };
    for room_c in ROOM_C {
        for water_c in WATER_C {
            let r = at(pump, room_c, AIR_RH, water_c);
            let electric_w = r.compressor_w + pump.fan_w;
            map.cop.push(if electric_w > 0.0 { (r.heat_w / electric_w) as f32 } else { 0.0 });
            map.heat_w.push(r.heat_w as f32);
            map.electric_w.push(electric_w as f32);
        }
    }
    map
}

/// How the machine runs with the whole tank at one temperature: the condenser is as much warmer as its heat
/// needs. Heat falls by half a per cent a kelvin of condensing temperature, so the search contracts fast.
pub fn at(pump: &HeatPump, room_c: f64, relative_humidity: f64, water_c: f64) -> Running {
    let w = humidity_ratio_from_relative_humidity(room_c, relative_humidity, STANDARD_PRESSURE_PA);
    let inlet = CoilInlet::new(room_c, w, STANDARD_PRESSURE_PA);
    let Ok(coil) = Coil::new(inlet.dry_air_kg_per_s(pump.air_m3_per_s), pump.bypass_factor) else {
        return Running::default();
    };
    let mut run = Running { heat_w: pump.output_w, evaporating_c: room_c - 10.0, ..Running::default() };
    for _ in 0..8 {
        let condensing_c = water_c + run.heat_w / pump.condenser_w_per_k;
        run = pump.run(&inlet, &coil, condensing_c, run.evaporating_c);
    }
    run
}
