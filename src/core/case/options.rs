//! What can be chosen from in a case: kinds of heaters, rooms, drains and so on, each with its code.

use serde::{Deserialize, Serialize};

/// Writes enums whose options have codes, in files, links and locale keys alike.
macro_rules! choices {
    ($($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $code:literal,)* })*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum $name { $($(#[$vdoc])* #[serde(rename = $code)] $variant,)* }

        impl $name {
            /// Every option's code, in the order shown.
            pub const CODES: &'static [&'static str] = &[$($code,)*];

            /// The option's code in files, links and locale keys.
            pub const fn code(self) -> &'static str { match self { $($name::$variant => $code,)* } }

            /// The option with this code, if there is one.
            pub fn from_code(code: &str) -> Option<Self> {
                const ALL: &[$name] = &[$($name::$variant,)*];
                ALL.get($crate::core::case::place(Self::CODES, code)?).copied()
            }
        }
    )*};
}

pub(in crate::core) use choices;

/// Where a code stands among others. One function for all enums: a match over the codes of each is kilobytes of
/// comparisons, which the page would download.
#[inline(never)]
pub(in crate::core) fn place(codes: &[&str], code: &str) -> Option<usize> {
    codes.iter().position(|known| *known == code)
}

choices! {
    /// Yes or no.
    YesNo {
        /// Yes.
        Yes = "yes",
        /// No.
        No = "no",
    }
    /// What heats the water in a heater.
    HeaterKind {
        /// Electric elements only.
        Electric = "electric",
        /// A natural gas burner.
        Gas = "gas",
        /// A propane burner.
        Propane = "propane",
        /// An oil burner.
        Oil = "oil",
        /// A heat pump with elements as backup.
        HeatPump = "heat_pump",
    }
    /// Outward signs that a tank is near its end, worst first.
    TankSigns {
        /// Water under or around the tank.
        Leaking = "leaking",
        /// Rust at the fittings, or rusty hot water.
        Rust = "rust",
        /// Rumbling or slow to heat.
        Rumbling = "rumbling",
        /// Nothing to see or hear.
        None = "none",
    }
    /// The test a label's figure comes from.
    LabelScale {
        /// Uniform energy factor: labels since the middle of 2017.
        Uniform = "uef",
        /// Energy factor: labels before.
        Old = "ef",
    }
    /// The room the heater stands in.
    RoomKind {
        /// A basement with walls against the ground.
        Basement = "basement",
        /// A garage.
        Garage = "garage",
        /// A utility or laundry room inside the house.
        Utility = "utility",
        /// A closet inside the house.
        Closet = "closet",
        /// A crawlspace.
        Crawlspace = "crawlspace",
        /// An attic.
        Attic = "attic",
    }
    /// How air gets between the room and the house.
    DoorKind {
        /// A solid door, closed.
        Solid = "solid",
        /// A gap of an inch or so under the door.
        Undercut = "undercut",
        /// A louvred door or grilles high and low.
        Louvred = "louvred",
        /// Open to the next room.
        Open = "open",
    }
    /// How damp the room is before any change.
    Dampness {
        /// Dry all year.
        Dry = "dry",
        /// As houses are.
        Normal = "normal",
        /// Damp in summer, or a dehumidifier runs there.
        Damp = "damp",
    }
    /// What heats the house.
    HouseHeat {
        /// A natural gas furnace or boiler.
        Gas = "gas",
        /// Propane.
        Propane = "propane",
        /// Heating oil.
        Oil = "oil",
        /// Electric resistance.
        Electric = "electric",
        /// A heat pump.
        HeatPump = "heat_pump",
        /// Wood, or nothing to pay for.
        Free = "free",
    }
    /// Where condensate could go.
    DrainKind {
        /// A floor drain.
        Floor = "floor",
        /// A sump with a pump.
        Sump = "sump",
        /// A laundry standpipe or sink.
        Standpipe = "standpipe",
        /// Nothing to drain to.
        None = "none",
    }
    /// How electricity is priced.
    TariffKind {
        /// One price, day and night.
        Flat = "flat",
        /// A peak price at some hours, a low one at the others.
        Time = "time",
    }
    /// The part of the year with a peak price.
    PeakSeason {
        /// All of it.
        Year = "year",
        /// June to September.
        Summer = "summer",
        /// November to March.
        Winter = "winter",
    }
    /// The supply at the heater's place.
    Supply {
        /// 240 V, two hot legs.
        V240 = "240",
        /// 208 V, two legs of a three-phase service.
        V208 = "208",
        /// Only a 120 V outlet.
        V120 = "120",
    }
}
