//! The JSON form of one heater, for the headless command's `rate` and `calibrate`:
//!
//! ```json
//! { "tankful": 1, "label": { "kind": "electric", "volume": { "value": 50, "unit": "gal" }, "factor": 0.93,
//!   "first_hour": { "value": 62, "unit": "gal" }, "input": { "value": 4500, "unit": "W" } } }
//! { "tankful": 1, "model": { "kind": "electric", "volume": { "value": 45, "unit": "gal" },
//!   "standby": { "value": 1.1, "unit": "W/K" }, "stirred": 0.13 } }
//! ```
//!
//! - A `label` needs its `kind`. Figures left out are typical of kind, size and `age`, and named as assumed.
//!   `scale` says on which scale the `factor` is: `uef` (taken when left out) or `ef`, the scale of labels
//!   before the middle of 2017, which is converted. `output` is a heat pump's heat at rating conditions.
//! - `setpoint` (of either) is where the thermostat stood in the rating test: 120 to 130 °F, which is what the test
//!   allows for water delivered (125 ± 5 °F; 10 CFR 430 subpart B appendix E, from memory). 125 °F when left out. It is not
//!   the household's.
//! - A `model` needs its `kind` and `volume` (water held). What is left out is usual for its kind.
//! - Nothing is passed over, as in the form of a case.

use super::error::{CaseError, Trouble, Wanted};
use super::node::Node;
use super::{LONGEST_NAME, MOST_BYTES, VERSION};
use crate::core::candidates::Label;
use crate::core::case::HeaterKind;
use crate::core::label::parameters::Parameters;
use crate::core::label::rating_test::DELIVERED_C;
use crate::core::label::{energy_factor, present};
use crate::core::units::{GALLON_M3, Quantity, Unit, ZERO_C_K, celsius, cubic_metres, watts};
use crate::job::form::{Object, code, object, read_quantity, shown, unknown, wanted};
use serde_json::Value as Json;
use uom::si::f64::{ThermalConductance, ThermodynamicTemperature};
use uom::si::thermal_conductance::watt_per_kelvin;

/// A heater as it stands in a file.
#[derive(Clone, Debug, PartialEq)]
pub struct HeaterFile {
    /// What its owner calls it.
    pub name: Option<String>,
    /// The heater.
    pub heater: GivenHeater,
    /// Where its thermostat stood in the rating test.
    pub setpoint: ThermodynamicTemperature,
}

/// How a heater is given.
#[derive(Clone, Debug, PartialEq)]
pub enum GivenHeater {
    /// By its label.
    Label {
        /// The label, complete; its factor is a uniform energy factor.
        label: Label,
        /// Figures that were left out.
        assumed: Vec<&'static str>,
        /// The energy factor that the label's factor was converted from.
        converted_from: Option<f64>,
    },
    /// By the parameters of its model.
    Model(Parameters),
}

const WATER: &[Unit] = &[Unit::Gallon, Unit::Litre];
const POWER: &[Unit] = &[Unit::Watt, Unit::Kilowatt, Unit::BtuPerHour];
const CONDUCTANCE: &[Unit] = &[Unit::WattPerKelvin, Unit::BtuPerHourPerDegF];
const WARMTH: &[Unit] = &[Unit::DegF, Unit::DegC];
const BARE: &[Unit] = &[Unit::One];
const FIELDS: [&str; 4] = ["tankful", "name", "label", "model"];

/// A figure's name, its units, and its range in the first of them.
type Figure = (&'static str, &'static [Unit], f64, f64);

/// The test's own range for water delivered.
const SETPOINT: Figure = ("setpoint", WARMTH, 120.0, 130.0);
const LABEL: [Figure; 7] = [
    ("volume", WATER, 5.0, 200.0),
    ("factor", BARE, 0.1, 10.0),
    ("first_hour", WATER, 3.0, 500.0),
    ("input", POWER, 0.0, 100_000.0),
    ("output", POWER, 0.0, 10_000.0),
    ("age", &[Unit::Year], 0.0, 60.0),
    SETPOINT,
];
const MODEL: [Figure; 9] = [
    ("volume", WATER, 5.0, 200.0),
    ("standby", CONDUCTANCE, 0.05, 50.0),
    ("stirred", BARE, 0.02, 0.8),
    ("upper_height", BARE, 0.3, 0.9),
    ("input", POWER, 0.0, 100_000.0),
    ("recovery", BARE, 0.3, 1.0),
    ("effectiveness", BARE, 0.4, 0.84),
    ("output", POWER, 300.0, 10_000.0),
    SETPOINT,
];

/// Reads one heater. `labels_only` refuses the parameters of a model.
///
/// # Errors
/// Everything that is wrong with the record, each with its field.
pub fn parse_heater(text: &str, labels_only: bool) -> Result<HeaterFile, Vec<CaseError>> {
    if text.len() > MOST_BYTES {
        return Err(vec![CaseError::too_long(MOST_BYTES)]);
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let node: Node = serde_json::from_str(text)
        .map_err(|e| vec![CaseError::new("", Trouble::NotJson { line: e.line(), column: e.column() })])?;
    let mut refused = Vec::new();
    let json = node.plain("", &mut refused);
    for e in &mut refused {
        e.field = e.field.trim_start_matches('.').to_owned();
    }
    let found = object("", &json, &mut refused).and_then(|all| record(all, labels_only, &mut refused));
    match found {
        Some(found) if refused.is_empty() => Ok(found),
        _ => Err(refused),
    }
}

fn record(all: &Object, labels_only: bool, refused: &mut Vec<CaseError>) -> Option<HeaterFile> {
    match all.get("tankful") {
        None => refused.push(CaseError::new("tankful", Trouble::Missing)),
        Some(v) if v.as_u64() == Some(VERSION) => {}
        Some(v) => {
            refused.push(CaseError::new("tankful", Trouble::Version { given: shown(v), known: VERSION }))
        }
    }
    let mut name = None;
    match all.get("name") {
        None => {}
        Some(Json::String(text)) if text.chars().count() <= LONGEST_NAME => name = Some(text.clone()),
        Some(other) => refused.push(wanted("name", other, Wanted::Name)),
    }
    for field in all.keys().filter(|k| !FIELDS.contains(&k.as_str()) || labels_only && *k == "model") {
        refused.push(unknown(field, field));
    }
    let heater = match (all.get("label"), all.get("model").filter(|_| !labels_only)) {
        (Some(json), None) => object("label", json, refused).and_then(|all| label(all, refused)),
        (None, Some(json)) => object("model", json, refused).and_then(|all| model(all, refused)),
        (None, None) => {
            refused.push(CaseError::new("label", Trouble::Missing));
            None
        }
        (Some(_), Some(_)) => {
            refused.push(CaseError::new("model", Trouble::Twice));
            None
        }
    };
    heater.map(|(heater, setpoint_k)| {
        let setpoint = celsius(setpoint_k.map_or(DELIVERED_C, |k| k - ZERO_C_K));
        HeaterFile { name, heater, setpoint }
    })
}

/// The figures of a part, each in its base unit, in the order of the list.
fn figures<const N: usize>(
    part: &str,
    all: &Object,
    list: &[Figure; N],
    options: &[&str],
    refused: &mut Vec<CaseError>,
) -> [Option<f64>; N] {
    for name in all.keys().filter(|k| !options.contains(&k.as_str()) && !list.iter().any(|f| f.0 == *k)) {
        refused.push(unknown(&format!("{part}.{name}"), name));
    }
    list.map(|(name, units, low, high)| {
        let json = all.get(name)?;
        let field = format!("{part}.{name}");
        let first = units.first().copied().unwrap_or(Unit::One);
        match read_quantity(json, units) {
            Ok(given) => {
                let base = given.base();
                if base >= first.to_base(low) - 1e-12 && base <= first.to_base(high) + 1e-12 {
                    return Some(base);
                }
                let [low, high] =
                    [low, high].map(|v| Quantity::new(v, first).to(given.unit).unwrap_or(given));
                refused.push(CaseError::new(field, Trouble::OutOfRange { given, low, high }));
            }
            Err(trouble) => refused.push(CaseError::new(field, trouble)),
        }
        None
    })
}

fn kind(part: &str, all: &Object, refused: &mut Vec<CaseError>) -> Option<HeaterKind> {
    code(part, "kind", all, HeaterKind::CODES, HeaterKind::from_code, refused)
}

/// Scales a factor may be on.
const SCALES: &[&str] = &["uef", "ef"];

/// A heater with the setpoint of its rating test, K, where one is given.
type Given = (GivenHeater, Option<f64>);

fn label(all: &Object, refused: &mut Vec<CaseError>) -> Option<Given> {
    let kind = kind("label", all, refused);
    let old = match all.get("scale") {
        None => Some(false),
        Some(_) => code("label", "scale", all, SCALES, |c| SCALES.contains(&c).then_some(c == "ef"), refused),
    };
    let given = figures("label", all, &LABEL, &["kind", "scale"], refused);
    let (kind, old) = (kind?, old?);
    let mut assumed = Vec::new();
    let mut or = |at: usize, typical: f64| {
        given.get(at).copied().flatten().unwrap_or_else(|| {
            assumed.extend(LABEL.get(at).map(|f| f.0));
            typical
        })
    };
    let electric = matches!(kind, HeaterKind::Electric | HeaterKind::HeatPump);
    let volume_m3 = or(0, if electric { 50.0 } else { 40.0 } * GALLON_M3);
    let gal = volume_m3 / GALLON_M3;
    let years = Unit::Year.from_base(given.get(5).copied().flatten().unwrap_or(0.0));
    let first_hour_m3 = or(2, present::typical_first_hour_rating_gal(kind, gal) * GALLON_M3);
    let input_w = or(3, present::typical_input_w(kind));
    let output_w =
        if kind == HeaterKind::HeatPump { or(4, present::typical_heat_pump_output_w(gal)) } else { 0.0 };
    let mut factor = or(1, present::typical_uniform_energy_factor(kind, gal, years));
    let mut converted_from = None;
    if old && !assumed.contains(&"factor") {
        converted_from = Some(factor);
        factor = energy_factor::uniform(kind, factor, volume_m3, first_hour_m3, input_w);
    }
    let label = Label {
        kind,
        nominal_volume: cubic_metres(volume_m3),
        uniform_energy_factor: factor,
        first_hour_rating: cubic_metres(first_hour_m3),
        input: watts(input_w),
        heat_pump_output: watts(output_w),
    };
    Some((GivenHeater::Label { label, assumed, converted_from }, given.get(6).copied().flatten()))
}

fn model(all: &Object, refused: &mut Vec<CaseError>) -> Option<Given> {
    let kind = kind("model", all, refused);
    let given = figures("model", all, &MODEL, &["kind"], refused);
    let [volume, standby, stirred, upper_height, input, recovery, effectiveness, output, setpoint] = given;
    if !all.contains_key("volume") {
        refused.push(CaseError::new("model.volume", Trouble::Missing));
    }
    let (kind, volume_m3) = (kind?, volume?);
    let typical_w = present::typical_heat_pump_output_w(volume_m3 / GALLON_M3);
    let output_w = if kind == HeaterKind::HeatPump { output.unwrap_or(typical_w) } else { 0.0 };
    let input_w = input.unwrap_or(present::typical_input_w(kind));
    let usual = Parameters::usual(kind, cubic_metres(volume_m3), watts(input_w), watts(output_w));
    let parameters = Parameters {
        standby: standby.map_or(usual.standby, ThermalConductance::new::<watt_per_kelvin>),
        stirred: stirred.unwrap_or(usual.stirred),
        upper_height: upper_height.unwrap_or(usual.upper_height),
        recovery: recovery.unwrap_or(usual.recovery),
        effectiveness: effectiveness.unwrap_or(usual.effectiveness),
        ..usual
    };
    Some((GivenHeater::Model(parameters), setpoint))
}
