//! Hot water on skin, germs in warm water, and what storing hotter gives.

/// Temperature in °F against the time to a serious burn of adult skin, s: Moritz and Henriques 1947, as tabulated
/// by the US consumer safety commission (from memory). Children and the old burn sooner.
const BURNS: [(f64, f64); 4] = [(120.0, 300.0), (130.0, 30.0), (140.0, 5.0), (150.0, 1.5)];

/// Time in s to a serious burn of adult skin in water of `t_c` °C: between the tabulated temperatures, and past
/// them, the time's logarithm goes in a straight line.
pub fn burn_time_s(t_c: f64) -> f64 {
    let t_f = t_c * 1.8 + 32.0;
    let last = BURNS.len() - 2;
    let i = (0..last).find(|&i| t_f <= BURNS[i + 1].0).unwrap_or(last);
    let ((t0, s0), (t1, s1)) = (BURNS[i], BURNS[i + 1]);
    libm::exp(libm::log(s0) + (t_f - t0) / (t1 - t0) * libm::log(s1 / s0))
}

/// Whether Legionella grows well in water of `t_c` °C: 25 to 45 °C (77 to 113 °F; ASHRAE guideline 12, from memory).
pub fn germs_grow(t_c: f64) -> bool {
    (25.0..=45.0).contains(&t_c)
}

/// Mixed water from one litre of stored water: `(stored − cold) / (mixed − cold)`, all in °C. One where the water
/// is mixed no cooler than it is stored.
pub fn mixed_share(stored_c: f64, mixed_c: f64, cold_c: f64) -> f64 {
    if mixed_c >= stored_c || mixed_c <= cold_c {
        return 1.0;
    }
    (stored_c - cold_c) / (mixed_c - cold_c)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_table_comes_back() {
        for (f, s) in BURNS {
            let t = burn_time_s((f - 32.0) / 1.8);
            assert!((t / s - 1.0).abs() < 1e-9, "{f}: {t}");
        }
    }

    /// By hand: water stored at 60 °C and mixed to 50 °C with cold of 10 °C gives 50/40.
    #[test]
    fn storing_hotter_stretches() {
        assert!((mixed_share(60.0, 50.0, 10.0) - 1.25).abs() < 1e-12);
        assert_eq!(mixed_share(49.0, 49.0, 10.0), 1.0);
        assert_eq!(mixed_share(49.0, 5.0, 10.0), 1.0);
        assert!(germs_grow(35.0) && !germs_grow(60.0));
    }

    proptest! {
        #[test]
        fn hotter_burns_sooner(t in 30.0..95.0f64, more in 0.1..20.0f64) {
            prop_assert!(burn_time_s(t + more) < burn_time_s(t));
        }
    }
}
