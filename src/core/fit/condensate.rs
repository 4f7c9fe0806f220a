//! Condensate on its way out: the fall a pipe needs, and what a small pump lifts.

/// A class of small condensate pump: what it moves with nothing to lift, and the lift at which it stops. In
/// between the flow falls in a straight line; common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpClass {
    /// Flow at no lift, m³/s.
    pub free_m3_per_s: f64,
    /// Lift at which nothing moves, m.
    pub shut_off_m: f64,
}

impl PumpClass {
    /// Flow at a lift, m³/s; zero where it lifts no more.
    pub fn flow_m3_per_s(&self, lift_m: f64) -> f64 {
        let share = 1.0 - lift_m / self.shut_off_m;
        if share > 1.0 {
            self.free_m3_per_s
        } else if share > 0.0 {
            self.free_m3_per_s * share
        } else {
            0.0
        }
    }

    /// Share of the day that it runs to lift so many litres a day, 1 at most; `None` where it lifts none.
    pub fn duty(&self, litres_a_day: f64, lift_m: f64) -> Option<f64> {
        let a_day_l = self.flow_m3_per_s(lift_m) * 1e3 * 86_400.0;
        (a_day_l > litres_a_day).then(|| litres_a_day / a_day_l)
    }
}

/// Fall in m of a pipe over a run at a slope (fall over run).
pub fn fall_m(run_m: f64, slope: f64) -> f64 {
    run_m * slope
}

#[cfg(test)]
mod tests {
    use super::*;

    const SMALL: PumpClass = PumpClass { free_m3_per_s: 5e-5, shut_off_m: 4.5 };

    /// Closed form: an eighth of an inch in a foot over 24 ft is 3 in.
    #[test]
    fn slope_over_run() {
        assert!((fall_m(24.0 * 0.3048, 0.125 / 12.0) - 3.0 * 0.0254).abs() < 1e-12);
    }

    #[test]
    fn a_pump_moves_less_the_higher_it_lifts() {
        assert_eq!(SMALL.flow_m3_per_s(-1.0), 5e-5);
        assert!((SMALL.flow_m3_per_s(2.25) - 2.5e-5).abs() < 1e-15);
        assert_eq!(SMALL.flow_m3_per_s(4.5), 0.0);
        // 10 L a day at half lift: 0.025 L/s is 2,160 L a day.
        assert!((SMALL.duty(10.0, 2.25).expect("it lifts") - 10.0 / 2_160.0).abs() < 1e-12);
        assert_eq!(SMALL.duty(10.0, 5.0), None);
    }
}
