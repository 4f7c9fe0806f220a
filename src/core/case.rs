//! A complete case: every value present, each with where it came from. Built from answers by the `job`
//! room; read by everything after it in the core.

mod options;
mod provenance;

pub use options::{
    Dampness, DoorKind, DrainKind, HeaterKind, HouseHeat, LabelScale, PeakSeason, RoomKind, Supply,
    TankSigns, TariffKind, YesNo,
};
pub(super) use options::{choices, place};
pub use provenance::{Input, Known, Provenance};

use super::site::Outlet;
use serde::{Deserialize, Serialize};
use uom::si::f64::{Length, Power, TemperatureInterval, ThermodynamicTemperature, Time, Volume, VolumeRate};

/// The people and how they use hot water.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Household {
    /// Adults.
    pub adults: Known<f64>,
    /// Teenagers.
    pub teenagers: Known<f64>,
    /// Children under 13.
    pub children: Known<f64>,
    /// Showers a day, the whole household.
    pub showers_per_day: Known<f64>,
    /// Length of a shower.
    pub shower_time: Known<Time>,
    /// Flow of the shower head, mixed water.
    pub shower_flow: Known<VolumeRate>,
    /// Baths a week.
    pub baths_per_week: Known<f64>,
    /// Mixed water in a bath.
    pub tub: Known<Volume>,
    /// Showers one after another in the busiest hour.
    pub showers_in_a_row: Known<f64>,
    /// Dishwasher loads a week.
    pub dishwasher_loads_per_week: Known<f64>,
    /// Hot or warm clothes-washer loads a week.
    pub hot_washes_per_week: Known<f64>,
    /// Do they run out of hot water now.
    pub runs_out_now: Known<YesNo>,
}

impl Household {
    /// Everybody.
    pub fn people(&self) -> f64 {
        self.adults.value + self.teenagers.value + self.children.value
    }
}

/// The heater that stands there now.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PresentHeater {
    /// What heats the water.
    pub kind: Known<HeaterKind>,
    /// Age in years.
    pub age_years: Known<f64>,
    /// Nominal volume on its nameplate.
    pub nominal_volume: Known<Volume>,
    /// Uniform energy factor on its label, or the one typical of its kind and age.
    pub uniform_energy_factor: Known<f64>,
    /// First-hour rating on its label, or the one typical of its kind and size.
    pub first_hour_rating: Known<Volume>,
    /// Each element, or the burner's input.
    pub input: Known<Power>,
    /// Setpoint of its thermostat; also used for the candidates.
    pub setpoint: Known<ThermodynamicTemperature>,
    /// Whether the anode was ever changed.
    pub anode_changed: Known<YesNo>,
    /// What it looks and sounds like.
    pub signs: Known<TankSigns>,
    /// Hardness of the water, kg/m³ as calcium carbonate.
    pub hardness_kg_per_m3: Known<f64>,
    /// Whether a furnace or boiler shares its flue.
    pub shares_flue: Known<YesNo>,
}

/// The room where the heater stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Room {
    /// What kind of room.
    pub kind: Known<RoomKind>,
    /// Free air volume.
    pub volume: Known<Volume>,
    /// Floor to the lowest thing above the heater.
    pub headroom: Known<Length>,
    /// Narrowest door, hatch or turn on the way in.
    pub way_in: Known<Length>,
    /// How air gets to the rest of the house.
    pub door: Known<DoorKind>,
    /// Mean temperature of the coldest month, with no heat pump in it.
    pub winter: Known<ThermodynamicTemperature>,
    /// Mean temperature of the warmest month, with no heat pump in it.
    pub summer: Known<ThermodynamicTemperature>,
    /// How damp it is.
    pub dampness: Known<Dampness>,
    /// What heats the house.
    pub house_heat: Known<HouseHeat>,
    /// Whether the house is cooled in summer.
    pub house_cooled: Known<YesNo>,
    /// Whether a dehumidifier runs in the room in summer.
    pub dehumidifier: Known<YesNo>,
}

/// Where condensate can go.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Drain {
    /// What there is.
    pub kind: Known<DrainKind>,
    /// Length of the route.
    pub distance: Known<Length>,
    /// How far the drain's inlet lies above the heater's condensate outlet (negative: below).
    pub rise: Known<Length>,
}

/// The electrical supply at the heater.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Circuit {
    /// Supply voltage.
    pub supply: Known<Supply>,
    /// Rating of the heater's own two-pole breaker in A; 0 when there is no such circuit.
    pub breaker_a: Known<f64>,
    /// Whether a 120 V outlet is within reach, and whose circuit it is on.
    pub own_120v: Known<Outlet>,
    /// Free double spaces in the panel.
    pub free_spaces: Known<f64>,
}

/// The place's climate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Identity of the listed place the defaults come from.
    pub id: Known<String>,
    /// Annual mean outdoor temperature.
    pub outdoor_mean: Known<ThermodynamicTemperature>,
    /// Warmest monthly mean less coldest.
    pub outdoor_range: Known<TemperatureInterval>,
    /// Mean summer dew point outdoors.
    pub summer_dew_point: Known<ThermodynamicTemperature>,
    /// Mean winter dew point outdoors.
    pub winter_dew_point: Known<ThermodynamicTemperature>,
    /// Height above the sea.
    pub elevation: Known<Length>,
    /// Cold-tap temperature as a yearly mean; from the published relation unless measured.
    pub cold_water_shift: Known<TemperatureInterval>,
}

/// Prices and the way money is counted. All in today's money.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Prices {
    /// Electricity, $/kWh.
    pub electricity: Known<f64>,
    /// Natural gas, $/therm.
    pub gas: Known<f64>,
    /// Propane, $/US gal.
    pub propane: Known<f64>,
    /// Heating oil, $/US gal.
    pub oil: Known<f64>,
    /// Installed price of the same kind again.
    pub installed_same: Known<f64>,
    /// Installed price of a 50 gal, 240 V heat pump tank, before rebates.
    pub installed_heat_pump: Known<f64>,
    /// Rebates and credits for a heat pump tank.
    pub rebate: Known<f64>,
    /// Years counted.
    pub horizon_years: Known<f64>,
    /// Real discount rate a year.
    pub discount_rate: Known<f64>,
    /// Real growth of energy prices a year.
    pub price_growth: Known<f64>,
    /// Emission of grid electricity, kg CO₂ a kWh.
    pub grid_emission: Known<f64>,
    /// Change of that a year, real: −0.02 is two per cent less each year.
    pub grid_change: Known<f64>,
    /// Electricity by the hour.
    pub tariff: Tariff,
}

/// What electricity costs by time of day. The rest counts only where `kind` says so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Tariff {
    /// One price or two.
    pub kind: Known<TariffKind>,
    /// At peak hours, $/kWh.
    pub peak: Known<f64>,
    /// At the others, $/kWh.
    pub low: Known<f64>,
    /// Hour of the clock at which the peak begins, 0 to 24.
    pub from_hour: Known<f64>,
    /// Hour at which it ends; before `from_hour`: the next morning.
    pub to_hour: Known<f64>,
    /// Whether Saturday and Sunday have none.
    pub weekdays_only: Known<YesNo>,
    /// When in the year it is asked.
    pub season: Known<PeakSeason>,
}

/// One household's complete case.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Case {
    /// The people.
    pub household: Household,
    /// The heater they have.
    pub heater: PresentHeater,
    /// Where it stands.
    pub room: Room,
    /// Condensate.
    pub drain: Drain,
    /// Electricity.
    pub circuit: Circuit,
    /// Climate and cold water.
    pub place: Place,
    /// Money.
    pub prices: Prices,
    /// What checks on site ask for.
    pub site: super::site::Site,
    /// The installer's offer.
    pub offer: super::candidates::offer::CaseOffer,
    /// Seed of the synthetic year of draws.
    pub seed: u64,
}
