//! The room's air while a heater stands in it.

use super::model::{AIR_J_PER_M3_K, RoomModel};
use crate::core::heat_pump::coil::CoilInlet;
use crate::core::heater::Surroundings;
use crate::core::moist_air::relative_humidity;
use crate::core::numeric::decay_factor;
use crate::core::site::Ducts;

/// Small changes are gathered until they amount to this time, s: as often as a heat pump looks at its air where that may
/// keep it from running, which the time between would move else.
const GATHER_S: f64 = 600.0;
const AIR_KG_PER_M3: f64 = 1.2;

/// State of the room: its undisturbed values and how far the heater has moved it from them.
#[derive(Clone, Debug)]
pub struct RoomAir<'m> {
    model: &'m RoomModel,
    /// Of its temperature and its moisture: how fast they come back, 1/s; and change held by a watt, K/W.
    per_second: f64,
    dries_per_second: f64,
    k_per_w: f64,
    undisturbed_c: f64,
    undisturbed_w: f64,
    /// The house's air on that day, which ducts bring, °C and kg/kg.
    house_c: f64,
    house_w: f64,
    /// The outdoors' mean of that day, °C.
    outdoor_c: f64,
    /// The day that [`Self::day_c`] and the humidity are of.
    day: f64,
    /// Undisturbed mean of that day, °C.
    day_c: f64,
    /// Change of temperature by the heater, K.
    shift_k: f64,
    /// Change of humidity ratio by the heater, kg/kg (never above zero for long: nothing adds water).
    shift_w: f64,
    t_c: f64,
    w: f64,
    /// The same as a coil needs it; `None` when the air has changed since.
    inlet: Option<CoilInlet>,
    pending_s: f64,
    pending_j: f64,
    pending_kg: f64,
    /// Extra heat that has flowed in from the house or that ducts took from it, J.
    pub from_house_j: f64,
    /// Coldest it has been, °C.
    pub coldest_c: f64,
}

impl<'m> RoomAir<'m> {
    /// The room on a day and hour, undisturbed.
    pub fn new(model: &'m RoomModel, day: f64, hour: f64) -> Self {
        let day_c = model.undisturbed_mean_c(day);
        let t = day_c + model.swing_k(hour);
        let w = model.undisturbed_w(day);
        let (house_c, house_w) = model.house(day);
        let conductance = model.conductance_w_per_k();
        Self {
            model,
            per_second: conductance / model.capacity_j_per_k,
            dries_per_second: model.exchange_m3_per_s / model.moisture_m3,
            k_per_w: 1.0 / conductance,
            undisturbed_c: t,
            undisturbed_w: w,
            house_c,
            house_w,
            outdoor_c: house_c,
            day,
            day_c,
            shift_k: 0.0,
            shift_w: 0.0,
            t_c: t,
            w,
            inlet: None,
            pending_s: 0.0,
            pending_j: 0.0,
            pending_kg: 0.0,
            from_house_j: 0.0,
            coldest_c: t,
        }
    }

    /// The outdoors' mean of the day, °C, which a duct to the outside needs.
    pub fn outdoors(&mut self, outdoor_c: f64) {
        self.outdoor_c = outdoor_c;
    }

    /// Moves the undisturbed state to an hour of a day. Season and humidity go by the day.
    pub fn at(&mut self, day: f64, hour: f64) {
        self.settle();
        if day != self.day {
            self.day = day;
            self.day_c = self.model.undisturbed_mean_c(day);
            self.undisturbed_w = self.model.undisturbed_w(day);
            (self.house_c, self.house_w) = self.model.house(day);
        }
        self.undisturbed_c = self.day_c + self.model.swing_k(hour);
        self.refresh();
    }

    /// Undisturbed temperature, °C.
    pub fn undisturbed_c(&self) -> f64 {
        self.undisturbed_c
    }

    /// Relative humidity, 0 to 1.
    pub fn relative_humidity(&self) -> f64 {
        relative_humidity(self.t_c, self.w, self.model.pressure_pa)
    }

    /// Works off what has been gathered: the room's temperature and moisture relax exponentially to
    /// where the mean gain would hold them, in closed form.
    fn settle(&mut self) {
        if self.pending_s <= 0.0 {
            return;
        }
        let (dt, m) = (self.pending_s, self.model);
        let held = (self.pending_j / dt - m.reference_gain_w) * self.k_per_w;
        let factor = decay_factor(dt * self.per_second);
        let over = self.shift_k - held;
        let mean_shift_s = held * dt + over * (1.0 - factor) / self.per_second;
        self.shift_k = held + over * factor;
        self.from_house_j -= m.to_house_w_per_k * mean_shift_s;

        let dries = self.pending_kg / (dt * AIR_KG_PER_M3 * m.exchange_m3_per_s);
        let factor = decay_factor(dt * self.dries_per_second);
        self.shift_w = -dries + (self.shift_w + dries) * factor;
        self.pending_s = 0.0;
        self.pending_j = 0.0;
        self.pending_kg = 0.0;
        self.refresh();
    }

    fn refresh(&mut self) {
        self.t_c = self.undisturbed_c + self.shift_k;
        // Air cannot be dried below what a coil leaves; a floor keeps the state a state.
        let w = self.undisturbed_w + self.shift_w;
        self.w = if w > 2e-4 { w } else { 2e-4 };
        self.inlet = None;
        if self.t_c < self.coldest_c {
            self.coldest_c = self.t_c;
        }
    }
}

impl Surroundings for RoomAir<'_> {
    fn temperature_c(&self) -> f64 {
        self.t_c
    }

    fn inlet(&mut self) -> &CoilInlet {
        let (t_c, w, pressure_pa) = match self.model.ducts {
            Ducts::None => (self.t_c, self.w, self.model.pressure_pa),
            _ => (self.house_c, self.house_w, self.model.pressure_pa),
        };
        self.inlet.get_or_insert_with(|| CoilInlet::new(t_c, w, pressure_pa))
    }

    fn breathed_c(&self) -> f64 {
        if self.model.ducts == Ducts::None { self.t_c } else { self.house_c }
    }

    fn breathed_w(&self) -> f64 {
        if self.model.ducts == Ducts::None { self.w } else { self.house_w }
    }

    fn breathe(&mut self, heat_j: f64, water_kg: f64, air_m3: f64) {
        match self.model.ducts {
            Ducts::None => {
                self.pending_j += heat_j;
                self.pending_kg += water_kg;
            }
            // The house's air comes back to the house; beside it a coil's cold and damp are small.
            Ducts::Indoors => self.from_house_j -= heat_j,
            // Goes out, heat taken and all, and as much comes in from outdoors.
            Ducts::Outdoors => self.from_house_j += AIR_J_PER_M3_K * air_m3 * (self.house_c - self.outdoor_c),
        }
    }

    fn pass(&mut self, dt_s: f64, heat_j: f64) {
        self.pending_s += dt_s;
        self.pending_j += heat_j;
        if self.pending_s >= GATHER_S {
            self.settle();
        }
    }
}
