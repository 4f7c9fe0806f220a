//! Three invented houses, from answers to findings and advice.

use super::*;
use Fit::{DoesNotFit, Fits, FitsWithWork, MeasureFirst};
use tankful::core::outcome::Outcome;

fn of(outcome: &Outcome, id: CandidateId) -> &[Finding] {
    &outcome.of(id).expect("a candidate").findings
}

fn codes(findings: &[Finding], fit: Fit) -> Vec<&str> {
    let mut codes: Vec<&str> = findings.iter().filter(|f| f.fit == fit).map(|f| f.check.as_ref()).collect();
    codes.sort_unstable();
    codes
}

fn kinds(findings: &[Finding]) -> Vec<&'static str> {
    let needed = findings.iter().filter(|f| f.fit == FitsWithWork);
    let mut kinds: Vec<_> = needed.flat_map(|f| &f.work).map(|w| w.kind.code()).collect();
    kinds.sort_unstable();
    kinds
}

/// What a visit measures when all is as it should be.
fn visited() -> Vec<(Id, Value)> {
    vec![
        (Id::Wires, c("ground")),
        (Id::WireSize, c("10")),
        (Id::WireMetal, c("copper")),
        (Id::CableKind, c("sheathed")),
        (Id::RunLength, n(35.0, Unit::Foot)),
        (Id::Disconnect, c("yes")),
        (Id::Pressure, n(55.0, Unit::Psi)),
        (Id::ClosedBy, c("none")),
        (Id::ShutoffWorks, c("yes")),
        (Id::ReliefPipe, c("good")),
        (Id::FuelLeft, c("none")),
        (Id::MixingValve, c("no")),
        (Id::FixturesBelow, c("no")),
        (Id::Seismic, c("low")),
    ]
}

/// Invented: a dry basement of 800 square feet with a floor drain beside an old electric tank. Measured, everything
/// is green but the small parts that go with copper pipes.
#[test]
fn an_easy_basement() {
    let mut list = visited();
    list.extend([
        (Id::HeaterKind, c("electric")),
        (Id::HeaterAge, n(14.0, Unit::Year)),
        (Id::RoomKind, c("basement")),
        (Id::RoomVolume, n(5_600.0, Unit::CubicFoot)),
        (Id::RoomWinter, n(60.0, Unit::DegF)),
        (Id::Headroom, n(84.0, Unit::Inch)),
        (Id::WayIn, n(30.0, Unit::Inch)),
        (Id::DrainKind, c("floor")),
        (Id::DrainDistance, n(6.0, Unit::Foot)),
        (Id::DrainRise, n(-1.0, Unit::Foot)),
        (Id::Supply, c("240")),
        (Id::Breaker, n(30.0, Unit::Ampere)),
        (Id::PipeMaterial, c("copper")),
    ]);
    let measured = pipeline::advise(&case(&list));
    let pump = of(&measured, CandidateId::HeatPump50);
    assert_eq!(codes(pump, DoesNotFit), [""; 0]);
    assert_eq!(codes(pump, MeasureFirst), [""; 0]);
    assert_eq!(codes(pump, FitsWithWork), ["bonding", "joints"]);
    assert_eq!(kinds(pump), ["bonding", "joints"]);
    assert!(pump.iter().all(|f| f.work_cost() == 0.0));
    assert_eq!(measured.advice.best, CandidateId::HeatPump50);
    // Before anybody measured, the same basement asks to be looked at, and nothing is ruled out.
    let open = pipeline::advise(&case(&[]));
    let before = of(&open, CandidateId::HeatPump50);
    assert_eq!(codes(before, DoesNotFit), [""; 0]);
    assert!(codes(before, MeasureFirst).contains(&"drain"));
    assert!(!codes(before, MeasureFirst).contains(&"headroom"), "the range of basements is high enough");
}

/// Invented: an upstairs closet, 3 by 3 by 8 ft, over finished rooms, next to a bedroom, no drain, a 24 in door.
#[test]
fn a_tight_closet() {
    let mut list = visited();
    list.retain(|(id, _)| !matches!(id, Id::FixturesBelow | Id::PipeMaterial));
    list.extend([
        (Id::HeaterKind, c("electric")),
        (Id::RoomKind, c("closet")),
        (Id::RoomVolume, n(72.0, Unit::CubicFoot)),
        (Id::Door, c("solid")),
        (Id::Headroom, n(94.0, Unit::Inch)),
        (Id::StandUp, n(94.0, Unit::Inch)),
        (Id::WayIn, n(24.0, Unit::Inch)),
        (Id::StairTurn, n(34.0, Unit::Inch)),
        (Id::Footprint, n(26.0, Unit::Inch)),
        (Id::ServiceSpace, n(24.0, Unit::Inch)),
        (Id::Floor, c("wood")),
        (Id::FinishedBelow, c("yes")),
        (Id::Pan, c("undrained")),
        (Id::QuietRoom, c("yes")),
        (Id::QuietWall, c("stud")),
        (Id::QuietDistance, n(2.0, Unit::Foot)),
        (Id::DrainKind, c("none")),
        (Id::DrainDistance, n(18.0, Unit::Foot)),
        (Id::DrainRise, n(6.0, Unit::Foot)),
        (Id::Supply, c("240")),
        (Id::Breaker, n(30.0, Unit::Ampere)),
        (Id::PipeMaterial, c("plastic")),
        (Id::FixturesBelow, c("yes")),
    ]);
    let outcome = pipeline::advise(&case(&list));
    let pump = of(&outcome, CandidateId::HeatPump50);
    assert_eq!(codes(pump, DoesNotFit), [""; 0]);
    assert_eq!(codes(pump, MeasureFirst), [""; 0]);
    assert_eq!(
        codes(pump, FitsWithWork),
        ["air-volume", "drain", "pan", "service-space", "vacuum", "way-in"],
    );
    assert_eq!(
        kinds(pump),
        ["condensate_pump", "louvred_door", "make_way", "make_way", "pan", "vacuum_relief"],
    );
    // The shut closet was simulated beside the opened one: it runs colder and costs more.
    let air = pump.iter().find(|f| f.check == "air-volume").expect("a finding");
    let shut = figure(air, "figure-shut-coldest", Unit::DegC);
    assert!(shut < figure(air, "figure-opened-coldest", Unit::DegC));
    assert!(figure(air, "figure-shut-cost", Unit::Dollar) > figure(air, "figure-opened-cost", Unit::Dollar));
    // The wide ones are out, with the reason and what would let them in beside them.
    for id in [CandidateId::HeatPump65, CandidateId::HeatPump80] {
        assert!(codes(of(&outcome, id), DoesNotFit).contains(&"footprint"));
        assert_ne!(outcome.advice.best, id);
        let runner = outcome.advice.runners_up.iter().find(|r| r.id == id).expect("a runner-up");
        for said in ["check-footprint-short", "need-narrower-heater"] {
            assert!(runner.needs.iter().any(|m| m.id == said), "{said}: {:?}", runner.needs);
        }
    }
}

/// Invented: a gas tank in a small utility room that shares its flue with a furnace; a full panel on a 100 A service.
#[test]
fn a_gas_tank_that_shares_a_flue() {
    let mut list = visited();
    list.retain(|(id, _)| *id != Id::FuelLeft);
    list.extend([
        (Id::HeaterKind, c("gas")),
        (Id::HeaterAge, n(15.0, Unit::Year)),
        (Id::SharesFlue, c("yes")),
        (Id::FuelLeft, c("open")),
        (Id::HouseHeat, c("gas")),
        (Id::RoomKind, c("utility")),
        (Id::RoomVolume, n(600.0, Unit::CubicFoot)),
        (Id::Door, c("undercut")),
        (Id::Headroom, n(92.0, Unit::Inch)),
        (Id::StandUp, n(96.0, Unit::Inch)),
        (Id::WayIn, n(32.0, Unit::Inch)),
        (Id::Footprint, n(30.0, Unit::Inch)),
        (Id::ServiceSpace, n(36.0, Unit::Inch)),
        (Id::Floor, c("slab")),
        (Id::FinishedBelow, c("no")),
        (Id::QuietRoom, c("no")),
        (Id::DrainKind, c("standpipe")),
        (Id::DrainDistance, n(8.0, Unit::Foot)),
        (Id::DrainRise, n(2.0, Unit::Foot)),
        (Id::Supply, c("240")),
        (Id::Breaker, n(0.0, Unit::Ampere)),
        (Id::FreeSpaces, n(0.0, Unit::One)),
        (Id::ServiceRating, n(100.0, Unit::Ampere)),
        (Id::LargeLoads, n(14.0, Unit::Kilowatt)),
        (Id::HouseArea, n(1_600.0, Unit::SquareFoot)),
        (Id::PipeMaterial, c("steel")),
        (Id::Own120, c("shared")),
    ]);
    let outcome = pipeline::advise(&case(&list));
    let pump = of(&outcome, CandidateId::HeatPump50);
    assert_eq!(codes(pump, DoesNotFit), [""; 0]);
    assert_eq!(codes(pump, MeasureFirst), [""; 0]);
    assert_eq!(
        codes(pump, FitsWithWork),
        ["air-volume", "bonding", "circuit", "drain", "draught", "flue", "fuel-line", "joints", "panel"],
    );
    assert_eq!(
        kinds(pump),
        [
            "bonding",
            "cap_fuel",
            "condensate_pump",
            "draught_test",
            "joints",
            "louvred_door",
            "new_circuit",
            "panel_space",
            "resize_flue",
        ],
    );
    // The plug-in one needs none of the electrician: the outlet that is there will do.
    let plug = of(&outcome, CandidateId::PlugIn50);
    assert!(plug.iter().all(|f| f.check != "circuit" && f.check != "panel"));
    assert!(codes(plug, Fits).contains(&"outlet"));
    // The same again keeps the flue shared, but the two burners want for air.
    let gas = of(&outcome, CandidateId::GasTank);
    assert!(gas.iter().all(|f| f.check != "flue"));
    assert!(codes(gas, FitsWithWork).contains(&"burner-air"));
}
