//! CO₂ over the years against closed forms.

use tankful::core::candidates::CandidateId;
use tankful::core::case::Case;
use tankful::core::life::present::expected_left;
use tankful::core::money::emission;
use tankful::core::outcome::Outcome;
use tankful::core::pipeline::advise;
use tankful::job::answers::Answers;
use tankful::job::complete::complete;

fn advised(case: &Case) -> (Outcome, Vec<emission::Emission>) {
    let outcome = advise(case);
    let paths = emission::of(case, &outcome);
    (outcome, paths)
}

#[test]
fn emissions_are_the_closed_form() {
    let mut case = complete(&Answers::default());
    case.prices.horizon_years.value = 10.0;
    case.prices.grid_change.value = -0.03;
    let (outcome, paths) = advised(&case);
    for e in &paths {
        let first = outcome.of(e.id).expect("an outcome").cost.emission_kg;
        assert!((e.grid_kg + e.fuel_kg - first).abs() <= 1e-9 * first.abs());
        assert_eq!(e.by_year.len(), 10);
        let [all, low, high] = e.total();
        assert!(low <= all && all <= high, "{e:?}");
        if e.id != CandidateId::Keep {
            // A geometric series of the grid's part, and the fuel's ten times.
            let series = (1.0 - libm::pow(0.97, 10.0)) / 0.03;
            let closed = e.grid_kg * series + 10.0 * e.fuel_kg;
            assert!((all - closed).abs() <= 1e-9 * closed.abs(), "{e:?} {closed}");
        }
    }
}

/// A grid that gets cleaner never emits more; with no change and a long-lived heater every year is the first.
#[test]
fn a_cleaner_grid_never_emits_more() {
    let mut case = complete(&Answers::default());
    case.heater.age_years.value = 0.0;
    case.prices.horizon_years.value = 5.0;
    assert!(expected_left(&case.heater) > 5.0);
    let totals = [0.0, -0.05, -0.15].map(|change| {
        case.prices.grid_change.value = change;
        advised(&case).1
    });
    for e in &totals[0] {
        assert!(e.by_year.iter().all(|kg| (kg - e.by_year[0]).abs() < 1e-9), "{e:?}");
    }
    for pair in totals.windows(2) {
        for (a, b) in pair[0].iter().zip(&pair[1]) {
            assert!(a.grid_kg < 0.0 || b.total()[0] <= a.total()[0] + 1e-9);
        }
    }
}
