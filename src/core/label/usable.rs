//! Whether a label's figures are figures of a storage water heater at all.

use crate::core::candidates::Label;
use crate::core::case::HeaterKind;
use crate::core::message::{Arg, Message};
use crate::core::units::{GALLON_M3, Quantity, Unit, gallons, watts};
use uom::si::power::watt;
use uom::si::volume::cubic_meter;

use super::present;

/// Nominal volume, US gallons.
const VOLUME_GAL: (f64, f64) = (5.0, 200.0);
/// Uniform energy factor.
const FACTOR: (f64, f64) = (0.1, 10.0);
/// First-hour rating, US gallons.
const FIRST_HOUR_GAL: (f64, f64) = (3.0, 500.0);
/// Each electric element, W; a heat pump may have none.
const ELEMENT_W: (f64, f64) = (500.0, 12_000.0);
/// A burner, W.
const BURNER_W: (f64, f64) = (2_000.0, 100_000.0);
/// Heat of a heat pump, W.
const OUTPUT_W: (f64, f64) = (300.0, 10_000.0);

/// The label with every figure inside what can be simulated, and what had to be said about those that were
/// not. A heat pump's output that is left at zero is not on the label: it becomes the one typical of its size.
pub(super) fn usable(label: &Label) -> (Label, Vec<Message>) {
    let mut says = Vec::new();
    let kind = label.kind;
    let mut within = |name: &'static str, value: f64, (low, high): (f64, f64), else_: f64, unit: Unit| {
        if value >= low && value <= high {
            return value;
        }
        let shown = |v: f64| -> Arg {
            if unit == Unit::One { Arg::Number(v, 2) } else { Quantity::new(v, unit).into() }
        };
        says.push(
            Message::new("label-unusable")
                .with("figure", Message::new(name))
                .with("given", shown(value))
                .with("low", shown(low))
                .with("high", shown(high)),
        );
        if value.is_nan() {
            else_
        } else if value < low {
            low
        } else {
            high
        }
    };
    let nominal_gal = label.nominal_volume.get::<cubic_meter>() / GALLON_M3;
    let gal = within("label-figure-volume", nominal_gal, VOLUME_GAL, 50.0, Unit::Gallon);
    let factor = present::typical_uniform_energy_factor(kind, gal, 0.0);
    let factor = within("label-figure-factor", label.uniform_energy_factor, FACTOR, factor, Unit::One);
    let first_hour_gal = label.first_hour_rating.get::<cubic_meter>() / GALLON_M3;
    let typical_gal = present::typical_first_hour_rating_gal(kind, gal);
    let first_hour_gal =
        within("label-figure-first-hour", first_hour_gal, FIRST_HOUR_GAL, typical_gal, Unit::Gallon);
    let burns = matches!(kind, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil);
    let heat_pump = matches!(kind, HeaterKind::HeatPump);
    let mut input_w = label.input.get::<watt>();
    if !(heat_pump && input_w == 0.0) {
        let range = if burns { BURNER_W } else { ELEMENT_W };
        input_w = within("label-figure-input", input_w, range, present::typical_input_w(kind), Unit::Watt);
    }
    let typical_w = present::typical_heat_pump_output_w(gal);
    let mut output_w = label.heat_pump_output.get::<watt>();
    if !heat_pump {
        output_w = 0.0;
    } else if output_w == 0.0 {
        output_w = typical_w;
    } else {
        output_w = within("label-figure-output", output_w, OUTPUT_W, typical_w, Unit::Watt);
    }
    let label = Label {
        kind,
        nominal_volume: gallons(gal),
        uniform_energy_factor: factor,
        first_hour_rating: gallons(first_hour_gal),
        input: watts(input_w),
        heat_pump_output: watts(output_w),
    };
    (label, says)
}
