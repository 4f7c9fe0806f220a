//! Hours counted, years watched, schedules.

use super::{by_hour, find, of};
use tankful::core::calendar::{DayOfYear, Month};
use tankful::core::candidates::CandidateId;
use tankful::core::case::{HeaterKind, PeakSeason, YesNo};
use tankful::core::pipeline::{Cache, Run, advise};
use tankful::core::simulate::year;
use tankful::core::tariff::hours::Meter;
use tankful::core::tariff::{Hours, schedule};
use tankful::core::units::celsius;
use tankful::job::answers::Answers;
use tankful::job::complete::complete;

#[test]
fn peak_hours_are_counted_by_hand() {
    let mut t = by_hour(0.5, 0.1).prices.tariff;
    assert_eq!(
        (t.peak_share(0, false, 15), t.peak_share(0, false, 16), t.peak_share(0, false, 20)),
        (0.0, 1.0, 1.0)
    );
    assert_eq!((t.peak_share(0, false, 21), t.peak_share(0, true, 17)), (0.0, 0.0));
    t.weekdays_only.value = YesNo::No;
    assert_eq!(t.peak_share(0, true, 17), 1.0);
    // Half hours, and over midnight.
    t.from_hour.value = 22.5;
    t.to_hour.value = 6.0;
    assert_eq!(
        (t.peak_share(3, false, 22), t.peak_share(3, false, 23), t.peak_share(3, false, 5)),
        (0.5, 1.0, 1.0)
    );
    assert_eq!((t.peak_share(3, false, 6), t.peak_hours()), (0.0, 7.5));
    t.season.value = PeakSeason::Summer;
    assert_eq!(
        (t.peak_share(4, false, 23), t.peak_share(5, false, 23), t.peak_share(8, false, 23)),
        (0.0, 1.0, 1.0)
    );
    t.season.value = PeakSeason::Winter;
    assert_eq!(
        (t.peak_share(2, false, 23), t.peak_share(9, false, 23), t.peak_share(10, false, 23)),
        (1.0, 0.0, 1.0)
    );
    // From and to alike: none. Beyond the day: nothing breaks.
    t.from_hour.value = 6.0;
    assert_eq!((0..30).map(|h| t.peak_share(0, false, h)).sum::<f64>(), 0.0);
}

/// A kilowatt-hour in every hour of the year: 261 weekdays with five peak hours.
#[test]
fn level_use_costs_the_closed_form() {
    let mut hours = Hours::default();
    for day in DayOfYear::all() {
        for hour in 0..24 {
            hours.add(day.month().index(), day.is_weekend(), hour, 1.0);
        }
    }
    let t = by_hour(0.5, 0.1).prices.tariff;
    let closed = 8_760.0 * 0.1 + 261.0 * 5.0 * 0.4;
    let cost: f64 = Month::ALL
        .iter()
        .zip(t.shares(&hours))
        .map(|(month, share)| f64::from(month.days()) * 24.0 * t.mean_price(share))
        .sum();
    assert!((cost - closed).abs() < 1e-9, "{cost} {closed}");
    assert_eq!(hours.total(), 8_760.0);
    // A day, hour or month that is none is not counted.
    hours.add(12, false, 3, 1.0);
    hours.add(11, true, 24, 1.0);
    assert_eq!(hours.total(), 8_760.0);
}

#[test]
fn a_watched_year_is_the_same_year_and_its_hours_are_all_of_it() {
    let case = complete(&Answers::default());
    let mut cache = Cache::default();
    let run = Run::new(case, &mut cache);
    for (c, model) in run.heaters(&mut cache) {
        let plain = year::simulate(&model, &run.house(), None);
        let (watched, meter) = year::watched(&model, &run.house(), Meter::default());
        assert_eq!(plain, watched, "{:?}", c.id);
        let (all, year_kwh) = (meter.hours().total(), plain.electricity_year_kwh());
        // Sums in another order; what the last draw of the year still owes.
        assert!((all - year_kwh).abs() <= 1e-6 * year_kwh + 1e-9, "{:?}: {all} {year_kwh}", c.id);
    }
}

/// With one price the costs are the verdict's, to the bit, and there is nothing to schedule.
#[test]
fn one_price_costs_what_the_verdict_says() {
    let case = complete(&Answers::default());
    let outcome = advise(&case);
    let flat = of(&case);
    assert!(!flat.by_hour);
    for c in &flat.candidates {
        let verdict = outcome.of(c.id).expect("an outcome");
        assert_eq!(c.tariff_cost, c.electricity_kwh * case.prices.electricity.value);
        assert_eq!(c.electricity_kwh, verdict.year.electricity_year_kwh());
        if verdict.year.fuel_year_kwh() == 0.0 {
            assert_eq!(c.tariff_cost, verdict.cost.energy_year);
        }
        assert!(c.schedule.is_none() && c.peak_share == 0.0);
    }
    // Two prices that are the same are one price.
    let price = case.prices.electricity.value;
    let alike = of(&by_hour(price, price));
    for (a, b) in alike.candidates.iter().zip(&flat.candidates) {
        // Sums in another order.
        assert!((a.tariff_cost - b.tariff_cost).abs() <= 1e-6 * b.tariff_cost && a.schedule.is_none());
    }
    // A peak that is cheaper than the rest is not avoided.
    assert!(of(&by_hour(0.1, 0.3)).candidates.iter().all(|c| c.schedule.is_none()));
}

#[test]
fn a_dearer_peak_never_makes_a_schedule_save_less() {
    let at = [0.2, 0.4, 0.8].map(|peak| of(&by_hour(peak, 0.1)));
    for pair in at.windows(2) {
        for (cheap, dear) in pair[0].candidates.iter().zip(&pair[1].candidates) {
            let (Some(a), Some(b)) = (&cheap.schedule, &dear.schedule) else { continue };
            assert!(b.saves >= a.saves, "{:?}: {} then {}", cheap.id, a.saves, b.saves);
            assert!(a.peak_share <= cheap.peak_share, "{:?}", cheap.id);
            assert_eq!(a.mean_day_kwh.len(), 24);
        }
    }
    // An electric tank can leave most of its peak: the tank is a store.
    let tank = find(&at[2], CandidateId::ElectricTank);
    let schedule = tank.schedule.as_ref().expect("a schedule");
    assert!(schedule.peak_share < 0.5 * tank.peak_share && schedule.saves > 0.0, "{schedule:?} {tank:?}");
}

/// What is advised keeps people warm; the setpoint is raised only behind a mixing valve, and not above 60 °C.
#[test]
fn comfort_and_scald_come_first() {
    for (valve, setpoint_c) in [(YesNo::No, 51.0), (YesNo::Yes, 51.0), (YesNo::Yes, 63.0), (YesNo::No, 44.0)]
    {
        let mut case = by_hour(0.6, 0.1);
        case.site.mixing_valve.value = valve;
        case.heater.setpoint.value = celsius(setpoint_c);
        for c in &of(&case).candidates {
            let Some(s) = &c.schedule else { continue };
            let raised = matches!(valve, YesNo::Yes) && setpoint_c < schedule::HIGHEST_C;
            assert_eq!(s.raised_c, raised.then_some(schedule::HIGHEST_C), "{:?}", c.id);
            assert!(!s.advised || (s.morning_warm && s.saves > 0.0 && s.colder_s_a_day < 30.0), "{c:?}");
        }
    }
}

#[test]
fn fuel_has_no_schedule() {
    let mut case = by_hour(0.6, 0.1);
    case.heater.kind.value = HeaterKind::Gas;
    case.heater.input.value = tankful::core::units::watts(11_700.0);
    case.heater.uniform_energy_factor.value = 0.6;
    assert!(find(&of(&case), CandidateId::Keep).schedule.is_none());
}
