//! Identities of the questions: stable codes in files, links and locale keys.

use serde::{Deserialize, Serialize};

macro_rules! ids {
    ($($name:ident = $code:literal,)*) => {
        /// Identity of a question. Codes are for ever: files and links carry them.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        #[allow(missing_docs, reason = "each is explained by its entry in the list and its words in the locale file")]
        pub enum Id { $(#[serde(rename = $code)] $name,)* }

        impl Id {
            /// Every identity.
            pub const ALL: &'static [Id] = &[$(Id::$name,)*];

            /// The code in files and links.
            pub const fn code(self) -> &'static str { match self { $(Id::$name => $code,)* } }

            /// The identity with this code, if there is one.
            pub fn from_code(code: &str) -> Option<Id> {
                // Not a match over the codes: that is four kilobytes of comparisons.
                Id::ALL.iter().copied().find(|id| id.code() == code)
            }

            /// The key of its words in the locale files.
            pub fn key(self) -> String { format!("q-{}", self.code().replace('_', "-")) }
        }
    };
}

ids! {
    Adults = "adults",
    Teenagers = "teenagers",
    Children = "children",
    ShowersPerDay = "showers_per_day",
    ShowerTime = "shower_time",
    ShowerFlow = "shower_flow",
    BathsPerWeek = "baths_per_week",
    TubVolume = "tub_volume",
    ShowersInARow = "showers_in_a_row",
    DishwasherLoads = "dishwasher_loads",
    HotWashes = "hot_washes",
    RunsOutNow = "runs_out_now",
    HeaterKind = "heater_kind",
    HeaterAge = "heater_age",
    HeaterVolume = "heater_volume",
    HeaterFactor = "heater_factor",
    HeaterFirstHour = "heater_first_hour",
    HeaterInput = "heater_input",
    Setpoint = "setpoint",
    AnodeChanged = "anode_changed",
    Signs = "signs",
    SharesFlue = "shares_flue",
    Place = "place",
    OutdoorMean = "outdoor_mean",
    OutdoorRange = "outdoor_range",
    ColdTap = "cold_tap",
    RoomKind = "room_kind",
    RoomVolume = "room_volume",
    Headroom = "headroom",
    WayIn = "way_in",
    Door = "door",
    RoomWinter = "room_winter",
    RoomSummer = "room_summer",
    Dampness = "dampness",
    Dehumidifier = "dehumidifier",
    HouseHeat = "house_heat",
    HouseCooled = "house_cooled",
    DrainKind = "drain_kind",
    DrainDistance = "drain_distance",
    DrainRise = "drain_rise",
    Supply = "supply",
    Breaker = "breaker",
    Own120 = "own_120",
    FreeSpaces = "free_spaces",
    PriceElectricity = "price_electricity",
    PriceGas = "price_gas",
    PricePropane = "price_propane",
    PriceOil = "price_oil",
    InstalledSame = "installed_same",
    InstalledHeatPump = "installed_heat_pump",
    Rebate = "rebate",
    Horizon = "horizon",
    DiscountRate = "discount_rate",
    PriceGrowth = "price_growth",
    LabelScale = "label_scale",
    Hardness = "hardness",
    StairTurn = "stair_turn",
    StandUp = "stand_up",
    Footprint = "footprint",
    ServiceSpace = "service_space",
    Floor = "floor",
    FinishedBelow = "finished_below",
    QuietRoom = "quiet_room",
    QuietWall = "quiet_wall",
    QuietDistance = "quiet_distance",
    FuelLeft = "fuel_left",
    Ducts = "ducts",
    Seismic = "seismic",
    DrainFreezes = "drain_freezes",
    WireSize = "wire_size",
    WireMetal = "wire_metal",
    CableKind = "cable_kind",
    RunLength = "run_length",
    Wires = "wires",
    Disconnect = "disconnect",
    ServiceRating = "service_rating",
    LargeLoads = "large_loads",
    HouseArea = "house_area",
    Pressure = "pressure",
    ClosedBy = "closed_by",
    ExpansionVolume = "expansion_volume",
    ExpansionPrecharge = "expansion_precharge",
    PipeMaterial = "pipe_material",
    ShutoffWorks = "shutoff_works",
    ReliefPipe = "relief_pipe",
    Pan = "pan",
    FixturesBelow = "fixtures_below",
    MixingValve = "mixing_valve",
    Recirculation = "recirculation",
    LoopLength = "loop_length",
    LoopCovered = "loop_covered",
    Tariff = "tariff",
    PricePeak = "price_peak",
    PriceLow = "price_low",
    PeakFrom = "peak_from",
    PeakTo = "peak_to",
    PeakDays = "peak_weekdays",
    PeakSeason = "peak_season",
    GridChange = "grid_change",
}
