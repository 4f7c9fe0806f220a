//! What a reading outside its range points to, the likeliest first. Common practice of the trade, no source.

use super::Reading;
use crate::core::case::HeaterKind;

/// On which side of its range a reading lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// Below.
    Low,
    /// Above.
    High,
}

/// The likely causes, as keys of their words, in order.
///
/// `kind` leaves out what such a heater does not have.
pub const fn causes(reading: Reading, side: Side, kind: HeaterKind) -> &'static [&'static str] {
    use Reading::{
        AirIn, AirOut, AmpsElements, AmpsPump, Condensate, CondensateTime, HeatTime, Pressure, SoundNear,
        SoundNext, TankTop, Tap, Volts, Water,
    };
    use Side::{High, Low};
    match (reading, side) {
        (Pressure, Low) => &[
            "cause-valve-half-shut",
            "cause-screen-blocked",
            "cause-reducing-set-low",
            "cause-gauge-at-drain",
        ],
        (Pressure, High) => &[
            "cause-no-reducing-valve",
            "cause-reducing-worn",
            "cause-expansion-while-heating",
            "cause-expansion-flat",
        ],
        (Volts, Low) => {
            &["cause-loose-terminal", "cause-long-thin-wire", "cause-208-supply", "cause-utility-low"]
        }
        (Volts, High) => &["cause-wrong-circuit", "cause-loose-neutral", "cause-utility-high"],
        (AirIn, Low) => &["cause-air-short-circuit", "cause-door-or-vent-open", "cause-room-colder"],
        (AirIn, High) => &["cause-dryer-or-furnace-near", "cause-room-warmer", "cause-thermometer-on-tank"],
        (AirOut, Low) => &["cause-filter-dirty", "cause-air-blocked", "cause-fan-slow"],
        (AirOut, High) => {
            &["cause-elements-mode", "cause-not-run-long", "cause-charge-lost", "cause-air-leaks-past"]
        }
        (Water, Low) => &["cause-drawing-now", "cause-sensor-reads-inlet"],
        (Water, High) => &["cause-already-hot", "cause-setpoint-higher"],
        (AmpsPump, Low) => {
            &["cause-fan-only", "cause-not-run-long", "cause-charge-lost", "cause-inverter-part-load"]
        }
        (AmpsPump, High) => {
            &["cause-elements-on-too", "cause-air-blocked", "cause-water-hotter", "cause-volts-low"]
        }
        (Condensate, Low) => &[
            "cause-not-run-long",
            "cause-trap-dry-or-line-blocked",
            "cause-pan-not-level",
            "cause-air-drier",
        ],
        (Condensate, High) => &["cause-air-damper", "cause-fitting-drips", "cause-relief-drips"],
        (CondensateTime, _) => &[],
        (SoundNear, Low) => &["cause-fan-only", "cause-meter-far"],
        (SoundNear, High) => {
            &["cause-transport-screws", "cause-touches-wall-or-pipe", "cause-not-level", "cause-other-noise"]
        }
        (SoundNext, Low) => &["cause-meter-far"],
        (SoundNext, High) => &["cause-touches-wall-or-pipe", "cause-door-open-or-gap", "cause-other-noise"],
        (AmpsElements, Low) => &[
            "cause-one-element-open",
            "cause-volts-low",
            "cause-other-element-size",
            "cause-not-elements-mode",
        ],
        (AmpsElements, High) => &["cause-other-element-size", "cause-both-elements", "cause-volts-high"],
        (HeatTime, Low) => match kind {
            HeaterKind::HeatPump => &["cause-elements-mode", "cause-tank-not-cold", "cause-setpoint-lower"],
            _ => &["cause-tank-not-cold", "cause-setpoint-lower"],
        },
        (HeatTime, High) => match kind {
            HeaterKind::HeatPump => &[
                "cause-drawing-now",
                "cause-filter-dirty",
                "cause-room-colder",
                "cause-locked-out",
                "cause-charge-lost",
            ],
            HeaterKind::Electric => {
                &["cause-drawing-now", "cause-one-element-open", "cause-volts-low", "cause-crossed-pipes"]
            }
            HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => {
                &["cause-drawing-now", "cause-burner-input-low", "cause-crossed-pipes"]
            }
        },
        (TankTop, Low) => {
            &["cause-still-heating", "cause-drawing-now", "cause-setpoint-lower", "cause-crossed-pipes"]
        }
        (TankTop, High) => &["cause-setpoint-higher", "cause-thermostat-loose"],
        (Tap, Low) => {
            &["cause-not-run-hot", "cause-mixing-set-low", "cause-mixed-by-tap", "cause-crossed-pipes"]
        }
        (Tap, High) => &["cause-mixing-set-high", "cause-no-mixing-valve", "cause-setpoint-higher"],
    }
}
