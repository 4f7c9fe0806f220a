//! Kinds of parts, as data: where they stand on the list, who puts them in, how they are sold, and what
//! becomes of two wants for the same part.

use super::sold::{CABLE_FT, Sold, TUBE_FT};
use crate::core::work::Trade;

/// The part of a store, or of a truck, where things stand together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shelf {
    /// The heater and what it stands on.
    Tank,
    /// Water pipes.
    Water,
    /// Condensate.
    Drain,
    /// Wires.
    Power,
    /// Air.
    Air,
    /// Fuel and flue.
    Fuel,
    /// What is used up.
    Supplies,
}

impl Shelf {
    /// Every shelf, in the order of the list.
    pub const ALL: [Shelf; 7] =
        [Shelf::Tank, Shelf::Water, Shelf::Drain, Shelf::Power, Shelf::Air, Shelf::Fuel, Shelf::Supplies];

    /// The code in files.
    pub const fn code(self) -> &'static str {
        match self {
            Shelf::Tank => "tank",
            Shelf::Water => "water",
            Shelf::Drain => "drain",
            Shelf::Power => "power",
            Shelf::Air => "air",
            Shelf::Fuel => "fuel",
            Shelf::Supplies => "supplies",
        }
    }

    /// The key of its name.
    pub const fn key(self) -> &'static str {
        match self {
            Shelf::Tank => "shelf-tank",
            Shelf::Water => "shelf-water",
            Shelf::Drain => "shelf-drain",
            Shelf::Power => "shelf-power",
            Shelf::Air => "shelf-air",
            Shelf::Fuel => "shelf-fuel",
            Shelf::Supplies => "shelf-supplies",
        }
    }
}

/// What becomes of two wants for the same part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Merge {
    /// Both are needed.
    Sum,
    /// One serves for both: the larger want and the larger size.
    Most,
    /// The same, of wires, whose sizes count downwards.
    Thickest,
}

macro_rules! parts {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $key:literal, $shelf:ident, $trade:ident, $sold:expr, $merge:ident, $sizes:expr;)*) => {
        /// A kind of part.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum PartKind { $($(#[$doc])* $name,)* }

        impl PartKind {
            /// Every kind.
            pub const ALL: &'static [PartKind] = &[$(PartKind::$name,)*];

            /// The code in files and kept jobs.
            pub const fn code(self) -> &'static str { match self { $(PartKind::$name => $code,)* } }

            /// The key of its words.
            pub const fn key(self) -> &'static str { match self { $(PartKind::$name => $key,)* } }

            /// Where it stands on the list.
            pub const fn shelf(self) -> Shelf { match self { $(PartKind::$name => Shelf::$shelf,)* } }

            /// Who puts it in.
            pub const fn trade(self) -> Trade { match self { $(PartKind::$name => Trade::$trade,)* } }

            /// How it is sold.
            pub const fn sold(self) -> Sold { match self { $(PartKind::$name => $sold,)* } }

            /// What becomes of two wants.
            pub(super) const fn merge(self) -> Merge { match self { $(PartKind::$name => Merge::$merge,)* } }

            /// Names of the sizes that its words state.
            pub const fn sizes(self) -> &'static [&'static str] { match self { $(PartKind::$name => &$sizes,)* } }
        }
    };
}

parts! {
    /// The heater itself.
    Heater = "heater", "part-heater", Tank, Plumber, Sold::Each, Most, ["name"];
    /// A drain pan.
    Pan = "pan", "part-pan", Tank, Plumber, Sold::Each, Most, ["diameter"];
    /// The pan's drain pipe.
    PanPipe = "pan_pipe", "part-pan-pipe", Tank, Plumber, Sold::Lengths(10.0), Most, [];
    /// A switch that shuts the water when the pan fills.
    PanSwitch = "pan_switch", "part-pan-switch", Tank, Plumber, Sold::Each, Most, [];
    /// A stand.
    Stand = "stand", "part-stand", Tank, Builder, Sold::Each, Most, ["height"];
    /// A platform's timber and board.
    Timber = "timber", "part-timber", Tank, Builder, Sold::Each, Most, ["mass"];
    /// Rubber feet.
    Feet = "feet", "part-feet", Tank, Builder, Sold::Each, Most, [];
    /// A strap against earthquakes.
    Strap = "strap", "part-strap", Tank, Plumber, Sold::Each, Most, ["around"];
    /// Screws into studs for straps.
    StrapScrew = "strap_screw", "part-strap-screw", Tank, Plumber, Sold::Each, Most, [];
    /// Copper pipe.
    CopperPipe = "copper_pipe", "part-copper-pipe", Water, Plumber, Sold::Lengths(10.0), Sum, [];
    /// Plastic pipe of the house's kind.
    PlasticPipe = "plastic_pipe", "part-plastic-pipe", Water, Plumber, Sold::Lengths(10.0), Sum, [];
    /// An elbow.
    Elbow = "elbow", "part-elbow", Water, Plumber, Sold::Each, Sum, [];
    /// A coupling to the house's pipe.
    Coupling = "coupling", "part-coupling", Water, Plumber, Sold::Each, Sum, [];
    /// A tee.
    Tee = "tee", "part-tee", Water, Plumber, Sold::Each, Sum, [];
    /// From pipe to thread.
    Adapter = "adapter", "part-adapter", Water, Plumber, Sold::Each, Sum, [];
    /// A union that keeps metals apart.
    DielectricUnion = "dielectric_union", "part-dielectric-union", Water, Plumber, Sold::Each, Most, [];
    /// A plain union.
    Union = "union", "part-union", Water, Plumber, Sold::Each, Most, [];
    /// A full-way ball valve.
    Shutoff = "shutoff", "part-shutoff", Water, Plumber, Sold::Each, Most, [];
    /// A vacuum relief valve.
    VacuumRelief = "vacuum_relief", "part-vacuum-relief", Water, Plumber, Sold::Each, Most, [];
    /// An expansion tank.
    ExpansionTank = "expansion_tank", "part-expansion-tank", Water, Plumber, Sold::Each, Most, ["size", "precharge"];
    /// What holds it.
    Bracket = "bracket", "part-bracket", Water, Plumber, Sold::Each, Most, [];
    /// A pressure-reducing valve.
    PressureValve = "pressure_valve", "part-pressure-valve", Water, Plumber, Sold::Each, Most, ["pressure"];
    /// A mixing valve.
    MixingValve = "mixing_valve", "part-mixing-valve", Water, Plumber, Sold::Each, Most, ["mixed"];
    /// A loop pump's button or timer.
    LoopSwitch = "loop_switch", "part-loop-switch", Water, Plumber, Sold::Each, Most, [];
    /// The relief valve's pipe.
    ReliefPipe = "relief_pipe", "part-relief-pipe", Water, Plumber, Sold::Lengths(10.0), Most, [];
    /// Its thread and bend.
    ReliefFitting = "relief_fitting", "part-relief-fitting", Water, Plumber, Sold::Each, Most, [];
    /// Cover for hot and cold pipe.
    PipeCover = "pipe_cover", "part-pipe-cover", Water, Builder, Sold::Lengths(6.0), Sum, [];
    /// A clamp for pipe.
    Clamp = "clamp", "part-clamp", Water, Plumber, Sold::Each, Sum, [];
    /// An anode.
    Anode = "anode", "part-anode", Water, Plumber, Sold::Each, Most, [];
    /// Condensate pipe.
    DrainPipe = "drain_pipe", "part-drain-pipe", Drain, Plumber, Sold::Lengths(10.0), Most, [];
    /// Its bends and adapter.
    DrainFitting = "drain_fitting", "part-drain-fitting", Drain, Plumber, Sold::Each, Most, [];
    /// A trap.
    DrainTrap = "drain_trap", "part-drain-trap", Drain, Plumber, Sold::Each, Most, [];
    /// A condensate pump with its switch.
    Pump = "pump", "part-pump", Drain, Plumber, Sold::Each, Most, ["lift"];
    /// The pump's tube.
    PumpTube = "pump_tube", "part-pump-tube", Drain, Plumber, Sold::Coils(TUBE_FT), Most, [];
    /// Wire from the pump's switch to the heater.
    SwitchWire = "switch_wire", "part-switch-wire", Drain, Plumber, Sold::Lengths(10.0), Most, [];
    /// An outlet for the pump.
    PumpOutlet = "pump_outlet", "part-pump-outlet", Drain, Electrician, Sold::Each, Most, [];
    /// Cover or heat cable for pipe in the cold.
    FrostCover = "frost_cover", "part-frost-cover", Drain, Plumber, Sold::Lengths(6.0), Sum, [];
    /// Cable to the heater.
    Cable = "cable", "part-cable", Power, Electrician, Sold::Coils(CABLE_FT), Thickest, ["wire"];
    /// A double breaker.
    Breaker = "breaker", "part-breaker", Power, Electrician, Sold::Each, Most, ["breaker"];
    /// A switch beside the heater.
    Switch = "switch", "part-switch", Power, Electrician, Sold::Each, Most, ["amps"];
    /// A clamp for cable.
    CableClamp = "cable_clamp", "part-cable-clamp", Power, Electrician, Sold::Each, Most, [];
    /// A joint for wires.
    WireJoint = "wire_joint", "part-wire-joint", Power, Electrician, Sold::Each, Most, [];
    /// An outlet on a circuit of its own.
    Outlet = "outlet", "part-outlet", Power, Electrician, Sold::Each, Most, [];
    /// Its cable.
    OutletCable = "outlet_cable", "part-outlet-cable", Power, Electrician, Sold::Coils(CABLE_FT), Most, [];
    /// Its breaker.
    OutletBreaker = "outlet_breaker", "part-outlet-breaker", Power, Electrician, Sold::Each, Most, [];
    /// A box with a lid for a circuit that ends.
    EndBox = "end_box", "part-end-box", Power, Electrician, Sold::Each, Most, [];
    /// Bonding wire.
    BondWire = "bond_wire", "part-bond-wire", Power, Electrician, Sold::Lengths(1.0), Most, [];
    /// Its clamps.
    BondClamp = "bond_clamp", "part-bond-clamp", Power, Electrician, Sold::Each, Most, [];
    /// A louvred door, or two grilles.
    Louvre = "louvre", "part-louvre", Air, Builder, Sold::Each, Most, [];
    /// An opening for a burner's air.
    AirOpening = "air_opening", "part-air-opening", Air, Fuel, Sold::Each, Most, ["area"];
    /// Round duct.
    Duct = "duct", "part-duct", Air, Builder, Sold::Coils(&[25.0]), Most, [];
    /// What joins ducts to the heater and the wall.
    DuctCollar = "duct_collar", "part-duct-collar", Air, Builder, Sold::Each, Most, [];
    /// The heat pump's filter.
    Filter = "filter", "part-filter", Air, Builder, Sold::Each, Most, [];
    /// An alarm for carbon monoxide.
    FumeAlarm = "fume_alarm", "part-fume-alarm", Air, Builder, Sold::Each, Most, [];
    /// A cap for a fuel line.
    FuelCap = "fuel_cap", "part-fuel-cap", Fuel, Fuel, Sold::Each, Most, [];
    /// What closes a flue's opening.
    FlueCap = "flue_cap", "part-flue-cap", Fuel, Fuel, Sold::Each, Most, [];
    /// A liner for a flue.
    FlueLiner = "flue_liner", "part-flue-liner", Fuel, Fuel, Sold::Each, Most, [];
    /// A fuel valve with dirt trap and connector.
    FuelValve = "fuel_valve", "part-fuel-valve", Fuel, Fuel, Sold::Each, Most, [];
    /// Vent connector for a new burner.
    VentPipe = "vent_pipe", "part-vent-pipe", Fuel, Fuel, Sold::Each, Most, [];
    /// Solder without lead.
    Solder = "solder", "part-solder", Supplies, Plumber, Sold::Each, Most, [];
    /// Flux with a brush.
    Flux = "flux", "part-flux", Supplies, Plumber, Sold::Each, Most, [];
    /// Emery cloth.
    Emery = "emery", "part-emery", Supplies, Plumber, Sold::Each, Most, [];
    /// Rings or inserts for plastic pipe.
    Rings = "rings", "part-rings", Supplies, Plumber, Sold::Each, Sum, [];
    /// Tape and paste for threads.
    ThreadTape = "thread_tape", "part-thread-tape", Supplies, Plumber, Sold::Each, Most, [];
    /// Cement and primer for plastic pipe.
    Cement = "cement", "part-cement", Supplies, Plumber, Sold::Each, Most, [];
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The list of kinds is in the order of the shelves, which the list of parts keeps.
    #[test]
    fn kinds_stand_by_shelf() {
        assert!(PartKind::ALL.windows(2).all(|w| w[0].shelf() <= w[1].shelf()));
    }
}
