//! A heat pump as a table: where coil and compressor agree, by air, its moisture and condensing temperature.
//!
//! What costs time in [`HeatPump::run`] is finding the evaporating temperature; what follows from it is a few
//! multiplications. So the evaporating temperature is what the table holds, which is all but straight between its
//! points, and the water taken from the air beside it.

use super::coil::{Coil, CoilInlet};
use super::machine::{HeatPump, Running};
use crate::core::moist_air::saturation_humidity_ratio;

/// Air, °C; moisture, kg/kg; condensing, °C: the first of each, the step and how many.
const AIR: (f64, f64, usize) = (-4.0, 4.0, 12);
const MOISTURE: (f64, f64, usize) = (0.001, 0.001_5, 15);
const CONDENSING: (f64, f64, usize) = (8.0, 9.0, 8);

/// The table of one machine at one air pressure.
#[derive(Clone, Debug)]
pub struct Table {
    pump: HeatPump,
    /// Evaporating temperature, °C, and water taken from the air, kg/s.
    at: Vec<(f64, f64)>,
}

impl Table {
    /// Of a machine.
    pub fn of(pump: &HeatPump, pressure_pa: f64) -> Table {
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
                    at.push((run.evaporating_c, run.condensate_kg_per_s));
                }
            }
        }
        Table { pump: pump.clone(), at }
    }

    /// How the machine runs in air of a temperature and moisture at a condensing temperature; beyond the table's ends as
    /// if there.
    #[inline(always)]
    pub fn run(&self, air_c: f64, w: f64, condensing_c: f64) -> Running {
        let (a, da) = place(air_c, AIR);
        let (m, dm) = place(w, MOISTURE);
        let (c, dc) = place(condensing_c, CONDENSING);
        let one = (a * MOISTURE.2 + m) * CONDENSING.2 + c;
        let other = one + MOISTURE.2 * CONDENSING.2;
        // Written out: the compiler makes short work of this, but not of loops over pairs.
        let (one, two) = (self.along(one, dc), self.along(one + CONDENSING.2, dc));
        let (three, four) = (self.along(other, dc), self.along(other + CONDENSING.2, dc));
        let (cold, warm) = (between(one.0, two.0, dm), between(three.0, four.0, dm));
        let evaporating_c = between(cold, warm, da);
        let (cold, warm) = (between(one.1, two.1, dm), between(three.1, four.1, dm));
        let condensate = between(cold, warm, da);
        let condensing_c = CONDENSING.0 + CONDENSING.1 * (c as f64 + dc);
        self.pump.run_at(evaporating_c, condensing_c, condensate)
    }

    /// Between a point and the next one along the condensing temperature.
    #[inline(always)]
    fn along(&self, at: usize, share: f64) -> (f64, f64) {
        // Every place is within the table.
        let (Some(low), Some(high)) = (self.at.get(at), self.at.get(at + 1)) else { return (0.0, 0.0) };
        (between(low.0, high.0, share), between(low.1, high.1, share))
    }
}

#[inline(always)]
fn between(low: f64, high: f64, share: f64) -> f64 {
    low + share * (high - low)
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

    fn machine(poorness: f64) -> HeatPump {
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
        class::set_poorness(&mut pump, poorness);
        pump
    }

    proptest! {
        /// Between its points the table is the machine, to 4 % of heat and power; to 8 % where the least lift starves the
        /// coil, which few hours see: a kink between points. How the heat is taken from the air: to a tenth of it.
        #[test]
        fn the_table_is_the_machine(
            poorness in 0.0..3.0f64, air in 4.0..34.0f64, rh in 0.2..0.8f64, condensing in 14.0..66.0f64,
        ) {
            let pump = machine(poorness);
            let table = Table::of(&pump, STANDARD_PRESSURE_PA);
            let w = rh * saturation_humidity_ratio(air, STANDARD_PRESSURE_PA);
            prop_assume!(w < 0.022);
            let inlet = CoilInlet::new(air, w, STANDARD_PRESSURE_PA);
            let coil = Coil::new(inlet.dry_air_kg_per_s(pump.air_m3_per_s), pump.bypass_factor).expect("a coil");
            let run = pump.run(&inlet, &coil, condensing, air - 10.0);
            let told = table.run(air, w, condensing);
            let near = if condensing > air + 20.0 { 0.04 } else { 0.08 };
            prop_assert!((told.heat_w / run.heat_w - 1.0).abs() < near, "{} {}", told.heat_w, run.heat_w);
            let off = told.compressor_w / run.compressor_w - 1.0;
            prop_assert!(off.abs() < near, "{} {}", told.compressor_w, run.compressor_w);
            prop_assert!((told.sensible_w - run.sensible_w).abs() < 0.1 * run.heat_w, "{told:?} {run:?}");
        }

        /// Outside the table its ends hold: finite, whatever is asked, and heat stays work plus what is taken from the air.
        #[test]
        fn beyond_its_ends_it_stays(air in -80.0..120.0f64, w in -0.1..0.2f64, condensing in -50.0..150.0f64) {
            let run = Table::of(&machine(1.5), STANDARD_PRESSURE_PA).run(air, w, condensing);
            prop_assert!(run.heat_w > 0.0 && run.heat_w.is_finite() && run.compressor_w > 0.0);
            prop_assert!((run.heat_w - run.compressor_w - run.sensible_w - run.latent_w).abs() < 1e-6);
        }
    }
}
