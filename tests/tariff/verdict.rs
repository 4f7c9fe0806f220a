//! The verdict counts by the hour: against closed forms, against one price, over many tariffs from one cache.

use super::{by_hour, of, with_peak};
use tankful::core::candidates::CandidateId;
use tankful::core::case::{Case, HouseHeat, PeakSeason, Provenance, YesNo};
use tankful::core::money::energy_price::{self, fuel};
use tankful::core::outcome::{CandidateOutcome, Outcome, YearResult};
use tankful::core::pipeline::{Cache, Run, advise};
use tankful::core::simulate::sample::Sample;
use tankful::core::simulate::year;
use tankful::core::tariff::hours::Meter;
use tankful::core::units::Unit;
use tankful::core::{message::Arg, workings};
use tankful::job::answers::Answers;
use tankful::job::complete::complete;
use tankful::job::questions::{Id, Value};

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + b.abs())
}

fn through(case: &Case, cache: &mut Cache) -> Outcome {
    let mut run = Run::new(case.clone(), cache);
    while run.step(cache) {}
    run.finish()
}

fn answered(list: &[(Id, Value)]) -> Case {
    let mut answers = Answers::new();
    for (id, value) in list {
        answers.set(*id, value.clone(), Provenance::Answered).expect("in range");
    }
    complete(&answers)
}

/// Invented houses: a fuel's and an electric one, heated and cooled by electricity, with peaks in parts of the year.
fn houses() -> Vec<Case> {
    let mut all = Vec::new();
    for (n, (place, heater, room)) in [
        ("us-ma-boston", "electric", "basement"),
        ("us-tx-houston", "gas", "garage"),
        ("ca-ab-calgary", "electric", "utility"),
        ("us-fl-miami", "heat_pump", "closet"),
    ]
    .into_iter()
    .enumerate()
    {
        let mut case = answered(&[
            (Id::Place, Value::code(place)),
            (Id::HeaterKind, Value::code(heater)),
            (Id::RoomKind, Value::code(room)),
        ]);
        case.room.house_heat.value = [HouseHeat::Electric, HouseHeat::HeatPump, HouseHeat::Gas][n % 3];
        case.room.house_cooled.value = YesNo::Yes;
        case.room.dehumidifier.value = if n % 2 == 0 { YesNo::Yes } else { YesNo::No };
        let mut case = with_peak(case, 0.52, 0.11);
        let t = &mut case.prices.tariff;
        t.season.value = [PeakSeason::Year, PeakSeason::Summer, PeakSeason::Winter][n % 3];
        (t.from_hour.value, t.to_hour.value) = [(16.0, 21.0), (5.5, 9.0), (22.0, 7.0), (0.0, 24.0)][n];
        t.weekdays_only.value = if n % 2 == 0 { YesNo::Yes } else { YesNo::No };
        all.push(case);
    }
    all
}

/// What uses x kWh at peak hours pays x times the peak price and the low price for the rest: the hours read by a meter of
/// the test's own, the fuel and the house's electricity counted by hand.
#[test]
fn a_candidate_pays_its_hours() {
    for case in houses() {
        let (mut cache, t) = (Cache::default(), &case.prices.tariff);
        let outcome = through(&case, &mut cache);
        let run = Run::new(case.clone(), &mut cache);
        for (c, model) in run.heaters(&mut cache) {
            let (year, meter) = year::watched(&model, &run.house(), Meter::default());
            let (mut all, mut at_peak) = (0.0, 0.0);
            meter.hours().each(|month, weekend, hour, kwh| {
                all += kwh;
                at_peak += kwh * t.peak_share(month, weekend, hour);
            });
            let told = outcome.of(c.id).expect("a candidate");
            let burned = year.fuel_year_kwh() * fuel(c.label.kind, &case.prices).price;
            let closed = at_peak * t.peak.value + (all - at_peak) * t.low.value + burned;
            // The last draw of the year runs past its last hour.
            assert!((told.cost.energy_year - closed).abs() <= 1e-6 * closed, "{:?} {closed}", c.id);
            let share = told.year.peak_share_year();
            assert!((0.0..=1.0).contains(&share) && (share * all - at_peak).abs() <= 1e-6 * all + 1e-9);

            // Of every day's 24 hours so many are the peak's, on five days of seven or all.
            let days = if matches!(t.weekdays_only.value, YesNo::Yes) { 5.0 / 7.0 } else { 1.0 };
            let electric = match case.room.house_heat.value {
                HouseHeat::Electric => 1.0,
                HouseHeat::HeatPump => 1.0 / 2.7,
                _ => 0.0,
            };
            let mut house = 0.0;
            for month in 0..12 {
                let peak = if t.has_peak(month) { days * t.peak_hours() / 24.0 } else { 0.0 };
                let price = peak * t.peak.value + (1.0 - peak) * t.low.value;
                let heat = if electric > 0.0 {
                    electric * price
                } else {
                    energy_price::house_heat(HouseHeat::Gas, &case.prices, 0.0).price
                };
                house += year.heating_makeup_kwh[month] * heat - year.cooling_relief_kwh[month] / 3.0 * price;
                if matches!(case.room.dehumidifier.value, YesNo::Yes) && (4..9).contains(&month) {
                    house -= 0.5 * year.condensate_l[month] * price;
                }
            }
            assert!(near(told.cost.interaction_year, house), "{:?} {house}", c.id);
        }
    }
}

/// Two prices that are the same are one price: the same verdict, and figures to rounding. So is a peak of no hours.
#[test]
fn alike_prices_give_the_verdict_of_one_price() {
    for case in houses() {
        let price = case.prices.electricity.value;
        let mut flat = case.clone();
        flat.prices.tariff.kind = complete(&Answers::default()).prices.tariff.kind;
        let mut none = with_peak(case.clone(), 3.0, price);
        none.prices.tariff.to_hour = none.prices.tariff.from_hour;
        let flat = advise(&flat);
        assert!(flat.candidates.iter().all(|c| c.year.peak_share == [0.0; 12]));
        for case in [with_peak(case, price, price), none] {
            let outcome = advise(&case);
            assert_eq!(outcome.advice.best, flat.advice.best);
            for (a, b) in outcome.candidates.iter().zip(&flat.candidates) {
                // Watched or not, it is the same year.
                let unread = YearResult { peak_share: [0.0; 12], ..a.year.clone() };
                assert_eq!(unread, b.year);
                assert!(near(a.cost.energy_year, b.cost.energy_year), "{:?}", a.candidate.id);
                assert!(near(a.cost.interaction_year, b.cost.interaction_year));
                assert!(near(a.cost.net_present_cost, b.cost.net_present_cost));
                assert_eq!(a.cost.emission_kg, b.cost.emission_kg);
                let says = |c: &CandidateOutcome| -> Vec<_> { c.findings.iter().map(|f| f.fit).collect() };
                assert_eq!(says(a), says(b));
            }
        }
    }
}

/// A dearer peak never costs less, and costs more who uses it; what burns fuel alone does not care. One simulation does
/// for all prices, hours, days and seasons, and for one price again.
#[test]
fn a_dearer_peak_never_costs_less_and_no_price_is_simulated_for() {
    let mut cache = Cache::default();
    let mut case = by_hour(0.1, 0.1);
    // Where the house's own power plays no part.
    case.room.house_cooled.value = YesNo::No;
    case.room.dehumidifier.value = YesNo::No;
    let mut last: Option<Outcome> = None;
    for peak in [0.1, 0.12, 0.2, 0.5, 1.0, 3.0] {
        case.prices.tariff.peak.value = peak;
        let outcome = through(&case, &mut cache);
        if let Some(cheaper) = &last {
            for (x, y) in cheaper.candidates.iter().zip(&outcome.candidates) {
                let electric = y.year.electricity_year_kwh() > 0.0;
                assert!(if electric {
                    y.cost.energy_year > x.cost.energy_year
                        && y.cost.net_present_cost > x.cost.net_present_cost
                } else {
                    y.cost == x.cost
                });
                assert_eq!(y.year, x.year);
            }
        }
        last = Some(outcome);
    }
    let one_price = complete(&Answers::default()).prices.tariff;
    let mut moved = case.clone();
    let t = &mut moved.prices.tariff;
    (t.from_hour.value, t.to_hour.value) = (6.0, 10.5);
    (t.season.value, t.weekdays_only.value) = (PeakSeason::Winter, YesNo::No);
    let mut flat = case.clone();
    flat.prices.tariff = one_price;
    for case in [&moved, &flat, &case, &flat, &moved] {
        let mut run = Run::new(case.clone(), &mut cache);
        while run.look(&mut cache) {}
        assert!(run.first().is_none(), "every year is known");
        while run.step(&mut cache) {}
        let (kept, anew) = (run.finish(), advise(case));
        assert_eq!(kept.advice.best, anew.advice.best);
        for (a, b) in kept.candidates.iter().zip(&anew.candidates) {
            assert_eq!((&a.year, &a.cost), (&b.year, &b.cost), "{:?}", a.candidate.id);
        }
    }
}

/// Years known from before anybody asked for hours are no years by the hour: they are simulated once more, and then known.
#[test]
fn years_without_hours_do_not_stand_in_for_years_with_them() {
    let mut cache = Cache::default();
    let mut flat = by_hour(0.6, 0.1);
    flat.prices.tariff = complete(&Answers::default()).prices.tariff;
    through(&flat, &mut cache);
    let case = by_hour(0.6, 0.1);
    for known in [false, true] {
        let mut run = Run::new(case.clone(), &mut cache);
        while run.look(&mut cache) {}
        assert_eq!(run.first().is_none(), known);
        while run.step(&mut cache) {}
        assert_eq!(run.finish().candidates, advise(&case).candidates);
    }
    // One price finds the same years as before.
    assert_eq!(through(&flat, &mut cache).candidates, advise(&flat).candidates);
}

/// The hours of a first look are those of its weighted days: all of its electricity, to rounding; and its mean price is
/// near the whole year's. Seen, with peaks five times as dear as the rest: 1.9 % (root of the mean square), 4.3 % at worst;
/// which baths and washing days are among the sample is chance.
#[test]
fn a_first_look_pays_the_hours_of_the_year() {
    let (mut squares, mut worst, mut count) = (0.0, 0.0, 0.0);
    for case in houses() {
        let mut cache = Cache::default();
        let mut run = Run::new(case.clone(), &mut cache);
        for (c, model) in run.heaters(&mut cache) {
            let sample = Sample::of(&run.house());
            let plain = year::first_look(&model, &run.house(), &sample);
            let (year, meter) =
                year::first_look_watched(&model, &run.house(), &sample, Some(Meter::default()));
            assert_eq!(plain, year, "{:?}", c.id);
            let all = meter.expect("it was there").hours().total();
            assert!(near(all, year.electricity_year_kwh()), "{:?} {all}", c.id);
        }
        while run.look(&mut cache) {}
        let first = run.first().expect("nothing was known");
        while run.step(&mut cache) {}
        for (a, b) in first.candidates.iter().zip(&run.finish().candidates) {
            if b.year.electricity_year_kwh() > 0.0 {
                let off = energy_price::of_heater(&case.prices, &a.year).price
                    / energy_price::of_heater(&case.prices, &b.year).price
                    - 1.0;
                (squares, count) = (squares + off * off, count + 1.0);
                worst = if off.abs() > worst { off.abs() } else { worst };
            }
        }
    }
    let rms = libm::sqrt(squares / count);
    println!("mean price of a first look against the whole year's: rms {rms:.4}, worst {worst:.4}");
    assert!(rms < 0.03 && worst < 0.06, "{rms} {worst}");
}

/// A young electric tank in a house of two, at 20 cents: it stays. Two prices with the same 20 cents as their mean round
/// the clock are not the same where the showers and baths are: then a heat pump costs less over the years.
#[test]
fn the_verdict_turns_with_the_hours() {
    let flat = answered(&[
        (Id::Adults, Value::number(2.0, Unit::One)),
        (Id::Children, Value::number(0.0, Unit::One)),
        (Id::HeaterAge, Value::number(2.0, Unit::Year)),
        (Id::PriceElectricity, Value::number(0.20, Unit::DollarPerKwh)),
    ]);
    // Of a kilowatt-hour used evenly round the clock so much is used at peak hours.
    let [_, level] = flat.prices.tariff.level(&[1.0 / 12.0; 12]);
    let low = 0.14;
    let by_hour = with_peak(flat.clone(), low + (0.20 - low) / level, low);
    assert!(near(energy_price::electricity(&by_hour.prices, level).price, 0.20));
    let (one, two) = (advise(&flat), advise(&by_hour));
    assert_eq!(one.advice.best, CandidateId::Keep);
    assert!(two.of(two.advice.best).is_some_and(|c| c.candidate.is_heat_pump()), "{:?}", two.advice.best);
    // Not because the house's own power got dearer: because the heater's did.
    let keep = |o: &Outcome| o.of(CandidateId::Keep).expect("a candidate").cost.energy_year;
    assert!(keep(&two) > 1.1 * keep(&one), "{} {}", keep(&one), keep(&two));
}

/// The working of the running cost has the mean price of its hours, and the page of hours the same cost as the verdict.
#[test]
fn workings_and_report_have_the_verdicts_figures() {
    for case in houses() {
        let outcome = advise(&case);
        let report = of(&case);
        for (c, hours) in outcome.candidates.iter().zip(&report.candidates) {
            let working = workings::of(&case, &outcome, c.candidate.id)
                .into_iter()
                .find(|w| w.name == "figure-running")
                .expect("a working");
            assert_eq!(working.relation, "relation-running-by-hour");
            let input = |name: &str| match working.inputs.iter().find(|i| i.label == name).map(|i| &i.value) {
                Some(Arg::Quantity(q)) => q.value,
                other => panic!("{name}: {other:?}"),
            };
            let kwh = input("input-electricity");
            let share = input("input-peak-share") / 100.0;
            let mean = share * input("input-price-peak") + (1.0 - share) * input("input-price-low");
            assert!(near(mean, input("input-price-mean")));
            let fuel = c.year.fuel_year_kwh() * fuel(c.candidate.label.kind, &case.prices).price;
            assert!(near(kwh * mean + fuel, input("input-energy-cost")), "{:?}", c.candidate.id);
            assert!(working.inputs.iter().all(|i| i.label != "input-price-electricity"));

            assert_eq!(hours.tariff_cost + fuel, c.cost.energy_year);
            assert_eq!(hours.peak_share, c.year.peak_share_year());
        }
    }
    let flat = complete(&Answers::default());
    let outcome = advise(&flat);
    let all = workings::of(&flat, &outcome, CandidateId::ElectricTank);
    let running = all.iter().find(|w| w.name == "figure-running").expect("a working");
    assert_eq!(running.relation, "relation-running");
    assert!(running.inputs.iter().any(|i| i.label == "input-price-electricity"));
}
