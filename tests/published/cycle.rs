//! `tankful::core::heat_pump::machine` against a real-fluid cycle by CoolProp 8.0.
//!
//! What is compared is efficiency alone, as the isentropic efficiency that a compressor would need to do
//! what the map says between the same two refrigerant temperatures (superheat and subcooling 5 K). The
//! machine is one calibrated to an ordinary label, so that the comparison is of the map as it is used.
use crate::fixture::Fixture;
use tankful::core::candidates::Label;
use tankful::core::case::HeaterKind;
use tankful::core::heat_pump::machine::{HeatPump, THROTTLING_PER_K};
use tankful::core::label::{calibration::calibrate, cop_map, rated::Standing};
use tankful::core::units::{GALLON_M3, cubic_metres, watts};

/// Small hermetic compressors over their rated range: common practice, no source.
const ISENTROPIC: std::ops::RangeInclusive<f64> = 0.5..=0.75;
/// Rated range, by pressure ratio. Below it friction and the motor weigh more, compressors fall off, and the map
/// must too, though not without limit: see [`LEAST`].
const RATED_PRESSURE_RATIOS: std::ops::RangeInclusive<f64> = 3.0..=5.0;
/// Least isentropic efficiency within the envelope (pressure ratios down to 1.5): common practice, no source.
const LEAST: f64 = 0.35;
/// Most within the envelope: that of the rated range.
const MOST: f64 = 0.75;
/// The envelope: what the air limits and setpoints up to 60 °C leave, °C.
const EVAPORATING_C: std::ops::RangeInclusive<f64> = -5.0..=20.0;
/// See [`EVAPORATING_C`].
const CONDENSING_C: std::ops::RangeInclusive<f64> = 35.0..=65.0;

/// Heat pump tanks with figures of labels as they are sold: nominal gallons, factor, first-hour gallons, element W.
const LABELS: [(f64, f64, f64, f64); 9] = [
    (40.0, 3.0, 54.0, 4_500.0),
    (40.0, 3.5, 54.0, 4_500.0),
    (50.0, 3.1, 66.0, 4_500.0),
    (50.0, 3.45, 66.0, 4_500.0),
    (50.0, 3.8, 66.0, 4_500.0),
    (65.0, 3.6, 75.0, 4_500.0),
    (80.0, 3.55, 88.0, 4_500.0),
    (80.0, 4.0, 93.0, 4_500.0),
    (50.0, 3.0, 43.0, 0.0),
];

/// The heat pump that scores a label.
fn machine((gal, factor, first_hour_gal, element_w): (f64, f64, f64, f64)) -> HeatPump {
    let label = Label {
        kind: HeaterKind::HeatPump,
        nominal_volume: cubic_metres(gal * GALLON_M3),
        uniform_energy_factor: factor,
        first_hour_rating: cubic_metres(first_hour_gal * GALLON_M3),
        input: watts(element_w),
        heat_pump_output: watts(0.0),
    };
    let found = calibrate(&label, 50.0);
    assert_eq!(found.standing, Standing::Met, "{:?}", found.says);
    found.model.pump().expect("a heat pump").clone()
}

/// Isentropic efficiency at which the real cycle has the map's coefficient of performance: a cycle's is
/// 1 + efficiency · (heat from the air and superheat per isentropic work), straight in efficiency.
fn implied(cop: f64, cop_at_50: f64) -> f64 {
    (cop - 1.0) / ((cop_at_50 - 1.0) / 0.5)
}

#[test]
fn the_map_lies_between_real_compressors() {
    let fixture = Fixture::load("refrigeration_cycle");
    for (label, fluid) in LABELS.into_iter().flat_map(|l| ["r134a", "r513a"].map(|f| (l, f))) {
        let machine = machine(label);
        let columns =
            ["evaporating_c", "condensing_c", "pressure_ratio", "heating_cop_at_50", "heating_cop_at_75"];
        let (mut rated, mut all) = ((1.0f64, 0.0f64), (1.0f64, 0.0f64));
        let mut of_rated = 0;
        for [te, tc, ratio, low, high] in fixture.table(fluid).rows(columns) {
            assert!((implied(high, low) - 0.75).abs() < 1e-9, "the cycle is straight in efficiency");
            if !(EVAPORATING_C.contains(&te) && CONDENSING_C.contains(&tc)) {
                continue;
            }
            let efficiency = implied(machine.efficiency(te, tc), low);
            all = (all.0.min(efficiency), all.1.max(efficiency));
            if RATED_PRESSURE_RATIOS.contains(&ratio) {
                rated = (rated.0.min(efficiency), rated.1.max(efficiency));
                of_rated += 1;
            }
        }
        println!(
            "{label:?} {fluid}: at effectiveness {:.3} the map implies isentropic efficiencies of {:.3} to {:.3} at pressure \
             ratios of 3 to 5, {:.3} to {:.3} over the envelope",
            machine.effectiveness, rated.0, rated.1, all.0, all.1
        );
        assert!(of_rated >= 3, "{label:?} {fluid}: too few points in the rated range");
        assert!(
            ISENTROPIC.contains(&rated.0) && ISENTROPIC.contains(&rated.1),
            "{label:?} {fluid}: {rated:?}"
        );
        assert!(all.0 >= LEAST && all.1 <= MOST, "{label:?} {fluid}: {all:?}");
    }
}

/// The real cycle's second-law effectiveness at a fixed isentropic efficiency falls with the condensing temperature as the
/// map's does, whatever the evaporating one: the slope of a straight line through the fixture's points, as a share
/// of the effectiveness at 50 °C. R-134a's, to a tenth; R-513A's falls a quarter faster, and its band allows it.
#[test]
fn effectiveness_falls_with_hot_water_as_a_real_fluid_s_does() {
    let fixture = Fixture::load("refrigeration_cycle");
    let columns = ["evaporating_c", "condensing_c", "carnot_cop", "heating_cop_at_65"];
    for evaporating_c in [-10.0, -5.0, 0.0, 5.0, 10.0, 15.0] {
        let points: Vec<(f64, f64)> = fixture
            .table("r134a")
            .rows(columns)
            .into_iter()
            .filter(|[te, tc, ..]| *te == evaporating_c && CONDENSING_C.contains(tc))
            .map(|[_, tc, carnot, cop]| (tc - 50.0, cop / carnot))
            .collect();
        assert_eq!(points.len(), 7);
        let squares: f64 = points.iter().map(|(x, _)| x * x).sum();
        let slope = points.iter().map(|(x, y)| x * y).sum::<f64>() / squares;
        let at_50 = points.iter().map(|(_, y)| y).sum::<f64>() / 7.0;
        let share = -slope / at_50;
        println!("evaporating at {evaporating_c} °C: {share:.5} a kelvin");
        assert!((share / THROTTLING_PER_K - 1.0).abs() < 0.1, "{evaporating_c}: {share}");
    }
}

/// Relative humidities of rooms: how wet the coil is moves the evaporating temperature.
const HUMIDITIES: [f64; 3] = [0.3, 0.5, 0.8];

/// The calibrated map over every room and water temperature that the simulation uses, from the coldest air that the
/// machine runs in to an attic's, and from cold mains to the hottest setpoint: within what a real cycle with real
/// compressors gives at plausible approaches of coil and condenser. Fixture: `tests/reference/heat_pump_map.py`.
#[test]
fn the_map_of_rooms_and_waters_is_a_real_cycles() {
    let fixture = Fixture::load("heat_pump_map");
    let mut all_outside = Vec::new();
    for (label, fluid) in LABELS.into_iter().flat_map(|l| ["r134a", "r513a"].map(|f| (l, f))) {
        let machine = machine(label);
        let (mut nearest_least, mut nearest_most) =
            ((f64::MAX, (0.0, 0.0, 0.0)), (f64::MAX, (0.0, 0.0, 0.0)));
        let mut outside = Vec::new();
        for [room_c, water_c, least, most] in
            fixture.table(fluid).rows(["room_c", "water_c", "least_cop", "most_cop"])
        {
            assert!(least < most);
            for humidity in HUMIDITIES {
                let run = cop_map::at(&machine, room_c, humidity, water_c);
                let cop = run.heat_w / run.compressor_w;
                let at = (room_c, water_c, humidity);
                if cop / least < nearest_least.0 {
                    nearest_least = (cop / least, at);
                }
                if most / cop < nearest_most.0 {
                    nearest_most = (most / cop, at);
                }
                if !(least..=most).contains(&cop) {
                    outside.push(format!("{at:?}: {cop:.2}, not {least:.2} to {most:.2}"));
                }
            }
        }
        println!(
            "{label:?} {fluid}: least {:.3} times the poorest cycle's at {:?}, most 1/{:.3} of the best's at {:?}",
            nearest_least.0, nearest_least.1, nearest_most.0, nearest_most.1
        );
        all_outside.extend(outside.into_iter().map(|at| format!("{label:?} {fluid} {at}")));
    }
    assert!(all_outside.is_empty(), "{all_outside:#?}");
}
