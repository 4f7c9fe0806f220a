//! Did it do what we said?

use super::{NORTH, SOUTH};
use proptest::prelude::*;
use tankful::core::after::Date;
use tankful::core::after::meter::{
    Against, BadReadings, Compared, Meter, Readings, by_elements_kwh, compare,
};
use tankful::core::candidates::CandidateId;
use tankful::core::outcome::YearResult;

fn readings(meter: Meter, from: i64, days: i64, first_kwh: f64, last_kwh: f64) -> Readings {
    Readings { meter, from: Date::from_days(from), to: Date::from_days(from + days), first_kwh, last_kwh }
}

fn before() -> &'static YearResult {
    &NORTH.outcome.of(CandidateId::Keep).expect("there").year
}

fn own(from: i64, days: i64, used_kwh: f64) -> Result<Compared, BadReadings> {
    let fitted = NORTH.fitted(CandidateId::HeatPump50);
    compare(&fitted, before(), &readings(Meter::Own, from, days, 100.0, 100.0 + used_kwh))
}

/// A span of a common year expects the year's total; the months of a year add up to it.
#[test]
fn a_year_is_the_years_total() {
    let from = Date::parse("2026-03-10").expect("a day").days();
    let year = NORTH.fitted(CandidateId::HeatPump50).year.electricity_year_kwh();
    let whole = own(from, 365, year).expect("readings");
    assert!((whole.expected_kwh / year - 1.0).abs() < 1e-12, "{whole:?}");
    assert_eq!(whole.against, Against::AsExpected);
    let parts: f64 = [0, 100, 200]
        .iter()
        .zip([100, 100, 165])
        .map(|(start, days)| own(from + start, days, 1.0).expect("readings").expected_kwh)
        .sum();
    assert!((parts / year - 1.0).abs() < 1e-12);
    // January alone, by the month's own figure.
    let january = Date::parse("2027-01-01").expect("a day").days();
    let expected = own(january, 31, 1.0).expect("readings").expected_kwh;
    assert!((expected - NORTH.fitted(CandidateId::HeatPump50).year.electricity_kwh[0]).abs() < 1e-9);
    // A leap year has a day more, at February's rate.
    let leap = Date::parse("2028-02-01").expect("a day").days();
    let february = own(leap, 29, 1.0).expect("readings").expected_kwh;
    let of_month = NORTH.fitted(CandidateId::HeatPump50).year.electricity_kwh[1];
    assert!((february - of_month * 29.0 / 28.0).abs() < 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// What was expected, measured, is as expected and has no reasons; more and more goes one way only.
    #[test]
    fn measured_as_simulated_is_as_expected(from in 19_000i64..22_000, days in 14i64..1_500, share in 0.0..4.0f64, more in 1.0..2.0f64) {
        let said = own(from, days, 1.0).expect("readings").expected_kwh;
        let same = own(from, days, said).expect("readings");
        prop_assert_eq!((same.against, same.reasons.len()), (Against::AsExpected, 0));
        prop_assert!((same.measured_kwh - same.expected_kwh).abs() < 1e-6 && same.band_kwh.0 < said && said < same.band_kwh.1);
        prop_assert!((same.money.0 - same.money.1).abs() < 1e-6);
        let (a, b) = (own(from, days, said * share).expect("readings"), own(from, days, said * share * more).expect("readings"));
        prop_assert!(a.against <= b.against);
        prop_assert_eq!(a.against == Against::AsExpected, a.reasons.is_empty());
        // A longer span of the same season is known better.
        let short = own(from, 14, 1.0).expect("readings");
        let share_of = |c: &Compared| (c.band_kwh.1 - c.expected_kwh) / c.expected_kwh;
        prop_assert!(share_of(&same) <= share_of(&short) + 1e-12);
    }
}

/// What elements alone would use names the elements as the first reason; a little more names more water.
#[test]
fn the_reason_fits_the_size() {
    let (from, days) = (Date::parse("2026-12-01").expect("a day"), 120);
    let year = NORTH.fitted(CandidateId::HeatPump50).year;
    let elements = by_elements_kwh(year, from, from.plus_days(days));
    let all = own(from.days(), days, elements).expect("readings");
    assert_eq!((all.against, all.reasons[0]), (Against::More, "meter-why-elements-mode"));
    let some = own(from.days(), days, all.band_kwh.1 * 1.02).expect("readings");
    assert_eq!((some.against, some.reasons[0]), (Against::More, "meter-why-more-water"));
    let little = own(from.days(), days, 1.0).expect("readings");
    assert_eq!((little.against, little.reasons[0]), (Against::Less, "meter-why-less-water"));
}

/// From gas to a heat pump the fuel bill falls by what the gas heater burned, and the electricity bill rises.
#[test]
fn bills_change_by_the_difference() {
    let fitted = SOUTH.fitted(CandidateId::HeatPump65);
    let before = &SOUTH.outcome.of(CandidateId::Keep).expect("there").year;
    let at = |meter, first, last| {
        compare(&fitted, before, &readings(meter, 20_800, 365, first, last)).expect("readings")
    };
    let fuel = at(Meter::Fuel, 9_000.0, 9_000.0 - before.fuel_year_kwh());
    assert!((fuel.expected_kwh + before.fuel_year_kwh()).abs() < 1e-6 && fuel.against == Against::AsExpected);
    assert!(fuel.money.0 < 0.0);
    let grid = at(Meter::Electricity, 8_000.0, 8_000.0);
    assert!(
        (grid.expected_kwh - fitted.year.electricity_year_kwh() + before.electricity_year_kwh()).abs() < 1e-6
    );
    // A bill that rose by thousands: first of all something else in the house.
    assert_eq!(at(Meter::Electricity, 8_000.0, 15_000.0).reasons[0], "meter-why-rest-of-house");
}

#[test]
fn readings_that_cannot_be_are_refused() {
    assert!(matches!(own(20_000, 13, 5.0), Err(BadReadings::Span { days: 13, .. })));
    assert!(matches!(own(20_000, -3, 5.0), Err(BadReadings::Span { .. })));
    assert!(matches!(own(20_000, 30, -5.0), Err(BadReadings::Backwards { .. })));
    for bad in [f64::NAN, f64::INFINITY, 1e9] {
        assert!(matches!(own(20_000, 30, bad), Err(BadReadings::OutOfRange { .. })), "{bad}");
    }
}
