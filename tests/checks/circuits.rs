//! Electricity: the electrical code's values (published-values, from memory) through whole cases.

use super::*;
use Fit::{Fits, FitsWithWork, MeasureFirst};

const ELECTRIC: (Id, fn() -> Value) = (Id::HeaterKind, || c("electric"));

fn breaker(amps: f64) -> (Id, Value) {
    (Id::Breaker, n(amps, Unit::Ampere))
}

/// 4,500 W at 240 V is 18.75 A; by 1.25 is 23.4 A; 25 A is the next standard size, and a new circuit gets 30 A
/// and 10 AWG copper (common practice, no source).
#[test]
fn a_4500_w_element_needs_25_a() {
    let small = found("circuit", &[breaker(20.0)]);
    assert_eq!(small.fit, FitsWithWork);
    assert_eq!(size(&small, WorkKind::NewCircuit, "breaker", Unit::Ampere), 30.0);
    assert_eq!(size(&small, WorkKind::NewCircuit, "wire", Unit::One), 10.0);
    assert!((figure(&small, "figure-amps", Unit::Ampere) - 18.75).abs() < 1e-9);
    assert!((figure(&small, "figure-needed-amps", Unit::Ampere) - 23.437_5).abs() < 1e-9);
    assert_eq!(fit("circuit", &[breaker(25.0)]), Fits);
    assert_eq!(fit("circuit", &[breaker(30.0)]), Fits);
    assert_eq!(fit("circuit", &[(Id::Supply, c("120"))]), FitsWithWork);
    assert_eq!(fit("circuit", &[]), MeasureFirst);
}

/// A long run of a new circuit gets thicker wire: 10 AWG loses 2 · 18.75 · 1.21 Ω/1,000 ft; 3 % of 240 V is 7.2 V,
/// so 158 ft at the most.
#[test]
fn a_long_run_takes_thicker_wire() {
    for (feet, awg) in [(150.0, 10.0), (170.0, 8.0)] {
        let f = found("circuit", &[breaker(0.0), (Id::RunLength, n(feet, Unit::Foot))]);
        assert_eq!(size(&f, WorkKind::NewCircuit, "wire", Unit::One), awg, "{feet} ft");
    }
    let run = |feet| {
        fit("voltage-drop", &[breaker(30.0), (Id::WireSize, c("10")), (Id::RunLength, n(feet, Unit::Foot))])
    };
    assert_eq!((run(158.0), run(160.0)), (Fits, FitsWithWork));
}

/// 240.4(D) and 310.16: 10 AWG copper 30 A, 12 AWG 20 A; aluminium 10 AWG 25 A, 8 AWG 35 A in sheathed cable.
#[test]
fn wires_match_their_breaker() {
    let at = |awg: &str, metal: &str, amps: f64| {
        fit(
            "conductor",
            &[
                breaker(amps),
                (Id::WireSize, c(awg)),
                (Id::WireMetal, c(metal)),
                (Id::CableKind, c("sheathed")),
            ],
        )
    };
    assert_eq!(at("10", "copper", 30.0), Fits);
    assert_eq!(at("12", "copper", 30.0), FitsWithWork);
    assert_eq!(at("10", "copper", 40.0), FitsWithWork);
    assert_eq!(at("10", "aluminium", 30.0), FitsWithWork);
    assert_eq!(at("8", "aluminium", 30.0), Fits);
    assert_eq!(at("10", "aluminium", 25.0), Fits);
    assert_eq!(fit("conductor", &[breaker(30.0)]), MeasureFirst);
}

/// 422.11(E): 150 % of 18.75 A is 28.1 A, the next standard size 30 A.
#[test]
fn a_breaker_may_be_too_large() {
    assert_eq!(fit("overcurrent", &[breaker(30.0)]), Fits);
    let large = found("overcurrent", &[breaker(50.0)]);
    assert_eq!((large.fit, size(&large, WorkKind::Breaker, "breaker", Unit::Ampere)), (FitsWithWork, 30.0));
}

/// (208/240)² of 4,500 W is 3,380 W.
#[test]
fn elements_weaken_at_208_v() {
    let f = found("supply", &[(Id::Supply, c("208"))]);
    assert!((figure(&f, "figure-element-gives", Unit::Watt) - 3_380.0).abs() < 1e-9);
    assert!(maybe(&case(&[]), CandidateId::HeatPump50, "supply").is_none());
}

/// 220.83(A): 1,500 sq ft, 18.2 kW of large loads and the heater's 4.5 kW are 72.8 A at 240 V (the worked house of
/// `core::fit::electrical`).
#[test]
fn the_service_by_the_existing_dwelling_method() {
    let house = |service: f64, spaces: f64| {
        found(
            "panel",
            &[
                (Id::HeaterKind, c("gas")),
                breaker(0.0),
                (Id::HouseArea, n(1_500.0, Unit::SquareFoot)),
                (Id::LargeLoads, n(18.2, Unit::Kilowatt)),
                (Id::ServiceRating, n(service, Unit::Ampere)),
                (Id::FreeSpaces, n(spaces, Unit::One)),
            ],
        )
    };
    let f = house(100.0, 1.0);
    assert_eq!(f.fit, Fits);
    assert!((figure(&f, "figure-demand", Unit::Ampere) - 72.833).abs() < 1e-3);
    let low = house(70.0, 1.0);
    assert_eq!((low.fit, work(&low, WorkKind::Service).kind), (FitsWithWork, WorkKind::Service));
    let full = house(100.0, 0.0);
    assert_eq!((full.fit, full.work.len()), (FitsWithWork, 1));
    // An electric heater's circuit that is used again adds nothing.
    let (id, kind) = ELECTRIC;
    assert!(maybe(&case(&[(id, kind()), breaker(30.0)]), CandidateId::HeatPump50, "panel").is_none());
}

/// 210.23: a fixed appliance takes at most half of a 15 A circuit with other outlets, 7.5 A.
#[test]
fn a_120_v_heater_on_a_shared_circuit() {
    let at = |code: &str| {
        maybe(&case(&[(Id::Own120, c(code))]), CandidateId::PlugIn50, "outlet").expect("applies")
    };
    assert_eq!((at("yes").fit, at("no").fit), (Fits, FitsWithWork));
    let shared = at("shared");
    assert!(figure(&shared, "figure-amps", Unit::Ampere) <= 7.5);
    assert_eq!((shared.fit, shared.says.id.as_ref()), (Fits, "check-outlet-shared"));
    assert!(maybe(&case(&[]), CandidateId::HeatPump50, "outlet").is_none());
}

#[test]
fn ground_and_switch() {
    let wires = |code: &str| fit("ground-wire", &[breaker(30.0), (Id::Wires, c(code))]);
    assert_eq!((wires("ground"), wires("neutral"), wires("no_ground")), (Fits, Fits, FitsWithWork));
    assert_eq!(fit("disconnect", &[(Id::Disconnect, c("yes"))]), Fits);
    assert_eq!(fit("disconnect", &[(Id::Disconnect, c("no"))]), FitsWithWork);
}
