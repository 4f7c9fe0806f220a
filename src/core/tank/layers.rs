//! Layers of water that move with the draw.
//!
//! The tank is cut into equal slots. Cold water grows a layer at the bottom, hot water leaves a
//! shrinking one at the top; when the bottom layer has filled a slot, all move up by one. So a
//! thermocline rides up the tank unsmeared: no numerical diffusion, however few the layers (an upwind
//! scheme of 12 layers loses a fifth of the usable volume).
//!
//! All kernels here are plain SI with °C; volumetric heat is constant
//! ([`MEAN_VOLUMETRIC_HEAT_J_PER_M3_K`](crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K)), so that volumes and energies both balance to rounding.

use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Most slots a tank may be cut into (the high-resolution reference uses them).
pub const MAX_SLOTS: usize = 192;

/// Most that a slot's difference to the next may be evened out in one step of conduction: half would overshoot.
const MOST_CONDUCTED: f64 = 0.4;

/// Water in layers, bottom up. Layer 0 is the growing one (volume `fill`), layer `slots` the shrinking
/// one (volume `slot − fill`); those between are whole slots.
#[derive(Clone)]
pub struct Layers {
    pub(super) t_c: [f64; MAX_SLOTS + 1],
    pub(super) slots: usize,
    pub(super) slot_m3: f64,
    volume_m3: f64,
    pub(super) fill_m3: f64,
    /// Volume times temperature of all layers, m³·K: kept up to date by what moves heat in or out, so that the
    /// jacket's loss, which is asked for at every step, needs no sum.
    pub(super) held_m3_k: f64,
    /// Slots a cubic metre fills.
    pub(super) per_slot: f64,
    /// Heat conducted from slot to slot (`k · area / slot height`) over what a slot holds, 1/s.
    conducted_per_s: f64,
}

impl Layers {
    /// A tank at one temperature. `k_area_w_m_per_k` is the effective conductivity times the cross
    /// section (wall included), W·m/K. `slots` is held within 2 to [`MAX_SLOTS`].
    pub fn uniform(slots: usize, volume_m3: f64, height_m: f64, k_area_w_m_per_k: f64, t_c: f64) -> Self {
        let slots = slots.clamp(2, MAX_SLOTS);
        let n = slots as f64;
        Self {
            t_c: [t_c; MAX_SLOTS + 1],
            slots,
            slot_m3: volume_m3 / n,
            volume_m3,
            fill_m3: 0.0,
            held_m3_k: volume_m3 * t_c,
            per_slot: n / volume_m3,
            conducted_per_s: k_area_w_m_per_k * n / height_m * n / (RHO_C * volume_m3),
        }
    }

    /// How many slots.
    pub fn slots(&self) -> usize {
        self.slots
    }

    /// Volume of the whole tank, m³.
    pub fn volume_m3(&self) -> f64 {
        self.volume_m3
    }

    /// Temperature of a layer, °C.
    #[inline(always)]
    pub fn temperature_c(&self, layer: usize) -> f64 {
        self.t_c[self.at_most_top(layer)]
    }

    /// Volume of a layer, m³.
    #[inline(always)]
    pub fn layer_m3(&self, layer: usize) -> f64 {
        if layer == 0 {
            self.fill_m3
        } else if layer == self.slots {
            self.slot_m3 - self.fill_m3
        } else {
            self.slot_m3
        }
    }

    /// Temperature at the outlet (the top layer), °C.
    #[inline(always)]
    pub fn outlet_c(&self) -> f64 {
        self.t_c[self.slots]
    }

    /// Heat stored above 0 °C, J: summed over the layers as they are.
    pub fn stored_j(&self) -> f64 {
        self.sum_m3_k() * RHO_C
    }

    pub(super) fn sum_m3_k(&self) -> f64 {
        let whole: f64 = self.t_c[1..=self.slots].iter().sum();
        self.slot_m3 * whole + self.fill_m3 * (self.t_c[0] - self.t_c[self.slots])
    }

    /// Mean temperature, °C.
    pub fn mean_c(&self) -> f64 {
        self.stored_j() / (RHO_C * self.volume_m3())
    }

    /// The layer that holds the water at a relative height (0 bottom, 1 top).
    #[inline(always)]
    pub fn layer_at(&self, relative_height: f64) -> usize {
        let above_fill = relative_height * self.slots as f64 - self.fill_m3 * self.per_slot;
        if above_fill > 0.0 { self.at_most_top(above_fill as i32 as usize + 1) } else { self.lowest() }
    }

    /// The layer whose lower face lies nearest to a relative height: heat put in at that height warms
    /// from this layer up. Taking faces rather than the layer that happens to hold the height keeps
    /// the heated volume right on average as layers move by.
    #[inline(always)]
    pub fn heated_from(&self, relative_height: f64) -> usize {
        let fill = self.fill_m3 * self.per_slot;
        let above_fill = relative_height * self.slots as f64 - fill;
        if above_fill < -0.5 * fill {
            self.lowest()
        } else if above_fill > -0.5 {
            // The cast cuts off what is behind the point, also below zero; to 32 bits it is the cheap one.
            self.at_most_top((above_fill + 0.5) as i32 as usize + 1)
        } else {
            1
        }
    }

    /// The lowest layer that holds water: an empty growing layer holds none.
    #[inline(always)]
    fn lowest(&self) -> usize {
        usize::from(self.fill_m3 <= 0.0)
    }

    #[inline(always)]
    fn at_most_top(&self, layer: usize) -> usize {
        if layer > self.slots { self.slots } else { layer }
    }

    /// The most that can be drawn at the present outlet temperature, m³.
    #[inline(always)]
    pub fn top_m3(&self) -> f64 {
        self.slot_m3 - self.fill_m3
    }

    /// Draws from the top and feeds cold water at the bottom: plug flow. At most [`Self::top_m3`] may
    /// be drawn at a time, so that what leaves has one temperature.
    #[inline(always)]
    pub fn draw(&mut self, volume_m3: f64, cold_c: f64) {
        let v = if volume_m3 < self.top_m3() { volume_m3 } else { self.top_m3() };
        self.held_m3_k += v * (cold_c - self.t_c[self.slots]);
        let filled = self.fill_m3 + v;
        if filled > 0.0 {
            self.t_c[0] = (self.t_c[0] * self.fill_m3 + cold_c * v) / filled;
        }
        self.fill_m3 = filled;
        // A remainder of a billionth of a slot would only be a layer of rounding error.
        if self.slot_m3 - filled <= 1e-9 * self.slot_m3 {
            self.shift();
        }
    }

    /// The bottom layer has filled its slot: all move up one, a new empty layer begins.
    fn shift(&mut self) {
        let lost = (self.slot_m3 - self.fill_m3) * (self.t_c[self.slots] - self.t_c[0]);
        self.t_c.copy_within(0..self.slots, 1);
        // The billionth that had not been drawn yet keeps its heat.
        self.t_c[1] += lost / self.slot_m3;
        self.t_c[0] = self.t_c[1];
        self.fill_m3 = 0.0;
    }

    /// Cools (or warms) all layers toward the room by `factor = exp(−UA·dt / C)`: the loss is spread
    /// over the jacket in proportion to volume, so one factor serves all. Returns the heat lost, J.
    #[inline(always)]
    pub fn decay(&mut self, room_c: f64, factor: f64) -> f64 {
        let gone = 1.0 - factor;
        let toward = room_c * gone;
        for t in &mut self.t_c[..=self.slots] {
            *t = *t * factor + toward;
        }
        let lost_m3_k = (self.held_m3_k - room_c * self.volume_m3) * gone;
        self.held_m3_k -= lost_m3_k;
        lost_m3_k * RHO_C
    }

    /// Conducts heat between layers for a time. Explicit between whole slots (stable up to hours at
    /// any layer count used here; longer times are cut by the caller), limited to what would bring
    /// two layers to one temperature at the thin ends.
    pub fn conduct(&mut self, dt_s: f64) {
        // Often enough that no rounding adds up.
        self.held_m3_k = self.sum_m3_k();
        let n = self.slots;
        let whole = self.conducted_per_s * dt_s;
        // Sub-steps where the explicit rule would overshoot.
        let steps = if whole > MOST_CONDUCTED { (whole / MOST_CONDUCTED).ceil() } else { 1.0 };
        let r = whole / steps;
        let fill = self.fill_m3 * self.per_slot;
        for _ in 0..steps as usize {
            // Ends first.
            let mut carried = self.end_exchange(0, 1, fill, r);
            for i in 1..n - 1 {
                let flow = r * (self.t_c[i + 1] - self.t_c[i]);
                self.t_c[i] += flow - carried;
                carried = flow;
            }
            let top = self.end_exchange(n, n - 1, 1.0 - fill, r);
            self.t_c[n - 1] -= carried + top;
        }
    }

    /// Exchanges heat between an end layer, which is a share of a slot, and its whole neighbour, by the closed relaxation of
    /// two bodies to first order, whose centres lie half a slot and half the thin layer apart. Returns what the neighbour's
    /// temperature has to fall by.
    #[inline(always)]
    fn end_exchange(&mut self, thin: usize, whole: usize, share: f64, r: f64) -> f64 {
        let warms = (self.t_c[whole] - self.t_c[thin]) * 2.0 * r / ((1.0 + share) * (share + 2.0 * r));
        self.t_c[thin] += warms;
        share * warms
    }
}
