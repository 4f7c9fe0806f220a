//! What a class of heaters has in common and no label says: shape, heights, thermostats, the heat pump's
//! air and condenser. Common practice, no source, unless said otherwise. The label's figures then
//! calibrate what matters.

use crate::core::candidates::Label;
use crate::core::case::HeaterKind;
use crate::core::heat_pump::machine::HeatPump;
use crate::core::heater::{Burner, Element, Elements, Model, Source};
use uom::si::{power::watt, volume::cubic_meter};

/// Layers of the simulation; see `tests/published/tank.rs` for the error against many.
pub const SLOTS: usize = 12;
/// Water height over diameter of a tall tank.
const SLENDERNESS: f64 = 2.6;

/// What a label's first-hour rating settles about a heater's build.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Build {
    /// Water held over nominal volume.
    pub held_share: f64,
    /// Share of the tank that the inlet's jet stirs.
    pub inlet_stir: f64,
    /// Height of the upper element, as a share of the tank's.
    pub upper_height: f64,
    /// A heat pump's output, as a multiple of the label's or the class's.
    pub output: f64,
}

impl Build {
    /// The usual build of a class.
    pub fn usual(kind: HeaterKind) -> Build {
        Build { held_share: held_share(kind), inlet_stir: 0.15, upper_height: 0.70, output: 1.0 }
    }
}

/// A heater of the label's class, not yet calibrated, at a setpoint.
pub fn model(label: &Label, build: &Build, setpoint_c: f64) -> Model {
    let nominal_m3 = label.nominal_volume.get::<cubic_meter>();
    let volume_m3 = nominal_m3 * build.held_share;
    let diameter = libm::cbrt(4.0 * volume_m3 / (std::f64::consts::PI * SLENDERNESS));
    Model {
        volume_m3,
        height_m: SLENDERNESS * diameter,
        standby_w_per_k: standby_w_per_k(label.kind, volume_m3),
        inlet_stir: build.inlet_stir,
        setpoint_c,
        deadband_k: match label.kind {
            HeaterKind::Electric => 7.0,
            HeaterKind::HeatPump => 5.0,
            HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => 9.0,
        },
        idle_w: if matches!(label.kind, HeaterKind::HeatPump) { 3.0 } else { 0.0 },
        source: source(label, build),
        slots: SLOTS,
    }
}

/// Water held over nominal volume: electric tanks hold about a tenth less than their name says, which
/// federal rules allow; fuel-fired ones about a twentieth.
fn held_share(kind: HeaterKind) -> f64 {
    match kind {
        HeaterKind::Electric | HeaterKind::HeatPump => 0.90,
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => 0.95,
    }
}

/// Where the calibration starts, and what a heat pump tank keeps: about 1.0 W/K at 170 L with 2 in of
/// foam, in proportion to the surface.
pub fn standby_w_per_k(kind: HeaterKind, volume_m3: f64) -> f64 {
    let surface = libm::pow(volume_m3 / 0.170, 2.0 / 3.0);
    match kind {
        HeaterKind::HeatPump => 1.0 * surface,
        HeaterKind::Electric => 1.1 * surface,
        HeaterKind::Gas | HeaterKind::Propane => 4.0 * surface,
        HeaterKind::Oil => 5.0 * surface,
    }
}

fn elements(power_w: f64, build: &Build) -> Elements {
    Elements {
        upper: Element { power_w, height: build.upper_height, sensor: build.upper_height + 0.04 },
        lower: Element { power_w, height: 0.12, sensor: 0.22 },
    }
}

fn source(label: &Label, build: &Build) -> Source {
    let input_w = label.input.get::<watt>();
    match label.kind {
        HeaterKind::Electric => Source::Elements(elements(input_w, build)),
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => Source::Burner(Burner {
            input_w,
            recovery: recovery(label.kind, label.uniform_energy_factor),
            auxiliary_w: if matches!(label.kind, HeaterKind::Oil) { 180.0 } else { 0.0 },
            sensor: 0.25,
        }),
        HeaterKind::HeatPump => Source::HeatPump {
            pump: heat_pump(label, build.output),
            sensor: 0.40,
            backup: (input_w > 0.0).then(|| elements(input_w, build)),
            backup_drop_k: 12.0,
        },
    }
}

/// Share of what a plain heater uses that reaches the water while it heats.
pub fn recovery_efficiency(kind: HeaterKind, factor: f64) -> f64 {
    match kind {
        HeaterKind::Electric | HeaterKind::HeatPump => 0.98,
        HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => recovery(kind, factor),
    }
}

/// Share of the fuel's heat that reaches the water while the burner burns: 0.78 to 0.80 for a plain flue
/// (the test's recovery efficiency, commonly 0.76 to 0.82); a label near 0.70 or above needs a better one, and
/// from 0.88 on one that condenses.
fn recovery(kind: HeaterKind, factor: f64) -> f64 {
    let plain = if matches!(kind, HeaterKind::Oil) { 0.80 } else { 0.79 };
    let better = factor + 0.10;
    if better < plain {
        plain
    } else if better < 0.98 {
        better
    } else {
        0.98
    }
}

/// A machine of the class's size and middling quality.
fn heat_pump(label: &Label, output: f64) -> HeatPump {
    let output_w = output * label.heat_pump_output.get::<watt>();
    let mut pump = HeatPump {
        output_w,
        effectiveness: 0.0,
        air_m3_per_s: 0.0,
        bypass_factor: 0.25,
        fan_w: 40.0,
        condenser_w_per_k: 0.0,
        condenser_top: 0.65,
        // 37 and 120 °F, usual limits of the class.
        coldest_air_c: 2.8,
        warmest_air_c: 48.9,
    };
    set_poorness(&mut pump, 1.5);
    pump
}

/// What a step of poorness adds to the inverse of the factor, about.
pub const POORNESS_COSTS: f64 = 0.137;
/// The poorest machine looked for; 0 is the best.
pub const POOREST: f64 = 3.0;
/// Effectiveness at a poorness of 0, 1, 2 and 3.
const EFFECTIVENESS: [f64; 4] = [0.84, 0.785, 0.725, 0.40];
/// Size of the heat exchangers at a poorness up to 1, and from 2 on, as multiples of the usual.
const EXCHANGERS: (f64, f64) = (2.5, 0.3);

/// Makes a machine as good or as poor as a label asks: the one figure that its factor sets.
///
/// Heat pumps differ by their heat exchangers as much as by their compressors, and a label tells only of both
/// together. Between 1 and 2, where the labels of today lie, condenser and airflow change most: condensing
/// lies 2 to 20 K above the water and 145 to 340 cfm pass the coil of a 1.5 kW machine, while the effectiveness
/// stays that of real compressors (isentropic efficiency 0.5 to 0.75, `tests/published/cycle.rs`). Beyond that
/// the exchangers stay as they are and the compressor changes: poor ones of early machines up to 3, better
/// ones than are common down to 0. Common practice, no source, but for the cycle.
pub fn set_poorness(pump: &mut HeatPump, poorness: f64) {
    let [best, good, fair, poor] = EFFECTIVENESS;
    let (middle, effectiveness) = if poorness < 1.0 {
        (0.0, best + (good - best) * poorness)
    } else if poorness < 2.0 {
        (poorness - 1.0, good + (fair - good) * (poorness - 1.0))
    } else {
        (1.0, fair + (poor - fair) * (poorness - 2.0))
    };
    let exchangers = EXCHANGERS.0 * libm::pow(EXCHANGERS.1 / EXCHANGERS.0, middle);
    let size = pump.output_w / 1_500.0;
    pump.effectiveness = effectiveness;
    pump.condenser_w_per_k = 250.0 * size * exchangers;
    // 235 cfm for 1.5 kW, in proportion.
    pump.air_m3_per_s = 0.111 * size * libm::pow(exchangers, 0.4);
}

/// How poor a machine is that [`set_poorness`] made.
pub fn poorness(pump: &HeatPump) -> f64 {
    let [best, good, fair, poor] = EFFECTIVENESS;
    let e = pump.effectiveness;
    if e >= good {
        (best - e) / (best - good)
    } else if e >= fair {
        1.0 + (good - e) / (good - fair)
    } else {
        2.0 + (fair - e) / (fair - poor)
    }
}
