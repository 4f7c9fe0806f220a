//! Currents, wires and the load of a house's service. Tables of sizes are data of the rules.

/// Current in A of a load at a voltage; zero where there is none.
pub fn current_a(load_w: f64, volts: f64) -> f64 {
    if volts > 0.0 { load_w / volts } else { 0.0 }
}

/// Power in W of a resistance rated for one voltage at another: it falls with the square.
pub fn output_w(rated_w: f64, rated_v: f64, volts: f64) -> f64 {
    if rated_v > 0.0 { rated_w * (volts / rated_v) * (volts / rated_v) } else { 0.0 }
}

/// The smallest of the sizes (in order) that is at least so large.
pub fn next_size(sizes: &[f64], at_least: f64) -> Option<f64> {
    sizes.iter().copied().find(|s| *s >= at_least - 1e-9)
}

/// Volts lost over a run there and back: `2 · I · R · L`.
pub fn voltage_drop_v(amps: f64, ohm_per_m: f64, run_m: f64) -> f64 {
    2.0 * amps * ohm_per_m * run_m
}

/// Load in W that a service is counted with: the first part in full, the rest at a share.
pub fn demand_w(connected_w: f64, in_full_w: f64, share: f64) -> f64 {
    let rest = connected_w - in_full_w;
    if rest > 0.0 { in_full_w + share * rest } else { connected_w }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The code's worked case (published-values, from memory): 4,500 W at 240 V is 18.75 A. At 208 V the same
    /// element gives 3,380 W, three quarters.
    #[test]
    fn the_usual_element() {
        assert_eq!(current_a(4_500.0, 240.0), 18.75);
        assert!((output_w(4_500.0, 240.0, 208.0) - 3_380.0).abs() < 1e-9);
        assert_eq!(current_a(4_500.0, 0.0), 0.0);
    }

    /// In the manner of the electrical code handbook's examples (from memory: a 120 V, 16 A load on 12 AWG of
    /// 1.98 ohm in 1,000 ft, 100 ft away): 2 · 16 · 0.198 = 6.34 V, 5.3 %.
    #[test]
    fn voltage_drop_by_the_handbook() {
        let v = voltage_drop_v(16.0, 1.98 / 304.8, 100.0 * 0.3048);
        assert!((v - 6.336).abs() < 1e-9, "{v}");
        assert!((v / 120.0 - 0.0528).abs() < 1e-9);
    }

    /// Section 220.83(A) worked as handbooks do (from memory; the figures of the house are ours): 1,500 sq ft at
    /// 3 VA, three appliance circuits of 1,500 VA, a range of 12,000, dryer 5,000, water heater 4,500 and
    /// dishwasher 1,200 VA: 31,700 VA; 8,000 + 0.4 · 23,700 = 17,480 VA, 72.8 A at 240 V.
    #[test]
    fn existing_dwelling_by_the_handbook() {
        let connected = 1_500.0 * 3.0 + 3.0 * 1_500.0 + 12_000.0 + 5_000.0 + 4_500.0 + 1_200.0;
        assert_eq!(connected, 31_700.0);
        let demand = demand_w(connected, 8_000.0, 0.4);
        assert!((demand - 17_480.0).abs() < 1e-9);
        assert!((current_a(demand, 240.0) - 72.833).abs() < 1e-3);
        assert_eq!(demand_w(5_000.0, 8_000.0, 0.4), 5_000.0);
    }

    proptest! {
        #[test]
        fn a_longer_run_loses_more(a in 1.0..60.0f64, r in 1e-4..1e-2f64, l in 1.0..100.0f64, more in 0.1..50.0f64) {
            prop_assert!(voltage_drop_v(a, r, l + more) > voltage_drop_v(a, r, l));
        }

        #[test]
        fn a_larger_need_never_gets_a_smaller_size(need in 0.0..60.0f64, more in 0.0..10.0f64) {
            let sizes = [15.0, 20.0, 30.0, 50.0];
            match (next_size(&sizes, need), next_size(&sizes, need + more)) {
                (Some(a), Some(b)) => prop_assert!(b >= a && a >= need - 1e-9),
                (None, b) => prop_assert!(b.is_none()),
                (Some(_), None) => {}
            }
        }
    }
}
