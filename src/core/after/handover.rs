//! What the household must know: what was installed, how it is set, what is normal, what to do when, and what it
//! should use month by month. Everything follows from the kind of heater and the case.

use super::care::{self, Due, Task};
use super::{Date, Fitted};
use crate::core::case::{HeaterKind, YesNo};
use crate::core::checks::rules::us::US;
use crate::core::message::{Arg, Message};
use crate::core::money::energy_price::{electricity, fuel};
use crate::core::units::{Quantity, Unit, to_celsius};
use crate::core::work::WorkKind;

/// What the heater should use in a month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MonthExpected {
    /// Electricity, kWh.
    pub electricity_kwh: f64,
    /// Fuel at its higher heating value, kWh.
    pub fuel_kwh: f64,
    /// What both cost, dollars.
    pub money: f64,
}

/// A part of the page for the household.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// What was installed and how it is set.
    Settings,
    /// What it sounds, feels and drips like when all is well.
    Normal,
    /// Going away.
    Away,
    /// The power is off.
    PowerCut,
    /// When to call somebody.
    Call,
    /// Scalding, setpoint, mains power, fuel.
    Cautions,
}

impl Topic {
    /// Every part, in order.
    pub const ALL: [Topic; 6] =
        [Topic::Settings, Topic::Normal, Topic::Away, Topic::PowerCut, Topic::Call, Topic::Cautions];

    /// The code in files.
    pub const fn code(self) -> &'static str {
        match self {
            Topic::Settings => "settings",
            Topic::Normal => "normal",
            Topic::Away => "away",
            Topic::PowerCut => "power_cut",
            Topic::Call => "call",
            Topic::Cautions => "cautions",
        }
    }

    /// The key of its heading.
    pub const fn key(self) -> &'static str {
        match self {
            Topic::Settings => "handover-settings",
            Topic::Normal => "handover-normal",
            Topic::Away => "handover-away",
            Topic::PowerCut => "handover-power-cut",
            Topic::Call => "handover-call",
            Topic::Cautions => "handover-cautions",
        }
    }
}

/// The page for the household.
#[derive(Clone, Debug, PartialEq)]
pub struct Handover {
    /// What was installed, and when.
    pub installed: Message,
    /// What it says by part.
    pub topics: Vec<(Topic, Vec<Message>)>,
    /// What it should use, January first.
    pub months: [MonthExpected; 12],
    /// What to see to, and when.
    pub care: Vec<Due>,
}

impl Handover {
    /// The year's expected electricity in kWh, fuel in kWh and money in dollars.
    pub fn year(&self) -> MonthExpected {
        let mut sum = MonthExpected { electricity_kwh: 0.0, fuel_kwh: 0.0, money: 0.0 };
        for m in &self.months {
            sum.electricity_kwh += m.electricity_kwh;
            sum.fuel_kwh += m.fuel_kwh;
            sum.money += m.money;
        }
        sum
    }
}

/// What a heater should use, month by month.
pub fn months(fitted: &Fitted) -> [MonthExpected; 12] {
    let prices = &fitted.case.prices;
    let burned = fuel(fitted.candidate.label.kind, prices).price;
    std::array::from_fn(|m| {
        let (electricity_kwh, fuel_kwh) = (fitted.year.electricity_kwh[m], fitted.year.fuel_kwh[m]);
        let grid = electricity(prices, fitted.year.peak_share[m]).price;
        MonthExpected { electricity_kwh, fuel_kwh, money: electricity_kwh * grid + fuel_kwh * burned }
    })
}

/// The page for the household.
pub fn handover(fitted: &Fitted, installed: Date) -> Handover {
    let said = Message::new("handover-installed")
        .with("heater", fitted.candidate.name())
        .with("date", Arg::Verbatim(installed.iso()));
    Handover {
        installed: said,
        topics: Topic::ALL.into_iter().map(|topic| (topic, says(fitted, topic))).collect(),
        months: months(fitted),
        care: care::schedule(fitted, installed),
    }
}

/// What a part says of this heater in this house.
fn says(fitted: &Fitted, topic: Topic) -> Vec<Message> {
    let kind = fitted.candidate.label.kind;
    let pump = matches!(kind, HeaterKind::HeatPump);
    let burns = matches!(kind, HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil);
    let gas = matches!(kind, HeaterKind::Gas | HeaterKind::Propane);
    let plug = fitted.candidate.is_plug_in();
    let set = Quantity::new(to_celsius(fitted.case.heater.setpoint.value), Unit::DegC);
    let valve =
        fitted.case.site.mixing_valve.value == YesNo::Yes || fitted.work(WorkKind::MixingValve).is_some();
    let drain_pump = fitted.work(WorkKind::CondensatePump).is_some();
    let mut all = Vec::new();
    let mut say = |when: bool, id: &'static str| {
        if when {
            all.push(Message::new(id));
        }
    };
    match topic {
        Topic::Settings => {
            all.push(Message::new("handover-set").with("set", set));
            let mut say = |when: bool, id: &'static str| {
                if when {
                    all.push(Message::new(id));
                }
            };
            say(pump && !plug, "handover-mode");
            say(plug, "handover-mode-plug-in");
            say(valve, "handover-valve");
        }
        Topic::Normal => {
            if pump {
                let year: f64 = fitted.year.condensate_l.iter().sum();
                let day = fitted.year.condensate_worst_day_l;
                let dips = lowest_dip_k(fitted);
                say(true, "handover-normal-hum");
                all.push(
                    Message::new("handover-normal-cool").with("drop", Quantity::new(dips, Unit::Kelvin)),
                );
                let id = if drain_pump { "handover-normal-drips-pump" } else { "handover-normal-drips" };
                let drips =
                    Message::new(id).quantity("year", year, Unit::Litre).quantity("day", day, Unit::Litre);
                all.push(drips);
                all.push(Message::new("handover-normal-slow"));
            } else {
                say(burns, "handover-normal-burner");
                say(!burns, "handover-normal-ticks");
            }
        }
        Topic::Away => {
            say(pump, "handover-away-mode");
            say(!pump, "handover-away-low");
            say(true, "handover-away-back");
            say(true, "handover-away-frost");
        }
        Topic::PowerCut => {
            say(pump && !plug, "handover-power-pump");
            say(plug, "handover-power-plug-in");
            say(matches!(kind, HeaterKind::Electric), "handover-power-electric");
            say(gas, "handover-power-gas");
            say(matches!(kind, HeaterKind::Oil), "handover-power-oil");
            say(true, "handover-power-empty");
        }
        Topic::Call => {
            say(true, "handover-call-water");
            say(true, "handover-call-relief");
            say(true, "handover-call-too-hot");
            say(pump, "handover-call-noise");
            say(pump, "handover-call-code");
            say(gas, "handover-call-gas");
            say(burns, "handover-call-fumes");
            say(!burns, "handover-call-trips");
        }
        Topic::Cautions => {
            let hot = to_celsius(fitted.case.heater.setpoint.value) > US.tap_c.is + 0.5;
            let id = match (hot, valve) {
                (true, false) => "handover-caution-hot",
                (true, true) => "handover-caution-hot-valve",
                (false, _) => "handover-caution-raise",
            };
            all.push(Message::new(id).with("set", set));
            all.push(Message::new("handover-caution-lower"));
            all.push(Message::new("handover-caution-covers"));
            all.push(Message::new("handover-caution-relief"));
        }
    }
    all
}

/// How far the heater cools its room, at the most of the year, K.
fn lowest_dip_k(fitted: &Fitted) -> f64 {
    let pairs = fitted.year.room_undisturbed_c.iter().zip(&fitted.year.room_c);
    pairs.map(|(a, b)| f64::from(a - b)).fold(0.0, |most, k| if k > most { k } else { most })
}

/// Whether a task is for the household itself.
pub fn is_own(due: &Due) -> bool {
    due.hands == care::Hands::Household && due.task != Task::Meter
}
