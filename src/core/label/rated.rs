//! A label put to the test: the heater calibrated to it, figure by figure beside what its label says, its day
//! in the test room, and what does not add up. Plain data: it crosses to the page and to files.

use super::calibration::{Calibrated, calibrate_rated_at};
use super::cop_map::{CopMap, cop_map};
use super::patterns::Pattern;
use super::rating_run::{RatingRun, Scored, rating_run};
use super::rating_test::DELIVERED_C;
use crate::core::candidates::Label;
use crate::core::case::HeaterKind;
use crate::core::heater::{Model, Source};
use crate::core::message::{Arg, Message};
use crate::core::units::{GALLON_M3, Quantity, Unit};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use uom::si::volume::cubic_meter;

/// How a label stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// The model scores what the label says.
    Met,
    /// Two figures contradict each other: one is met, the other is not.
    Contradiction,
    /// A figure is beyond what such a heater can do; the nearest heater is shown.
    OutOfReach,
    /// A figure is no figure, or belongs to no storage water heater: nothing was calibrated.
    Unusable,
}

/// A label put to the test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Rated {
    /// The label.
    pub label: Label,
    /// How it stands.
    pub standing: Standing,
    /// What to say about it: refusals and contradictions, the gravest first; empty when all is met.
    pub says: Vec<Message>,
    /// The heater; `None` when the label is unusable.
    pub heater: Option<RatedHeater>,
}

/// A calibrated heater in the test room.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RatedHeater {
    /// Label against model, row by row.
    pub compared: Vec<Compared>,
    /// The model's parameters, row by row.
    pub parameters: Vec<Parameter>,
    /// Its day in the test room, with what it scored.
    pub run: RatingRun,
    /// A heat pump's coefficient of performance.
    pub cop: Option<CopMap>,
}

/// A figure of the label beside the model's.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Compared {
    /// Its name (`label-figure-…` in the locale files).
    pub name: Cow<'static, str>,
    /// The label's, or what follows from the label's; `None` where labels do not say.
    pub label: Option<Arg>,
    /// The model's.
    pub model: Arg,
    /// Model less label, in the unit shown (factor: a bare number); `None` where there is nothing to compare.
    pub residual: Option<f64>,
    /// Whether the two agree as closely as is promised.
    pub met: bool,
}

/// A parameter of the model.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Parameter {
    /// Its name (`label-parameter-…` in the locale files).
    pub name: Cow<'static, str>,
    /// Its value.
    pub value: Arg,
    /// Whether the label set it; else it is its class's.
    pub calibrated: bool,
}

/// Puts a label to the test.
pub fn rate(label: &Label) -> Rated {
    rate_at(label, DELIVERED_C)
}

/// The same with the thermostat at another setpoint in the test, °C.
pub fn rate_at(label: &Label, test_c: f64) -> Rated {
    let Calibrated { model, standing, says, rating, .. } = calibrate_rated_at(label, test_c, test_c);
    let heater = (standing != Standing::Unusable).then(|| {
        let scored = Scored::of(rating.first_hour_m3, &rating.simulated_use);
        RatedHeater {
            compared: compared(label, &scored),
            parameters: parameters(&model),
            cop: model.pump().map(cop_map),
            run: rating_run(&model, scored),
        }
    });
    Rated { label: label.clone(), standing, says, heater }
}

/// Factors agree to this, as is promised.
pub const FACTOR_SLACK: f64 = 0.01;
/// First-hour ratings agree to this, US gallons.
pub const FIRST_HOUR_SLACK_GAL: f64 = 1.0;

fn compared(label: &Label, scored: &Scored) -> Vec<Compared> {
    let gal = |v: uom::si::f64::Volume| v.get::<cubic_meter>() / GALLON_M3;
    let said_gal = gal(label.first_hour_rating);
    let model_gal = gal(scored.first_hour_rating);
    let said_pattern = Pattern::for_first_hour(label.first_hour_rating.get::<cubic_meter>());
    let off = scored.uniform_energy_factor - label.uniform_energy_factor;
    let off_gal = model_gal - said_gal;
    let year = |pattern: Pattern, factor: f64| yearly(label, pattern.label_kwh_per_year(factor));
    let said_year = year(said_pattern, label.uniform_energy_factor);
    let model_year = year(scored.pattern, scored.uniform_energy_factor);
    let only = |name: &'static str, model: Arg| Compared {
        name: Cow::Borrowed(name),
        label: None,
        model,
        residual: None,
        met: true,
    };
    let both = |name: &'static str, label: Arg, model: Arg, residual: Option<f64>, met: bool| Compared {
        name: Cow::Borrowed(name),
        label: Some(label),
        model,
        residual,
        met,
    };
    vec![
        both(
            "label-figure-factor",
            Arg::Number(label.uniform_energy_factor, 2),
            Arg::Number(scored.uniform_energy_factor, 2),
            Some(off),
            off.abs() <= FACTOR_SLACK,
        ),
        both(
            "label-figure-first-hour",
            Quantity::new(said_gal, Unit::Gallon).into(),
            Quantity::new(model_gal, Unit::Gallon).into(),
            Some(off_gal),
            off_gal.abs() <= FIRST_HOUR_SLACK_GAL,
        ),
        both(
            "label-figure-pattern",
            Message::new(said_pattern.key()).into(),
            Message::new(scored.pattern.key()).into(),
            None,
            said_pattern == scored.pattern,
        ),
        both(
            "label-figure-year",
            said_year.into(),
            model_year.into(),
            Some(model_year.value - said_year.value),
            off.abs() <= FACTOR_SLACK,
        ),
        only(
            "label-figure-recovery",
            Quantity::new(100.0 * scored.recovery_efficiency, Unit::Percent).into(),
        ),
        only("label-figure-standby", Quantity::new(scored.standby.value, Unit::WattPerKelvin).into()),
    ]
}

/// The rows of a heater that is rated without a label.
pub fn scored_rows(kind: HeaterKind, scored: &Scored) -> Vec<Compared> {
    let label = Label {
        kind,
        nominal_volume: scored.first_hour_rating,
        uniform_energy_factor: scored.uniform_energy_factor,
        first_hour_rating: scored.first_hour_rating,
        input: Default::default(),
        heat_pump_output: Default::default(),
    };
    compared(&label, scored)
}

/// Energy a year in the unit of the label: therms for gas, kilowatt-hours otherwise.
fn yearly(label: &Label, kwh: f64) -> Quantity {
    let year = Quantity::new(kwh, Unit::KilowattHour);
    match label.kind {
        HeaterKind::Gas => year.to(Unit::Therm).unwrap_or(year),
        HeaterKind::Electric | HeaterKind::Propane | HeaterKind::Oil | HeaterKind::HeatPump => year,
    }
}

fn parameters(model: &Model) -> Vec<Parameter> {
    let row = |name: &'static str, value: f64, unit: Unit, calibrated: bool| Parameter {
        name: Cow::Borrowed(name),
        value: Quantity::new(value, unit).into(),
        calibrated,
    };
    let pump = model.pump();
    let mut rows = vec![
        row("label-parameter-volume", model.volume_m3 / GALLON_M3, Unit::Gallon, false),
        row("label-parameter-standby", model.standby_w_per_k, Unit::WattPerKelvin, pump.is_none()),
        row("label-parameter-stirred", 100.0 * model.inlet_stir, Unit::Percent, true),
    ];
    match &model.source {
        Source::Elements(e) => rows.push(row("label-parameter-element", e.upper.power_w, Unit::Watt, false)),
        Source::Burner(b) => {
            rows.push(row(
                "label-parameter-input",
                Unit::BtuPerHour.from_base(b.input_w),
                Unit::BtuPerHour,
                false,
            ));
            rows.push(row("label-parameter-burner", 100.0 * b.recovery, Unit::Percent, false));
        }
        Source::HeatPump { pump, backup, .. } => {
            rows.push(row("label-parameter-effectiveness", 100.0 * pump.effectiveness, Unit::Percent, true));
            rows.push(row("label-parameter-output", pump.output_w, Unit::Watt, false));
            if let Some(e) = backup {
                rows.push(row("label-parameter-element", e.upper.power_w, Unit::Watt, false));
            }
        }
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::{gallons, watts};

    fn label(kind: HeaterKind, gal: f64, factor: f64, first_hour: f64, input: f64, output: f64) -> Label {
        Label {
            kind,
            nominal_volume: gallons(gal),
            uniform_energy_factor: factor,
            first_hour_rating: gallons(first_hour),
            input: watts(input),
            heat_pump_output: watts(output),
        }
    }

    /// What is shown crosses to the page and back, and its series hang together.
    #[test]
    fn a_rated_heater_crosses_whole() {
        for l in [
            label(HeaterKind::Electric, 50.0, 0.93, 62.0, 4_500.0, 0.0),
            label(HeaterKind::Gas, 40.0, 0.60, 68.0, 11_720.0, 0.0),
            label(HeaterKind::HeatPump, 50.0, 3.45, 65.0, 4_500.0, 1_700.0),
        ] {
            let rated = rate(&l);
            let bytes = postcard::to_allocvec(&rated).expect("plain data");
            assert!(bytes.len() < 40_000, "{} bytes", bytes.len());
            assert_eq!(postcard::from_bytes::<Rated>(&bytes).expect("the same"), rated);
            let heater = rated.heater.expect("a heater");
            let run = &heater.run;
            let n = run.minutes.len();
            assert!((288..super::super::rating_run::MOST_ENTRIES).contains(&n), "{n}");
            for series in [&run.flow_l_per_min, &run.outlet_c, &run.electric_w, &run.fuel_w] {
                assert_eq!(series.len(), n);
            }
            assert_eq!(run.layers_c.len(), n * run.layers);
            assert!(run.minutes.is_sorted() && run.minutes.last() == Some(&1440.0));
            assert_eq!(heater.cop.is_some(), l.kind == HeaterKind::HeatPump);
            // What the series draw is what the pattern asks for.
            let sum = |series: &[f32]| -> f64 {
                let steps = run.minutes.windows(2).map(|w| f64::from(w[1] - w[0]));
                series[1..].iter().zip(steps).map(|(v, minutes)| f64::from(*v) * minutes).sum()
            };
            let drawn_gal = sum(&run.flow_l_per_min) * 1e-3 / GALLON_M3;
            assert!((drawn_gal - run.scored.pattern.daily_gal()).abs() < 0.01, "{drawn_gal}");
        }
    }
}
