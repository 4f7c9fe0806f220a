//! The refrigeration machine between coil and condenser: semi-empirical, three figures calibrated.
//!
//! **Capacity** follows the compressor's displacement: the vapour it swallows grows with the evaporating
//! temperature and falls a little with the condensing one; both linear about the rating point.
//!
//! **Efficiency** is Carnot's between the two refrigerant temperatures, moved apart by a fixed
//! [`INTERNAL_LIFT_K`] (pressure drops, superheat, and what a compressor loses at small pressure ratios),
//! times an effectiveness that the label calibrates and that falls with the condensing temperature
//! ([`THROTTLING_PER_K`]). So the second-law effectiveness falls at small lift, as a real compressor's does, and
//! with hot water, as a real fluid's does; no point of the map gives a coefficient of performance much above 7. Compared with R-134a cycles by a reference library in
//! `tests/published/cycle.rs`.
//!
//! **Evaporator**: the apparatus temperature of the [`Coil`] lies [`COIL_APPROACH_K`] above the
//! evaporating temperature. The evaporating temperature is where coil and compressor agree, but never
//! nearer than [`LEAST_LIFT_K`] below the condensing one: with cold water in hot air the expansion valve
//! starves the coil, whose surface then is as warm as the compressor's demand leaves it.

use super::coil::{Coil, CoilInlet, Surface};
use crate::core::moist_air::VAPOUR_ENTHALPY_AT_0_C_J_PER_KG;
use crate::core::units::ZERO_C_K;

/// Extra lift inside the machine, K. With it an effectiveness of 0.6 to 0.7 gives 3.3 at 57 over 7 °C
/// and near 6 at 25 over 7 °C, as compressors do; common practice, no source.
pub const INTERNAL_LIFT_K: f64 = 15.0;
/// Effectiveness lost per kelvin of condensing temperature, as a share of that at [`RATED_CONDENSING_C`]: the hotter the
/// liquid before the valve, the more of it flashes. The second-law effectiveness of cycles of R-134a by CoolProp at a fixed
/// isentropic efficiency falls by so much, nearly straight, from 35 to 65 °C condensing, whatever the evaporating
/// temperature (`tests/published/cycle.rs` holds this figure to them).
pub const THROTTLING_PER_K: f64 = 0.0035;
/// Coil surface above refrigerant, K; common practice, no source.
pub const COIL_APPROACH_K: f64 = 2.0;
/// Least difference of condensing and evaporating temperature, K: the pressure ratio of 1.5 or so that an
/// expansion valve needs to pass its flow; common practice, no source.
pub const LEAST_LIFT_K: f64 = 12.0;
/// Evaporating temperature at which the output is rated, °C.
pub const RATED_EVAPORATING_C: f64 = 8.0;
/// Condensing temperature at which the output is rated, °C.
pub const RATED_CONDENSING_C: f64 = 50.0;
/// Output gained per kelvin of evaporating temperature: the density of R-134a vapour grows by 3 to 3.5 %
/// a kelvin there.
const OUTPUT_PER_EVAPORATING_K: f64 = 0.030;
/// Output lost per kelvin of condensing temperature; volumetric efficiency and enthalpy difference.
const OUTPUT_PER_CONDENSING_K: f64 = 0.005;
/// Newton's method ends after a step shorter than this, K: it converges quadratically, so what is left after
/// such a step is far below a hundredth of it.
const CLOSE_ENOUGH_K: f64 = 0.02;
/// How much less a kilogram of vapour gives as it condenses for each kelvin above 0 °C, J/(kg·K): liquid's specific heat less
/// vapour's.
const CONDENSES_LESS_J_PER_KG_K: f64 = 2_326.0;
/// Share of the output lost to defrosting when the coil is this far below freezing, and beyond.
const DEFROST_SHARE: f64 = 0.15;
const DEFROST_FULL_BELOW_K: f64 = 8.0;

/// A heat pump's figures.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatPump {
    /// Heat to the water at the rating point, W.
    pub output_w: f64,
    /// Share of Carnot's efficiency (with the internal lift); calibrated to the label.
    pub effectiveness: f64,
    /// Air through the coil, m³/s.
    pub air_m3_per_s: f64,
    /// Share of that air that passes the coil untouched.
    pub bypass_factor: f64,
    /// Fan, W.
    pub fan_w: f64,
    /// Condenser to water, W/K over the whole condenser.
    pub condenser_w_per_k: f64,
    /// Relative height that the condenser reaches up to.
    pub condenser_top: f64,
    /// Colder air than this locks it out, °C.
    pub coldest_air_c: f64,
    /// Warmer air than this locks it out, °C.
    pub warmest_air_c: f64,
}

/// How the machine runs at one moment.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Running {
    /// Heat to the water, W.
    pub heat_w: f64,
    /// Compressor, W.
    pub compressor_w: f64,
    /// Heat taken from the air by cooling it, W.
    pub sensible_w: f64,
    /// Heat taken from the air by drying it, W.
    pub latent_w: f64,
    /// Water taken from the air, kg/s.
    pub condensate_kg_per_s: f64,
    /// Evaporating temperature, °C.
    pub evaporating_c: f64,
}

/// Where coil and compressor agree.
struct Agreed {
    evaporating_c: f64,
    /// The coil as last looked at, close by; `None` where the least lift starves the coil, whose surface then has
    /// a temperature of its own.
    surface: Option<Surface>,
}

/// The lift that the compressor sees, K: what lies between two refrigerant temperatures, and what is lost inside.
fn lift_k(evaporating_c: f64, condensing_c: f64) -> f64 {
    condensing_c - evaporating_c + INTERNAL_LIFT_K
}

/// Coefficient of performance times lift, K, of a machine of some effectiveness: Carnot's, less what flashes.
fn carnot_k(effectiveness: f64, condensing_c: f64) -> f64 {
    let flashed = 1.0 - THROTTLING_PER_K * (condensing_c - RATED_CONDENSING_C);
    effectiveness * flashed * (condensing_c + ZERO_C_K)
}

/// Coefficient of performance between two refrigerant temperatures, °C, of a machine whose effectiveness is 1: what any
/// machine's is in proportion to.
pub fn of_carnot(evaporating_c: f64, condensing_c: f64) -> f64 {
    carnot_k(1.0, condensing_c) / lift_k(evaporating_c, condensing_c)
}

impl HeatPump {
    /// Coefficient of performance of the compressor (without the fan).
    pub fn efficiency(&self, evaporating_c: f64, condensing_c: f64) -> f64 {
        self.carnot(condensing_c) / lift_k(evaporating_c, condensing_c)
    }

    /// Coefficient of performance times lift, K.
    fn carnot(&self, condensing_c: f64) -> f64 {
        carnot_k(self.effectiveness, condensing_c)
    }

    /// Heat to the water, W, before defrosting.
    fn output_w(&self, evaporating_c: f64, condensing_c: f64) -> f64 {
        let by_evaporating = 1.0 + OUTPUT_PER_EVAPORATING_K * (evaporating_c - RATED_EVAPORATING_C);
        let by_evaporating = if by_evaporating > 0.1 { by_evaporating } else { 0.1 };
        self.output_w * by_evaporating * self.condensing_share(condensing_c)
    }

    fn condensing_share(&self, condensing_c: f64) -> f64 {
        let share = 1.0 - OUTPUT_PER_CONDENSING_K * (condensing_c - RATED_CONDENSING_C);
        if share > 0.3 { share } else { 0.3 }
    }

    /// How the machine runs at a condensing temperature; `guess_c` is the last evaporating temperature.
    pub fn run(&self, inlet: &CoilInlet, coil: &Coil, condensing_c: f64, guess_c: f64) -> Running {
        let agreed = self.agree(inlet, coil, condensing_c, guess_c);
        let evaporating_c = agreed.evaporating_c;
        let carnot = self.carnot(condensing_c);
        let heat_w = self.output_w(evaporating_c, condensing_c);
        let compressor_w = heat_w * lift_k(evaporating_c, condensing_c) / carnot;
        let surface_c = evaporating_c + COIL_APPROACH_K;
        let out = match agreed.surface {
            Some(surface) => coil.outlet_of(inlet, surface_c, surface.w_near(inlet, surface_c)),
            None => {
                let demand_w = heat_w - compressor_w;
                let found = coil.apparatus_temperature_c(inlet, demand_w, surface_c).unwrap_or(surface_c);
                coil.outlet(inlet, found)
            }
        };
        self.defrosted(evaporating_c, heat_w, compressor_w, out.sensible_w, out.condensate_kg_per_s)
    }

    /// The evaporating temperature at which coil and compressor agree.
    ///
    /// Newton's method from a guess (from the last result two or three steps suffice; twelve are allowed). The
    /// compressor's demand is a product of two straight lines in the evaporating temperature, the coil's
    /// supply falls: on each side of the dew point their difference falls and is concave, so that steps
    /// from above converge without overshoot. At the dew point the coil's slope jumps, and a step across it
    /// from the dry side stops there; without that the iteration could run in a circle.
    fn agree(&self, inlet: &CoilInlet, coil: &Coil, condensing_c: f64, guess_c: f64) -> Agreed {
        let carnot = self.carnot(condensing_c);
        let share = self.output_w * self.condensing_share(condensing_c);
        // The machine cannot evaporate above the air that boils the refrigerant.
        let by_air = inlet.t_c() - COIL_APPROACH_K - 0.1;
        let by_lift = condensing_c - LEAST_LIFT_K;
        let highest = if by_lift < by_air { by_lift } else { by_air };
        // Just wet, so that the slope there is that of the wet side.
        let dew_c = inlet.dew_point_c() - COIL_APPROACH_K - 1e-6;
        let mut evaporating_c = if guess_c < highest { guess_c } else { highest };
        let mut last = None;
        for _ in 0..12 {
            let surface = coil.surface(inlet, evaporating_c + COIL_APPROACH_K);
            last = Some(surface);
            let (output, output_slope) = {
                let x = 1.0 + OUTPUT_PER_EVAPORATING_K * (evaporating_c - RATED_EVAPORATING_C);
                if x > 0.1 { (share * x, share * OUTPUT_PER_EVAPORATING_K) } else { (share * 0.1, 0.0) }
            };
            let lift = lift_k(evaporating_c, condensing_c);
            let from_air = 1.0 - lift / carnot;
            let demand = output * from_air;
            let demand_slope = output_slope * from_air + output / carnot;
            let next = evaporating_c - (surface.total_w - demand) / (surface.slope_w_per_k - demand_slope);
            if next >= highest && evaporating_c >= highest {
                let surface = if by_lift < by_air { None } else { last };
                return Agreed { evaporating_c: highest, surface };
            }
            let next = if evaporating_c > dew_c && next < dew_c {
                // On to the wet side, however short the step there was.
                evaporating_c = dew_c;
                continue;
            } else if next > highest {
                highest
            } else if next < -60.0 {
                -60.0
            } else {
                next
            };
            let moved = next - evaporating_c;
            evaporating_c = next;
            if moved < CLOSE_ENOUGH_K && moved > -CLOSE_ENOUGH_K {
                break;
            }
        }
        Agreed { evaporating_c, surface: last }
    }

    /// How the machine runs where the evaporating temperature is known, and the water taken from the air, kg/s.
    pub(super) fn run_at(&self, evaporating_c: f64, condensing_c: f64, condensate_kg_per_s: f64) -> Running {
        let heat_w = self.output_w(evaporating_c, condensing_c);
        let compressor_w = heat_w * lift_k(evaporating_c, condensing_c) / self.carnot(condensing_c);
        let (from_air, _) = from_air(evaporating_c, heat_w, compressor_w);
        let condenses_j_per_kg =
            VAPOUR_ENTHALPY_AT_0_C_J_PER_KG - CONDENSES_LESS_J_PER_KG_K * (evaporating_c + COIL_APPROACH_K);
        let latent_w = condensate_kg_per_s * condenses_j_per_kg;
        let latent_w = if latent_w < from_air { latent_w } else { from_air };
        Running {
            heat_w: from_air + compressor_w,
            compressor_w,
            sensible_w: from_air - latent_w,
            latent_w,
            condensate_kg_per_s,
            evaporating_c,
        }
    }

    /// The balance with frost: what the water does not get is not taken from the air.
    fn defrosted(
        &self,
        evaporating_c: f64,
        heat_w: f64,
        compressor_w: f64,
        sensible_w: f64,
        condensate_kg_per_s: f64,
    ) -> Running {
        let (from_air, ratio) = from_air(evaporating_c, heat_w, compressor_w);
        // What is not sensible is latent, so that heat, work and air balance exactly.
        let sensible_w = sensible_w * ratio;
        Running {
            heat_w: from_air + compressor_w,
            compressor_w,
            sensible_w: if condensate_kg_per_s > 0.0 { sensible_w } else { from_air },
            latent_w: if condensate_kg_per_s > 0.0 { from_air - sensible_w } else { 0.0 },
            condensate_kg_per_s: condensate_kg_per_s * ratio,
            evaporating_c,
        }
    }
}

/// Heat taken from the air, W, by a machine that for a share of the time melts its coil instead of heating water; and
/// that over what it would take without frost.
fn from_air(evaporating_c: f64, heat_w: f64, compressor_w: f64) -> (f64, f64) {
    let below = -(evaporating_c + COIL_APPROACH_K);
    let frost = if below > 0.0 {
        DEFROST_SHARE * if below < DEFROST_FULL_BELOW_K { below / DEFROST_FULL_BELOW_K } else { 1.0 }
    } else {
        0.0
    };
    let whole = heat_w - compressor_w;
    let taken = heat_w * (1.0 - frost) - compressor_w;
    let taken = if taken > 0.0 { taken } else { 0.0 };
    (taken, if whole > 0.0 { taken / whole } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::moist_air::{STANDARD_PRESSURE_PA, humidity_ratio_from_relative_humidity};
    use proptest::prelude::*;

    fn machine() -> HeatPump {
        HeatPump {
            output_w: 1_600.0,
            effectiveness: 0.65,
            air_m3_per_s: 0.12,
            bypass_factor: 0.25,
            fan_w: 40.0,
            condenser_w_per_k: 250.0,
            condenser_top: 0.6,
            coldest_air_c: 2.8,
            warmest_air_c: 60.0,
        }
    }

    fn run_at(hp: &HeatPump, t_c: f64, rh: f64, condensing_c: f64) -> Running {
        let w = humidity_ratio_from_relative_humidity(t_c, rh, STANDARD_PRESSURE_PA);
        let inlet = CoilInlet::new(t_c, w, STANDARD_PRESSURE_PA);
        let coil = Coil::new(inlet.dry_air_kg_per_s(hp.air_m3_per_s), hp.bypass_factor).expect("a coil");
        hp.run(&inlet, &coil, condensing_c, 5.0)
    }

    /// Published ranges for integrated units (published-values: 1.0 to 2.0 kW of heat, 350 to 800 W in,
    /// supply air 5 to 18 °F colder), from memory.
    #[test]
    fn a_typical_machine_is_within_the_laboratory_ranges() {
        let hp = machine();
        let r = run_at(&hp, 19.7, 0.5, 55.0);
        assert!((1_000.0..2_000.0).contains(&r.heat_w), "{r:?}");
        assert!((350.0..800.0).contains(&(r.compressor_w + hp.fan_w)), "{r:?}");
        assert!((0.0..12.0).contains(&r.evaporating_c), "{r:?}");
    }

    #[test]
    fn no_point_of_the_map_does_what_no_compressor_does() {
        for air in [5.0, 12.0, 20.0, 35.0] {
            for condensing in [20.0, 30.0, 45.0, 60.0, 68.0] {
                let r = run_at(&machine(), air, 0.5, condensing);
                let cop = r.heat_w / r.compressor_w;
                assert!((1.2..9.0).contains(&cop), "air {air}, condensing {condensing}: {cop}");
            }
        }
    }

    proptest! {
        /// Heat to the water is work plus heat from the air, everywhere on the map.
        #[test]
        fn heat_is_work_plus_air(air in -5.0..45.0f64, rh in 0.05..0.95f64, condensing in 10.0..70.0f64) {
            let r = run_at(&machine(), air, rh, condensing);
            prop_assert!((r.heat_w - r.compressor_w - r.sensible_w - r.latent_w).abs() < 1e-6);
            prop_assert!(r.heat_w > 0.0 && r.compressor_w > 0.0 && r.condensate_kg_per_s >= 0.0);
        }

        /// Warmer air never lowers the heat; hotter water never lowers the work per heat, but where the least
        /// lift holds the machine, whose efficiency then is that of a lift that does not grow.
        #[test]
        fn monotone(air in 3.0..35.0f64, rh in 0.2..0.9f64, condensing in 20.0..65.0f64) {
            let a = run_at(&machine(), air, rh, condensing);
            let b = run_at(&machine(), air + 2.0, rh, condensing);
            prop_assert!(b.heat_w >= a.heat_w - 0.5);
            let c = run_at(&machine(), air, rh, condensing + 2.0);
            let limited = condensing - a.evaporating_c < LEAST_LIFT_K + 2.0;
            prop_assert!(limited || c.compressor_w / c.heat_w >= a.compressor_w / a.heat_w - 1e-4);
        }
    }
}
