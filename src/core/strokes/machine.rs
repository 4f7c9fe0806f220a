//! A heat pump as a table: what it gives and takes by air, its moisture and condensing temperature.

use crate::core::heat_pump::coil::{Coil, CoilInlet};
use crate::core::heat_pump::machine::HeatPump;
use crate::core::moist_air::saturation_humidity_ratio;

/// Air, °C; moisture, kg/kg; condensing, °C: the first of each, the step and how many.
const AIR: (f64, f64, usize) = (-4.0, 4.0, 12);
const MOISTURE: (f64, f64, usize) = (0.001, 0.001_5, 15);
const CONDENSING: (f64, f64, usize) = (8.0, 9.0, 8);
/// Figures at each point.
const OUTPUTS: usize = 4;

/// How the machine runs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Gives {
    /// Heat to the water, W.
    pub heat_w: f64,
    /// Compressor, W.
    pub compressor_w: f64,
    /// Heat taken from the air by cooling it, W.
    pub sensible_w: f64,
    /// Water taken from the air, kg/s.
    pub condensate_kg_per_s: f64,
}

/// The table of one machine at one air pressure.
#[derive(Clone, Debug)]
pub struct Map {
    at: Vec<[f64; OUTPUTS]>,
}

impl Map {
    /// Of a machine.
    pub fn of(pump: &HeatPump, pressure_pa: f64) -> Map {
        let mut at = Vec::with_capacity(AIR.2 * MOISTURE.2 * CONDENSING.2);
        for a in 0..AIR.2 {
            let air_c = AIR.0 + AIR.1 * a as f64;
            let most = saturation_humidity_ratio(air_c, pressure_pa);
            for m in 0..MOISTURE.2 {
                let w = MOISTURE.0 + MOISTURE.1 * m as f64;
                let inlet = CoilInlet::new(air_c, if w < most { w } else { most }, pressure_pa);
                let coil = Coil::new(inlet.dry_air_kg_per_s(pump.air_m3_per_s), pump.bypass_factor);
                let mut guess_c = air_c - 10.0;
                for c in 0..CONDENSING.2 {
                    let condensing_c = CONDENSING.0 + CONDENSING.1 * c as f64;
                    let run = coil.as_ref().map(|coil| pump.run(&inlet, coil, condensing_c, guess_c));
                    let run = run.unwrap_or_default();
                    guess_c = run.evaporating_c;
                    at.push([run.heat_w, run.compressor_w, run.sensible_w, run.condensate_kg_per_s]);
                }
            }
        }
        Map { at }
    }

    /// Along the condensing temperature in air of a state: the table of one moment.
    #[inline(always)]
    pub(super) fn in_air(&self, air_c: f64, w: f64) -> InAir<'_> {
        let (a, da) = place(air_c, AIR);
        let (m, dm) = place(w, MOISTURE);
        let row = |a: usize, m: usize| (a * MOISTURE.2 + m) * CONDENSING.2;
        let (low, high) = (1.0 - da, da);
        InAir {
            at: &self.at,
            rows: [row(a, m), row(a, m + 1), row(a + 1, m), row(a + 1, m + 1)],
            weights: [low * (1.0 - dm), low * dm, high * (1.0 - dm), high * dm],
        }
    }
}

/// A map in air of one state.
pub(super) struct InAir<'a> {
    at: &'a [[f64; OUTPUTS]],
    rows: [usize; 4],
    weights: [f64; 4],
}

impl InAir<'_> {
    #[inline(always)]
    pub fn gives(&self, condensing_c: f64) -> Gives {
        let (c, dc) = place(condensing_c, CONDENSING);
        let mut sum = [0.0; OUTPUTS];
        for (row, weight) in self.rows.iter().zip(&self.weights) {
            let Some([low, high]) =
                self.at.get(row + c..row + c + 2).and_then(|two| <&[_; 2]>::try_from(two).ok())
            else {
                continue;
            };
            let (below, above) = (weight * (1.0 - dc), weight * dc);
            for k in 0..OUTPUTS {
                sum[k] += below * low[k] + above * high[k];
            }
        }
        Gives { heat_w: sum[0], compressor_w: sum[1], sensible_w: sum[2], condensate_kg_per_s: sum[3] }
    }
}

/// The lower neighbour and the share of the way to the next; beyond the ends the ends.
#[inline(always)]
fn place(value: f64, (first, step, count): (f64, f64, usize)) -> (usize, f64) {
    let at = (value - first) * (1.0 / step);
    let last = (count - 1) as f64;
    let at = if at > 0.0 { if at < last - 1e-9 { at } else { last - 1e-9 } } else { 0.0 };
    let low = at as i32 as usize;
    (low, at - low as f64)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::candidates::Label;
    use crate::core::case::HeaterKind;
    use crate::core::label::class::{self, Build};
    use crate::core::moist_air::STANDARD_PRESSURE_PA;
    use crate::core::units::{gallons, watts};
    use proptest::prelude::*;

    fn machine() -> HeatPump {
        let label = Label {
            kind: HeaterKind::HeatPump,
            nominal_volume: gallons(50.0),
            uniform_energy_factor: 3.45,
            first_hour_rating: gallons(65.0),
            input: watts(4_500.0),
            heat_pump_output: watts(1_700.0),
        };
        let mut pump =
            class::model(&label, &Build::usual(label.kind), 50.0).pump().cloned().expect("a heat pump");
        class::set_poorness(&mut pump, 1.5);
        pump
    }

    proptest! {
        /// Between its points the table is the machine, to 5 % of heat and power; to 10 % where the least lift starves the
        /// coil, which few hours see: a kink between points.
        #[test]
        fn the_table_is_the_machine(air in 4.0..34.0f64, rh in 0.2..0.8f64, condensing in 14.0..66.0f64) {
            let pump = machine();
            let map = Map::of(&pump, STANDARD_PRESSURE_PA);
            let w = rh * saturation_humidity_ratio(air, STANDARD_PRESSURE_PA);
            prop_assume!(w < 0.022);
            let inlet = CoilInlet::new(air, w, STANDARD_PRESSURE_PA);
            let coil = Coil::new(inlet.dry_air_kg_per_s(pump.air_m3_per_s), pump.bypass_factor).expect("a coil");
            let run = pump.run(&inlet, &coil, condensing, air - 10.0);
            let gives = map.in_air(air, w).gives(condensing);
            let near = if condensing > air + 20.0 { 0.05 } else { 0.10 };
            prop_assert!((gives.heat_w / run.heat_w - 1.0).abs() < near, "{} {}", gives.heat_w, run.heat_w);
            prop_assert!((gives.compressor_w / run.compressor_w - 1.0).abs() < near);
        }

        /// Outside the table its ends hold: finite, whatever is asked.
        #[test]
        fn beyond_its_ends_it_stays(air in -80.0..120.0f64, w in -0.1..0.2f64, condensing in -50.0..150.0f64) {
            let map = Map::of(&machine(), STANDARD_PRESSURE_PA);
            let gives = map.in_air(air, w).gives(condensing);
            prop_assert!(gives.heat_w > 0.0 && gives.heat_w.is_finite() && gives.compressor_w > 0.0);
        }
    }
}
