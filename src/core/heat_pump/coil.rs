//! The wet coil: what the evaporator takes out of the air it is given, as heat and as water.
//!
//! Bypass-factor method (W. H. Carrier, R. E. Cherne, W. A. Grant and W. H. Roberts, *Modern Air
//! Conditioning, Heating and Ventilating*, 1959, from memory; common practice since): a share of the air,
//! the bypass factor, passes untouched; the rest leaves at the apparatus temperature, saturated if that
//! lies below the inlet's dew point. Outlet air is the adiabatic mixture of the two.
//!
//! - **Balance.** Enthalpy in = enthalpy out + heat to the coil + enthalpy of the condensate, which leaves
//!   as liquid at the apparatus temperature. It closes exactly, since both heats follow from the states.
//! - **Frost** counts as liquid too: what freezing gives the coil, melting takes again, and a
//!   defrost model has to account for that, not this balance. So capacity is continuous at 0 °C.
//! - **Cost.** One exponential for a wet state, none for a dry one: what depends on the inlet alone is kept in
//!   [`CoilInlet`].
//! - **Limit of the method.** For nearly saturated inlets the mixing line runs just above the saturation
//!   curve: the outlet's relative humidity may exceed 1 (fog; by 1 % at 4 K between inlet and apparatus,
//!   by 6 % at 10 K), and is left so.
use thiserror::Error;

use crate::core::moist_air::{
    DRY_AIR_HEAT_J_PER_KG_K, MOLAR_MASS_RATIO, VAPOUR_ENTHALPY_AT_0_C_J_PER_KG, VAPOUR_HEAT_J_PER_KG_K,
    dew_point_c, enthalpy_j_per_kg, saturation_pressure_and_slope, specific_volume_m3_per_kg,
    temperature_from_enthalpy_c,
};
use crate::core::water::MEAN_SPECIFIC_HEAT_J_PER_KG_K;

/// Coldest apparatus temperature that [`Coil::apparatus_temperature_c`] looks for, °C.
pub const COLDEST_APPARATUS_C: f64 = -45.0;

/// Inlet air with what a coil needs of it, computed once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoilInlet {
    t_c: f64,
    w: f64,
    pressure_pa: f64,
    enthalpy_j_per_kg: f64,
    dew_point_c: f64,
}

impl CoilInlet {
    /// Inlet air at `t_c` °C, `w` kg/kg and `pressure_pa`; a kernel: states are checked where they enter
    /// ([`crate::core::moist_air::MoistAir`]).
    pub fn new(t_c: f64, w: f64, pressure_pa: f64) -> Self {
        let enthalpy_j_per_kg = enthalpy_j_per_kg(t_c, w);
        Self { t_c, w, pressure_pa, enthalpy_j_per_kg, dew_point_c: dew_point_c(w, pressure_pa) }
    }

    /// Temperature of the inlet air, °C.
    pub fn t_c(&self) -> f64 {
        self.t_c
    }

    /// Its humidity ratio, kg/kg.
    pub fn w(&self) -> f64 {
        self.w
    }

    /// Its dew point, °C: the coil is wet below.
    pub fn dew_point_c(&self) -> f64 {
        self.dew_point_c
    }

    /// Dry-air mass flow, kg/s, that a volume flow of this air carries.
    pub fn dry_air_kg_per_s(&self, volume_m3_per_s: f64) -> f64 {
        volume_m3_per_s / specific_volume_m3_per_kg(self.t_c, self.w, self.pressure_pa)
    }

    /// Humidity ratio of the air in touch with the coil, and its derivative by apparatus temperature.
    #[inline]
    fn at_apparatus(&self, t_adp_c: f64) -> (f64, f64) {
        if t_adp_c >= self.dew_point_c {
            return (self.w, 0.0);
        }
        let (vapour, slope) = saturation_pressure_and_slope(t_adp_c);
        let dry = 1.0 / (self.pressure_pa - vapour);
        let w = MOLAR_MASS_RATIO * vapour * dry;
        // The dew point is exact to rounding only: never add water.
        if w < self.w { (w, MOLAR_MASS_RATIO * slope * self.pressure_pa * dry * dry) } else { (self.w, 0.0) }
    }
}

/// What leaves the coil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoilOutlet {
    /// Temperature of the outlet air, °C.
    pub t_c: f64,
    /// Humidity ratio of the outlet air, kg/kg.
    pub w: f64,
    /// Heat from cooling the air (and the vapour that stays in it), W.
    pub sensible_w: f64,
    /// Heat from the vapour that condenses, down to condensate at the apparatus temperature, W.
    pub latent_w: f64,
    /// Water that condenses, kg/s.
    pub condensate_kg_per_s: f64,
    /// Heat to the coil, W: sensible plus latent. Negative when the apparatus is warmer than the air.
    pub total_w: f64,
}

/// A coil at an apparatus temperature.
#[derive(Debug, Clone, Copy)]
pub(super) struct Surface {
    t_c: f64,
    /// Humidity ratio of the air in touch with it, kg/kg, and its derivative by temperature.
    w: f64,
    w_slope: f64,
    /// Heat to the coil, W, and its derivative.
    pub total_w: f64,
    pub slope_w_per_k: f64,
}

impl Surface {
    /// Humidity ratio of the air in touch with the coil at a temperature close by, kg/kg: along the tangent,
    /// without an exponential. Over the fiftieth of a kelvin that a last step of Newton's method may take it is
    /// off by (0.07 · 0.02)² / 2, a millionth.
    #[inline]
    pub fn w_near(&self, inlet: &CoilInlet, t_c: f64) -> f64 {
        let w = self.w + self.w_slope * (t_c - self.t_c);
        if t_c < inlet.dew_point_c && w < inlet.w { w } else { inlet.w }
    }
}

/// A setting that no coil can have.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum CoilError {
    /// The air flow is not a finite figure above 0.
    #[error("the dry-air flow of a coil is {0} kg/s; it must be above 0")]
    Flow(f64),
    /// The bypass factor is outside 0 to below 1.
    #[error("the bypass factor of a coil is {0}; it must be at least 0 and below 1")]
    BypassFactor(f64),
}

/// A coil with its air flow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coil {
    dry_air_kg_per_s: f64,
    bypass_factor: f64,
    /// Dry air in touch with the coil, kg/s.
    contact_kg_per_s: f64,
}

impl Coil {
    /// A coil that lets `bypass_factor` (0 to below 1) of `dry_air_kg_per_s` pass untouched.
    ///
    /// # Errors
    /// [`CoilError`] for a flow not above 0 or a bypass factor outside its range.
    pub fn new(dry_air_kg_per_s: f64, bypass_factor: f64) -> Result<Self, CoilError> {
        // Comparisons that also refuse what is not a number; made for every step of a heat pump.
        if !(dry_air_kg_per_s > 0.0 && dry_air_kg_per_s < f64::INFINITY) {
            return Err(CoilError::Flow(dry_air_kg_per_s));
        }
        if !(0.0..1.0).contains(&bypass_factor) {
            return Err(CoilError::BypassFactor(bypass_factor));
        }
        let contact_kg_per_s = dry_air_kg_per_s * (1.0 - bypass_factor);
        Ok(Self { dry_air_kg_per_s, bypass_factor, contact_kg_per_s })
    }

    /// The same coil with its air flow multiplied by `share` (a dirty filter: below 1).
    ///
    /// The bypass factor is exp(−NTU) and NTU goes with surface over flow, so it becomes
    /// bypass^(1/share); the change of the air-side film with flow is left out (common practice).
    ///
    /// # Errors
    /// [`CoilError`] when the share is not above 0.
    pub fn with_flow_share(&self, share: f64) -> Result<Self, CoilError> {
        Self::new(self.dry_air_kg_per_s * share, libm::pow(self.bypass_factor, 1.0 / share))
    }

    /// Dry-air mass flow, kg/s.
    pub fn dry_air_kg_per_s(&self) -> f64 {
        self.dry_air_kg_per_s
    }

    /// Share of the air that passes untouched.
    pub fn bypass_factor(&self) -> f64 {
        self.bypass_factor
    }

    /// Outlet air, heats and condensate for an apparatus temperature.
    #[inline]
    pub fn outlet(&self, inlet: &CoilInlet, t_adp_c: f64) -> CoilOutlet {
        self.outlet_of(inlet, t_adp_c, inlet.at_apparatus(t_adp_c).0)
    }

    /// [`Self::outlet`] where the humidity ratio at the apparatus is known.
    #[inline]
    pub(super) fn outlet_of(&self, inlet: &CoilInlet, t_adp_c: f64, w_adp: f64) -> CoilOutlet {
        let contact = 1.0 - self.bypass_factor;
        let w = inlet.w + contact * (w_adp - inlet.w);
        let h_adp = enthalpy_j_per_kg(t_adp_c, w_adp);
        let h = inlet.enthalpy_j_per_kg + contact * (h_adp - inlet.enthalpy_j_per_kg);
        let t_c = temperature_from_enthalpy_c(h, w);
        let condensate_kg_per_s = self.contact_kg_per_s * (inlet.w - w_adp);
        // h_in − h_out = (c_a + w_out·c_v)(t_in − t_out) + (w_in − w_out)·h_vapour(t_in): an identity.
        let sensible_w = self.dry_air_kg_per_s
            * (DRY_AIR_HEAT_J_PER_KG_K + w * VAPOUR_HEAT_J_PER_KG_K)
            * (inlet.t_c - t_c);
        let vapour = VAPOUR_ENTHALPY_AT_0_C_J_PER_KG + VAPOUR_HEAT_J_PER_KG_K * inlet.t_c;
        let latent_w = condensate_kg_per_s * (vapour - MEAN_SPECIFIC_HEAT_J_PER_KG_K * t_adp_c);
        CoilOutlet { t_c, w, sensible_w, latent_w, condensate_kg_per_s, total_w: sensible_w + latent_w }
    }

    /// Heat to the coil, W, and its derivative by apparatus temperature, W/K (always below 0).
    ///
    /// Continuous and strictly falling in `t_adp_c`; the derivative jumps where the coil turns wet and at the
    /// triple point. One exponential, none when dry.
    #[inline]
    pub fn total_and_slope_w(&self, inlet: &CoilInlet, t_adp_c: f64) -> (f64, f64) {
        let surface = self.surface(inlet, t_adp_c);
        (surface.total_w, surface.slope_w_per_k)
    }

    /// [`Self::total_and_slope_w`] with the humidity ratio that comes out on the way.
    #[inline]
    pub(super) fn surface(&self, inlet: &CoilInlet, t_adp_c: f64) -> Surface {
        let (w, w_slope) = inlet.at_apparatus(t_adp_c);
        let liquid = MEAN_SPECIFIC_HEAT_J_PER_KG_K * t_adp_c;
        let vapour = VAPOUR_ENTHALPY_AT_0_C_J_PER_KG + VAPOUR_HEAT_J_PER_KG_K * t_adp_c;
        let condensed = inlet.w - w;
        let heat =
            inlet.enthalpy_j_per_kg - DRY_AIR_HEAT_J_PER_KG_K * t_adp_c - w * vapour - condensed * liquid;
        let slope = -DRY_AIR_HEAT_J_PER_KG_K
            - w * VAPOUR_HEAT_J_PER_KG_K
            - condensed * MEAN_SPECIFIC_HEAT_J_PER_KG_K
            - w_slope * (vapour - liquid);
        Surface {
            t_c: t_adp_c,
            w,
            w_slope,
            total_w: self.contact_kg_per_s * heat,
            slope_w_per_k: self.contact_kg_per_s * slope,
        }
    }

    /// The apparatus temperature, °C, at which the coil takes `total_w` from the air, to 1e-7 K.
    ///
    /// `start_c` is a guess, such as the last answer: about two exponentials from a near one, six from
    /// far. Dry coils are solved in closed form. Newton's method inside a bracket, at most 60 steps.
    /// `None` when the heat asked is not a number or needs a coil colder than [`COLDEST_APPARATUS_C`].
    pub fn apparatus_temperature_c(&self, inlet: &CoilInlet, total_w: f64, start_c: f64) -> Option<f64> {
        let (at_dew, _) = self.total_and_slope_w(inlet, inlet.dew_point_c);
        if total_w <= at_dew {
            let heat = DRY_AIR_HEAT_J_PER_KG_K + inlet.w * VAPOUR_HEAT_J_PER_KG_K;
            return Some(inlet.t_c - total_w / (self.contact_kg_per_s * heat));
        }
        let (mut cold, mut warm) = (COLDEST_APPARATUS_C, inlet.dew_point_c);
        let mut t = if start_c > cold && start_c < warm { start_c } else { warm - 1.0 };
        let mut cold_is_known = false;
        for _ in 0..60 {
            let (heat, slope) = self.total_and_slope_w(inlet, t);
            if heat > total_w {
                (cold, cold_is_known) = (t, true);
            } else {
                warm = t;
            }
            let mut next = t - (heat - total_w) / slope;
            if next.is_nan() {
                return None;
            }
            if (next - t).abs() < 1e-7 {
                return Some(next);
            }
            if next <= cold {
                // Past the coldest: only a known excess of heat there proves a root in between.
                if !cold_is_known && self.total_and_slope_w(inlet, cold).0 < total_w {
                    return None;
                }
                cold_is_known = true;
                next = 0.5 * (cold + t);
            } else if next >= warm {
                next = 0.5 * (t + warm);
            }
            t = next;
        }
        Some(t)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::moist_air::{humidity_ratio_from_relative_humidity, relative_humidity};
    use proptest::prelude::*;

    fn inlet(t_c: f64, rh: f64, pressure_pa: f64) -> CoilInlet {
        CoilInlet::new(t_c, humidity_ratio_from_relative_humidity(t_c, rh, pressure_pa), pressure_pa)
    }

    #[test]
    fn a_dry_coil_only_cools() {
        let air = inlet(20.0, 0.4, 101_325.0);
        let out = Coil::new(0.1, 0.2).unwrap().outlet(&air, 10.0);
        assert!(air.dew_point_c() < 10.0);
        assert_eq!((out.latent_w, out.condensate_kg_per_s, out.w), (0.0, 0.0, air.w()));
        assert!((out.t_c - 12.0).abs() < 1e-9, "{out:?}");
        let heat = 0.1 * 8.0 * (1006.0 + 1860.0 * air.w());
        assert!((out.total_w - heat).abs() < 1e-9 * heat);
    }

    #[test]
    fn settings_no_coil_can_have_are_refused() {
        for flow in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert!(matches!(Coil::new(flow, 0.1), Err(CoilError::Flow(_))));
        }
        for bypass in [-0.1, 1.0, f64::NAN] {
            assert!(matches!(Coil::new(0.1, bypass), Err(CoilError::BypassFactor(_))));
        }
        let coil = Coil::new(0.1, 0.25).unwrap();
        assert!((coil.with_flow_share(0.5).unwrap().bypass_factor() - 0.0625).abs() < 1e-15);
        assert!(coil.with_flow_share(0.0).is_err());
        let air = inlet(20.0, 0.5, 101_325.0);
        assert_eq!(coil.apparatus_temperature_c(&air, f64::NAN, 5.0), None);
        assert_eq!(coil.apparatus_temperature_c(&air, 1e6, 5.0), None);
    }

    proptest! {
        #[test]
        fn enthalpy_and_water_close(
            t in -5.0..45.0f64, rh in 0.05..0.95f64, p in 74_000.0..102_000.0f64,
            bypass in 0.0..0.6f64, depth in -2.0..35.0f64,
        ) {
            let air = inlet(t, rh, p);
            let coil = Coil::new(0.12, bypass).unwrap();
            let adp = t - depth;
            let out = coil.outlet(&air, adp);
            let (h_in, h_out) = (enthalpy_j_per_kg(t, air.w()), enthalpy_j_per_kg(out.t_c, out.w));
            let condensate = out.condensate_kg_per_s * MEAN_SPECIFIC_HEAT_J_PER_KG_K * adp;
            let residual = 0.12 * (h_in - h_out) - out.total_w - condensate;
            prop_assert!(residual.abs() < 1e-9 * 0.12 * (1.0 + h_in.abs()), "{residual}");
            prop_assert!((0.12 * (air.w() - out.w) - out.condensate_kg_per_s).abs() < 1e-15);
            prop_assert!(out.condensate_kg_per_s >= 0.0 && out.latent_w >= 0.0);
            prop_assert!((coil.total_and_slope_w(&air, adp).0 - out.total_w).abs() < 1e-8 * (1.0 + out.total_w.abs()));
            // Fog: a chord lies above a curve that grows by up to 8.5 % a kelvin by (0.085·depth)²/8, to lowest
            // order, as a share of the curve.
            if depth < 15.0 {
                let fog = 1.3 * (0.085 * depth) * (0.085 * depth) / 8.0;
                prop_assert!(relative_humidity(out.t_c, out.w, p) < 1.0 + fog + 1e-9, "{out:?}");
            }
        }

        #[test]
        fn capacity_is_continuous_and_falls_as_the_apparatus_warms(
            t in 0.0..45.0f64, rh in 0.05..1.0f64, bypass in 0.0..0.6f64, adp in -30.0..45.0f64,
        ) {
            let air = inlet(t, rh, 101_325.0);
            let coil = Coil::new(0.12, bypass).unwrap();
            for at in [adp, air.dew_point_c(), 0.01] {
                let (colder, warmer) = (at - 1e-6, at + 1e-6);
                let (before, slope) = coil.total_and_slope_w(&air, colder);
                let (after, _) = coil.total_and_slope_w(&air, warmer);
                prop_assert!(before > after && slope < 0.0);
                prop_assert!(before - after < 1e-6 * 0.12 * 50_000.0, "jump of {} W", before - after);
            }
            let (low, high) = (coil.total_and_slope_w(&air, adp - 1e-3).0, coil.total_and_slope_w(&air, adp + 1e-3).0);
            let kink = (adp - air.dew_point_c()).abs() < 2e-3 || (adp - 0.01).abs() < 2e-3;
            let (_, slope) = coil.total_and_slope_w(&air, adp);
            prop_assert!(kink || ((high - low) / 2e-3 / slope - 1.0).abs() < 1e-5);
        }

        #[test]
        fn the_apparatus_temperature_gives_back_the_heat(
            t in 0.0..45.0f64, rh in 0.05..1.0f64, bypass in 0.0..0.6f64, depth in -5.0..30.0f64,
            start in -60.0..60.0f64,
        ) {
            let air = inlet(t, rh, 101_325.0);
            let coil = Coil::new(0.12, bypass).unwrap();
            let asked = coil.outlet(&air, t - depth).total_w;
            let found = coil.apparatus_temperature_c(&air, asked, start).unwrap();
            prop_assert!((found - (t - depth)).abs() < 1e-6, "{found} {}", t - depth);
        }
    }
}
