//! What each reading should be, from the simulation of this heater in this house on this day.
//!
//! Whatever is not known exactly is taken over its plausible range, and each reading's range is what the machine
//! does over the corners of those, widened by what the model itself may be off. So knowing less never makes a range
//! narrower, and the simulated value lies in it.

use super::machine::{Air, heat_time_s, without_elements};
use super::{Reading, Taken, pumped};
use crate::core::after::{Date, Fitted};
use crate::core::calendar::DayOfYear;
use crate::core::case::{HeaterKind, Provenance, Supply, YesNo};
use crate::core::checks::rules::{practice, us::US};
use crate::core::finding::Fit;
use crate::core::heater::Model;
use crate::core::label::calibration::calibrate;
use crate::core::message::{Arg, Message};
use crate::core::moist_air::saturation_humidity_ratio;
use crate::core::room::model::RoomModel;
use crate::core::units::{PSI_PA, Quantity, Unit, ZERO_C_K, to_celsius};
use crate::core::work::WorkKind;
use uom::si::power::watt;

/// A thermometer in air or water may be off by this, K.
pub(super) const THERMOMETER_K: f64 = 0.5;
/// Elements may give from this to this share of their rating (product standards allow 90 to 105 %; from memory).
const ELEMENT_SHARE: (f64, f64) = (0.90, 1.05);
/// A clamp meter may be off by this share.
pub(super) const CLAMP_SHARE: f64 = 0.02;
/// Volts at the equipment as a share of nominal (ANSI C84.1, utilization voltage, range A: 110 to 126 V at 120,
/// 191 to 218 V at 208, 220 to 252 V at 240; from memory).
const VOLTS_SHARE: (f64, f64) = (110.0 / 120.0, 126.0 / 120.0);

/// A heater about to start.
#[derive(Clone, Debug)]
pub struct Start<'a> {
    pub(super) fitted: Fitted<'a>,
    pub(super) model: Model,
    room: RoomModel,
    day: DayOfYear,
}

/// What a reading should be; figures in the reading's base SI unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Expected {
    /// Which.
    pub reading: Reading,
    /// The least.
    pub low: f64,
    /// What the simulation gives.
    pub likely: f64,
    /// The most.
    pub high: f64,
    /// Where the range comes from, with its figures.
    pub reason: Message,
}

impl Expected {
    /// A figure of it as a quantity.
    pub fn quantity(&self, base: f64) -> Quantity {
        let unit = self.reading.base_unit();
        Quantity::new(unit.from_base(base), unit)
    }
}

/// A figure over its plausible range: least, likely, most.
pub(super) type Span = [f64; 3];

pub(super) fn around(value: f64, by: f64) -> Span {
    [value - by, value, value + by]
}

pub(super) fn within(x: f64, low: f64, high: f64) -> f64 {
    if x < low {
        low
    } else if x > high {
        high
    } else {
        x
    }
}

/// The least and the most of some figures; `None` where there is none.
pub(super) fn hull(all: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    all.fold(None, |so_far, x| match so_far {
        None => Some((x, x)),
        Some((low, high)) => Some((if x < low { x } else { low }, if x > high { x } else { high })),
    })
}

pub(super) fn celsius(t_c: f64) -> Arg {
    Arg::Quantity(Quantity::new(t_c, Unit::DegC))
}

/// The heater calibrated to its label, at the household's setting. Takes a while: worth keeping.
pub fn calibrated(fitted: &Fitted) -> Model {
    calibrate(&fitted.candidate.label, to_celsius(fitted.case.heater.setpoint.value)).model
}

impl<'a> Start<'a> {
    /// Calibrates the heater to its label and puts it into its room on a day.
    pub fn new(fitted: Fitted<'a>, date: Date) -> Start<'a> {
        Start::with(calibrated(&fitted), fitted, date)
    }

    /// The same with a heater that is calibrated already ([`calibrated`]).
    pub fn with(model: Model, fitted: Fitted<'a>, date: Date) -> Start<'a> {
        Start {
            model,
            room: RoomModel::of(&fitted.case.room, &fitted.case.place, 0.0),
            day: date.of_year(),
            fitted,
        }
    }

    /// The readings that such a heater has, in the order in which they are taken.
    pub fn readings(&self) -> Vec<Reading> {
        let (pump, power) = (self.model.pump().is_some(), self.nominal_volts() > 0.0);
        let has = |r: &Reading| match r {
            Reading::Pressure | Reading::HeatTime | Reading::TankTop | Reading::Tap => true,
            Reading::Volts => power,
            Reading::AmpsElements => elements(self, &Taken::default()).is_some(),
            Reading::SoundNear | Reading::SoundNext => {
                pump && self.fitted.candidate.body.sound_power_db > 0.0
            }
            Reading::AirIn
            | Reading::AirOut
            | Reading::Water
            | Reading::AmpsPump
            | Reading::Condensate
            | Reading::CondensateTime => pump,
        };
        Reading::ALL.iter().copied().filter(has).collect()
    }

    /// Nominal volts at the heater; 0 where it takes none.
    pub fn nominal_volts(&self) -> f64 {
        let body = self.fitted.candidate.body.volts;
        if body > 200.0 && matches!(self.fitted.case.circuit.supply.value, Supply::V208) {
            208.0
        } else {
            body
        }
    }

    /// Temperature of the room by day on this day, °C, with the heater's own cooling.
    pub(super) fn air_c(&self) -> Span {
        let day = self.day.index() as f64;
        let hours = (7..=19).map(|h| self.room.undisturbed_c(day, f64::from(h)));
        let (least, most) = hull(hours).unwrap_or_default();
        let room = &self.fitted.case.room;
        let unsure = match room.winter.from.min(room.summer.from) {
            Provenance::Assumed => 5.0,
            Provenance::Answered => 3.0,
            Provenance::Measured => 1.5,
        };
        let of_day = |series: &[f32]| series.get(self.day.index()).copied().map(f64::from);
        let year = self.fitted.year;
        let cooled = of_day(&year.room_undisturbed_c).zip(of_day(&year.room_c)).map_or(0.0, |(a, b)| a - b);
        let cooled = if cooled > 0.0 { cooled } else { 0.0 };
        [least - unsure - cooled, 0.5 * (least + most), most + unsure]
    }

    /// Cold water of this day, °C.
    pub(super) fn cold_c(&self) -> Span {
        let cold = self.fitted.mains_c.get(self.day.index()).copied().map_or(12.0, f64::from);
        let unsure = match self.fitted.case.place.cold_water_shift.from {
            Provenance::Measured => 1.5,
            _ => 3.0,
        };
        let least = if cold - unsure > 0.5 { cold - unsure } else { 0.5 };
        [if least < cold { least } else { cold }, cold, cold + unsure]
    }

    /// Humidity ratios of the room's air at a temperature, kg/kg.
    pub(super) fn humidity(&self, t_c: f64) -> Span {
        let w = self.room.undisturbed_w(self.day.index() as f64);
        let share = if self.fitted.case.room.dampness.is_assumed() { 0.4 } else { 0.25 };
        // Room air that is colder than thought holds no more than it can.
        let most = 0.97 * saturation_humidity_ratio(t_c, self.room.pressure_pa);
        let held = |w: f64| if w < most { w } else { most };
        [held(w * (1.0 - share)), held(w), held(w * (1.0 + share))]
    }

    pub(super) fn air(&self, t_c: f64, w: f64) -> Air {
        Air { t_c, w, pressure_pa: self.room.pressure_pa }
    }

    pub(super) fn volts(&self, taken: &Taken) -> Span {
        let nominal = self.nominal_volts();
        match taken.get(Reading::Volts) {
            Some(v) => around(v, 0.01 * v),
            None => [nominal * VOLTS_SHARE.0, nominal, nominal * VOLTS_SHARE.1],
        }
    }

    pub(super) fn setpoint_c(&self) -> f64 {
        self.model.setpoint_c
    }
}

/// Every reading that this heater has, with its range, in the order in which they are taken.
///
/// Readings already taken narrow those that follow from them.
pub fn expected(start: &Start, taken: &Taken) -> Vec<Expected> {
    let mut all = vec![pressure(start)];
    if start.nominal_volts() > 0.0 {
        all.push(volts(start));
    }
    pumped::heat_pump(start, taken, &mut all);
    all.extend(elements(start, taken));
    all.push(heat_time(start, taken));
    all.extend(hot_water(start, taken));
    let place = |e: &Expected| Reading::ALL.iter().position(|r| *r == e.reading);
    let mut sorted: Vec<Expected> = Vec::with_capacity(all.len());
    for e in all {
        let at = sorted.partition_point(|before| place(before) <= place(&e));
        sorted.insert(at, e);
    }
    sorted
}

fn pressure(start: &Start) -> Expected {
    let rule = US.pressure_pa.is;
    let said = start.fitted.case.site.pressure_pa;
    let gauge = 5.0 * PSI_PA;
    // Where it was too high, a pressure-reducing valve goes in with the heater.
    let reduced = said.low > rule;
    let (low, likely, high) = if reduced {
        (40.0 * PSI_PA, practice::REDUCED_PA, rule)
    } else {
        (said.low - gauge, said.value, said.high + gauge)
    };
    let (low, high) =
        (if low > 20.0 * PSI_PA { low } else { 20.0 * PSI_PA }, if high < rule { high } else { rule });
    let id = if reduced { "start-why-pressure-reduced" } else { "start-why-pressure" };
    let reason = Message::new(id).quantity("most", rule / PSI_PA, Unit::Psi);
    Expected { reading: Reading::Pressure, low, likely: within(likely, low, high), high, reason }
}

fn volts(start: &Start) -> Expected {
    let [low, likely, high] = start.volts(&Taken::default());
    let reason = Message::new("start-why-volts").quantity("nominal", likely, Unit::Volt);
    Expected { reading: Reading::Volts, low, likely, high, reason }
}

/// Current of one element: a resistance made for the nameplate's volts.
fn elements(start: &Start, taken: &Taken) -> Option<Expected> {
    let label = &start.fitted.candidate.label;
    let rated_w = label.input.get::<watt>();
    let (made_for, v) = (start.fitted.candidate.body.volts, start.volts(taken));
    if !matches!(label.kind, HeaterKind::Electric | HeaterKind::HeatPump) || rated_w <= 0.0 || made_for <= 0.0
    {
        return None;
    }
    let amps = |v: f64| rated_w * v / (made_for * made_for);
    let reason = Message::new("start-why-amps-elements")
        .quantity("rated", rated_w, Unit::Watt)
        .quantity("made", made_for, Unit::Volt)
        .quantity("volts", v[1], Unit::Volt);
    Some(Expected {
        reading: Reading::AmpsElements,
        low: amps(v[0]) * ELEMENT_SHARE.0 * (1.0 - CLAMP_SHARE),
        likely: amps(v[1]),
        high: amps(v[2]) * ELEMENT_SHARE.1 * (1.0 + CLAMP_SHARE),
        reason,
    })
}

/// From a tank full of cold water to the first cut-out, nobody drawing.
fn heat_time(start: &Start, taken: &Taken) -> Expected {
    let (room, cold) = (start.air_c(), start.cold_c());
    let air_in = taken.get(Reading::AirIn).map_or(room, |k| around(k - ZERO_C_K, THERMOMETER_K));
    let time =
        |model: &Model, t: f64, cold: f64| heat_time_s(model, start.air(t, start.humidity(t)[1]), cold);
    let likely = time(&start.model, air_in[1], cold[1]);
    let mut times = vec![likely];
    // Whether the elements help at the start is the mode's to say.
    for model in [start.model.clone(), without_elements(&start.model)] {
        for t in [air_in[0], air_in[2]] {
            for cold in [cold[0], cold[2]] {
                times.push(time(&model, t, cold));
            }
        }
    }
    let (least, most) = hull(times.into_iter()).unwrap_or_default();
    let reason = Message::new("start-why-heat-time")
        .with("cold", celsius(cold[1]))
        .with("set", celsius(start.setpoint_c()))
        .with("air", celsius(air_in[1]));
    Expected { reading: Reading::HeatTime, low: 0.85 * least, likely, high: 1.2 * most, reason }
}

/// Top of the tank and tap, once the thermostat has cut out.
fn hot_water(start: &Start, taken: &Taken) -> [Expected; 2] {
    let (set, deadband) = (start.setpoint_c() + ZERO_C_K, start.model.deadband_k);
    let top = [set - deadband - 2.0, set, set + 4.0];
    let reason = Message::new("start-why-tank-top")
        .with("set", celsius(start.setpoint_c()))
        .with("band", Quantity::new(deadband, Unit::Kelvin));
    let tank_top = Expected { reading: Reading::TankTop, low: top[0], likely: top[1], high: top[2], reason };
    let top = taken.get(Reading::TankTop).map_or(top, |k| around(k, THERMOMETER_K));
    let straight = [top[0] - 4.0, top[1] - 1.0, top[2]];
    let valve = US.tap_c.is + ZERO_C_K;
    let mixed = around(valve, 4.0);
    let site = start.fitted.case.site.mixing_valve;
    let put_in = start
        .fitted
        .findings
        .iter()
        .filter(|f| f.work.iter().any(|w| w.kind == WorkKind::MixingValve))
        .map(|f| f.likely)
        .max();
    let there = matches!(site.value, YesNo::Yes) || put_in.is_some_and(|likely| likely > Fit::Fits);
    let may_be = put_in.is_some() || site.is_assumed();
    let (id, [low, likely, high]) = match (there, may_be) {
        // A valve only ever makes it cooler: what the tank has is the most.
        (true, _) => ("start-why-tap-mixed", mixed.map(|t| if t < straight[2] { t } else { straight[2] })),
        (false, true) => {
            let low = if mixed[0] < straight[0] { mixed[0] } else { straight[0] };
            ("start-why-tap-maybe", [low, straight[1], straight[2]])
        }
        (false, false) => ("start-why-tap", straight),
    };
    let reason =
        Message::new(id).with("mixed", celsius(US.tap_c.is)).with("set", celsius(start.setpoint_c()));
    [tank_top, Expected { reading: Reading::Tap, low, likely, high, reason }]
}
