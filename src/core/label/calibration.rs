//! From a label to a heater that scores it.
//!
//! Which figure sets which parameter:
//!
//! | heater | uniform energy factor sets | first-hour rating sets |
//! | --- | --- | --- |
//! | electric elements | standby conductance | the build: share stirred by the inlet, then water held, then height of the upper element |
//! | burner | standby conductance (jacket, flue and pilot together) | the build |
//! | heat pump | effectiveness (standby is its class's) | the build; without elements, then the output |
//!
//! Standby comes before effectiveness: fitting a heat pump at the wrong standby moves its saving by
//! several per cent. The two searches are repeated, since each moves the other's result a little.
//! Both are bracketed and bounded. A figure out of reach leaves its parameter at the nearest bound, and what is
//! said names the range within reach.

use super::class::{self, Build};
use super::first_hour::first_hour_rating_m3;
use super::fit::{FirstHourFit, fit_factor, fit_first_hour};
use super::patterns::Pattern;
use super::rated::{FACTOR_SLACK, FIRST_HOUR_SLACK_GAL, Standing};
use super::rating_test::{DELIVERED_C, Rating};
use super::simulated_use::simulated_use;
use super::usable::usable;
use crate::core::candidates::Label;
use crate::core::case::HeaterKind;
use crate::core::heater::Model;
use crate::core::message::{Arg, Message};
use crate::core::outcome::LabelCheck;
use crate::core::units::{GALLON_M3, Quantity, Unit, cubic_metres, watts};
use uom::si::power::watt;
use uom::si::volume::cubic_meter;

/// A calibrated heater with how well it meets its label.
#[derive(Clone, Debug, PartialEq)]
pub struct Calibrated {
    /// The heater, at the setpoint asked for.
    pub model: Model,
    /// Label against model.
    pub check: LabelCheck,
    /// How the label stands.
    pub standing: Standing,
    /// What to say about it, the gravest first.
    pub says: Vec<Message>,
    /// What the model scores, drawn by the label's pattern.
    pub rating: Rating,
}

/// Calibrates a heater to its label and sets its thermostat. Always gives a heater: for a label out of reach the
/// nearest one, for one with unusable figures that of the figures brought into range.
pub fn calibrate(label: &Label, setpoint_c: f64) -> Calibrated {
    calibrate_rated_at(label, DELIVERED_C, setpoint_c)
}

/// The same where the thermostat stood at `test_c` in the rating test, °C: the procedure leaves ± 5 °F for it.
pub fn calibrate_rated_at(label: &Label, test_c: f64, setpoint_c: f64) -> Calibrated {
    let (usable, mut says) = usable(label);
    let mut standing = if says.is_empty() { Standing::Met } else { Standing::Unusable };
    let first_hour_m3 = usable.first_hour_rating.get::<cubic_meter>();
    let pattern = Pattern::for_first_hour(first_hour_m3);
    let start = class::model(&usable, &Build::usual(usable.kind), test_c);
    let mut found = fit_first_hour(&usable, &start, first_hour_m3);
    let mut factor = fit_factor(&usable, &found.model, pattern);
    // How much is lost or gained meanwhile moves the first hour a little, and that the factor.
    let met = (found.first_hour_m3 - first_hour_m3).abs() < FIRST_HOUR_SLACK_GAL * GALLON_M3;
    if met && (first_hour_rating_m3(&factor.model) - found.first_hour_m3).abs() > 0.2 * GALLON_M3 {
        found = fit_first_hour(&usable, &factor.model, first_hour_m3);
        factor = fit_factor(&usable, &found.model, pattern);
    }
    let mut model = factor.model;
    let rating =
        Rating { first_hour_m3: first_hour_rating_m3(&model), simulated_use: simulated_use(&model, pattern) };
    let model_factor = rating.simulated_use.uniform_energy_factor;
    if (model_factor - usable.uniform_energy_factor).abs() > FACTOR_SLACK {
        let range = factor.range.unwrap_or((model_factor, model_factor));
        says.push(factor_out_of_reach(&usable, range));
        standing = standing.max(Standing::OutOfReach);
    }
    if (rating.first_hour_m3 - first_hour_m3).abs() > FIRST_HOUR_SLACK_GAL * GALLON_M3 {
        says.push(first_hour_contradicts(&usable, &found));
        standing = standing.max(Standing::Contradiction);
    }
    let check = LabelCheck {
        factor: label.uniform_energy_factor,
        model_factor,
        first_hour: label.first_hour_rating,
        model_first_hour: cubic_metres(rating.first_hour_m3),
        standby_w_per_k: model.standby_w_per_k,
        heat_pump_output: watts(model.pump().map_or(0.0, |p| p.output_w)),
        residual: says.first().cloned(),
    };
    model.setpoint_c = setpoint_c;
    Calibrated { model, check, standing, says, rating }
}

/// "No 50 gal heater can score 6.5 with these watts: check the figure."
fn factor_out_of_reach(label: &Label, (low, high): (f64, f64)) -> Message {
    let id = match label.kind {
        // Nothing that only warms gives more heat than it takes.
        HeaterKind::Electric if label.uniform_energy_factor > 1.2 => "label-factor-of-heat-pump",
        HeaterKind::Electric => "label-factor-electric",
        HeaterKind::HeatPump => "label-factor-heat-pump",
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => "label-factor-burner",
    };
    about(id, label)
        .with("label", Arg::Number(label.uniform_energy_factor, 2))
        // Rounded inwards, so that what is named is within reach.
        .with("low", Arg::Number((low * 100.0).ceil() / 100.0, 2))
        .with("high", Arg::Number((high * 100.0).floor() / 100.0, 2))
}

fn first_hour_contradicts(label: &Label, found: &FirstHourFit) -> Message {
    let gal = |m3: f64| m3 / GALLON_M3;
    let label_gal = gal(label.first_hour_rating.get::<cubic_meter>());
    let (low, high) = found.range_m3;
    let within = label_gal > gal(low) && label_gal < gal(high);
    // Draws are whole: a rating may lie where one draw more or less jumps over it.
    let (id, low, high) = if within {
        ("label-first-hour-between", gal(found.beside_m3.0).floor(), gal(found.beside_m3.1).ceil())
    } else {
        ("label-first-hour-contradicts", gal(low).ceil(), gal(high).floor())
    };
    about(id, label)
        .quantity("label", label_gal, Unit::Gallon)
        .quantity("model", gal(found.first_hour_m3).round(), Unit::Gallon)
        .quantity("low", low, Unit::Gallon)
        .quantity("high", high, Unit::Gallon)
}

/// A message with the label's size and power.
fn about(id: &'static str, label: &Label) -> Message {
    let input_w = label.input.get::<watt>();
    let power = match label.kind {
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => {
            Quantity::new(Unit::BtuPerHour.from_base(input_w), Unit::BtuPerHour)
        }
        HeaterKind::HeatPump if input_w == 0.0 => {
            Quantity::new(label.heat_pump_output.get::<watt>(), Unit::Watt)
        }
        HeaterKind::Electric | HeaterKind::HeatPump => Quantity::new(input_w, Unit::Watt),
    };
    Message::new(id)
        .quantity("volume", label.nominal_volume.get::<cubic_meter>() / GALLON_M3, Unit::Gallon)
        .with("input", power)
}
