//! The rating test and its calibration against published figures.
use crate::label_grid::label;
use proptest::prelude::*;
use tankful::core::case::HeaterKind::{Electric, Gas, HeatPump};
use tankful::core::heater::{Constant, Model, Sim, Source};
use tankful::core::label::calibration::calibrate;
use tankful::core::label::cop_map;
use tankful::core::label::patterns::Pattern;
use tankful::core::label::present;
use tankful::core::label::rated::Standing;
use tankful::core::label::rating_test::{DELIVERED_C, rate};
use tankful::core::label::simulated_use::simulated_use;
use tankful::core::units::{GALLON_M3, Unit};
use tankful::core::water::MEAN_VOLUMETRIC_HEAT_J_PER_M3_K;

/// Minimum uniform energy factor, electric storage of 20 to 55 gal, and gas of 20 to 55 gal and above (there of burners
/// that condense): 10 CFR 430.32(d), from memory, as a − b · gallons by draw pattern.
fn electric_minimum(pattern: Pattern, gal: f64) -> f64 {
    let (a, b) = match pattern {
        Pattern::VerySmall => (0.8808, 0.0008),
        Pattern::Low => (0.9254, 0.0003),
        Pattern::Medium => (0.9307, 0.0002),
        Pattern::High => (0.9349, 0.0001),
    };
    a - b * gal
}

fn gas_minimum(pattern: Pattern, gal: f64) -> f64 {
    let (a, b) = match (pattern, gal > 55.0) {
        (Pattern::VerySmall, false) => (0.3456, 0.0020),
        (Pattern::Low, false) => (0.5982, 0.0019),
        (Pattern::Medium, false) => (0.6483, 0.0017),
        (Pattern::High, false) => (0.6920, 0.0013),
        (Pattern::VerySmall, true) => (0.6470, 0.0006),
        (Pattern::Low, true) => (0.7689, 0.0005),
        (Pattern::Medium, true) => (0.7897, 0.0004),
        (Pattern::High, true) => (0.8072, 0.0003),
    };
    a - b * gal
}

/// A plain tank with 4,500 W elements comes out on its minimum at every size (above 55 gal: of the relation carried on,
/// since the standard asks for a heat pump there) with a loss that foam of 1 to 3 in allows: 0.5 to 1.2 W/K
/// for each square metre or so, which a tank of 50 gal has two of.
#[test]
fn plain_electric_tanks_stand_on_their_minimum() {
    for gal in [30.0, 40.0, 50.0, 55.0, 65.0, 80.0] {
        let first_hour = present::typical_first_hour_rating_gal(Electric, gal).round();
        let pattern = Pattern::for_first_hour(first_hour * GALLON_M3);
        let minimum = electric_minimum(pattern, gal);
        let found = calibrate(&label(Electric, gal, minimum, first_hour, 4_500.0), DELIVERED_C);
        assert_eq!(found.standing, Standing::Met, "{gal} gal: {:?}", found.says);
        let rating = rate(&found.model);
        assert!((rating.simulated_use.uniform_energy_factor - minimum).abs() < 0.01);
        let (ua, surface) =
            (found.model.standby_w_per_k, libm::pow(found.model.volume_m3 / 0.170, 2.0 / 3.0));
        println!("{gal} gal: {pattern:?}, minimum {minimum:.4}, standby {ua:.2} W/K");
        assert!((0.7..1.4).contains(&(ua / surface)), "{gal} gal: {ua} W/K");
        // The procedure's own standby coefficient is the model's, over the elements' efficiency of 0.98; its
        // period begins with the tank unevenly warm.
        let measured = rating.simulated_use.standby_w_per_k;
        assert!((measured / ua - 1.0).abs() < 0.05, "{gal} gal: {measured} W/K measured, {ua} in the model");
    }
}

/// Gas tanks come out on their minimum at every size: plain flues up to 55 gal, above it burners that condense, as the
/// minimum there cannot be met without. Recovery: 0.74 to 0.82 of plain flues, 0.86 to 0.98 of the others; the
/// jacket, flue and pilot lose 2 to 9 W/K (common practice, no source). With 30 to 76 kBtu/h, as sizes come.
#[test]
fn gas_tanks_stand_on_their_minimum() {
    for (gal, kbtu_per_hour) in
        [(30.0, 30.0), (30.0, 40.0), (40.0, 40.0), (50.0, 40.0), (55.0, 40.0), (65.0, 65.0), (80.0, 76.0)]
    {
        let input_w = Unit::BtuPerHour.to_base(1e3 * kbtu_per_hour);
        // The rule of thumb of the grid: most of the tank, and what the burner recovers in the hour.
        let stronger = input_w / present::typical_input_w(Gas) * if gal > 55.0 { 0.88 / 0.79 } else { 1.0 };
        let first_hour = (0.75 * gal + 38.0 * stronger).round();
        let pattern = Pattern::for_first_hour(first_hour * GALLON_M3);
        let minimum = gas_minimum(pattern, gal);
        let found = calibrate(&label(Gas, gal, minimum, first_hour, input_w), DELIVERED_C);
        assert_eq!(found.standing, Standing::Met, "{gal} gal: {:?}", found.says);
        let use_ = rate(&found.model).simulated_use;
        assert!((use_.uniform_energy_factor - minimum).abs() < 0.01);
        let (recovery, ua) = (use_.recovery_efficiency, found.model.standby_w_per_k);
        println!("{gal} gal: {pattern:?}, minimum {minimum:.4}, recovery {recovery:.3}, standby {ua:.2} W/K");
        let usual = if gal > 55.0 { 0.86..0.98 } else { 0.74..0.82 };
        assert!(usual.contains(&recovery), "{gal} gal: {recovery}");
        assert!((2.0..9.0).contains(&ua), "{gal} gal: {ua} W/K");
    }
}

/// A 4,500 W element warms 20.5 gal an hour by 90 °F (follows from 3,412 Btu/kWh and 8.33 lb/gal), less what a
/// cold tank loses meanwhile; to 1 %, for the simulation's constant heat capacity.
#[test]
fn an_element_recovers_twenty_gallons() {
    let mut model = calibrate(&label(Electric, 50.0, 0.93, 62.0, 4_500.0), DELIVERED_C).model;
    model.standby_w_per_k = 0.0;
    // Everything at 40 °F, to be warmed to 130 °F.
    let cold = Model { setpoint_c: 40.0 / 9.0, ..model.clone() };
    let hot = Model { setpoint_c: 490.0 / 9.0, ..model.clone() };
    let sim = Sim::new(&cold);
    let mut hot = Sim::new(&hot);
    let mut air = Constant::new(10.0, 0.004, 101_325.0);
    // Drains the hot tank with cold water, then times the recovery.
    let volume = model.volume_m3;
    let mut left = volume;
    while left > 1e-9 {
        let (v, _) = hot.draw_some(left, 0.0, sim.outlet_c(), &mut air);
        left -= v;
    }
    let cold_j = hot.stored_j();
    let mut hours = 0.0;
    hot.advance(1.0, &mut air);
    while !hot.is_idle() {
        hot.advance(10.0, &mut air);
        hours += 10.0 / 3_600.0;
        assert!(hours < 5.0);
    }
    // The water below the lower element stays cold: what counts is the heat, as gallons by 90 °F.
    let warmed_m3 = (hot.stored_j() - cold_j) / (MEAN_VOLUMETRIC_HEAT_J_PER_M3_K * 50.0);
    let gallons_an_hour = warmed_m3 / GALLON_M3 / hours;
    assert!((gallons_an_hour / 20.5 - 1.0).abs() < 0.02, "{gallons_an_hour} gal/h");
}

/// What the first-hour test waits for: the water above the upper element is warmed by that alone, so the wait is its heat over
/// the element's power (closed form; half a layer of the tank is what the element's height may be off by). Never longer than
/// asked for; none where the top is hot.
#[test]
fn the_top_is_waited_for_as_long_as_its_heat_takes() {
    let found = calibrate(&label(Electric, 50.0, 0.93, 62.0, 4_500.0), DELIVERED_C).model;
    let model = Model { standby_w_per_k: 0.0, ..found };
    let Source::Elements(elements) = &model.source else { panic!("elements") };
    let mut air = Constant::new(10.0, 0.004, 101_325.0);
    let cold_c = 5.0;
    let mut sim = Sim::new(&model);
    assert!(sim.wait_for_top(3_600.0, &mut air) == 0.0, "the top is hot");
    let mut left = model.volume_m3;
    while left > 1e-9 {
        let (v, _) = sim.draw_some(left, 0.0, cold_c, &mut air);
        left -= v;
    }
    assert!((sim.wait_for_top(60.0, &mut air) - 60.0).abs() < 1e-6);
    let stored_j = sim.stored_j();
    let waited_s = 60.0 + sim.wait_for_top(1e6, &mut air);
    assert!(sim.top_is_satisfied() && !sim.is_idle(), "the lower element goes on");
    let power_w = elements.upper.power_w;
    assert!((sim.stored_j() - stored_j - power_w * (waited_s - 60.0)).abs() < 1e-6 * stored_j);
    let above_m3 = model.volume_m3 * (1.0 - elements.upper.height);
    let closed_s = MEAN_VOLUMETRIC_HEAT_J_PER_M3_K * above_m3 * (model.setpoint_c - cold_c) / power_w;
    let half_a_layer = 0.5 / (model.slots as f64 * (1.0 - elements.upper.height));
    assert!((waited_s / closed_s - 1.0).abs() < half_a_layer + 0.001, "{waited_s} {closed_s}");
}

/// Laboratory ranges of integrated units (from memory): 1.0 to 2.0 kW of heat, 350 to 800 W, 150 to 450 cfm; and a
/// compressor of about 700 W against 4,500 W elements, at hot water (common practice, no source).
#[test]
fn calibrated_heat_pumps_are_within_the_laboratory_ranges() {
    for (gal, factor, first_hour) in
        [(40.0, 3.3, 54.0), (50.0, 3.45, 65.0), (65.0, 3.6, 75.0), (80.0, 3.8, 88.0)]
    {
        let found = calibrate(&label(HeatPump, gal, factor, first_hour, 4_500.0), DELIVERED_C);
        assert_eq!(found.standing, Standing::Met, "{gal} gal: {:?}", found.says);
        let pump = found.model.pump().expect("a heat pump").clone();
        let cfm = pump.air_m3_per_s * 2_118.88;
        assert!((150.0..450.0).contains(&cfm), "{gal} gal: {cfm} cfm");
        for water_c in [40.0, 50.0, 57.0] {
            let r = cop_map::at(&pump, 19.7, 0.5, water_c);
            let electric_w = r.compressor_w + pump.fan_w;
            println!("{gal} gal at {water_c} °C: {:.0} W of heat for {electric_w:.0} W", r.heat_w);
            assert!((1_000.0..2_100.0).contains(&r.heat_w) && (350.0..800.0).contains(&electric_w));
        }
    }
}

#[test]
fn the_map_falls_with_hotter_water_and_colder_rooms() {
    let found = calibrate(&label(HeatPump, 50.0, 3.45, 65.0, 4_500.0), DELIVERED_C);
    let map = cop_map::cop_map(found.model.pump().expect("a heat pump"));
    let (rooms, waters) = (map.room_c.len(), map.water_c.len());
    assert_eq!(map.cop.len(), rooms * waters);
    let cop = |room: usize, water: usize| map.cop[room * waters + water];
    for room in 0..rooms {
        for water in 0..waters {
            assert!((1.0..9.0).contains(&cop(room, water)));
            // With cold water in hot air the least lift holds the machine.
            let held = map.water_c[water] - map.room_c[room] < 12.0;
            assert!(water == 0 || held || cop(room, water) < cop(room, water - 1));
            assert!(room == 0 || held || cop(room, water) > cop(room - 1, water));
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]

    /// A better label never uses more: neither on the label nor in the model.
    #[test]
    fn a_higher_factor_uses_less(gal in 30.0..80.0f64, step in 0.02..0.5f64, factor in 2.6..3.4f64) {
        let first_hour = present::typical_first_hour_rating_gal(HeatPump, gal);
        let pattern = Pattern::for_first_hour(first_hour * GALLON_M3);
        let used = |factor: f64| {
            let found = calibrate(&label(HeatPump, gal, factor, first_hour, 4_500.0), DELIVERED_C);
            // A few combinations of size and first hour contradict each other; the factor must hold all the same.
            assert_ne!(found.standing, Standing::Unusable);
            simulated_use(&found.model, pattern).corrected_j()
        };
        prop_assert!(used(factor + step) < used(factor));
        prop_assert!(pattern.label_kwh_per_year(factor + step) < pattern.label_kwh_per_year(factor));
    }

    /// More standby never scores better.
    #[test]
    fn standby_costs(extra in 0.05..3.0f64, gal in 30.0..80.0f64) {
        let model = calibrate(&label(Electric, gal, 0.93, 0.84 * gal + 20.0, 4_500.0), DELIVERED_C).model;
        let leaky = Model { standby_w_per_k: model.standby_w_per_k + extra, ..model.clone() };
        prop_assert!(matches!(model.source, Source::Elements(_)));
        for pattern in Pattern::ALL {
            prop_assert!(
                simulated_use(&leaky, pattern).uniform_energy_factor
                    < simulated_use(&model, pattern).uniform_energy_factor
            );
        }
    }
}
