//! What mixes the layers: buoyancy, the cold inlet's jet, and heat put in from below.

use super::layers::Layers;
use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

impl Layers {
    /// Pools layers until none is warmer than the one above it (pool-adjacent-violators, upward with a
    /// look back), keeping heat.
    pub fn settle(&mut self) {
        if self.fill_m3 <= 0.0 {
            self.t_c[0] = self.t_c[1];
        }
        self.settle_from(0);
    }

    /// Settles where layers below `from` are in order among themselves.
    fn settle_from(&mut self, from: usize) {
        let n = self.slots;
        let mut i = from;
        while i < n {
            if self.t_c[i] > self.t_c[i + 1] {
                i = self.pool_around(i);
            } else {
                i += 1;
            }
        }
    }

    /// [`Self::settle`] where all was in order before the layers up to `top` were warmed without changing
    /// their own order: only the next layer can have been passed.
    #[inline(always)]
    pub fn settle_above(&mut self, top: usize) {
        if top < self.slots && self.t_c[top] > self.t_c[top + 1] {
            self.settle_from(top);
        }
    }

    /// Pools an inversion between `i` and `i + 1` and whatever it drags along; returns the highest
    /// layer pooled.
    fn pool_around(&mut self, i: usize) -> usize {
        let n = self.slots;
        let (mut low, mut high) = (i, i + 1);
        let mut v = self.layer_m3(low) + self.layer_m3(high);
        let mut heat = self.layer_m3(low) * self.t_c[low] + self.layer_m3(high) * self.t_c[high];
        loop {
            let mean = if v > 0.0 { heat / v } else { self.t_c[high] };
            if high < n && mean > self.t_c[high + 1] {
                high += 1;
                v += self.layer_m3(high);
                heat += self.layer_m3(high) * self.t_c[high];
            } else if low > 0 && self.t_c[low - 1] > mean {
                low -= 1;
                v += self.layer_m3(low);
                heat += self.layer_m3(low) * self.t_c[low];
            } else {
                self.t_c[low..=high].fill(mean);
                return high;
            }
        }
    }

    /// The cold inlet's jet stirs the bottom of the tank: the lowest `volume_m3` become one
    /// temperature; the layer at the edge gives and takes its share. Nothing is stirred for no volume.
    #[inline(always)]
    pub fn stir_bottom(&mut self, volume_m3: f64) {
        if volume_m3 <= 0.0 {
            return;
        }
        // In slots: the growing layer, whole ones, and a share of the one at the edge.
        let volume = volume_m3 * self.per_slot;
        let fill = self.fill_m3 * self.per_slot;
        let above = volume - fill;
        if above <= 0.0 {
            return;
        }
        let whole = above as i32 as usize;
        let edge = whole + 1;
        // The shrinking layer at the top is no whole one.
        if edge >= self.slots {
            return self.stir_all(volume);
        }
        let share = above - whole as f64;
        let mut heat = fill * self.t_c[0] + share * self.t_c[edge];
        for t in &self.t_c[1..edge] {
            heat += t;
        }
        let mean = heat / volume;
        self.t_c[edge] += share * (mean - self.t_c[edge]);
        for t in &mut self.t_c[..edge] {
            *t = mean;
        }
    }

    /// Stirs as many slots as reach into the top layer.
    fn stir_all(&mut self, volume: f64) {
        let top = self.slots;
        let rest = 1.0 - self.fill_m3 * self.per_slot;
        let below = top as f64 - rest;
        let share = if rest > 0.0 { ((volume - below) / rest).clamp(0.0, 1.0) } else { 0.0 };
        let heat = (self.sum_m3_k() - (1.0 - share) * rest * self.slot_m3 * self.t_c[top]) * self.per_slot;
        let mean = heat / (below + share * rest);
        self.t_c[top] += share * (mean - self.t_c[top]);
        self.t_c[..top].fill(mean);
    }

    /// Volume and common temperature of the pool that heat from layer `from` warms now: that layer and
    /// those above it that are no warmer; and the temperature of the next layer up, at which it
    /// joins (`None`: the pool reaches the top).
    #[inline(always)]
    pub fn pool(&self, from: usize) -> Pool {
        let t_c = self.t_c[from];
        let above = &self.t_c[from + 1..=self.slots];
        let more = above.iter().position(|t| *t > t_c + 1e-9).unwrap_or(above.len());
        let next_c = above.get(more).copied();
        let top = from + more;
        Pool { from, top, m3: self.slot_m3 * (more as f64 + 1.0) - self.missing_m3(from, top), t_c, next_c }
    }

    /// What layers `from` to `top` hold less than as many whole slots.
    #[inline(always)]
    fn missing_m3(&self, from: usize, top: usize) -> f64 {
        let below = if from == 0 { self.slot_m3 - self.fill_m3 } else { 0.0 };
        if top == self.slots { below + self.fill_m3 } else { below }
    }

    /// Warms a pool by a heat, J. The pool's layers take one temperature.
    #[inline(always)]
    pub fn warm(&mut self, pool: &Pool, heat_j: f64) {
        if pool.m3 <= 0.0 {
            return;
        }
        let layers = &mut self.t_c[pool.from..=pool.top];
        // Above the pool's own temperature, from which its layers differ by rounding.
        let mut stored = self.slot_m3 * layers.iter().map(|t| t - pool.t_c).sum::<f64>();
        if pool.top == self.slots {
            stored -= self.fill_m3 * (layers[layers.len() - 1] - pool.t_c);
        }
        let t = pool.t_c + (stored + heat_j / RHO_C) / pool.m3;
        layers.fill(t);
        self.held_m3_k += heat_j / RHO_C;
    }

    /// How far up a condenser's heat reaches. It fills the zone (the layers below `zone`) from the coldest
    /// layer up like water a vessel: `excess_k_m3` is its heat over its conductance a m³, and the layers
    /// below the condensing temperature share it.
    #[inline(always)]
    pub fn reach(&self, zone: usize, excess_k_m3: f64) -> Reach {
        // The growing layer, or the first whole one where that is empty, is always reached; all others below
        // the zone's top are whole.
        let (mut m3, mut below) = if self.fill_m3 > 0.0 { (self.fill_m3, 1) } else { (self.slot_m3, 2) };
        let mut sum = m3 * self.t_c[below - 1];
        for t in self.t_c[..zone].iter().skip(below) {
            if *t * m3 >= excess_k_m3 + sum {
                break;
            }
            m3 += self.slot_m3;
            sum += self.slot_m3 * t;
            below += 1;
        }
        Reach { below, m3, mean_c: sum / m3, condensing_c: (excess_k_m3 + sum) / m3 }
    }

    /// Gives heat, J, to the layers that a condenser reaches: their mean rises with it, their differences from
    /// it draw together by a factor.
    #[inline(always)]
    pub fn relax(&mut self, reach: &Reach, heat_j: f64, closer: f64) {
        let gained_m3_k = heat_j / RHO_C;
        // to + (t − mean)·closer, with to = mean + gained / m³.
        let base = reach.mean_c * (1.0 - closer) + gained_m3_k / reach.m3;
        for t in &mut self.t_c[..reach.below] {
            *t = *t * closer + base;
        }
        self.held_m3_k += gained_m3_k;
    }

    /// Heat each kelvin of the pool takes, J/K.
    pub fn capacity_j_per_k(m3: f64) -> f64 {
        RHO_C * m3
    }
}

/// The layers a condenser warms.
#[derive(Clone, Copy, Debug)]
pub struct Reach {
    /// Layers below this one are reached.
    pub below: usize,
    /// Their volume, m³.
    pub m3: f64,
    /// Their mean temperature, °C.
    pub mean_c: f64,
    /// The condenser's temperature, °C.
    pub condensing_c: f64,
}

/// A run of layers of one temperature, warmed from below.
#[derive(Clone, Copy, Debug)]
pub struct Pool {
    /// Lowest layer.
    pub from: usize,
    /// Highest layer.
    pub top: usize,
    /// Volume, m³.
    pub m3: f64,
    /// Temperature, °C.
    pub t_c: f64,
    /// Temperature of the layer above, °C.
    pub next_c: Option<f64>,
}
