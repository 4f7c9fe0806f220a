//! Air that is drawn out of a room, and air that a burner needs.

/// Density of air in a room, kg/m³.
const AIR_KG_PER_M3: f64 = 1.2;
/// Discharge coefficient of cracks and grilles (any text on ventilation; from memory).
const DISCHARGE: f64 = 0.6;

/// Pressure in Pa that a room falls below the house when air is drawn out of it through openings of this area:
/// the orifice equation, `ρ/2 · (Q / (C·A))²`.
pub fn depressurised_pa(air_m3_per_s: f64, openings_m2: f64) -> f64 {
    if openings_m2 <= 0.0 {
        return f64::INFINITY;
    }
    let speed = air_m3_per_s / (DISCHARGE * openings_m2);
    0.5 * AIR_KG_PER_M3 * speed * speed
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// By hand: 0.06 m³/s through 0.05 m² at 0.6 is 2 m/s: 0.6 · 4 = 2.4 Pa.
    #[test]
    fn the_orifice() {
        assert!((depressurised_pa(0.06, 0.05) - 2.4).abs() < 1e-12);
        assert!(depressurised_pa(0.06, 0.0).is_infinite());
        assert_eq!(depressurised_pa(0.0, 0.05), 0.0);
    }

    proptest! {
        #[test]
        fn larger_openings_help(q in 0.01..0.5f64, a in 1e-3..1.0f64, k in 1.01..4.0f64) {
            prop_assert!(depressurised_pa(q, a * k) < depressurised_pa(q, a));
        }
    }
}
