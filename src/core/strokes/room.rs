//! The room's air beside the strokes: what [`crate::core::room::air`] is, without its bookkeeping.

use super::slugs::decay;
use crate::core::room::air::AIR_KG_PER_M3;
use crate::core::room::model::{AIR_J_PER_M3_K, RoomModel};
use crate::core::site::Ducts;

/// A room on a day.
#[derive(Clone, Copy, Debug)]
pub(super) struct Air<'a> {
    room: &'a RoomModel,
    k_per_w: f64,
    /// Of the room's temperature: how fast it comes back, and in what time.
    per_second: f64,
    seconds: f64,
    /// How fast its moisture does.
    exchanged_per_second: f64,
    mean_c: f64,
    w: f64,
    house: (f64, f64),
    outdoor_c: f64,
    swing_k: [f64; 32],
    /// Time since the moisture was last moved on, s.
    dry_s: f64,
    /// Of the heater.
    pub shift_k: f64,
    shift_w: f64,
    /// Extra heat that flowed in from the house, J.
    pub from_house_j: f64,
}

impl<'a> Air<'a> {
    pub fn of(room: &'a RoomModel) -> Air<'a> {
        let conductance_w_per_k = room.conductance_w_per_k();
        Air {
            room,
            k_per_w: 1.0 / conductance_w_per_k,
            per_second: conductance_w_per_k / room.capacity_j_per_k,
            seconds: room.capacity_j_per_k / conductance_w_per_k,
            exchanged_per_second: room.exchange_m3_per_s / room.moisture_m3,
            mean_c: 15.0,
            w: 0.006,
            house: (20.0, 0.006),
            outdoor_c: 15.0,
            swing_k: std::array::from_fn(|hour| room.swing_k(hour as f64 % 24.0)),
            dry_s: 0.0,
            shift_k: 0.0,
            shift_w: 0.0,
            from_house_j: 0.0,
        }
    }

    /// Goes on to a day: its undisturbed mean and moisture, the house's air and the outdoors' mean.
    pub fn day(&mut self, mean_c: f64, w: f64, house: (f64, f64), outdoor_c: f64) {
        (self.mean_c, self.w, self.house, self.outdoor_c) = (mean_c, w, house, outdoor_c);
    }

    #[inline(always)]
    pub fn temperature_c(&self, hour: usize) -> f64 {
        self.mean_c + self.swing_k[hour & 31] + self.shift_k
    }

    /// Temperature of what a heat pump breathes, °C, in a room of a temperature.
    #[inline(always)]
    pub fn breathed_c(&self, room_c: f64) -> f64 {
        if self.room.ducts == Ducts::None { room_c } else { self.house.0 }
    }

    /// Moisture of what it breathes, kg/kg.
    #[inline(always)]
    pub fn breathed_w(&mut self) -> f64 {
        if self.room.ducts != Ducts::None {
            return self.house.1;
        }
        if self.dry_s > 0.0 {
            self.shift_w *= decay(self.dry_s * self.exchanged_per_second);
            self.dry_s = 0.0;
        }
        self.w + self.shift_w
    }

    /// A time in which the heater gave heat to the room.
    #[inline(always)]
    pub fn pass(&mut self, dt_s: f64, given_j: f64) {
        self.dry_s += dt_s;
        self.relax(dt_s, given_j);
    }

    /// The same while a coil took heat and water from so much air.
    #[inline(always)]
    pub fn pass_breathed(&mut self, dt_s: f64, given_j: f64, breathed_j: f64, water_kg: f64, air_m3: f64) {
        match self.room.ducts {
            Ducts::None => {
                let dries = water_kg / (dt_s * AIR_KG_PER_M3 * self.room.exchange_m3_per_s);
                self.shift_w = (self.shift_w + dries) * decay(dt_s * self.exchanged_per_second) - dries;
                self.relax(dt_s, given_j + breathed_j);
            }
            Ducts::Indoors => {
                self.from_house_j -= breathed_j;
                self.relax(dt_s, given_j);
            }
            Ducts::Outdoors => {
                self.from_house_j += AIR_J_PER_M3_K * air_m3 * (self.house.0 - self.outdoor_c);
                self.relax(dt_s, given_j);
            }
        }
    }

    #[inline(always)]
    fn relax(&mut self, dt_s: f64, gained_j: f64) {
        let held_k = (gained_j / dt_s - self.room.reference_gain_w) * self.k_per_w;
        let factor = decay(dt_s * self.per_second);
        let over = self.shift_k - held_k;
        let mean_k_s = held_k * dt_s + over * (1.0 - factor) * self.seconds;
        self.from_house_j -= self.room.to_house_w_per_k * mean_k_s;
        self.shift_k = held_k + over * factor;
    }
}
