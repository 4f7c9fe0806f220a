//! `tankful::core::draws::daily_use` against the Building America relations written out in numpy.
use crate::fixture::{Fixture, Worst, hold};
use tankful::core::draws::daily_use;

/// The same straight lines in another order of operations: rounding (relative).
const ROUNDING: f64 = 1e-12;

/// A comparison's name, and our relation: gallons a day for people.
type Relation = (&'static str, fn(f64) -> f64);

#[test]
fn daily_use_by_fixture_meets_the_protocols_relations() {
    let columns = ["people", "showers", "baths", "sinks", "clothes_washer", "dishwasher"];
    let ours: [Relation; 5] = [
        ("showers a day, relative", daily_use::showers_gal),
        ("baths a day, relative", daily_use::baths_gal),
        ("sinks a day, relative", daily_use::sinks_gal),
        ("clothes washer a day, relative", daily_use::clothes_washer_gal),
        ("dishwasher a day, relative", daily_use::dishwasher_gal),
    ];
    let rows = Fixture::load("cold_water").table("daily_use_gallons").rows(columns);
    hold(ours.iter().enumerate().map(|(i, (what, relation))| {
        let mut worst = Worst::of(what);
        for row in &rows {
            worst.see_relative(relation(row[0]), row[i + 1], row[0]);
        }
        (worst, ROUNDING)
    }));
}
