//! A room as one body of air and walls: what it exchanges with the house, the ground and outdoors.
//!
//! Areas follow from the volume, taken as a square plan of usual height. Heat transfer coefficients are
//! round handbook-like figures for ordinary construction (common practice, no source); the room's
//! undisturbed temperature is the answer's, so that only the heater's *change* of it rests on them.

use super::typical;
use crate::core::case::{self, Dampness, DoorKind, RoomKind};
use crate::core::heater::Model;
use crate::core::moist_air::{
    humidity_ratio_from_relative_humidity, pressure_at_elevation_pa, saturation_humidity_ratio,
};
use crate::core::site::Ducts;
use crate::core::units::to_celsius;
use uom::si::{length::meter, volume::cubic_meter};

/// Smallest room the physics is done for, m³: less than this does not hold a heater.
pub const SMALLEST_M3: f64 = 1.5;
const HEIGHT_M: f64 = 2.3;
pub(in crate::core) const AIR_J_PER_M3_K: f64 = 1_206.0;
/// The hygroscopic surfaces of a room hold about this many times its air's moisture, for changes over
/// hours to days; common practice, no source.
const MOISTURE_BUFFER: f64 = 5.0;
/// Day of the year (from 0) on which rooms are coldest: end of January, some days after outdoors.
const COLDEST_DAY: f64 = 30.0;
/// Half the daily swing outdoors, K; common practice, no source.
const DAILY_SWING_K: f64 = 5.0;
/// Hour of the day at which it is warmest.
const WARMEST_HOUR: f64 = 16.0;

/// Figures of a room.
#[derive(Clone, Debug, PartialEq)]
pub struct RoomModel {
    /// Conductance to the heated house, air exchange included, W/K.
    pub to_house_w_per_k: f64,
    /// Conductance to the ground and outdoors, W/K.
    pub to_outside_w_per_k: f64,
    /// Heat held, J/K.
    pub capacity_j_per_k: f64,
    /// Air exchanged, m³/s.
    pub exchange_m3_per_s: f64,
    /// Air that the room's moisture amounts to, m³.
    pub moisture_m3: f64,
    /// Air pressure, Pa.
    pub pressure_pa: f64,
    /// Heat that the present heater gives the room in its undisturbed state, W.
    pub reference_gain_w: f64,
    /// Where a heat pump's air comes from and goes to.
    pub ducts: Ducts,
    winter_c: f64,
    summer_c: f64,
    winter_dew_c: f64,
    summer_dew_c: f64,
    /// Departure from the day's mean at each hour, K.
    swing_k: [f64; 24],
    dampness: Dampness,
}

impl RoomModel {
    /// The room of a case. `reference_gain_w`: what the present heater loses to it.
    pub fn of(room: &case::Room, place: &case::Place, reference_gain_w: f64) -> Self {
        let asked = room.volume.value.get::<cubic_meter>();
        let volume = if asked > SMALLEST_M3 { asked } else { SMALLEST_M3 };
        let floor = volume / HEIGHT_M;
        let side = libm::sqrt(floor);
        let walls = 4.0 * side * HEIGHT_M;
        // W/(m²·K): a partition or floor between rooms about 1.5; ground behind concrete 0.5; an
        // insulated ceiling 0.3; a plain outside wall or roof 1.2.
        let (house, outside, held) = match room.kind.value {
            RoomKind::Basement => (1.5 * floor, 0.5 * (floor + walls), 120e3),
            RoomKind::Garage => (0.5 * walls / 4.0, 1.2 * (0.75 * walls + floor), 60e3),
            RoomKind::Utility | RoomKind::Closet => (1.5 * (walls + floor), 0.2 * walls, 25e3),
            RoomKind::Crawlspace => (1.0 * floor, 0.5 * (floor + walls), 100e3),
            RoomKind::Attic => (0.3 * floor, 1.2 * 1.3 * floor, 25e3),
        };
        // m³/h through the door, and 0.3 air changes an hour of its own.
        let door = match room.door.value {
            DoorKind::Solid => 8.0,
            DoorKind::Undercut => 30.0,
            DoorKind::Louvred => 250.0,
            DoorKind::Open => 800.0,
        };
        let own = 0.3 * volume;
        let swing_k = DAILY_SWING_K * typical::outdoor_share(room.kind.value);
        Self {
            to_house_w_per_k: house + door * AIR_J_PER_M3_K / 3600.0,
            to_outside_w_per_k: outside + own * AIR_J_PER_M3_K / 3600.0,
            capacity_j_per_k: volume * AIR_J_PER_M3_K + held * (walls + 2.0 * floor),
            exchange_m3_per_s: (door + own) / 3600.0,
            moisture_m3: MOISTURE_BUFFER * volume,
            pressure_pa: pressure_at_elevation_pa(place.elevation.value.get::<meter>()),
            reference_gain_w,
            ducts: Ducts::None,
            winter_c: to_celsius(room.winter.value),
            summer_c: to_celsius(room.summer.value),
            winter_dew_c: to_celsius(place.winter_dew_point.value),
            summer_dew_c: to_celsius(place.summer_dew_point.value),
            swing_k: std::array::from_fn(|hour| {
                swing_k * libm::cos((hour as f64 - WARMEST_HOUR) / 24.0 * std::f64::consts::TAU)
            }),
            dampness: room.dampness.value,
        }
    }

    /// Says that its answered temperature is with the present heater in it: that one's loss belongs to it.
    pub fn has_its_heater(&mut self, present: &Model) {
        let mean_c = 0.5 * (self.undisturbed_c(30.0, 10.0) + self.undisturbed_c(212.0, 10.0));
        let gain = present.standby_w_per_k * (present.setpoint_c - mean_c);
        self.reference_gain_w = if gain > 0.0 { gain } else { 0.0 };
    }

    /// Conductance to everything, W/K.
    pub fn conductance_w_per_k(&self) -> f64 {
        self.to_house_w_per_k + self.to_outside_w_per_k
    }

    /// Undisturbed temperature, °C, at an hour of a day (both from 0): a yearly sinusoid between the
    /// answers' winter and summer, and a share of the outdoors' daily swing.
    pub fn undisturbed_c(&self, day: f64, hour: f64) -> f64 {
        self.undisturbed_mean_c(day) + self.swing_k(hour)
    }

    /// Undisturbed mean temperature of a day, °C.
    pub fn undisturbed_mean_c(&self, day: f64) -> f64 {
        self.winter_c + (self.summer_c - self.winter_c) * season(day)
    }

    /// How far an hour (from 0; its fraction is left out) departs from the day's mean, K.
    pub fn swing_k(&self, hour: f64) -> f64 {
        self.swing_k.get(hour as i32 as usize).copied().unwrap_or_default()
    }

    /// Undisturbed humidity ratio, kg/kg, on a day: outdoor air with what a house adds, held below the
    /// relative humidity that its dampness stands for.
    pub fn undisturbed_w(&self, day: f64) -> f64 {
        self.moisture(day, self.undisturbed_mean_c(day), self.dampness)
    }

    /// The house's air on a day, °C and kg/kg: what ducts from another room bring.
    pub(in crate::core) fn house(&self, day: f64) -> (f64, f64) {
        let (winter_c, summer_c) = (typical::HOUSE_WINTER_C, typical::HOUSE_SUMMER_C);
        let t_c = winter_c + (summer_c - winter_c) * season(day);
        (t_c, self.moisture(day, t_c, Dampness::Normal))
    }

    fn moisture(&self, day: f64, t_c: f64, dampness: Dampness) -> f64 {
        let dew_c = self.winter_dew_c + (self.summer_dew_c - self.winter_dew_c) * season(day);
        let (added, highest) = match dampness {
            Dampness::Dry => (0.0005, 0.50),
            Dampness::Normal => (0.0015, 0.65),
            Dampness::Damp => (0.0035, 0.85),
        };
        let w = saturation_humidity_ratio(dew_c, self.pressure_pa) + added;
        let most = humidity_ratio_from_relative_humidity(t_c, highest, self.pressure_pa);
        if w < most { w } else { most }
    }
}

/// The season in a room: 0 on its coldest day of the year (from 0), 1 half a year later.
pub fn season(day: f64) -> f64 {
    0.5 - 0.5 * libm::cos((day - COLDEST_DAY) / 365.0 * std::f64::consts::TAU)
}
