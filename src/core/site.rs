//! What the checks ask about a house beside what the simulation needs: sizes on the way in, the drain's route, the
//! circuit's wires, the water pipes. Each number comes with the range in which the truth plausibly lies.

use super::case::{Known, Provenance, YesNo, choices};
use serde::{Deserialize, Serialize};

/// A number in SI with the range it plausibly lies in: a point where somebody answered or measured.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ranged {
    /// The value taken.
    pub value: f64,
    /// The least it may plausibly be.
    pub low: f64,
    /// The most it may plausibly be.
    pub high: f64,
    /// Where the value came from.
    pub from: Provenance,
}

impl Ranged {
    /// A value that is typical, with its range.
    pub const fn assumed(value: f64, low: f64, high: f64) -> Ranged {
        Ranged { value, low, high, from: Provenance::Assumed }
    }

    /// A value somebody knows.
    pub const fn exact(value: f64, from: Provenance) -> Ranged {
        Ranged { value, low: value, high: value, from }
    }
}

choices! {
    /// What the heater stands on.
    FloorKind {
        /// Concrete on the ground.
        Slab = "slab",
        /// Wooden joists.
        Wood = "wood",
    }
    /// What lies between the heater and a quiet room.
    WallKind {
        /// An opening or a plain door.
        Door = "door",
        /// A wall of studs and plasterboard.
        Stud = "stud",
        /// The same, filled with insulation.
        Filled = "filled",
        /// Brick, block or concrete.
        Masonry = "masonry",
    }
    /// A burner of another appliance that stays in the room.
    FuelLeft {
        /// None.
        None = "none",
        /// One that takes its air from outdoors by a pipe of its own.
        Sealed = "sealed",
        /// One that takes its air from the room.
        Open = "open",
    }
    /// Where the heat pump's air comes from and goes to.
    Ducts {
        /// The room itself.
        None = "none",
        /// Another room of the house, by ducts.
        Indoors = "indoors",
        /// Outdoors, by a duct.
        Outdoors = "outdoors",
    }
    /// A 120 V outlet within reach.
    Outlet {
        /// On a circuit of its own.
        Yes = "yes",
        /// None.
        No = "no",
        /// On a circuit with other outlets.
        Shared = "shared",
    }
    /// Size of the circuit's wires, American wire gauge.
    WireSize {
        /// 14 AWG.
        Awg14 = "14",
        /// 12 AWG.
        Awg12 = "12",
        /// 10 AWG.
        Awg10 = "10",
        /// 8 AWG.
        Awg8 = "8",
        /// 6 AWG.
        Awg6 = "6",
    }
    /// Metal of the wires.
    WireMetal {
        /// Copper.
        Copper = "copper",
        /// Aluminium.
        Aluminium = "aluminium",
    }
    /// What holds the wires.
    CableKind {
        /// Nonmetallic-sheathed cable.
        Sheathed = "sheathed",
        /// Conduit or metal-clad cable.
        Conduit = "conduit",
    }
    /// The wires that are there.
    Wires {
        /// Two hots and a ground.
        Ground = "ground",
        /// Two hots, a neutral and a ground.
        Neutral = "neutral",
        /// Two hots and no ground.
        NoGround = "no_ground",
    }
    /// What keeps water from going back into the street's main.
    ClosedBy {
        /// Nothing.
        None = "none",
        /// A check valve or backflow preventer.
        Check = "check",
        /// A pressure-reducing valve.
        Reducer = "reducer",
    }
    /// The water pipes.
    PipeMaterial {
        /// Copper.
        Copper = "copper",
        /// Galvanised steel.
        Steel = "steel",
        /// Plastic.
        Plastic = "plastic",
    }
    /// The relief valve's discharge pipe.
    ReliefPipe {
        /// Down to the floor or outdoors, full size, end open and in sight.
        Good = "good",
        /// None.
        Missing = "missing",
        /// Smaller, uphill, threaded, closed or out of sight.
        Wrong = "wrong",
    }
    /// A pan under the heater.
    Pan {
        /// With a drain.
        Drained = "drained",
        /// Without one.
        Undrained = "undrained",
        /// None.
        None = "none",
    }
    /// A pump that sends hot water round.
    Recirculation {
        /// None.
        None = "none",
        /// On a timer, a button or a thermostat.
        Timed = "timed",
        /// Day and night.
        Always = "always",
    }
    /// How likely strong earthquakes are.
    Seismic {
        /// Seldom (categories A and B).
        Low = "low",
        /// Now and then (category C), a house of its own.
        Moderate = "moderate",
        /// Now and then (category C), a townhouse.
        ModerateTownhouse = "moderate_townhouse",
        /// Often (categories D0 to D2).
        High = "high",
    }
}

impl WireSize {
    /// American wire gauge.
    pub const fn awg(self) -> u8 {
        match self {
            WireSize::Awg14 => 14,
            WireSize::Awg12 => 12,
            WireSize::Awg10 => 10,
            WireSize::Awg8 => 8,
            WireSize::Awg6 => 6,
        }
    }
}

/// Everything the checks ask of a house beside the case's other parts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// Free air in the room, m³.
    pub volume_m3: Ranged,
    /// Floor to the lowest thing above the heater, m.
    pub headroom_m: Ranged,
    /// Narrowest door or hatch, m.
    pub way_in_m: Ranged,
    /// Width of the tightest landing or turn of the stairs, the narrower of both ways, m; 0: none on the way.
    pub stair_turn_m: Ranged,
    /// Highest ceiling near the heater, m.
    pub stand_up_m: Ranged,
    /// Narrower side of the free floor for the tank, m.
    pub footprint_m: Ranged,
    /// Free floor in front of it, m.
    pub service_m: Ranged,
    /// What it stands on.
    pub floor: Known<FloorKind>,
    /// Whether finished rooms lie below.
    pub finished_below: Known<YesNo>,
    /// Whether a bedroom or another quiet room is next door.
    pub quiet_room: Known<YesNo>,
    /// What lies between.
    pub quiet_wall: Known<WallKind>,
    /// How far the heater stands from it, m.
    pub quiet_distance_m: Ranged,
    /// A burner that stays.
    pub fuel_left: Known<FuelLeft>,
    /// Ducts.
    pub ducts: Known<Ducts>,
    /// Earthquakes.
    pub seismic: Known<Seismic>,
    /// Length of the condensate's route, m.
    pub drain_run_m: Ranged,
    /// How far the drain lies above the heater's condensate outlet, m (negative: below).
    pub drain_rise_m: Ranged,
    /// Whether part of the route freezes.
    pub drain_freezes: Known<YesNo>,
    /// The heater's two-pole breaker, A; 0: none.
    pub breaker_a: Ranged,
    /// Free double spaces in the panel.
    pub free_spaces: Ranged,
    /// Size of the circuit's wires.
    pub wire_size: Known<WireSize>,
    /// Their metal.
    pub wire_metal: Known<WireMetal>,
    /// What holds them.
    pub cable_kind: Known<CableKind>,
    /// Length of the run from the panel, m.
    pub run_m: Ranged,
    /// Which wires there are.
    pub wires: Known<Wires>,
    /// Whether the heater can be switched off in sight of it, or the breaker locked.
    pub disconnect: Known<YesNo>,
    /// Rating of the house's service, A.
    pub service_a: Ranged,
    /// Other large electric loads, nameplates added up, W.
    pub large_loads_w: Ranged,
    /// Floor of the house, m².
    pub house_m2: Ranged,
    /// Static pressure, Pa gauge.
    pub pressure_pa: Ranged,
    /// What closes the system off.
    pub closed_by: Known<ClosedBy>,
    /// Volume of the expansion tank, m³; 0: none.
    pub expansion_m3: Ranged,
    /// Its precharge, Pa gauge.
    pub precharge_pa: Ranged,
    /// The water pipes.
    pub pipes: Known<PipeMaterial>,
    /// Whether the heater's shutoff valve still closes.
    pub shutoff_works: Known<YesNo>,
    /// The relief valve's discharge pipe.
    pub relief_pipe: Known<ReliefPipe>,
    /// A pan under the heater.
    pub pan: Known<Pan>,
    /// Whether taps lie lower than the heater's bottom.
    pub fixtures_below: Known<YesNo>,
    /// Whether a mixing valve is there.
    pub mixing_valve: Known<YesNo>,
    /// A pump that sends hot water round.
    pub recirculation: Known<Recirculation>,
    /// Length of that loop, m.
    pub loop_m: Ranged,
    /// Whether its pipes are covered.
    pub loop_covered: Known<YesNo>,
}
