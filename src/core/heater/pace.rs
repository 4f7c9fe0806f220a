//! How finely a heater goes through time.

/// The longest that is taken in one step, s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Nothing heats. Conduction is only seen at a step's end, and what it does to the water at a sensor decides when that
    /// calls: a night in one step cost 0.2 % of a week's heat.
    pub idle_s: f64,
    /// An element or a burner heats: the jacket's loss is taken at the step's end.
    pub direct_s: f64,
    /// The heat pump heats.
    pub pump_s: f64,
    /// A piece of a draw.
    pub draw_s: f64,
    /// Hours in which the room's undisturbed temperature stays.
    pub hours: u32,
    /// Conduction is done in batches of this time.
    pub conduction_s: f64,
    /// Time of draws that may pass before the heater goes through it: a call is late by so much at most.
    pub owed_s: f64,
    /// The same for a heater with a heat pump, whose backup is the more sensitive to that.
    pub owed_with_pump_s: f64,
    /// The same while an element or a burner heats.
    pub owed_heating_s: f64,
}

impl Pace {
    /// Of a year that stands for itself.
    pub const ORDINARY: Pace = Pace {
        idle_s: 3_600.0,
        direct_s: 1_200.0,
        pump_s: 600.0,
        draw_s: 120.0,
        hours: 1,
        conduction_s: 1_800.0,
        owed_s: 180.0,
        owed_with_pump_s: 30.0,
        owed_heating_s: 0.0,
    };

    /// Of the thousands of years that futures ask for. What it is off by: `tests/futures/brisk.rs`. Near
    /// the limits of its air a heat pump's steps are as short as at any pace: it looks anew every ten minutes.
    pub const BRISK: Pace = Pace {
        idle_s: 10_800.0,
        direct_s: 3_600.0,
        pump_s: 1_200.0,
        draw_s: 300.0,
        hours: 3,
        conduction_s: 3_600.0,
        owed_s: 180.0,
        owed_with_pump_s: 180.0,
        owed_heating_s: 180.0,
    };

    /// The same where somebody reads the meter every hour.
    pub const BRISK_BY_HOUR: Pace = Pace { hours: 1, ..Pace::BRISK };
}
