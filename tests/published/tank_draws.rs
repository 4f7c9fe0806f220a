//! `tankful::core::heater` against an independent integration of the same physics on 192 fixed finite volumes
//! (`tests/reference/tank.py`): a week of draws with two elements and with a heat pump, and full draws at 3 gal
//! a minute.
use crate::fixture::{Fixture, Table, Worst, hold};
use crate::machine::heat_pump;
use tankful::core::heater::{Constant, Element, Elements, Model, Sim, Source};
use tankful::core::moist_air::humidity_ratio_from_relative_humidity;
use tankful::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K;

/// Longest piece of a draw in the yearly simulation, s.
const LONGEST_PIECE_S: f64 = 120.0;
/// Layers of the yearly simulation.
const YEARLY_SLOTS: usize = 12;
/// Energy of the week, heat delivered and heat put in less the change of what is stored (relative): the aim
/// is 0.5 % of a year; the reference itself moves by less than 0.1 % at half its resolution.
const WEEK_ENERGY: f64 = 0.005;
/// Standby loss of the week (relative): follows the time the lower part is cold; the reference moves by 0.9 %
/// at half its resolution.
const WEEK_STANDBY: f64 = 0.025;
/// Mean outlet temperature of a draw, K, root of the mean square over the week's draws weighted by volume.
const OUTLET_RMS_K: f64 = 0.5;
/// The largest such difference, K: a draw at the edge of running out.
const OUTLET_K: f64 = 3.0;
/// Electricity of a heat pump week (relative): the aim; the reference moves by less than 0.1 % at half its
/// resolution.
const PUMP_ELECTRICITY: f64 = 0.005;
/// Condensate (relative): a small difference of two humidities, and so steep in the condensing temperature.
const PUMP_CONDENSATE: f64 = 0.015;
/// Usable volume of a full draw, share of the tank: a quarter of one of 12 slots.
const USABLE: f64 = 0.022;
/// Heat delivered along a full draw (relative to the whole draw's): when the elements start depends on when a
/// slot passes their sensors, a minute of 4,500 W being 1 % of it.
const DELIVERED: f64 = 0.015;

fn elements(fixture: &Fixture, element_w: f64) -> Elements {
    let element = |place: &str| Element {
        power_w: element_w,
        height: fixture.number(&["parameters", &format!("{place}_element_height")]),
        sensor: fixture.number(&["parameters", &format!("{place}_sensor_height")]),
    };
    Elements { upper: element("upper"), lower: element("lower") }
}

fn model(fixture: &Fixture, inlet_stir: f64, deadband_k: f64, source: Source) -> Model {
    let p = |name: &str| fixture.number(&["parameters", name]);
    let model = Model {
        volume_m3: p("volume_m3"),
        height_m: p("height_m"),
        standby_w_per_k: p("ua_w_per_k"),
        inlet_stir,
        setpoint_c: p("setpoint_c"),
        deadband_k,
        idle_w: 0.0,
        source,
        slots: YEARLY_SLOTS,
    };
    let conductivity = model.k_area() * model.height_m / model.volume_m3;
    let reference = p("conductivity_w_per_m_k");
    assert!((conductivity / reference - 1.0).abs() < 1e-12, "the fixture is for another conductivity");
    assert_eq!(p("setpoint_c"), p("start_c"), "a simulated heater starts at its setpoint");
    assert_eq!(
        p("volumetric_heat_j_per_m3_k"),
        MEAN_VOLUMETRIC_HEAT_J_PER_M3_K,
        "the fixture is for another water"
    );
    model
}

fn room(fixture: &Fixture) -> Constant {
    Constant::new(fixture.number(&["parameters", "room_c"]), 0.007, 101_325.0)
}

/// A week as simulated, with its differences in the outlet temperatures.
struct Week<'m> {
    sim: Sim<'m>,
    stored_change_j: f64,
    /// Root of the mean square of the draws' mean outlet temperatures, by volume, K.
    rms: Worst,
    /// The largest of them, K.
    largest: Worst,
}

/// Takes a heater through the draws of a fixture.
fn week<'m>(fixture: &Fixture, model: &'m Model, air: &mut Constant) -> Week<'m> {
    let cold = fixture.number(&["parameters", "inlet_c"]);
    let mut sim = Sim::new(model);
    let stored = sim.stored_j();
    let (mut now, mut square, mut volume) = (0.0, 0.0, 0.0);
    let mut largest = Worst::of("mean outlet temperature of a draw, largest of the week, K");
    let columns = ["start_s", "litres", "litres_per_minute", "mean_outlet_c"];
    for [start, litres, per_minute, mean_c] in fixture.table("draws").rows(columns) {
        sim.advance(start - now, air);
        let (m3, flow) = (litres / 1000.0, per_minute / 60_000.0);
        let (mut left, mut heat) = (m3, 0.0);
        while left > 1e-12 {
            let longest = flow * LONGEST_PIECE_S;
            let wanted = if left < longest { left } else { longest };
            let (v, t) = sim.draw_some(wanted, 1.0 / flow, cold, air);
            heat += v * t;
            left -= v;
        }
        now = start + m3 / flow;
        largest.see(heat / m3, mean_c, start);
        square += m3 * (heat / m3 - mean_c) * (heat / m3 - mean_c);
        volume += m3;
    }
    sim.advance(7.0 * 86_400.0 - now, air);
    let mut rms = Worst::of("mean outlet temperature of a draw, root mean square by volume, K");
    rms.see(libm::sqrt(square / volume), 0.0, "week");
    Week { stored_change_j: sim.stored_j() - stored, sim, rms, largest }
}

fn relative(what: &'static str, ours: f64, reference: f64) -> Worst {
    let mut worst = Worst::of(what);
    worst.see_relative(ours, reference, "week");
    worst
}

#[test]
fn a_week_of_the_resistance_tank_meets_the_fine_grid() {
    let fixture = Fixture::load("tank_week");
    let p = |name: &str| fixture.number(&["parameters", name]);
    let source = Source::Elements(elements(&fixture, p("element_w")));
    let model = model(&fixture, p("inlet_zone_share"), p("deadband_k"), source);
    let week = week(&fixture, &model, &mut room(&fixture));
    let totals = |name| fixture.number(&["totals", name]);
    let reference = totals("upper_element_j") + totals("lower_element_j") - totals("stored_change_j");
    let ours = week.sim.totals();
    hold([
        (relative("element heat of a week", ours.heat_in_j - week.stored_change_j, reference), WEEK_ENERGY),
        (relative("heat delivered in a week", ours.delivered_j, totals("delivered_j")), WEEK_ENERGY),
        (relative("standby loss of a week", ours.standby_j, totals("lost_j")), WEEK_STANDBY),
        (week.rms, OUTLET_RMS_K),
        (week.largest, OUTLET_K),
    ]);
}

#[test]
fn a_week_of_the_heat_pump_tank_meets_the_fine_grid() {
    let fixture = Fixture::load("heat_pump_week");
    let q = |name: &str| fixture.number(&["heat_pump", name]);
    let source = Source::HeatPump {
        pump: heat_pump(&fixture, "heat_pump"),
        sensor: q("sensor_height"),
        backup: Some(elements(&fixture, fixture.number(&["parameters", "element_w"]))),
        backup_drop_k: q("backup_drop_k"),
    };
    let stir = fixture.number(&["parameters", "inlet_zone_share"]);
    let model = model(&fixture, stir, q("deadband_k"), source);
    let w =
        humidity_ratio_from_relative_humidity(q("air_c"), q("air_relative_humidity"), q("air_pressure_pa"));
    assert_eq!(q("air_c"), fixture.number(&["parameters", "room_c"]), "one room");
    let week = week(&fixture, &model, &mut Constant::new(q("air_c"), w, q("air_pressure_pa")));
    let totals = |name| fixture.number(&["totals", name]);
    let reference = totals("backup_j") + totals("pump_heat_j") - totals("stored_change_j");
    let ours = week.sim.totals();
    assert_eq!((totals("backup_j"), ours.elements_j), (0.0, 0.0), "a week without the backup");
    // Electricity at equal storage: what is stored less has to be made up at the week's mean efficiency.
    let electricity = |total: f64, heat: f64, stored: f64| total * (1.0 - stored / heat);
    let reference_electricity = electricity(
        totals("backup_j") + totals("pump_electricity_j"),
        totals("backup_j") + totals("pump_heat_j"),
        totals("stored_change_j"),
    );
    let electricity = electricity(ours.electricity_j, ours.heat_in_j, week.stored_change_j);
    hold([
        (relative("heat of a week", ours.heat_in_j - week.stored_change_j, reference), WEEK_ENERGY),
        (relative("electricity of a week", electricity, reference_electricity), PUMP_ELECTRICITY),
        (relative("condensate of a week", ours.condensate_kg, totals("condensate_kg")), PUMP_CONDENSATE),
        (relative("heat delivered in a week", ours.delivered_j, totals("delivered_j")), WEEK_ENERGY),
        (relative("standby loss of a week", ours.standby_j, totals("lost_j")), WEEK_STANDBY),
        (week.rms, OUTLET_RMS_K),
        (week.largest, OUTLET_K),
    ]);
}

/// One full draw: cumulated volume and heat delivered after each piece, and the outlet of each slot's water
/// with the volume drawn when its middle left.
struct FullDraw {
    delivered: Vec<(f64, f64)>,
    slots: Vec<(f64, f64)>,
}

impl FullDraw {
    fn run(model: &Model, cold_c: f64, flow: f64, mut air: Constant) -> Self {
        // In fine steps, as the rating test runs it.
        let mut sim = Sim::new(model).with_pump_step(300.0);
        let slot = model.volume_m3 / model.slots as f64;
        let mut drawn = 0.0;
        let mut out = Self { delivered: vec![(0.0, 0.0)], slots: Vec::new() };
        let mut of_slot = 0.0;
        while drawn < 1.3 * model.volume_m3 {
            // Rating tests draw in pieces of 10 s; none is longer than what is left of the top slot.
            let (v, t) = sim.draw_some(flow * 10.0, 1.0 / flow, cold_c, &mut air);
            drawn += v;
            of_slot += v * t;
            out.delivered.push((drawn, sim.totals().delivered_j));
            let whole = (out.slots.len() + 1) as f64 * slot;
            if drawn > whole - 1e-6 * slot {
                out.slots.push((whole - 0.5 * slot, of_slot / slot));
                of_slot = 0.0;
            }
        }
        out
    }

    /// Volume drawn when the outlet falls to a temperature: a slot's belongs to its middle, straight between.
    fn usable_m3(&self, end_c: f64) -> f64 {
        let falls = self.slots.windows(2).find(|pair| pair[0].1 > end_c && pair[1].1 <= end_c);
        let [(v0, t0), (v1, t1)] = falls.expect("the tank runs out") else { unreachable!("windows of 2") };
        v0 + (v1 - v0) * (t0 - end_c) / (t0 - t1)
    }

    fn delivered_j(&self, drawn: f64) -> f64 {
        let pair = self.delivered.windows(2).find(|pair| pair[1].0 >= drawn).expect("drawn past the end");
        pair[0].1 + (pair[1].1 - pair[0].1) * (drawn - pair[0].0) / (pair[1].0 - pair[0].0)
    }
}

#[test]
fn full_draws_meet_the_fine_grid() {
    let fixture = Fixture::load("tank_depletion");
    let p = |name: &str| fixture.number(&["parameters", name]);
    let flow = fixture.number(&["flow_m3_per_s"]);
    let mut usable = Worst::of("usable volume of a full draw, share of the tank");
    let mut delivered = Worst::of("heat delivered along a full draw, share of the whole draw's");
    for case in fixture.0["cases"].as_array().expect("cases") {
        let number = |name: &str| case[name].as_f64().expect("a number");
        let place = (number("element_w"), number("inlet_zone_share"));
        let source = Source::Elements(elements(&fixture, place.0));
        let model = model(&fixture, place.1, p("deadband_k"), source);
        let draw = FullDraw::run(&model, p("inlet_c"), flow, room(&fixture));
        // 15 °F below the start, as in the federal first-hour test.
        let ours = draw.usable_m3(p("start_c") - 15.0 / 1.8);
        usable.see(ours / model.volume_m3, number("usable_m3") / model.volume_m3, place);
        let rows = Table::new(&case["outlet"]).rows(["drawn_m3", "delivered_j_by_the_end_of_that_second"]);
        let whole = rows.last().expect("rows")[1];
        for [middle, heat] in rows {
            let ours = draw.delivered_j(middle + 0.5 * flow);
            delivered.see(ours / whole, heat / whole, (place, middle));
        }
    }
    hold([(usable, USABLE), (delivered, DELIVERED)]);
}
