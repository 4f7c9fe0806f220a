//! A calibrated heater in a few figures, to write down and read back.

use super::class::{self, Build};
use super::rating_test::DELIVERED_C;
use crate::core::candidates::Label;
use crate::core::case::HeaterKind;
use crate::core::heater::{Model, Source};
use crate::core::units::{cubic_metres, watts};
use serde::{Deserialize, Serialize};
use uom::si::f64::{Power, ThermalConductance, Volume};
use uom::si::power::watt;
use uom::si::thermal_conductance::watt_per_kelvin;
use uom::si::volume::cubic_meter;

/// What makes one heater of a kind another.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Parameters {
    /// What heats the water.
    pub kind: HeaterKind,
    /// Water held.
    pub volume: Volume,
    /// Heat lost a kelvin between tank and room.
    pub standby: ThermalConductance,
    /// Share of the tank that the inlet stirs.
    pub stirred: f64,
    /// Height of the upper element, as a share of the tank's.
    pub upper_height: f64,
    /// Each element (zero: none), or the burner's input.
    pub input: Power,
    /// Share of the burner's heat that reaches the water; 1 for the others.
    pub recovery: f64,
    /// A heat pump's effectiveness; 0 for the others.
    pub effectiveness: f64,
    /// A heat pump's heat at rating conditions; 0 for the others.
    pub output: Power,
}

impl Parameters {
    /// The parameters of a model of this kind.
    pub fn of(kind: HeaterKind, model: &Model) -> Parameters {
        let usual = Build::usual(kind);
        let (input_w, upper_height) = match &model.source {
            Source::Elements(e) | Source::HeatPump { backup: Some(e), .. } => {
                (e.upper.power_w, e.upper.height)
            }
            Source::HeatPump { .. } => (0.0, usual.upper_height),
            Source::Burner(b) => (b.input_w, usual.upper_height),
        };
        Parameters {
            kind,
            volume: cubic_metres(model.volume_m3),
            standby: ThermalConductance::new::<watt_per_kelvin>(model.standby_w_per_k),
            stirred: model.inlet_stir,
            upper_height,
            input: watts(input_w),
            recovery: if let Source::Burner(b) = &model.source { b.recovery } else { 1.0 },
            effectiveness: model.pump().map_or(0.0, |p| p.effectiveness),
            output: watts(model.pump().map_or(0.0, |p| p.output_w)),
        }
    }

    /// The usual heater of a kind, size (water held) and input: a place to start from.
    pub fn usual(kind: HeaterKind, volume: Volume, input: Power, output: Power) -> Parameters {
        Self::of(kind, &plain(kind, volume, input, output, &Build::usual(kind)))
    }

    /// The heater.
    pub fn model(&self) -> Model {
        let build =
            Build { inlet_stir: self.stirred, upper_height: self.upper_height, ..Build::usual(self.kind) };
        let mut model = plain(self.kind, self.volume, self.input, self.output, &build);
        model.standby_w_per_k = self.standby.get::<watt_per_kelvin>();
        match &mut model.source {
            Source::HeatPump { pump, .. } => {
                pump.effectiveness = self.effectiveness;
                let poorness = class::poorness(pump);
                class::set_poorness(pump, poorness);
            }
            Source::Burner(b) => b.recovery = self.recovery,
            Source::Elements(_) => {}
        }
        model
    }
}

fn plain(kind: HeaterKind, volume: Volume, input: Power, output: Power, build: &Build) -> Model {
    let label = Label {
        kind,
        nominal_volume: volume / build.held_share,
        uniform_energy_factor: 0.6,
        first_hour_rating: volume,
        input: watts(input.get::<watt>()),
        heat_pump_output: output,
    };
    let mut model = class::model(&label, build, DELIVERED_C);
    model.volume_m3 = volume.get::<cubic_meter>();
    model
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::label::calibration::calibrate;
    use crate::core::label::rating_test::rate;
    use crate::core::units::gallons;

    /// Calibrated, written down, read back: the same ratings.
    #[test]
    fn parameters_carry_the_heater() {
        for (kind, gal, factor, first_hour, w) in [
            (HeaterKind::Electric, 50.0, 0.93, 62.0, 4_500.0),
            (HeaterKind::Gas, 40.0, 0.60, 68.0, 11_720.0),
            (HeaterKind::Oil, 50.0, 0.62, 162.0, 30_770.0),
            (HeaterKind::HeatPump, 50.0, 3.45, 65.0, 4_500.0),
            (HeaterKind::HeatPump, 50.0, 2.95, 43.0, 0.0),
        ] {
            let label = Label {
                kind,
                nominal_volume: gallons(gal),
                uniform_energy_factor: factor,
                first_hour_rating: gallons(first_hour),
                input: watts(w),
                heat_pump_output: watts(0.0),
            };
            let model = calibrate(&label, DELIVERED_C).model;
            let (before, after) = (rate(&model), rate(&Parameters::of(kind, &model).model()));
            let factors = [before, after].map(|r| r.simulated_use.uniform_energy_factor);
            assert!((factors[0] - factors[1]).abs() < 1e-3 * factors[0], "{kind:?}: {factors:?}");
            let moved_m3 = (before.first_hour_m3 - after.first_hour_m3).abs();
            assert!(moved_m3 < 1e-3, "{kind:?}: {moved_m3}");
        }
    }
}
