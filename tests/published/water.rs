//! `tankful::core::water` against CoolProp 8.0 (IAPWS-95) and iapws 1.5 (IAPWS-IF97).
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::water;

/// The polynomials' own errors, as their docs state them (relative; the fit was made to this library).
const DENSITY_FIT: f64 = 5e-6;
/// Specific heat, volumetric heat and conductivity: likewise.
const OTHER_FITS: f64 = 4e-5;
/// IAPWS-IF97 is itself a fit to IAPWS-95: 1e-5 of density at one atmosphere.
const IF97_DENSITY: f64 = 2e-5;
/// As above, for heat capacity: the two libraries themselves differ by 4.9e-4 near 58 °C. Conductivity is
/// the same IAPWS 2011 release in both.
const IF97_OTHERS: f64 = 6e-4;
/// The yearly simulation's one constant, over the temperatures tanks work at: 10 to 55 °C.
const MEAN_VOLUMETRIC_HEAT: f64 = 0.009;

const COLUMNS: [&str; 4] = ["t_c", "density_kg_per_m3", "specific_heat_j_per_kg_k", "conductivity_w_per_m_k"];

fn compare(table: &str, density_tolerance: f64, tolerance: f64) {
    let mut density = Worst::of("water density, relative");
    let mut heat = Worst::of("water specific heat, relative");
    let mut product = Worst::of("water volumetric heat, relative");
    let mut conductivity = Worst::of("water conductivity, relative");
    for [t, d, c, k] in Fixture::load("water").table(table).rows(COLUMNS) {
        density.see_relative(water::density_kg_per_m3(t), d, t);
        heat.see_relative(water::specific_heat_j_per_kg_k(t), c, t);
        product.see_relative(water::volumetric_heat_j_per_m3_k(t), d * c, t);
        conductivity.see_relative(water::conductivity_w_per_m_k(t), k, t);
    }
    hold([(density, density_tolerance), (heat, tolerance), (product, tolerance), (conductivity, tolerance)]);
}

#[test]
fn polynomials_meet_coolprop() {
    compare("coolprop", DENSITY_FIT, OTHER_FITS);
}

#[test]
fn polynomials_meet_iapws_if97() {
    compare("if97", IF97_DENSITY, IF97_OTHERS);
}

#[test]
fn the_simulations_constant_is_within_its_stated_error() {
    let mut constant = Worst::of("mean volumetric heat of water, relative, 10 to 55 °C");
    for [t, d, c, _] in Fixture::load("water").table("coolprop").rows(COLUMNS) {
        if (10.0..=55.0).contains(&t) {
            constant.see_relative(water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K, d * c, t);
        }
    }
    constant.within(MEAN_VOLUMETRIC_HEAT);
}
