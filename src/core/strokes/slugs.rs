//! A tank as a stirred foot and slugs of water above it, each of one temperature, colder below.
//!
//! Cold water enters the foot, which the inlet's jet keeps stirred; what overflows from it, in closed form of a stirred
//! vessel, becomes a slug of its own and rides up as in a plug flow. Slugs that are alike become one; where there are too
//! many, the two whose joining mixes least become one.

use crate::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Most slugs kept, the foot among them.
const MOST: usize = 4;
/// Room for those that are there for a moment: a power of two, so that an index cut to it is known to be within.
const ROOM: usize = 8;
const WITHIN: usize = ROOM - 1;
/// Slugs this near are one, K: where water overflows into the next, and where heating brings them together.
const ALIKE_K: f64 = 1.5;
pub(super) const JOINED_K: f64 = 0.4;
/// The least that an inlet stirs, as a share of the tank.
const LEAST_STIR: f64 = 0.02;
/// A cut nearer than this share of the tank to a face is that face.
const NEAR: f64 = 0.01;
/// Of the stirred foot, what enters at a time in one go.
const PIECE: f64 = 1.0;

/// The tank. Slug 0 is the foot, the last one is at the outlet.
#[derive(Clone, Debug)]
pub(super) struct Slugs {
    pub n: usize,
    m3: [f64; ROOM],
    t_c: [f64; ROOM],
    pub volume_m3: f64,
    pub foot_m3: f64,
}

impl Slugs {
    /// A tank at one temperature, of which the inlet stirs a share.
    pub fn new(volume_m3: f64, stir: f64, t_c: f64) -> Slugs {
        let stir = stir.clamp(LEAST_STIR, 0.9);
        let mut m3 = [0.0; ROOM];
        m3[0] = stir * volume_m3;
        m3[1] = volume_m3 - m3[0];
        Slugs { n: 2, foot_m3: m3[0], m3, t_c: [t_c; ROOM], volume_m3 }
    }

    #[inline(always)]
    pub fn outlet_c(&self) -> f64 {
        self.t_c[(self.n - 1) & WITHIN]
    }

    /// What can be drawn at the outlet's temperature, m³.
    #[inline(always)]
    pub fn top_m3(&self) -> f64 {
        self.m3[(self.n - 1) & WITHIN]
    }

    /// Heat held above 0 °C over the volumetric heat, m³·K.
    pub fn held_m3_k(&self) -> f64 {
        self.m3.iter().zip(&self.t_c).take(self.n).map(|(m3, t)| m3 * t).sum()
    }

    /// Volume of a slug, m³.
    #[inline(always)]
    pub fn m3(&self, i: usize) -> f64 {
        self.m3[i & WITHIN]
    }

    /// Its temperature, °C.
    #[inline(always)]
    pub fn t_c(&self, i: usize) -> f64 {
        self.t_c[i & WITHIN]
    }

    /// Gives slugs one temperature.
    #[inline(always)]
    pub fn level(&mut self, from: usize, to: usize, t_c: f64) {
        for i in from..=to {
            self.t_c[i & WITHIN] = t_c;
        }
    }

    /// Draws the slugs below `reached` toward a temperature: `t · closer + base`; of one that reaches above the zone only
    /// its share.
    #[inline(always)]
    pub fn relax(&mut self, reached: usize, zone_m3: f64, closer: f64, base: f64) {
        let mut below = 0.0;
        for i in 0..reached {
            let own = self.m3[i & WITHIN];
            let room = zone_m3 - below;
            below += own;
            let t_c = self.t_c[i & WITHIN];
            let warmed = t_c * closer + base;
            self.t_c[i & WITHIN] = if own <= room { warmed } else { t_c + (warmed - t_c) * room / own };
        }
        let top = self.t_c(reached.wrapping_sub(1));
        let passed = reached < self.n && top > self.t_c(reached) - JOINED_K;
        let alike = reached > 2 && top - self.t_c[1] < JOINED_K;
        let within = reached > 1 && top < self.t_c(reached - 2);
        if passed || alike || within {
            self.settle();
        }
    }

    #[inline(always)]
    fn remove(&mut self, i: usize) {
        for k in i..self.n - 1 {
            self.m3[(k) & WITHIN] = self.m3[(k + 1) & WITHIN];
            self.t_c[(k) & WITHIN] = self.t_c[(k + 1) & WITHIN];
        }
        self.n -= 1;
    }

    #[inline(always)]
    fn insert(&mut self, i: usize, m3: f64, t_c: f64) {
        let mut k = self.n;
        while k > i {
            self.m3[(k) & WITHIN] = self.m3[(k - 1) & WITHIN];
            self.t_c[(k) & WITHIN] = self.t_c[(k - 1) & WITHIN];
            k -= 1;
        }
        self.m3[(i) & WITHIN] = m3;
        self.t_c[(i) & WITHIN] = t_c;
        self.n += 1;
    }

    /// Makes a slug and the next one up one.
    #[inline(always)]
    fn join(&mut self, low: usize) {
        let m3 = self.m3[(low) & WITHIN] + self.m3[(low + 1) & WITHIN];
        self.t_c[(low) & WITHIN] = (self.m3[(low) & WITHIN] * self.t_c[(low) & WITHIN]
            + self.m3[(low + 1) & WITHIN] * self.t_c[(low + 1) & WITHIN])
            / m3;
        self.m3[(low) & WITHIN] = m3;
        self.remove(low + 1);
    }

    /// Joins until there are few enough; the foot stays by itself.
    #[inline(always)]
    fn thin_out(&mut self) {
        while self.n > MOST {
            let (mut at, mut least) = (1, f64::MAX);
            for i in 1..self.n - 1 {
                let apart = self.t_c[(i + 1) & WITHIN] - self.t_c[(i) & WITHIN];
                let smaller = if self.m3[(i) & WITHIN] < self.m3[(i + 1) & WITHIN] {
                    self.m3[(i) & WITHIN]
                } else {
                    self.m3[(i + 1) & WITHIN]
                };
                let mixed = smaller * apart * apart;
                if mixed < least {
                    (at, least) = (i, mixed);
                }
            }
            self.join(at);
        }
    }

    /// Draws from the top, at most [`Self::top_m3`], and lets cold water into the foot.
    #[inline(always)]
    pub fn draw(&mut self, m3: f64, cold_c: f64) {
        let top = self.n - 1;
        self.m3[(top) & WITHIN] -= m3;
        if top > 1 && self.m3(top) < 1e-6 * self.volume_m3 {
            // The rest of it goes with the next; never with the foot, which keeps its size.
            self.join(top - 1);
        }
        let mut left = m3;
        while left > 0.0 {
            let piece = if left < PIECE * self.foot_m3 { left } else { PIECE * self.foot_m3 };
            left -= piece;
            let x = piece / self.foot_m3;
            let factor = decay(x);
            let over = self.t_c[0] - cold_c;
            let out_c = cold_c + over * (1.0 - factor) / x;
            self.t_c[0] = cold_c + over * factor;
            if self.n > 1 && self.t_c[1] - out_c < ALIKE_K {
                let sum = self.m3[1] + piece;
                self.t_c[1] = (self.m3[1] * self.t_c[1] + piece * out_c) / sum;
                self.m3[1] = sum;
            } else {
                self.insert(1, piece, out_c);
                self.thin_out();
            }
        }
    }

    /// Cools toward a temperature by a factor; heat lost, J.
    #[inline(always)]
    pub fn cool(&mut self, toward_c: f64, factor: f64) -> f64 {
        let gone = 1.0 - factor;
        let mut over = 0.0;
        for i in 0..self.n {
            let above = self.t_c[(i) & WITHIN] - toward_c;
            over += self.m3[(i) & WITHIN] * above;
            self.t_c[(i) & WITHIN] -= above * gone;
        }
        over * gone * RHO_C
    }

    /// The slug at a height, given as the volume below it.
    #[inline(always)]
    pub fn at(&self, below_m3: f64) -> usize {
        let mut left = below_m3 - self.m3[0];
        let mut i = 0;
        while left >= 0.0 && i + 1 < self.n {
            i += 1;
            left -= self.m3[(i) & WITHIN];
        }
        i
    }

    /// The slugs at two heights, the lower one first.
    #[inline(always)]
    pub fn at_both(&self, low_m3: f64, high_m3: f64) -> (usize, usize) {
        let mut below = self.m3[0];
        let (mut low, mut high) = (0, 0);
        let mut i = 1;
        while i < self.n && high_m3 >= below {
            high = i;
            low = if low_m3 >= below { i } else { low };
            below += self.m3[i & WITHIN];
            i += 1;
        }
        (low, high)
    }

    /// The first slug above a height, cut there unless a face is near. The foot is never cut: heated whole or not at
    /// all.
    #[inline(always)]
    pub fn cut(&mut self, below_m3: f64) -> usize {
        let near = NEAR * self.volume_m3;
        if below_m3 < self.foot_m3 + near {
            return usize::from(below_m3 > 0.5 * self.foot_m3);
        }
        let mut below = self.m3[0];
        for i in 1..self.n {
            if below_m3 < below + near {
                return i;
            }
            if below_m3 < below + self.m3[(i) & WITHIN] - near {
                let lower = below_m3 - below;
                self.insert(i + 1, self.m3[(i) & WITHIN] - lower, self.t_c[(i) & WITHIN]);
                self.m3[(i) & WITHIN] = lower;
                return i + 1;
            }
            below += self.m3[(i) & WITHIN];
        }
        self.n - 1
    }

    /// Lets what is warmer than the water above it rise and mix with it, and joins what has become alike.
    #[inline(always)]
    pub fn settle(&mut self) {
        // The foot keeps its size; both take their mean.
        if self.n > 1 && self.t_c[0] > self.t_c[1] {
            self.level_foot();
        }
        let mut i = 1;
        while i + 1 < self.n {
            if self.t_c[(i + 1) & WITHIN] - self.t_c[(i) & WITHIN] < JOINED_K {
                self.join(i);
                if i > 1 {
                    i -= 1;
                } else if self.t_c[0] > self.t_c[1] {
                    self.level_foot();
                }
            } else {
                i += 1;
            }
        }
        self.thin_out();
    }

    #[inline(always)]
    fn level_foot(&mut self) {
        let both = self.m3[0] + self.m3[1];
        let mean = (self.m3[0] * self.t_c[0] + self.m3[1] * self.t_c[1]) / both;
        (self.t_c[0], self.t_c[1]) = (mean, mean);
    }
}

/// exp(−x) for x from 0 to 0.5, to 2e-4 of it: the (1, 2) Padé approximant.
#[inline(always)]
pub(super) fn small_decay(x: f64) -> f64 {
    (1.0 - x * (1.0 / 3.0)) / (1.0 + x * (2.0 / 3.0 + x * (1.0 / 6.0)))
}

/// exp(−x) for x ≥ 0, to 2e-4 of it below 2 and to 1e-3 of the whole beyond: the (2, 2) Padé approximant of a quarter, to
/// the fourth.
#[inline(always)]
pub(super) fn decay(x: f64) -> f64 {
    if x > 10.0 {
        return 0.0;
    }
    let x = 0.25 * x;
    let square = x * x * (1.0 / 12.0);
    let half = 0.5 * x;
    let quarter = (1.0 - half + square) / (1.0 + half + square);
    let half = quarter * quarter;
    half * half
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn volume(s: &Slugs) -> f64 {
        (0..s.n).map(|i| s.m3(i)).sum()
    }

    /// A stirred vessel's closed form: what is left of the excess over the cold water after as much as it holds is 1/e.
    #[test]
    fn the_foot_is_a_stirred_vessel() {
        let mut s = Slugs::new(0.2, 0.25, 50.0);
        for _ in 0..10 {
            s.draw(0.005, 10.0);
        }
        let left = (s.t_c(0) - 10.0) / 40.0;
        // The decay's own tolerance.
        assert!((left - libm::exp(-1.0)).abs() < 1e-3, "{left}");
    }

    proptest! {
        #[test]
        fn decays_are_exponentials(x in 0.0..30.0f64) {
            let exact = libm::exp(-x);
            prop_assert!((decay(x) - exact).abs() < 1e-3 && decay(x) >= 0.0, "{} {} {}", x, decay(x), exact);
            if x < 2.0 {
                prop_assert!((decay(x) / exact - 1.0).abs() < 5e-4);
            }
            if x < 0.5 {
                prop_assert!((small_decay(x) / exact - 1.0).abs() < 1e-3);
            }
        }

        /// Whatever happens: the tank stays full, heat goes nowhere but out, and no water is warmer than the water above it.
        #[test]
        fn volume_heat_and_order_are_kept(
            stir in 0.0..1.0f64,
            steps in proptest::collection::vec((0usize..4, 0.0..1.0f64), 1..60),
        ) {
            let mut s = Slugs::new(0.18, stir, 50.0);
            for (what, share) in steps {
                let before = s.held_m3_k();
                match what {
                    0 => {
                        let out = s.outlet_c();
                        let v = share * s.top_m3();
                        s.draw(v, 12.0);
                        prop_assert!((s.held_m3_k() - before - v * (12.0 - out)).abs() < 1e-9);
                    }
                    1 => {
                        let from = s.cut(share * 0.18);
                        let warm = s.t_c(s.n - 1) + 1.0;
                        s.level(from, s.n - 1, warm);
                        s.settle();
                    }
                    2 => {
                        let lost = s.cool(15.0, 1.0 - 0.02 * share);
                        prop_assert!((before - s.held_m3_k() - lost / RHO_C).abs() < 1e-9);
                    }
                    _ => {
                        s.settle();
                        prop_assert!((s.held_m3_k() - before).abs() < 1e-9);
                    }
                }
                prop_assert!((volume(&s) - 0.18).abs() < 1e-9);
                prop_assert!(s.n <= ROOM);
                for i in 1..s.n {
                    prop_assert!(s.t_c(i) >= s.t_c(i - 1) - 1e-9, "{:?}", s);
                }
            }
        }
    }
}
