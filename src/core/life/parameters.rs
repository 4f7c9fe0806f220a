//! What lives of tanks are made of, as data: each figure with its plausible range and its source.
//!
//! None of them is measured here. Surveys of tanks that failed are the trade's own and not public in a form that
//! could be checked, so the ranges are wide on purpose.

/// A figure with the range it plausibly lies in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// The least.
    pub low: f64,
    /// The value taken.
    pub middle: f64,
    /// The most.
    pub high: f64,
}

const fn spread(low: f64, middle: f64, high: f64) -> Spread {
    Spread { low, middle, high }
}

/// Where a figure comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// Common practice of the trade, no source.
    CommonPractice,
    /// A publication, from memory.
    FromMemory(&'static str),
}

/// Shape of lives: 1 would be chance alone, 3 wear with a wide spread.
pub const SHAPE: Spread = spread(2.0, 3.0, 4.5);
/// Scale of lives, years: a mean of 12.5 years, one in six reaching 17. "About 10 to 15 years; 17 is a long life for
/// a glass-lined tank."
pub const SCALE_YEARS: Spread = spread(11.0, 14.0, 18.0);
/// Share of the life of an electric tank that one over a gas or propane burner has. Both are said to last "10 to 15
/// years" and "8 to 12 years", but the shorter is mostly lime on its bottom, which is counted apart.
pub const OVER_GAS: Spread = spread(0.8, 0.95, 1.05);
/// The same over an oil burner, which is larger for its tank.
pub const OVER_OIL: Spread = spread(0.7, 0.9, 1.0);
/// The same of a heat pump tank: the tank is an electric one's, the machine may fail before it.
pub const OF_HEAT_PUMP: Spread = spread(0.85, 1.0, 1.1);
/// Share of life of a tank with rust at its fittings or in its water.
pub const RUSTY: Spread = spread(0.55, 0.75, 0.9);
/// Share of life of a tank that rumbles.
pub const RUMBLING: Spread = spread(0.8, 0.9, 1.0);
/// Share of life that a tank has had by the time it leaks.
pub const LEAKING: Spread = spread(0.25, 0.25, 0.25);
/// Life of a tank whose anode was changed, over one whose anode never was.
pub const ANODE_CHANGED: Spread = spread(1.1, 1.3, 1.6);
/// Share of life lost to lime over a burner for every step of the usual scale of hardness above hard water.
pub const LIME_A_STEP: Spread = spread(0.0, 0.1, 0.2);
/// The most life that lime takes.
pub const LIME_MOST: Spread = spread(0.0, 0.25, 0.4);

/// What more than usual a swap costs that cannot wait, as a share of the installed price: evenings, weekends, no
/// second quote.
pub const RUSH: Spread = spread(0.0, 0.15, 0.4);
/// Share of failures that are a leak: the others (an element, a control, a burner) leave a tank that holds water.
pub const LEAKS: Spread = spread(0.4, 0.6, 0.8);
/// What a leak costs where finished rooms lie below or around, dollars.
pub const DAMAGE_FINISHED: Spread = spread(800.0, 4_000.0, 12_000.0);
/// What it costs inside the house with nothing finished below: floors and walls around, dollars.
pub const DAMAGE_INSIDE: Spread = spread(300.0, 1_500.0, 5_000.0);
/// What it costs on bare ground or concrete, dollars: mopping, things that stood on the floor.
pub const DAMAGE_BARE: Spread = spread(0.0, 150.0, 1_000.0);
/// Share of the damage that is left with a pan and its drain under the heater; a pan alone fills within minutes.
pub const LEFT_BY_PAN: Spread = spread(0.1, 0.3, 0.6);

/// Every parameter with the name of its words' key and its source.
pub const ALL: &[(&str, Spread, Source)] = &[
    ("life-shape", SHAPE, Source::CommonPractice),
    ("life-scale", SCALE_YEARS, Source::CommonPractice),
    ("life-over-gas", OVER_GAS, Source::CommonPractice),
    ("life-over-oil", OVER_OIL, Source::CommonPractice),
    ("life-of-heat-pump", OF_HEAT_PUMP, Source::CommonPractice),
    ("life-rusty", RUSTY, Source::CommonPractice),
    ("life-rumbling", RUMBLING, Source::CommonPractice),
    ("life-anode", ANODE_CHANGED, Source::CommonPractice),
    ("life-lime", LIME_A_STEP, Source::CommonPractice),
    ("life-lime-most", LIME_MOST, Source::CommonPractice),
    ("life-rush", RUSH, Source::CommonPractice),
    ("life-leaks", LEAKS, Source::CommonPractice),
    (
        "life-damage-finished",
        DAMAGE_FINISHED,
        Source::FromMemory("insurers' claims, a few thousand dollars each"),
    ),
    ("life-damage-inside", DAMAGE_INSIDE, Source::CommonPractice),
    ("life-damage-bare", DAMAGE_BARE, Source::CommonPractice),
    ("life-pan", LEFT_BY_PAN, Source::CommonPractice),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_range_holds_its_value() {
        for (name, s, _) in ALL {
            assert!(s.low <= s.middle && s.middle <= s.high && s.low >= 0.0 && s.high.is_finite(), "{name}");
        }
    }
}
