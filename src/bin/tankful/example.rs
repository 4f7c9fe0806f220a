//! An invented household, realistic in every answer, to try things with.

use tankful::core::case::{HeaterKind, Provenance};
use tankful::core::units::{Quantity, Unit};
use tankful::job::answers::Answers;
use tankful::job::file::CaseFile;
use tankful::job::offer::{AdderKind, Figure, Heater, Offer};
use tankful::job::questions::{Id, Value};
use tankful::text::Words;

/// A heater of the invented offer: its name, gallons, factor, first-hour gallons, height and width in
/// inches, price.
type Offered = (&'static str, [f64; 6]);

const OFFERED: [Offered; 3] = [
    ("cli-example-heater-50", [50.0, 3.5, 67.0, 63.0, 22.5, 4_150.0]),
    ("cli-example-heater-65", [65.0, 3.6, 75.0, 65.0, 26.5, 4_700.0]),
    ("cli-example-heater-80", [80.0, 3.6, 90.0, 75.0, 26.5, 5_200.0]),
];

/// An installer's offer: three heat pump tanks, with further work. Invented.
pub fn offer(words: &Words) -> Offer {
    let mut offer = Offer { labour: 250.0, ..Offer::default() };
    for (name, figures) in OFFERED {
        let mut heater = Heater::new(HeaterKind::HeatPump);
        heater.call(&words.key(name));
        let places = [
            Figure::Volume,
            Figure::Factor,
            Figure::FirstHour,
            Figure::Height,
            Figure::Diameter,
            Figure::Price,
        ];
        for (figure, value) in places.into_iter().zip(figures) {
            // Every value lies within its figure's range (tested): none is refused.
            let _ = heater.set(figure, Some(Quantity::new(value, figure.units().0)));
        }
        offer.heaters.push(heater);
    }
    for (kind, price) in
        [(AdderKind::NewCircuit, 680.0), (AdderKind::CondensatePump, 240.0), (AdderKind::Permit, 90.0)]
    {
        let _ = offer.price_adder(kind, "", price);
    }
    offer
}

/// The case: a family of four with an old electric tank in a basement. Invented.
pub fn case(words: &Words, offer: Offer) -> CaseFile {
    let mut answers = Answers::new();
    let number = Value::number;
    let said = [
        (Id::Adults, number(2.0, Unit::One)),
        (Id::Teenagers, number(1.0, Unit::One)),
        (Id::Children, number(1.0, Unit::One)),
        (Id::ShowersInARow, number(2.0, Unit::One)),
        (Id::RunsOutNow, Value::code("no")),
        (Id::HeaterKind, Value::code("electric")),
        (Id::HeaterAge, number(14.0, Unit::Year)),
        (Id::HeaterVolume, number(50.0, Unit::Gallon)),
        (Id::Signs, Value::code("rumbling")),
        (Id::AnodeChanged, Value::code("no")),
        (Id::Place, Value::code("us-ma-boston")),
        (Id::RoomKind, Value::code("basement")),
        (Id::Door, Value::code("undercut")),
        (Id::Dehumidifier, Value::code("yes")),
        (Id::Dampness, Value::code("damp")),
        (Id::HouseHeat, Value::code("gas")),
        (Id::DrainKind, Value::code("floor")),
        (Id::Supply, Value::code("240")),
        (Id::Breaker, number(30.0, Unit::Ampere)),
        (Id::PriceElectricity, number(0.27, Unit::DollarPerKwh)),
        (Id::Rebate, number(500.0, Unit::Dollar)),
    ];
    let measured = [
        (Id::ShowerFlow, number(2.0, Unit::GallonPerMinute)),
        (Id::Setpoint, number(122.0, Unit::DegF)),
        (Id::RoomVolume, number(6_200.0, Unit::CubicFoot)),
        (Id::RoomWinter, number(58.0, Unit::DegF)),
        (Id::Headroom, number(84.0, Unit::Inch)),
    ];
    let all = said.into_iter().map(|a| (a, Provenance::Answered));
    for ((id, value), from) in all.chain(measured.into_iter().map(|a| (a, Provenance::Measured))) {
        // Every value lies within its question's range (tested): none is refused.
        let _ = answers.set(id, value, from);
    }
    CaseFile { name: Some(words.key("cli-example-name")), seed: None, answers, offer }
}
