//! `tankful::core::tank`: single processes against scipy's integration of the same equations and of a
//! sixteen times finer tank.
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::tank::Layers;
use tankful::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K as RHO_C;

/// Decay is a closed form in both: the reference's own tolerance, 1e-11 of 40 K, with room to spare, K.
const DECAY_K: f64 = 1e-8;
/// The same layers, 12 of them, by our batches of half an hour against an implicit solver, K: explicit
/// steps err at first order, most in the first hour.
const SAME_LAYERS_K: f64 = 0.6;
/// Twelve layers against 192, K: what the layer count itself costs a sharp step after an hour.
const FINER_LAYERS_K: f64 = 3.3;
/// The same after eight hours and more, when the step has spread over several layers, K.
const FINER_LAYERS_LATE_K: f64 = 0.6;
/// Plug flow behind a stirred zone, outlet now, 192 slots, K: a slot is one temperature, and across half of
/// one the exact front falls by as much in the smallest zone.
const PLUG_FLOW_FINE_K: f64 = 2.0;
/// The same, mean of the outlet since the start, 12 slots, K: what counts for heat delivered.
const PLUG_FLOW_MEAN_K: f64 = 0.6;
/// The same at 192 slots, K: the difference above is the slots'.
const PLUG_FLOW_FINE_MEAN_K: f64 = 0.05;

/// Conduction is batched by half an hour in the simulation.
const BATCH_S: f64 = 1_800.0;

struct Given {
    fixture: Fixture,
}

impl Given {
    fn load() -> Self {
        Self { fixture: Fixture::load("layered_tank") }
    }

    fn parameter(&self, name: &str) -> f64 {
        self.fixture.number(&["parameters", name])
    }

    fn tank(&self, slots: usize, t_c: f64) -> Layers {
        assert_eq!(self.parameter("volumetric_heat_j_per_m3_k"), RHO_C, "the fixture is for another water");
        let (volume, height) = (self.parameter("volume_m3"), self.parameter("height_m"));
        Layers::uniform(
            slots,
            volume,
            height,
            self.parameter("conductivity_w_per_m_k") * volume / height,
            t_c,
        )
    }

    /// exp(−UA·t/C) for a time.
    fn factor(&self, dt_s: f64) -> f64 {
        libm::exp(-self.parameter("ua_w_per_k") * dt_s / (RHO_C * self.parameter("volume_m3")))
    }
}

#[test]
fn standby_decay_meets_scipy() {
    let given = Given::load();
    let (hot, room) = (given.fixture.number(&["hot_c"]), given.parameter("room_c"));
    let mut worst = Worst::of("standby decay, K");
    let mut heat = Worst::of("standby heat told against heat missing, relative");
    for [hours, t] in given.fixture.table("decay").rows(["hours", "t_c"]) {
        let mut tank = given.tank(12, hot);
        let before = tank.stored_j();
        let mut lost = 0.0;
        // In uneven steps, as events cut them.
        for share in [0.5, 0.3, 0.15, 0.05] {
            lost += tank.decay(room, given.factor(hours * 3600.0 * share));
        }
        worst.see(tank.mean_c(), t, hours);
        heat.see_relative(lost, before - tank.stored_j(), hours);
    }
    hold([(worst, DECAY_K), (heat, 1e-9)]);
}

/// A tank of 12 slots, cold below half height: drawn half, then left to conduct and lose heat.
fn conducted(given: &Given, hours: f64) -> Layers {
    let mut tank = given.tank(12, given.fixture.number(&["hot_c"]));
    for _ in 0..6 {
        tank.draw(tank.top_m3(), given.fixture.number(&["cold_c"]));
    }
    let room = given.parameter("room_c");
    let batches = (hours * 3600.0 / BATCH_S).round() as usize;
    for _ in 0..batches {
        tank.decay(room, given.factor(BATCH_S));
        tank.conduct(BATCH_S);
    }
    tank
}

const LAYERS: [&str; 13] = [
    "hours",
    "layer_0_c",
    "layer_1_c",
    "layer_2_c",
    "layer_3_c",
    "layer_4_c",
    "layer_5_c",
    "layer_6_c",
    "layer_7_c",
    "layer_8_c",
    "layer_9_c",
    "layer_10_c",
    "layer_11_c",
];

#[test]
fn conduction_meets_scipy_on_the_same_and_on_finer_layers() {
    let given = Given::load();
    let mut same = Worst::of("conduction, 12 layers against the same 12, K");
    let mut fine = Worst::of("conduction, 12 layers against 192, first hours, K");
    let mut late = Worst::of("conduction, 12 layers against 192, from 8 hours, K");
    for row in given.fixture.table("conduction_12").rows(LAYERS) {
        let tank = conducted(&given, row[0]);
        for (i, t) in row[1..].iter().enumerate() {
            // Layer 0 is the empty growing one: slot i is layer i + 1.
            same.see(tank.temperature_c(i + 1), *t, (row[0], i));
        }
    }
    for row in given.fixture.table("conduction_192").rows(LAYERS) {
        let tank = conducted(&given, row[0]);
        for (i, t) in row[1..].iter().enumerate() {
            let worst = if row[0] < 8.0 { &mut fine } else { &mut late };
            worst.see(tank.temperature_c(i + 1), *t, (row[0], i));
        }
    }
    hold([(same, SAME_LAYERS_K), (fine, FINER_LAYERS_K), (late, FINER_LAYERS_LATE_K)]);
}

/// Differences along a full draw at a number of slots: of the outlet now, and of its mean since the start.
fn plug_flow(given: &Given, slots: usize, now: &mut Worst, mean: &mut Worst) {
    let (hot, cold) = (given.fixture.number(&["hot_c"]), given.fixture.number(&["cold_c"]));
    let columns = ["inlet_zone_share", "drawn_m3", "outlet_c", "mean_since_start_c"];
    let volume = given.parameter("volume_m3");
    let (mut tank, mut drawn, mut heat, mut share_now) = (given.tank(slots, hot), 0.0, 0.0, 0.0);
    for [share, until, outlet, mean_c] in given.fixture.table("plug_flow").rows(columns) {
        if share != share_now {
            (tank, drawn, heat, share_now) = (given.tank(slots, hot), 0.0, 0.0, share);
        }
        while until - drawn > 1e-12 {
            let left = until - drawn;
            let piece = if left < tank.top_m3() { left } else { tank.top_m3() };
            heat += piece * tank.outlet_c();
            tank.draw(piece, cold);
            tank.stir_bottom(share * volume);
            drawn += piece;
        }
        now.see(tank.outlet_c(), outlet, (share, until / volume));
        mean.see(heat / drawn, mean_c, (share, until / volume));
    }
}

#[test]
fn plug_flow_behind_a_stirred_inlet_meets_scipy() {
    let given = Given::load();
    let mut now = Worst::of("plug flow behind a stirred inlet, outlet, 192 slots, K");
    let mut coarse = Worst::of("plug flow behind a stirred inlet, mean outlet so far, 12 slots, K");
    let mut fine = Worst::of("plug flow behind a stirred inlet, mean outlet so far, 192 slots, K");
    plug_flow(&given, 12, &mut Worst::of("not held: a slot of 12 is not a point"), &mut coarse);
    plug_flow(&given, 192, &mut now, &mut fine);
    hold([(now, PLUG_FLOW_FINE_K), (coarse, PLUG_FLOW_MEAN_K), (fine, PLUG_FLOW_FINE_MEAN_K)]);
}
