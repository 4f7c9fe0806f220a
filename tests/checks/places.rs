//! Sizes, weights, air, sound and burners through whole cases.

use super::*;
use Fit::{DoesNotFit, Fits, FitsWithWork, MeasureFirst};
use tankful::core::outcome::CandidateOutcome;
use tankful::core::units::to_celsius;

fn inches(id: Id, v: f64) -> Vec<(Id, Value)> {
    vec![(id, n(v, Unit::Inch))]
}

/// The class's tank is 62 by 22.5 in. Its diagonal: √(62² + 22.5²) = 65.96 in.
#[test]
fn the_tank_through_the_house() {
    let at = |check: &str, id, v| fit(check, &inches(id, v));
    assert_eq!((at("headroom", Id::Headroom, 68.0), at("headroom", Id::Headroom, 67.5)), (Fits, DoesNotFit));
    assert_eq!(
        (at("footprint", Id::Footprint, 24.5), at("footprint", Id::Footprint, 24.0)),
        (Fits, DoesNotFit)
    );
    let stand = |v| found("stand-up", &inches(Id::StandUp, v));
    assert_eq!((stand(66.0).fit, stand(65.0).fit, stand(61.0).fit), (Fits, FitsWithWork, DoesNotFit));
    let diagonal = figure(&stand(66.0), "figure-diagonal", Unit::Inch);
    assert!((diagonal - 65.956).abs() < 1e-3, "{diagonal}");
    assert!((size(&stand(65.0), WorkKind::CarryUpright, "needs", Unit::Inch) - diagonal).abs() < 1e-9);
    assert!(stand(61.0).lets_in.is_some());
}

#[test]
fn doors_and_turns() {
    let at = |door: f64, turn: f64| {
        found("way-in", &[(Id::WayIn, n(door, Unit::Inch)), (Id::StairTurn, n(turn, Unit::Inch))])
    };
    assert_eq!(at(24.5, 0.0).fit, Fits);
    assert_eq!(at(23.5, 0.0).fit, FitsWithWork, "the door comes out");
    assert_eq!(at(22.0, 0.0).fit, DoesNotFit);
    assert_eq!(at(30.0, 24.0).fit, DoesNotFit, "stairs do not");
    assert_eq!(at(30.0, 36.0).fit, Fits);
    // Carried upright, 22.5 in of tank and an inch for each hand turn on a landing that is just so wide both ways.
    assert_eq!((at(30.0, 24.5).fit, at(30.0, 24.4).fit), (Fits, DoesNotFit));
}

/// M1305.1: 30 in in front.
#[test]
fn room_to_work() {
    let at = |v| fit("service-space", &inches(Id::ServiceSpace, v));
    assert_eq!((at(30.0), at(29.0)), (Fits, FitsWithWork));
}

/// 50 gal at 8.33 lb and 200 lb of tank: 616 lb; 80 gal: 951 lb, over the 640 lb of 40 psf on 16 sq ft.
#[test]
fn floors_carry_full_tanks() {
    let of = |id, floor: &str| {
        let case = case(&[(Id::Floor, c(floor)), (Id::HeaterVolume, n(50.0, Unit::Gallon))]);
        maybe(&case, id, "floor").expect("applies")
    };
    let small = of(CandidateId::HeatPump50, "wood");
    assert!((figure(&small, "figure-full-weight", Unit::Pound) - 617.0).abs() < 3.0);
    assert!((figure(&small, "figure-floor-carries", Unit::Pound) - 640.0).abs() < 0.1);
    assert_eq!((small.fit, of(CandidateId::HeatPump80, "wood").fit), (Fits, FitsWithWork));
    assert_eq!(of(CandidateId::HeatPump80, "slab").fit, Fits);
}

/// Room: 700 cubic feet for the class, or openings or ducts.
#[test]
fn air_for_the_heat_pump() {
    let at = |ft3: f64, door: &str| {
        fit("air-volume", &[(Id::RoomVolume, n(ft3, Unit::CubicFoot)), (Id::Door, c(door))])
    };
    assert_eq!((at(700.0, "solid"), at(690.0, "solid")), (Fits, FitsWithWork));
    assert_eq!(at(100.0, "louvred"), Fits);
    let ducted = [(Id::RoomVolume, n(100.0, Unit::CubicFoot)), (Id::Ducts, c("indoors"))];
    assert_eq!(fit("air-volume", &ducted), Fits);
    // A closet is small over its whole range, a utility room may not be.
    assert_eq!(fit("air-volume", &[(Id::RoomKind, c("closet"))]), FitsWithWork);
    assert_eq!(fit("air-volume", &[(Id::RoomKind, c("utility"))]), MeasureFirst);
}

/// What the year says: locked out for most of it, or hardly.
#[test]
fn cold_rooms() {
    use tankful::core::units::{celsius, seconds};
    let cold = case(&[(Id::RoomWinter, n(-10.0, Unit::DegC))]);
    let at = |hours: f64, coldest: f64| {
        let mut year = year().clone();
        (year.locked_out, year.room_coldest) = (seconds(3_600.0 * hours), celsius(coldest));
        let all = with_year(&cold, CandidateId::HeatPump50, &year);
        all.into_iter().find(|f| f.check == "air-temperature").expect("applies")
    };
    assert_eq!((at(5_000.0, -12.0).fit, at(500.0, -2.0).fit), (DoesNotFit, Fits));
    assert_eq!((at(0.0, 2.0).fit, at(0.0, 10.0).fit), (FitsWithWork, Fits));
    assert!(at(5_000.0, -12.0).lets_in.is_some());
}

/// World Health Organization 1999: 30 dB(A). By hand for 50 dB of power in 10 m³ of bare room, 1.5 m away: floor
/// 4.35 m², surfaces 27.9 m², absorption 2.23 m²; 10 lg (2/28.3 + 4/2.23) = 2.7; less 33 for a hollow wall,
/// 10 lg (10/12) = −0.8: 18.9 dB.
#[test]
fn sound_in_the_next_room() {
    let at = |wall: &str, quiet: &str| {
        found(
            "noise",
            &[
                (Id::RoomVolume, n(10.0, Unit::CubicMetre)),
                (Id::QuietRoom, c(quiet)),
                (Id::QuietWall, c(wall)),
                (Id::QuietDistance, n(1.5, Unit::Metre)),
            ],
        )
    };
    let hollow = at("stud", "yes");
    let level = figure(&hollow, "figure-next-room", Unit::Decibel);
    assert!((level - 18.9).abs() < 0.1, "{level}");
    assert_eq!((hollow.fit, at("door", "yes").fit, at("door", "no").fit), (Fits, FitsWithWork, Fits));
}

/// A gas tank of 40,000 Btu/h breathes 2,000 cubic feet (50 for each 1,000); with a furnace beside it more.
#[test]
fn air_for_burners() {
    let at = |ft3: f64, left: &str| {
        let case = case(&[
            (Id::HeaterKind, c("gas")),
            (Id::RoomVolume, n(ft3, Unit::CubicFoot)),
            (Id::FuelLeft, c(left)),
            (Id::Door, c("solid")),
        ]);
        maybe(&case, CandidateId::GasTank, "burner-air").expect("applies")
    };
    let one = at(3_000.0, "none");
    let input = figure(&one, "figure-input", Unit::BtuPerHour);
    let asked = figure(&one, "figure-burner-air", Unit::CubicFoot);
    assert!((asked / input - 0.05).abs() < 1e-9, "{asked} for {input}");
    assert_eq!(
        (one.fit, at(asked - 10.0, "none").fit, at(3_000.0, "open").fit),
        (Fits, FitsWithWork, FitsWithWork)
    );
    let gone = found("burner-air", &[(Id::HeaterKind, c("gas")), (Id::FuelLeft, c("none"))]);
    assert_eq!(gone.says.id, "check-burner-air-none");
}

/// Two pascals: 0.12 m³/s blown out through 0.012 m² is 0.6 · (0.12/0.0072)² = 167 Pa.
#[test]
fn burners_that_stay() {
    let at = |left: &str, ducts: &str| {
        found("draught", &[(Id::FuelLeft, c(left)), (Id::Ducts, c(ducts)), (Id::Door, c("solid"))])
    };
    assert_eq!((at("none", "none").fit, at("sealed", "outdoors").fit), (Fits, Fits));
    assert_eq!(at("open", "none").fit, FitsWithWork);
    let blown = at("open", "outdoors");
    assert!((figure(&blown, "figure-pascals", Unit::One) - 166.67).abs() < 0.01);
    assert_eq!(blown.fit, DoesNotFit);
    assert!(blown.lets_in.is_some());
}

#[test]
fn flues_fuel_lines_and_garages() {
    let gas = |shared: &str| case(&[(Id::HeaterKind, c("gas")), (Id::SharesFlue, c(shared))]);
    let of = |case: &Case, id, check| maybe(case, id, check).map(|f| (f.fit, f.work.first().map(|w| w.kind)));
    let hp = CandidateId::HeatPump50;
    assert_eq!(of(&gas("yes"), hp, "flue"), Some((FitsWithWork, Some(WorkKind::ResizeFlue))));
    assert_eq!(of(&gas("no"), hp, "flue"), Some((Fits, None)));
    assert_eq!(of(&gas("yes"), CandidateId::GasTank, "flue"), None);
    assert_eq!(of(&gas("no"), hp, "fuel-line"), Some((FitsWithWork, Some(WorkKind::CapFuel))));
    assert_eq!(
        of(&gas("no"), CandidateId::GasTank, "fuel-line").and_then(|f| f.1),
        Some(WorkKind::FuelConnection)
    );
    assert_eq!(maybe(&case(&[(Id::HeaterKind, c("gas"))]), hp, "flue").map(|f| f.fit), Some(MeasureFirst));
    let garage = found("garage", &[(Id::RoomKind, c("garage"))]);
    assert!((size(&garage, WorkKind::Stand, "height", Unit::Inch) - 18.0).abs() < 1e-9);
}

#[test]
fn a_leaking_tank_does_not_stay() {
    let leaks = case(&[(Id::Signs, c("leaking"))]);
    assert_eq!(maybe(&leaks, CandidateId::Keep, "tank-state").map(|f| f.fit), Some(DoesNotFit));
    assert!(maybe(&leaks, CandidateId::HeatPump50, "tank-state").is_none());
}

/// A closet of 300 cubic feet, shut: the heat pump chills it. With ducts to another room it breathes the house's air and
/// leaves its closet alone; with a duct to the outside the house also warms the air that comes in for what went out, in
/// closed form: its flow, for as long as the heat pump ran in the heating season, by the difference of house and outdoors.
#[test]
fn ducts_move_the_cold_to_where_they_go() {
    let closet = |ducts: &str| {
        let case = case(&[
            (Id::RoomKind, c("closet")),
            (Id::RoomVolume, n(300.0, Unit::CubicFoot)),
            (Id::Door, c("solid")),
            (Id::Ducts, c(ducts)),
        ]);
        pipeline::advise(&case).of(CandidateId::HeatPump65).expect("a candidate").clone()
    };
    let (shut, indoors, outdoors) = (closet("none"), closet("indoors"), closet("outdoors"));
    let kwh = |o: &CandidateOutcome| o.year.electricity_year_kwh();
    let coldest = |o: &CandidateOutcome| to_celsius(o.year.room_coldest);
    let makeup = |o: &CandidateOutcome| o.year.heating_makeup_kwh.iter().sum::<f64>();
    println!(
        "shut {:.0} kWh, {:.1} °C, {:.0} kWh from the house; ducts indoors {:.0}, {:.1}, {:.0}; outdoors {:.0}, {:.1}, {:.0}",
        kwh(&shut),
        coldest(&shut),
        makeup(&shut),
        kwh(&indoors),
        coldest(&indoors),
        makeup(&indoors),
        kwh(&outdoors),
        coldest(&outdoors),
        makeup(&outdoors)
    );
    assert!(coldest(&shut) < 12.0 && coldest(&indoors) > 15.0 && coldest(&outdoors) > 15.0);
    assert!(kwh(&indoors) < kwh(&shut));
    assert!((kwh(&outdoors) / kwh(&indoors) - 1.0).abs() < 1e-9, "the heat pump breathes the same air");
    assert!(makeup(&outdoors) > 1.5 * makeup(&indoors) && makeup(&indoors) > 0.0);
    // What a check sets beside the shut room's year is about that of the room with ducts (a sample of days).
    let finding = shut.findings.iter().find(|f| f.check == "air-volume").expect("the check");
    assert_eq!(finding.fit, FitsWithWork);
    let (as_it_is, ducted) = (
        figure(finding, "figure-shut-cost", Unit::Dollar),
        figure(finding, "figure-ducted-cost", Unit::Dollar),
    );
    let told = indoors.findings.iter().find(|f| f.check == "air-volume").expect("the check");
    assert_eq!(told.fit, Fits);
    assert!(ducted > 0.0 && as_it_is > 0.0, "{as_it_is} {ducted}");
}
