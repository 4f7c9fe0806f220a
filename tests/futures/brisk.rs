//! The year at a brisk pace by itself: its account, a closed form, and how near it comes to the year at the ordinary pace.

use crate::houses;
use proptest::prelude::*;
use rayon::prelude::*;
use tankful::core::candidates::CandidateId;
use tankful::core::case::Case;
use tankful::core::draws::DrawYear;
use tankful::core::futures::summary::quantile;
use tankful::core::futures::unknowns::Unknowns;
use tankful::core::futures::{Study, Wishes};
use tankful::core::heat_pump::table::Table;
use tankful::core::outcome::YearResult;
use tankful::core::pipeline::{Cache, Run};
use tankful::core::simulate::morning;
use tankful::core::simulate::year::{self, House};
use uom::si::energy::joule;

/// Every candidate's year in a case at both paces: brisk and ordinary.
fn both(case: Case) -> Vec<(CandidateId, YearResult, YearResult)> {
    let mut cache = Cache::default();
    let run = Run::new(case, &mut cache);
    let house = run.house();
    let gathered = house.draws.gathered();
    let heaters = run.heaters(&mut cache);
    heaters
        .into_iter()
        .map(|(candidate, model)| {
            let table = model.pump().map(|pump| Table::of(pump, house.room.pressure_pa));
            let brisk = year::brisk(&model, table.as_ref(), &House { draws: &gathered, ..run.house() });
            (candidate.id, brisk, year::simulate(&model, &house, None))
        })
        .collect()
}

fn energy_kwh(year: &YearResult) -> f64 {
    year.electricity_year_kwh() + year.fuel_year_kwh()
}

/// Random houses and futures of them, every candidate: 95 of 100 brisk years are within 1.5 % of the ordinary one's energy, and
/// none is 5 % off. Seen over 900: 1.1 % and 4.6 %, before anything is taken off near a case that is known. What is left is
/// mostly when a heat pump's elements start in rooms near the limit of its air.
#[test]
fn brisk_years_come_near_ordinary_ones() {
    let mut off: Vec<f64> = (0..24u32)
        .into_par_iter()
        .flat_map_iter(|n| {
            let open = houses::answered(n);
            let study = Study::new(&open, Wishes { futures: 8, seed: 99 });
            let (case, _) = study.case_at(&study.future(n % 8));
            both(case)
                .into_iter()
                .map(|(_, brisk, whole)| (energy_kwh(&brisk) / energy_kwh(&whole) - 1.0).abs())
        })
        .collect();
    off.sort_by(f64::total_cmp);
    let [median, most] = [0.5, 0.95].map(|share| quantile(&off, share));
    println!("{} years: median {:.2} %, 95th {:.2} %", off.len(), 100.0 * median, 100.0 * most);
    assert!(off.len() > 150 && most < 0.015 && off.last().is_some_and(|worst| *worst < 0.05), "{off:?}");
}

/// Nobody draws: an electric tank uses what it loses, and that is the closed form of a tank at rest: its conductance times
/// what its mean lies above the room.
#[test]
fn a_tank_at_rest_uses_what_it_loses() {
    let case = houses::silent("us-ma-boston", "basement", "electric").case(&[]);
    let mut cache = Cache::default();
    let run = Run::new(case, &mut cache);
    let nothing = DrawYear::default().gathered();
    let house = House { draws: &nothing, ..run.house() };
    let (_, model) = run.heaters(&mut cache).swap_remove(1);
    let year = year::brisk(&model, None, &house);
    let lost_kwh = year.standby.get::<joule>() / 3.6e6;
    assert!((energy_kwh(&year) / lost_kwh - 1.0).abs() < 0.01);
    // Between the setpoint and a deadband below it; the room between its coldest and warmest.
    let at = |over_k: f64| model.standby_w_per_k * over_k * 8.76;
    let mean_c = (0..365).map(|day| house.room.undisturbed_mean_c(f64::from(day))).sum::<f64>() / 365.0;
    let most = at(model.setpoint_c - mean_c + 1.0);
    let least = at(model.setpoint_c - model.deadband_k - mean_c - 3.0);
    assert!((least..most).contains(&lost_kwh), "{least} {lost_kwh} {most}");
    assert_eq!(year.delivered_kwh.iter().sum::<f64>(), 0.0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    /// Any house, any position of what is not known: finite, and an account that closes to rounding.
    #[test]
    fn any_year_keeps_its_account(n in 0u32..400, z in proptest::collection::vec(-3.0..3.0f64, 44)) {
        for (heater, brisk, _) in both(houses::answered(n).case(&z)) {
            prop_assert!(energy_kwh(&brisk).is_finite() && energy_kwh(&brisk) > 0.0);
            let (residual, through) = (brisk.residual.get::<joule>(), brisk.throughput.get::<joule>());
            prop_assert!(residual.abs() < 1e-8 * through, "{heater:?}: {residual}");
            let (elements, all) = (brisk.elements_kwh.iter().sum::<f64>(), brisk.electricity_year_kwh());
            prop_assert!(elements <= all + 1e-9);
        }
    }
}

/// The busiest morning without its picture falls short by what the whole one says: within a fiftieth of the water, and the same
/// heaters run cold but for those on the verge.
#[test]
fn mornings_without_a_picture_fall_short_alike() {
    let (mut differ, mut all) = (0, 0);
    for n in 0..30 {
        let case = houses::answered(n).case(&[]);
        let mut cache = Cache::default();
        let run = Run::new(case.clone(), &mut cache);
        let (day, cold_c) = run.coldest();
        let room = run.house().room;
        for (candidate, model) in run.heaters(&mut cache) {
            let table = model.pump().map(|pump| Table::of(pump, room.pressure_pa));
            let whole = morning::simulate(&model, &case.household, cold_c, day.index(), room).short_share();
            let short =
                morning::short_share(&model, table.as_ref(), &case.household, cold_c, day.index(), room);
            assert!((short - whole).abs() < 0.02, "{n} {:?}: {short} {whole}", candidate.id);
            differ += u32::from((short > 0.05) != (whole > 0.05));
            all += 1;
        }
    }
    assert!(all > 200 && differ * 50 < all, "{differ} of {all}");
}
