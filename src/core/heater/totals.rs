//! What a simulated heater has used and given so far. All J, m³, kg and s, since the start.

/// Running totals; differences of two give a day or a month.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Totals {
    /// Electricity, all of it.
    pub electricity_j: f64,
    /// Of which elements.
    pub elements_j: f64,
    /// Of which compressor and fan.
    pub pump_electricity_j: f64,
    /// Heat from the heat pump to the water.
    pub pump_heat_j: f64,
    /// Fuel burned (higher heating value).
    pub fuel_j: f64,
    /// Heat put into the water, whatever the source.
    pub heat_in_j: f64,
    /// Heat carried out by draws above the cold water that came in.
    pub delivered_j: f64,
    /// Heat lost through jacket and flue.
    pub standby_j: f64,
    /// Water drawn.
    pub drawn_m3: f64,
    /// Condensate.
    pub condensate_kg: f64,
    /// Heat pump running.
    pub pump_s: f64,
    /// Heat pump wanted but locked out by the air.
    pub locked_out_s: f64,
}

impl Totals {
    /// What came since `earlier`.
    #[must_use]
    pub fn since(&self, earlier: &Totals) -> Totals {
        self.zip(earlier, |now, then| now - then)
    }

    /// Adds what another span brought.
    pub fn add(&mut self, more: &Totals) {
        *self = self.zip(more, |a, b| a + b);
    }

    /// As much as this many such spans bring.
    #[must_use]
    pub fn times(&self, n: f64) -> Totals {
        self.zip(self, |a, _| n * a)
    }

    fn zip(&self, other: &Totals, f: impl Fn(f64, f64) -> f64) -> Totals {
        Totals {
            electricity_j: f(self.electricity_j, other.electricity_j),
            elements_j: f(self.elements_j, other.elements_j),
            pump_electricity_j: f(self.pump_electricity_j, other.pump_electricity_j),
            pump_heat_j: f(self.pump_heat_j, other.pump_heat_j),
            fuel_j: f(self.fuel_j, other.fuel_j),
            heat_in_j: f(self.heat_in_j, other.heat_in_j),
            delivered_j: f(self.delivered_j, other.delivered_j),
            standby_j: f(self.standby_j, other.standby_j),
            drawn_m3: f(self.drawn_m3, other.drawn_m3),
            condensate_kg: f(self.condensate_kg, other.condensate_kg),
            pump_s: f(self.pump_s, other.pump_s),
            locked_out_s: f(self.locked_out_s, other.locked_out_s),
        }
    }
}
