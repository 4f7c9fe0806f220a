//! The work that findings ask for, as data: what kind, what sizes, roughly what price. The list of parts and the
//! order of work are made from it.

use super::message::{Arg, Message};
use super::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

/// Who does a piece of work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Trade {
    /// A licensed plumber.
    Plumber,
    /// A licensed electrician.
    Electrician,
    /// Whoever is licensed for fuel and flues.
    Fuel,
    /// Somebody handy, or a carpenter.
    Builder,
}

impl Trade {
    /// The code in files.
    pub const fn code(self) -> &'static str {
        match self {
            Trade::Plumber => "plumber",
            Trade::Electrician => "electrician",
            Trade::Fuel => "fuel",
            Trade::Builder => "builder",
        }
    }

    /// The key of its words: who may do the work.
    pub const fn key(self) -> &'static str {
        match self {
            Trade::Plumber => "trade-plumber",
            Trade::Electrician => "trade-electrician",
            Trade::Fuel => "trade-fuel",
            Trade::Builder => "trade-builder",
        }
    }

    /// Whether codes and licences say who may do it.
    pub const fn is_regulated(self) -> bool {
        !matches!(self, Trade::Builder)
    }
}

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $key:literal, $trade:ident, $sizes:expr;)*) => {
        /// A kind of work.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum WorkKind { $($(#[$doc])* $name,)* }

        impl WorkKind {
            /// Every kind.
            pub const ALL: &'static [WorkKind] = &[$(WorkKind::$name,)*];

            /// The code in files.
            pub const fn code(self) -> &'static str { match self { $(WorkKind::$name => $code,)* } }

            /// The key of its words.
            pub const fn key(self) -> &'static str { match self { $(WorkKind::$name => $key,)* } }

            /// Names of the sizes and quantities that such work states.
            pub const fn sizes(self) -> &'static [&'static str] { match self { $(WorkKind::$name => &$sizes,)* } }

            /// Who does it.
            pub const fn trade(self) -> Trade { match self { $(WorkKind::$name => Trade::$trade,)* } }
        }
    };
}

kinds! {
    /// A new two-pole circuit.
    NewCircuit = "new_circuit", "work-new-circuit", Electrician, ["breaker", "wire", "run"];
    /// Room made in the panel.
    PanelSpace = "panel_space", "work-panel-space", Electrician, [];
    /// A larger service, or loads that take turns.
    Service = "service", "work-service", Electrician, ["service", "load"];
    /// A new 120 V outlet on a circuit of its own.
    NewOutlet = "new_outlet", "work-new-outlet", Electrician, [];
    /// A breaker of another size.
    Breaker = "breaker", "work-breaker", Electrician, ["breaker"];
    /// New wires on the run.
    Wires = "wires", "work-wires", Electrician, ["wire", "run"];
    /// A switch in sight of the heater, or a lock for the breaker.
    Disconnect = "disconnect", "work-disconnect", Electrician, [];
    /// A wire across the replaced pipes.
    Bonding = "bonding", "work-bonding", Electrician, [];
    /// A pump for condensate.
    CondensatePump = "condensate_pump", "work-condensate-pump", Plumber, ["lift", "run"];
    /// A pipe for condensate by gravity.
    CondensatePipe = "condensate_pipe", "work-condensate-pipe", Plumber, ["run", "fall"];
    /// The condensate's way kept from freezing.
    FrostGuard = "frost_guard", "work-frost-guard", Plumber, ["run"];
    /// A louvred door or grilles.
    LouvredDoor = "louvred_door", "work-louvred-door", Builder, [];
    /// Openings for a burner's air.
    BurnerAir = "burner_air", "work-burner-air", Fuel, ["area"];
    /// A ceiling or pipes moved, or the door taken out.
    MakeWay = "make_way", "work-make-way", Builder, ["needs"];
    /// The tank stood up elsewhere and walked in upright.
    CarryUpright = "carry_upright", "work-carry-upright", Builder, ["needs"];
    /// A platform or stronger floor.
    FloorSupport = "floor_support", "work-floor-support", Builder, ["mass"];
    /// A stand in a garage.
    Stand = "stand", "work-stand", Builder, ["height"];
    /// Sound-deadening feet, a tighter door.
    Quieten = "quieten", "work-quieten", Builder, ["level"];
    /// An expansion tank.
    ExpansionTank = "expansion_tank", "work-expansion-tank", Plumber, ["size", "precharge"];
    /// An expansion tank's cushion set.
    Precharge = "precharge", "work-precharge", Plumber, ["precharge"];
    /// A pressure-reducing valve.
    PressureValve = "pressure_valve", "work-pressure-valve", Plumber, ["pressure"];
    /// A relief valve's discharge pipe.
    ReliefPipe = "relief_pipe", "work-relief-pipe", Plumber, ["length", "end"];
    /// A drain pan.
    Pan = "pan", "work-pan", Plumber, ["diameter"];
    /// A vacuum relief valve.
    VacuumRelief = "vacuum_relief", "work-vacuum-relief", Plumber, [];
    /// Straps against earthquakes.
    Straps = "straps", "work-straps", Plumber, ["count"];
    /// New shutoff valve and unions.
    Shutoff = "shutoff", "work-shutoff", Plumber, ["count"];
    /// Joints between steel and copper.
    Joints = "joints", "work-joints", Plumber, ["count"];
    /// A mixing valve.
    MixingValve = "mixing_valve", "work-mixing-valve", Plumber, ["mixed"];
    /// The thermostat set higher.
    Setpoint = "setpoint", "work-setpoint", Plumber, ["setting"];
    /// A recirculation pump's switch, and pipe covered.
    LoopControl = "loop_control", "work-loop-control", Plumber, ["length"];
    /// A fuel line capped, the flue's opening closed.
    CapFuel = "cap_fuel", "work-cap-fuel", Fuel, [];
    /// A flue re-sized for what stays.
    ResizeFlue = "resize_flue", "work-resize-flue", Fuel, [];
    /// A fuel valve and connection for a new burner.
    FuelConnection = "fuel_connection", "work-fuel-connection", Fuel, [];
    /// The draught of the burner that stays tested.
    DraughtTest = "draught_test", "work-draught-test", Fuel, [];
}

/// A piece of work.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Work {
    /// What kind.
    pub kind: WorkKind,
    /// In words, with its sizes and quantities.
    pub says: Message,
    /// Rough price, dollars (from memory); 0 where an ordinary job's price has it already.
    pub cost: f64,
}

impl Work {
    /// A kind of work at a rough price.
    pub fn new(kind: WorkKind, cost: f64) -> Work {
        Work { kind, says: Message::new(kind.key()), cost }
    }

    /// With a size or a quantity.
    #[must_use]
    pub fn sized(mut self, name: &'static str, value: f64, unit: Unit) -> Work {
        self.says = self.says.quantity(name, value, unit);
        self
    }

    /// A size or quantity by name.
    pub fn size(&self, name: &str) -> Option<Quantity> {
        self.says.args.iter().find(|(n, _)| n == name).and_then(|(_, arg)| match arg {
            Arg::Quantity(q) => Some(*q),
            _ => None,
        })
    }
}
