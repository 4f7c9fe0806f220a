//! What moves a heater's year, as a few physical figures of case and candidate: a first estimate of its energy, and
//! coordinates in which what is left to learn is smooth.
//!
//! The estimate is the heat asked for and the heat lost, through the efficiency with which it is burned. The
//! coordinates are what makes a year depart from that: how much of a tank a shower takes and how many come in a day
//! (elements, and water that runs out), how far a heat pump pulls its room down over the day and while it runs, how
//! long its air is too cold for it. All of it costs microseconds; the response ([`super::response`]) learns the rest
//! from simulated years.

use crate::core::candidates::{Candidate, Label, offered};
use crate::core::case::{Case, HeaterKind};
use crate::core::climate::{mains::Mains, outdoor::OutdoorYear};
use crate::core::draws::daily_use::USE_C;
use crate::core::draws::{Fixture, HouseholdUse};
use crate::core::label::ageing::Wear;
use crate::core::label::class;
use crate::core::label::patterns::Pattern;
use crate::core::label::rating_test::{AIR_C, DELIVERED_C, RISE_K};
use crate::core::room::model::RoomModel;
use crate::core::simulate::year::{COOLED_ABOVE_C, HEATED_BELOW_C};
use crate::core::units::{GALLON_M3, to_celsius};
use serde::{Deserialize, Serialize};
use uom::si::power::watt;
use uom::si::volume::cubic_meter;

/// How many coordinates there are; a kind of heater that needs fewer leaves the last at 0.
pub const COUNT: usize = 20;

/// Heat of a cubic metre of water a kelvin, kWh.
const KWH_PER_M3_K: f64 = 998.0 * 4_184.0 / 3.6e6;
/// Share of the difference between setpoint and room at which a tank stands over a year: draws cool its foot.
const STANDING_SHARE: f64 = 0.88;
/// Hours of a year over a thousand.
const KILOHOURS: f64 = 8.76;
/// Of a nominal volume, what comes out hot before the outlet cools.
const USABLE_SHARE: f64 = 0.75;
/// Of the heat a heat pump gives, what it takes out of the air.
const FROM_AIR: f64 = 0.67;
/// Heat taken from the air while the machine runs, W.
const TAKEN_RUNNING_W: f64 = 1_100.0;
/// Air below which heat pumps are locked out, °C (37 °F).
const LOCKED_OUT_C: f64 = 2.8;
/// A room is not pulled down further than this by day, and while the machine runs, K.
const MOST_PULL_K: f64 = 15.0;
const MOST_RUNNING_PULL_K: f64 = 25.0;
/// Days from 0 with the driest and the dampest air.
const WINTER_DAY: f64 = 30.0;
const SUMMER_DAY: f64 = 212.0;

/// The part that all candidates share.
#[derive(Clone, Debug)]
pub struct House {
    used: HouseholdUse,
    /// kWh a year, mixed water and hot.
    asked_kwh: f64,
    setpoint_c: f64,
    cold_c: f64,
    cold_swing_k: f64,
    room: RoomModel,
    room_c: f64,
    /// Half the difference between summer and winter, K.
    room_swing_k: f64,
    winter_c: f64,
    damp_g: f64,
    /// What the present heater gives its room, W.
    present_w: f64,
    /// Shares of the year in which the house is heated, and cooled.
    seasons: [f64; 2],
}

/// A first estimate and the coordinates.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Seen {
    /// Estimate of a year's energy, kWh.
    pub estimate_kwh: f64,
    /// Heat asked for and lost, kWh: what room and house exchange goes by.
    pub heat_kwh: f64,
    /// Estimates of the heat that the house's heating makes up, and that its cooling is spared, kWh.
    pub house_kwh: [f64; 2],
    /// The coordinates, each in units in which years differ noticeably.
    pub at: [f64; COUNT],
}

impl House {
    /// Of a case.
    pub fn of(case: &Case) -> House {
        let used = HouseholdUse::of(&case.household);
        let mixed_m3 =
            used.showers_per_day * used.shower_m3 + used.baths_per_day * used.bath_m3 + used.sinks_m3_per_day;
        let hot_m3 = used.dishwasher_per_day * used.volume_m3(Fixture::Dishwasher)
            + used.hot_washes_per_day * used.volume_m3(Fixture::ClothesWasher);
        let mains = Mains::from_outdoor(case.place.outdoor_mean.value, case.place.outdoor_range.value)
            .shifted(case.place.cold_water_shift.value);
        let cold_c = to_celsius(mains.annual_mean());
        let setpoint_c = to_celsius(case.heater.setpoint.value);
        let use_c = if setpoint_c < USE_C { setpoint_c } else { USE_C };
        let daily_kwh =
            KWH_PER_M3_K * (mixed_m3 * above(use_c - cold_c, 1.0) + hot_m3 * above(setpoint_c - cold_c, 1.0));
        let room = RoomModel::of(&case.room, &case.place, 0.0);
        let (winter, summer) = (to_celsius(case.room.winter.value), to_celsius(case.room.summer.value));
        let room_c = 0.5 * (winter + summer);
        let kept = offered::candidates(case).swap_remove(0).label;
        let (wear, recovery) = worn(case, &kept);
        let present_w = worn_w_per_k(&kept, &wear, recovery) * (setpoint_c - room_c);
        let outdoor = OutdoorYear::new(case.place.outdoor_mean.value, case.place.outdoor_range.value);
        let below = |limit_c: f64| {
            let swing = above(0.5 * outdoor.range_k(), 0.1);
            libm::acos(((outdoor.mean_c() - limit_c) / swing).clamp(-1.0, 1.0)) / std::f64::consts::PI
        };
        House {
            present_w: above(present_w, 0.0),
            seasons: [below(HEATED_BELOW_C), 1.0 - below(COOLED_ABOVE_C)],
            asked_kwh: 365.0 * above(daily_kwh, 0.05),
            setpoint_c,
            cold_c,
            cold_swing_k: cold_c - to_celsius(mains.on(mains.coldest_day())),
            room_c,
            room_swing_k: 0.5 * (summer - winter),
            winter_c: winter,
            damp_g: 500.0 * (room.undisturbed_w(WINTER_DAY) + room.undisturbed_w(SUMMER_DAY)),
            room,
            used,
        }
    }

    /// Of a candidate there; `present` wears what its years have done to it.
    pub fn with(&self, case: &Case, candidate: &Candidate, present: bool) -> Seen {
        let label = &candidate.label;
        let (wear, recovery) = match present {
            true => worn(case, label),
            false => (Wear::NONE, class::recovery_efficiency(label.kind, label.uniform_energy_factor)),
        };
        let lost_w = worn_w_per_k(label, &wear, recovery) * above(self.setpoint_c - self.room_c, 1.0);
        let heat_kwh = self.asked_kwh + lost_w * KILOHOURS * STANDING_SHARE;
        let heats = label.kind == HeaterKind::HeatPump;
        let estimate_kwh = match label.kind {
            HeaterKind::Electric => heat_kwh,
            HeaterKind::HeatPump => heat_kwh / label.uniform_energy_factor,
            HeaterKind::Gas | HeaterKind::Propane | HeaterKind::Oil => heat_kwh / (recovery * wear.recovery),
        };
        let at = if heats { self.pump(label, heat_kwh) } else { self.tank(label, heat_kwh, lost_w, &wear) };
        let taken_w = if heats { FROM_AIR * heat_kwh / KILOHOURS } else { 0.0 };
        let from_house = self.room.to_house_w_per_k / self.room.conductance_w_per_k();
        let house_kwh =
            self.seasons.map(|share| share * KILOHOURS * from_house * (self.present_w + taken_w - lost_w));
        Seen { estimate_kwh, heat_kwh, house_kwh, at }
    }

    /// Hot water of a shower and a bath over what a tank gives, and how they come: shares, a day, flow.
    fn draws(&self, label: &Label) -> [f64; 5] {
        let u = &self.used;
        let hot = above(USE_C - self.cold_c, 1.0) / above(self.setpoint_c - self.cold_c, 2.0);
        let usable = USABLE_SHARE * label.nominal_volume.get::<cubic_meter>();
        let shower = u.shower_m3 * hot / usable;
        [
            libm::log(shower) / 0.6,
            libm::log((u.showers_per_day + 0.05) * shower) / 0.7,
            u.baths_per_day / 0.3,
            u.bath_m3 * hot / usable / 0.3,
            libm::log(u.shower_flow) / 0.5,
        ]
    }

    fn pump(&self, label: &Label, heat_kwh: f64) -> [f64; COUNT] {
        let mean_w = heat_kwh / KILOHOURS;
        let output_w = above(label.heat_pump_output.get::<watt>(), 500.0);
        let conductance = self.room.conductance_w_per_k();
        let pull = MOST_PULL_K * libm::tanh(FROM_AIR * mean_w / conductance / MOST_PULL_K);
        let air_c = self.room_c - pull;
        let swing = above(self.room_swing_k.abs(), 0.5);
        let cold_share = libm::acos(((air_c - LOCKED_OUT_C) / swing).clamp(-1.0, 1.0)) / std::f64::consts::PI;
        // Heat that the room can give for ever before it is too cold, over what is asked: below 1 it is what counts.
        let supply = |room_c: f64| {
            let share = above(conductance * (room_c - LOCKED_OUT_C), 1.0) / (FROM_AIR * mean_w);
            -0.5 * libm::log1p(1.0 / (share * share))
        };
        let run_s = 0.5 * mean_w * 86_400.0 / output_w;
        let running =
            TAKEN_RUNNING_W / conductance * -libm::expm1(-run_s * conductance / self.room.capacity_j_per_k);
        let running = if running < MOST_RUNNING_PULL_K { running } else { MOST_RUNNING_PULL_K };
        let [shower, showers, baths, bath, flow] = self.draws(label);
        [
            libm::log(mean_w / output_w) / 0.6,
            air_c / 6.0,
            self.room_swing_k / 4.0,
            cold_share / 0.2,
            self.setpoint_c / 6.0,
            self.damp_g / 2.5,
            shower,
            showers,
            baths,
            bath,
            flow,
            self.cold_c / 6.0,
            self.cold_swing_k / 4.0,
            supply(self.winter_c) / 0.4,
            supply(self.room_c) / 0.4,
            running / 6.0,
            libm::log(label.uniform_energy_factor) / 0.1,
            libm::log(label.nominal_volume.get::<cubic_meter>()) / 0.4,
            libm::log(above(label.first_hour_rating.get::<cubic_meter>(), 0.01)) / 0.3,
            0.0,
        ]
    }

    fn tank(&self, label: &Label, heat_kwh: f64, lost_w: f64, wear: &Wear) -> [f64; COUNT] {
        let volume_m3 = label.nominal_volume.get::<cubic_meter>();
        let [shower, showers, baths, bath, flow] = self.draws(label);
        [
            libm::log(self.asked_kwh / volume_m3) / 0.5,
            libm::log(lost_w * KILOHOURS / heat_kwh) / 0.5,
            self.setpoint_c / 6.0,
            self.room_c / 6.0,
            self.room_swing_k / 4.0,
            shower,
            showers,
            baths,
            bath,
            flow,
            libm::log(label.uniform_energy_factor) / 0.1,
            libm::log(wear.recovery) / 0.05,
            (wear.jacket - 1.0) / 0.5,
            libm::log(above(label.input.get::<watt>(), 100.0)) / 0.3,
            libm::log(self.room.conductance_w_per_k()) / 2.0,
            self.cold_c / 6.0,
            self.cold_swing_k / 4.0,
            libm::log(above(label.first_hour_rating.get::<cubic_meter>(), 0.01) / volume_m3) / 0.2,
            libm::log(volume_m3) / 0.4,
            0.0,
        ]
    }
}

/// The loss that gives a label its factor, W/K: what the rating test's day uses beyond its hot water.
fn standby_w_per_k(label: &Label, recovery: f64) -> f64 {
    let volume_m3 = label.nominal_volume.get::<cubic_meter>();
    if label.kind == HeaterKind::HeatPump {
        return class::standby_w_per_k(label.kind, volume_m3);
    }
    let pattern = Pattern::for_first_hour(label.first_hour_rating.get::<cubic_meter>());
    let drawn_kwh = pattern.daily_gal() * GALLON_M3 * KWH_PER_M3_K * RISE_K;
    let lost_kwh = drawn_kwh * (recovery / above(label.uniform_energy_factor, 0.2) - 1.0);
    let least = 0.3 * class::standby_w_per_k(HeaterKind::Electric, volume_m3);
    above(lost_kwh * 1e3 / 24.0 / (DELIVERED_C - AIR_C), least)
}

/// What the present heater's years have done to it, and its burner's recovery when new.
fn worn(case: &Case, label: &Label) -> (Wear, f64) {
    let recovery = class::recovery_efficiency(label.kind, label.uniform_energy_factor);
    (Wear::of(&case.heater, recovery), recovery)
}

/// The loss with what wear adds to it, W/K.
fn worn_w_per_k(label: &Label, wear: &Wear, recovery: f64) -> f64 {
    standby_w_per_k(label, recovery) + jacket_w_per_k(label) * (wear.jacket - 1.0)
}

/// The jacket's part of it, as [`Wear`] counts it.
fn jacket_w_per_k(label: &Label) -> f64 {
    class::standby_w_per_k(HeaterKind::Electric, label.nominal_volume.get::<cubic_meter>())
}

fn above(value: f64, least: f64) -> f64 {
    if value > least { value } else { least }
}
