//! Invented households that have answered the page's first questions, or nothing.

use tankful::core::case::{Known, Provenance};
use tankful::core::futures::points::{normal_quantile, uniform};
use tankful::core::futures::unknowns::{PLAUSIBLE_Z, Unknowns};
use tankful::core::futures::{Fitted, Lives, Study};
use tankful::core::outcome::Outcome;
use tankful::core::units::Unit;
use tankful::job::answers::Answers;
use tankful::job::offer::Offer;
use tankful::job::open::Open;
use tankful::job::questions::{self, Id, Value};
use tankful::job::resolved::Resolved;

/// The first so many households of a study.
pub fn lives(study: &Study, count: u32) -> Vec<Lives> {
    (0..count).map(|index| study.lives(index)).collect()
}

/// What the first so many households of a study teach.
pub fn fitted(study: &Study, outcome: &Outcome, count: u32) -> Fitted {
    let lives = lives(study, count);
    study.fit(&study.as_it_stands(), &lives, outcome).expect("there are years to learn from")
}

/// A house whose place, heater, room and household are random, and which answered what the page asks at once: each
/// with a random plausible value, whole people.
pub fn answered(n: u32) -> Open {
    let pick = |options: &[&'static str], dimension: u32| {
        options[(uniform(n, dimension, 77) * options.len() as f64) as usize]
    };
    let mut answers = Answers::new();
    let mut set = |id, value| answers.set(id, value, Provenance::Answered).expect("in range");
    let places = [
        "us-mn-minneapolis",
        "us-ca-sacramento",
        "ca-ab-calgary",
        "us-tx-houston",
        "us-ma-boston",
        "us-fl-miami",
    ];
    set(Id::Place, Value::code(pick(&places, 0)));
    set(Id::HeaterKind, Value::code(pick(&["electric", "gas", "oil", "electric", "propane", "electric"], 1)));
    set(Id::RoomKind, Value::code(pick(&["basement", "garage", "utility", "basement", "closet"], 2)));
    let whole =
        |from: f64, to: f64, dimension: u32| (from + (to - from + 1.0) * uniform(n, dimension, 77)).floor();
    for (id, from, to, dimension) in
        [(Id::Adults, 1.0, 3.0, 3), (Id::Teenagers, 0.0, 1.0, 4), (Id::Children, 0.0, 2.0, 5)]
    {
        set(id, Value::number(whole(from, to, dimension), Unit::One));
    }
    let drawn = Open::of(&answers, &Offer::default());
    for (at, q) in drawn.coordinates().iter().enumerate() {
        let id = Id::from_code(&q.code).expect("a question's code");
        if !questions::Question::get(id).first || !q.open {
            continue;
        }
        let z = normal_quantile(uniform(n, 10 + at as u32, 77)).clamp(-PLAUSIBLE_Z, PLAUSIBLE_Z);
        let mut position = vec![0.0; at + 1];
        position[at] = z;
        let value = match drawn.value(at, z) {
            Some(quantity) => Value::Number(quantity),
            None => continue,
        };
        answers.set(id, value, Provenance::Answered).expect("in range");
    }
    for id in [Id::Signs, Id::Door, Id::RunsOutNow] {
        let stands = Resolved::of(&answers).get(id).cloned().expect("every question has a value");
        answers.set(id, stands.value, Provenance::Answered).expect("an option");
    }
    Open::of(&answers, &Offer::default())
}

fn chosen(options: &[(Id, &str)]) -> Answers {
    let mut answers = Answers::new();
    for (id, code) in options {
        answers.set(*id, Value::code(code), Provenance::Answered).expect("an option of the list");
    }
    answers
}

/// A house of which nothing is known but its kind.
pub fn silent(place: &str, room: &str, heater: &str) -> Open {
    let answers = chosen(&[(Id::Place, place), (Id::RoomKind, room), (Id::HeaterKind, heater)]);
    Open::of(&answers, &Offer::default())
}

/// A house of which is known that it pays by the hour, in which part of the year, and nothing else.
pub fn hourly(place: &str, heater: &str, season: &str) -> Answers {
    let time = (Id::Tariff, "time");
    chosen(&[(Id::Place, place), (Id::HeaterKind, heater), time, (Id::PeakSeason, season)])
}

/// Everything answered as it stands: nothing is open.
pub fn settled(place: &str, heater: &str) -> Open {
    all_settled(chosen(&[(Id::Place, place), (Id::HeaterKind, heater)]))
}

/// Whatever is open of answers measured as it stands.
pub fn all_settled(mut answers: Answers) -> Open {
    let resolved = Resolved::of(&answers);
    for (id, Known { value, .. }) in resolved.iter() {
        answers.set(id, value.clone(), Provenance::Measured).expect("a default is in range");
    }
    Open::of(&answers, &Offer::default())
}
