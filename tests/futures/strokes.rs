//! The year in strokes by itself: its account, closed forms, and how near it comes to the whole simulation before anything is
//! learned.

use crate::houses;
use proptest::prelude::*;
use tankful::core::case::Case;
use tankful::core::draws::DrawYear;
use tankful::core::futures::unknowns::Unknowns;
use tankful::core::pipeline::{Cache, Run};
use tankful::core::simulate::year;
use tankful::core::strokes::machine::Map;
use tankful::core::strokes::{Climate, Demand, Strokes};

/// Every candidate's year in a case, in strokes and whole, kWh: (electric or fuel) energy.
fn both(case: Case) -> Vec<(String, Strokes, f64)> {
    let mut cache = Cache::default();
    let run = Run::new(case, &mut cache);
    let house = run.house();
    let demand = Demand::of(house.draws);
    let climate = Climate::of(house.mains_c, house.outdoor_c, house.room);
    let heaters = run.heaters(&mut cache);
    heaters
        .into_iter()
        .map(|(candidate, model)| {
            let map = model.pump().map(|pump| Map::of(pump, house.room.pressure_pa));
            let strokes = Strokes::year(&model, map.as_ref(), &demand, &climate, house.room);
            let whole = year::simulate(&model, &house, None);
            let energy = whole.electricity_year_kwh() + whole.fuel_year_kwh();
            (format!("{:?}", candidate.id), strokes, energy)
        })
        .collect()
}

/// Ordinary houses: within 4 % of the whole simulation without any learning (a heat pump's elements start too often, since a
/// thermocline of few slugs is steeper in places), and every account closes to rounding.
#[test]
fn strokes_come_near_the_whole_year() {
    for (place, room, kind) in [
        ("us-ma-boston", "basement", "electric"),
        ("us-tx-houston", "garage", "gas"),
        ("us-mn-minneapolis", "basement", "oil"),
        ("us-fl-miami", "utility", "heat_pump"),
    ] {
        for (heater, strokes, whole) in both(houses::silent(place, room, kind).case(&[])) {
            let off = strokes.energy_kwh() / whole - 1.0;
            assert!(off.abs() < 0.04, "{place} {heater}: {off}");
            let through = strokes.delivered_kwh + strokes.standby_kwh;
            assert!(
                strokes.residual_kwh.abs() < 1e-9 * through,
                "{place} {heater}: {}",
                strokes.residual_kwh
            );
        }
    }
}

/// Nobody draws: an electric tank uses what it loses, and that is the closed form of a tank at rest: its conductance times
/// what its mean lies above the room.
#[test]
fn a_tank_at_rest_uses_what_it_loses() {
    let case = houses::silent("us-ma-boston", "basement", "electric").case(&[]);
    let mut cache = Cache::default();
    let run = Run::new(case, &mut cache);
    let house = run.house();
    let (_, model) = run.heaters(&mut cache).swap_remove(1);
    let climate = Climate::of(house.mains_c, house.outdoor_c, house.room);
    let nothing = Demand::of(&DrawYear::default());
    let strokes = Strokes::year(&model, None, &nothing, &climate, house.room);
    assert!((strokes.energy_kwh() / strokes.standby_kwh - 1.0).abs() < 0.01);
    // Between the setpoint and a deadband below it; the room between its coldest and warmest.
    let at = |over_k: f64| model.standby_w_per_k * over_k * 8.76;
    let mean_c = (0..365).map(|day| house.room.undisturbed_mean_c(f64::from(day))).sum::<f64>() / 365.0;
    let most = at(model.setpoint_c - mean_c + 1.0);
    let least = at(model.setpoint_c - model.deadband_k - mean_c - 3.0);
    assert!((least..most).contains(&strokes.standby_kwh), "{least} {} {most}", strokes.standby_kwh);
    assert_eq!(strokes.delivered_kwh, 0.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    /// Any house, any position of what is not known: finite, an account that closes, and nothing comes of nothing.
    #[test]
    fn any_year_keeps_its_account(n in 0u32..400, z in proptest::collection::vec(-3.0..3.0f64, 44)) {
        for (heater, strokes, _) in both(houses::answered(n).case(&z)) {
            let through = strokes.delivered_kwh + strokes.standby_kwh;
            prop_assert!(strokes.energy_kwh().is_finite() && strokes.energy_kwh() > 0.0);
            prop_assert!(strokes.residual_kwh.abs() < 1e-8 * through, "{}: {}", heater, strokes.residual_kwh);
            prop_assert!(strokes.elements_kwh <= strokes.electricity_kwh + 1e-9);
            prop_assert!((0.0..=8_790.0).contains(&strokes.locked_h));
        }
    }
}
