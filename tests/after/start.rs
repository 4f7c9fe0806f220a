//! Start-up ranges.

use super::{House, NORTH, SOUTH};
use proptest::prelude::*;
use tankful::core::after::Date;
use tankful::core::after::start::{Expected, Reading, Side, Standing, Start, Taken, causes, expected};
use tankful::core::candidates::CandidateId;
use tankful::core::case::HeaterKind;
use tankful::core::units::{Quantity, Unit, ZERO_C_K};

fn day(text: &str) -> Date {
    Date::parse(text).expect("a day")
}

fn of(all: &[Expected], reading: Reading) -> &Expected {
    all.iter().find(|e| e.reading == reading).unwrap_or_else(|| panic!("{reading:?} is not expected"))
}

fn heaters() -> impl Strategy<Value = (&'static House, CandidateId)> {
    proptest::sample::select(vec![
        (&*NORTH, CandidateId::HeatPump50),
        (&*NORTH, CandidateId::HeatPump80),
        (&*NORTH, CandidateId::PlugIn50),
        (&*NORTH, CandidateId::ElectricTank),
        (&*SOUTH, CandidateId::HeatPump65),
        (&*SOUTH, CandidateId::GasTank),
    ])
}

/// Readings that narrow others, in SI.
fn taken(air_c: Option<f64>, water_c: Option<f64>, volts: Option<f64>, minutes: Option<f64>) -> Taken {
    let mut taken = Taken::default();
    for (reading, value, unit) in [
        (Reading::AirIn, air_c, Unit::DegC),
        (Reading::Water, water_c, Unit::DegC),
        (Reading::Volts, volts, Unit::Volt),
        (Reading::CondensateTime, minutes, Unit::Minute),
    ] {
        if let Some(value) = value {
            taken.set(reading, Quantity::new(value, unit)).expect("within what an instrument shows");
        }
    }
    taken
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// What the simulation gives lies in its own range, whatever the heater, the day and the readings.
    #[test]
    fn the_simulated_value_is_always_expected(
        (house, id) in heaters(),
        days in 20_000i64..21_000,
        air in proptest::option::of(5.0..40.0f64),
        water in proptest::option::of(5.0..60.0f64),
        volts in proptest::option::of(100.0..250.0f64),
        minutes in proptest::option::of(5.0..120.0f64),
    ) {
        let start = Start::new(house.fitted(id), Date::from_days(days));
        let taken = taken(air, water, volts, minutes);
        let all = expected(&start, &taken);
        prop_assert!(all.windows(2).all(|w| w[0].reading < w[1].reading), "in the order taken");
        for e in &all {
            prop_assert!(e.low <= e.likely && e.likely <= e.high, "{:?}", e);
            prop_assert!(e.low.is_finite() && e.high.is_finite() && e.low < e.high, "{:?}", e);
            let mut same = Taken::default();
            same.set(e.reading, e.quantity(e.likely)).expect("a sensible figure");
            prop_assert_eq!(e.standing(&same), Standing::Within);
            // What an instrument can show reaches beyond the range on the side where causes are named.
            for side in [Side::Low, Side::High] {
                let named = causes(e.reading, side, HeaterKind::HeatPump);
                let distinct: std::collections::BTreeSet<_> = named.iter().collect();
                prop_assert!(!named.is_empty() && distinct.len() == named.len(), "{:?} {:?}", e.reading, side);
            }
        }
    }

    /// Knowing a figure never widens a range beyond what it was without it, when the figure known is one of those
    /// that were thought possible. (A hundredth of the width for where a figure peaks between corners.)
    #[test]
    fn knowing_more_never_widens((house, id) in heaters(), days in 20_000i64..21_000, share in 0.2..0.8f64) {
        let start = Start::new(house.fitted(id), Date::from_days(days));
        let blind = expected(&start, &Taken::default());
        let inner = |reading| {
            let e = blind.iter().find(|e| e.reading == reading)?;
            Some(e.low + share * (e.high - e.low) - ZERO_C_K)
        };
        let volts = blind.iter().find(|e| e.reading == Reading::Volts).map(|e| e.likely);
        let seeing = expected(&start, &taken(inner(Reading::AirIn), inner(Reading::Water), volts, None));
        for (e, wide) in seeing.iter().map(|e| (e, of(&blind, e.reading))) {
            let slack = 0.01 * (wide.high - wide.low);
            // Water and air themselves stay as they are: a reading is not judged by itself.
            prop_assert!(e.low >= wide.low - slack && e.high <= wide.high + slack, "{:?} against {:?}", e, wide);
        }
    }
}

/// A resistance of nameplate watts at nameplate volts: 4,500 W at 240 V are 18.75 A (closed form P/V; the worked example
/// of published-values, from memory), and at 208 V 208/240 of that.
#[test]
fn elements_follow_ohm() {
    let start = Start::new(NORTH.fitted(CandidateId::HeatPump50), day("2026-11-25"));
    let all = expected(&start, &Taken::default());
    assert!((of(&all, Reading::AmpsElements).likely - 18.75).abs() < 1e-9);
    let at_208 = expected(&start, &taken(None, None, Some(208.0), None));
    let e = of(&at_208, Reading::AmpsElements);
    assert!((e.likely - 18.75 * 208.0 / 240.0).abs() < 1e-9);
    // Rating bands: 90 to 105 % of the power, a clamp's 2 %, a tester's 1 %.
    assert!((e.high / e.likely - 1.05 * 1.02 * 1.01).abs() < 1e-9, "{e:?}");
}

/// An element heats its tank in m·c·ΔT / P: the water of a closed tank, less what it loses meanwhile (a few per cent),
/// and the thermostat's dead band does not matter from cold.
#[test]
fn heating_takes_what_the_water_takes() {
    let start = Start::new(NORTH.fitted(CandidateId::ElectricTank), day("2026-07-01"));
    let fitted = NORTH.fitted(CandidateId::ElectricTank);
    let label = &fitted.candidate.label;
    let all = expected(&start, &Taken::default());
    let e = of(&all, Reading::HeatTime);
    let set_c = tankful::core::units::to_celsius(NORTH.case.heater.setpoint.value);
    let cold_c = f64::from(NORTH.outcome.mains_c[181]);
    let volume_m3 = label.nominal_volume.get::<uom::si::volume::cubic_meter>();
    let watts = label.input.get::<uom::si::power::watt>();
    // Tanks hold about a tenth less than their name, and the lower element sits an eighth up: what lies below stays cold.
    let (least, most) = (0.75, 1.0);
    let whole = 4.18e6 * volume_m3 * (set_c - cold_c) / watts;
    assert!((least..most).contains(&(e.likely / whole)), "{} of {whole} s", e.likely);
}

/// A heat pump's air comes out colder by 5 to 18 °F and it takes 350 to 800 W (published ranges of integrated units at
/// rating-like conditions, from memory).
#[test]
fn a_heat_pump_is_within_the_published_ranges() {
    let start = Start::new(NORTH.fitted(CandidateId::HeatPump50), day("2026-07-15"));
    let taken = taken(Some(19.7), Some(45.0), Some(240.0), Some(60.0));
    let all = expected(&start, &taken);
    let fall_f = (19.7 + ZERO_C_K - of(&all, Reading::AirOut).likely) * 1.8;
    assert!((5.0..18.0).contains(&fall_f), "{fall_f}");
    let amps = of(&all, Reading::AmpsPump).likely;
    assert!((350.0..800.0).contains(&(amps * 240.0 * 0.93)), "{amps}");
    // In July in a damp basement: some decilitres an hour.
    let condensate = of(&all, Reading::Condensate);
    assert!((1e-4..2e-3).contains(&condensate.likely) && condensate.low > 0.0, "{condensate:?}");
}

/// Warmer water makes the machine draw more; a longer catch catches more, in proportion.
#[test]
fn readings_that_were_taken_move_the_others() {
    let start = Start::new(NORTH.fitted(CandidateId::HeatPump50), day("2026-07-15"));
    let at = |water, minutes| expected(&start, &taken(Some(20.0), Some(water), None, Some(minutes)));
    let (cool, hot) = (at(20.0, 30.0), at(50.0, 30.0));
    assert!(of(&hot, Reading::AmpsPump).likely > 1.2 * of(&cool, Reading::AmpsPump).likely);
    assert!(of(&hot, Reading::AirOut).likely > of(&cool, Reading::AirOut).likely);
    let longer = at(20.0, 60.0);
    let ratio = of(&longer, Reading::Condensate).likely / of(&cool, Reading::Condensate).likely;
    assert!((ratio - 2.0).abs() < 1e-9, "{ratio}");
}

#[test]
fn each_heater_has_its_own_readings() {
    let readings = |house: &House, id| -> Vec<Reading> {
        let start = Start::new(house.fitted(id), day("2026-11-25"));
        expected(&start, &Taken::default()).iter().map(|e| e.reading).collect()
    };
    use Reading::*;
    let pump = [
        Pressure,
        Volts,
        AirIn,
        AirOut,
        Water,
        AmpsPump,
        Condensate,
        SoundNear,
        SoundNext,
        AmpsElements,
        HeatTime,
        TankTop,
        Tap,
    ];
    assert_eq!(readings(&NORTH, CandidateId::HeatPump50), pump);
    let plug: Vec<_> = pump.into_iter().filter(|r| *r != AmpsElements).collect();
    assert_eq!(readings(&NORTH, CandidateId::PlugIn50), plug);
    assert_eq!(
        readings(&NORTH, CandidateId::ElectricTank),
        [Pressure, Volts, AmpsElements, HeatTime, TankTop, Tap]
    );
    assert_eq!(readings(&SOUTH, CandidateId::GasTank), [Pressure, HeatTime, TankTop, Tap]);
}

/// With a mixing valve the tap has 120 °F, though the tank has 140 °F; without one the tank's.
#[test]
fn the_tap_follows_the_valve() {
    let tap = |house: &House, id| {
        let start = Start::new(house.fitted(id), day("2026-11-25"));
        of(&expected(&start, &Taken::default()), Reading::Tap).clone()
    };
    let (mixed, plain) = (tap(&SOUTH, CandidateId::HeatPump65), tap(&NORTH, CandidateId::HeatPump50));
    assert!((mixed.likely - ZERO_C_K - 48.9).abs() < 0.1 && mixed.reason.id == "start-why-tap-mixed");
    assert!(mixed.high < 140.0 / 1.8 + 255.0);
    assert!(plain.reason.id != "start-why-tap-mixed", "{plain:?}");
}

/// Air beyond what the machine breathes: nothing is expected of it, rather than something wrong.
#[test]
fn a_machine_that_is_locked_out_has_no_figures() {
    let start = Start::new(NORTH.fitted(CandidateId::HeatPump50), day("2026-01-15"));
    let all = expected(&start, &taken(Some(-5.0), None, None, None));
    let has = |r| all.iter().any(|e| e.reading == r);
    assert!(
        has(Reading::AirIn) && !has(Reading::AirOut) && !has(Reading::AmpsPump) && !has(Reading::Condensate)
    );
    // And it is flagged itself, with its causes.
    let mut cold = Taken::default();
    cold.set(Reading::AirIn, Quantity::new(-5.0, Unit::DegC)).expect("a thermometer shows that");
    assert_eq!(of(&all, Reading::AirIn).standing(&cold), Standing::Off(Side::Low));
}
