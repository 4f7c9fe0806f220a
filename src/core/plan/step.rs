//! Kinds of steps, as data: their codes and words. The order of the list is the order wished for; the order of the work
//! is proved from what steps do and what guards it (`order`).

use super::rule::Rule;
use crate::core::work::WorkKind;

macro_rules! steps {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $key:literal, $sizes:expr;)*) => {
        /// A kind of step.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum StepKind { $($(#[$doc])* $name,)* }

        impl StepKind {
            /// Every kind, in the order wished for.
            pub const ALL: &'static [StepKind] = &[$(StepKind::$name,)*];

            /// The code in files and kept jobs.
            pub const fn code(self) -> &'static str { match self { $(StepKind::$name => $code,)* } }

            /// The key of its words.
            pub const fn key(self) -> &'static str { match self { $(StepKind::$name => $key,)* } }

            /// Names of the figures that its words state.
            pub const fn sizes(self) -> &'static [&'static str] { match self { $(StepKind::$name => &$sizes,)* } }
        }
    };
}

steps! {
    /// Permit and inspection asked about.
    Permit = "permit", "step-permit", [];
    /// The new heater looked over while the old one still works.
    LookNew = "look_new", "step-look-new", [];
    /// The heater that stays looked over.
    LookOver = "look_over", "step-look-over", [];
    /// The way cleared.
    MakeWay = "make_way", "step-make-way", ["needs"];
    /// Floors covered.
    Protect = "protect", "step-protect", [];
    /// Hold: fuel shut off by whoever is licensed.
    FuelOff = "fuel_off", "step-fuel-off", [];
    /// Hold: power off, locked, proved dead.
    PowerOff = "power_off", "step-power-off", [];
    /// Hold: water off, proved at a tap.
    WaterOff = "water_off", "step-water-off", [];
    /// Hold: the old tank drained.
    Drain = "drain", "step-drain", ["volume"];
    /// The tank that stays flushed.
    Flush = "flush", "step-flush", ["volume"];
    /// Its anode looked at.
    Anode = "anode", "step-anode", [];
    /// The old heater's wires taken off.
    UnwireOld = "unwire_old", "step-unwire-old", [];
    /// The old heater's vent taken off.
    FlueOff = "flue_off", "step-flue-off", [];
    /// The old pipes cut.
    CutPipes = "cut_pipes", "step-cut-pipes", [];
    /// Hold: the old tank out.
    OldOut = "old_out", "step-old-out", ["empty", "left", "mass"];
    /// A circuit that is not used any more ended.
    EndCircuit = "end_circuit", "step-end-circuit", [];
    /// Fuel line capped, flue's opening closed.
    CapFuel = "cap_fuel", "step-cap-fuel", [];
    /// The flue re-sized.
    ResizeFlue = "resize_flue", "step-resize-flue", [];
    /// Openings for burners' air.
    BurnerAir = "burner_air", "step-burner-air", ["area"];
    /// A larger service, or loads that take turns.
    Service = "service", "step-service", ["service", "load"];
    /// Room in the panel.
    PanelSpace = "panel_space", "step-panel-space", [];
    /// A new circuit.
    NewCircuit = "new_circuit", "step-new-circuit", [];
    /// New wires.
    Wires = "wires", "step-wires", [];
    /// Another breaker.
    Breaker = "breaker", "step-breaker", ["breaker"];
    /// A new outlet.
    NewOutlet = "new_outlet", "step-new-outlet", [];
    /// A switch beside the heater.
    Disconnect = "disconnect", "step-disconnect", [];
    /// The floor made fit.
    FloorSupport = "floor_support", "step-floor-support", ["mass"];
    /// A stand.
    Stand = "stand", "step-stand", ["height"];
    /// Sound kept down.
    Quieten = "quieten", "step-quieten", [];
    /// A pan.
    Pan = "pan", "step-pan", [];
    /// A louvred door.
    LouvredDoor = "louvred_door", "step-louvred-door", [];
    /// The tank stood up where there is height.
    CarryUpright = "carry_upright", "step-carry-upright", ["needs"];
    /// The new tank carried in.
    CarryIn = "carry_in", "step-carry-in", ["mass"];
    /// Hold: the new tank level and clear.
    SetLevel = "set_level", "step-set-level", ["full"];
    /// Straps.
    Straps = "straps", "step-straps", ["count"];
    /// Pieces of pipe made up away from the tank.
    Pieces = "pieces", "step-pieces", [];
    /// New shutoff valve and unions.
    Shutoff = "shutoff", "step-shutoff", [];
    /// A pressure-reducing valve.
    PressureValve = "pressure_valve", "step-pressure-valve", ["pressure"];
    /// The expansion tank's air set.
    Precharge = "precharge", "step-precharge", ["precharge"];
    /// An expansion tank.
    ExpansionTank = "expansion_tank", "step-expansion-tank", ["size", "precharge"];
    /// A vacuum relief valve in the cold pipe.
    VacuumRelief = "vacuum_relief", "step-vacuum-relief", [];
    /// Hold: cold to the dip tube.
    ColdSide = "cold_side", "step-cold-side", [];
    /// Hold: connected without heat on the tank's fittings.
    ConnectWater = "connect_water", "step-connect-water", [];
    /// A mixing valve.
    MixingValve = "mixing_valve", "step-mixing-valve", ["mixed"];
    /// A loop pump's switch.
    LoopControl = "loop_control", "step-loop-control", [];
    /// Hold: relief valve and its pipe.
    Relief = "relief", "step-relief", ["end"];
    /// Condensate by gravity.
    CondensatePipe = "condensate_pipe", "step-condensate-pipe", ["run", "fall"];
    /// Condensate by a pump.
    CondensatePump = "condensate_pump", "step-condensate-pump", ["lift", "run"];
    /// Hold: condensate tested with water.
    CondensateTest = "condensate_test", "step-condensate-test", [];
    /// The condensate's way kept from freezing.
    FrostGuard = "frost_guard", "step-frost-guard", [];
    /// Ducts.
    Ducts = "ducts", "step-ducts", [];
    /// Hold: the filter in.
    Filter = "filter", "step-filter", [];
    /// A fuel line connected.
    FuelConnect = "fuel_connect", "step-fuel-connect", [];
    /// A vent connected.
    VentConnect = "vent_connect", "step-vent-connect", [];
    /// The new heater's wires connected.
    ConnectPower = "connect_power", "step-connect-power", [];
    /// Hold: bonding.
    Bond = "bond", "step-bond", [];
    /// The tank filled.
    Fill = "fill", "step-fill", ["volume"];
    /// Hold: full and purged of air.
    Purge = "purge", "step-purge", [];
    /// Hold: no leaks.
    LeakCheck = "leak_check", "step-leak-check", [];
    /// Hold: fuel and vent tested.
    FuelTight = "fuel_tight", "step-fuel-tight", [];
    /// Hold: power on.
    PowerOn = "power_on", "step-power-on", [];
    /// The burner lit.
    LightBurner = "light_burner", "step-light-burner", [];
    /// Hold: mode and setpoint.
    Mode = "mode", "step-mode", ["setting"];
    /// Draught of the burner that stays.
    DraughtTest = "draught_test", "step-draught-test", [];
    /// Start-up figures written down.
    Record = "record", "step-record", [];
    /// Pipes covered.
    CoverPipes = "cover_pipes", "step-cover-pipes", [];
    /// Handed over.
    HandOver = "hand_over", "step-hand-over", [];
}

impl StepKind {
    /// The step in which a kind of work is done.
    pub const fn of(work: WorkKind) -> StepKind {
        match work {
            WorkKind::NewCircuit => StepKind::NewCircuit,
            WorkKind::PanelSpace => StepKind::PanelSpace,
            WorkKind::Service => StepKind::Service,
            WorkKind::NewOutlet => StepKind::NewOutlet,
            WorkKind::Breaker => StepKind::Breaker,
            WorkKind::Wires => StepKind::Wires,
            WorkKind::Disconnect => StepKind::Disconnect,
            WorkKind::Bonding => StepKind::Bond,
            WorkKind::CondensatePump => StepKind::CondensatePump,
            WorkKind::CondensatePipe => StepKind::CondensatePipe,
            WorkKind::FrostGuard => StepKind::FrostGuard,
            WorkKind::LouvredDoor => StepKind::LouvredDoor,
            WorkKind::BurnerAir => StepKind::BurnerAir,
            WorkKind::MakeWay => StepKind::MakeWay,
            WorkKind::CarryUpright => StepKind::CarryUpright,
            WorkKind::FloorSupport => StepKind::FloorSupport,
            WorkKind::Stand => StepKind::Stand,
            WorkKind::Quieten => StepKind::Quieten,
            WorkKind::ExpansionTank => StepKind::ExpansionTank,
            WorkKind::Precharge => StepKind::Precharge,
            WorkKind::PressureValve => StepKind::PressureValve,
            WorkKind::ReliefPipe => StepKind::Relief,
            WorkKind::Pan => StepKind::Pan,
            WorkKind::VacuumRelief => StepKind::VacuumRelief,
            WorkKind::Straps => StepKind::Straps,
            WorkKind::Shutoff => StepKind::Shutoff,
            WorkKind::Joints => StepKind::ConnectWater,
            WorkKind::MixingValve => StepKind::MixingValve,
            WorkKind::Setpoint => StepKind::Mode,
            WorkKind::LoopControl => StepKind::LoopControl,
            WorkKind::CapFuel => StepKind::CapFuel,
            WorkKind::ResizeFlue => StepKind::ResizeFlue,
            WorkKind::FuelConnection => StepKind::FuelConnect,
            WorkKind::DraughtTest => StepKind::DraughtTest,
        }
    }

    /// What is known of this kind.
    pub fn rule(self) -> &'static Rule {
        // The table has an entry for each kind, in their order (a test holds that).
        super::table::TABLE.get(self as usize).unwrap_or(&super::table::TABLE[0])
    }
}
