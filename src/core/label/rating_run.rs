//! The 24-hour rating test as a series, for a picture of it.

use super::patterns::Pattern;
use super::rating_test::{AIR_C, AIR_RH, INLET_C};
use super::simulated_use::{SimulatedUse, Watch, watched};
use crate::core::heater::{Model, Sim};
use crate::core::units::{KWH_J, celsius, cubic_metres};
use serde::{Deserialize, Serialize};
use uom::si::energy::joule;
use uom::si::f64::{Energy, ThermalConductance, ThermodynamicTemperature, Volume};
use uom::si::thermal_conductance::watt_per_kelvin;

/// Time between two entries where nothing is drawn, s.
const ENTRY_S: f64 = 300.0;
/// The same while water is drawn, s.
const DRAW_ENTRY_S: f64 = 60.0;
/// Layers of the picture, of equal volume.
pub const PICTURE_LAYERS: usize = 12;
/// Most entries of a run: a day's, an edge before and after each draw, and a minute's in each.
pub const MOST_ENTRIES: usize = 400;

/// A rated 24-hour test. All series have as many entries as `minutes`; flow and power are means over the time
/// since the entry before, temperatures are of the entry's moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RatingRun {
    /// Minutes since the start; two entries share one where a draw begins or ends.
    pub minutes: Vec<f32>,
    /// Water drawn, L/min.
    pub flow_l_per_min: Vec<f32>,
    /// Temperature at the outlet, °C.
    pub outlet_c: Vec<f32>,
    /// Electricity, W.
    pub electric_w: Vec<f32>,
    /// Fuel burned, W.
    pub fuel_w: Vec<f32>,
    /// Layer temperatures from the bottom up, °C; `layers` values an entry, equal volumes.
    pub layers_c: Vec<f32>,
    /// How many layers an entry has.
    pub layers: usize,
    /// Conditions.
    pub conditions: Conditions,
    /// What it scored.
    pub scored: Scored,
}

/// Conditions of the test.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Conditions {
    /// Water that comes in.
    pub inlet: ThermodynamicTemperature,
    /// Setpoint: water as it should be delivered.
    pub delivered: ThermodynamicTemperature,
    /// Air of the room.
    pub air: ThermodynamicTemperature,
    /// Its relative humidity, 0 to 1.
    pub relative_humidity: f64,
}

/// The figures of a rating test.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Scored {
    /// Uniform energy factor.
    pub uniform_energy_factor: f64,
    /// First-hour rating.
    pub first_hour_rating: Volume,
    /// Draw pattern that it chose.
    pub pattern: Pattern,
    /// Recovery efficiency.
    pub recovery_efficiency: f64,
    /// Standby loss coefficient: energy used a kelvin between tank and room.
    pub standby: ThermalConductance,
    /// Electricity used in the day.
    pub electricity: Energy,
    /// Fuel used in the day.
    pub fuel: Energy,
    /// Correction for heat that the tank ended the day with and began without; taken off (may be negative).
    pub stored_correction: Energy,
    /// Correction for water off the nominal rise of 67 °F; added (may be negative).
    pub rise_correction: Energy,
    /// Energy a year as the label states it: electricity.
    pub year_electricity: Energy,
    /// Energy a year as the label states it: fuel.
    pub year_fuel: Energy,
}

impl Scored {
    /// The figures of a test.
    pub fn of(first_hour_m3: f64, t: &SimulatedUse) -> Scored {
        let j = Energy::new::<joule>;
        let used_j = t.electricity_j + t.fuel_j;
        let fuel_share = if used_j > 0.0 { t.fuel_j / used_j } else { 0.0 };
        let year_j = t.pattern.label_kwh_per_year(t.uniform_energy_factor) * KWH_J;
        Scored {
            uniform_energy_factor: t.uniform_energy_factor,
            first_hour_rating: cubic_metres(first_hour_m3),
            pattern: t.pattern,
            recovery_efficiency: t.recovery_efficiency,
            standby: ThermalConductance::new::<watt_per_kelvin>(t.standby_w_per_k),
            electricity: j(t.electricity_j),
            fuel: j(t.fuel_j),
            stored_correction: j(t.stored_correction_j),
            rise_correction: j(t.rise_correction_j),
            year_electricity: j(year_j * (1.0 - fuel_share)),
            year_fuel: j(year_j * fuel_share),
        }
    }
}

/// Runs the test for its picture, at the heater's own setpoint. `scored` are the figures that stand beside it.
pub fn rating_run(model: &Model, scored: Scored) -> RatingRun {
    let mut film = Film::default();
    watched(model, scored.pattern, &mut film);
    RatingRun {
        minutes: film.minutes,
        flow_l_per_min: film.flow_l_per_min,
        outlet_c: film.outlet_c,
        electric_w: film.electric_w,
        fuel_w: film.fuel_w,
        layers_c: film.layers_c,
        layers: PICTURE_LAYERS,
        conditions: Conditions {
            inlet: celsius(INLET_C),
            delivered: celsius(model.setpoint_c),
            air: celsius(AIR_C),
            relative_humidity: AIR_RH,
        },
        scored,
    }
}

/// The series as they are recorded.
#[derive(Default)]
struct Film {
    minutes: Vec<f32>,
    flow_l_per_min: Vec<f32>,
    outlet_c: Vec<f32>,
    electric_w: Vec<f32>,
    fuel_w: Vec<f32>,
    layers_c: Vec<f32>,
    last_s: f64,
    electricity_j: f64,
    fuel_j: f64,
    drawing: bool,
}

impl Watch for Film {
    fn next_s(&self) -> f64 {
        self.last_s + if self.drawing { DRAW_ENTRY_S } else { ENTRY_S }
    }

    fn see(&mut self, now_s: f64, flow_m3_per_s: f64, sim: &Sim, edge: bool) {
        let due = now_s >= self.next_s() - 1e-6;
        if edge {
            self.drawing = !self.minutes.is_empty() && flow_m3_per_s == 0.0;
        }
        if !(edge || due) || self.minutes.len() >= MOST_ENTRIES {
            return;
        }
        let t = sim.totals();
        let time_s = now_s - self.last_s;
        // Where no time has passed, at a draw's edge, the power is still what it was.
        let mean_w = |j: f64, last: &[f32]| {
            if time_s > 0.0 { (j / time_s) as f32 } else { last.last().copied().unwrap_or(0.0) }
        };
        self.minutes.push((now_s / 60.0) as f32);
        self.flow_l_per_min.push((flow_m3_per_s * 60e3) as f32);
        self.outlet_c.push(sim.outlet_c() as f32);
        let electric_w = mean_w(t.electricity_j - self.electricity_j, &self.electric_w);
        let fuel_w = mean_w(t.fuel_j - self.fuel_j, &self.fuel_w);
        self.electric_w.push(electric_w);
        self.fuel_w.push(fuel_w);
        for i in 0..PICTURE_LAYERS {
            let height = (i as f64 + 0.5) / PICTURE_LAYERS as f64;
            self.layers_c.push(sim.layers().temperature_c(sim.layers().layer_at(height)) as f32);
        }
        (self.last_s, self.electricity_j, self.fuel_j) = (now_s, t.electricity_j, t.fuel_j);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::label::calibration::calibrate;
    use crate::core::label::rating_test::DELIVERED_C;
    use crate::core::label::simulated_use::simulated_use;
    use crate::core::units::{gallons, watts};
    use crate::core::{candidates::Label, case::HeaterKind};

    /// The series add up to what their day used, and looking on leaves the factor where it was.
    #[test]
    fn the_series_are_the_day_that_was_scored() {
        for (kind, factor, input) in [
            (HeaterKind::Electric, 0.93, 4_500.0),
            (HeaterKind::Gas, 0.60, 11_720.0),
            (HeaterKind::HeatPump, 3.45, 4_500.0),
        ] {
            let label = Label {
                kind,
                nominal_volume: gallons(50.0),
                uniform_energy_factor: factor,
                first_hour_rating: gallons(66.0),
                input: watts(input),
                heat_pump_output: watts(0.0),
            };
            let model = calibrate(&label, DELIVERED_C).model;
            let mut film = Film::default();
            let seen = watched(&model, Pattern::Medium, &mut film);
            let sum = |series: &[f32]| -> f64 {
                let steps = film.minutes.windows(2).map(|w| f64::from(w[1] - w[0]) * 60.0);
                series[1..].iter().zip(steps).map(|(v, seconds)| f64::from(*v) * seconds).sum()
            };
            // No power breaks down for no time at a draw's edge.
            for i in 1..film.minutes.len() {
                if film.minutes[i] == film.minutes[i - 1] {
                    assert_eq!(film.electric_w[i], film.electric_w[i - 1], "{kind:?} at {}", film.minutes[i]);
                }
            }
            // Single precision.
            assert!(
                (sum(&film.electric_w) - seen.electricity_j).abs() <= 1e-4 * seen.electricity_j,
                "{kind:?}"
            );
            assert!((sum(&film.fuel_w) - seen.fuel_j).abs() <= 1e-4 * seen.fuel_j);
            let unseen = simulated_use(&model, Pattern::Medium).uniform_energy_factor;
            let moved = seen.uniform_energy_factor / unseen - 1.0;
            // Steps are cut, so that the last call of the day may fall on its other side: see `simulated_use`.
            assert!(moved.abs() < 0.015, "{kind:?}: {moved}");
        }
    }
}
