//! Tools, as data: what has to be on the truck beside the parts.

use super::sold::{HOSE_FT, Sold};
use crate::core::message::Message;
use crate::core::units::Unit;

macro_rules! tools {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $key:literal;)*) => {
        /// A tool, or gear to test with.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Tool { $($(#[$doc])* $name,)* }

        impl Tool {
            /// Every tool.
            pub const ALL: &'static [Tool] = &[$(Tool::$name,)*];

            /// The code in files.
            pub const fn code(self) -> &'static str { match self { $(Tool::$name => $code,)* } }

            /// The key of its name.
            pub const fn key(self) -> &'static str { match self { $(Tool::$name => $key,)* } }
        }
    };
}

tools! {
    /// A tape measure.
    Tape = "tape", "tool-tape";
    /// A level.
    Level = "level", "tool-level";
    /// Covers for floors.
    Covers = "covers", "tool-covers";
    /// A lamp.
    Lamp = "lamp", "tool-lamp";
    /// Gloves and glasses.
    Gloves = "gloves", "tool-gloves";
    /// A lock for a breaker.
    Lock = "lock", "tool-lock";
    /// A voltage tester.
    Tester = "tester", "tool-tester";
    /// A clamp meter for current.
    ClampMeter = "clamp_meter", "tool-clamp-meter";
    /// A hose to drain with.
    Hose = "hose", "tool-hose";
    /// A pump for a tank that does not drain by itself.
    DrainPump = "drain_pump", "tool-drain-pump";
    /// A bucket and rags.
    Bucket = "bucket", "tool-bucket";
    /// A pressure gauge on a hose thread.
    Gauge = "gauge", "tool-gauge";
    /// A pump for an expansion tank's air.
    AirPump = "air_pump", "tool-air-pump";
    /// Two pipe wrenches.
    Wrenches = "wrenches", "tool-wrenches";
    /// A cutter for the pipes.
    Cutter = "cutter", "tool-cutter";
    /// A torch with a cloth against fire and an extinguisher.
    Torch = "torch", "tool-torch";
    /// The tool that the plastic pipe's fittings ask for.
    Crimper = "crimper", "tool-crimper";
    /// Screwdrivers and strippers for wires.
    Drivers = "drivers", "tool-drivers";
    /// A drill.
    Drill = "drill", "tool-drill";
    /// A saw for plastic pipe.
    Saw = "saw", "tool-saw";
    /// A hand truck with straps.
    HandTruck = "hand_truck", "tool-hand-truck";
    /// A socket for the anode.
    AnodeSocket = "anode_socket", "tool-anode-socket";
    /// Thermometers for air and water.
    Thermometer = "thermometer", "tool-thermometer";
    /// Dry paper to find leaks with.
    Paper = "paper", "tool-paper";
    /// The licensed trade's meter for draught and fumes.
    FumeMeter = "fume_meter", "tool-fume-meter";
    /// The licensed trade's gear to find fuel leaks.
    FuelTester = "fuel_tester", "tool-fuel-tester";
}

impl Tool {
    /// In words; a hose is long enough for the way to the drain, m.
    pub(super) fn says(self, drain_run_m: f64) -> Message {
        let says = Message::new(self.key());
        match self {
            Tool::Hose => says.quantity("length", Sold::Coils(HOSE_FT).bring(drain_run_m), Unit::Metre),
            _ => says,
        }
    }
}
